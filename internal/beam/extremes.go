package beam

import "math"

// tie is the relative difference below which two extremes are one and the same
// that rounding has told apart; the first from the left is then reported.
const tie = 1e-12

// Extremes gives, for the last Hold or Hang, the largest sagging moment, the
// largest hogging moment (zero or negative), and the largest shear by size. Loads
// act downwards, so the moment curve bends one way between lines: hogging is largest over a
// line, sagging within a span where the shear passes zero, shear beside a line.
// Where there is no sagging or hogging at all it is 0 at the left end.
func (w *Work) Extremes() (sag, hog, shear Peak) {
	x := w.layout.x
	start := largest{Peak: Peak{0, w.layout.start}}
	down, up, across := start, start, start
	last := len(w.tight) - 1
	before := w.over[0].weight
	for j, i := range w.tight {
		place := x[i]
		if m := w.moment[j]; m < 0 {
			up.note(m, place)
		}
		across.note(0-before, place)
		if j == last {
			across.note(w.over[1].weight, place)
			break
		}
		s := &w.held[j]
		across.note(s.left, place)
		before = s.right
		if w.crestAtMost(j) <= down.Value {
			continue
		}
		if m, at := w.crest(j); m > 0 {
			down.note(m, at)
		}
	}
	return down.Peak, up.Peak, across.Peak
}

// largest is the largest yet by size, and what the next must be more than.
type largest struct {
	Peak
	beaten float64
}

func (l *largest) note(v, at float64) {
	if size := math.Abs(v); size > l.beaten {
		l.Peak, l.beaten = Peak{v, at}, float64(size*(1+tie))
	}
}

// crestAtMost is the moment where the tangents at the two ends of a span meet; the curve
// lies below both.
func (w *Work) crestAtMost(j int) float64 {
	m, n := w.moment[j], w.moment[j+1]
	left, right := w.held[j].left, w.held[j].right
	if left <= 0 || right <= 0 {
		return max(m, n)
	}
	s := (n - m + float64(right*w.length[j])) / (left + right)
	return m + float64(left*s)
}

// crest is the largest moment in the span from tight line j to the next.
func (w *Work) crest(j int) (moment, place float64) {
	l := w.layout
	m, v := w.moment[j], w.held[j].left
	from, to := w.tight[j], w.tight[j+1]
	if v <= 0 {
		return m, l.x[from]
	}
	for i := from; i < to; i++ {
		s := &w.spans[i]
		if v <= s.left+s.right {
			if m, at := w.crestIn(i+1, m, v); at >= 0 {
				return m, l.x[i] + at
			}
		}
		m += float64(l.spans[i] * (v - s.left))
		v -= s.left + s.right + w.point[i+1]
		if v <= 0 {
			return m, l.x[i+1]
		}
	}
	return m, l.x[to]
}

// crestIn is the largest moment within a field, from the moment and shear at its left
// end on, and its place from there. Where the shear does not pass zero the place is −1.
func (w *Work) crestIn(field int, m, v float64) (moment, place float64) {
	if w.layout.even && w.rover.weight == 0 {
		return w.crestEven(field, m, v)
	}
	l := w.layout
	p := w.walk(field)
	length := l.right(field) - l.left(field)
	for {
		to := length
		if p.more() {
			to = min(to, p.ahead())
		}
		if s := to - p.place; s > 0 {
			fall := p.fall(s)
			if fall >= v {
				s = min(s, p.until(v))
				return m + p.rise(v, s), p.place + s
			}
			m += p.rise(v, s)
			v -= fall
			p.step(to)
		}
		if !p.more() {
			return m, -1
		}
		if v -= p.take(); v <= 0 {
			return m, p.place
		}
	}
}

// crestEven is crestIn where no load leans, which is the usual case and half of the time that a
// question takes.
func (w *Work) crestEven(field int, m, v float64) (moment, place float64) {
	l := w.layout
	var q, rest float64
	if l.covered {
		q = w.begin[field-1]
	}
	marks, weights := l.marks[l.field[field]:l.field[field+1]], w.Weights
	for i := range marks {
		k := &marks[i]
		s := k.place - place
		fall := float64((q + rest) * s)
		if fall >= v {
			break
		}
		m += float64(s * (v - fall/2))
		v -= fall
		place = k.place
		weight := weights[k.load]
		if k.step == 0 {
			if v -= weight; v <= 0 {
				return m, place
			}
			continue
		}
		q, rest = twoSum(q, rest, float64(weight*k.step))
	}
	length := l.spans[field-1]
	s := length - place
	if fall := float64((q + rest) * s); fall < v {
		return m, -1
	}
	s = min(s, v/(q+rest))
	return m + float64(s*v/2), place + s
}
