package beam

// acts is what some of the loads do to lines, spans and tips, for a unit of the weight of each.
type acts struct {
	onLine []onLine
	parts  []part
	tips   [2][]tip
	covers []cover
}

type onLine struct{ load, line int }

type part struct {
	load, span int
	simple
}

// tip is the weight that a load has beyond an outermost line, and its moment about that line.
type tip struct {
	load           int
	weight, moment float64
}

// cover is a load on all spans of a range, with its weight per length where it begins and
// ends, and what that gains per length.
type cover struct {
	load, from, to   int
	begin, end, gain float64
}

// borne is what loads come to with their weights.
type borne struct {
	total       float64
	point       []float64 // weight on each line
	spans       []simple  // of each span between neighbouring lines
	begin, gain []float64 // of each span, the covers' weight per length at its left end, and what that gains
	tips        [2]tip
}

// add lays on what loads do, but for their covers. The weight on the spans is not in the total yet.
func (b *borne) add(a *acts, weights []float64) {
	for _, p := range a.onLine {
		b.point[p.line] += weights[p.load]
		b.total += weights[p.load]
	}
	for side := range a.tips {
		sum := &b.tips[side]
		for _, t := range a.tips[side] {
			v := weights[t.load]
			sum.weight += float64(v * t.weight)
			sum.moment += float64(v * t.moment)
			b.total += float64(v * t.weight)
		}
	}
	for k := range a.parts {
		p := &a.parts[k]
		v, s := weights[p.load], &b.spans[p.span]
		s.left += float64(v * p.left)
		s.right += float64(v * p.right)
		s.atLeft += float64(v * p.atLeft)
		s.atRight += float64(v * p.atRight)
	}
}

// cover notes where covers begin and end: after it begin and gain hold by how much they step at each span.
func (b *borne) cover(a *acts, weights []float64) {
	for _, c := range a.covers {
		v := weights[c.load]
		b.begin[c.from] += float64(v * c.begin)
		b.begin[c.to] -= float64(v * c.end)
		b.gain[c.from] += float64(v * c.gain)
		b.gain[c.to] -= float64(v * c.gain)
	}
}

// spread sums up the steps of all covers, and lays them on the spans.
func (b *borne) spread(lengths []float64) {
	var q, g float64
	for j, length := range lengths {
		s := &b.spans[j]
		q += b.begin[j]
		if g += b.gain[j]; g == 0 {
			half := float64(q * length / 2)
			at := float64(half * length * length / 2)
			s.left += half
			s.right += half
			s.atLeft += at
			s.atRight += at
			b.begin[j], b.gain[j] = q, 0
			continue
		}
		next := q + float64(g*length)
		does := simpleCover(length, q, next)
		s.left += does.left
		s.right += does.right
		s.atLeft += does.atLeft
		s.atRight += does.atRight
		b.begin[j], b.gain[j] = q, g
		q = next
	}
}
