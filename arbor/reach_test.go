package arbor_test

import (
	"errors"
	"math"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// thirty pieces of 2 in: 5 ft on the rods.
var thirty = arbor.Stack{
	Pipe: []arbor.Row{{Name: "44", Count: 6, Mass: 44 * units.Pound, Thickness: 2 * units.Inch}},
	Show: []arbor.Row{{Name: "44", Count: 24, Mass: 44 * units.Pound, Thickness: 2 * units.Inch}},
}

// Spreader plates lie among show weight. Pipe weight alone has none, and may be as tall as the room; one piece of show weight more
// is two inches and a plate too tall.
func TestReachPipeWeightFillsTheRoom(t *testing.T) {
	frame := carriage
	frame.Room = 60 * units.Inch
	frame.Plate = arbor.Plate{Mass: 2 * units.Pound, Thickness: 0.25 * units.Inch, Every: 24 * units.Inch}
	f := mustFly(t, overRail, frame, doubled)
	row := func(n int) []arbor.Row {
		return []arbor.Row{{Name: "44", Count: n, Mass: 44 * units.Pound, Thickness: 2 * units.Inch}}
	}
	if got, err := f.Reach("rail", 4*units.Foot, arbor.Stack{Pipe: row(30)}); err != nil || got.Above != 30 {
		t.Errorf("%+v, %v", got, err)
	}
	if _, err := f.Reach("rail", 4*units.Foot, arbor.Stack{Pipe: row(29), Show: row(1)}); !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("with show weight: %v", err)
	}
}

// Worked by hand. With the batten at 4 ft the arbor's foot is at 53 − 8 = 45 ft
// and its lowest piece lies at 45.5 ft; arms reach from 41 to 46 ft.
func TestReach(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	for _, tt := range []struct {
		name, bridge string
		trim         units.Length
		want         arbor.Reach
	}{
		{"low trim, above", "upper bridge", 4 * units.Foot, arbor.Reach{
			Foot: feet(45 * 48), Any: true, From: 0, To: feet(24), First: 1, Last: 3, Above: 27,
		}},
		{"low trim, below", "rail", 4 * units.Foot, arbor.Reach{Foot: feet(45 * 48), Above: 30}},
		// The arbor is 5 ft lower: from 0.5 to 5.5 ft on the rods. Piece 4 is the first that lies above 6 in.
		{"14 ft", "upper bridge", 14 * units.Foot, arbor.Reach{
			Foot: feet(40 * 48), Any: true, From: feet(24), To: feet(264), First: 4, Last: 30, Below: 3,
		}},
		// The foot is at 22.5 ft, the bed at 23: up to 4 ft on the rods from the rail.
		{"49 ft", "rail", 49 * units.Foot, arbor.Reach{
			Foot: feet(1080), Any: true, From: 0, To: feet(192), First: 1, Last: 24, Above: 6,
		}},
		{"high trim, above", "upper bridge", 50 * units.Foot, arbor.Reach{Foot: feet(22 * 48), Below: 30}},
	} {
		tt.want.Bridge, tt.want.Trim = tt.bridge, tt.trim
		got, err := f.Reach(tt.bridge, tt.trim, thirty)
		if diff := cmp.Diff(tt.want, got); err != nil || diff != "" {
			t.Errorf("%s: %v\n%s", tt.name, err, diff)
		}
	}
	// Arms that reach just up to the bed reach none of the rods.
	just := overRail
	just.Bridges = []arbor.Bridge{{Name: "just", Floor: 40 * units.Foot, High: 5.5 * units.Foot}}
	if got, err := mustFly(t, just, carriage, doubled).Reach("just", 4*units.Foot, thirty); err != nil || got.Any || got.Above != 30 {
		t.Errorf("up to the bed: %+v, %v", got, err)
	}
	empty, err := f.Reach("rail", 49*units.Foot, arbor.Stack{})
	if err != nil || !empty.Any || empty.First != 0 || empty.Last != 0 || empty.Below != 0 || empty.Above != 0 {
		t.Errorf("an empty stack: %+v, %v", empty, err)
	}
}

// Worked by hand: the topmost piece, from 58 to 60 in on the rods, comes down to
// 46 ft when the arbor is 45.5 + 5 − 46 = 4.5 ft below its stop, the batten 9 ft
// higher; its underside is at 41 ft when the arbor is 9 1/3 ft down.
func TestWindow(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	got, err := f.Window("upper bridge", 58*units.Inch, 60*units.Inch)
	if want := (arbor.Window{Ever: true, Low: feet(13 * 48), High: feet(4*48 + 56*16)}); err != nil || got != want {
		t.Errorf("got %+v, want %+v, %v", got, want, err)
	}
	// The lowest piece is in reach from the first: at 45.5 ft. It goes below 41 ft when the arbor is 4.5 ft down.
	got, err = f.Window("upper bridge", 0, 2*units.Inch)
	if want := (arbor.Window{Ever: true, Low: feet(4 * 48), High: feet(13 * 48)}); err != nil || got != want {
		t.Errorf("got %+v, want %+v, %v", got, want, err)
	}
	// Arms do not reach over 5 ft 2 in at once.
	if got, err = f.Window("upper bridge", 0, 62*units.Inch); err != nil || got != (arbor.Window{}) {
		t.Errorf("got %+v, want never, %v", got, err)
	}
}

func TestAccess(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	got, err := f.Access("upper bridge", thirty)
	topmost, lowest := arbor.Window{Ever: true, Low: feet(13 * 48), High: feet(4*48 + 56*16)}, arbor.Window{Ever: true, Low: feet(4 * 48), High: feet(13 * 48)}
	want := arbor.Access{
		Bridge: "upper bridge", Pieces: 30, Reached: 30,
		Rows: []arbor.RowAccess{
			// Piece 6 is from 10 to 12 in: to 46 ft at 0.5 ft down, under 41 ft from 4.5 ft + 10 in down.
			{Row: thirty.Pipe[0], Reached: 6, Lowest: lowest, Highest: arbor.Window{Ever: true, Low: feet(5 * 48), High: feet(13*48 + 80)}},
			// Piece 7 is from 12 to 14 in: to 46 ft at 8 in down, under 41 ft from 5.5 ft down.
			{Row: thirty.Show[0], Show: true, Reached: 24, Lowest: arbor.Window{Ever: true, Low: feet(4*48 + 64), High: feet(15 * 48)}, Highest: topmost},
		},
		Over: feet(4.5 * 48), OverAt: arbor.Window{Ever: true, Low: feet(4 * 48), High: feet(13 * 48)},
	}
	if diff := cmp.Diff(want, got); err != nil || diff != "" || !got.Passes() {
		t.Errorf("%v\n%s", err, diff)
	}
	// From the rail arms reach up to 27 ft: the top of the stack ends at 22.5 + 5 = 27.5 ft, so that the three highest
	// pieces never come down to them, and the arbor is over them at every trim.
	got, err = f.Access("rail", thirty)
	if err != nil || got.Reached != 27 || got.Rows[1].Reached != 21 || got.Rows[1].Highest.Ever || got.Over != feet(23.5*48) ||
		got.OverAt != (arbor.Window{Ever: true, Low: feet(4 * 48), High: feet(50 * 48)}) {
		t.Errorf("%v, %+v", err, got)
	}
	// One piece at the bed stays 4 in under the 46 ft that arms reach on the upper bridge.
	one := arbor.Stack{Show: []arbor.Row{{Name: "44", Count: 1, Mass: 44 * units.Pound, Thickness: 2 * units.Inch}}}
	if got, err = f.Access("upper bridge", one); err != nil || got.Passes() || got.Over != feet(-16) || got.OverAt != (arbor.Window{}) {
		t.Errorf("%v, %+v", err, got)
	}
	// Arms that reach over 2 in, and no more, reach each piece of 2 in at one trim.
	narrow := overRail
	narrow.Bridges = []arbor.Bridge{{Name: "narrow", Floor: 40 * units.Foot, Low: 10 * units.Inch, High: 12 * units.Inch}}
	if got, err = mustFly(t, narrow, carriage, doubled).Access("narrow", one); err != nil || got.Reached != 1 || got.Rows[0].Lowest.Low != got.Rows[0].Lowest.High {
		t.Errorf("%v, %+v", err, got)
	}
	// Nothing on the rods stays 6 in under it, and is above nobody.
	if got, err = f.Access("upper bridge", arbor.Stack{}); err != nil || got.Passes() || got.Over != feet(-24) || got.Rows != nil {
		t.Errorf("%v, %+v", err, got)
	}
}

// laid is one piece of the oracle: its number, and where it lies, in millimetres.
type laid struct {
	row, bottom, top int
	show             bool
}

// layOut stacks piece by piece, with a plate wherever one is due.
func layOut(s arbor.Stack, plate, every int) []laid {
	var out []laid
	z, shown, due, row := 0, 0, 0, -1
	for part, rows := range [][]arbor.Row{s.Pipe, s.Show} {
		for _, r := range rows {
			row++
			for range r.Count {
				for part == 1 && every > 0 && shown >= due {
					z += plate
					due += every
				}
				thick := int(math.Round(float64(r.Thickness) * 1000))
				out = append(out, laid{row, z, z + thick, part == 1})
				z += thick
				if part == 1 {
					shown += thick
				}
			}
		}
	}
	return out
}

// On random stacks, with spreader plates, every answer is that of a count piece by
// piece and position by position, in whole millimetres.
func TestReachAgainstCounting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, least, most int) int { return rapid.IntRange(least, most).Draw(t, name) }
		mm := func(n int) units.Length { return units.Length(float64(n) / 1000) }
		plate, every := 0, 0
		if rapid.Bool().Draw(t, "plates") {
			plate, every = draw("plate", 1, 9), draw("every", 5, 120)
		}
		var s arbor.Stack
		for i := range draw("rows", 0, 4) {
			r := arbor.Row{Name: string(rune('a' + i)), Count: draw("count", 0, 5), Mass: 1, Thickness: mm(draw("thickness", 3, 60))}
			if rapid.Bool().Draw(t, "pipe") {
				s.Pipe = append(s.Pipe, r)
			} else {
				s.Show = append(s.Show, r)
			}
		}
		frame := arbor.Frame{Length: mm(4500), Room: mm(4000), Capacity: 500}
		if plate > 0 {
			frame.Plate = arbor.Plate{Mass: 1, Thickness: mm(plate), Every: mm(every)}
		}
		bed := draw("bed", 0, 400)
		travel := draw("travel", 1, 900)
		lower := draw("lower", -50, 500)
		floor, low := draw("floor", 0, 2000), draw("low", 0, 300)
		high := low + draw("band", 1, 600)
		run := arbor.Run{
			LowerStop: mm(lower), UpperStop: mm(lower + 4500 + travel),
			Bridges: []arbor.Bridge{{Name: "b", Floor: mm(floor), Low: mm(low), High: mm(high)}},
		}
		f := mustFlyRapid(t, run, frame, arbor.Ride{Ratio: 1, MadeOff: mm(700), Bed: mm(bed)})
		pieces := layOut(s, plate, every)

		// down is how far the arbor has come down from its upper stop.
		inReach := func(p laid, down int) bool {
			base := lower + travel - down + bed
			return base+p.bottom >= floor+low && base+p.top <= floor+high
		}
		over := func(down int) bool {
			return len(pieces) > 0 && lower+travel-down+bed+pieces[len(pieces)-1].top > floor+high
		}
		reached, first, end := make([]bool, len(pieces)), make([]int, len(pieces)), make([]int, len(pieces))
		overTo := -1
		for down := 0; down <= travel; down++ {
			for i, p := range pieces {
				if inReach(p, down) {
					if !reached[i] {
						reached[i], first[i] = true, down
					}
					end[i] = down
				}
			}
			if over(down) {
				overTo = down
			}
		}
		got, err := f.Access("b", s)
		if err != nil {
			t.Fatal(err)
		}
		window := func(i int) arbor.Window {
			if !reached[i] {
				return arbor.Window{}
			}
			return arbor.Window{Ever: true, Low: mm(700 + first[i]), High: mm(700 + end[i])}
		}
		want := arbor.Access{Bridge: "b", Pieces: len(pieces), Over: mm(lower + travel + bed - floor - high)}
		row := -1
		for part, rows := range [][]arbor.Row{s.Pipe, s.Show} {
			for _, r := range rows {
				row++
				if r.Count == 0 {
					continue
				}
				a := arbor.RowAccess{Row: r, Show: part == 1}
				begun := false
				for i, p := range pieces {
					if p.row != row {
						continue
					}
					if !begun {
						begun, a.Lowest = true, window(i)
					}
					a.Highest = window(i)
					if reached[i] {
						a.Reached++
						want.Reached++
					}
				}
				want.Rows = append(want.Rows, a)
			}
		}
		if len(pieces) > 0 {
			want.Over = mm(lower + travel + bed + pieces[len(pieces)-1].top - floor - high)
		}
		if overTo >= 0 {
			// At the end of the window the top of the stack is just in reach, or the arbor on its stop.
			want.OverAt = arbor.Window{Ever: true, Low: mm(700), High: mm(700 + min(overTo+1, travel))}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("access -want +got\n%s", diff)
		}

		down := draw("down", 0, travel)
		r, err := f.Reach("b", mm(700+down), s)
		if err != nil {
			t.Fatal(err)
		}
		count := 0
		for i, p := range pieces {
			if is := inReach(p, down); is != (i+1 >= r.First && i+1 <= r.Last) {
				t.Fatalf("piece %d in reach: %v; from %d to %d", i+1, is, r.First, r.Last)
			} else if is {
				count++
			}
		}
		if r.Below+r.Above+count != len(pieces) || r.Below < 0 || r.Above < 0 || r.Foot != mm(lower+travel-down) {
			t.Fatalf("%+v of %d pieces, %d in reach", r, len(pieces), count)
		}
	})
}

func TestReachRefuses(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	rows := func(r ...arbor.Row) arbor.Stack { return arbor.Stack{Show: r} }
	reach := func(bridge string, trim units.Length, s arbor.Stack) error {
		_, err := f.Reach(bridge, trim, s)
		return err
	}
	access := func(s arbor.Stack) error { _, err := f.Access("rail", s); return err }
	platedRods := carriage
	platedRods.Plate = arbor.Plate{Mass: 1, Thickness: units.Inch / 8, Every: 2 * units.Foot}
	between := mustFly(t, overRail, platedRods, doubled)
	onPlates := func(count int) error {
		_, err := between.Access("rail", rows(arbor.Row{Count: count, Thickness: 2 * units.Inch}))
		return err
	}
	if err := onPlates(35); err != nil {
		t.Errorf("70 in and three plates in 72 in: %v", err)
	}
	window := func(bridge string, bottom, top units.Length) error {
		_, err := f.Window(bridge, bottom, top)
		return err
	}
	lonely := func() error { _, err := (arbor.Flight{}).Access("rail", arbor.Stack{}); return err }
	nan := units.Length(math.NaN())
	for _, tt := range []struct {
		name, reason string
		err          error
		field        string
		kind         error
	}{
		{"unknown bridge", "there is none of that name", reach("moon", 9, thirty), "bridge", units.ErrUnknown},
		{"no bridges", "of a Flight that Fly did not make", lonely(), "bridge", units.ErrUnknown},
		{"out of the travel", "the arbor does not come there", reach("rail", 0.5, thirty), "trim", units.ErrOutOfRange},
		{"stack too high", "37 of 2 in in 6 ft of room", access(rows(arbor.Row{Count: 37, Thickness: 2 * units.Inch})), "stack", units.ErrOutOfRange},
		{"stack without end", "counted, it would take ages and overflow", access(rows(arbor.Row{Count: math.MaxInt, Thickness: 2 * units.Inch})), "stack", units.ErrOutOfRange},
		{"two rows too high", "each would fit", access(rows(arbor.Row{Count: 20, Thickness: 2 * units.Inch}, arbor.Row{Count: 20, Thickness: 2 * units.Inch})), "stack", units.ErrOutOfRange},
		{"no room for plates", "36 of 2 in fill 6 ft", onPlates(36), "stack", units.ErrOutOfRange},
		{"fewer than none", "no such count", access(rows(arbor.Row{Count: -1, Thickness: 2 * units.Inch})), "stack.show[0].count", units.ErrNegative},
		{"no thickness", "pieces take height", access(rows(arbor.Row{Count: 1})), "stack.show[0].thickness", units.ErrMissing},
		{"window of another bridge", "there is none", window("", 0, 1), "bridge", units.ErrUnknown},
		{"window under the bed", "nothing lies there", window("rail", -0.1, 1), "bottom", units.ErrNegative},
		{"window that ends under the bed", "nothing lies there", window("rail", 1, -1), "top", units.ErrNegative},
		{"window over the room", "nothing lies there", window("rail", 0, 2), "top", units.ErrOutOfRange},
		{"window upside down", "the bottom is at most the top", window("rail", 1, 0.5), "bottom", units.ErrOutOfRange},
		{"window that is no number", "no NaN goes in", window("rail", 0, nan), "top", units.ErrNotFinite},
	} {
		if diff := cmp.Diff([]string{tt.field}, fields(t, tt.err)); diff != "" || !errors.Is(tt.err, tt.kind) {
			t.Errorf("%s: %s: got %v\n%s", tt.name, tt.reason, tt.err, diff)
		}
	}
}

// Rows that add up to more than 64 bits of nanometres are a stack that is too tall like any other, in whatever steps they get there:
// in one, or each as high as all below it and the room.
func TestReachOfStacksBeyondCounting(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	metres := func(count int64) arbor.Row {
		return arbor.Row{Name: "a", Count: int(min(count, math.MaxInt)), Mass: 1, Thickness: 1}
	}
	var doubling []arbor.Row
	for n := range 38 {
		doubling = append(doubling, metres(1<<min(n, 30)))
	}
	for name, s := range map[string]arbor.Stack{
		"ten million kilometres of show weight": {Show: []arbor.Row{metres(10_000_000_000)}},
		"pipe weight that doubles":              {Pipe: doubling},
		"show weight that doubles":              {Show: doubling},
	} {
		if got, err := f.Reach("rail", 4*units.Foot, s); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// A stack whose top comes just to where arms reach never goes by above them; one of pieces a nanometre thicker does.
func TestAccessJustWithinReach(t *testing.T) {
	run := arbor.Run{UpperStop: 10, Bridges: []arbor.Bridge{{Name: "b", Floor: 5, High: 3}}} // arms reach to 8 m
	f := mustFly(t, run, arbor.Frame{Length: 3, Room: 2, Capacity: 500}, arbor.Ride{Ratio: 1})
	for thickness, passes := range map[units.Length]bool{0.1: false, 0.100000001: true} {
		s := arbor.Stack{Show: []arbor.Row{{Name: "a", Count: 10, Mass: 10, Thickness: thickness}}}
		got, err := f.Access("b", s) // its foot is at 7 m at the highest
		if err != nil || got.Passes() != passes || (got.Over > 0) != passes {
			t.Errorf("ten of %v: %+v, %v", thickness, got, err)
		}
	}
}
