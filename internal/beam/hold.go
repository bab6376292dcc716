package beam

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
	if n == 0 {
		return
	}
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
	if w.layout.give == nil {
		w.rigid()
	} else {
		w.sprung()
	}
	for j := range last {
		turn := (w.moment[j+1] - w.moment[j]) / w.length[j]
		w.held[j].left += turn
		w.held[j].right -= turn
	}
	w.Reaction[w.tight[0]] = w.over[0].weight + w.point[w.tight[0]] + w.held[0].left
	for j := 1; j < last; j++ {
		i := w.tight[j]
		w.Reaction[i] = w.held[j-1].right + w.point[i] + w.held[j].left
	}
	w.Reaction[w.tight[last]] = w.held[last-1].right + w.point[w.tight[last]] + w.over[1].weight
	if w.layout.give != nil {
		w.ends()
	}
}

// grip takes the lines of the set as tight, and makes one span of all that lie between two of them.
func (w *Work) grip(set uint64) {
	l := w.layout
	w.tight = w.tight[:0]
	for i := range l.x {
		w.Reaction[i] = 0
		if set&(1<<i) != 0 {
			w.tight = append(w.tight, i)
		}
	}
	n := len(w.tight)
	if n == 0 {
		return
	}
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

// rigid fills in the moments over lines that do not give. The equations' right-hand sides gather in moment
// and are then replaced by the unknowns.
func (w *Work) rigid() {
	last := len(w.tight) - 1
	length, moment := w.length, w.moment
	for j, i := range w.tight {
		w.level[j] = w.low[i]
	}
	for j := 1; j < last; j++ {
		moment[j] = 0 - (w.held[j-1].atRight + w.held[j].atLeft)
		if w.uneven {
			sinks := (w.level[j]-w.level[j-1])/length[j-1] + (w.level[j]-w.level[j+1])/length[j]
			moment[j] += 6 * sinks
		}
	}
	if last > 1 {
		moment[1] -= float64(length[0] * moment[0])
		moment[last-1] -= float64(length[last-1] * moment[last])
	}
	for j := 1; j < last; j++ {
		w.diag[j] = 2 * (length[j-1] + length[j])
		if j > 1 {
			f := length[j-1] / w.diag[j-1]
			w.diag[j] -= float64(f * length[j-1])
			moment[j] -= float64(f * moment[j-1])
		}
	}
	for j := last - 1; j > 0; j-- {
		if j+1 < last {
			moment[j] -= float64(length[j] * moment[j+1])
		}
		moment[j] /= w.diag[j]
	}
}
