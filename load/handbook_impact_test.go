package load_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/steelyard/internal/verification"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func impact(t *testing.T, drop, stretch units.Length) float64 {
	t.Helper()
	factor, err := load.ImpactFactor(drop, stretch)
	if err != nil {
		t.Fatal(err)
	}
	return factor
}

// Mechanics of Materials, 7th ed., problem 9.10-1, a table of factors. The third row is printed
// as 4.33, which is a misprint: 1 + √11 is 4.317. Half the last digit.
func TestVerifyImpactTable(t *testing.T) {
	for _, c := range []struct{ ratio, want float64 }{{0, 2.00}, {2.5, 3.45}, {5, 4.32}, {7.5, 5.00}, {10, 5.58}} {
		row := verification.Row{Key: "impact/factor", Source: "Mechanics of Materials", Place: "problem 9.10-1", What: "factor of a drop over a stretch at rest", Why: "half the last digit"}
		if c.ratio == 5 {
			row = row.Because("half the last digit of 1 + √11, which is misprinted as 4.33")
		}
		row.Of(fmt.Sprint("drop ", c.ratio, " times the stretch"), "", c.want, 5e-3).Check(t, impact(t, units.Millimetre.Scale(c.ratio), 1*units.Millimetre))
	}
}

// Mechanics of Materials, 7th ed., problem 9.10-4: 20 kN dropped 1.0 mm onto the middle of a
// simple beam of 3.0 m, square, with E 12 GPa, needs a side of 0.2804 m to keep to 10 MPa. The
// side is rounded to 0.05 mm, 0.02 %, which moves the stress by no more than three times that,
// hence 0.006 MPa.
func TestVerifyImpactOnBeam(t *testing.T) {
	const weight, span, modulus, side = 20e3, 3.0, 12e9, 0.2804
	stretch := weight * span * span * span / (48 * modulus * math.Pow(side, 4) / 12)
	static := weight * span / 4 / (side * side * side / 6)
	verification.Row{
		Key: "impact/on a beam", Source: "Mechanics of Materials", Place: "problem 9.10-4", What: "stress in a beam of 0.2804 m square under 20 kN dropped 1 mm", Unit: "MPa",
		Theirs: 10, Tol: 0.006, Why: "the side is rounded to 0.05 mm, 0.02 %, and the stress moves by three times that at most",
	}.Check(t, static*impact(t, 1*units.Millimetre, units.Metre.Scale(stretch))/1e6)
}

// Rods that a weight falls along. A machine design textbook, Ex. 7.1: 500 lb falls 1 in onto a
// bar of 2 in diameter and 10 in, E 30e6 psi: 31 061.50 lb/in² and 0.0104 in.
// Mechanics of structures, ch. 3, Ex. 2: 50 lb falls 4 in, rod of 1 in and 6 ft, E 30e6:
// 14 631 lb/in² and 0.035 in. Half the last digit.
func TestVerifyImpactOnRods(t *testing.T) {
	for _, c := range []struct {
		name, source, place                     string
		weight, drop, diameter, length, modulus float64 // lb, in, in, in, lb/in²
		stress, give                            float64 // lb/in², in
		tolStress, tolGive                      float64
	}{
		{"machine design", "machine design textbook", "Example 7.1", 500, 1, 2, 10, 30e6, 31061.50, 0.0104, 5e-3, 5e-5},
		{"structures", "mechanics of structures", "chapter 3, Example 2", 50, 4, 1, 72, 30e6, 14631, 0.035, 0.5, 5e-4},
	} {
		static := c.weight / (math.Pi * c.diameter * c.diameter / 4)
		stretch := static * c.length / c.modulus
		factor := impact(t, units.Inch.Scale(c.drop), units.Inch.Scale(stretch))
		row := verification.Row{Key: "impact/rod, " + c.name, Source: c.source, Place: c.place, What: "weight that falls along a rod", Why: "half the last digit"}
		row.Of("stress", "lb/in²", c.stress, c.tolStress).Check(t, factor*static)
		row.Of("give", "in", c.give, c.tolGive).Check(t, factor*stretch)
	}
}

// Mechanics of structures, ch. 3, Ex. 1: 8 tons put at once on a rod of 1-1/2 in and 10 ft, E
// 13 500 ton/in²: 9.05 ton/in², strain 0.0007, 0.08 in, 0.64 in·ton. Half the last digit.
func TestVerifySuddenLoad(t *testing.T) {
	const tons, length, modulus = 8.0, 120.0, 13500.0
	static := tons / (math.Pi * 1.5 * 1.5 / 4)
	stretch := static * length / modulus
	factor := impact(t, 0, units.Inch.Scale(stretch))
	row := verification.Row{Key: "impact/put at once", Source: "mechanics of structures", Place: "chapter 3, Example 1", What: "8 tons put at once on a rod", Why: "half the last digit"}
	row.Of("stress", "ton/in²", 9.05, 5e-3).Check(t, factor*static)
	row.Of("strain", "", 0.0007, 5e-5).Check(t, factor*static/modulus)
	row.Of("give", "in", 0.08, 5e-3).Check(t, factor*stretch)
	row.Of("energy", "in·ton", 0.64, 5e-3).Check(t, factor*tons*factor*stretch/2)
}

// A worked example of a simple beam on which 1 kN at rest gives 5 mm and 158 MN/m²: 10 kg
// dropped 12 mm, g 9.81, are like 0.791 kN, 3.955 mm and 125 MN/m². (One line of it prints
// 0.981 for 0.0981 kN.) Half the last digit of the load, and of the deflection and stress,
// which it takes from the rounded load, as much as that moves them.
func TestVerifyImpactLikeLoad(t *testing.T) {
	weight := 10 * 9.81 / 1000 // kN
	factor := impact(t, 12*units.Millimetre, units.Millimetre.Scale(5*weight))
	row := verification.Row{Key: "impact/simple beam", Source: "impact example", What: "10 kg dropped 12 mm on a beam", Why: "half the last digit"}
	row.Of("like a load of", "kN", 0.791, 5e-4).Check(t, factor*weight)
	row.Of("deflection", "mm", 3.955, 5e-3).Because("taken from the rounded load").Check(t, factor*5*weight)
	row.Of("stress", "MN/m²", 125, 0.5).Because("taken from the rounded load").Check(t, factor*158*weight)
}
