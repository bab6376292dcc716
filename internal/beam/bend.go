package beam

import "math"

// Bend gives the lowest and the highest place of the beam for the last Hold or Hang: EI times how far it
// stands below level there, negative above. Of several alike the first from the left is given.
// Level is where the ends of lines that neither give nor hang low are. A beam on one tight line
// is balanced on it and may lean any way: it is taken as level over that line.
//
// Each span is walked from mark to mark. On a piece under the load q + g·u with the level y, the slope θ (these
// two times EI), the moment M and the shear V at its left end,
//
//	y(u) = y + θu − Mu²/2 − Vu³/6 + qu⁴/24 + gu⁵/120
//
// and its extremes are where the slope is zero. Loads act downwards, so the shear only falls: it is zero once at
// most, between which the moment goes one way, and between whose zeros the slope does.
func (w *Work) Bend() (low, high Peak) {
	b := bending{w: w}
	b.walk()
	return b.low, b.high
}

// Level is EI times how far the beam stands below level at a place on it, as in Bend.
func (w *Work) Level(place float64) float64 {
	b := bending{w: w, asked: true, place: place}
	b.walk()
	return b.level
}

// walk goes along the whole beam.
func (b *bending) walk() {
	w, l := b.w, b.w.layout
	last := len(w.tight) - 1
	if last < 0 {
		return // without a line
	}
	first, end := w.tight[0], w.tight[last]
	var left, right float64 // slopes over the outermost tight lines
	if last > 0 {
		left, _ = w.slope(0)
		right, _ = w.slopeAtEnd(last - 1)
	}
	// Beyond the first line the walk begins at the free end. How the beam leaves the line it tells by
	// arriving there.
	tip := b.along(0, first, bent{}, false)
	theta := left - tip.theta
	b.along(0, first, bent{theta: theta, y: w.level[0] - tip.y - float64(theta*(l.x[first]-l.start))}, true)
	for j := range last {
		theta, _ := w.slope(j)
		b.along(w.tight[j]+1, w.tight[j+1], bent{y: w.level[j], theta: theta, m: w.moment[j], v: w.held[j].left}, true)
	}
	b.along(end+1, len(l.x), bent{y: w.level[last], theta: right, m: w.moment[last], v: w.over[1].weight}, true)
}

// bending is what one call of Bend or Level computes in.
type bending struct {
	w         *Work
	asked     bool // for the level at a place, and for no extremes
	place     float64
	level     float64
	noted     bool
	low, high Peak
}

func (b *bending) note(y, at float64) {
	if !b.noted {
		b.noted, b.low, b.high = true, Peak{y, at}, Peak{y, at}
	}
	if y > b.low.Value+float64(tie*math.Abs(b.low.Value)) {
		b.low = Peak{y, at}
	}
	if y < b.high.Value-float64(tie*math.Abs(b.high.Value)) {
		b.high = Peak{y, at}
	}
}

// along goes through fields, from the left end of one to the right end of another, across slack lines with
// what lies on them, and gives the state where it ends. It notes extremes if it is to.
func (b *bending) along(from, to int, s bent, note bool) bent {
	w, l := b.w, b.w.layout
	for k := from; k <= to; k++ {
		if k > from {
			s.v -= w.point[k-1]
		}
		p := w.walk(k)
		origin := l.left(k)
		length := l.right(k) - origin
		if note {
			b.note(s.y, origin)
		}
		for {
			place := length
			if p.more() {
				place = min(place, p.ahead())
			}
			if u := place - p.place; u > 0 {
				s.q, s.g = p.load(), p.gains()
				end := s.at(u)
				if from := origin + p.place; note && b.asked {
					if b.place >= from && b.place <= from+u {
						b.level = s.at(b.place - from).y
					}
				} else if note {
					at, count := s.flat(end, u)
					for _, u := range at[:count] {
						b.note(s.at(u).y, origin+p.place+u)
					}
				}
				s = end
				p.step(place)
				if note {
					b.note(s.y, origin+place)
				}
			}
			if !p.more() {
				break
			}
			s.v -= p.take()
		}
	}
	return s
}

// bent is the state of a beam at a place: level and slope times EI, moment, shear, and the load
// per length from there on with its gain.
type bent struct{ y, theta, m, v, q, g float64 }

// at is the state a length u further on.
func (s bent) at(u float64) bent {
	y := s.theta - float64(u*(s.m/2+float64(u*(s.v/6-float64(u*(s.q/24+float64(u*s.g/120)))))))
	return bent{
		y:     s.y + float64(u*y),
		theta: s.theta - float64(u*(s.m+float64(u*(s.v/2-float64(u*(s.q/6+float64(u*s.g/24))))))),
		m:     s.m + float64(u*(s.v-float64(u*(s.q/2+float64(u*s.g/6))))),
		v:     s.v - float64(u*(s.q+float64(u*s.g/2))),
		q:     s.q + float64(s.g*u), g: s.g,
	}
}

// flat gives where within a length, at the end of which the state is as given, the slope passes zero,
// increasing, and in how many places.
func (s bent) flat(end bent, length float64) (at [3]float64, count int) {
	cuts, n := [4]float64{}, 1 // between them the slope goes one way
	if middle := length; s.v > 0 && end.v < 0 {
		middle = s.zero(shear, 0, length)
		top := s.at(middle).m
		if (s.m < 0) != (top < 0) {
			cuts[n] = s.zero(moment, 0, middle)
			n++
		}
		if (top < 0) != (end.m < 0) {
			cuts[n] = s.zero(moment, middle, length)
			n++
		}
	} else if (s.m < 0) != (end.m < 0) {
		cuts[n] = s.zero(moment, 0, length)
		n++
	}
	cuts[n] = length
	theta := s.theta
	for i := range n {
		next := end.theta
		if i+1 < n {
			next = s.at(cuts[i+1]).theta
		}
		if (theta < 0) != (next < 0) {
			at[count] = s.zero(slope, cuts[i], cuts[i+1])
			count++
		}
		theta = next
	}
	return at, count
}

// quantity is one of those that are integrals of each other.
type quantity int

const (
	shear quantity = iota
	moment
	slope
)

// of gives a quantity and its rate.
func (q quantity) of(s bent) (value, rate float64) {
	switch q {
	case shear:
		return s.v, -s.q
	case moment:
		return s.m, s.v
	}
	return s.theta, -s.m
}

// zero is where a quantity that goes one way changes its sign between two places: by Newton's steps, and by
// halves where they would lead out.
func (s bent) zero(q quantity, from, to float64) float64 {
	first, _ := q.of(s.at(from))
	low, high := from, to
	u := from + float64((to-from)/2)
	for range 100 {
		value, rate := q.of(s.at(u))
		if (value < 0) == (first < 0) {
			low = u
		} else {
			high = u
		}
		next := u - value/rate
		if !(next > low && next < high) { // or not a number
			next = low + float64((high-low)/2)
		}
		if math.Abs(next-u) <= 1e-14*(to-from) {
			return next
		}
		u = next
	}
	return u
}
