package units_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/internal/verification"
	"example.com/steelyard/units"
)

// Problem:   one unit in terms of another.
// Source:    NIST SP 811: A. Thompson and B. N. Taylor, Guide for the Use of the International
//            System of Units (SI), NIST Special Publication 811, 2008 edition,
//            Appendix B.8 (with footnotes 22 and 23) and B.9.
// Given:     one of the unit.
// Expected:  the factor as printed; bold factors, which are exact, as "exact".
// Tolerance: none for an exact factor beyond the one rounding of a float64;
//            otherwise half a unit of the last printed figure.
// Rounding:  the source rounds each factor once, to seven figures.
//
// Rows of the public table carry a NIST factor as reproduced there, not seen in the publication itself.

// book is a source and a place in it.
type book struct{ source, place string }

var (
	sp811           = book{"NIST SP 811", "B.9"}
	sp811Note22     = book{"NIST SP 811", "B.8, footnote 22"}
	sp811Note23     = book{"NIST SP 811", "B.8, footnote 23"}
	publicTable     = book{"NIST factor table", ""}
	textbook        = book{"chemical engineering textbook", "Appendix A"}
	sp811FromMemory = book{"NIST SP 811 from memory", "B.9"}
	byDefinition    = book{"definitions of the units", ""}
	fromMemory      = book{"NIST SP 811 from memory", "factor of psi times 1000"}
)

// of gives the row of a factor "unit to unit".
func (b book) of(key, name string, theirs, tol float64) verification.Row {
	_, unit, _ := strings.Cut(name, " to ")
	return verification.Row{Key: key, Source: b.source, Place: b.place, What: "conversion"}.Of(name, unit, theirs, tol)
}

func TestVerifyExactFactors(t *testing.T) {
	for _, row := range []struct {
		name   string
		got    float64
		exact  float64
		source book
	}{
		{"inch to m", units.Inch.In(units.Metre), 0.0254, sp811},
		{"foot to m", units.Foot.In(units.Metre), 0.3048, sp811},
		{"yard to m", units.Yard.In(units.Metre), 0.9144, sp811},
		{"pound to kg", units.Pound.In(units.Kilogram), 0.45359237, sp811Note22},
		{"ounce to kg", units.Ounce.In(units.Kilogram), 0.028349523125, book{sp811Note22.source, sp811Note22.place + ", a sixteenth of its pound"}},
		{"standard gravity to m/s²", units.StandardGravity.In(units.MetrePerSecondSquared), 9.80665, sp811},
		{"pound-force to N", units.PoundForce.In(units.Newton), 4.4482216152605, sp811Note23},
		{"kilogram-force to N", units.KilogramForce.In(units.Newton), 9.80665, sp811},
		{"short ton to kg", units.ShortTon.In(units.Kilogram), 907.18474, book{sp811Note22.source, sp811Note22.place + ", 2000 of its pound"}},
		{"kip to lbf", units.Kip.In(units.PoundForce), 1000, sp811},
		{"cubic inch to m³", units.CubicInch.In(units.CubicMetre), 1.6387064e-5, byDefinition},
		{"inch to the fourth to m⁴", units.InchToTheFourth.In(units.MetreToTheFourth), 4.162314256e-7, byDefinition},
		{"square yard to m²", units.SquareYard.In(units.SquareMetre), 0.83612736, byDefinition},
		{"square inch to m²", units.SquareInch.In(units.SquareMetre), 6.4516e-4, publicTable},
		{"square foot to m²", units.SquareFoot.In(units.SquareMetre), 9.290304e-2, publicTable},
	} {
		t.Run(row.name, func(t *testing.T) {
			row.source.of("units/exact", row.name, row.exact, 0).Because("exact by definition, and rounded once").Check(t, row.got)
		})
	}
}

func TestVerifyPrintedFactors(t *testing.T) {
	foot := units.Foot
	cubicYard := 27. // cubic feet
	for _, row := range []struct {
		name    string
		got     float64
		printed string
		source  book
	}{
		{"inch to m", units.Inch.In(units.Metre), "2.54E-02", sp811},
		{"foot to m", units.Foot.In(units.Metre), "3.048E-01", sp811},
		{"yard to m", units.Yard.In(units.Metre), "9.144E-01", sp811},
		{"lbf to N", units.PoundForce.In(units.Newton), "4.448222", sp811},
		{"kip to N", units.Kip.In(units.Newton), "4.448222E+03", sp811},
		{"ton-force (2000 lbf) to N", (2000 * units.PoundForce).In(units.Newton), "8.896443E+03", sp811},
		{"ounce-force to N", units.Ounce.Weight(units.StandardGravity).In(units.Newton), "2.780139E-01", sp811},
		{"kgf to N", units.KilogramForce.In(units.Newton), "9.80665", sp811},
		{"psi to Pa", units.PoundForcePerSquareInch.In(units.Pascal), "6.894757E+03", sp811},
		{"lb to kg", units.Pound.In(units.Kilogram), "4.535924E-01", sp811},
		{"oz to kg", units.Ounce.In(units.Kilogram), "2.834952E-02", sp811},
		{"short hundredweight to kg", (100 * units.Pound).In(units.Kilogram), "4.535924E+01", sp811},
		{"short ton to kg", units.ShortTon.In(units.Kilogram), "9.071847E+02", sp811},
		{"long ton to kg", (2240 * units.Pound).In(units.Kilogram), "1.016047E+03", sp811},
		{"slug to kg", units.PoundForce.Mass(units.FootPerSecondSquared).In(units.Kilogram), "1.459390E+01", sp811},
		{"N to lbf", units.Newton.In(units.PoundForce), "0.224809", textbook},
		{"kg to lb", units.Kilogram.In(units.Pound), "2.20462", textbook},
		{"m to ft", units.Metre.In(units.Foot), "3.28084", textbook},
		// A joule is a newton metre of work; the factor is that of the moment.
		{"moment of a J to ft·lbf", units.NewtonMetre.In(units.PoundForceFoot), "0.737562", textbook},
		{"J to ft·lbf", units.Joule.In(units.FootPoundForce), "0.737562", textbook},
		{"ft·lbf of energy to J", units.FootPoundForce.In(units.Joule), "1.355818", publicTable},
		{"hp of 550 ft·lbf/s to W", units.Horsepower.In(units.Watt), "7.456999E+02", sp811},
		{"degree to rad", units.Degree.In(units.Radian), "1.745329E-02", sp811FromMemory},
		{"arc minute to rad", units.ArcMinute.In(units.Radian), "2.908882E-04", sp811},
		{"revolution to rad", units.Turn.In(units.Radian), "6.283185", sp811},
		{"ft/s to m/s", units.FootPerSecond.In(units.MetrePerSecond), "3.048E-01", publicTable},
		{"ft/min to m/s", units.FootPerMinute.In(units.MetrePerSecond), "5.08E-03", publicTable},
		{"ft/s² to m/s²", units.FootPerSecondSquared.In(units.MetrePerSecondSquared), "3.048E-01", publicTable},
		{"ft·lbf/s to W", units.FootPoundForce.Per(units.Second).In(units.Watt), "1.355818", publicTable},
		{"ft·lbf/min to W", units.FootPoundForce.Per(units.Minute).In(units.Watt), "2.259697E-02", publicTable},
		{"hour to s", units.Hour.In(units.Second), "3.6E+03", publicTable},
		{"gon of 0.9 degrees to rad", (0.9 * units.Degree).In(units.Radian), "1.570796E-02", publicTable},
		{"gram-force per cm² to Pa", (units.KilogramForce / 1000).Stress(units.SquareCentimetre).In(units.Pascal), "9.80665E+01", publicTable},
		{"lb·ft² to kg·m²", units.PoundFootSquared.In(units.KilogramMetreSquared), "4.214011E-02", publicTable},
		{"lb·in² to kg·m²", units.PoundInchSquared.In(units.KilogramMetreSquared), "2.926397E-04", publicTable},
		{"stiffness lbf/in to N/m", units.PoundForcePerInchStretch.In(units.NewtonPerMetreStretch), "1.751268E+02", publicTable},
		{"stiffness lbf/ft to N/m", units.PoundForcePerFootStretch.In(units.NewtonPerMetreStretch), "1.459390E+01", publicTable},
		{"ft·lbf to J", units.PoundForceFoot.In(units.NewtonMetre), "1.355818", publicTable},
		{"in·lbf to N·m", units.PoundForceInch.In(units.NewtonMetre), "1.129848E-01", publicTable},
		{"lbf/ft to N/m", units.PoundForcePerFoot.In(units.NewtonPerMetre), "1.459390E+01", publicTable},
		{"lbf/in to N/m", units.PoundForce.Per(units.Inch).In(units.NewtonPerMetre), "1.751268E+02", publicTable},
		{"lbf/ft² to Pa", units.PoundForcePerSquareInch.Scale(1. / 144).In(units.Pascal), "4.788026E+01", publicTable},
		{"ksi to Pa", units.KipPerSquareInch.In(units.Pascal), "6.894757E+06", fromMemory},
		{"lb/ft to kg/m", units.PoundPerFoot.In(units.KilogramPerMetre), "1.488164", publicTable},
		{"lb/in to kg/m", units.Pound.Per(units.Inch).In(units.KilogramPerMetre), "1.785797E+01", publicTable},
		{"lb/yd to kg/m", units.Pound.Per(units.Yard).In(units.KilogramPerMetre), "4.960546E-01", publicTable},
		{"oz/yd² to kg/m²", units.OuncePerSquareYard.In(units.KilogramPerSquareMetre), "3.390575E-02", publicTable},
		{"oz/ft² to kg/m²", units.OuncePerSquareYard.Scale(9).In(units.KilogramPerSquareMetre), "3.051517E-01", publicTable},
		{"oz/in² to kg/m²", units.OuncePerSquareYard.Scale(1296).In(units.KilogramPerSquareMetre), "4.394185E+01", publicTable},
		{"lb/ft² to kg/m²", units.PoundPerSquareFoot.In(units.KilogramPerSquareMetre), "4.882428", publicTable},
		{"lb/ft³ to kg/m³", units.PoundPerCubicFoot.In(units.KilogramPerCubicMetre), "1.601846E+01", publicTable},
		{"lb/in³ to kg/m³", units.PoundPerCubicInch.In(units.KilogramPerCubicMetre), "2.767990E+04", publicTable},
		{"lb/yd³ to kg/m³", units.PoundPerCubicFoot.Scale(1 / cubicYard).In(units.KilogramPerCubicMetre), "5.932764E-01", publicTable},
		{"in² to m²", units.SquareInch.In(units.SquareMetre), "6.4516E-04", publicTable},
		{"ft² to m²", foot.By(foot).In(units.SquareMetre), "9.290304E-02", publicTable},
		{"yd² to m²", units.SquareYard.In(units.SquareMetre), "8.361274E-01", publicTable},
		{"in³ to m³", units.CubicInch.In(units.CubicMetre), "1.638706E-05", publicTable},
		{"ft³ to m³", units.CubicInch.Scale(1728).In(units.CubicMetre), "2.831685E-02", publicTable},
		{"in⁴ to m⁴", units.InchToTheFourth.In(units.MetreToTheFourth), "4.162314E-07", publicTable},
		{"ft⁴ to m⁴", units.InchToTheFourth.Scale(20736).In(units.MetreToTheFourth), "8.630975E-03", publicTable},
	} {
		t.Run(row.name, func(t *testing.T) {
			want, half := printed(t, row.printed)
			row.source.of("units/printed", row.name, want, half).Because("half a unit of the last printed figure").Check(t, row.got)
		})
	}
}

// Conversions that other publications print beside their own figures.
func TestVerifyConversionsElsewhere(t *testing.T) {
	pipe := book{"ASTM A53", "tensile requirements"}
	const five = "the standard rounds to 5 MPa"
	for _, row := range []struct {
		name      string
		got       float64
		want, tol float64
		from      book
		why       string
	}{
		{"35 ksi to MPa", (35 * units.KipPerSquareInch).In(units.Megapascal), 240, 2.5, pipe, five},
		{"60 ksi to MPa", (60 * units.KipPerSquareInch).In(units.Megapascal), 415, 2.5, pipe, five},
		{"30 ksi to MPa", (30 * units.KipPerSquareInch).In(units.Megapascal), 205, 2.5, pipe, five},
		{"48 ksi to MPa", (48 * units.KipPerSquareInch).In(units.Megapascal), 330, 2.5, pipe, five},
		{"7850 kg/m³ to lb/in³", (7850 * units.KilogramPerCubicMetre).In(units.PoundPerCubicInch), 0.2836, 5e-5, byDefinition, "half the last digit"},
		{"11 340 kg/m³ to lb/in³", (11340 * units.KilogramPerCubicMetre).In(units.PoundPerCubicInch), 0.4097, 5e-5, byDefinition, "half the last digit"},
		{"10.9 kN at 9.81 m/s² to kg", (10.9 * units.Kilonewton).Mass(9.81 * units.MetrePerSecondSquared).In(units.Kilogram), 1111, 0.5, book{"engineering reference page", ""}, "half the last digit"},
	} {
		row.from.of("units/elsewhere", row.name, row.want, row.tol).Because(row.why).Check(t, row.got)
	}
}

// The same factors through text, as a user meets them.
func TestVerifyFactorsInText(t *testing.T) {
	for _, row := range []struct {
		text      string
		like      units.Value
		want, tol float64
		source    book
	}{
		{"1 lbf", units.Newton, 4.4482216152605, 4.4482216152605e-12, sp811Note23},
		{"1 psi", units.Pascal, 6894.757, 5e-4, sp811},
		{"2000 lbf", units.Newton, 8896.443, 5e-4, sp811},
		{"1 short ton", units.Kilogram, 907.1847, 5e-5, sp811},
		{"1 oz/yd2", units.KilogramPerSquareMetre, 0.03390575, 5e-9, publicTable},
		{"1 in4", units.MetreToTheFourth, 4.162314e-7, 5e-14, publicTable},
		{"1 lb/ft", units.KilogramPerMetre, 1.488164, 5e-7, publicTable},
		{"1 lbf/ft", units.NewtonPerMetre, 14.59390, 5e-6, publicTable},
		{"1 ft lbf", units.NewtonMetre, 1.355818, 5e-7, publicTable},
		{"1 lb/ft2", units.KilogramPerSquareMetre, 4.882428, 5e-7, publicTable},
		{"1 lb/ft3", units.KilogramPerCubicMetre, 16.01846, 5e-6, publicTable},
		{"1 lb/in3", units.KilogramPerCubicMetre, 27679.90, 5e-3, publicTable},
		{"1 hp", units.Watt, 745.6999, 5e-5, sp811},
		{"1 ft·lbf", units.Joule, 1.355818, 5e-7, publicTable},
		{"1 arcmin", units.Radian, 2.908882e-4, 5e-11, sp811},
		{"1 revolution", units.Radian, 6.283185, 5e-7, sp811},
		{"1 lbf/in", units.NewtonPerMetreStretch, 175.1268, 5e-5, publicTable},
		{"1 lb·ft²", units.KilogramMetreSquared, 4.214011e-2, 5e-9, publicTable},
		{"1 lb in2", units.KilogramMetreSquared, 2.926397e-4, 5e-11, publicTable},
	} {
		t.Run(row.text, func(t *testing.T) {
			got, err := parseLike(row.like, row.text)
			if err != nil {
				t.Fatal(err)
			}
			r := row.source.of("units/text", row.text, row.want, row.tol)
			r.What, r.Unit = "unit as people write it, "+row.text, strings.TrimPrefix(row.like.String(), "1 ")
			r.Because("half a unit of the last printed figure; of an exact one what rounding leaves").Check(t, number(got))
		})
	}
}

// printed gives the value of a figure as a source prints it and half a unit of
// its last digit, widened by the rounding of a float64: an exact factor may stand
// on the edge.
func printed(t *testing.T, figure string) (value, half float64) {
	t.Helper()
	value, err := strconv.ParseFloat(figure, 64)
	if err != nil {
		t.Fatal(err)
	}
	digits, exponent, _ := strings.Cut(figure, "E")
	_, decimals, _ := strings.Cut(digits, ".")
	e := -len(decimals)
	if exponent != "" {
		n, err := strconv.Atoi(exponent)
		if err != nil {
			t.Fatal(err)
		}
		e += n
	}
	return value, 0.5*math.Pow10(e) + 4e-16*value
}
