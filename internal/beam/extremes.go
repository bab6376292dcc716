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
	x, tight := w.layout.x, w.tight
	moment, held := w.moment[:len(tight)], w.held[:len(tight)-1]
	sag.At, hog.At, shear.At = w.layout.start, w.layout.start, w.layout.start
	var sagBeaten, hogBeaten, shearBeaten float64 // what the next must be more than, by size
	before := w.over[0].weight
	for j, i := range tight {
		if m := moment[j]; m < hogBeaten {
			hog, hogBeaten = Peak{m, x[i]}, float64(m*(1+tie))
		}
		if size := math.Abs(before); size > shearBeaten {
			shear, shearBeaten = Peak{0 - before, x[i]}, float64(size*(1+tie))
		}
		after := w.over[1].weight
		if j < len(held) {
			after, before = held[j].left, held[j].right
		}
		if size := math.Abs(after); size > shearBeaten {
			shear, shearBeaten = Peak{after, x[i]}, float64(size*(1+tie))
		}
	}
	length := w.length[:len(held)]
	for j := range held {
		s, m, n, from, to := &held[j], moment[j], moment[j+1], tight[j], tight[j+1]
		if s.crestAtMost(sagBeaten, length[j], m, n, w.evenOn(from, to)) {
			continue
		}
		if m, at := w.crest(from, to, m, s.left); m > sagBeaten {
			sag, sagBeaten = Peak{m, at}, float64(m*(1+tie))
		}
	}
	return sag, hog, shear
}

// evenOn is a weight per length that lies all along from one tight line to the next: that of the covers. Where loads lean, or a
// slack line is between, none is known.
func (w *Work) evenOn(from, to int) float64 {
	if !w.layout.even || to > from+1 {
		return 0
	}
	return w.begin[from]
}

// crestAtMost reports that the moment is nowhere more than most in a span that has the moments m and n at its ends and a
// weight per length of q or more all along. Without q the curve bends one way, so it lies above the two straight lines from its
// ends to its crest, and the area below it, which is L·(m + n)/2 and a sixth of the span's own two terms, is no less than
// theirs; q takes qL³/12 from the area and gives qL²/8 to the crest, if that is in the middle.
func (s *simple) crestAtMost(most, length, m, n, q float64) bool {
	if m < n {
		m = n
	}
	return s.atLeft+s.atRight <= float64(length*(float64(3*(most-m))+float64(q*length*length/8)))
}

// crest is the largest moment in the span from one tight line to the next, from the moment and shear beside the first on.
func (w *Work) crest(from, to int, m, v float64) (moment, place float64) {
	l := w.layout
	if v <= 0 {
		return m, l.x[from]
	}
	even := l.even && w.rover.weight == 0
	for i := from; i < to; i++ {
		s := &w.spans[i]
		if v <= s.left+s.right {
			var top, at float64
			if even {
				top, at = w.crestEven(i+1, m, v)
			} else {
				top, at = w.crestIn(i+1, m, v)
			}
			if at >= 0 {
				return top, l.x[i] + at
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

// crestEven is crestIn where no load leans and no point roves, which is the usual case.
func (w *Work) crestEven(field int, m, v float64) (moment, place float64) {
	l := w.layout
	var q, rest float64
	if l.covered {
		q = w.begin[field-1]
	}
	marks, weights := l.marks, w.Weights
	for i, end := l.field[field], l.field[field+1]; i < end; i++ {
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
	if most := v / (q + rest); most < s {
		s = most
	}
	return m + float64(s*v/2), place + s
}
