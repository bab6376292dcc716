package beam

// Cut is what a cut through the beam bares, for the last Hold or Hang: the shear just before a place and just after it, which
// differ where a line pulls or a point hangs, and the bending moment there. It adds up what lies to the left: lines up,
// loads down, and the moment grows by the shear over every step.
func (w *Work) Cut(place float64) (before, after, moment float64) {
	l := w.layout
	v, m := 0.0, 0.0
	for field := range len(l.x) + 1 {
		left, right := l.left(field), l.right(field)
		to := min(place, right) - left
		p := w.walk(field)
		on := func(next float64) {
			if s := next - p.place; s > 0 {
				fall := p.fall(s)
				m += p.rise(v, s)
				v -= fall
				p.step(next)
			}
		}
		for p.more() && p.ahead() < to {
			on(p.ahead())
			v -= p.take()
		}
		on(to)
		before = v
		for p.more() && p.ahead() <= to {
			v -= p.take()
		}
		if field < len(l.x) && place >= right {
			v += w.Reaction[field] - w.point[field]
		}
		if place <= right {
			return before, v, m
		}
	}
	return v, v, m
}
