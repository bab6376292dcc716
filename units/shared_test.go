package units_test

import (
	"errors"
	"testing"

	"example.com/steelyard/units"
)

// Units that stand for two quantities are read as the one that is asked for. The
// rows of each text say which quantities take it; all others must refuse it as
// another quantity, or as ambiguous where none takes it.
func TestSharedUnits(t *testing.T) {
	for _, row := range []struct {
		text   string
		as     map[string]string // SI definition, by the name of the quantity
		kind   error             // of the refusal elsewhere
		reason string
	}{
		{"5 lbf·ft", map[string]string{"moment": "5 * lb * g * ft", "energy": "5 * lb * g * ft"}, units.ErrWrongQuantity, "no name of its own for either"},
		{"5 ft·lbf", map[string]string{"moment": "5 * lb * g * ft", "energy": "5 * lb * g * ft"}, units.ErrWrongQuantity, "the other order"},
		{"5 ft-lbf", map[string]string{"moment": "5 * lb * g * ft", "energy": "5 * lb * g * ft"}, units.ErrWrongQuantity, "with a hyphen"},
		{"5 N·m", map[string]string{"moment": "5"}, units.ErrWrongQuantity, "energy has the joule"},
		{"5 J", map[string]string{"energy": "5"}, units.ErrWrongQuantity, "a moment is no energy"},
		{"5 Nm", nil, units.ErrAmbiguousUnit, "nanometre, or newton metre"},
		{"5 ft-lb", nil, units.ErrAmbiguousUnit, "a moment of a mass"},
		{"5 lbf·in", map[string]string{"moment": "5 * lb * g * in"}, units.ErrWrongQuantity, "only a moment"},
		{"5 N/m", map[string]string{"force per length": "5", "stiffness": "5"}, units.ErrWrongQuantity, "a load, or a rope"},
		{"5 N/mm", map[string]string{"force per length": "5000", "stiffness": "5000"}, units.ErrWrongQuantity, "the same as kN/m"},
		{"5 lbf/in", map[string]string{"force per length": "5 * lb * g / in", "stiffness": "5 * lb * g / in"}, units.ErrWrongQuantity, "a load, or a rope"},
		{"5 lbf/ft", map[string]string{"force per length": "5 * lb * g / ft", "stiffness": "5 * lb * g / ft"}, units.ErrWrongQuantity, "a load, or a rope"},
		{"5 plf", map[string]string{"force per length": "5 * lb * g / ft"}, units.ErrWrongQuantity, "only of a load"},
		{"5 lb·ft²", map[string]string{"mass moment of inertia": "5 * lb * ft * ft"}, units.ErrWrongQuantity, "not lb/ft²"},
		{"5 lb-ft2", map[string]string{"mass moment of inertia": "5 * lb * ft * ft"}, units.ErrWrongQuantity, "as it is typed"},
		{"5 lb/ft²", map[string]string{"mass per area": "5 * lb / ft / ft"}, units.ErrWrongQuantity, "not lb·ft²"},
		{"5 min", map[string]string{"time": "300"}, units.ErrWrongQuantity, "no minute of arc"},
		{"5'", map[string]string{"length": "5 * ft"}, units.ErrWrongQuantity, "feet, never minutes of arc"},
		{"5 arcmin", map[string]string{"angle": "5 * pi / 10800"}, units.ErrWrongQuantity, "said which"},
		{"5°", map[string]string{"angle": "5 * pi / 180"}, units.ErrWrongQuantity, "a sign alone"},
		{"2 revs", map[string]string{"angle": "4 * pi"}, units.ErrWrongQuantity, "whole turns"},
		{"5 m", map[string]string{"length": "5"}, units.ErrWrongQuantity, "metres, not minutes"},
		{"300 fpm", map[string]string{"speed": "5 * ft"}, units.ErrWrongQuantity, "feet per minute"},
		{"300 ft per min", map[string]string{"speed": "5 * ft"}, units.ErrWrongQuantity, "in words"},
		{"2 hp", map[string]string{"power": "1100 * ft * lb * g"}, units.ErrWrongQuantity, "550 ft·lbf/s each"},
		{"2.5 kW", map[string]string{"power": "2500"}, units.ErrWrongQuantity, "kilowatts"},
		{"1.5 kJ", map[string]string{"energy": "1500"}, units.ErrWrongQuantity, "kilojoules"},
		{"1.5 h", map[string]string{"time": "5400"}, units.ErrWrongQuantity, "hours"},
		{"250 ms", map[string]string{"time": "0.25"}, units.ErrWrongQuantity, "milliseconds, not metre seconds"},
	} {
		t.Run(row.text, func(t *testing.T) {
			for _, k := range kinds {
				got, err := k.parse(row.text)
				definition, taken := row.as[k.name]
				if !taken {
					if !errors.Is(err, row.kind) {
						t.Errorf("as a %s: %v, %v; want %v: %s", k.name, got, err, row.kind, row.reason)
					}
					continue
				}
				if want, _ := define(t, definition).Float64(); err != nil || number(got) != want {
					t.Errorf("as a %s: %v, %v; want %v: %s", k.name, number(got), err, want, row.reason)
				}
			}
		})
	}
}
