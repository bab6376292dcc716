package beam

import "math"

// Deflect fills Deflection with EI times how far the beam stands below the end of each line that the
// last Hold left out. It needs two tight lines or more.
//
// From a tight line the beam is walked in one step to the slack one. With the slope θ (times EI) there,
// the moment M, the shear V, and the load of the length s between the two as that of a simple span:
//
//	M′ = M + s·(V − left)   Y′ = Y + s·[θ − (s·(2M + M′) + atLeft)/6]
func (w *Work) Deflect() {
	clear(w.Deflection)
	clear(w.terms)
	last := len(w.tight) - 1
	if last < 1 || last+1 == len(w.layout.x) {
		return
	}
	x := w.layout.x
	for j := range last {
		from, to := w.tight[j], w.tight[j+1]
		if to == from+1 {
			continue
		}
		slope, steep := w.slope(j)
		for i := from + 1; i < to; i++ {
			s := x[i] - x[from]
			byShear := float64(s * (w.held[j].left - w.upTo[i].left))
			w.note(i, j, s, slope, steep, w.moment[j]+byShear, w.upTo[i].atLeft)
		}
	}
	if first := w.tight[0]; first > 0 {
		slope, steep := w.slope(0)
		s := w.spans[first-1]
		for i := first - 1; i >= 0; i-- {
			w.note(i, 0, x[first]-x[i], -slope, steep, 0-w.beyond[i], s.atRight)
			if i > 0 {
				s = join(w.layout.spans[i-1], w.spans[i-1], w.point[i], x[first]-x[i], s)
			}
		}
	}
	if end := w.tight[last]; end < len(x)-1 {
		slope, steep := w.slopeAtEnd(last - 1)
		s := w.spans[end]
		for i := end + 1; i < len(x); i++ {
			w.note(i, last, x[i]-x[end], slope, steep, 0-w.beyond[i], s.atLeft)
			if i+1 < len(x) {
				s = join(x[i]-x[end], s, w.point[i], w.layout.spans[i], w.spans[i])
			}
		}
	}
}

// note fills in the deflection at line i, a length s from tight line j, with the slope at the latter seen
// towards line i, the moment over line i, and the term of the load between the two at line j.
func (w *Work) note(i, j int, s, slope, steep, moment, term float64) {
	near := w.moment[j]
	bends := (float64(s*(2*near+moment)) + term) / 6
	w.Deflection[i] = w.level[j] + float64(s*(slope-bends)) - w.low[i]
	sizes := steep + (float64(s*(2*math.Abs(near)+math.Abs(moment)))+term)/6
	w.terms[i] = math.Abs(w.level[j]) + float64(s*sizes) + math.Abs(w.low[i])
}

// slope is EI times the slope at the left end of the span from tight line j to the next, positive
// where the beam goes down to the right, and the sum of the sizes of its terms.
func (w *Work) slope(j int) (slope, size float64) {
	length := w.length[j]
	m, n, term := w.moment[j], w.moment[j+1], w.held[j].atLeft
	chord := (w.level[j+1] - w.level[j]) / length
	slope = chord + (float64(length*(2*m+n))+term)/6
	size = math.Abs(chord) + (float64(length*(2*math.Abs(m)+math.Abs(n)))+term)/6
	return slope, size
}

// slopeAtEnd is the same at the right end.
func (w *Work) slopeAtEnd(j int) (slope, size float64) {
	length := w.length[j]
	m, n, term := w.moment[j], w.moment[j+1], w.held[j].atRight
	chord := (w.level[j+1] - w.level[j]) / length
	slope = chord - (float64(length*(m+2*n))+term)/6
	size = math.Abs(chord) + (float64(length*(math.Abs(m)+2*math.Abs(n)))+term)/6
	return slope, size
}
