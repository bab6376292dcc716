package beam

import (
	"math"
	"math/bits"
)

const (
	// roundoff is the share of the whole weight below which a pull counts as none.
	roundoff = 1e-10
	// slip is the same for a deflection, as a share of the terms that it is the sum of.
	slip = 1e-12
	// patience is how often trade may go on without fewer wrong signs than ever before.
	patience = 3
)

// Hang solves the beam on lines that pull or are slack, and never push: each
// reaction is zero or more, the beam stands at or above the end of each line, and
// no line that pulls has a gap. It reports false where no such state is:
// where the centre of gravity lies outside the outermost lines or, with one line,
// further than reach from it.
//
// Of all pulls that hold the load, the true ones have the least complementary
// energy (Engesser; for contact, Signorini): a strictly convex quadratic problem
// over the pulls, of which none is negative. So there is one answer, and a set of tight
// lines that has every sign right is it. It is looked for in two ways. Trade is quick
// and mostly enough; settle always ends with it.
func (w *Work) Hang(reach float64) bool {
	n := len(w.layout.x)
	switch {
	case n == 0:
		return false
	case n == 1:
		w.Hold(1)
		w.Deflection[0] = 0
		return math.Abs(w.centre()-w.layout.x[0]) <= reach
	}
	none := w.none()
	w.Hold(All(n))
	if w.pull(none) {
		clear(w.Deflection)
		return true
	}
	if !w.trade(none) && !w.settle(none) {
		return false
	}
	for i, d := range w.Deflection {
		w.Deflection[i] = min(d, 0)
	}
	return true
}

// trade lets go of all lines that would have to push and takes back all those whose
// end the beam stands below, until there are none. That may go round in circles, so it
// gives up when it does not get on (block principal pivoting: Júdice and Pires 1994; from
// memory). It goes on from the last Hold, of all lines.
func (w *Work) trade(none float64) bool {
	set := All(len(w.layout.x))
	fewest, left := len(w.layout.x)+1, patience
	for {
		wrong := uint64(0)
		for _, i := range w.tight {
			if w.Reaction[i] < -none {
				wrong |= 1 << i
			}
		}
		if set != All(len(w.layout.x)) {
			w.Deflect()
			for i, d := range w.Deflection {
				if d > float64(slip*w.terms[i]) {
					wrong |= 1 << i
				}
			}
		}
		count := bits.OnesCount64(wrong)
		switch {
		case count == 0:
			return w.pull(none)
		case count < fewest:
			fewest, left = count, patience
		case left == 0:
			return false
		default:
			left--
		}
		set ^= wrong
		if set&(set-1) == 0 {
			return false
		}
		w.Hold(set)
	}
}

// centre is the centre of gravity of all that is laid on one line.
func (w *Work) centre() float64 {
	if w.total == 0 {
		return w.layout.x[0]
	}
	return w.layout.x[0] + (w.tips[1].moment-w.tips[0].moment)/w.total
}

// none is the pull that counts as none: rounding of the weights or of the lows may bring it about.
func (w *Work) none() float64 { return float64(roundoff*w.total) + w.slight }

// pull reports whether no line has to push, and takes what rounding has
// left on a line for nothing.
func (w *Work) pull(none float64) bool {
	reaction := w.Reaction
	for i, r := range reaction {
		if r > none {
			continue
		}
		if r < -none {
			return false
		}
		reaction[i] = 0
	}
	return true
}
