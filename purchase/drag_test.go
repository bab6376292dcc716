package purchase_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// The figures that everybody checks first, by hand: K 1.04 for half a turn is a drag of
// 0.04/2.04 and makes 1.028 of a quarter turn; straight past and without drag there is
// nothing to pay.
func TestVerifyDragFactor(t *testing.T) {
	for _, c := range []struct {
		name string
		drag purchase.Drag
		turn units.Angle
		want float64
		tol  float64

		source, place, why string
	}{
		{"half a turn, bearings", purchase.AntiFrictionBearings, 180 * units.Degree, 1.04, 1e-14, "Wire Rope Users Manual", "p. 88", "as printed, but for rounding"},
		{"half a turn, bushes", purchase.PlainBearings, 180 * units.Degree, 1.09, 1e-14, "Wire Rope Users Manual", "p. 88", "as printed, but for rounding"},
		{"a quarter turn, bearings", purchase.AntiFrictionBearings, 90 * units.Degree, 1.028, 5e-4, "equilibrium", "of a sheave with drag at its pin", "by hand to three decimals"},
		{"straight past", purchase.PlainBearings, 0, 1, 0, "equilibrium", "of a sheave with drag at its pin", "nothing presses on the pin"},
		{"no drag", purchase.FrictionlessBlocks, 180 * units.Degree, 1, 0, "equilibrium", "of a sheave with drag at its pin", "the tensions are equal"},
		{"the most, 0.9", 0.9, units.Turn / 2, 19, 1e-12, "equilibrium", "of a sheave with drag at its pin", "(1 + 0.9)/(1 − 0.9), but for rounding"},
	} {
		got, err := c.drag.Factor(c.turn)
		if err != nil {
			t.Fatal(err)
		}
		verification.Row{Key: "drag/factor", Source: c.source, Place: c.place, What: "tight side over slack side of a sheave", Why: c.why}.Of(c.name, "", c.want, c.tol).Check(t, got)
	}
	c, err := purchase.DragPerHalfTurn(1.04)
	if err != nil {
		t.Fatal(err)
	}
	verification.Row{
		Key: "drag/of a factor of 1.04", Source: "equilibrium", Place: "of a sheave with drag at its pin", What: "drag of a factor of 1.04 for half a turn", Theirs: 0.0196, Tol: 5e-5, Why: "0.04/2.04 to four decimals",
	}.Check(t, float64(c))
}

// A factor comes back from the drag that was made of it.
func TestPropDragPerHalfTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(1, 19).Draw(t, "factor")
		drag, err := purchase.DragPerHalfTurn(k)
		if err != nil || drag.Validate() != nil {
			t.Fatalf("drag %v: %v, %v", float64(drag), err, drag.Validate())
		}
		if got, err := drag.Factor(units.Turn / 2); err != nil || !near.Rel(got, k, 1e-13) {
			t.Fatalf("factor %v, %v", got, err)
		}
	})
}

// What a drag means, on the pin: the tensions' difference is that share of the vector
// sum of the two pulls, and of the multiplier 2·cos(½ corner) without drag. The corner
// between the two parts is what the turn leaves of half a turn.
func TestPropDragOnThePin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drag := purchase.Drag(rapid.Float64Range(0, 0.9).Draw(t, "drag"))
		degrees := rapid.Float64Range(0, 180).Draw(t, "turn")
		slack := rapid.Float64Range(1, 5000).Draw(t, "slack side")
		k, err := drag.Factor(units.Degree.Scale(degrees))
		if err != nil {
			t.Fatal(err)
		}
		pin := pinLoad(slack, k*slack, 180-degrees)
		if !near.Rel((k-1)*slack, float64(drag)*pin, 1e-11) {
			t.Fatalf("K %v: tensions differ by %v, drag times the pin's load is %v", k, (k-1)*slack, float64(drag)*pin)
		}
	})
}

// pinLoad is the vector sum of two pulls whose directions are a corner apart.
func pinLoad(slack, tight, corner float64) float64 {
	sin, cos := math.Sincos(corner * math.Pi / 180)
	one := purchase.Vector{Up: -units.Force(slack)}
	two := purchase.Vector{Across: units.Force(tight * sin), Up: -units.Force(tight * cos)}
	return one.Add(two).Size().In(units.Newton)
}

// Problem:   the load on a sheave by the angle between its two parts, as a sum of two equal pulls.
// Source:    sheave multiplier table, 2·cos(θ/2), printed alike on two suppliers' pages (common practice)
// Expected:  the printed multipliers and examples
// Tolerance: 0.01 of the pull: the table mixes rounding and truncation; 1.29 for 150 kg at 100° gives 1.5 kg
func TestVerifySheaveVectors(t *testing.T) {
	for _, row := range []struct{ corner, pull, printed, tol float64 }{
		{0, 1, 2.00, 0.01},
		{10, 1, 1.99, 0.01},
		{20, 1, 1.97, 0.01},
		{30, 1, 1.93, 0.01},
		{40, 1, 1.87, 0.01},
		{45, 1, 1.84, 0.01},
		{50, 1, 1.81, 0.01},
		{60, 1, 1.73, 0.01},
		{70, 1, 1.64, 0.01},
		{80, 1, 1.53, 0.01},
		{90, 1, 1.41, 0.01},
		{100, 1, 1.29, 0.01},
		{110, 1, 1.15, 0.01},
		{120, 1, 1.00, 1e-12},
		{130, 1, .84, 0.01},
		{135, 1, .76, 0.01},
		{140, 1, .68, 0.01},
		{150, 1, .52, 0.01},
		{160, 1, .35, 0.01},
		{170, 1, .17, 0.01},
		{180, 1, .00, 0.01},
		{50, 1000, 1810, 10},
		{135, 1000, 760, 10},
		{100, 150, 194, 1.5},
	} {
		r := verification.Row{Key: "sheave/vectors", Source: "sheave multiplier table", What: "sum of two equal pulls", Why: "the table mixes rounding and truncation: 0.01 of the pull"}
		if row.corner == 120 {
			r = r.From("equilibrium", "three equal pulls at 120°").Because("an identity, but for rounding")
		}
		r.Of(fmt.Sprintf("%v at %v°", row.pull, row.corner), "", row.printed, row.tol).Check(t, pinLoad(row.pull, row.pull, row.corner))
	}
}
