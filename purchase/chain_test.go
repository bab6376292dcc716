package purchase_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A chain that runs out just at an end of the flight turns nothing on the way; a flight without a chain has none of its weight, not even
// the nothing that is written with a minus.
func TestDriftTurnsOnTheWayOnly(t *testing.T) {
	r := mustRig(t, roped(purchase.Single))
	f := purchase.Flight{
		Low: 2, High: 9, Carried: 100, Arbor: 100,
		Chain: purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Mass: 3},
	}
	for _, c := range []struct {
		length units.Length
		turn   units.Length
	}{{1.5, 2}, {2, 2}, {2.5, 2.5}, {8.5, 8.5}, {9, 2}, {9.5, 2}} {
		f.Chain.Length = c.length
		d, err := r.Drift(f)
		if err != nil || d.Turn.Trim != c.turn {
			t.Errorf("%v of chain turns it at %v, want %v; %v", c.length, d.Turn.Trim, c.turn, err)
		}
		if wanted := d.Turn.Trim == f.Low; wanted != (d.Turn == d.Low) {
			t.Errorf("%v of chain: %+v", c.length, d.Turn)
		}
	}
	f.Chain = purchase.Chain{}
	d, err := r.Drift(f)
	if err != nil || d.Low.Chain != 0 || math.Signbit(float64(d.Low.Chain)) {
		t.Errorf("without a chain %v of it, %v", d.Low.Chain, err)
	}
	points := make([]purchase.FlightPoint, 3)
	if err := r.Curve(f, points); err != nil || points[0].Trim != 2 || !near.Rel(float64(points[1].Trim), 5.5, 1e-12) || points[2].Trim != 9 {
		t.Errorf("%+v, %v; want points at 2, 5.5 and 9 m", points, err)
	}
	if err := r.Curve(f, nil); err != nil {
		t.Error(err)
	}
}

func TestFlightRefused(t *testing.T) {
	r, err := roped(purchase.Single).Rig()
	if err != nil {
		t.Fatal(err)
	}
	good := purchase.Flight{
		Low: 4 * units.Foot, High: 58 * units.Foot, Carried: 200, Arbor: 200,
		Chain: purchase.Chain{On: purchase.Arbor, Below: 6 * units.Foot, Hung: purchase.Looped, To: 30 * units.Foot, Length: 30 * units.Foot, Mass: 2},
	}
	for _, c := range []struct {
		name   string
		change func(*purchase.Flight)
		field  string
		kind   error
		reason string
	}{
		{"low out of reach", func(f *purchase.Flight) { f.Low = -1 }, "low", units.ErrOutOfRange, "the arbor would pass the head block"},
		{"NaN high", func(f *purchase.Flight) { f.High = units.Length(math.NaN()) }, "high", units.ErrNotFinite, "no NaN goes in"},
		{"upside down", func(f *purchase.Flight) { f.Low, f.High = f.High, f.Low }, "high", units.ErrOutOfRange, "low is below"},
		{"negative load", func(f *purchase.Flight) { f.Carried = -1 }, "carried", units.ErrNegative, "what hangs pulls down"},
		{"infinite arbor", func(f *purchase.Flight) { f.Arbor = units.Mass(math.Inf(1)) }, "arbor", units.ErrNotFinite, "no infinity goes in"},
		{"negative chain", func(f *purchase.Flight) { f.Chain.Mass = -1 }, "chain.mass", units.ErrNegative, "chains weigh something or nothing"},
		{"chain on the grid", func(f *purchase.Flight) { f.Chain.On = purchase.Grid }, "chain.on", units.ErrOutOfRange, "it would do nothing"},
		{"not said how", func(f *purchase.Flight) { f.Chain.Hung = 0 }, "chain.hung", units.ErrMissing, "a choice that must be made"},
		{"hung otherwise", func(f *purchase.Flight) { f.Chain.Hung = 3 }, "chain.hung", units.ErrUnknown, "two are known"},
		{"chain on the grid, and taut through the floor", func(f *purchase.Flight) { f.Chain.On, f.Chain.Length, f.Chain.Floor = purchase.Grid, 1, 9 }, "chain.on", units.ErrOutOfRange, "where it hangs is not known"},
		{"hung otherwise, through the floor", func(f *purchase.Flight) { f.Chain.Hung, f.Chain.Floor = 3, 9 }, "chain.hung", units.ErrUnknown, "where it hangs is not known"},
		{"NaN below, and taut", func(f *purchase.Flight) { f.Chain.Below, f.Chain.Length = units.Length(math.NaN()), 1 }, "chain.below", units.ErrNotFinite, "no NaN goes in"},
		{"NaN floor, and taut", func(f *purchase.Flight) { f.Chain.Floor, f.Chain.Length = units.Length(math.NaN()), 1 }, "chain.floor", units.ErrNotFinite, "no NaN goes in"},
		{"infinite end, through the floor", func(f *purchase.Flight) { f.Chain.To, f.Chain.Floor = units.Length(math.Inf(1)), 9 }, "chain.to", units.ErrNotFinite, "no infinity goes in"},
		{"no length, through the floor", func(f *purchase.Flight) { f.Chain.Length, f.Chain.Floor = 0, 9 }, "chain.length", units.ErrMissing, "the bight depends on it"},
		{"above the datum", func(f *purchase.Flight) { f.Chain.Below = -1 }, "chain.below", units.ErrNegative, "below is down"},
		{"NaN floor", func(f *purchase.Flight) { f.Chain.Floor = units.Length(math.NaN()) }, "chain.floor", units.ErrNotFinite, "no NaN goes in"},
		{"infinite end", func(f *purchase.Flight) { f.Chain.To = units.Length(math.Inf(1)) }, "chain.to", units.ErrNotFinite, "no infinity goes in"},
		{"no length", func(f *purchase.Flight) { f.Chain.Length = 0 }, "chain.length", units.ErrMissing, "the bight depends on it"},
		{"high out of reach, and taut", func(f *purchase.Flight) { f.High, f.Chain.Length = 30, 1 }, "high", units.ErrOutOfRange, "a chain is held against trims that are right"},
		{"upside down, and taut", func(f *purchase.Flight) { f.Low, f.High, f.Chain.Length = f.High, f.Low, 1 }, "high", units.ErrOutOfRange, "a chain is held against trims that are right"},
		{"low out of reach, and taut", func(f *purchase.Flight) { f.Low, f.Chain.Length = -1, 1 }, "low", units.ErrOutOfRange, "a chain is held against trims that are right"},
		{"end a hair under the floor", func(f *purchase.Flight) { f.Chain.Floor, f.Chain.To, f.Chain.Length = 0.5, 0.499, 60*units.Foot }, "chain.to", units.ErrOutOfRange, "nothing hangs there"},
		{"taut by a hair", func(f *purchase.Flight) { f.Chain.Length = units.Foot.Scale(27.999) }, "chain.length", units.ErrOutOfRange, "the arbor's foot comes down 28 ft below its end"},
		{"foot a hair under the floor", func(f *purchase.Flight) { f.Chain.Floor = units.Foot.Scale(2.001) }, "chain.below", units.ErrOutOfRange, "the arbor's foot comes down to 2 ft"},
		{"taut", func(f *purchase.Flight) { f.Chain.Length = 25 * units.Foot }, "chain.length", units.ErrOutOfRange, "the arbor's foot goes 26 ft above its end"},
		{"end under the floor", func(f *purchase.Flight) { f.Chain.To, f.Chain.Length = -1, 60*units.Foot }, "chain.to", units.ErrOutOfRange, "nothing hangs there"},
		{"piled and tied", func(f *purchase.Flight) { f.Chain.Hung = purchase.Piled }, "chain.to", units.ErrOutOfRange, "which of the two?"},
		{"foot under the floor", func(f *purchase.Flight) { f.Chain.Floor = 3 * units.Foot }, "chain.below", units.ErrOutOfRange, "the arbor's foot comes down to 2 ft"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := good
			c.change(&f)
			_, err := r.Drift(f)
			one(t, err, c.field, c.kind, c.reason)
			mass, err := r.EvenChain(f)
			if c.field == "carried" || c.field == "arbor" || c.field == "chain.mass" {
				if err != nil || !(mass > 0) {
					t.Errorf("EvenChain does not look at masses: %v, %v", mass, err)
				}
			} else if one(t, err, c.field, c.kind, c.reason); mass != 0 {
				t.Errorf("EvenChain refuses it, and yet says %v", mass)
			}
			points := []purchase.FlightPoint{{Trim: 7}}
			if err := r.Curve(f, points); err == nil || points[0].Trim != 7 {
				t.Error("Curve should refuse it too, and leave the points alone")
			}
		})
	}
	for name, change := range map[string]func(*purchase.Flight){
		"as it is":             func(*purchase.Flight) {},
		"at one trim":          func(f *purchase.Flight) { f.Low = f.High },
		"just not taut":        func(f *purchase.Flight) { f.Chain.Length = units.Foot.Scale(28.0000001) },
		"its end on the floor": func(f *purchase.Flight) { f.Chain.Floor, f.Chain.To, f.Chain.Length = 0.5, 0.5, 60*units.Foot },
		"its end just on the floor": func(f *purchase.Flight) {
			f.Chain.On, f.Chain.Below, f.Chain.Floor = purchase.Batten, 0, f.Low
		},
		"its foot by the floor":  func(f *purchase.Flight) { f.Chain.Floor = units.Foot.Scale(1.999999) },
		"piled, none that is to": func(f *purchase.Flight) { f.Chain.Hung, f.Chain.To = purchase.Piled, 0 },
		"a chain of no mass":     func(f *purchase.Flight) { f.Chain.Mass = 0 },
		"nothing that hangs":     func(f *purchase.Flight) { f.Carried, f.Arbor = 0, 0 },
	} {
		f := good
		change(&f)
		if _, err := r.Drift(f); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, change := range map[string]func(*purchase.Flight){
		"bight comes down":  func(f *purchase.Flight) { f.Chain.Length = 50 * units.Foot },
		"hangs in the air":  func(f *purchase.Flight) { f.Chain.Hung, f.Chain.To, f.Chain.Length = purchase.Piled, 0, 1*units.Foot },
		"leaves the floor":  func(f *purchase.Flight) { f.Chain.Hung, f.Chain.To, f.Chain.Length = purchase.Piled, 0, 20*units.Foot },
		"no chain is given": func(f *purchase.Flight) { f.Chain = purchase.Chain{} },
	} {
		f := good
		change(&f)
		if m, err := r.EvenChain(f); err == nil || m != 0 {
			t.Errorf("%s: no chain keeps that even, got %v", name, m)
		}
	}
}

func TestChainHungText(t *testing.T) {
	for hung, word := range map[purchase.ChainHung]string{0: "", purchase.Piled: "piled", purchase.Looped: "looped"} {
		if got := hung.String(); hung != 0 && got != word {
			t.Errorf("%q, want %q", got, word)
		}
		text, err := hung.MarshalText()
		if string(text) != word {
			t.Errorf("%q, want %q", text, word)
		}
		if err != nil {
			t.Fatal(err)
		}
		var back purchase.ChainHung
		if err := back.UnmarshalText(text); err != nil || back != hung {
			t.Errorf("%v comes back from %q as %v, %v", hung, text, back, err)
		}
	}
	back := purchase.Looped
	var fe *units.FieldError
	if err := back.UnmarshalText([]byte("knotted")); !errors.As(err, &fe) || back != purchase.Looped {
		t.Errorf("error %v leaves %v", err, back)
	}
	if _, err := purchase.ChainHung(9).MarshalText(); !errors.Is(err, units.ErrUnknown) {
		t.Errorf("error %v", err)
	}
	if diff := cmp.Diff("ChainHung(9)", purchase.ChainHung(9).String()); diff != "" {
		t.Error(diff)
	}
}

// Ropes that weigh nothing want no chain, and not one of less than nothing.
func TestEvenChainOfWeightlessRopes(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		l := weightless(kind)
		l.DeadEnd, l.Rail, l.Idler = 61*units.Foot, 14*units.Foot, 13*units.Foot
		for _, on := range []purchase.Body{purchase.Batten, purchase.Arbor} {
			got, err := mustRig(t, l).EvenChain(purchase.Flight{
				Low: 5 * units.Foot, High: 30 * units.Foot,
				Chain: purchase.Chain{On: on, Hung: purchase.Piled, Length: 70 * units.Foot},
			})
			if err != nil || got != 0 || math.Signbit(float64(got)) {
				t.Errorf("%v, on the %v: %v, %v; want 0", kind, on, float64(got), err)
			}
			heavy := l // a hand line pays out at one end of the arbor what it takes in at the other
			heavy.HandMass = 3.7
			got, err = mustRig(t, heavy).EvenChain(purchase.Flight{
				Low: 5 * units.Foot, High: 30 * units.Foot,
				Chain: purchase.Chain{On: on, Hung: purchase.Piled, Length: 70 * units.Foot},
			})
			if err != nil || got < 0 || got > 1e-12 {
				t.Errorf("%v with a heavy hand line, on the %v: %v, %v; want 0 but for rounding", kind, on, float64(got), err)
			}
		}
	}
}

// Where ropes alone hang in the balance, batten and arbor at one height, or a chain alone holds against them, rounding is taken as such:
// nothing else weighs anything there that it could be held against.
func TestBalancedByRopesAlone(t *testing.T) {
	for i := range 200 {
		l := oneLine(purchase.Single)
		l.LiftMass = units.LineMass(0.1 + 0.013*float64(i))
		l.Trim = 1 + units.Length(0.00137*float64(i))
		r := mustRig(t, l)
		level := (l.Trim + l.ArborTop).Scale(0.5) // what one gains the other loses
		for _, f := range []purchase.Flight{{Low: level, High: level + 3}, {Low: level - 3, High: level}} {
			d, err := r.Drift(f)
			if err != nil {
				t.Fatal(err)
			}
			if first, last, ok := d.Balanced(); !ok || first != level || last != level {
				t.Fatalf("lines of %v from %v to %v: balanced from %v to %v, %v; want at %v", l.LiftMass, f.Low, f.High, first, last, ok, level)
			}
		}
		// Lines of a mass m each metre weigh 2m for each that the batten is above that height, and so does a chain of 2m.
		f := purchase.Flight{Low: level + 1, High: level + 4, Chain: purchase.Chain{
			On: purchase.Batten, Below: 0, Hung: purchase.Piled, Floor: level, Length: 5, Mass: l.LiftMass.Scale(2),
		}}
		d, err := r.Drift(f)
		if err != nil {
			t.Fatal(err)
		}
		if first, last, ok := d.Balanced(); !ok || first != f.Low || last != f.High {
			t.Fatalf("lines of %v with a chain: balanced from %v to %v, %v", l.LiftMass, first, last, ok)
		}
	}
}

// A set of which nothing weighs anything is balanced all the way; and where the batten comes down into a pit there is no chain either,
// not even the nothing that is written with a minus.
func TestBalancedWhereNothingHangs(t *testing.T) {
	l := oneLine(purchase.Single)
	l.Trim = -3
	r := mustRig(t, l)
	d, err := r.Drift(purchase.Flight{Low: -2, High: 5})
	if err != nil {
		t.Fatal(err)
	}
	if first, last, ok := d.Balanced(); !ok || first != -2 || last != 5 {
		t.Errorf("balanced from %v to %v, %v; want all the way", first, last, ok)
	}
	if d.Turn != d.Low {
		t.Errorf("without a chain it turns at %v", d.Turn.Trim)
	}
	for _, p := range []purchase.FlightPoint{d.Low, d.Turn, d.High} {
		if p.Chain != 0 || math.Signbit(float64(p.Chain)) {
			t.Errorf("at %v %v of no chain", p.Trim, float64(p.Chain))
		}
	}
}

// A chain that runs out just at an end of the flight keeps it even all the way, with half of it taken over by the building where it hangs
// in a bight all along.
func TestEvenChainThatRunsOutAtAnEnd(t *testing.T) {
	l := roped(purchase.Single)
	r := mustRig(t, l)
	lines := 5 * float64(l.LiftMass)
	for _, c := range []struct {
		name  string
		chain purchase.Chain
		want  float64 // times the lines' mass
	}{
		{"piled, up to the highest trim", purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Length: 9}, 2},
		{"looped, from the lowest trim on", purchase.Chain{On: purchase.Batten, Hung: purchase.Looped, To: 5, Length: 7}, 4},
		{"looped, up to the highest trim", purchase.Chain{On: purchase.Batten, Hung: purchase.Looped, To: 5, Length: 14}, 2},
	} {
		got, err := r.EvenChain(purchase.Flight{Low: 2, High: 9, Chain: c.chain})
		if err != nil || !near.Abs(float64(got)/lines, c.want, 1e-9) {
			t.Errorf("%s: %v, %v; want %v times the lines' %v kg/m", c.name, got, err, c.want, lines)
		}
	}
	_, err := r.EvenChain(purchase.Flight{Low: 2, High: 9, Chain: purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Length: 2}})
	if all := faults(t, err); len(all) != 1 || !strings.Contains(all[0].Want, "reach the floor") {
		t.Errorf("in the air from the lowest trim on: %v", err)
	}
}
