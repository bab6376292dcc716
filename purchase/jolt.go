package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Jolt is how many times what hangs on them the lift lines bear, at the worst instant, when the arbor runs into its stop: the
// batten, on lines that are stretched by its weight already, is as fast as Speed of a [Runaway], and they take that up:
//
//	1 + v/√(g·stretch)
//
// The stretch is that of the lines under what hangs on them at rest, from [RopeStock.Stretch] or from EA over the
// whole path. A batten that runs out leaves its lines slack, flies on, and falls back into them: that comes to the same.
// It is 1 at no speed.
//
// It is the energy method, as for a weight that falls on a spring, but for the stretch that is there already: the stop does not
// give, the lines are elastic and have no mass, nothing is lost on the way. Real stops give, and rope dampens, so
// that the figure is usually on the high side for the lines as a whole; it leaves out that one line takes it up before the others,
// and what strikes the stop. The arbor's stop and what holds it bear the arbor's own energy beside.
//
// The errors are *units.FieldError, joined: a speed below zero, a stretch that is not more than zero. Lines that do not give at all
// have no finite factor.
//
// Source: conservation of energy; Mechanics of Materials, 7th ed., section 9.10, has it for weights that fall.
func Jolt(speed units.Speed, stretch units.Length) (float64, error) {
	var p check.Problems
	check.NotNegative(&p, "speed", speed)
	check.Positive(&p, "stretch", stretch, "how far the lift lines give under what hangs on them")
	if err := p.Err(); err != nil {
		return 0, err
	}
	v := speed.In(units.MetrePerSecond)
	return 1 + v/math.Sqrt(units.StandardGravity.In(units.MetrePerSecondSquared)*stretch.In(units.Metre)), nil
}
