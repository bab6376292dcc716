package crosscheck

import (
	"math"
	"slices"
)

// What the pipe suffers, by cutting it: the sum of all forces and moments to the left of a
// place. It is slow and has no formula but statics.

// moment is the bending moment at x, sagging positive.
func (d hung) moment(tension []float64, x float64) (m float64) {
	for i, r := range d.ropes {
		m += tension[i] * max(0, x-r.at)
	}
	for _, l := range d.loads {
		if part := l.before(x); part.weight != 0 {
			m -= part.weight * (x - part.centre())
		}
	}
	return m
}

// shear is the shear at x, beside it on the right or the left.
func (d hung) shear(tension []float64, x float64, right bool) (v float64) {
	past := func(at float64) bool { return at < x || right && at == x }
	for i, r := range d.ropes {
		if past(r.at) {
			v += tension[i]
		}
	}
	for _, l := range d.loads {
		if l.from < l.to || past(l.from) {
			v -= l.before(x).weight
		}
	}
	return v
}

// before is the part of a load from its beginning up to x.
func (s stretch) before(x float64) stretch {
	switch {
	case x < s.from:
		return stretch{}
	case x >= s.to:
		return s
	}
	first, last := s.per(s.from), s.per(x)
	part := stretch{from: s.from, to: x, weight: (first + last) / 2 * (x - s.from)}
	if first+last > 0 {
		part.taper = (last - first) / (last + first)
	}
	return part
}

// extremes gives the largest sagging moment, zero or more, the largest hogging moment, zero or
// less, and the largest size of the shear. Loads only press down, so that between two
// places where anything begins or ends the shear falls: it is largest beside one of these, and
// the moment there or where the shear, found by halving, is zero.
func (d hung) extremes(tension []float64) (sag, hog, shear float64) {
	places := []float64{0, d.length}
	for _, r := range d.ropes {
		places = append(places, r.at)
	}
	for _, l := range d.loads {
		places = append(places, l.from, l.to)
	}
	slices.Sort(places)
	places = slices.Compact(places)
	note := func(x float64) {
		m := d.moment(tension, x)
		sag, hog = max(sag, m), min(hog, m)
	}
	for k, x := range places {
		note(x)
		shear = max(shear, math.Abs(d.shear(tension, x, false)), math.Abs(d.shear(tension, x, true)))
		if k+1 == len(places) || d.shear(tension, x, true) <= 0 || d.shear(tension, places[k+1], false) >= 0 {
			continue
		}
		low, high := x, places[k+1]
		for range 60 {
			if mid := (low + high) / 2; d.shear(tension, mid, true) > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		note(low)
	}
	return sag, hog, shear
}
