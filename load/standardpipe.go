package load

import (
	"strconv"
	"strings"

	"example.com/steelyard/units"
)

// standardPipe is a size that is sold by name, with its nominal wall.
type standardPipe struct {
	name        string
	outer, wall units.Length
	density     units.Density // the one behind the tables for that size
}

// Schedule 40: diameter, wall and weight as in two charts of pipe schedules; areas and
// moduli agree with Table A16-6 of a machine-element textbook, 4th ed. Schedule 80: walls
// from memory; they agree with a published list of weights to two decimals. Metric: data
// sheets of scaffold tube, the 3.2 mm wall on a mill's that cites EN 39, the 4.0 mm one on one
// that cites BS EN 12811-2.
var standardPipes = [...]standardPipe{
	{"NPS 1-1/4 schedule 40", 1.660 * units.Inch, 0.140 * units.Inch, PipeSteelDensity}, // 2.273 lb/ft
	{"NPS 1-1/4 schedule 80", 1.660 * units.Inch, 0.191 * units.Inch, PipeSteelDensity}, // 3.00 lb/ft
	{"NPS 1-1/2 schedule 40", 1.900 * units.Inch, 0.145 * units.Inch, PipeSteelDensity}, // 2.718 lb/ft
	{"NPS 1-1/2 schedule 80", 1.900 * units.Inch, 0.200 * units.Inch, PipeSteelDensity}, // 3.63 lb/ft
	{"NPS 2 schedule 40", 2.375 * units.Inch, 0.154 * units.Inch, PipeSteelDensity},     // 3.653 lb/ft
	{"NPS 2 schedule 80", 2.375 * units.Inch, 0.218 * units.Inch, PipeSteelDensity},     // 5.02 lb/ft
	{"48.3 x 3.2 mm", 48.3 * units.Millimetre, 3.2 * units.Millimetre, SteelDensity},    // 3.56 kg/m
	{"48.3 x 4.0 mm", 48.3 * units.Millimetre, 4.0 * units.Millimetre, SteelDensity},    // 4.37 kg/m
}

// StandardPipe gives steel pipe of a size that is sold by name, one of [StandardPipes]
// such as "NPS 1-1/2 schedule 40" or "48.3 x 3.2 mm", with a modulus of elasticity of
// the caller's choice such as [SteelModulusUS]. Schedule 40 is called standard weight
// too in these sizes, schedule 80 extra strong.
//
// The wall is the nominal one, by which pipe is sold and weighed; a real wall may be
// thinner: see [Tube.Thinned]. Pipe in a house may be of another size, worn or rusted:
// measure it. The size does not tell the grade of steel, and so not the strength.
//
// The error for any other name is a *units.FieldError of kind ErrUnknown that lists the
// names. The modulus is not looked at: [Batten.Rig] refuses one that makes no sense.
func StandardPipe(name string, modulus units.Stress) (Tube, error) {
	for _, p := range standardPipes {
		if p.name == name {
			return Tube{Outer: p.outer, Wall: p.wall, Density: p.density, Modulus: modulus}, nil
		}
	}
	return Tube{}, &units.FieldError{
		Value: strconv.Quote(name),
		Want:  "one of " + strings.Join(StandardPipes(), ", "),
		Err:   units.ErrUnknown,
	}
}

// StandardPipes lists the names that [StandardPipe] knows: the US sizes, then the metric
// ones, from the smallest up. The slice is the caller's.
func StandardPipes() []string {
	names := make([]string, len(standardPipes))
	for i, p := range standardPipes {
		names[i] = p.name
	}
	return names
}
