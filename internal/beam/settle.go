package beam

import "slices"

// settle finds the tight lines with a primal active-set method. From pulls that hold
// the load, those of the two outermost lines alone, it steps towards those of the
// continuous beam on the tight lines until a line would have to push, and lets that line
// go. When none would, it takes back the slack line whose end the beam stands furthest below.
//
// Energy falls with every step that has a length. From one settled set to the next there is one, but for where a single line
// pulls: two that do fix how the beam lies, and a line taken back, below whose end it stood, pulls. On a single line
// it leans. A line taken back on the side that is up pulls together with one on the other; one on the side that is down takes
// the place of the line it leaned on before, and the lean only grows. So no set is settled on twice.
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
	for {
		w.Hold(set)
		if i, share := w.blocking(none); i >= 0 {
			for j := range w.current {
				w.current[j] += float64(share * (w.Reaction[j] - w.current[j]))
			}
			w.current[i] = 0
			set &^= 1 << i
			continue
		}
		w.pull(none)
		copy(w.current, w.Reaction)
		w.Deflect()
		i := w.lowest(set)
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

// lowest is the slack line that the beam stands furthest below; -1 where there is none.
func (w *Work) lowest(set uint64) int {
	line := -1
	for i, d := range w.Deflection {
		if set&(1<<i) != 0 || d <= float64(slip*w.terms[i]) {
			continue
		}
		if line < 0 || d > w.Deflection[line] {
			line = i
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
