package load_test

import (
	"fmt"
	"math"
	"testing"

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
func TestPipeTables(t *testing.T) {
	type row struct {
		outer, wall                  float64 // in
		area, second, modulus, perFt float64 // in², in⁴, in³, lb/ft; 0 where the source has none
		tolA, tolI, tolS, tolW       float64
		source                       string
	}
	for _, c := range []row{
		{1.900, 0.145, 0.799, 0.3099, 0.3262, 2.718, 5e-4, 5e-5, 5e-5, 5e-4, "Table A16-6"},
		{2.375, 0.154, 1.075, 0.6658, 0.5607, 3.653, 1e-3, 1.5e-4, 1.5e-4, 5e-4, "Table A16-6, whose last digits are one unit high"},
		{1.660, 0.140, 0.669, 0.1947, 0.2346, 2.273, 5e-4, 5e-5, 5e-5, 5e-4, "Table A16-6"},
		{1.660, 0.191, 0, 0, 0, 3.00, 0, 0, 0, 5e-3, "weight list to two decimals; wall from memory"},
		{1.900, 0.200, 0, 0, 0, 3.63, 0, 0, 0, 5e-3, "weight list to two decimals; wall from memory"},
		{2.375, 0.218, 0, 0, 0, 5.02, 0, 0, 0, 5e-3, "weight list to two decimals; wall from memory"},
		{1.900, 0.135, 0.749, 0.293, 0.309, 0, 5e-4, 5e-4, 5e-4, 0, "AISC Shapes Database v16.0, Pipe1-1/2STD, design wall"},
	} {
		t.Run(fmt.Sprintf("%.3f x %.3f", c.outer, c.wall), func(t *testing.T) {
			tube := load.Tube{
				Outer:   units.Inch.Scale(c.outer),
				Wall:    units.Inch.Scale(c.wall),
				Density: load.PipeSteelDensity,
				Modulus: load.SteelModulusUS,
			}
			if c.area != 0 {
				near(t, "area", tube.Area().In(units.SquareInch), c.area, c.tolA)
				near(t, "second moment", tube.SecondMoment().In(units.InchToTheFourth), c.second, c.tolI)
				near(t, "section modulus", tube.SectionModulus().In(units.CubicInch), c.modulus, c.tolS)
			}
			if c.perFt != 0 {
				near(t, "lb/ft", tube.LineMass().In(units.PoundPerFoot), c.perFt, c.tolW)
			}
		})
	}
}

// Metric tube, 7850 kg/m³: 48.3 x 4.0 on a scaffold tube data sheet citing BS EN 12811-2; 48.3 x 3.2
// a mill's page citing EN 39; 60.3 x 4.0, 48.3 x 3.0 and 42.4 x 4.0 a table of cold-formed hollow
// sections. Half the last digit.
func TestMetricTubes(t *testing.T) {
	for _, c := range []struct {
		outer, wall                 float64 // mm
		perM, area, second, modulus float64 // kg/m, cm², cm⁴, cm³
		digits                      [4]float64
	}{
		{48.3, 4.0, 4.37, 5.57, 13.8, 5.70, [4]float64{5e-3, 5e-3, 0.05, 5e-3}},
		{48.3, 3.0, 3.35, 4.27, 11.0, 4.55, [4]float64{5e-3, 5e-3, 0.05, 5e-3}},
		{42.4, 4.0, 3.79, 4.83, 8.99, 4.24, [4]float64{5e-3, 5e-3, 5e-3, 5e-3}},
		{60.3, 4.0, 5.55, 7.07, 28.2, 9.34, [4]float64{5e-3, 5e-3, 0.05, 5e-3}},
		{48.3, 3.2, 3.56, 0, 0, 0, [4]float64{5e-3, 0, 0, 0}},
	} {
		t.Run(fmt.Sprintf("%.1f x %.1f", c.outer, c.wall), func(t *testing.T) {
			tube := load.Tube{
				Outer:   units.Millimetre.Scale(c.outer),
				Wall:    units.Millimetre.Scale(c.wall),
				Density: load.SteelDensity,
			}
			near(t, "kg/m", tube.LineMass().In(units.KilogramPerMetre), c.perM, c.digits[0])
			if c.area != 0 {
				near(t, "area", tube.Area().In(units.SquareCentimetre), c.area, c.digits[1])
				near(t, "second moment", tube.SecondMoment().In(units.CentimetreToTheFourth), c.second, c.digits[2])
				near(t, "section modulus", tube.SectionModulus().In(units.CubicCentimetre), c.modulus, c.digits[3])
			}
		})
	}
}

// Cloth. A drapery calculation page: 32 yd of cloth 54 in wide at 14 oz/yd² is 42 lb. Cloth of 16 oz per
// running yard at 54 in, by the definitions of the units: a roll of 100 yd is 100 lb, and
// 361.7 g/m². Fullness (three pages of soft-goods suppliers; common practice): 40 ft finished at 50 %
// takes 60 ft of cloth, at 100 % 80 ft.
func TestCloth(t *testing.T) {
	d := load.Drape{Width: 32 * units.Yard, Drop: 54 * units.Inch, Cloth: 14 * units.OuncePerSquareYard}
	near(t, "32 yd at 14 oz/yd²", d.Mass().In(units.Pound), 42, 1e-12)

	cloth := load.Running(16*units.Ounce, 1*units.Yard, 54*units.Inch)
	near(t, "16 oz per running yard in g/m²", cloth.In(units.GramPerSquareMetre), 361.7, 0.05)
	roll := load.Drape{Width: 100 * units.Yard, Drop: 54 * units.Inch, Cloth: cloth}
	near(t, "roll of 100 yd", roll.Mass().In(units.Pound), 100, 1e-11)
	near(t, "from the roll", load.Running(100*units.Pound, 100*units.Yard, 54*units.Inch).In(units.GramPerSquareMetre), 361.7, 0.05)

	for _, c := range []struct{ fullness, cloth float64 }{{0.5, 60}, {1, 80}} {
		full := load.Drape{Width: 40 * units.Foot, Drop: 18 * units.Foot, Cloth: cloth, Fullness: c.fullness}
		flat := load.Drape{Width: units.Foot.Scale(c.cloth), Drop: 18 * units.Foot, Cloth: cloth}
		near(t, "full against flat", units.Ratio(full.Mass(), flat.Mass()), 1, 1e-12)
	}
}

// Three equal pulls with two overhangs (textbook problem): 300 N/m on three supports 3 m
// apart need overhangs of 1.319 m, and each then pulls 863.8 N with −207 N·m over
// the middle. The overhang is rounded to 1 mm, hence 0.3 N and 0.5 N·m.
func TestEqualPullsWithOverhangs(t *testing.T) {
	tube := load.Tube{Outer: 50 * units.Millimetre, Wall: 5 * units.Millimetre, Modulus: load.SteelModulusEN}
	perMetre := (300 * units.Newton).Mass(units.StandardGravity).Per(units.Metre)
	tube.Density = units.KilogramPerCubicMetre.Scale(perMetre.In(units.KilogramPerMetre) / tube.Area().In(units.SquareMetre))
	b := load.Batten{Length: 8.638 * units.Metre, Pipe: tube, Lines: load.Spaced(1.319*units.Metre, 3*units.Metre, 3)}
	s, err := b.Share(nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	for i, l := range s.Lines {
		near(t, fmt.Sprint("pull ", i), l.Tension.In(units.Newton), 863.8, 0.3)
	}
	near(t, "hogging", s.Hogging.Moment.In(units.NewtonMetre), -300*1.319*1.319/2, 0.01)
}
