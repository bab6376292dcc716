package beam

import "slices"

const (
	// mostLooks bounds the search of Turns. A beam takes a few looks for each turn; the bound
	// is far beyond, and there for the case that rounding spoils the proofs, as it can where
	// dozens of lines hold next to nothing beside a great load.
	mostLooks = 2047
	// shortest is the share of the way below which a stretch is not looked into.
	shortest = 1e-12
)

// Turns gives the places, as shares of the way from one list of weights to another
// and increasing, at which the set of tight lines changes, and those at which the
// beam begins or ceases to be held, as in [Work.Hang] with the same reach. On the way
// every weight goes straight from the one value to the other. Between two of the
// places, and between them and the two ends of the way, every pull and every deflection
// goes straight too.
func (w *Work) Turns(from, to []float64, reach float64) []float64 {
	from, to = slices.Clone(from), slices.Clone(to)
	return w.turns(reach, func(place float64) {
		for i, a := range from {
			w.Weights[i] = max(0, a+float64(place*(to[i]-a)))
		}
		w.LoadWeights()
	})
}

// TurnsOfLow does the same for the way from one list of lows to another, under the last Load.
func (w *Work) TurnsOfLow(from, to []float64, reach float64) []float64 {
	from, to = slices.Clone(from), slices.Clone(to)
	low := make([]float64, len(from))
	return w.turns(reach, func(place float64) {
		for i, a := range from {
			low[i] = a + float64(place*(to[i]-a))
		}
		w.SetLow(low)
	})
}

// TurnsOfPoint does the same for the way from no point beside the weights to one of a weight.
func (w *Work) TurnsOfPoint(weight, at, reach float64) []float64 {
	return w.turns(reach, func(place float64) {
		w.LoadWeights()
		w.AddPoint(float64(place*weight), at)
	})
}

// turns looks at sets of tight lines as in [Work.Hold]: the pulls and deflections of one
// are straight over the whole way. Where all have the right sign at two places, they
// have it at all between, and there is only one answer: the set is proved for the
// whole stretch. So the search takes the set in the middle of a stretch, cuts
// off to each side what it is not proved for, and goes on with those two rests. Nothing is
// followed from one set to the next, so it does not matter how many lines
// let go or come back at one place.
//
// A rest is never longer than half of the stretch, and stretches are looked into in the order
// in which they came up, so the search is bisection at worst. Both ends of every rest are
// among the places, one that is still not proved after mostLooks too; it is then shorter
// than a thousandth of the way.
func (w *Work) turns(reach float64, lay func(place float64)) []float64 {
	if len(w.layout.x) == 0 {
		return nil
	}
	t := newTurning(w, lay)
	whole := t.held(reach)
	if !(whole.lo <= whole.hi) {
		return nil
	}
	places := []float64{whole.lo, whole.hi}
	queue := []way{whole}
	for looks := 0; looks < min(len(queue), mostLooks); looks++ {
		s := queue[looks]
		middle := s.at(0.5)
		lay(middle)
		proved := way{middle, middle}
		if w.Hang(reach) {
			proved = t.proved(s, w.set())
			proved = way{min(proved.lo, middle), max(proved.hi, middle)}
		}
		places = append(places, proved.lo, proved.hi)
		for _, rest := range []way{{s.lo, proved.lo}, {proved.hi, s.hi}} {
			if rest.hi-rest.lo > shortest {
				queue = append(queue, rest)
			}
		}
	}
	slices.Sort(places)
	turns := places[:0]
	last := 0.0
	for _, p := range places {
		if p > last+shortest && p < 1-shortest {
			turns = append(turns, p)
			last = p
		}
	}
	return turns
}

// way is a part of the way, from one share of it to another.
type way struct{ lo, hi float64 }

// at is the place a share of the way from lo to hi.
func (s way) at(share float64) float64 { return s.lo + float64((s.hi-s.lo)*share) }

// cut gives the part of s on which a value that goes straight from a to b is zero or more.
// At each end the value may fall short by what is rounding there. Where nothing
// is left, lo comes out above hi.
func (s way) cut(a, b, roundA, roundB float64) way {
	short, shortAtEnd := a < -roundA, b < -roundB
	switch {
	case short && shortAtEnd:
		return way{s.hi, s.lo}
	case short:
		return way{s.at(max(0, min(a/(a-b), 1))), s.hi}
	case shortAtEnd:
		return way{s.lo, s.at(max(0, min(a/(a-b), 1)))}
	}
	return s
}

func (s way) and(o way) way { return way{max(s.lo, o.lo), min(s.hi, o.hi)} }

// turning is what one call of turns computes in.
type turning struct {
	w    *Work
	lay  func(place float64)
	ends [2]supported // the two ends of a stretch
}

// supported is how the supports of a set hold the beam, and what is rounding in it.
type supported struct {
	pull, drop []float64
	smallPull  float64
	smallDrop  []float64
}

// note takes down the last Hold and Deflect.
func (s *supported) note(w *Work) {
	copy(s.pull, w.Reaction)
	copy(s.drop, w.Deflection)
	s.smallPull = w.none()
	for j, size := range w.terms {
		s.smallDrop[j] = slip * size
	}
}

func newTurning(w *Work, lay func(place float64)) *turning {
	n := len(w.layout.x)
	t := &turning{w: w, lay: lay}
	for i := range t.ends {
		t.ends[i] = supported{pull: make([]float64, n), drop: make([]float64, n), smallDrop: make([]float64, n)}
	}
	return t
}

// hold fills t.ends with how the set holds the beam at the two ends of a stretch.
func (t *turning) hold(s way, set uint64) {
	for i, place := range [2]float64{s.lo, s.hi} {
		t.lay(place)
		t.w.Hold(set)
		t.w.Deflect()
		e := &t.ends[i]
		e.note(t.w)
	}
}

// proved is the part of the stretch for which the set of tight lines is the right one.
func (t *turning) proved(s way, set uint64) way {
	t.hold(s, set)
	a, b := &t.ends[0], &t.ends[1]
	part := s
	for i := range a.pull {
		if set&(1<<i) != 0 {
			part = part.and(s.cut(a.pull[i], b.pull[i], a.smallPull, b.smallPull))
		} else {
			part = part.and(s.cut(-a.drop[i], -b.drop[i], a.smallDrop[i], b.smallDrop[i]))
		}
	}
	return part
}

// held is the part of the way on which the centre of gravity is between the outermost
// lines, or within reach of the only one.
func (t *turning) held(reach float64) way {
	whole := way{0, 1}
	n := len(t.w.layout.x)
	if n > 1 {
		t.hold(whole, 1|1<<(n-1))
		a, b := &t.ends[0], &t.ends[1]
		first := whole.cut(a.pull[0], b.pull[0], a.smallPull, b.smallPull)
		return first.and(whole.cut(a.pull[n-1], b.pull[n-1], a.smallPull, b.smallPull))
	}
	var left, right [2]float64 // how far the moment about the line is from too much
	for i, place := range [2]float64{0, 1} {
		t.lay(place)
		off := t.w.centre() - t.w.layout.x[0]
		left[i], right[i] = float64((reach+off)*t.w.total), float64((reach-off)*t.w.total)
	}
	return whole.cut(left[0], left[1], 0, 0).and(whole.cut(right[0], right[1], 0, 0))
}

// set is the lines that the last Hold or Hang took as tight, as bits.
func (w *Work) set() (set uint64) {
	for _, i := range w.tight {
		set |= 1 << i
	}
	return set
}
