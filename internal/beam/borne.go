package beam

// acts is what some of the loads do to lines, spans and tips, for a unit of the weight of each.
type acts struct {
	onLine   []onLine
	parts    []part
	tips     [2][]tip
	covers   []cover
	from, to int32 // the spans on which covers lie, the last not with them
}

type onLine struct{ load, line int32 }

type part struct {
	load, span int32
	simple
}

// tip is the weight that a load has beyond an outermost line, and its moment about that line.
type tip struct {
	load           int32
	weight, moment float64
}

// cover is a load on all spans of a range, with its weight per length where it begins and
// ends, and what that gains per length.
type cover struct {
	load, from, to   int32
	begin, end, gain float64
}

// borne is what loads come to with their weights.
type borne struct {
	point       []float64 // weight on each line
	spans       []simple  // of each span between neighbouring lines
	begin, gain []float64 // of each span, the covers' weight per length at its left end, and what that gains per length
	tips        [2]tip
}

// add lays on what loads do, but for their covers.
func (b *borne) add(a *acts, weights []float64) {
	for _, p := range a.onLine {
		b.point[p.line] += weights[p.load]
	}
	for side := range a.tips {
		sum := &b.tips[side]
		for _, t := range a.tips[side] {
			sum.add(weights[t.load], t)
		}
	}
	parts, spans := a.parts, b.spans
	for k := range parts {
		p := &parts[k]
		spans[p.span].add(weights[p.load], p.simple)
	}
}

// add lays on so much of a load.
func (t *tip) add(v float64, of tip) {
	t.weight += float64(v * of.weight)
	t.moment += float64(v * of.moment)
}

// step is by how much covers step at the left end of a span: their weight per length, and what that gains.
type step struct{ weight, gain float64 }

// cover notes one more.
func (a *acts) cover(c cover) {
	if len(a.covers) == 0 {
		a.from = c.from
	}
	a.from, a.to = min(a.from, c.from), max(a.to, c.to)
	a.covers = append(a.covers, c)
}

// step notes where covers begin and end.
func (a *acts) step(steps []step, weights []float64) {
	for _, c := range a.covers {
		v := weights[c.load]
		steps[c.from].weight += float64(v * c.begin)
		steps[c.to].weight -= float64(v * c.end)
		steps[c.from].gain += float64(v * c.gain)
		steps[c.to].gain -= float64(v * c.gain)
	}
}

// spread sums up the steps of some covers, which are then nought again but for the last, that nobody reads, and lays what they
// come to on the spans; beside them lie the covers of another.
func (b *borne) spread(a *acts, steps []step, lengths []float64, beside *borne) {
	var q, g float64
	spans, begin, gain := b.spans, b.begin, b.gain
	for j := a.from; j < a.to; j++ {
		s, length := &spans[j], lengths[j]
		q += steps[j].weight
		g += steps[j].gain
		steps[j] = step{}
		begin[j], gain[j] = beside.begin[j]+q, beside.gain[j]+g
		if g == 0 {
			half := float64(q * length / 2)
			at := float64(half * length * length / 2)
			s.add(1, simple{half, half, at, at})
			continue
		}
		next := q + float64(g*length)
		s.add(1, simpleCover(length, q, next))
		q = next
	}
}
