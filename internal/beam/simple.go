package beam

// simple is what a load does to a span taken as a beam of its own on supports at its two
// ends: the pull that it asks of each, and its term in the three-moment equation of
// each, six times EI times the slope at that end.
type simple struct{ left, right, atLeft, atRight float64 }

func (s simple) scaled(share float64) simple {
	return simple{
		float64(s.left * share), float64(s.right * share),
		float64(s.atLeft * share), float64(s.atRight * share),
	}
}

// add lays on so much of a load.
func (s *simple) add(v float64, of simple) {
	s.left += float64(v * of.left)
	s.right += float64(v * of.right)
	s.atLeft += float64(v * of.atLeft)
	s.atRight += float64(v * of.atRight)
}

// simplePiece is for a unit of weight on a span of the given length, spread from c−h to c+h and
// leaning by a taper t.
//
// A point adds W·c(L²−c²)/L to the term at the right: 6A·a/L, with the moment area A and the
// distance a of its centroid from the left. For a spread load it is the mean of that with
// the weight 1 + t·u/h over u from −h to h:
//
//	W·[c(L²−c²−h²) + t·h·((L²−3c²)/3 − h²/5)]/L
//
// The first of the two has no difference of nearly equal powers, however short the piece.
func simplePiece(length, c, h, t float64) simple {
	d := length - c
	cc := float64(d * (length + c)) // L²−c²
	dd := float64(c * (length + d))
	hh := float64(h * h)
	th := float64(t * h)
	right := float64(c * (cc - hh))
	left := float64(d * (dd - hh))
	square := float64(length * length)
	if t != 0 {
		right += float64(th * ((square-float64(3*c*c))/3 - hh/5))
		left -= float64(th * ((square-float64(3*d*d))/3 - hh/5))
	}
	return simple{
		left: (d - th/3) / length, right: (c + th/3) / length,
		atLeft: left / length, atRight: right / length,
	}
}

// simpleCover is for a whole span under a weight per length that goes straight from a to b.
func simpleCover(length, a, b float64) simple {
	square := float64(length * length)
	cube := float64(square * length)
	return simple{
		left: length * (a + a + b) / 6, right: length * (a + b + b) / 6,
		atLeft: cube * (float64(8*a) + float64(7*b)) / 60, atRight: cube * (float64(7*a) + float64(8*b)) / 60,
	}
}

// join makes one span of two neighbours, of lengths a and b, whose common line is slack and has a
// weight on it. Each of the two may be thought of as hung from the long span at its ends:
// that bends the long span by its own moments, and by a point at the joint. A slope at the end of
// one of them counts in full at that end of the long span, and by the joint's distance from
// the other end of it where it lies at the joint.
func join(a float64, s simple, weight, b float64, t simple) simple {
	length := a + b
	point := s.right + weight + t.left
	fromLeft, fromRight := a/length, b/length
	both := s.atRight + t.atLeft
	return simple{
		left:    s.left + float64(point*fromRight),
		right:   t.right + float64(point*fromLeft),
		atLeft:  s.atLeft + float64(fromRight*(both+float64(point*a*(length+b)))),
		atRight: t.atRight + float64(fromLeft*(both+float64(point*b*(length+a)))),
	}
}
