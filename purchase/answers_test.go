package purchase_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// What is refused is not answered besides.
func TestRefusedIsNotAnswered(t *testing.T) {
	r := mustRig(t, roped(purchase.Single))
	nan := math.NaN()
	mass := units.Mass(nan)
	for _, c := range []row{
		answered(r.Imbalance(99, 1, 1))("imbalance out of reach", "trim"),
		answered(r.Imbalance(5, mass, 1))("imbalance of no load", "carried"),
		answered(r.Imbalance(5, 1, mass))("imbalance of no arbor", "arbor"),
		answered(r.Imbalance(5, mass, mass))("imbalance of a load and an arbor that are none", "carried, arbor"),
		answered(r.Counterweight(99, 1))("counterweight out of reach", "trim"),
		answered(r.Counterweight(5, mass))("counterweight of no load", "carried"),
		answered(r.RopeImbalance(99))("rope imbalance out of reach", "trim"),
		answered(r.ArborTop(-99))("arbor top out of reach", "trim"),
		answered(r.Felt(99, 1, 1))("felt out of reach", "trim"),
		answered(r.Felt(5, -1, 1))("felt of less than nothing", "carried"),
		answered(r.Felt(5, 1, -1))("felt of an arbor of less than nothing", "arbor"),
		answered(r.Felt(5, -1, -1))("felt of neither", "carried, arbor"),
		answered(r.At(99, purchase.Bodies{Pulls: evenly(5, 1)}))("at rest out of reach", "trim"),
		answered(r.At(5, purchase.Bodies{}))("at rest without pulls", "pulls"),
		answered(r.At(5, purchase.Bodies{Pulls: []units.Force{-1, 1}, Arbor: -1, Idler: -1, Base: -1}))("at rest with all wrong", "pulls, pulls[0], arbor, idler, base"),
		answered(r.Rest(99, purchase.Bodies{Pulls: evenly(5, 1)}))("bands out of reach", "trim"),
		answered(r.Feel(99, purchase.Bodies{Pulls: evenly(5, 1)}))("felt at the rail out of reach", "trim"),
		answered(r.Feel(5, purchase.Bodies{}))("felt at the rail without pulls", "pulls"),
		answered(r.Stays(99, purchase.Bodies{Pulls: evenly(5, 1)}))("stays out of reach", "trim"),
		answered(r.Stays(5, purchase.Bodies{}))("stays without pulls", "pulls"),
		answered(r.Run(99, purchase.Bodies{Pulls: evenly(5, 1)}, purchase.Out))("runs out of reach", "trim"),
		answered(r.Run(5, purchase.Bodies{}, purchase.Out))("runs without pulls", "pulls"),
		answered(r.Geometry(99))("geometry out of reach", "trim"),
		answered(purchase.Geometry{}.Use(purchase.GeometryLimits{Fleet: purchase.FleetLimit}))("use of a geometry that is none", "lift"),
		answered(purchase.Geometry{}.Use(purchase.GeometryLimits{}))("use without limits", ""),
		answered(r.RaiseIdler(units.Length(nan), 20))("idler raised by no number", "by"),
		answered(r.RaiseIdler(0.1, mass))("idler of no mass raised", "idler"),
		answered(r.RaiseIdler(-1, -1))("idler raised by and of less than nothing", "by, idler"),
		answered(purchase.Jolt(-1, 0))("jolt of neither speed nor stretch", "speed, stretch"),
	} {
		if !reflect.ValueOf(c.answer).IsZero() {
			t.Errorf("%s: refused, and yet %+v", c.name, c.answer)
		}
		var kind error
		if all := faults(t, c.err); len(all) > 0 {
			kind = all[0].Err
		}
		one(t, c.err, c.field, kind, c.name)
	}
	var s purchase.State
	var run purchase.Running
	for field, err := range map[string]error{
		"state": r.AtInto(nil, 5, purchase.Bodies{}), "running": r.RunInto(nil, 5, purchase.Bodies{}, purchase.Out),
	} {
		one(t, err, field, units.ErrMissing, "there is no place for the answer")
	}
	if err := r.AtInto(&s, 5, purchase.Bodies{}); err == nil || !s.Equal(purchase.State{}) {
		t.Errorf("%v leaves %+v", err, s)
	}
	if err := r.RunInto(&run, 5, purchase.Bodies{Pulls: evenly(5, 1)}, 0); err == nil || !run.Equal(purchase.Running{}) {
		t.Errorf("%v leaves %+v", err, run)
	}
}

// row is a question that is refused.
type row struct {
	name, field string
	answer      any
	err         error
}

func answered[T any](answer T, err error) func(name, field string) row {
	return func(name, field string) row { return row{name, field, answer, err} }
}

// Words of kinds, bodies, ways and roles, those of none among them.
func TestWords(t *testing.T) {
	for got, want := range map[fmt.Stringer]string{
		purchase.Single: "single", purchase.Double: "double", purchase.Triple: "triple", purchase.Kind(0): "Kind(0)", purchase.Kind(4): "Kind(4)",
		purchase.Out: "out", purchase.In: "in", purchase.Way(0): "neither way", purchase.Way(3): "neither way",
		purchase.DeadRope: "dead end", purchase.InnerRope: "inner rope", purchase.OuterRope: "outer rope",
		purchase.Building: "building", purchase.Grid: "grid", purchase.HeadBeam: "head beam", purchase.Rail: "rail", purchase.Batten: "batten",
		purchase.Arbor: "arbor", purchase.Idler: "idler", purchase.Body(7): "unknown body",
		purchase.ChainHung(0): "ChainHung(0)", purchase.ChainHung(3): "ChainHung(3)",
	} {
		if got.String() != want {
			t.Errorf("%T: %q, want %q", got, got, want)
		}
	}
	for body := range purchase.Idler + 1 {
		text, err := body.MarshalText()
		back := purchase.Body(99)
		if e := back.UnmarshalText(text); err != nil || e != nil || string(text) != body.String() || back != body {
			t.Errorf("%v comes back from %q as %v, %v, %v", body, text, back, err, e)
		}
	}
	if text, err := (purchase.Idler + 1).MarshalText(); !errors.Is(err, units.ErrUnknown) || text != nil {
		t.Errorf("%q, %v", text, err)
	}
	back := purchase.Arbor
	one(t, back.UnmarshalText([]byte("roof")), "", units.ErrUnknown, "no body of a set")
	kind := purchase.Double
	one(t, kind.UnmarshalText([]byte("quadruple")), "", units.ErrUnknown, "no purchase")
	if back != purchase.Arbor || kind != purchase.Double {
		t.Errorf("left as %v and %v", back, kind)
	}
	if text, err := purchase.Kind(4).MarshalText(); !errors.Is(err, units.ErrUnknown) || text != nil {
		t.Errorf("%q, %v", text, err)
	}
}

// What is felt of a double set with heavy ropes and rims, row by row: each with its name, its mass, the speed of what of it runs the
// fastest, and its share.
func TestFeltRowByRow(t *testing.T) {
	l := oneLine(purchase.Double)
	l.LiftMass, l.HandMass, l.Rim = 0.2, 0.3, 4
	f, err := mustRig(t, l).Felt(4*units.Foot, 100, 240)
	if err != nil {
		t.Fatal(err)
	}
	// At 4 ft the arbor's top is at 58: 56 ft, 6 and 2 of the lift line run as fast as the batten; 39, 47 and 2 of the hand line.
	// Seven rims: loft block, head block twice and idler at the batten's speed, the arbor's three at half of it.
	lift, hand := 0.2*64*0.3048, 0.3*88*0.3048
	want := []purchase.FeltMass{
		{Name: "batten and what hangs on it", Mass: 100, Speed: 1, Felt: 100},
		{Name: "arbor and what is in it", Mass: 240, Speed: 0.5, Felt: 60},
		{Name: "lift line 1", Mass: units.Mass(lift), Speed: 1, Felt: units.Mass(lift)},
		{Name: "hand line", Mass: units.Mass(hand), Speed: 1, Felt: units.Mass(hand)},
		{Name: "sheaves, at their rims", Mass: 28, Speed: 1, Felt: 16 + 3},
	}
	if len(f.Rows) != len(want) || f.Trim != 4*units.Foot {
		t.Fatalf("%+v", f)
	}
	for i, row := range f.Rows {
		is := want[i]
		if row.Name != is.Name || !near.Rel(float64(row.Mass), float64(is.Mass), 1e-12) || !near.Rel(row.Speed, is.Speed, 1e-12) || !near.Rel(float64(row.Felt), float64(is.Felt), 1e-12) {
			t.Errorf("%+v, want %+v", row, is)
		}
	}
	if moving, felt := 100+240+lift+hand+28, 100+60+lift+hand+19; !near.Rel(float64(f.Moving), moving, 1e-12) || !near.Rel(float64(f.Batten), felt, 1e-12) {
		t.Errorf("%v moves and %v is felt, want %v and %v", f.Moving, f.Batten, moving, felt)
	}
	if f, err = mustRig(t, oneLine(purchase.Double)).Felt(5, 0, 0); err != nil || f.Rows != nil || f.Batten != 0 || f.Moving != 0 {
		t.Errorf("of nothing: %+v, %v", f, err)
	}
}
