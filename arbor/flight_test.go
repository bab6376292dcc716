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

// overRail is a double purchase wall: an elevated rail, a grid at 56 ft, bridges.
var overRail = arbor.Run{
	LowerStop: 22 * units.Foot, UpperStop: 53 * units.Foot,
	HeadBlock: 55 * units.Foot, LoftBlocks: 54 * units.Foot, Grid: 56 * units.Foot, Rail: 20 * units.Foot,
	Bridges: []arbor.Bridge{
		{Name: "upper bridge", Floor: 40 * units.Foot, Low: 1 * units.Foot, High: 6 * units.Foot},
		{Name: "rail", Floor: 21 * units.Foot, High: 6 * units.Foot},
	},
}

// carriage is 8 ft long; its pieces stand 6 in above its foot.
var carriage = arbor.Frame{Tare: 96 * units.Pound, Length: 8 * units.Foot, Room: 6 * units.Foot, Capacity: 1400 * units.Pound}

var doubled = arbor.Ride{Ratio: 2, MadeOff: 4 * units.Foot, Bed: 6 * units.Inch}

func mustFly(t testing.TB, run arbor.Run, f arbor.Frame, ride arbor.Ride) arbor.Flight {
	t.Helper()
	flight, err := run.Fly(f, ride)
	if err != nil {
		t.Fatal(err)
	}
	return flight
}

// feet is a whole number of quarter inches as feet, exact to the nanometre.
func feet(quarters int) units.Length {
	return units.Length(float64(int64(quarters)*6_350_000) / 1e9)
}

// Worked by hand: 53 − 22 − 8 ft leave the arbor 23 ft, the batten 46 ft.
func TestFly(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	for _, tt := range []struct {
		name string
		got  units.Length
		want int // quarter inches
	}{
		{"arbor travel", f.Arbor, 23 * 48},
		{"batten travel", f.Batten, 46 * 48},
		{"lowest trim, as made off", f.Lowest, 4 * 48},
		{"highest trim", f.Highest, 50 * 48},
		{"arbor's top at its lowest", f.LowestTop, 30 * 48},
		{"arbor's top at its highest", f.HighestTop, 53 * 48},
		{"under the head block", f.UnderHead.Clear, 2 * 48},
		{"under the loft blocks", f.UnderLoft.Clear, 4 * 48},
		{"under the grid", f.UnderGrid.Clear, 6 * 48},
		{"under the rail", f.UnderRail.Clear, 20 * 48},
		{"under the arbor", f.UnderArbor, 22 * 48},
	} {
		if tt.got != feet(tt.want) {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, feet(tt.want))
		}
	}
	bare := mustFly(t, arbor.Run{UpperStop: 53 * units.Foot}, carriage, arbor.Ride{Ratio: 1})
	if none := (arbor.Clearance{}); bare.UnderHead != none || bare.UnderLoft != none || bare.UnderGrid != none || bare.UnderRail != none {
		t.Errorf("what is not given has no clearance: %+v", bare)
	}
	low := mustFly(t, arbor.Run{UpperStop: 53 * units.Foot, LoftBlocks: 40 * units.Foot}, carriage, arbor.Ride{Ratio: 1})
	if got := low.UnderLoft; !got.Given || got.Clear != feet(-5*48) {
		t.Errorf("the batten would come 5 ft past the loft blocks: %+v", got)
	}
}

func TestTrims(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	got, err := f.Trims(5*units.Foot, 52*units.Foot)
	want := arbor.Trims{
		Low: 5 * units.Foot, High: 52 * units.Foot,
		Wanted: feet(47 * 48), ArborWanted: feet(47 * 24), Below: feet(48), Above: feet(-2 * 48),
	}
	if diff := cmp.Diff(want, got); err != nil || diff != "" || got.Reached() {
		t.Errorf("2 ft short at high trim: %v\n%s", err, diff)
	}
	if all, err := f.Trims(4*units.Foot, 50*units.Foot); err != nil || !all.Reached() || all.Below != 0 || all.Above != 0 {
		t.Errorf("the whole travel is reached: %+v, %v", all, err)
	}
	if below, err := f.Trims(3*units.Foot, 50*units.Foot); err != nil || below.Reached() || below.Below != feet(-48) {
		t.Errorf("1 ft short at low trim: %+v, %v", below, err)
	}
}

// length draws a length in whole steps of a tenth of an inch or a millimetre.
func length(t *rapid.T, name string, least, greatest int) units.Length {
	n := float64(rapid.IntRange(least, greatest).Draw(t, name))
	if rapid.Bool().Draw(t, name+" in inches") {
		return units.Inch.Scale(n / 10)
	}
	return units.Millimetre.Scale(n)
}

// randomFlight draws an arbor that fits in its run.
func randomFlight(t *rapid.T) (arbor.Run, arbor.Frame, arbor.Ride) {
	f := arbor.Frame{Length: length(t, "length", 500, 3000), Capacity: 500, Tare: 40}
	f.Room = f.Length.Scale(rapid.Float64Range(0.1, 0.9).Draw(t, "room"))
	run := arbor.Run{LowerStop: length(t, "lower stop", -2000, 9000)}
	run.UpperStop = run.LowerStop + f.Length + length(t, "travel", 1, 20000)
	ride := arbor.Ride{
		Ratio:   rapid.OneOf(rapid.SampledFrom([]float64{1, 2, 3, 1.5}), rapid.Float64Range(0.5, 4)).Draw(t, "ratio"),
		MadeOff: length(t, "made off", 0, 3000),
	}
	return run, f, ride
}

const nanometre = 1e-9

// Travel is conserved: what the batten gains is the ratio times what the arbor
// loses, wherever it is; and the way there and back ends where it began.
func TestTravelIsConserved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, frame, ride := randomFlight(t)
		f := mustFlyRapid(t, run, frame, ride)
		part := rapid.Float64Range(0, 1).Draw(t, "part")
		top := f.LowestTop + (f.HighestTop - f.LowestTop).Scale(part)
		trim, err := f.Trim(top)
		if err != nil {
			t.Fatal(err)
		}
		gained, lost := float64(trim-f.Lowest), float64(f.HighestTop-top)
		if math.Abs(gained-ride.Ratio*lost) > (1+ride.Ratio)*nanometre {
			t.Fatalf("the batten gained %v while the arbor lost %v", gained, lost)
		}
		back, err := f.Top(trim)
		// Each way rounds to whole nanometres.
		if err != nil || math.Abs(float64(back-top)) > (1+1/ride.Ratio)*nanometre {
			t.Fatalf("back at %v from %v, %v", back, top, err)
		}
		if x, err := f.Trim(f.HighestTop); err != nil || x != f.Lowest {
			t.Fatalf("lowest trim %v, want %v, %v", x, f.Lowest, err)
		}
		if x, err := f.Trim(f.LowestTop); err != nil || x != f.Highest {
			t.Fatalf("highest trim %v, want %v, %v", x, f.Highest, err)
		}
		if y, err := f.Top(f.Lowest); err != nil || y != f.HighestTop {
			t.Fatalf("highest top %v, want %v, %v", y, f.HighestTop, err)
		}
		// Half a nanometre of the batten is one of the arbor at most here, and it does not leave its run for it.
		if y, err := f.Top(f.Highest); err != nil || y < f.LowestTop || float64(y-f.LowestTop) > 1.5*nanometre {
			t.Fatalf("lowest top %v, want %v, %v", y, f.LowestTop, err)
		}
	})
}

func mustFlyRapid(t *rapid.T, run arbor.Run, f arbor.Frame, ride arbor.Ride) arbor.Flight {
	flight, err := run.Fly(f, ride)
	if err != nil {
		t.Fatal(err)
	}
	return flight
}

// Twice the ratio, half the arbor travel that the same trims need.
func TestTwiceTheRatioHalvesTheTravelWanted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, frame, ride := randomFlight(t)
		ride.Ratio = rapid.Float64Range(0.5, 4).Draw(t, "ratio")
		low := length(t, "low", 0, 9000)
		high := low + length(t, "wanted", 0, 20000)
		once, err := mustFlyRapid(t, run, frame, ride).Trims(low, high)
		if err != nil {
			t.Fatal(err)
		}
		ride.Ratio *= 2
		twice, err := mustFlyRapid(t, run, frame, ride).Trims(low, high)
		if err != nil {
			t.Fatal(err)
		}
		// Each is rounded up to the nanometre.
		if d := float64(once.ArborWanted - 2*twice.ArborWanted); d > 0.1*nanometre || d < -1.1*nanometre {
			t.Fatalf("%v and %v differ by %v", once.ArborWanted, twice.ArborWanted, d)
		}
	})
}

func TestFlyRefuses(t *testing.T) {
	run := func(change func(*arbor.Run)) error {
		r := overRail
		r.Bridges = append([]arbor.Bridge(nil), r.Bridges...)
		change(&r)
		_, err := r.Fly(carriage, doubled)
		return err
	}
	ride := func(change func(*arbor.Ride)) error {
		r := doubled
		change(&r)
		_, err := overRail.Fly(carriage, r)
		return err
	}
	frame := func(change func(*arbor.Frame)) error {
		f := carriage
		change(&f)
		_, err := overRail.Fly(f, doubled)
		return err
	}
	f := mustFly(t, overRail, carriage, doubled)
	top := func(trim units.Length) error { _, err := f.Top(trim); return err }
	trim := func(top units.Length) error { _, err := f.Trim(top); return err }
	trims := func(low, high units.Length) error { _, err := f.Trims(low, high); return err }
	nan := units.Length(math.NaN())
	for _, tt := range []struct {
		name, reason string
		err          error
		field        string
		kind         error
	}{
		{"upper stop below lower", "the stops are crossed", run(func(r *arbor.Run) { r.UpperStop = 21 * units.Foot }), "upper_stop", units.ErrOutOfRange},
		{"no upper stop", "must be given", run(func(r *arbor.Run) { r.UpperStop = 0 }), "upper_stop", units.ErrMissing},
		{"arbor too long", "8 ft in 7 ft", run(func(r *arbor.Run) { r.UpperStop = 29 * units.Foot }), "upper_stop", units.ErrOutOfRange},
		{"head block under the stop", "the arbor would run into it", run(func(r *arbor.Run) { r.HeadBlock = 52 * units.Foot }), "head_block", units.ErrOutOfRange},
		{"endless loft", "no infinity goes in", run(func(r *arbor.Run) { r.LoftBlocks = units.Length(math.Inf(1)) }), "loft_blocks", units.ErrNotFinite},
		{"grid in millimetres", "a slip of the unit", run(func(r *arbor.Run) { r.Grid = 18_000 }), "grid", units.ErrOutOfRange},
		{"rail that is no number", "no NaN goes in", run(func(r *arbor.Run) { r.Rail = nan }), "rail", units.ErrNotFinite},
		{"bridge without a name", "cannot be asked for", run(func(r *arbor.Run) { r.Bridges[1].Name = " " }), "bridges[1].name", units.ErrMissing},
		{"two bridges of a name", "which is meant?", run(func(r *arbor.Run) { r.Bridges[1].Name = "upper bridge" }), "bridges[1].name", units.ErrDuplicate},
		{"arms without end", "no infinity goes in", run(func(r *arbor.Run) { r.Bridges[0].High = units.Length(math.Inf(1)) }), "bridges[0].high", units.ErrNotFinite},
		{"no reach", "must be given", run(func(r *arbor.Run) { r.Bridges[1].High = 0 }), "bridges[1].high", units.ErrMissing},
		{"reach upside down", "the highest is above the lowest", run(func(r *arbor.Run) { r.Bridges[0].High = 0.1 }), "bridges[0].high", units.ErrOutOfRange},
		{"floor that is no number", "no NaN goes in", run(func(r *arbor.Run) { r.Bridges[0].Floor = nan }), "bridges[0].floor", units.ErrNotFinite},
		{"no ratio", "single or double must be said", ride(func(r *arbor.Ride) { r.Ratio = 0 }), "ride.ratio", units.ErrMissing},
		{"negative ratio", "the batten goes the other way by itself", ride(func(r *arbor.Ride) { r.Ratio = -2 }), "ride.ratio", units.ErrNegative},
		{"ratio of a lever", "no counterweight set", ride(func(r *arbor.Ride) { r.Ratio = 0.05 }), "ride.ratio", units.ErrOutOfRange},
		{"ratio that is no number", "no NaN goes in", ride(func(r *arbor.Ride) { r.Ratio = math.NaN() }), "ride.ratio", units.ErrNotFinite},
		{"ratio of a crane", "no counterweight set", ride(func(r *arbor.Ride) { r.Ratio = 17 }), "ride.ratio", units.ErrOutOfRange},
		{"made off in millimetres", "a slip of the unit", ride(func(r *arbor.Ride) { r.MadeOff = 1200 }), "ride.made_off", units.ErrOutOfRange},
		{"bed under the foot", "pieces do not hang", ride(func(r *arbor.Ride) { r.Bed = -0.1 }), "ride.bed", units.ErrNegative},
		{"bed too high", "2 ft are beside the room", ride(func(r *arbor.Ride) { r.Bed = 2*units.Foot + units.Millimetre }), "ride.bed", units.ErrOutOfRange},
		{"bed just fits", "2 ft are beside the room", ride(func(r *arbor.Ride) { r.Bed = 2 * units.Foot }), "", nil},
		{"frame without room", "must be given", frame(func(f *arbor.Frame) { f.Room = 0 }), "frame.room", units.ErrMissing},
		{"frame without length", "must be given", frame(func(f *arbor.Frame) { f.Length = 0 }), "frame.length", units.ErrMissing},
		{"below all trims", "the upper stop holds the arbor", top(3 * units.Foot), "trim", units.ErrOutOfRange},
		{"above all trims", "the lower stop holds the arbor", top(51 * units.Foot), "trim", units.ErrOutOfRange},
		{"trim that is no number", "no NaN goes in", top(nan), "trim", units.ErrNotFinite},
		{"above the stop", "the arbor's top ends at 53 ft", trim(54 * units.Foot), "top", units.ErrOutOfRange},
		{"top that is no number", "no NaN goes in", trim(nan), "top", units.ErrNotFinite},
		{"trims crossed", "low is at most high", trims(9, 8), "low_trim", units.ErrOutOfRange},
		{"high trim that is no number", "no NaN goes in", trims(9, nan), "high_trim", units.ErrNotFinite},
	} {
		if tt.kind == nil {
			if tt.err != nil {
				t.Errorf("%s: %s: %v", tt.name, tt.reason, tt.err)
			}
			continue
		}
		if diff := cmp.Diff([]string{tt.field}, fields(t, tt.err)); diff != "" || !errors.Is(tt.err, tt.kind) {
			t.Errorf("%s: %s: got %v\n%s", tt.name, tt.reason, tt.err, diff)
		}
	}
	_, err := (arbor.Run{Grid: nan}).Fly(arbor.Frame{}, arbor.Ride{})
	want := []string{"upper_stop", "grid", "frame.length", "frame.room", "frame.capacity", "ride.ratio"}
	if diff := cmp.Diff(want, fields(t, err)); diff != "" {
		t.Errorf("all at once\n%s", diff)
	}
}

// A question that is refused has no answer.
func TestNoHeightWithAFault(t *testing.T) {
	f := mustFly(t, overRail, carriage, doubled)
	trim, err := f.Trim(54 * units.Foot)
	top, err2 := f.Top(51 * units.Foot)
	if trim != 0 || top != 0 || err == nil || err2 == nil {
		t.Errorf("%v and %v, %v, %v", trim, top, err, err2)
	}
}

// What the caller's slice holds afterwards changes nothing.
func TestFlyKeepsItsBridges(t *testing.T) {
	run := overRail
	run.Bridges = []arbor.Bridge{{Name: "bridge", High: 2}}
	f := mustFly(t, run, carriage, doubled)
	run.Bridges[0].Name = "another"
	if _, err := f.Window("bridge", 0, 0.1); err != nil {
		t.Error(err)
	}
}
