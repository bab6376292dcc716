package beam

import "math"

const (
	// roundoff is the share of the whole weight below which a pull counts as none.
	roundoff = 1e-10
	// slip is the same for a deflection, as a share of the terms that it is the sum of.
	slip = 1e-12
)

// Hang solves the beam on lines that pull or are slack, and never push: each
// reaction is zero or more, the beam stands at or above the end of each line, and
// no line that pulls has a gap. It reports false where no such state is:
// where the centre of gravity lies outside the outermost lines or, with one line,
// further than reach from it.
//
// Of all pulls that hold the load, the true ones have the least complementary
// energy (Engesser; for contact, Signorini): a strictly convex quadratic problem
// over the pulls, of which none is negative. So there is one answer. It is found
// with a primal active-set method. From pulls that hold the load, step towards
// those of the continuous beam on the tight lines until a line would have to
// push, and let that line go. When none would, take back the slack line whose
// end the beam stands furthest below. Energy falls from each settled set to the
// next, so none is met twice. Where steps have no length, lines are chosen by
// least index, which cannot cycle (Chang and Cottle, Least-index resolution of
// degeneracy in quadratic programming, 1980; from memory).
func (w *Work) Hang(reach float64) bool {
	n := len(w.layout.lines)
	switch {
	case n == 0:
		return false
	case n == 1:
		w.Hold(1)
		w.Deflection[0] = 0
		return math.Abs(w.centre()-w.layout.x[w.layout.lines[0]]) <= reach
	}
	none := roundoff * w.total
	w.Hold(All(n))
	if w.pull(none) {
		clear(w.Deflection)
		return true
	}
	set := uint64(1) | 1<<(n-1)
	w.Hold(set)
	if !w.pull(none) {
		return false
	}
	copy(w.current, w.Reaction)
	w.seen = w.seen[:0]
	least := false
	for {
		w.Hold(set)
		if i, share := w.blocking(none); i >= 0 {
			for j := range w.current {
				w.current[j] += float64(share * (w.Reaction[j] - w.current[j]))
			}
			w.current[i] = 0
			set &^= 1 << i
			least = share == 0
			continue
		}
		w.pull(none)
		if w.moved(none) {
			least = false
		}
		copy(w.current, w.Reaction)
		w.Deflect()
		i := w.lowest(set, least)
		if i < 0 || w.met(set) {
			break
		}
		set |= 1 << i
	}
	for i, d := range w.Deflection {
		w.Deflection[i] = min(d, 0)
	}
	return true
}

// centre is the centre of gravity of all that is laid on.
func (w *Work) centre() float64 {
	x := w.layout.x
	at := w.layout.lines[0]
	_, left := w.overhang(at, 0)
	_, right := w.overhang(at, len(x)-1)
	if w.total == 0 {
		return x[at]
	}
	return x[at] + (right-left)/w.total
}

// pull reports whether no line has to push, and takes what rounding has
// left on a line for nothing.
func (w *Work) pull(none float64) bool {
	for i, r := range w.Reaction {
		if r < -none {
			return false
		}
		if r <= none {
			w.Reaction[i] = 0
		}
	}
	return true
}

// blocking is the first line that goes slack on the way from the current pulls
// to Reaction, and the share of the way at which it does; of several the one
// of least index. It is -1 where none does. Two tight lines are statically
// determinate: the way has no length.
func (w *Work) blocking(none float64) (line int, share float64) {
	line, share = -1, 1
	if len(w.tight) == 2 {
		return line, share
	}
	for _, i := range w.tight {
		if w.Reaction[i] >= -none {
			continue
		}
		if s := w.current[i] / (w.current[i] - w.Reaction[i]); line < 0 || s < share {
			line, share = i, s
		}
	}
	return line, share
}

// moved reports whether Reaction differs from the current pulls.
func (w *Work) moved(none float64) bool {
	for i, r := range w.Reaction {
		if math.Abs(r-w.current[i]) > none {
			return true
		}
	}
	return false
}

// lowest is the slack line that the beam stands furthest below, or the first
// one that it stands below; -1 where there is none.
func (w *Work) lowest(set uint64, first bool) int {
	line := -1
	for i, d := range w.Deflection {
		if set&(1<<i) != 0 || d <= slip*w.terms[i] {
			continue
		}
		if line < 0 || d > w.Deflection[line] {
			line = i
		}
		if first {
			return line
		}
	}
	return line
}

// met reports whether the set has been settled on before, which only rounding can
// bring about, and notes it. It makes the search finite in floating point too.
func (w *Work) met(set uint64) bool {
	for _, s := range w.seen {
		if s == set {
			return true
		}
	}
	w.seen = append(w.seen, set)
	return false
}
