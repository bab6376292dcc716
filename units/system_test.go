package units_test

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

func TestSystemFormat(t *testing.T) {
	inch := units.Inch
	for _, row := range []struct {
		name       string
		value      units.Value
		us, metric string
		reason     string
	}{
		{"length", 24*units.Foot + 6.5*inch, `24' 6 1/2"`, "7.48 m", "sixteenths in lowest terms"},
		{"whole feet", 43 * units.Foot, `43' 0"`, "13.106 m", "inches are always there"},
		{"inches", 6 * inch, `0' 6"`, "0.152 m", "feet are always there"},
		{"below the deck", -6 * inch, `-0' 6"`, "-0.152 m", "the sign is that of the whole"},
		{"a sixteenth", inch / 16, `0' 0 1/16"`, "0.002 m", "the smallest step"},
		{"three quarters", 0.75 * inch, `0' 0 3/4"`, "0.019 m", "lowest terms"},
		{"just under a foot", 11.99 * inch, `1' 0"`, "0.305 m", "carries over to feet"},
		{"pipe", 1.900 * inch, `0' 1 7/8"`, "0.048 m", "1.9 is nearer to 1 7/8 than to 1 15/16"},
		{"a tie", units.Length(127. / 256), `1' 7 9/16"`, "0.496 m", "19 17/32 in, which a float64 holds exactly: away from zero"},
		{"a tie below zero", units.Length(-127. / 256), `-1' 7 9/16"`, "-0.496 m", "away from zero"},
		{"no length", units.Length(0), `0' 0"`, "0 m", "zero"},
		{"a hair below zero", units.Length(-1e-9), `0' 0"`, "0 m", "zero has no sign"},
		{"negative zero", units.Length(math.Copysign(0, -1)), `0' 0"`, "0 m", "zero has no sign"},
		{"area of cloth", 720 * units.SquareFoot, "720 ft²", "66.89 m²", "large areas"},
		{"area of steel", 0.799 * units.SquareInch, "0.799 in²", "5.155 cm²", "small ones"},
		{"half a square metre", 0.5 * units.SquareMetre, "5.38 ft²", "0.5 m²", "small areas begin at a tenth"},
		{"one square foot", units.SquareFoot, "1 ft²", "929.03 cm²", "the edge is inclusive"},
		{"mass", 1000 * units.Pound, "1000 lb", "453.59 kg", "no zeros at the end, and those before the point stay"},
		{"piece", 23.5 * units.Pound, "23.5 lb", "10.66 kg", "half pounds show"},
		{"plate", 0.75 * units.Pound, "0.75 lb", "0.34 kg", "quarter pounds show"},
		{"force", 500 * units.Newton, "112.4 lbf", "0.5 kN", "one unit per system, for columns"},
		{"acceleration", units.StandardGravity, "32.174 ft/s²", "9.807 m/s²", "three places"},
		{"moment", 350.5 * units.PoundForceFoot, "350.5 lbf·ft", "475.2 N·m", "one place"},
		{"stress", 36 * units.KipPerSquareInch, "36 ksi", "248.21 MPa", "always ksi"},
		{"small stress", 500 * units.PoundForcePerSquareInch, "0.5 ksi", "3.45 MPa", "always ksi"},
		{"mass per length", 0.11 * units.PoundPerFoot, "0.11 lb/ft", "0.164 kg/m", "three places"},
		{"force per length", 30.25 * units.PoundForcePerFoot, "30.25 lbf/ft", "441.5 N/m", "two and one"},
		{"mass per area", 15 * units.OuncePerSquareYard, "15 oz/yd²", "508.6 g/m²", "as cloth is sold"},
		{"density", 7850 * units.KilogramPerCubicMetre, "490.1 lb/ft³", "7850 kg/m³", "one place"},
		{"second moment", 0.31 * units.InchToTheFourth, "0.31 in⁴", "12.903 cm⁴", "four and three"},
		{"section modulus", 0.32621 * units.CubicInch, "0.3262 in³", "5.346 cm³", "four and three"},
		{"time", 2.5 * units.Second, "2.5 s", "2.5 s", "the same in both"},
		{"speed", 3 * units.FootPerSecond, "3 ft/s", "0.914 m/s", "two and three"},
		{"angle", 1.5 * units.Degree, "1.5 deg", "1.5 deg", "the same in both"},
		{"energy", 350.5 * units.FootPoundForce, "350.5 ft·lbf", "475.2 J", "one place"},
		{"power", 0.5 * units.Horsepower, "0.5 hp", "0.373 kW", "three places"},
		{"stiffness", 600 * units.PoundForcePerInchStretch, "600 lbf/in", "105.076 kN/m", "one and three"},
		{"moment of inertia", 3.2 * units.PoundFootSquared, "3.2 lb·ft²", "0.1348 kg·m²", "three and four"},
		{"not a number", units.Mass(math.NaN()), "NaN kg", "NaN kg", "as String"},
		{"infinite length", units.Length(math.Inf(-1)), "-Inf m", "-Inf m", "as String"},
		{"nothing", nil, "", "", "no value, no text"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := units.US.Format(row.value); got != row.us {
				t.Errorf("US: got %q, want %q: %s", got, row.us, row.reason)
			}
			if got := units.Metric.Format(row.value); got != row.metric {
				t.Errorf("Metric: got %q, want %q: %s", got, row.metric, row.reason)
			}
		})
	}
}

// Ties that a float64 holds exactly go away from zero.
func TestSystemFormatTies(t *testing.T) {
	for _, row := range []struct {
		value  units.Value
		places int
		want   string
	}{
		{units.Length(0.125), 2, "0.13 m"},
		{units.Length(-0.125), 2, "-0.13 m"},
		{units.Length(0.375), 2, "0.38 m"},
		{units.Mass(0.5), 0, "1 kg"},
		{units.Mass(1.5), 0, "2 kg"},
		{units.Mass(2.5), 0, "3 kg"},
		{units.Mass(-2.5), 0, "-3 kg"},
		{units.Mass(math.Nextafter(2.5, 0)), 0, "2 kg"},
		{units.Mass(2.675), 2, "2.67 kg"}, // the float64 lies just under 2.675
	} {
		if got := units.Metric.FormatPlaces(row.value, row.places); got != row.want {
			t.Errorf("%v to %d places: got %s, want %s", row.value, row.places, got, row.want)
		}
	}
}

// Far out the float64 are 1/16 m apart, and any figure to three places that is nearer than that is read as the same value. In a
// tie the rounding decides between two of them: up is never less than it is.
func TestSystemFormatTiesFarOut(t *testing.T) {
	const far = units.Length(1<<48 + 1.0/16)
	for _, row := range []struct {
		r    units.Rounding
		want string
	}{
		{units.HalfAway, "281474976710656.063 m"},
		{units.HalfEven, "281474976710656.062 m"},
		{units.AwayFromZero, "281474976710656.063 m"},
	} {
		if got := units.Metric.FormatRounded(far, 3, row.r); got != row.want {
			t.Errorf("rounding %d: got %s, want %s", row.r, got, row.want)
		}
	}
}

func TestSystemFormatPlaces(t *testing.T) {
	for _, row := range []struct {
		name   string
		system units.System
		value  units.Value
		places int
		want   string
	}{
		{"decimal feet", units.US, 24.5 * units.Foot, 2, "24.50 ft"},
		{"zeros stay", units.US, 1000 * units.Pound, 1, "1000.0 lb"},
		{"no places", units.Metric, 12.6 * units.Kilogram, 0, "13 kg"},
		{"zero", units.Metric, units.Kilogram.Scale(0), 3, "0.000 kg"},
		{"rounds to zero", units.Metric, units.Kilogram.Scale(-0.0004), 3, "0.000 kg"},
		{"below one", units.Metric, units.Kilogram.Scale(-0.04), 3, "-0.040 kg"},
		{"places below zero", units.Metric, 12.6 * units.Kilogram, -5, "13 kg"},
		{"places beyond count", units.Metric, 0.5 * units.Kilogram, 1 << 30, "0." + "5" + strings.Repeat("0", 19) + " kg"},
		{"largest", units.Metric, units.Length(math.MaxFloat64), 0, maxFloat() + " m"},
		{"no system", units.System(0), units.Foot, 1, "0.3048 m"},
		{"not a number", units.US, units.Force(math.NaN()), 1, "NaN N"},
		{"nothing", units.US, nil, 1, ""},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.system.FormatPlaces(row.value, row.places); got != row.want {
				t.Errorf("got %q, want %q", got, row.want)
			}
		})
	}
}

// maxFloat writes the largest float64 out: 2^1024 − 2^971.
func maxFloat() string {
	n := new(big.Int).Lsh(big.NewInt(1), 1024)
	return n.Sub(n, new(big.Int).Lsh(big.NewInt(1), 971)).String()
}

func TestSystemSymbol(t *testing.T) {
	for _, row := range []struct {
		system units.System
		value  units.Value
		want   string
	}{
		{units.US, units.Foot, "ft"},
		{units.US, units.Pound, "lb"},
		{units.Metric, units.Pound, "kg"},
		{units.Metric, units.PoundForce, "kN"},
		{units.US, units.SquareInch, "in²"},
		{units.US, units.SquareYard, "ft²"},
		{units.System(0), units.PoundForce, "N"},
		{units.US, units.Length(math.NaN()), "m"},
		{units.US, nil, ""},
	} {
		if got := row.system.Symbol(row.value); got != row.want {
			t.Errorf("%v: symbol of %v is %q, want %q", row.system, row.value, got, row.want)
		}
	}
}

// The zero System prints what String prints.
func TestSystemZero(t *testing.T) {
	for _, k := range kinds {
		if v := k.of(12.5); units.System(0).Format(v) != v.String() {
			t.Errorf("%s: %s", k.name, units.System(0).Format(v))
		}
	}
}
