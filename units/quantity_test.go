package units_test

import (
	"math"
	"testing"

	"example.com/steelyard/units"
)

// Every product and quotient against a figure worked by hand.
func TestProducts(t *testing.T) {
	g := units.StandardGravity
	for _, row := range []struct {
		name   string
		got    units.Value
		want   units.Value
		reason string
	}{
		{"mass to weight", (500 * units.Pound).Weight(g), 500 * units.PoundForce, "a pound weighs a pound-force"},
		{"mass in another gravity", (3 * units.Kilogram).Weight(2 * units.MetrePerSecondSquared), 6 * units.Newton, "3 kg × 2 m/s²"},
		{"weight to mass", (90 * units.PoundForce).Mass(g), 90 * units.Pound, "the reverse"},
		{"mass per length", (11 * units.Pound).Per(100 * units.Foot), 0.11 * units.PoundPerFoot, "rope is listed by the hundred feet"},
		{"length of line mass", (0.11 * units.PoundPerFoot).Over(55 * units.Foot), 6.05 * units.Pound, "0.11 × 55"},
		{"line mass to line load", (2.72 * units.PoundPerFoot).Weight(g), 2.72 * units.PoundForcePerFoot, "a pound weighs a pound-force"},
		{"length of line load", (30 * units.PoundForcePerFoot).Over(40 * units.Foot), 1200 * units.PoundForce, "30 × 40"},
		{"force per length", (1200 * units.PoundForce).Per(40 * units.Foot), 30 * units.PoundForcePerFoot, "the reverse"},
		{"moment", (100 * units.PoundForce).Moment(2.5 * units.Foot), 250 * units.PoundForceFoot, "100 × 2.5"},
		{"moment in inches", (100 * units.PoundForce).Moment(30 * units.Inch), 250 * units.PoundForceFoot, "30 in is 2.5 ft"},
		{"arm", (250 * units.PoundForceFoot).Arm(100 * units.PoundForce), 30 * units.Inch, "the reverse"},
		{"area", (40 * units.Foot).By(18 * units.Foot), 80 * units.SquareYard, "720 ft², nine to the square yard"},
		{"area mass", (15 * units.OuncePerSquareYard).Over(80 * units.SquareYard), 75 * units.Pound, "1200 oz, sixteen to the pound"},
		{"bar of density", (7850 * units.KilogramPerCubicMetre).Over(1000 * units.SquareMillimetre), 7.85 * units.KilogramPerMetre, "7850 × 0.001"},
		{"bending stress", (1000 * units.PoundForceInch).Stress(0.5 * units.CubicInch), 2000 * units.PoundForcePerSquareInch, "1000/0.5"},
		{"moment at a stress", (2 * units.KipPerSquareInch).Moment(0.5 * units.CubicInch), 1000 * units.PoundForceInch, "the reverse"},
		{"stress of a pull", (1000 * units.PoundForce).Stress(0.5 * units.SquareInch), 2000 * units.PoundForcePerSquareInch, "1000/0.5"},
		{"pull at a stress", (2 * units.KipPerSquareInch).Over(0.5 * units.SquareInch), units.Kip, "the reverse"},
		{"net force of an acceleration", (500 * units.Kilogram).Force(2 * units.MetrePerSecondSquared), units.Kilonewton, "500 kg × 2 m/s²"},
		{"acceleration of a net force", units.Kilonewton.Acceleration(500 * units.Kilogram), 2 * units.MetrePerSecondSquared, "the reverse"},
		{"speed", (30 * units.Foot).Per(6 * units.Second), 300 * units.FootPerMinute, "5 ft/s"},
		{"travel", (300 * units.FootPerMinute).Over(6 * units.Second), 30 * units.Foot, "the reverse"},
		{"time of a travel", (30 * units.Foot).Time(5 * units.FootPerSecond), units.Minute / 10, "30/5"},
		{"acceleration from rest", (5 * units.FootPerSecond).Per(2 * units.Second), 2.5 * units.FootPerSecondSquared, "5/2"},
		{"speed gained", (2.5 * units.FootPerSecondSquared).Over(2 * units.Second), 5 * units.FootPerSecond, "the reverse"},
		{"work", (50 * units.PoundForce).Work(33 * units.Foot), 1650 * units.FootPoundForce, "50 × 33"},
		{"power of work", (1650 * units.FootPoundForce).Per(3 * units.Second), units.Horsepower, "550 ft·lbf/s"},
		{"power of a pull", (50 * units.PoundForce).Power(11 * units.FootPerSecond), units.Horsepower, "50 × 11 is 550"},
		{"work of a power", units.Horsepower.Over(3 * units.Second), 1650 * units.FootPoundForce, "550 × 3"},
		{"stiffness", (120 * units.PoundForce).Stiffness(0.5 * units.Inch), 240 * units.PoundForcePerInchStretch, "120/0.5"},
		{"pull at a stretch", (240 * units.PoundForcePerInchStretch).Force(0.5 * units.Inch), 120 * units.PoundForce, "the reverse"},
		{"stretch at a pull", (240 * units.PoundForcePerInchStretch).Stretch(120 * units.PoundForce), 0.5 * units.Inch, "the other reverse"},
		{"inertia of a rim", (8 * units.Pound).Inertia(6 * units.Inch), 2 * units.PoundFootSquared, "8 × 0.5²"},
		{"mass at the rope", (2 * units.PoundFootSquared).Mass(6 * units.Inch), 8 * units.Pound, "the reverse"},
		{"rope on a sheave", units.Turn.Arc(units.Metre / 2), units.Length(math.Pi), "the circumference of a metre across"},
		{"scaled length", (3 * units.Foot).Scale(-2), -2 * units.Yard, "−2 × 3 ft"},
		{"scaled area", (4 * units.SquareFoot).Scale(2.25), units.SquareYard, "9 ft²"},
		{"scaled mass", (8 * units.Ounce).Scale(2), units.Pound, "16 oz"},
		{"scaled force", units.PoundForce.Scale(1000), units.Kip, "1000 lbf"},
		{"scaled acceleration", units.MetrePerSecondSquared.Scale(9.80665), g, "the definition"},
		{"scaled moment", units.PoundForceInch.Scale(12), units.PoundForceFoot, "12 in to the foot"},
		{"scaled stress", units.PoundForcePerSquareInch.Scale(1000), units.KipPerSquareInch, "1000 lbf to the kip"},
		{"scaled line mass", units.PoundPerFoot.Scale(0.01), units.PoundPerHundredFeet, "a hundredth"},
		{"scaled line load", units.PoundForcePerFoot.Scale(1000), units.KipPerFoot, "1000 lbf to the kip"},
		{"scaled area mass", units.PoundPerSquareFoot.Scale(1. / 144), units.OuncePerSquareYard, "16 oz to the pound, 9 ft² to the yd²"},
		{"scaled density", units.PoundPerCubicFoot.Scale(1728), units.PoundPerCubicInch, "1728 in³ to the ft³, each holding as much"},
		{"scaled second moment", units.CentimetreToTheFourth.Scale(1e4), units.MillimetreToTheFourth.Scale(1e8), "10 mm to the cm"},
		{"scaled section modulus", units.CubicMillimetre.Scale(1e3), units.CubicCentimetre, "10 mm to the cm"},
		{"scaled time", units.Second.Scale(3600), units.Hour, "sixty sixties"},
		{"scaled speed", units.FootPerMinute.Scale(60), units.FootPerSecond, "60 s to the minute"},
		{"scaled angle", units.Degree.Scale(360), units.Turn, "all around"},
		{"scaled energy", units.Joule.Scale(1e3), units.Kilojoule, "kilo"},
		{"scaled power", units.Watt.Scale(1e3), units.Kilowatt, "kilo"},
		{"scaled stiffness", units.PoundForcePerFootStretch.Scale(12), units.PoundForcePerInchStretch, "12 in to the foot"},
		{"scaled inertia", units.PoundInchSquared.Scale(144), units.PoundFootSquared, "12 in to the foot, twice"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if a, b := number(row.got), number(row.want); kindLike(row.got).name != kindLike(row.want).name ||
				math.Abs(a-b) > 4e-16*math.Abs(b) { // two roundings of 2^-53 each, and one of the figure
				t.Errorf("got %v, want %v: %s", row.got, row.want, row.reason)
			}
		})
	}
}

func TestIn(t *testing.T) {
	for _, row := range []struct {
		name      string
		got, want float64
	}{
		{"length", (24*units.Foot + 6*units.Inch).In(units.Foot), 24.5},
		{"area", units.SquareFoot.In(units.SquareInch), 144},
		{"mass", units.ShortTon.In(units.Pound), 2000},
		{"force", units.Kip.In(units.PoundForce), 1000},
		{"acceleration", units.StandardGravity.In(units.MetrePerSecondSquared), 9.80665},
		{"moment", units.PoundForceFoot.In(units.PoundForceInch), 12},
		{"stress", units.Gigapascal.In(units.Megapascal), 1000},
		{"mass per length", units.PoundPerFoot.In(units.PoundPerHundredFeet), 100},
		{"force per length", units.KipPerFoot.In(units.PoundForcePerFoot), 1000},
		{"mass per area", units.PoundPerSquareFoot.In(units.OuncePerSquareYard), 144},
		{"density", units.PoundPerCubicInch.In(units.PoundPerCubicFoot), 1728},
		{"second moment", units.CentimetreToTheFourth.In(units.MillimetreToTheFourth), 1e4},
		{"section modulus", units.CubicCentimetre.In(units.CubicMillimetre), 1e3},
		{"time", units.Hour.In(units.Minute), 60},
		{"speed", units.FootPerSecond.In(units.FootPerMinute), 60},
		{"angle", units.Turn.In(units.Degree), 360},
		{"energy", units.FootPoundForce.In(units.Joule), 1.3558179483314004},
		{"power", units.Horsepower.In(units.Watt), 745.69987158227022},
		{"stiffness", units.PoundForcePerInchStretch.In(units.PoundForcePerFootStretch), 12},
		{"inertia", units.PoundFootSquared.In(units.PoundInchSquared), 144},
	} {
		if math.Abs(row.got-row.want) > 4e-16*row.want {
			t.Errorf("%s: %v, want %v", row.name, row.got, row.want)
		}
	}
}

func TestRatio(t *testing.T) {
	if got := units.Ratio(1000*units.Pound, 500*units.Pound); got != 2 {
		t.Errorf("1000 lb to 500 lb is %v, want 2", got)
	}
	if got := units.Ratio(units.Pound, 0); !math.IsInf(got, 1) {
		t.Errorf("1 lb to nothing is %v, want +Inf as documented", got)
	}
	if got := units.Ratio(-units.Pound, 0); !math.IsInf(got, -1) {
		t.Errorf("−1 lb to nothing is %v, want -Inf as documented", got)
	}
	if got := units.Ratio[units.Mass](0, 0); !math.IsNaN(got) {
		t.Errorf("nothing to nothing is %v, want NaN as documented", got)
	}
}

func TestSum(t *testing.T) {
	if got := units.Sum[units.Mass](); got != 0 {
		t.Errorf("the sum of none is %v", got)
	}
	// 1e16 swallows a 1 added after it, so the order shows.
	if got := units.Sum[units.Force](1, 1, 1e16); got != 1e16+2 {
		t.Errorf("from first to last: got %v, want 1e16+2", float64(got))
	}
	if got := units.Sum[units.Force](1e16, 1, 1); got != 1e16 {
		t.Errorf("from first to last: got %v, want 1e16", float64(got))
	}
}

func TestAbs(t *testing.T) {
	negativeZero := units.Length(math.Copysign(0, -1))
	for _, row := range []struct {
		name    string
		q, want units.Length
	}{
		{"below", -units.Foot, units.Foot},
		{"above", units.Foot, units.Foot},
		{"zero", 0, 0},
		{"negative zero", negativeZero, 0},
		{"infinity", units.Length(math.Inf(-1)), units.Length(math.Inf(1))},
	} {
		got := units.Abs(row.q)
		if got != row.want || math.Signbit(float64(got)) {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
	}
	if got := units.Abs(units.Length(math.NaN())); !math.IsNaN(float64(got)) {
		t.Errorf("NaN: got %v", got)
	}
}
