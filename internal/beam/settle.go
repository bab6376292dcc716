package beam

import "slices"

import "math"

// settle finds the tight lines with a primal active-set method. From pulls that hold
// the load, those of the two outermost lines alone, it steps towards those of the
// continuous beam on the tight lines until a line would have to push, and lets that line
// go. When none would, it takes back the slack line whose end the beam stands furthest below.
// Energy falls from each settled set to the next, so none is met twice. Where steps have no
// length, lines are chosen by least index, which cannot cycle (Chang and Cottle,
// Least-index resolution of degeneracy in quadratic programming, 1980; from memory).
//
// It reports false where the two outermost lines cannot hold the load.
func (w *Work) settle(none float64) bool {
	n := len(w.layout.x)
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
			return true
		}
		set |= 1 << i
	}
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
		if set&(1<<i) != 0 || d <= float64(slip*w.terms[i]) {
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
	if slices.Contains(w.seen, set) {
		return true
	}
	w.seen = append(w.seen, set)
	return false
}
