package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Ratio is the batten's travel for each unit of the arbor's, −dx/dy, from the
// paths of the ropes: 1 for a standard single purchase set, 2 for a double.
func (r *Reeved) Ratio() float64 { return r.ratio }

// HandRatio is how far the hand line runs through the rope lock while the batten
// travels one unit, from its path: 1 for the standard single and double set, where
// the hand line is as fast as the batten. It is 0 without a hand line.
func (r *Reeved) HandRatio() float64 { return r.handRatio }

// ArborTop is the height of the arbor's top above the deck while the batten is at
// a trim. A trim at which two stops of a rope would meet is an error that wraps
// units.ErrOutOfRange.
func (r *Reeved) ArborTop(trim units.Length) (units.Length, error) {
	y, err := r.arborTop(trim)
	return units.Length(y), err
}

// Reach gives the trims between which the ropes can run at all: beyond them a
// batten or an arbor would pass a block. The stops of a real set lie inside; a
// Reeved knows nothing of those.
func (r *Reeved) Reach() (lowest, highest units.Length) {
	return units.Length(r.trim - float64(r.ratio*r.up)), units.Length(r.trim - float64(r.ratio*r.down))
}

func (r *Reeved) arborTop(trim units.Length) (float64, error) {
	x := trim.In(units.Metre)
	moved := -(x - r.trim) / r.ratio
	if !(moved > r.down && moved < r.up) {
		kind := units.ErrOutOfRange
		if math.IsNaN(x) || math.IsInf(x, 0) {
			kind = units.ErrNotFinite
		}
		lowest, highest := r.Reach()
		return 0, &units.FieldError{Field: "trim", Value: check.Show(trim),
			Want: "a trim between " + check.Show(lowest) + " and " + check.Show(highest) + ", where the ropes can run", Err: kind}
	}
	return r.top + moved, nil
}
