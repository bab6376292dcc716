// Package rope is the kernel of everything that a rope does: its length, the
// rate at which bodies that move make that length change, and the pull of the
// rope on each body. Plain float64 in SI units; heights are above the deck.
//
// A product that is added to something stands in a conversion, float64(x*y), and
// roots are math.Sqrt: so no platform may fuse the two operations or round a
// hypotenuse its own way, and the same input gives the same bits everywhere.
//
// A rope is a path of stops joined by straight parts. The first and the last
// stop are ends, those between are sheaves taken as points. Each stop rides on
// one body; a body moves up and down only.
package rope

import "math"

// Bodies is how many bodies a path may know. Which number means which body is
// the caller's business; the kernel only asks which stops move together.
const Bodies = 8

// Heights holds the height of each body's datum above the deck, in metres.
type Heights [Bodies]float64

// Stop is an end or a sheave: the body it rides on, its distance across the
// plane of the set, and its height above the body's datum.
type Stop struct {
	Body int
	X, Z float64
}

// Path is the run of one rope. Its sums are the plain form of those that package purchase makes while it lays a rope; a test there
// holds the one against the other.
type Path []Stop

// Height is the height of stop i above the deck.
func (p Path) Height(i int, h *Heights) float64 { return p[i].Z + h[p[i].Body] }

// Part is [Part] from stop i to stop i+1.
func (p Path) Part(i int, h *Heights) (ux, uz, length float64) {
	return Part(p[i+1].X-p[i].X, p.Height(i+1, h)-p.Height(i, h))
}

// Part gives the unit vector along a part, from how far its end is from its beginning across and in height, and its length. Where
// the two coincide the vector is zero.
func Part(dx, dz float64) (ux, uz, length float64) {
	switch {
	case dx == 0 && dz == 0:
		return 0, 0, 0
	case dx == 0:
		return 0, math.Copysign(1, dz), math.Abs(dz)
	case dz == 0:
		return math.Copysign(1, dx), 0, math.Abs(dx)
	}
	length = math.Sqrt(float64(dx*dx) + float64(dz*dz))
	return dx / length, dz / length, length
}

// Length is the length of the rope along its path.
func (p Path) Length(h *Heights) float64 {
	var sum float64
	for i := range len(p) - 1 {
		_, _, l := p.Part(i, h)
		sum += l
	}
	return sum
}

// Rate is ∂L/∂h of the length by the height of one body: how much more rope the
// path up to stop last wants for each metre that the body rises. With
// last = len(p)-1 it is the rate of the whole path, otherwise the rate at which
// rope runs past stop last.
func (p Path) Rate(body, last int, h *Heights) float64 {
	var rate float64
	for i := range last {
		_, uz, _ := p.Part(i, h)
		if p[i].Body == body {
			rate -= uz
		}
		if p[i+1].Body == body {
			rate += uz
		}
	}
	return rate
}

// Pull is the upward force of stops from..to (inclusive) on a body, per unit of
// what makes it up. Without drag the tension of a rope with weight w per length
// is t(z) = c + w·z all along its path: at a sheave it does not change, along a
// part it grows with height by the rope's own weight. The force is therefore
// n·c + w·s, with n the sum of the parts' upward direction cosines at the body's
// stops and s the same sum weighted with the stops' heights.
func (p Path) Pull(body, from, to int, h *Heights) (n, s float64) {
	for i := from; i <= to; i++ {
		if p[i].Body != body {
			continue
		}
		z := p.Height(i, h)
		if i > 0 {
			_, uz, _ := p.Part(i-1, h)
			n -= uz
			s -= float64(uz * z)
		}
		if i < len(p)-1 {
			_, uz, _ := p.Part(i, h)
			n += uz
			s += float64(uz * z)
		}
	}
	return n, s
}
