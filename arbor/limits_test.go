package arbor_test

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// Every limit belongs to what is allowed: just on it nothing is wrong, and just past it the field is told.
func TestLimitsAtTheirEdges(t *testing.T) {
	const mm, g = units.Millimetre, units.Gram
	frame := func(change func(*arbor.Frame)) func() error {
		return func() error {
			f := arbor.Frame{Length: 1000, Room: 10, Capacity: 500}
			change(&f)
			return f.Validate()
		}
	}
	piece := func(change func(*arbor.Piece)) func() error {
		return func() error {
			p := arbor.Piece{Name: "a", Mass: 10, Thickness: 0.02, Count: 1}
			change(&p)
			return arbor.Stock{p}.Validate()
		}
	}
	fill := func(w arbor.Wanted) func() error {
		return func() error {
			_, err := arbor.Frame{Length: 1000, Room: 10, Capacity: 500}.Fill(w, nil, arbor.EitherSide)
			return err
		}
	}
	run := func(change func(*arbor.Run)) func() error {
		return func() error {
			r := arbor.Run{LowerStop: 2, UpperStop: 20}
			change(&r)
			return r.Validate()
		}
	}
	ride := func(r arbor.Ride) func() error { return r.Validate }
	section := func(distance, upstage units.Length) func() error {
		return arbor.Section{Seats: []arbor.Seat{{Distance: 9}, {Distance: distance}}, Edges: []arbor.Edge{{Height: 6, Upstage: upstage}}}.Validate
	}
	venue := func(change func(*arbor.Venue)) func() error {
		return func() error {
			v := wall
			change(&v)
			_, err := v.Compare(1)
			return err
		}
	}
	flight := mustFly(t, overRail, carriage, doubled)
	hides := func(drop units.Length) func() error {
		return func() error { _, err := flight.Hides(auditorium, 20*units.Foot, drop); return err }
	}
	trims := func(high units.Length) func() error {
		return func() error { _, err := flight.Trims(5, high); return err }
	}
	window := func(bottom, top units.Length) func() error {
		return func() error { _, err := flight.Window("rail", bottom, top); return err }
	}
	density := func(length, width units.Length) func() error {
		return func() error {
			_, err := arbor.Compact{Pieces: 1, Height: 1, PerHeight: 1}.Density(length, width)
			return err
		}
	}
	within := func(steps int) func() error {
		return func() error {
			_, err := tall.FillWithin(steps, arbor.Wanted{Show: 10}, house, arbor.EitherSide)
			return err
		}
	}
	stays := func(rows ...arbor.Row) func() error {
		return func() error {
			_, err := arbor.Frame{Length: 1000, Room: 1000, Capacity: 50_000}.Refill(arbor.Stack{Pipe: rows}, arbor.Wanted{}, nil, arbor.EitherSide, 0)
			return err
		}
	}
	tonnes := func(name string, count int) arbor.Row {
		return arbor.Row{Name: name, Count: count, Mass: units.Tonne, Thickness: mm}
	}
	metres := func(name string, count int) arbor.Row {
		return arbor.Row{Name: name, Count: count, Mass: 1, Thickness: units.Metre}
	}
	shows := func(kinds arbor.Stock, row arbor.Row) func() error {
		return func() error {
			_, err := tall.Refill(arbor.Stack{Show: []arbor.Row{row}}, arbor.Wanted{}, kinds, arbor.EitherSide, 0)
			return err
		}
	}
	jobs := func(n int) func() error {
		return func() error {
			_, err := arbor.Allot(make([]arbor.Job, n), nil)
			if !slices.Contains(fields(t, err), "jobs") {
				return nil // of the jobs themselves, which are empty
			}
			return err
		}
	}
	nothing := func() error { return nil }
	for _, c := range []struct {
		name     string
		on, past func() error
		field    string
	}{
		{"longest arbor", frame(func(f *arbor.Frame) { f.Length = 1000 }), frame(func(f *arbor.Frame) { f.Length = 1000 + mm }), "length"},
		{"least room", frame(func(f *arbor.Frame) { f.Room = 0.1 * mm }), frame(func(f *arbor.Frame) { f.Room = 0.099 * mm }), "room"},
		{"room of the whole length", frame(func(f *arbor.Frame) { f.Room = 1000 }), frame(func(f *arbor.Frame) { f.Room, f.Length = 10+mm, 10 }), "room"},
		{"least capacity", frame(func(f *arbor.Frame) { f.Capacity = g }), frame(func(f *arbor.Frame) { f.Capacity = 0.99 * g }), "capacity"},
		{"most capacity", frame(func(f *arbor.Frame) { f.Capacity = 50_000 }), frame(func(f *arbor.Frame) { f.Capacity = 50_000 + g }), "capacity"},
		{"closest plates", frame(func(f *arbor.Frame) { f.Plate = arbor.Plate{g, mm, mm} }), frame(func(f *arbor.Frame) { f.Plate = arbor.Plate{g, mm, 0.99 * mm} }), "plate.every"},
		{"lightest plate", frame(func(f *arbor.Frame) { f.Plate = arbor.Plate{g, mm, 1} }), frame(func(f *arbor.Frame) { f.Plate = arbor.Plate{0.99 * g, mm, 1} }), "plate.mass"},
		{"thickest plate", frame(func(f *arbor.Frame) { f.Plate = arbor.Plate{g, 1, 1} }), frame(func(f *arbor.Frame) { f.Plate = arbor.Plate{g, 1 + mm, 1} }), "plate.thickness"},
		{"lock plate that is all the capacity", frame(func(f *arbor.Frame) { f.Lock = arbor.Lock{500, mm} }), frame(func(f *arbor.Frame) { f.Lock = arbor.Lock{500 + g, mm} }), "lock.mass"},
		{"lock plate that takes all the room", frame(func(f *arbor.Frame) { f.Lock, f.Room = arbor.Lock{1, 0.5}, 0.5 }), frame(func(f *arbor.Frame) { f.Lock, f.Room = arbor.Lock{1, 0.5}, 0.499 }), "lock.thickness"},
		{"lock plate of no mass", nothing, frame(func(f *arbor.Frame) { f.Lock = arbor.Lock{1001, mm} }), "lock.mass"},
		{"lock plate of no height", nothing, frame(func(f *arbor.Frame) { f.Lock, f.Room = arbor.Lock{1, 2}, 1.5 }), "lock.thickness"},
		{"lightest piece", piece(func(p *arbor.Piece) { p.Mass = g }), piece(func(p *arbor.Piece) { p.Mass = 0.99 * g }), "[0].mass"},
		{"heaviest piece", piece(func(p *arbor.Piece) { p.Mass = 1000 }), piece(func(p *arbor.Piece) { p.Mass = 1000 + g }), "[0].mass"},
		{"thinnest piece", piece(func(p *arbor.Piece) { p.Thickness = 0.1 * mm }), piece(func(p *arbor.Piece) { p.Thickness = 0.099 * mm }), "[0].thickness"},
		{"thickest piece", piece(func(p *arbor.Piece) { p.Thickness = 1 }), piece(func(p *arbor.Piece) { p.Thickness = 1 + mm }), "[0].thickness"},
		{"fewest pieces", piece(func(p *arbor.Piece) { p.Count = 0 }), piece(func(p *arbor.Piece) { p.Count = -1 }), "[0].count"},
		{"most pieces", piece(func(p *arbor.Piece) { p.Count = 1_000_000 }), piece(func(p *arbor.Piece) { p.Count = 1_000_001 }), "[0].count"},
		{"most pipe weight", fill(arbor.Wanted{Pipe: 50_000}), fill(arbor.Wanted{Pipe: 50_000 + g}), "wanted.pipe"},
		{"least pipe weight", fill(arbor.Wanted{Pipe: -50_000}), fill(arbor.Wanted{Pipe: -50_000 - g}), "wanted.pipe"},
		{"most show weight", fill(arbor.Wanted{Show: 50_000}), fill(arbor.Wanted{Show: 50_000 + g}), "wanted.show"},
		{"least show weight, to half a nanogram", fill(arbor.Wanted{Show: -4e-13}), fill(arbor.Wanted{Show: -6e-13}), "wanted.show"},
		{"head block at the stop", run(func(r *arbor.Run) { r.HeadBlock = 20 }), run(func(r *arbor.Run) { r.HeadBlock = 20 - mm }), "head_block"},
		{"highest stop", run(func(r *arbor.Run) { r.UpperStop = 1000 }), run(func(r *arbor.Run) { r.UpperStop = 1000 + mm }), "upper_stop"},
		{"deepest pit", run(func(r *arbor.Run) { r.LowerStop = -1000 }), run(func(r *arbor.Run) { r.LowerStop = -1000 - mm }), "lower_stop"},
		{"arms that reach up just over nought", run(func(r *arbor.Run) { r.Bridges = []arbor.Bridge{{Name: "b", Low: 1, High: 1 + mm}} }), run(func(r *arbor.Run) { r.Bridges = []arbor.Bridge{{Name: "b", Low: 1, High: 1}} }), "bridges[0].high"},
		{"lowest arms, whatever the highest", run(func(r *arbor.Run) { r.Bridges = []arbor.Bridge{{Name: "b", Low: -1000, High: 2}} }), run(func(r *arbor.Run) { r.Bridges = []arbor.Bridge{{Name: "b", Low: 1000 + mm, High: 2}} }), "bridges[0].low"},
		{"highest arms, told once", run(func(r *arbor.Run) { r.Bridges = []arbor.Bridge{{Name: "b", High: 1000}} }), run(func(r *arbor.Run) { r.Bridges = []arbor.Bridge{{Name: "b", High: -1000 - mm}} }), "bridges[0].high"},
		{"highest trim", trims(1000), trims(-1000 - mm), "high_trim"},
		{"highest bed", ride(arbor.Ride{Ratio: 1, Bed: 1000}), ride(arbor.Ride{Ratio: 1, Bed: 1000 + mm}), "bed"},
		{"least ratio", ride(arbor.Ride{Ratio: 1.0 / 16}), ride(arbor.Ride{Ratio: 0.0624}), "ratio"},
		{"greatest ratio", ride(arbor.Ride{Ratio: 16}), ride(arbor.Ride{Ratio: 16.01}), "ratio"},
		{"nearest seat", section(0.01, 1), section(0.0099, 1), "seats[1].distance"},
		{"edge before the front seat", section(5, -4.99), section(5, -4.991), "edges[0].upstage"},
		{"heaviest batten", venue(func(v *arbor.Venue) { v.Bare = 3125 }), venue(func(v *arbor.Venue) { v.Bare = 3125 + g }), "bare"},
		{"heaviest load", venue(func(v *arbor.Venue) { v.Load = 3125 }), venue(func(v *arbor.Venue) { v.Load = 3125 + g }), "load"},
		{"heaviest arbor", venue(func(v *arbor.Venue) { v.Frame.Tare = 50_000 }), venue(func(v *arbor.Venue) { v.Frame.Tare = 50_000 + g }), "frame.tare"},
		{"trims that are one", venue(func(v *arbor.Venue) { v.High = v.Low }), venue(func(v *arbor.Venue) { v.High = v.Low - mm }), "low_trim"},
		{"longest drop", hides(1000), hides(1000 + mm), "drop"},
		{"window of the whole room", window(0, 6*units.Foot), window(0, 6*units.Foot+mm), "top"},
		{"window of no height", window(0.5, 0.5), window(0.5+mm, 0.5), "bottom"},
		{"shortest piece", density(mm, 1), density(0.99*mm, 1), "length"},
		{"longest piece", density(1000, 1), density(1000+mm, 1), "length"},
		{"narrowest piece", density(1, mm), density(1, 0.99*mm), "width"},
		{"fewest steps", within(1), within(0), "steps"},
		{"most pipe weight that stays", stays(tonnes("a", 50)), stays(tonnes("a", 51)), "today.pipe"},
		{"most in two rows", stays(tonnes("a", 25), tonnes("b", 25)), stays(tonnes("a", 25), tonnes("b", 26)), "today.pipe"},
		{"most in two rows, one of them too much", nothing, stays(tonnes("a", 51), tonnes("b", 1)), "today.pipe"},
		{"a million that are nothing in whole nanograms of 64 bits", nothing, stays(arbor.Row{Name: "a", Count: 1_000_000, Mass: 18.44674407371, Thickness: 0.1 * mm}), "today.pipe"},
		{"highest pipe weight that stays", stays(metres("a", 1000)), stays(metres("a", 1001)), "today.pipe"},
		{"highest in two rows", stays(metres("a", 500), metres("b", 500)), stays(metres("a", 500), metres("b", 501)), "today.pipe"},
		{"highest in two rows, one of them too high", nothing, stays(metres("a", 1001), metres("b", 1)), "today.pipe"},
		{"32 kinds in stock and in the arbor", shows(kinds(31), row("more", 1, 44, 2)), shows(kinds(32), row("more", 1, 44, 2)), "today.show"},
		{"32 kinds, one of them in the arbor", shows(kinds(32), arbor.Row{Name: "A", Count: 1, Mass: 1, Thickness: 0.01}), shows(kinds(32), row("more", 1, 44, 2)), "today.show"},
		{"2000 jobs", jobs(2000), jobs(2001), "jobs"},
	} {
		var none *arbor.NoStackError
		if err := c.on(); err != nil && !errors.As(err, &none) {
			t.Errorf("%s: on the limit: %v", c.name, err)
		}
		if err := c.past(); err == nil || !slices.Equal(fields(t, err), []string{c.field}) || !errors.Is(err, units.ErrOutOfRange) && !errors.Is(err, units.ErrNegative) {
			t.Errorf("%s: past it: %v, want a fault of %s alone", c.name, err, c.field)
		}
	}
}

// What is refused says what would be right.
func TestRefusalsSayWhatWouldBeRight(t *testing.T) {
	_, noBridge := mustFly(t, arbor.Run{UpperStop: 20}, carriage, doubled).Reach("rail", 5, arbor.Stack{})
	_, otherBridge := mustFly(t, overRail, carriage, doubled).Reach("moon", 5, arbor.Stack{})
	_, bed := overRail.Fly(arbor.Frame{Length: 4, Room: 3, Capacity: 500}, arbor.Ride{Ratio: 1, Bed: 1.5})
	_, ideal := arbor.Frame{Length: 3, Room: 2}.Ideal(arbor.Wanted{}, nil, arbor.EitherSide)
	_, refill := arbor.Frame{Length: 3, Room: 2}.Refill(arbor.Stack{}, arbor.Wanted{}, nil, arbor.EitherSide, 0)
	_, ship := tall.Fill(arbor.Wanted{Pipe: 60_000}, nil, arbor.EitherSide)
	_, referred := arbor.Stack{}.Referred(0.00012345)
	_, side := arbor.Side(3).MarshalText()
	_, layer := arbor.LayerOf(4).MarshalText()
	_, ratio := overRail.Fly(carriage, arbor.Ride{Ratio: math.Inf(-1)})
	_, crane := overRail.Fly(carriage, arbor.Ride{Ratio: 17.25})
	_, none := arbor.Allot([]arbor.Job{{Name: "a", Frame: arbor.Frame{Length: 3, Room: 2, Capacity: 9}, Ratio: -2.5}}, nil)
	for _, c := range []struct {
		name         string
		err          error
		field, value string
		want         string
	}{
		{"no bridge", noBridge, "bridge", `"rail"`, "a run with bridges"},
		{"another bridge", otherBridge, "bridge", `"moon"`, `a bridge of the run: "upper bridge", "rail"`},
		{"bed", bed, "ride.bed", "(1.5 m)", "at most 3' 3 3/8\" (1 m)"},
		{"arbor too long", arbor.Run{LowerStop: 5, UpperStop: 7}.ValidateFor(arbor.Frame{Length: 3}), "upper_stop", "(7 m)", "at least 26' 2 15/16\" (8 m)"},
		{"height", arbor.Run{LowerStop: -1001, UpperStop: 7}.Validate(), "lower_stop", "(-1001 m)", "from -3280' 10 1/16\" (-1000 m) to 3280' 10 1/16\" (1000 m)"},
		{"edge", arbor.Section{Seats: []arbor.Seat{{Distance: 5}}, Edges: []arbor.Edge{{Upstage: -6, Height: 5}}}.Validate(), "edges[0].upstage", "(-6 m)", "more than -16' 4 7/8\" (-5 m)"},
		{"frame of an ideal stack", ideal, "capacity", "", "the most mass"},
		{"frame of a refill", refill, "capacity", "", "the most mass"},
		{"side", side, "side", "Side(3)", `"either"`},
		{"layer", layer, "of", "LayerOf(4)", `"pipe weight"`},
		{"ratio without end", ratio, "ride.ratio", "-Inf", "such as 1 or 2"},
		{"ratio of a crane", crane, "ride.ratio", "17.25", "from 1/16 to 16"},
		{"ratio of a job", none, "jobs[0].ratio", "-2.5", "above zero"},
		{"pipe weight of a ship", ship, "wanted.pipe", "(60000 kg)", "from -110231.13 lb (-50000 kg) to 110231.13 lb (50000 kg)"},
		{"ratio of an error", referred, "ratio", "0.00012345", "from 1/1000"},
		{"piece of two tonnes", arbor.Stock{{Name: "44", Mass: 2000, Thickness: 0.01}}.Validate(), "[0].mass", "(2000 kg)", "from 0 lb (0.001 kg) to 2204.62 lb (1000 kg)"},
	} {
		var fe *units.FieldError
		if !errors.As(c.err, &fe) || fe.Field != c.field || !strings.Contains(fe.Value, c.value) || !strings.Contains(fe.Want, c.want) {
			t.Errorf("%s: %+v (%v), want %s %s to be %s", c.name, fe, c.err, c.field, c.value, c.want)
		}
	}
}

// Nine thousand rows of a kilometre each are more than 64 bits of nanometres, and too high all the same; and too heavy.
func TestRowsBeyondCounting(t *testing.T) {
	var rows []arbor.Row
	for n := range 9_300 {
		rows = append(rows, arbor.Row{Name: strconv.Itoa(n), Count: 1_000_000, Mass: units.Gram, Thickness: units.Metre})
	}
	_, err := arbor.Frame{Length: 1000, Room: 1000, Capacity: 50_000}.Refill(arbor.Stack{Pipe: rows}, arbor.Wanted{}, nil, arbor.EitherSide, 0)
	if got := fields(t, err); !slices.Equal(got, []string{"today.pipe", "today.pipe"}) {
		t.Errorf("%v: %v, want too heavy and too high", got, err)
	}
}

// A ratio without end is no number at all, on either side of nought.
func TestRatiosWithoutEnd(t *testing.T) {
	for _, ratio := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		if err := (arbor.Ride{Ratio: ratio}).Validate(); !errors.Is(err, units.ErrNotFinite) || errors.Is(err, units.ErrNegative) {
			t.Errorf("%v: %v", ratio, err)
		}
	}
}

// What has no end is told once, and not as too much besides.
func TestWishesWithoutEnd(t *testing.T) {
	for _, much := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		for field, w := range map[string]arbor.Wanted{"wanted.pipe": {Pipe: units.Mass(much)}, "wanted.show": {Show: units.Mass(much)}} {
			if _, err := tall.Fill(w, house, arbor.EitherSide); !slices.Equal(fields(t, err), []string{field}) {
				t.Errorf("%v: %v, want a fault of %s alone", much, err, field)
			}
		}
	}
}
