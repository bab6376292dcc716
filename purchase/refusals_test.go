package purchase_test

import (
	"math"
	"strings"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A refusal shows what was given, with digits enough to tell it from the bound that it has just passed, and what would be right:
// the bound itself, and whose it is.
func TestRefusalsShowWhatWasGivenAndWhatIsRight(t *testing.T) {
	layout := func(change func(*purchase.Layout)) error {
		l := weightless(purchase.Double)
		change(&l)
		return l.Validate()
	}
	limits := func(l purchase.GeometryLimits) error {
		_, err := mustRig(t, grooved()).GeometryUse(5, 6, l)
		return err
	}
	flight := func(change func(*purchase.Flight)) error {
		f := purchase.Flight{
			Low: 2, High: 9, Carried: 100, Arbor: 100,
			Chain: purchase.Chain{On: purchase.Batten, Hung: purchase.Looped, To: 5, Length: 9, Mass: 3},
		}
		change(&f)
		return second(mustRig(t, roped(purchase.Single)).Drift(f))
	}
	even := func(length units.Length) error {
		f := purchase.Flight{Low: 2, High: 9, Chain: purchase.Chain{On: purchase.Batten, Hung: purchase.Piled, Length: length}}
		return second(mustRig(t, roped(purchase.Single)).EvenChain(f))
	}
	letGo := func(low, high units.Length) error {
		return second(mustRig(t, oneLine(purchase.Single)).LetGo(purchase.LetGo{Trim: 5, Low: low, High: high, On: massed(1, 2, 3)}))
	}
	for _, c := range []struct {
		name        string
		err         error
		field       string
		value, want string // what is shown begins with it; what would be right holds it
	}{
		{"a drag a hair too large", purchase.Drag(0.9000000001).Validate(), "", "0.9000000001", "from 0 to 0.9"},
		{"a factor a hair too small", second(purchase.DragPerHalfTurn(0.9999999999)), "factor", "0.9999999999", "a factor from 1"},
		{"a factor a hair too large", second(purchase.DragPerHalfTurn(19.0000001)), "factor", "19.0000001", "to 19"},
		{"no factor", second(purchase.DragPerHalfTurn(0)), "factor", "", "a factor from 1"},
		{"a factor that is none", second(purchase.DragPerHalfTurn(math.NaN())), "factor", "NaN", "a factor from 1"},
		{"a factor below nothing", second(purchase.DragPerHalfTurn(-1.5)), "factor", "-1.5", "a factor from 1"},
		{"a turn beyond half", second(purchase.Drag(0.1).Factor(200 * units.Degree)), "turn", "200 deg", "at most half a turn"},
		{"a ratio a hair too small", limits(purchase.GeometryLimits{LiftRatio: 0.9999999999}), "limits.lift_ratio", "0.9999999999", "from 1 to 1000"},
		{"a fleet beyond 45 degrees", limits(purchase.GeometryLimits{Fleet: 50 * units.Degree}), "limits.fleet", "50 deg", "at most 45 degrees"},
		{"an offset for more than 45 degrees", second(purchase.FleetOffset(1, 50*units.Degree)), "limit", "50 deg", "at most 45 degrees"},
		{"no lead", second(purchase.FleetAngle(1, 0)), "lead", "", "the length of the lead"},

		{"no kind", layout(func(l *purchase.Layout) { l.Kind = 0 }), "kind", "", `"single", "double" or "triple"`},
		{"a kind that is none", layout(func(l *purchase.Layout) { l.Kind = 4 }), "kind", "Kind(4)", `"single", "double" or "triple"`},
		{"a hand line that is none", layout(func(l *purchase.Layout) { l.Hand = 9 }), "hand", "Kind(9)", "or none for one as the lift lines are"},
		{"arbor over the head block", layout(func(l *purchase.Layout) { l.Kind, l.Hand, l.ArborTop = purchase.Single, purchase.Single, 61*units.Foot }), "arbor_top", `61' 0"`, `the head block's height, 60' 0"`},
		{"idler over the arbor's foot", layout(func(l *purchase.Layout) { l.Idler, l.Rail = 53*units.Foot, 54*units.Foot; l.Hand = purchase.Single }), "idler", `53' 0"`, `the arbor's foot, 52' 0"`},
		{"rail under the idler", layout(func(l *purchase.Layout) { l.Rail = 12 * units.Foot }), "rail", `12' 0"`, `the idler's height, 13' 0"`},
		{"rail over the head block", layout(func(l *purchase.Layout) { l.Hand, l.Rail = purchase.Single, 62*units.Foot }), "rail", `62' 0"`, `the head block's height, 60' 0"`},
		{"dead end at the rail over the foot", layout(func(l *purchase.Layout) { l.Rail = 53 * units.Foot }), "rail", `53' 0"`, `the arbor's foot, 52' 0" (15.8496 m): the hand line's dead end is at the rail`},
		{"block at the rail over the foot", layout(func(l *purchase.Layout) { l.Hand, l.Rail = purchase.Triple, 53*units.Foot }), "rail", `53' 0"`, "the hand line's block is at the rail"},
		{"dead end under the arbor", layout(func(l *purchase.Layout) { l.DeadEnd = 57 * units.Foot }), "dead_end", `57' 0"`, `the arbor's top, 58' 0"`},
		{"too many lines", layout(func(l *purchase.Layout) { l.Loft = make([]purchase.Loft, 65) }), "loft", "65 loft blocks", "at most 64"},
		{"a loft block under the trim", layout(func(l *purchase.Layout) { l.Loft[1].Height = 3 * units.Foot }), "loft[1].height", `3' 0"`, `the batten's trim, 4' 0"`},

		{"swapped trims", flight(func(f *purchase.Flight) { f.Low, f.High = 9, 2 }), "high", `6' 6 3/4" (2 m)`, "the low trim, 29' 6"},
		{"chain on the rail", flight(func(f *purchase.Flight) { f.Chain.On = purchase.Rail }), "chain.on", "rail", "batten or arbor"},
		{"chain not said how", flight(func(f *purchase.Flight) { f.Chain.Hung = 0 }), "chain.hung", "", `"piled" or "looped"`},
		{"chain hung otherwise", flight(func(f *purchase.Flight) { f.Chain.Hung = 7 }), "chain.hung", "ChainHung(7)", `"piled" or "looped"`},
		{"chain's end under the floor", flight(func(f *purchase.Flight) { f.Chain.Floor, f.Chain.To = 1, 0 }), "chain.to", `0' 0"`, "not below the floor, 3' 3"},
		{"a piled chain's end", flight(func(f *purchase.Flight) { f.Chain.Hung = purchase.Piled }), "chain.to", "16' 4 7/8", "not made off on the building"},
		{"a chain that is taut above its end", flight(func(f *purchase.Flight) { f.Chain.Length = 2 }), "chain.length", `6' 6 3/4" (2 m)`, `(4 m): a shorter one`},
		{"a chain that is taut below its end", flight(func(f *purchase.Flight) { f.Chain.To, f.Chain.Length = 7, 2 }), "chain.length", `6' 6 3/4" (2 m)`, `(5 m): a shorter one`},
		{"a chain that comes down through the floor", flight(func(f *purchase.Flight) { f.Chain.Below = 3 }), "chain.below", `9' 10`, "comes down to -"},
		{"a chain from the arbor's foot through the floor", flight(func(f *purchase.Flight) {
			f.Chain.On, f.Chain.Floor = purchase.Arbor, 15
			f.Chain.To = 15
			f.Chain.Length = 40
		}), "chain.below", `0' 0"`, "stays above the floor at 49' 2"},
		{"a chain that runs out", even(5), "chain.length", "16' 4", "as this does at 16' 4"},
		{"a chain that hangs in the air", even(1), "chain.length", "3' 3", "long enough to reach the floor"},

		{"a stop above the trim", letGo(6, 9), "low", "19' 8", "not above the trim, 16' 4"},
		{"a stop below the trim", letGo(2, 4), "high", "13' 1", "not below the trim, 16' 4"},
	} {
		all := faults(t, c.err)
		if len(all) != 1 || all[0].Field != c.field || !strings.HasPrefix(all[0].Value, c.value) || (c.value == "") != (all[0].Value == "") || !strings.Contains(all[0].Want, c.want) {
			t.Errorf("%s: %v\nwant %s, %q, and %q", c.name, c.err, c.field, c.value, c.want)
		}
	}
}

// Of a length that is none it is told once, whatever would come of it.
func TestLongerForNoLength(t *testing.T) {
	for _, lower := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		_, err := purchase.RopeGeometry{AtBatten: 2}.LongerFor(units.Length(lower))
		all := faults(t, err)
		if len(all) != 1 || all[0].Field != "lower" {
			t.Errorf("%v: %v; want one of lower", lower, err)
		}
	}
}

// An idler goes up to the rope lock, however the way there is reckoned, and no further.
func TestIdlerRaisedUpToTheLock(t *testing.T) {
	for i := range 60 {
		l := oneLine(purchase.Single)
		idler, rail := 1+0.1*float64(i), 7+0.13*float64(i)
		l.Idler, l.Rail = units.Foot.Scale(idler), units.Foot.Scale(rail)
		r := mustRig(t, l)
		room := units.Foot.Scale(rail - idler)
		if raised, err := r.RaiseIdler(room, 20); err != nil || raised.Slack != 2*room {
			t.Errorf("idler at %v ft, lock at %v: %+v, %v", idler, rail, raised, err)
		}
		lifted := l.Reeving() // with its sheave half a metre over its datum there is so much less room
		lifted.Hand.Path[1].Height = 0.5
		up, err := lifted.Rig()
		if err != nil {
			t.Fatal(err)
		}
		if _, err = up.RaiseIdler(room-0.5001, 20); err != nil {
			t.Errorf("idler half a metre over %v ft: %v", idler, err)
		}
		_, err = up.RaiseIdler(room-0.4999, 20)
		one(t, err, "by", units.ErrOutOfRange, "the lock is in the way")
		raised, err := r.RaiseIdler(room.Scale(1.000001), 20)
		if one(t, err, "by", units.ErrOutOfRange, "the lock is in the way"); raised != (purchase.RaisedIdler{}) {
			t.Errorf("refused, and yet %+v", raised)
		}
	}
}
