package units_test

import (
	"strings"
	"testing"

	"example.com/steelyard/units"
)

// The decimals of the table at System.Format, for every quantity: 2.12345678 of the unit that the system writes it in.
func TestSystemPlaces(t *testing.T) {
	shown := map[int]string{1: "2.1", 2: "2.12", 3: "2.123", 4: "2.1235"}
	for _, row := range []struct {
		name       string
		us, metric string // the unit
		placesUS   int    // 0: sixteenths
		placesSI   int
	}{
		{"length", "ft", "m", 0, 3},
		{"area", "ft²", "m²", 2, 3},
		{"area", "in²", "cm²", 4, 3},
		{"mass", "lb", "kg", 2, 2},
		{"force", "lbf", "kN", 1, 3},
		{"acceleration", "ft/s²", "m/s²", 3, 3},
		{"moment", "lbf·ft", "N·m", 1, 1},
		{"stress", "ksi", "MPa", 3, 2},
		{"mass per length", "lb/ft", "kg/m", 3, 3},
		{"force per length", "lbf/ft", "N/m", 2, 1},
		{"mass per area", "oz/yd²", "g/m²", 2, 1},
		{"density", "lb/ft³", "kg/m³", 1, 1},
		{"second moment of area", "in⁴", "cm⁴", 4, 3},
		{"section modulus", "in³", "cm³", 4, 3},
		{"time", "s", "s", 2, 2},
		{"speed", "ft/s", "m/s", 2, 3},
		{"angle", "deg", "deg", 2, 2},
		{"energy", "ft·lbf", "J", 1, 1},
		{"power", "hp", "kW", 3, 3},
		{"stiffness", "lbf/in", "kN/m", 1, 3},
		{"mass moment of inertia", "lb·ft²", "kg·m²", 3, 4},
	} {
		for _, k := range kinds {
			if k.name != row.name {
				continue
			}
			for _, as := range []struct {
				system units.System
				symbol string
				places int
			}{{units.US, row.us, row.placesUS}, {units.Metric, row.metric, row.placesSI}} {
				q, err := k.parse("2.12345678 " + as.symbol)
				if err != nil {
					t.Fatal(err)
				}
				want := shown[as.places] + " " + as.symbol
				if as.places == 0 {
					want = `2' 1 1/2"` // 2' 1.4815"
				}
				if got := as.system.Format(q); got != want {
					t.Errorf("%s: got %s, want %s", row.name, got, want)
				}
				if got, want := as.system.FormatPlaces(q, 6), "2.123457 "+as.symbol; got != want {
					t.Errorf("%s to six places: got %s, want %s", row.name, got, want)
				}
			}
		}
	}
}

// In counts units of the same quantity: two of a unit are two in it, and as many SI units as the unit has.
func TestInEveryUnit(t *testing.T) {
	for _, k := range kinds {
		for _, symbol := range k.symbols() {
			unit, err := k.unit(symbol)
			if err != nil {
				t.Fatal(err)
			}
			if got := k.in(k.of(2*number(unit)), unit); got != 2 {
				t.Errorf("two %s are %v in it", symbol, got)
			}
			if got := k.in(k.of(6), k.of(4)); got != 1.5 {
				t.Errorf("%s: 6 in 4 is %v", k.name, got)
			}
			if got := number(k.scale(unit, -3)); got != -3*number(unit) {
				t.Errorf("%s scaled by -3 is %v", symbol, got)
			}
		}
		if si := strings.TrimPrefix(k.of(1).String(), "1 "); si != k.symbols()[0] {
			t.Errorf("%s: the first symbol is %s, and String writes %s", k.name, k.symbols()[0], si)
		}
	}
}
