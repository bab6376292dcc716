package beam

import (
	"slices"

	"example.com/steelyard/internal/slab"
)

// Work gives scratch for computing on the layout, with no load yet.
func (l *Layout) Work() *Work {
	n := len(l.x)
	room := make([]float64, 15*n+l.loads)
	simples := make([]simple, 3*n)
	w := &Work{
		layout:   l,
		Reaction: slab.Take(&room, n), Deflection: slab.Take(&room, n),
		borne: borne{point: slab.Take(&room, n), begin: slab.Take(&room, n), gain: slab.Take(&room, n), spans: simples[:n:n]},
		low:   slab.Take(&room, n), moment: slab.Take(&room, n), level: slab.Take(&room, n),
		current: slab.Take(&room, n), terms: slab.Take(&room, n), apart: slab.Take(&room, n), beyond: slab.Take(&room, n),
		Weights: slab.Take(&room, l.loads),
		held:    simples[n : 2*n : 2*n], upTo: simples[2*n:],
		some:    make([]int, 0, n),
		seen:    make([]uint64, 0, n),
		factors: l.newFactors(&room),
	}
	if len(l.moving.covers) > 0 {
		w.steps = make([]step, n)
	}
	copy(w.Weights, l.still)
	copy(w.begin, l.base.begin)
	copy(w.gain, l.base.gain)
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

	// Weights are those of the loads: see LoadWeights. Those that the Beam says are still stand there from the first, and must
	// not be changed.
	Weights []float64

	low     []float64 // as in Beam
	uneven  bool      // one of them is not 0
	slight  float64   // the pull that their rounding alone can bring about
	mislaid bool      // they may not be the layout's

	total float64 // weight of all that is laid on
	borne
	steps []step // of the covers that are not still, nought but while they are laid on; nil: there are none
	rover rover

	tight  []int     // the lines taken as tight, increasing: all of the layout's, or some
	length []float64 // from each tight line to the next: the layout's spans, or apart
	some   []int
	apart  []float64
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
	w.tips = l.base.tips
	copy(w.point, l.base.point)
	copy(w.spans, l.base.spans)
	l.moving.step(w.steps, w.Weights)
	w.spread(&l.moving, w.steps, l.spans, &l.base)
	w.add(&l.moving, w.Weights)
	total := 0.0
	for _, v := range w.Weights {
		total += v
	}
	w.total = total
}
