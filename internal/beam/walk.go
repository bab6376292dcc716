package beam

import "math"

// Peak is an extreme of moment, shear or deflection and where it stands.
type Peak struct{ Value, At float64 }

// walk goes along a field from mark to mark, with the weight per length q, what that gains per
// length, and remainders of both that float64 has no room for: where a heavy short load has
// ended, nothing of it may be left.
type walk struct {
	w        *Work
	place    float64 // from the left end of the field
	q, gain  float64
	rest     float64
	gainRest float64
	next     int
	end      int
	rover    bool // still to come
}

func (w *Work) walk(field int) walk {
	p := walk{
		w: w, next: w.layout.field[field], end: w.layout.field[field+1],
		rover: w.rover.weight > 0 && w.rover.field == field,
	}
	if field > 0 && field < len(w.layout.x) && w.layout.covered {
		p.q, p.gain = w.begin[field-1], w.gain[field-1]
	}
	return p
}

// load is the weight per length where the walk stands, and gains what it gains per length.
func (p *walk) load() float64  { return p.q + p.rest }
func (p *walk) gains() float64 { return p.gain + p.gainRest }

// more reports whether there is another mark, and ahead is its place.
func (p *walk) more() bool { return p.next < p.end || p.rover }

func (p *walk) ahead() float64 {
	if p.roverNext() {
		return p.w.rover.place
	}
	return p.w.layout.marks[p.next].place
}

func (p *walk) roverNext() bool {
	return p.rover && (p.next == p.end || p.w.rover.place <= p.w.layout.marks[p.next].place)
}

// step goes on to the place of the next mark.
func (p *walk) step(place float64) {
	p.add(float64(p.gains() * (place - p.place)))
	p.place = place
}

// take takes the next mark in, and gives the weight of the point that stands there.
func (p *walk) take() (point float64) {
	if p.roverNext() {
		p.rover = false
		return p.w.rover.weight
	}
	m := &p.w.layout.marks[p.next]
	p.next++
	v := p.w.Weights[m.load]
	if m.point == 0 {
		p.add(float64(v * m.step))
		p.gain, p.gainRest = twoSum(p.gain, p.gainRest, float64(v*m.gain))
	}
	return float64(v * m.point)
}

func (p *walk) add(v float64) { p.q, p.rest = twoSum(p.q, p.rest, v) }

// twoSum adds v to a sum of two parts, the second of which is what the first had no room for (Knuth).
func twoSum(sum, rest, v float64) (float64, float64) {
	both := sum + v
	back := both - sum
	return both, rest + (sum - (both - back)) + (v - back)
}

// fall is the weight on a length s from where the walk stands.
func (p *walk) fall(s float64) float64 {
	return float64(s * (p.load() + float64(p.gains()*s/2)))
}

// rise is what the moment gains on it, from a shear v on.
func (p *walk) rise(v, s float64) float64 {
	return float64(s * (v - float64(s*(p.load()/2+float64(p.gains()*s/6)))))
}

// until is the length on which the weight comes to v, which is no more than there is to come.
func (p *walk) until(v float64) float64 {
	q, g := p.load(), p.gains()
	return 2 * v / (q + math.Sqrt(max(0, float64(q*q)+float64(2*g*v))))
}
