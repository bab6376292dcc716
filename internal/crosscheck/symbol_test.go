package crosscheck

import (
	"iter"
	"slices"
	"testing"

	"example.com/steelyard/units"
)

// size is one unit of package units: its quantity, its symbol, how many SI units it
// is, and the symbol of the SI unit.
type size struct {
	quantity, symbol, si string
	value                float64
}

// sizes lists the units of every quantity.
func sizes(t testing.TB) []size {
	return slices.Concat(
		of[units.Length](t, "length"), of[units.Area](t, "area"), of[units.Mass](t, "mass"),
		of[units.Force](t, "force"), of[units.TimeSpan](t, "time"), of[units.Speed](t, "speed"),
		of[units.Acceleration](t, "acceleration"), of[units.Angle](t, "angle"),
		of[units.Moment](t, "moment"), of[units.Energy](t, "energy"), of[units.Power](t, "power"),
		of[units.Stress](t, "stress"), of[units.LineMass](t, "mass per length"),
		of[units.LineLoad](t, "force per length"), of[units.AreaMass](t, "mass per area"),
		of[units.Density](t, "density"), of[units.SecondMoment](t, "second moment of area"),
		of[units.SectionModulus](t, "section modulus"), of[units.Stiffness](t, "stiffness"),
		of[units.Inertia](t, "mass moment of inertia"),
	)
}

func of[Q units.Quantity](t testing.TB, quantity string) []size {
	next, stop := iter.Pull(units.Symbols[Q]())
	si, _ := next()
	stop()
	var list []size
	for symbol := range units.Symbols[Q]() {
		unit, err := units.Unit[Q](symbol)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, size{quantity, symbol, si, float64(unit)})
	}
	return list
}
