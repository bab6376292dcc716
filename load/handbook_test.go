package load_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/steelyard/internal/verification"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %v, want %v ± %v", what, got, want, tol)
	}
}

// Nominal steel pipe in US units. Areas, second moments, section moduli: a machine-element textbook,
// 4th ed., Table A16-6; half the last digit unless a row says otherwise.
// Weights: pipe weight tables, made with w = 10.68·(D−t)·t.
func TestVerifyPipeTables(t *testing.T) {
	type row struct {
		outer, wall                  float64 // in
		area, second, modulus, perFt float64 // in², in⁴, in³, lb/ft; 0 where the source has none
		tolA, tolI, tolS, tolW       float64
		source, why                  string
	}
	for _, c := range []row{
		{1.900, 0.145, 0.799, 0.3099, 0.3262, 2.718, 5e-4, 5e-5, 5e-5, 5e-4, "Table A16-6", "half the last digit"},
		{2.375, 0.154, 1.075, 0.6658, 0.5607, 3.653, 1e-3, 1.5e-4, 1.5e-4, 5e-4, "Table A16-6", "half the last digit, and one unit more: its last digits are one unit high"},
		{1.660, 0.140, 0.669, 0.1947, 0.2346, 2.273, 5e-4, 5e-5, 5e-5, 5e-4, "Table A16-6", "half the last digit"},
		{1.660, 0.191, 0, 0, 0, 3.00, 0, 0, 0, 5e-3, "pipe weight list", "half the last digit; the wall is from memory"},
		{1.900, 0.200, 0, 0, 0, 3.63, 0, 0, 0, 5e-3, "pipe weight list", "half the last digit; the wall is from memory"},
		{2.375, 0.218, 0, 0, 0, 5.02, 0, 0, 0, 5e-3, "pipe weight list", "half the last digit; the wall is from memory"},
		{1.900, 0.135, 0.749, 0.293, 0.309, 0, 5e-4, 5e-4, 5e-4, 0, "AISC Shapes Database", "half the last digit"},
	} {
		t.Run(fmt.Sprintf("%.3f x %.3f", c.outer, c.wall), func(t *testing.T) {
			tube := load.Tube{
				Outer:   units.Inch.Scale(c.outer),
				Wall:    units.Inch.Scale(c.wall),
				Density: load.PipeSteelDensity,
				Modulus: load.SteelModulusUS,
			}
			size := fmt.Sprintf("%.3f x %.3f in", c.outer, c.wall)
			row := verification.Row{Key: "tube/" + size, Source: c.source, What: "tube of " + size, Why: c.why}
			if c.area != 0 {
				row.Of("area", "in²", c.area, c.tolA).Check(t, tube.Area().In(units.SquareInch))
				row.Of("second moment", "in⁴", c.second, c.tolI).Check(t, tube.SecondMoment().In(units.InchToTheFourth))
				row.Of("section modulus", "in³", c.modulus, c.tolS).Check(t, tube.SectionModulus().In(units.CubicInch))
			}
			if c.perFt != 0 {
				if c.area != 0 {
					row = row.From("pipe schedule charts", "")
				}
				row.Of("weight", "lb/ft", c.perFt, c.tolW).Because("half the last digit").Check(t, tube.LineMass().In(units.PoundPerFoot))
			}
		})
	}
}

// Metric tube, 7850 kg/m³: 48.3 x 4.0 on a scaffold tube data sheet citing BS EN 12811-2; 48.3 x 3.2
// a mill's page citing EN 39; 60.3 x 4.0, 48.3 x 3.0 and 42.4 x 4.0 a table of cold-formed hollow
// sections. Half the last digit.
func TestVerifyMetricTubes(t *testing.T) {
	for _, c := range []struct {
		outer, wall                 float64 // mm
		perM, area, second, modulus float64 // kg/m, cm², cm⁴, cm³
		digits                      [4]float64
		source                      string
	}{
		{48.3, 4.0, 4.37, 5.57, 13.8, 5.70, [4]float64{5e-3, 5e-3, 0.05, 5e-3}, "scaffold tube data sheet"},
		{48.3, 3.0, 3.35, 4.27, 11.0, 4.55, [4]float64{5e-3, 5e-3, 0.05, 5e-3}, "hollow section table"},
		{42.4, 4.0, 3.79, 4.83, 8.99, 4.24, [4]float64{5e-3, 5e-3, 5e-3, 5e-3}, "hollow section table"},
		{60.3, 4.0, 5.55, 7.07, 28.2, 9.34, [4]float64{5e-3, 5e-3, 0.05, 5e-3}, "hollow section table"},
		{48.3, 3.2, 3.56, 0, 0, 0, [4]float64{5e-3, 0, 0, 0}, "EN 39 mill page"},
	} {
		t.Run(fmt.Sprintf("%.1f x %.1f", c.outer, c.wall), func(t *testing.T) {
			tube := load.Tube{
				Outer:   units.Millimetre.Scale(c.outer),
				Wall:    units.Millimetre.Scale(c.wall),
				Density: load.SteelDensity,
			}
			size := fmt.Sprintf("%.1f x %.1f mm", c.outer, c.wall)
			row := verification.Row{Key: "tube/" + size, Source: c.source, What: "tube of " + size, Why: "half the last digit"}
			row.Of("mass", "kg/m", c.perM, c.digits[0]).Check(t, tube.LineMass().In(units.KilogramPerMetre))
			if c.area != 0 {
				row.Of("area", "cm²", c.area, c.digits[1]).Check(t, tube.Area().In(units.SquareCentimetre))
				row.Of("second moment", "cm⁴", c.second, c.digits[2]).Check(t, tube.SecondMoment().In(units.CentimetreToTheFourth))
				row.Of("section modulus", "cm³", c.modulus, c.digits[3]).Check(t, tube.SectionModulus().In(units.CubicCentimetre))
			}
		})
	}
}

// Cloth. A drapery calculation page: 32 yd of cloth 54 in wide at 14 oz/yd² is 42 lb. Cloth of 16 oz per
// running yard at 54 in, by the definitions of the units: a roll of 100 yd is 100 lb, and
// 361.7 g/m². Fullness (three pages of soft-goods suppliers; common practice): 40 ft finished at 50 %
// takes 60 ft of cloth, at 100 % 80 ft.
func TestVerifyCloth(t *testing.T) {
	d := load.Drape{Width: 32 * units.Yard, Drop: 54 * units.Inch, Cloth: 14 * units.OuncePerSquareYard}
	verification.Row{Key: "cloth/32 yd at 14 oz per yd²", Source: "drapery page", What: "mass of 32 yd of cloth 54 in wide", Unit: "lb", Theirs: 42, Tol: 1e-12, Why: "exact arithmetic, but for rounding"}.
		Check(t, d.Mass().In(units.Pound))

	cloth := load.Running(16*units.Ounce, 1*units.Yard, 54*units.Inch)
	running := verification.Row{Key: "cloth/16 oz per running yard", Source: "definitions of the units", What: "cloth of 16 oz per running yard at 54 in", Why: "half the last digit"}
	running.Of("per square metre", "g/m²", 361.7, 0.05).Check(t, cloth.In(units.GramPerSquareMetre))
	roll := load.Drape{Width: 100 * units.Yard, Drop: 54 * units.Inch, Cloth: cloth}
	running.Of("roll of 100 yd", "lb", 100, 1e-11).Because("exact arithmetic, but for rounding").Check(t, roll.Mass().In(units.Pound))
	running.Of("from the roll", "g/m²", 361.7, 0.05).Check(t, load.Running(100*units.Pound, 100*units.Yard, 54*units.Inch).In(units.GramPerSquareMetre))

	for _, c := range []struct{ fullness, cloth float64 }{{0.5, 60}, {1, 80}} {
		full := load.Drape{Width: 40 * units.Foot, Drop: 18 * units.Foot, Cloth: cloth, Fullness: c.fullness}
		flat := load.Drape{Width: units.Foot, Drop: 18 * units.Foot, Cloth: cloth}
		verification.Row{Key: "cloth/fullness", Source: "soft goods pages", What: "cloth for 40 ft finished", Why: "exact arithmetic, but for rounding"}.
			Of(fmt.Sprintf("%v %%", 100*c.fullness), "ft", c.cloth, 1e-12*c.cloth).Check(t, units.Ratio(full.Mass(), flat.Mass()))
	}
}

// Three equal pulls with two overhangs (textbook problem): 300 N/m on three supports 3 m
// apart need overhangs of 1.319 m, and each then pulls 863.8 N with −207 N·m over
// the middle. The overhang is rounded to 1 mm, hence 0.3 N and 0.5 N·m.
func TestVerifyEqualPullsWithOverhangs(t *testing.T) {
	tube := load.Tube{Outer: 50 * units.Millimetre, Wall: 5 * units.Millimetre, Modulus: load.SteelModulusEN}
	perMetre := (300 * units.Newton).Mass(units.StandardGravity).Per(units.Metre)
	tube.Density = units.KilogramPerCubicMetre.Scale(perMetre.In(units.KilogramPerMetre) / tube.Area().In(units.SquareMetre))
	b := load.Batten{Length: 8.638 * units.Metre, Pipe: tube, Lines: load.Spaced(1.319*units.Metre, 3*units.Metre, 3)}
	s, err := b.Share(nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	for i, l := range s.Lines {
		verification.Row{Key: "batten/equal pulls with two overhangs", Source: "strength of materials problems", What: "batten with equal overhangs", Why: "the overhang is rounded to 1 mm"}.
			Of(fmt.Sprint("pull ", i+1), "N", 863.8, 0.3).Check(t, l.Tension.In(units.Newton))
	}
	verification.Row{Key: "batten/equal pulls with two overhangs/hogging", Source: "equilibrium", Place: "of an overhang", What: "most hogging, wa²/2 over an end line", Unit: "N·m", Theirs: -300 * 1.319 * 1.319 / 2, Tol: 0.01, Why: "the span's weight goes by way of a density"}.
		Check(t, s.Hogging.Moment.In(units.NewtonMetre))
}
