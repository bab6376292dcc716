package load

import (
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Cut is what a cut through the pipe would bare: the shear just before a place and just past it, as counted from the end nearer the
// arbor, and the bending moment there. The two shears differ where a line pulls or something hangs at a point.
type Cut struct {
	At     units.Length `json:"at"`     // along the batten
	Before units.Force  `json:"before"` // shear, with the sign of [ShearAt]
	Past   units.Force  `json:"past"`
	Moment units.Moment `json:"moment"` // positive where the pipe sags
}

// Cuts gives shear and bending moment at places along the pipe, in the order asked: what the diagrams of both are drawn from.
// Between two places where a line pulls or something begins, ends or hangs, the shear runs straight (under an item with a
// Taper: as a parabola) and the moment one degree higher. The errors are those of [Rigged.Share], and a *units.FieldError for
// a place that is not on the batten.
//
// What lies nearer the arbor is added up, lines up and weights down; it is exact statics, to rounding.
func (r *Rigged) Cuts(trim units.Length, at ...units.Length) ([]Cut, error) {
	var p check.Problems
	check.Finite(&p, "trim", trim)
	for i, place := range at {
		onBatten(&p, "at["+strconv.Itoa(i)+"]", place, r.length)
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	w := r.layout.Borrow()
	defer w.Return()
	if _, _, err := r.solve(w, trim); err != nil {
		return nil, err
	}
	out := make([]Cut, len(at))
	for i, place := range at {
		before, past, moment := w.Cut(float64(max(0, min(place, r.length))))
		out[i] = Cut{place, units.Force(before), units.Force(past), units.Moment(moment)}
	}
	return out, nil
}
