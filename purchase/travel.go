package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Ratio is the batten's travel for each unit of the arbor's, −dx/dy, from the
// paths of the ropes: 1 for a standard single purchase set, 2 for a double, 3 for a
// triple.
func (r *Reeved) Ratio() float64 {
	if r == nil {
		return 0
	}
	return r.ratio
}

// HandRatio is how far the hand line runs through the rope lock while the batten
// travels one unit, from its path: 1 where it is of the same kind as the lift lines, single,
// double or triple, and so as fast as the batten; ½ for a single hand line
// under double lift lines. It is 0 without a hand line.
func (r *Reeved) HandRatio() float64 {
	if r == nil {
		return 0
	}
	return r.handRatio
}

// ArborTop is the height of the arbor's top above the deck while the batten is at
// a trim. A trim at which two stops of a rope would meet is an error that wraps
// units.ErrOutOfRange.
func (r *Reeved) ArborTop(trim units.Length) (units.Length, error) {
	moved, err := r.moved(trim)
	if err != nil {
		return 0, err
	}
	return units.Length(r.top + moved), nil
}

// Reach gives the trims between which the ropes can run at all: at either of them a
// batten or an arbor meets a block, so that neither is reached itself. The stops of a real set lie inside; a
// Reeved knows nothing of those.
func (r *Reeved) Reach() (lowest, highest units.Length) {
	if r == nil {
		return 0, 0
	}
	return units.Length(r.trim - float64(r.ratio*r.up)), units.Length(r.trim - float64(r.ratio*r.down))
}

// moved is how far the arbor is above where it was when the lines were made off.
func (r *Reeved) moved(trim units.Length) (float64, error) {
	if moved, ok := r.runs(trim); ok {
		return moved, nil
	}
	return 0, r.beyond(trim)
}

// runs is moved, and whether the ropes run so far.
func (r *Reeved) runs(trim units.Length) (moved float64, ok bool) {
	if r == nil {
		return 0, false
	}
	moved = r.movedTo(trim)
	return moved, moved > r.down && moved < r.up
}

func (r *Reeved) movedTo(trim units.Length) float64 {
	return float64((r.trim - trim.In(units.Metre)) * r.perRatio)
}

// beyond says that a trim is out of reach.
func (r *Reeved) beyond(trim units.Length) error {
	if err := r.unrigged(); err != nil {
		return err
	}
	kind := units.ErrOutOfRange
	if x := trim.In(units.Metre); math.IsNaN(x) || math.IsInf(x, 0) {
		kind = units.ErrNotFinite
	}
	lowest, highest := r.Reach()
	return &units.FieldError{
		Field: "trim", Value: check.Show(trim),
		Want: "a trim above " + check.Show(lowest) + " and below " + check.Show(highest) + ", between which the ropes can run", Err: kind,
	}
}

// unrigged says that a Reeved is none that Rig has made.
func (r *Reeved) unrigged() error {
	if r != nil && r.ratio != 0 {
		return nil
	}
	return &units.FieldError{Field: "reeving", Want: "one that Rig has made ready", Err: units.ErrMissing}
}
