package load

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// ImpactFactor is how many times its own weight a dropped thing pulls or presses on what
// catches it, at the worst instant:
//
//	1 + √(1 + 2·drop/stretch)
//
// The drop is how far it falls freely before it is caught. The stretch is how far what
// catches it would give, there, under the thing's weight at rest: on a batten, [Rigged.Give]. A drop of 0 gives 2: a
// load let go all at once, as when a sling slips tight, counts twice. What the thing
// causes at rest (tension, moment, stress, deflection) grows by the factor; what hung
// before is added as it was. For a thing caught at a speed v the drop is v²/2g.
//
// It is the energy method: the thing does not bounce or give, what catches it is
// elastic, stays so and has no mass, and nothing is lost on the way. Losses lower the
// figure, so that it is usually on the high side for the part as a whole. It is
// no bound. It leaves out the local stress where the thing strikes and waves along a
// long part, and holds no longer where something yields, slips or goes slack. A stretch
// put too large makes the factor too small; to leave a give out, such as that of the
// lift lines, makes it larger. Plan so that nothing has to be caught.
//
// The errors are *units.FieldError, joined where there are two: a drop that is negative
// or not finite, a stretch that is not more than zero. What does not give at all has no
// finite factor.
//
// Source: Mechanics of Materials, 7th ed., section 9.10, eq. 9-94.
func ImpactFactor(drop, stretch units.Length) (float64, error) {
	var p check.Problems
	check.NotNegative(&p, "drop", drop)
	check.Positive(&p, "stretch", stretch,
		"how far what catches the load gives under its weight at rest (what does not give has no finite factor)")
	if err := p.Err(); err != nil {
		return 0, err
	}
	return 1 + math.Sqrt(1+2*units.Ratio(drop, stretch)), nil
}
