package beam

import "slices"

// MaxLines is the greatest number of lines that a Layout takes: sets of lines
// are kept as the bits of one word.
const MaxLines = 64

// A Stretch is where a load lies. Where both ends are equal it is a point.
type Stretch struct{ From, To float64 }

// A Layout is a beam's geometry: where lines are made off and loads lie. It
// does not change.
type Layout struct {
	x     []float64 // stations, increasing, no two equal
	lines []int     // the station of each line
	loads []extent  // the stations of each load
}

type extent struct{ from, to int }

// NewLayout takes the places of the lines, increasing and no more than MaxLines
// of them, and the stretches of the loads, each From no greater than its To.
func NewLayout(lines []float64, loads []Stretch) *Layout {
	x := make([]float64, 0, len(lines)+2*len(loads))
	x = append(x, lines...)
	for _, l := range loads {
		x = append(x, l.From, l.To)
	}
	slices.Sort(x)
	x = slices.Compact(x)
	l := &Layout{x: x, lines: make([]int, len(lines)), loads: make([]extent, len(loads))}
	at := func(p float64) int { i, _ := slices.BinarySearch(x, p); return i }
	for i, p := range lines {
		l.lines[i] = at(p)
	}
	for i, s := range loads {
		l.loads[i] = extent{at(s.From), at(s.To)}
	}
	return l
}

// Work gives scratch for computing on the layout, with no load yet.
func (l *Layout) Work() *Work {
	n, m := len(l.lines), len(l.x)
	slab := make([]float64, 2*m+10*n)
	take := func(k int) []float64 {
		s := slab[:k:k]
		slab = slab[k:]
		return s
	}
	w := &Work{
		layout: l,
		point:  take(m), spread: take(m),
		Reaction: take(n), Deflection: take(n),
		moment: take(n), diag: take(n),
		leftEnd: take(n), rightEnd: take(n), atLeft: take(n), atRight: take(n),
		current: take(n), terms: take(n),
	}
	w.tight = make([]int, 0, n)
	w.seen = make([]uint64, 0, n)
	return w
}

// Work is the scratch in which one goroutine computes, and holds what came out.
type Work struct {
	layout *Layout

	point  []float64 // weight at each station
	spread []float64 // weight per length from each station to the next
	total  float64   // weight of everything

	// Reaction is the pull of each line, Deflection how far EI times the beam
	// stands below each line's end (negative: above it). They belong to the last
	// call of Hold or Hang.
	Reaction, Deflection []float64

	tight  []int     // the lines taken as tight, increasing
	moment []float64 // bending moment over each tight line
	diag   []float64 // the diagonal of the three-moment equations while they are solved

	// For the span from each tight line to the next: the pull that it asks of the
	// lines at its two ends, and its load's terms in their three-moment equations.
	leftEnd, rightEnd, atLeft, atRight []float64

	current []float64 // the pulls from which Hang takes its next step
	terms   []float64 // the sizes of the terms that each Deflection is the sum of
	seen    []uint64  // the sets of tight lines that Hang has settled on
}

// Load lays weights on the beam, one for each load of the layout.
func (w *Work) Load(weights []float64) {
	clear(w.point)
	clear(w.spread)
	w.total = 0
	x := w.layout.x
	for i, e := range w.layout.loads {
		w.total += weights[i]
		if e.from == e.to {
			w.point[e.from] += weights[i]
			continue
		}
		// Adding a load to every piece that it covers, rather than its edges to a
		// running sum, leaves no remainder of a heavy short load behind its end.
		q := weights[i] / (x[e.to] - x[e.from])
		for k := e.from; k < e.to; k++ {
			w.spread[k] += q
		}
	}
}
