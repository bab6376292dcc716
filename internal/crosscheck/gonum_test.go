package crosscheck

import (
	"testing"

	"gonum.org/v1/gonum/unit"
	"gonum.org/v1/gonum/unit/constant"

	"example.com/steelyard/units"
)

// Problem:   the constants that gonum has too.
// Source:    gonum.org/v1/gonum v0.17.0, packages unit and unit/constant.
// Expected:  the same, to the last bit: all of them are exact.
func TestGonumConstants(t *testing.T) {
	for _, row := range []struct {
		name      string
		got, want float64
	}{
		{"standard gravity", units.StandardGravity.In(units.MetrePerSecondSquared), float64(constant.StandardGravity)},
		{"millimetre", units.Millimetre.In(units.Metre), unit.Milli},
		{"centimetre", units.Centimetre.In(units.Metre), unit.Centi},
		{"gram", units.Gram.In(units.Kilogram), float64(unit.Gram)},
		{"kilonewton", units.Kilonewton.In(units.Newton), unit.Kilo},
		{"megapascal", units.Megapascal.In(units.Pascal), unit.Mega},
		{"gigapascal", units.Gigapascal.In(units.Pascal), unit.Giga},
		{"minute", units.Minute.In(units.Second), float64(unit.Minute)},
		{"hour", units.Hour.In(units.Second), float64(unit.Hour)},
	} {
		if row.got != row.want {
			t.Errorf("%s: %v, gonum has %v", row.name, row.got, row.want)
		}
	}
}
