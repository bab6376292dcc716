package purchase_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Problem:   the load on a sheave by the angle between the two parts of its rope.
// Source:    sheave multiplier table, 2·cos(θ/2), printed alike on two suppliers' pages (common practice)
// Expected:  the printed multiplier; 10° is printed as 1.99 on one page and 1.98 on the other
// Tolerance: 0.01, because the table mixes rounding and truncation (40°, 45°, 130°, 135° are cut)
func TestVerifySheaveMultipliers(t *testing.T) {
	for _, row := range []struct{ degrees, printed float64 }{
		{0, 2.00},
		{10, 1.99},
		{20, 1.97},
		{30, 1.93},
		{40, 1.87},
		{45, 1.84},
		{50, 1.81},
		{60, 1.73},
		{70, 1.64},
		{80, 1.53},
		{90, 1.41},
		{100, 1.29},
		{110, 1.15},
		{120, 1.00},
		{130, .84},
		{135, .76},
		{140, .68},
		{150, .52},
		{160, .35},
		{170, .17}, // at 180, printed .00, the rope runs straight past: that is no sheave, and refused
	} {
		verification.Row{Key: "sheave/block", Source: "sheave multiplier table", What: "load on a loft block over the pull", Why: "the table mixes rounding and truncation"}.
			Of(fmt.Sprint(row.degrees, "°"), "", row.printed, 0.01).Check(t, sheaveLoad(t, row.degrees, 1))
	}
}

// Problem:   worked examples beside the same table.
// Expected:  1000 lb at 50° 1810 lb, at 135° 760 lb; 500 lb at 0° 1000, at 30° 965, at 90° 705, at 160° 175 lb
// Tolerance: 0.01 of the pull, as for the multipliers they are made from
// The last row is an identity: at 120° the load is the pull itself.
func TestVerifySheaveExamples(t *testing.T) {
	for _, row := range []struct{ pull, degrees, printed, tol float64 }{
		{1000, 50, 1810, 10},
		{1000, 135, 760, 10},
		{500, 0, 1000, 5},
		{500, 30, 965, 5},
		{500, 90, 705, 5},
		{500, 160, 175, 5},
		{1000, 120, 1000, 1e-9},
	} {
		r := verification.Row{Key: "sheave/example", Source: "sheave multiplier table", Place: "its examples", What: "load on a loft block", Why: "0.01 of the pull, as for the multipliers that it is made from"}
		if row.degrees == 120 {
			r = r.From("equilibrium", "three equal pulls at 120°").Because("an identity, but for rounding")
		}
		r.Of(fmt.Sprintf("%v lb at %v°", row.pull, row.degrees), "lb", row.printed, row.tol).Check(t, sheaveLoad(t, row.degrees, row.pull))
	}
}

// sheaveLoad is the load on a loft block whose rope comes up plumb from the
// batten and leaves at an angle to that part, in the unit of the pull.
func sheaveLoad(t *testing.T, degrees, pull float64) float64 {
	t.Helper()
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	const height, run = 20.0, 5.0
	across := units.Length(10 + run*sin)
	head := units.Length(height - run*cos)
	r, err := purchase.Reeving{
		Trim: 2, ArborTop: 3,
		Lift: []purchase.Rope{{Name: "line", Path: []purchase.Stop{
			{Name: "batten", On: purchase.Batten, Across: 10},
			{Name: "loft block", On: purchase.Grid, Across: 10, Height: height},
			{Name: "head block", On: purchase.HeadBeam, Across: across, Height: head},
			{Name: "over it", On: purchase.HeadBeam, Across: across + 1, Height: head + 9},
			{Name: "arbor", On: purchase.Arbor, Across: across + 1},
		}}},
	}.Rig()
	if err != nil {
		t.Fatal(err)
	}
	st, err := r.At(2, purchase.Bodies{Pulls: []units.Force{units.Force(pull)}})
	if err != nil {
		t.Fatal(err)
	}
	return st.Load("loft block").Size().In(units.Newton)
}

// Problem:   two masses on a rope over a fixed pulley (Atwood).
// Source:    Atwood problems (2 and 4 kg, 5 and 2 kg, each found on two pages; 4 and 6 kg, 15 and 28 kg on one each)
// Given:     g as printed; ours is standard gravity, so forces are scaled by their ratio
// Expected:  a = g(m2 − m1)/(m1 + m2)
// Tolerance: half a unit of the last printed figure; 15 and 28 kg is printed between 2.96 and 2.977
//
// At rest the force that must be held is what would accelerate both masses: our
// out of balance over their sum.
func TestVerifyAtwood(t *testing.T) {
	const half = "half a unit of the last printed figure"
	for _, row := range []struct {
		m1, m2, gravity, printed, tol float64
		why                           string
	}{
		{2, 4, 9.81, 3.27, 0.005, half},
		{2, 5, 9.8, 4.2, 0.05, half},
		{4, 6, 9.807, 1.96, 0.005, half},
		{15, 28, 9.81, 2.9685, 0.0085, "printed between 2.96 and 2.977"},
	} {
		held := purchase.Single.Imbalance(units.Mass(row.m2), units.Mass(row.m1)).In(units.Newton) * row.gravity / g
		verification.Row{Key: "atwood/imbalance", Source: "Atwood problems", What: "acceleration by the ideal ratio", Why: row.why}.
			Of(fmt.Sprintf("%v and %v kg", row.m1, row.m2), "m/s²", row.printed, row.tol).Check(t, held/(row.m1+row.m2))
	}
}

// Problem:   40 N on the single line, 60 N on the moving pulley (2 to 1).
// Source:    Engineering Mechanics, Example 14.23, from a public companion notebook
// Expected:  a = 2g(2P − Q)/(4P + Q) = 1.783 636 m/s² at g = 9.81
// Tolerance: half a unit of the last printed figure
//
// The mass felt at the single line is P + Q/4, the moving pulley going half as
// fast; what must be held is P − Q/2.
func TestVerifyTwoToOne(t *testing.T) {
	const p, q, gravity = 40.0, 60.0, 9.81
	held := purchase.Double.Imbalance(units.Mass(p/gravity), units.Mass(q/gravity)).In(units.Newton) * gravity / g
	verification.Row{
		Key: "atwood/two to one, by the ideal ratio", Source: "Engineering Mechanics", Place: "Example 14.23", What: "acceleration of 40 N against 60 N on the moving pulley",
		Unit: "m/s²", Theirs: 1.783636, Tol: 5e-7, Why: "half a unit of the last printed figure",
	}.Check(t, held/(p/gravity+q/gravity/4))
	// The same through the ropes.
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	i, err := r.Imbalance(10*units.Foot, units.Mass(p/gravity), units.Mass(q/gravity))
	if err != nil || !near.Rel(i.In(units.Newton)*gravity/g, p-q/2, 1e-12) {
		t.Errorf("out of balance %v N through the ropes, %v; want %v", i.In(units.Newton)*gravity/g, err, p-q/2)
	}
}

// What balances 500 lb in each purchase, and how far its arbor goes for 60 ft at the batten (common practice). Exact: small
// whole numbers, but for a third.
func TestVerifyIdealRatios(t *testing.T) {
	for _, row := range []struct {
		kind           purchase.Kind
		weight, travel float64 // lb, ft
	}{
		{purchase.Single, 500, 60},
		{purchase.Double, 1000, 30},
		{purchase.Triple, 1500, 20},
	} {
		practice := verification.Row{Key: "purchase/ideal/" + row.kind.String(), Source: "counterweight practice", What: row.kind.String() + " purchase", Why: "exact arithmetic, but for rounding"}
		practice.Of("counterweight of 500 lb", "lb", row.weight, 1e-12*row.weight).Check(t, row.kind.Counterweight(500*units.Pound).In(units.Pound))
		practice.Of("arbor travel for 60 ft", "ft", row.travel, 1e-12*row.travel).Check(t, row.kind.ArborTravel(60*units.Foot).In(units.Foot))
	}
}
