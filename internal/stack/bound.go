package stack

import "math/bits"

// suffix holds, for the kinds from one on, what bounds every choice of them.
type suffix struct {
	mass, thickness int64 // of all their pieces, at most Unlimited
	today           int64 // mass of those that are in now, at most Unlimited
	moved           int64 // most mass that one piece put in or taken out can be
	divisor         int64 // greatest common divisor of their masses: every sum is a multiple
	heaviest        int64
	thickest        int64
	thinnest        int64
	dense           Kind // most mass for its thickness
	airy            Kind // least mass for its thickness
}

// suffixes fills s[i] for the kinds from i on; s[len(kinds)] is of none.
func suffixes(kinds []Kind, today []int64, s []suffix) {
	last := suffix{thinnest: none}
	s[len(kinds)] = last
	for i := len(kinds) - 1; i >= 0; i-- {
		k := kinds[i]
		if today != nil {
			last.today = min(Unlimited, last.today+product(today[i], k.Mass))
			last.moved = max(last.moved, k.Mass)
		}
		if k.Count > 0 {
			last.mass = min(Unlimited, last.mass+product(k.Count, k.Mass))
			last.thickness = min(Unlimited, last.thickness+product(k.Count, k.Thickness))
			last.divisor = gcd(k.Mass, last.divisor)
			last.heaviest = max(last.heaviest, k.Mass)
			last.thickest = max(last.thickest, k.Thickness)
			last.thinnest = min(last.thinnest, k.Thickness)
			if last.dense.Mass == 0 || ratioLess(last.dense.Mass, last.dense.Thickness, k.Mass, k.Thickness) {
				last.dense = k
			}
			if last.airy.Mass == 0 || ratioLess(k.Mass, k.Thickness, last.airy.Mass, last.airy.Thickness) {
				last.airy = k
			}
		}
		s[i] = last
	}
}

// reach is the most mass that these kinds can add within the mass and the
// thickness that are left.
func (s *suffix) reach(mass, thickness int64) int64 {
	most := min(s.mass, mass)
	if s.thickness > thickness {
		most = min(most, scale(thickness, s.dense.Mass, s.dense.Thickness, false))
	}
	return most
}

// lightest is the least mass that pieces of this thickness can have.
func (s *suffix) lightest(thickness int64) int64 {
	if thickness <= 0 || s.airy.Mass == 0 {
		return 0
	}
	return scale(thickness, s.airy.Mass, s.airy.Thickness, true)
}

// nearest is the least distance between short, the mass that is still missing,
// and any sum from least to most that these kinds could make; none where the
// side that is allowed has no such sum.
func (s *suffix) nearest(short, least, most int64, heavy, light bool) int64 {
	best := int64(none)
	if s.divisor == 0 {
		if short > 0 && !light || short < 0 && !heavy {
			return none
		}
		return abs(short)
	}
	if below := floorDiv(min(short, most), s.divisor) * s.divisor; below >= least && (light || below == short) {
		best = short - below
	}
	if heavy {
		if above := ceilDiv(max(short, least), s.divisor) * s.divisor; above <= most {
			best = min(best, above-short)
		}
	}
	return best
}

// fewest bounds from below how many pieces make at least this mass and this
// thickness.
func (s *suffix) fewest(mass, thickness int64) int64 {
	var n int64
	if mass > 0 {
		n = ceilDiv(mass, s.heaviest)
	}
	if thickness > 0 {
		n = max(n, ceilDiv(thickness, s.thickest))
	}
	return n
}

// lowest bounds from below the thickness of at least n pieces of at least this mass.
func (s *suffix) lowest(n, mass int64) int64 {
	if n <= 0 {
		return 0
	}
	return max(product(n, s.thinnest), scale(mass, s.dense.Thickness, s.dense.Mass, true))
}

// ratioLess reports a/b < c/d for positive numbers, exactly.
func ratioLess(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	return h1 < h2 || h1 == h2 && l1 < l2
}

// scale is a·b/c for a ≥ 0 and b, c > 0, rounded down or up, at most Unlimited.
func scale(a, b, c int64, up bool) int64 {
	if a <= 0 {
		return 0
	}
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return Unlimited
	}
	q, r := bits.Div64(hi, lo, uint64(c))
	if up && r > 0 {
		q++
	}
	return int64(min(q, Unlimited))
}
