package load_test

import (
	"fmt"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Classes of cloth as they are sold in the trade, in ounces per running yard at 54 in (common
// practice). 54 in is 1.5 yd, so that 21 oz is 14 oz/yd²; grams by the definitions of ounce and
// yard (33.9057 g/m² for 1 oz/yd²). Half the last digit.
func TestClassesOfCloth(t *testing.T) {
	for _, c := range []struct{ running, perYard, grams float64 }{
		{8, 5.333, 180.8}, {16, 10.667, 361.7}, {21, 14.0, 474.7}, {25, 16.667, 565.1},
	} {
		cloth := load.Running(units.Ounce.Scale(c.running), 1*units.Yard, 54*units.Inch)
		near(t, fmt.Sprint(c.running, " oz in oz/yd²"), cloth.In(units.OuncePerSquareYard), c.perYard, 5e-4)
		near(t, fmt.Sprint(c.running, " oz in g/m²"), cloth.In(units.GramPerSquareMetre), c.grams, 0.05)
	}
}

// Rolls of 100 yd: 16 oz is 100 lb and 8 oz is 50 lb of cloth. Two pages of the trade say 100
// lb, and 50 to 55 lb with tube and wrapping. The lining line of the drapery calculation page
// says 6 oz, and reckons with 4: 48 yd² are 12 lb.
func TestRollsAndLining(t *testing.T) {
	for _, c := range []struct{ ounces, pounds float64 }{{16, 100}, {8, 50}} {
		roll := load.Drape{Width: 100 * units.Yard, Drop: 54 * units.Inch, Cloth: load.Running(units.Ounce.Scale(c.ounces), 1*units.Yard, 54*units.Inch)}
		near(t, fmt.Sprint(c.ounces, " oz, 100 yd"), roll.Mass().In(units.Pound), c.pounds, 1e-11)
	}
	lining := load.Drape{Width: 32 * units.Yard, Drop: 54 * units.Inch, Cloth: 4 * units.OuncePerSquareYard}
	near(t, "lining", lining.Mass().In(units.Pound), 12, 1e-12)
	lined := lining
	lined.Cloth += 14 * units.OuncePerSquareYard
	near(t, "cloth and lining", lined.Mass().In(units.Pound), 42+12, 1e-11)
}
