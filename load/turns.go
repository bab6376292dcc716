package load

import (
	"slices"

	"example.com/steelyard/internal/beam"
	"example.com/steelyard/units"
)

// Turns gives the trims, sorted, strictly between two trims in either order, at which
// anything about the share may bend or jump: the breaks (see [Rigged.Breaks]), and
// every trim at which a line goes slack or takes load again, or the batten begins
// or ceases to tip. A worst can lie at any of them. The slice is the caller's.
//
// Between two neighbours every tension and every gap is a straight line over trim. Moment
// and shear at any place along the pipe are straight too, and so their largest over
// the pipe, and the stress, is nowhere above the straight line between its values at the two
// trims. So the worst over a range of trims is among the values at its two ends, at the
// turns, and just above each of these, the lower end too, at which a standing piece lifts off.
//
// It is found by proof for every stretch between two breaks, not by trying trims:
// where a set of tight lines has every sign right at two trims, it has at all between.
func (r *Rigged) Turns(from, to units.Length) []units.Length {
	from, to = min(from, to), max(from, to)
	var turns []units.Length
	note := func(trim units.Length) {
		if trim > from && trim < to {
			turns = append(turns, trim)
		}
	}
	var w, upper *beam.Work
	if len(r.breaks) > 1 {
		w, upper = r.layout.Borrow(), r.layout.Borrow()
		defer w.Return()
		defer upper.Return()
	}
	for i, b := range r.breaks {
		note(b)
		if i+1 == len(r.breaks) {
			break // above the last one, as below the first, nothing changes
		}
		low, high := max(from, b), min(to, r.breaks[i+1])
		if !(low < high) {
			continue
		}
		r.lay(w, low, true)
		r.lay(upper, high, false)
		for _, share := range w.Turns(w.Weights, upper.Weights, float64(r.reach())) {
			note(min(low+(high-low).Scale(share), high))
		}
	}
	return slices.Compact(turns)
}
