package units_test

import (
	"go/constant"
	"go/importer"
	"go/token"
	"go/types"
	"math"
	"math/big"
	"runtime"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

// rat reads an exact decimal.
func rat(t testing.TB, text string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is no decimal", text)
	}
	return r
}

// define works out a definition such as "lb * g / in / in", from left to right
// and exactly. The names stand for the definitions of NIST SP 811 (2008),
// Appendix B.8, footnotes 22 and 23, and B.9: inch, pound and standard gravity;
// and for π to seventy decimals.
func define(t testing.TB, definition string) *big.Rat {
	t.Helper()
	names := map[string]string{
		"in": "0.0254", "ft": "0.3048", "yd": "0.9144", "lb": "0.45359237", "g": "9.80665",
		"pi": "3.1415926535897932384626433832795028841971693993751058209749445923078164",
	}
	value, op := big.NewRat(1, 1), "*"
	for word := range strings.FieldsSeq(definition) {
		if word == "*" || word == "/" {
			op = word
			continue
		}
		if text, ok := names[word]; ok {
			word = text
		}
		if op == "/" {
			value.Quo(value, rat(t, word))
		} else {
			value.Mul(value, rat(t, word))
		}
	}
	return value
}

// unitRow is one unit constant: its definition, and the symbol that stands for
// it in text.
type unitRow struct {
	name       string
	value      units.Value
	definition string
	symbol     string
}

var unitRows = []unitRow{
	{"Metre", units.Metre, "1", "m"},
	{"Millimetre", units.Millimetre, "0.001", "mm"},
	{"Centimetre", units.Centimetre, "0.01", "cm"},
	{"Inch", units.Inch, "in", "in"},
	{"Foot", units.Foot, "ft", "ft"},
	{"Yard", units.Yard, "yd", "yd"},
	{"SquareMetre", units.SquareMetre, "1", "m²"},
	{"SquareCentimetre", units.SquareCentimetre, "0.01 * 0.01", "cm²"},
	{"SquareMillimetre", units.SquareMillimetre, "0.001 * 0.001", "mm²"},
	{"SquareInch", units.SquareInch, "in * in", "in²"},
	{"SquareFoot", units.SquareFoot, "ft * ft", "ft²"},
	{"SquareYard", units.SquareYard, "yd * yd", "yd²"},
	{"Kilogram", units.Kilogram, "1", "kg"},
	{"Gram", units.Gram, "0.001", "g"},
	{"Tonne", units.Tonne, "1000", "t"},
	{"Pound", units.Pound, "lb", "lb"},
	{"Ounce", units.Ounce, "lb / 16", "oz"},
	{"ShortTon", units.ShortTon, "2000 * lb", "short ton"},
	{"Newton", units.Newton, "1", "N"},
	{"Kilonewton", units.Kilonewton, "1000", "kN"},
	{"PoundForce", units.PoundForce, "lb * g", "lbf"},
	{"Kip", units.Kip, "1000 * lb * g", "kip"},
	{"KilogramForce", units.KilogramForce, "g", "kgf"},
	{"MetrePerSecondSquared", units.MetrePerSecondSquared, "1", "m/s²"},
	{"FootPerSecondSquared", units.FootPerSecondSquared, "ft", "ft/s²"},
	{"StandardGravity", units.StandardGravity, "g", "gₙ"},
	{"NewtonMetre", units.NewtonMetre, "1", "N·m"},
	{"KilonewtonMetre", units.KilonewtonMetre, "1000", "kN·m"},
	{"PoundForceFoot", units.PoundForceFoot, "lb * g * ft", "lbf·ft"},
	{"PoundForceInch", units.PoundForceInch, "lb * g * in", "lbf·in"},
	{"KipFoot", units.KipFoot, "1000 * lb * g * ft", "kip·ft"},
	{"Pascal", units.Pascal, "1", "Pa"},
	{"Kilopascal", units.Kilopascal, "1000", "kPa"},
	{"Megapascal", units.Megapascal, "1000000", "MPa"},
	{"Gigapascal", units.Gigapascal, "1000000000", "GPa"},
	{"PoundForcePerSquareInch", units.PoundForcePerSquareInch, "lb * g / in / in", "psi"},
	{"KipPerSquareInch", units.KipPerSquareInch, "1000 * lb * g / in / in", "ksi"},
	{"KilogramPerMetre", units.KilogramPerMetre, "1", "kg/m"},
	{"GramPerMetre", units.GramPerMetre, "0.001", "g/m"},
	{"PoundPerFoot", units.PoundPerFoot, "lb / ft", "lb/ft"},
	{"PoundPerHundredFeet", units.PoundPerHundredFeet, "lb / ft / 100", "lb/100 ft"},
	{"NewtonPerMetre", units.NewtonPerMetre, "1", "N/m"},
	{"KilonewtonPerMetre", units.KilonewtonPerMetre, "1000", "kN/m"},
	{"PoundForcePerFoot", units.PoundForcePerFoot, "lb * g / ft", "lbf/ft"},
	{"PoundForcePerInch", units.PoundForcePerInch, "lb * g / in", "lbf/in"},
	{"KipPerFoot", units.KipPerFoot, "1000 * lb * g / ft", "kip/ft"},
	{"KilogramPerSquareMetre", units.KilogramPerSquareMetre, "1", "kg/m²"},
	{"GramPerSquareMetre", units.GramPerSquareMetre, "0.001", "g/m²"},
	{"OuncePerSquareYard", units.OuncePerSquareYard, "lb / 16 / yd / yd", "oz/yd²"},
	{"PoundPerSquareFoot", units.PoundPerSquareFoot, "lb / ft / ft", "lb/ft²"},
	{"KilogramPerCubicMetre", units.KilogramPerCubicMetre, "1", "kg/m³"},
	{"PoundPerCubicFoot", units.PoundPerCubicFoot, "lb / ft / ft / ft", "lb/ft³"},
	{"PoundPerCubicInch", units.PoundPerCubicInch, "lb / in / in / in", "lb/in³"},
	{"MetreToTheFourth", units.MetreToTheFourth, "1", "m⁴"},
	{"CentimetreToTheFourth", units.CentimetreToTheFourth, "0.01 * 0.01 * 0.01 * 0.01", "cm⁴"},
	{"MillimetreToTheFourth", units.MillimetreToTheFourth, "0.001 * 0.001 * 0.001 * 0.001", "mm⁴"},
	{"InchToTheFourth", units.InchToTheFourth, "in * in * in * in", "in⁴"},
	{"CubicMetre", units.CubicMetre, "1", "m³"},
	{"CubicCentimetre", units.CubicCentimetre, "0.01 * 0.01 * 0.01", "cm³"},
	{"CubicMillimetre", units.CubicMillimetre, "0.001 * 0.001 * 0.001", "mm³"},
	{"CubicInch", units.CubicInch, "in * in * in", "in³"},
	{"Second", units.Second, "1", "s"},
	{"Millisecond", units.Millisecond, "0.001", "ms"},
	{"Minute", units.Minute, "60", "min"},
	{"Hour", units.Hour, "3600", "h"},
	{"MetrePerSecond", units.MetrePerSecond, "1", "m/s"},
	{"FootPerSecond", units.FootPerSecond, "ft", "ft/s"},
	{"FootPerMinute", units.FootPerMinute, "ft / 60", "ft/min"},
	{"Radian", units.Radian, "1", "rad"},
	{"Degree", units.Degree, "pi / 180", "deg"},
	{"ArcMinute", units.ArcMinute, "pi / 180 / 60", "arcmin"},
	{"Turn", units.Turn, "2 * pi", "turn"},
	{"Joule", units.Joule, "1", "J"},
	{"Kilojoule", units.Kilojoule, "1000", "kJ"},
	{"FootPoundForce", units.FootPoundForce, "ft * lb * g", "ft·lbf"},
	{"Watt", units.Watt, "1", "W"},
	{"Kilowatt", units.Kilowatt, "1000", "kW"},
	{"Horsepower", units.Horsepower, "550 * ft * lb * g", "hp"},
	{"NewtonPerMetreStretch", units.NewtonPerMetreStretch, "1", "N/m"},
	{"KilonewtonPerMetreStretch", units.KilonewtonPerMetreStretch, "1000", "kN/m"},
	{"PoundForcePerInchStretch", units.PoundForcePerInchStretch, "lb * g / in", "lbf/in"},
	{"PoundForcePerFootStretch", units.PoundForcePerFootStretch, "lb * g / ft", "lbf/ft"},
	{"KilogramMetreSquared", units.KilogramMetreSquared, "1", "kg·m²"},
	{"PoundFootSquared", units.PoundFootSquared, "lb * ft * ft", "lb·ft²"},
	{"PoundInchSquared", units.PoundInchSquared, "lb * in * in", "lb·in²"},
}

// Each constant must be the float64 nearest to its exact definition: a constant
// made of rounded ones is often one step off. The table of symbols holds the same
// factors a second time, so each text must give the same bits.
func TestConstantsRoundedOnce(t *testing.T) {
	for _, row := range unitRows {
		want, _ := define(t, row.definition).Float64()
		if got := number(row.value); got != want {
			t.Errorf("%s = %v, want %v, the float64 nearest to %s", row.name, got, want, row.definition)
		}
		got, err := parseLike(row.value, "1 "+row.symbol)
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		} else if got != row.value {
			t.Errorf("%s: text gives %v, the constant is %v", row.name, got, row.value)
		}
	}
}

// A unit constant that is exported and not in the table above would escape the
// test of its value.
func TestConstantsAllCovered(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("there is no go command to find the source with")
	}
	fset := token.NewFileSet()
	pkg, err := importer.ForCompiler(fset, "source", nil).Import("example.com/steelyard/units")
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{ // systems and roundings, not units
		"US": true, "Metric": true, "HalfAway": true, "HalfEven": true, "AwayFromZero": true, "TowardZero": true,
	}
	for _, row := range unitRows {
		listed[row.name] = true
	}
	found := 0
	for _, name := range pkg.Scope().Names() {
		c, ok := pkg.Scope().Lookup(name).(*types.Const)
		if !ok || !c.Exported() {
			continue
		}
		found++
		if !listed[name] {
			t.Errorf("constant %s = %v is not in the table", name, constant.ToFloat(c.Val()))
		}
	}
	if found != len(listed) {
		t.Errorf("%d exported constants, %d in the table", found, len(listed))
	}
}

// Which identities hold to the last bit, and which do not though they look as
// good: a constant is rounded, and a multiple of it is rounded again. The comments
// of the types say so, and this keeps them true.
func TestConstantsIdentities(t *testing.T) {
	g := units.StandardGravity
	for _, row := range []struct {
		name  string
		equal bool
		want  bool
	}{
		{"36 in is 1 yd", 36*units.Inch == units.Yard, true},
		{"12 in is 1 ft", 12*units.Inch == units.Foot, false},
		{"3 ft is 1 yd", 3*units.Foot == units.Yard, false},
		{"144 in² is 1 ft²", 144*units.SquareInch == units.SquareFoot, false},
		{"a foot by a foot is 1 ft²", units.Foot.By(units.Foot) == units.SquareFoot, true},
		{"16 oz is 1 lb", 16*units.Ounce == units.Pound, true},
		{"2000 lb is a short ton", 2000*units.Pound == units.ShortTon, true},
		{"1000 lbf is 1 kip", 1000*units.PoundForce == units.Kip, true},
		{"1000 psi is 1 ksi", 1000*units.PoundForcePerSquareInch == units.KipPerSquareInch, true},
		{"1 lb weighs 1 lbf", units.Pound.Weight(g) == units.PoundForce, true},
		{"1 lb over 1 ft is 1 lb/ft", units.Pound.Per(units.Foot) == units.PoundPerFoot, true},
		{"1 lbf over 1 ft is 1 lbf/ft", units.PoundForce.Per(units.Foot) == units.PoundForcePerFoot, false},
		{"1 lbf at 1 ft is 1 lbf·ft", units.PoundForce.Moment(units.Foot) == units.PoundForceFoot, true},
		{"1 lbf at 1 in is 1 lbf·in", units.PoundForce.Moment(units.Inch) == units.PoundForceInch, false},
		{"1 lbf along 1 ft is 1 ft·lbf", units.PoundForce.Work(units.Foot) == units.FootPoundForce, true},
		{"550 ft·lbf in 1 s is 1 hp", (550 * units.FootPoundForce).Per(units.Second) == units.Horsepower, false},
		{"60 ft/min is 1 ft/s", 60*units.FootPerMinute == units.FootPerSecond, true},
		{"1 ft in 1 min is 1 ft/min", units.Foot.Per(units.Minute) == units.FootPerMinute, true},
		{"1000 ms is 1 s", 1000*units.Millisecond == units.Second, true},
		{"60 min is 1 h", 60*units.Minute == units.Hour, true},
		{"90° is a quarter of a turn", 90*units.Degree == units.Turn/4, true},
		{"60 arc minutes is 1°", 60*units.ArcMinute == units.Degree, true},
		{"half a turn has no sine", math.Sin(units.Angle(units.Turn/2).In(units.Radian)) == 0, false},
		{"1 lbf a foot of stretch is 1 lbf/ft", units.PoundForce.Stiffness(units.Foot) == units.PoundForcePerFootStretch, false},
		{"1 lbf an inch of stretch is 1 lbf/in", units.PoundForce.Stiffness(units.Inch) == units.PoundForcePerInchStretch, false},
		{"12 lbf/ft is 1 lbf/in", 12*units.PoundForcePerFootStretch == units.PoundForcePerInchStretch, false},
		{"144 lb·in² is 1 lb·ft²", 144*units.PoundInchSquared == units.PoundFootSquared, true},
		{"1 lb at 1 ft is 1 lb·ft²", units.Pound.Inertia(units.Foot) == units.PoundFootSquared, false},
	} {
		if row.equal != row.want {
			t.Errorf("%s, to the last bit: %v, want %v", row.name, row.equal, row.want)
		}
	}
}
