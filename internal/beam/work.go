package beam

import "slices"

// Work gives scratch for computing on the layout, with no load yet.
func (l *Layout) Work() *Work {
	n := len(l.x)
	slab := make([]float64, 12*n+l.loads)
	take := func(k int) []float64 {
		s := slab[:k:k]
		slab = slab[k:]
		return s
	}
	w := &Work{
		layout:   l,
		Reaction: take(n), Deflection: take(n),
		low: take(n), point: take(n), begin: take(n), gain: take(n),
		moment: take(n), level: take(n),
		current: take(n), terms: take(n), length: take(n), beyond: take(n),
		Weights: take(l.loads),
		spans:   make([]simple, n), held: make([]simple, n), upTo: make([]simple, n),
		tight:   make([]int, 0, n),
		seen:    make([]uint64, 0, n),
		factors: l.newFactors(),
	}
	w.SetLow(l.low)
	w.mislaid = false
	return w
}

// Borrow gives scratch that nobody else uses, until it is given back with [Work.Return].
// What it was last used for may still be in it, but for the lows, which are the layout's.
func (l *Layout) Borrow() *Work {
	if w, ok := l.works.Get().(*Work); ok {
		return w
	}
	return l.Work()
}

// Return gives back what was borrowed.
func (w *Work) Return() {
	if w.mislaid {
		w.SetLow(w.layout.low)
		w.mislaid = false
	}
	w.layout.works.Put(w)
}

// Work is the scratch in which one goroutine computes, and holds what came out.
type Work struct {
	layout *Layout

	// Reaction is the pull of each line, Deflection how far EI times the beam stands below
	// the end of each slack one (negative: above it), and 0 for a tight one. They belong to
	// the last call of Hold, or of Hang or Deflect.
	Reaction, Deflection []float64

	// Weights are those of the loads: see LoadWeights.
	Weights []float64

	low     []float64 // as in Beam
	uneven  bool      // one of them is not 0
	slight  float64   // the pull that their rounding alone can bring about
	mislaid bool      // they may not be the layout's

	total       float64
	point       []float64 // weight on each line
	spans       []simple  // of each span between neighbouring lines
	begin, gain []float64 // of each span, the covers' weight per length at its left end, and what that gains
	tips        [2]tip
	rover       rover

	tight  []int     // the lines taken as tight, increasing
	length []float64 // from each tight line to the next
	held   []simple  // the span from each tight line to the next
	moment []float64 // over each tight line
	level  []float64 // EI times how far each tight line's end hangs below level, stretched
	over   [2]tip    // the tips beyond the outermost tight lines

	upTo    []simple  // for each slack line between tight ones, the simple span from the tight one before it to it
	beyond  []float64 // for each slack line outside the tight ones, the moment about it of all that lies beyond
	factors factors   // of the set
	current []float64 // the pulls from which settle takes its next step
	terms   []float64 // the sizes of the terms that each Deflection is the sum of
	seen    []uint64  // the sets of tight lines that settle has met
}

// SetLow lets the lines' ends hang below level, in place of what the Beam says: EI times how far
// for each, unstretched.
func (w *Work) SetLow(low []float64) {
	copy(w.low, low)
	w.mislaid = true
	w.uneven = slices.ContainsFunc(w.low, func(e float64) bool { return e != 0 })
	w.slight = 0
	if l := w.layout; w.uneven && len(l.spans) > 0 {
		apart := slices.Max(w.low) - slices.Min(w.low)
		w.slight = float64(64*0x1p-52*apart) / float64(l.least*l.least*l.least)
	}
}

// Load lays weights on the beam, one for each load of the layout.
func (w *Work) Load(weights []float64) {
	copy(w.Weights, weights)
	w.LoadWeights()
}

// LoadWeights lays on the beam what stands in Weights.
func (w *Work) LoadWeights() {
	l := w.layout
	w.rover = rover{}
	w.total = 0
	clear(w.point)
	for _, p := range l.onLine {
		w.point[p.line] += w.Weights[p.load]
		w.total += w.Weights[p.load]
	}
	for side := range l.tips {
		var sum tip
		for _, t := range l.tips[side] {
			v := w.Weights[t.load]
			sum.weight += float64(v * t.weight)
			sum.moment += float64(v * t.moment)
		}
		w.tips[side] = sum
		w.total += sum.weight
	}
	if len(l.covers) > 0 {
		clear(w.begin)
		clear(w.gain)
		for _, c := range l.covers {
			v := w.Weights[c.load]
			w.begin[c.from] += float64(v * c.begin)
			w.begin[c.to] -= float64(v * c.end)
			w.gain[c.from] += float64(v * c.gain)
			w.gain[c.to] -= float64(v * c.gain)
		}
	}
	var q, g float64
	for j, length := range l.spans {
		var s simple
		if len(l.covers) > 0 {
			q += w.begin[j]
			if g += w.gain[j]; g == 0 {
				half := float64(q * length / 2)
				s.left, s.right = half, half
				s.atLeft = float64(half * length * length / 2)
				s.atRight = s.atLeft
				w.begin[j], w.gain[j] = q, 0
			} else {
				next := q + float64(g*length)
				s = simpleCover(length, q, next)
				w.begin[j], w.gain[j] = q, g
				q = next
			}
		}
		parts := l.parts[l.first[j]:l.first[j+1]]
		for k := range parts {
			p := &parts[k]
			v := w.Weights[p.load]
			s.left += float64(v * p.left)
			s.right += float64(v * p.right)
			s.atLeft += float64(v * p.atLeft)
			s.atRight += float64(v * p.atRight)
		}
		w.spans[j] = s
		w.total += s.left + s.right
	}
}
