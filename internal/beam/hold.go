package beam

import "example.com/steelyard/internal/slab"

// All is the set of the first n lines.
func All(n int) uint64 { return 1<<n - 1 }

// Hold solves the continuous beam on the lines of the set, as supports that pull
// and push, with the rest taken away. The set holds two lines or more, or one
// that the whole beam balances on.
//
// Three-moment equation for the spans a and b on the two sides of a support, whose own place and its
// neighbours' are Y0, Y1 and Y2 times EI below level (Clapeyron 1857, and Mohr 1860 for the
// settlement; any text on statically indeterminate beams):
//
//	La·M0 + 2(La+Lb)·M1 + Lb·M2 = −(6A·a/L)left − (6A·b/L)right + 6(Y1−Y0)/La + 6(Y1−Y2)/Lb
func (w *Work) Hold(set uint64) {
	w.grip(set)
	n := len(w.tight)
	last := n - 1
	w.moment[0] = 0 - w.over[0].moment
	w.moment[last] = 0 - w.over[1].moment
	if n == 1 {
		i := w.tight[0]
		r := w.over[0].weight + w.point[i] + w.over[1].weight
		w.Reaction[i] = r
		w.level[0] = w.low[i]
		if w.layout.give != nil {
			w.level[0] += float64(w.layout.give[i] * r)
		}
		return
	}
	f := &w.factors
	if n == len(w.layout.x) {
		f = &w.layout.factors
	} else {
		f.find(w.layout, w.tight, w.length)
	}
	if w.layout.give == nil {
		w.rigid(f)
	} else {
		w.sprung(f)
	}
	tight, pull := w.tight[:last], w.over[0].weight
	held, inverse, moment := w.held[:len(tight)], f.inverse[:len(tight)], w.moment[:len(tight)+1]
	reaction, point := w.Reaction, w.point
	for j, i := range tight {
		s := &held[j]
		turn := float64((moment[j+1] - moment[j]) * inverse[j])
		s.left += turn
		s.right -= turn
		reaction[i] = pull + (point[i] + s.left)
		pull = s.right
	}
	reaction[w.tight[last]] = pull + (point[w.tight[last]] + w.over[1].weight)
	if w.layout.give != nil {
		w.ends()
	}
}

// grip takes the lines of the set as tight, and makes one span of all that lie between two of them.
func (w *Work) grip(set uint64) {
	l := w.layout
	if set == All(len(l.x)) {
		w.tight, w.length, w.over = l.all, l.spans, w.tips
		copy(w.held, w.spans)
		return
	}
	w.tight, w.length = w.some[:0], w.apart
	for i := range l.x {
		w.Reaction[i] = 0
		if set&(1<<i) != 0 {
			w.tight = append(w.tight, i)
		}
	}
	n := len(w.tight)
	w.over = w.tips
	for i, first := 0, w.tight[0]; i < first; i++ {
		w.beyond[i] = w.over[0].moment
		w.over[0] = w.over[0].inward(w.point[i], w.spans[i].left, w.spans[i].right, l.spans[i])
	}
	for i, end := len(l.x)-1, w.tight[n-1]; i > end; i-- {
		w.beyond[i] = w.over[1].moment
		w.over[1] = w.over[1].inward(w.point[i], w.spans[i-1].right, w.spans[i-1].left, l.spans[i-1])
	}
	for j := range n - 1 {
		from, to := w.tight[j], w.tight[j+1]
		s := w.spans[from]
		for i := from + 1; i < to; i++ {
			w.upTo[i] = s
			s = join(l.x[i]-l.x[from], s, w.point[i], l.spans[i], w.spans[i])
		}
		w.held[j] = s
		w.length[j] = l.x[to] - l.x[from]
	}
}

// inward is the tip beyond the next line inward: the span between the two, whose
// nearer and farther end ask the given pulls, and what lies on the outer line are now in it.
func (t tip) inward(point, outer, inner, length float64) tip {
	beyond := t.weight + point + outer
	return tip{weight: beyond + inner, moment: t.moment + float64(beyond*length)}
}

// factors are what the equations of a set of tight lines come to before any load is known.
type factors struct {
	inverse []float64 // of each length from one tight line to the next

	// For lines that do not give, the triangles of the three-moment equations: the share of the row
	// before that is taken off each row, and the inverse of what then stands on its diagonal.
	share, pivot []float64

	links []link // for lines that give
}

func (l *Layout) newFactors(room *[]float64) factors {
	n := len(l.x)
	f := factors{inverse: slab.Take(room, n), share: slab.Take(room, n), pivot: slab.Take(room, n)}
	if l.give != nil {
		f.links = make([]link, n)
	}
	return f
}

func (f *factors) find(l *Layout, tight []int, length []float64) {
	last := len(tight) - 1
	for j := range last {
		f.inverse[j] = 1 / length[j]
	}
	if l.give != nil {
		f.link(l, tight, length)
		return
	}
	for j := 1; j < last; j++ {
		diagonal := 2 * (length[j-1] + length[j])
		if j > 1 {
			f.share[j] = float64(length[j-1] * f.pivot[j-1])
			diagonal -= float64(f.share[j] * length[j-1])
		}
		f.pivot[j] = 1 / diagonal
	}
}

// rigid fills in the moments over lines that do not give. The equations' right-hand sides gather in moment
// and are then replaced by the unknowns.
func (w *Work) rigid(f *factors) {
	last := len(w.tight) - 1
	length, moment, held, share, pivot := w.length[:last], w.moment[:last+1], w.held[:last], f.share[:last], f.pivot[:last]
	if len(w.tight) == len(w.low) {
		copy(w.level, w.low)
	} else {
		for j, i := range w.tight {
			w.level[j] = w.low[i]
		}
	}
	before := float64(length[0] * moment[0])
	for j := 1; j < len(held); j++ {
		r := 0 - (held[j-1].atRight + held[j].atLeft)
		if w.uneven {
			r += 6 * (float64((w.level[j]-w.level[j-1])*f.inverse[j-1]) + float64((w.level[j]-w.level[j+1])*f.inverse[j]))
		}
		if j > 1 {
			before = float64(share[j] * moment[j-1])
		}
		moment[j] = r - before
	}
	for j := last - 1; j > 0; j-- {
		moment[j] = float64((moment[j] - float64(length[j]*moment[j+1])) * pivot[j])
	}
}
