package load_test

import (
	"fmt"
	"testing"

	"example.com/steelyard/internal/verification"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Classes of cloth as they are sold in the trade, in ounces per running yard at 54 in (common
// practice). 54 in is 1.5 yd, so that 21 oz is 14 oz/yd²; grams by the definitions of ounce and
// yard (33.9057 g/m² for 1 oz/yd²). Half the last digit.
func TestVerifyClassesOfCloth(t *testing.T) {
	for _, c := range []struct{ running, perYard, grams float64 }{
		{8, 5.333, 180.8}, {16, 10.667, 361.7}, {21, 14.0, 474.7}, {25, 16.667, 565.1},
	} {
		cloth := load.Running(units.Ounce.Scale(c.running), 1*units.Yard, 54*units.Inch)
		class := fmt.Sprint(c.running, " oz per running yard")
		row := verification.Row{Key: "cloth class/" + class, Source: "definitions of the units", Place: "a class of the trade, 54 in wide", What: "cloth of " + class, Why: "half the last digit"}
		row.Of("in ounces", "oz/yd²", c.perYard, 5e-4).Check(t, cloth.In(units.OuncePerSquareYard))
		row.Of("in grams", "g/m²", c.grams, 0.05).Check(t, cloth.In(units.GramPerSquareMetre))
	}
}

// Rolls of 100 yd: 16 oz is 100 lb and 8 oz is 50 lb of cloth. Two pages of the trade say 100
// lb, and 50 to 55 lb with tube and wrapping. The lining line of the drapery calculation page
// says 6 oz, and reckons with 4: 48 yd² are 12 lb.
func TestVerifyRollsAndLining(t *testing.T) {
	for _, c := range []struct{ ounces, pounds float64 }{{16, 100}, {8, 50}} {
		roll := load.Drape{Width: 100 * units.Yard, Drop: 54 * units.Inch, Cloth: load.Running(units.Ounce.Scale(c.ounces), 1*units.Yard, 54*units.Inch)}
		verification.Row{Key: "cloth/roll", Source: "soft goods pages", Place: "two of them, without tube and wrapping", What: "roll of 100 yd", Why: "exact arithmetic, but for rounding"}.
			Of(fmt.Sprint(c.ounces, " oz"), "lb", c.pounds, 1e-11).Check(t, roll.Mass().In(units.Pound))
	}
	lining := load.Drape{Width: 32 * units.Yard, Drop: 54 * units.Inch, Cloth: 4 * units.OuncePerSquareYard}
	page := verification.Row{Key: "cloth", Source: "drapery page", Place: "its lining line, with the 4 oz that it reckons with", What: "32 yd of cloth 54 in wide", Why: "exact arithmetic, but for rounding"}
	page.Of("lining", "lb", 12, 1e-12).Check(t, lining.Mass().In(units.Pound))
	lined := lining
	lined.Cloth += 14 * units.OuncePerSquareYard
	page.Of("cloth and lining", "lb", 42+12, 1e-11).Check(t, lined.Mass().In(units.Pound))
}
