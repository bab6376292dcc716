package arbor_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// wall is 60 ft high. Pieces are 20 lb to the inch; the arbor is 1 ft 6 in longer
// than its room and weighs 100 lb, as does the batten.
var wall = arbor.Venue{
	Run:   arbor.Run{LowerStop: 2 * units.Foot, UpperStop: 60 * units.Foot},
	Frame: arbor.Frame{Tare: 100 * units.Pound, Length: 7.5 * units.Foot, Room: 6 * units.Foot, Capacity: 1600 * units.Pound},
	Stock: arbor.Stock{{Name: "20", Mass: 20 * units.Pound, Thickness: 1 * units.Inch, Count: 200}},
	Bare:  100 * units.Pound, Load: 600 * units.Pound,
	Low: 4 * units.Foot, High: 52 * units.Foot, MadeOff: 3 * units.Foot,
}

// Worked by hand. In single purchase the arbor answers 700 lb with its own 100 and
// 30 pieces, 30 in high; it is 30 + 18 in = 4 ft long and flies 48 ft: the lower stop may be
// at 60 − 48 − 4 = 8 ft. In double it answers 1400 lb with 65 pieces, is 83 in long and
// flies 24 ft: the stop may be at 60 − 24 − 6 11/12 = 29 1/12 ft.
func TestCompare(t *testing.T) {
	options, err := wall.Compare(1, 2)
	if err != nil || len(options) != 2 {
		t.Fatalf("%+v, %v", options, err)
	}
	single, double := options[0], options[1]
	for _, tt := range []struct {
		name string
		got  any
		want any
	}{
		{"ratios", [2]float64{single.Ratio, double.Ratio}, [2]float64{1, 2}},
		{"single: arbor travel", single.Travel, feet(48 * 48)},
		{"double: arbor travel", double.Travel, feet(24 * 48)},
		{"single: pieces handled", single.Stack.Pieces, 30},
		{"double: pieces handled", double.Stack.Pieces, 65},
		{"single: arbor", single.Frame.Length, feet(4 * 48)},
		{"double: arbor", double.Frame.Length, feet(83 * 4)},
		{"double: its room", double.Frame.Room, feet(65 * 4)},
		{"single: lower stop anew", single.Anew.Stop.LowerStop, feet(8 * 48)},
		{"double: lower stop anew", double.Anew.Stop.LowerStop, feet(60*48 - 24*48 - 83*4)},
		{"single: wing freed", single.Anew.Stop.Freed, feet(6 * 48)},
		// Made off at 3 ft, the arbor must fly 1 ft more, or in double purchase 6 in.
		{"single: lower stop today", single.Today.Stop.LowerStop, feet(7 * 48)},
		{"double: lower stop today", double.Today.Stop.LowerStop, feet(60*48 - 24*48 - 24 - 83*4)},
		// Over a stop at 2 ft: 58 ft, less 48, 49, 24 or 24.5 ft of travel; of that 18 in are not room.
		{"single: longest arbor", single.Anew.Longest.Length, feet(10 * 48)},
		{"single: longest arbor today", single.Today.Longest.Length, feet(9 * 48)},
		{"double: longest arbor", double.Anew.Longest.Length, feet(34 * 48)},
		{"double: longest arbor today", double.Today.Longest.Length, feet(33.5 * 48)},
		// Capacity is 1600 lb, 80 pieces of 1 in: 6 ft 8 in. In 8.5 and 7.5 ft of room it binds first.
		{"single: most pieces", single.Anew.Most.Pieces, 80},
		{"single: hangs", single.Anew.Hangs, units.Mass(0.45359237 * (1700 - 100))},
		{"double: most pieces", double.Today.Most.Pieces, 80},
		{"double: hangs", double.Today.Hangs, units.Mass(0.45359237 * (850 - 100))},
		{"single: over capacity", single.Over, units.Mass(-0.45359237 * 1000)},
		{"double: counterweight", double.Counterweight, units.Mass(0.45359237 * 1400)},
	} {
		if diff := cmp.Diff(tt.want, tt.got, cmp.Comparer(func(a, b units.Mass) bool { return a.Within(b, 1e-11) })); diff != "" {
			t.Errorf("%s\n%s", tt.name, diff)
		}
	}
}

// A rail at 30 ft leaves a single purchase arbor no run for the trims, and a
// double purchase one the room of 30 − 24 − 1.5 ft: 54 pieces, which with the arbor
// answer 590 lb at the batten.
func TestCompareOverRail(t *testing.T) {
	v := wall
	v.Run.LowerStop = 30 * units.Foot
	options, err := v.Compare(1, 2)
	if err != nil {
		t.Fatal(err)
	}
	if s := options[0].Anew; s.Longest.Length != feet(-18*48) || s.Most.Pieces != 0 || s.Hangs != 0 || s.Stop.Freed != feet(-22*48) {
		t.Errorf("single: %+v", s)
	}
	if d := options[1].Anew; d.Longest.Room != feet(4.5*48) || d.Most.Pieces != 54 || !d.Hangs.Within(490*units.Pound, 1e-11) || d.Stop.Freed != feet(-11*4) {
		t.Errorf("double: %+v", d)
	}
}

// An arbor that outweighs the bare batten, and one that may hold less than the
// bare batten wants: the most that fits keeps to the capacity.
func TestCompareMost(t *testing.T) {
	v := wall
	v.Bare = 20 * units.Pound // 80 lb of the arbor are over
	options, err := v.Compare(1)
	if err != nil || options[0].Anew.Most.Pieces != 80 || !options[0].Anew.Hangs.Within(1680*units.Pound, 1e-11) {
		t.Errorf("%+v, %v", options, err)
	}
	v.Bare, v.Frame.Capacity = 1000*units.Pound, 400*units.Pound
	options, err = v.Compare(1)
	if err != nil || options[0].Anew.Most.Pieces != 20 || options[0].Anew.Hangs != 0 || !options[0].Over.Within(1100*units.Pound, 1e-11) {
		t.Errorf("%+v, %v", options, err)
	}
	// The surplus comes on top of the largest capacity there is, and nothing is asked of Fill that it refuses.
	v = wall
	v.Bare, v.Frame.Capacity = 0, 50*units.Tonne
	if options, err = v.Compare(1); err != nil || options[0].Anew.Most.Pieces != 8*12+6 {
		t.Errorf("8 ft 6 in of room: %+v, %v", options, err)
	}
	v = wall
	v.Stock = nil
	options, err = v.Compare(1)
	if err != nil || options[0].Stack.Pieces != 0 || options[0].Anew.Hangs != 0 {
		t.Errorf("no pieces: %+v, %v", options, err)
	}
}

// What the comparison finds, the questions asked one by one find too: over the
// highest stop the arbor made for the load gives both trims, with nothing left.
func TestCompareAgreesWithFly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := wall
		v.Load = units.Pound.Scale(float64(rapid.IntRange(100, 900).Draw(t, "load")))
		v.Low = length(t, "low", 300, 2000)
		v.High = v.Low + length(t, "wanted", 1000, 9000)
		v.MadeOff = v.Low - length(t, "under", 0, 250)
		ratio := rapid.SampledFrom([]float64{1, 1.5, 2, 3}).Draw(t, "ratio")
		options, err := v.Compare(ratio)
		if err != nil {
			t.Fatal(err)
		}
		o := options[0]
		for _, fit := range []arbor.Fit{o.Anew, o.Today} {
			run := v.Run
			run.LowerStop = fit.Stop.LowerStop
			trims, err := mustFlyRapid(t, run, o.Frame, arbor.Ride{Ratio: ratio, MadeOff: fit.Stop.MadeOff}).Trims(v.Low, v.High)
			if err != nil || !trims.Reached() || float64(trims.Above) > (ratio+1)*nanometre {
				t.Fatalf("%+v, %v", trims, err)
			}
			if h := fit.Most.Height; h > max(0, fit.Longest.Room) || fit.Most.Mass > v.Frame.Capacity {
				t.Fatalf("the most that fits does not: %+v", fit)
			}
		}
		if anew, today := o.Anew.Stop.LowerStop, o.Today.Stop.LowerStop; anew < today {
			t.Fatalf("made off anew the stop is lower: %v and %v", anew, today)
		}
	})
}

func TestCompareRefuses(t *testing.T) {
	_, err := wall.Compare()
	if diff := cmp.Diff([]string{"ratios"}, fields(t, err)); diff != "" || !errors.Is(err, units.ErrMissing) {
		t.Errorf("%v\n%s", err, diff)
	}
	v := arbor.Venue{Bare: -1, Load: 1e6, Low: 3, High: 2, MadeOff: units.Length(math.NaN()), Side: 9, Stock: arbor.Stock{{}}}
	v.Frame.Tare = 1e6
	_, err = v.Compare(1, 0)
	want := []string{
		"run.upper_stop", "frame.length", "frame.room", "frame.capacity", "stock[0].name", "stock[0].mass", "stock[0].thickness",
		"bare", "load", "frame.tare", "low_trim", "made_off", "side", "ratios[1]",
	}
	if diff := cmp.Diff(want, fields(t, err)); diff != "" {
		t.Errorf("all at once\n%s", diff)
	}
	// Sixteen to one, the most that a ratio may be, must leave no more than 50 t at the arbor: 3.125 t.
	for _, most := range []struct {
		field string
		mass  func(*arbor.Venue) *units.Mass
	}{
		{"bare", func(v *arbor.Venue) *units.Mass { return &v.Bare }},
		{"load", func(v *arbor.Venue) *units.Mass { return &v.Load }},
	} {
		v := wall
		*most.mass(&v) = 3126
		_, err := v.Compare(1)
		var fault *units.FieldError
		if !errors.As(err, &fault) || fault.Field != most.field || !errors.Is(err, units.ErrOutOfRange) || !strings.Contains(fault.Want, "(3125 kg)") {
			t.Errorf("%s of 3126 kg: %v", most.field, err)
		}
		*most.mass(&v) = 3125
		if _, err = v.Compare(1); errors.As(err, &fault) && fault.Field == most.field {
			t.Errorf("%s of 3125 kg: %v", most.field, err)
		}
	}
	// An arbor of 50 t and its lock plate outweigh all that may be wanted, and hold a stack all the same, in the one reading that has
	// a run for it: of 8 1/2 ft of room the plate leaves 101 in.
	v = wall
	v.Bare, v.Frame.Tare, v.Frame.Capacity, v.MadeOff = 0, 50*units.Tonne, 50*units.Tonne, -20*units.Foot
	v.Frame.Lock = arbor.Lock{Mass: 10, Thickness: 0.02}
	var none *arbor.NoStackError
	if options, err := v.Compare(1); err != nil || options[0].Anew.Most.Pieces != 101 || options[0].Today.Most.Pieces != 0 {
		t.Errorf("an arbor of 50 t: %+v, %v", options, err)
	}
	v = wall
	v.Bare, v.Load, v.Side = 10*units.Pound, 0, arbor.NeverArborHeavy
	_, err = v.Compare(2, 1)
	var fe *units.FieldError
	if !errors.As(err, &none) || !errors.As(err, &fe) || fe.Field != "ratios[0]" {
		t.Errorf("the empty arbor is too heavy: %v", err)
	}
}

// An arbor of thirty tonnes that may hold forty holds forty pieces of a tonne, though with its surplus that is more than any arbor is
// asked for.
func TestCompareHeavyArbor(t *testing.T) {
	v := wall
	v.Frame = arbor.Frame{Tare: 30_000, Length: 5, Room: 4, Capacity: 40_000}
	v.Stock = arbor.Stock{{Name: "slab", Mass: 1000, Thickness: 0.04, Count: 100}}
	v.Bare, v.Load = 100, 0
	options, err := v.Compare(1)
	if err != nil || options[0].Anew.Most.Pieces != 40 || options[0].Today.Most.Pieces != 40 || options[0].Anew.Hangs != 70_000-100 {
		t.Fatalf("%+v, %v", options, err)
	}
	most := options[0].Anew.Most
	if most.Error != 0 || most.Wanted != (arbor.Wanted{Pipe: -29_900, Show: 69_900}) {
		t.Errorf("%+v: wanted is the capacity, over the surplus of the tare", most)
	}
	// A batten of 200 lb wants 100 lb of pipe weight, and all that may be held on top of it.
	v = wall
	v.Bare = 200 * units.Pound
	options, err = v.Compare(1)
	if err != nil || options[0].Anew.Most.Wanted != (arbor.Wanted{Pipe: exactPounds(400), Show: exactPounds(6400)}) {
		t.Errorf("%+v, %v", options, err)
	}
}
