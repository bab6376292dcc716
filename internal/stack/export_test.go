package stack

// Meet is Best by the halves alone.
func Meet(p Problem, limit int) Choice { return best(p, limit, 0) }

// BestAfter is Best with so many steps for the walk, and one for every eight entries, before the halves take over.
func BestAfter(p Problem, limit, few int) Choice { return best(p, limit, few) }

// RefillAfter is Refill with so many steps for each walk, and one for every eight entries, before the halves take over.
func RefillAfter(p Problem, today []int64, within int64, limit, few int) Choice {
	return refill(p, today, within, limit, few)
}

// MeetRefill is Refill by the halves alone.
func MeetRefill(p Problem, today []int64, within int64, limit int) Choice {
	return refill(p, today, within, limit, 0)
}

// Ladder gives the least mass from a thickness on and the most up to it.
func Ladder(kinds []Kind, thickness int64) (least, most int64) {
	l := make(ladder, len(kinds))
	l = l[:l.fill(kinds)]
	return l.least(thickness), l.most(thickness)
}

// Set is a set for the tests.
type Set struct{ s set }

// NewSet is an empty set.
func NewSet(size int) *Set { return &Set{newSet(size)} }

// Add, Drop, Before and From are those of the set.
func (s *Set) Add(i int)        { s.s.add(i) }
func (s *Set) Drop(i int)       { s.s.drop(i) }
func (s *Set) Before(i int) int { return s.s.before(i) }
func (s *Set) From(i int) int   { return s.s.from(i) }

// Suffix is what bounds the choices of some kinds.
type Suffix struct{ s suffix }

// NewSuffix is of all these kinds.
func NewSuffix(kinds []Kind) Suffix {
	s := make([]suffix, len(kinds)+1)
	suffixes(kinds, nil, s)
	return Suffix{s[0]}
}

// Reach, Lightest, Nearest, Fewest and Lowest are those of the suffix.
func (s *Suffix) Reach(mass, thickness int64) int64 { return s.s.reach(mass, thickness) }
func (s *Suffix) Lightest(thickness int64) int64    { return s.s.lightest(thickness) }
func (s *Suffix) Fewest(mass, thickness int64) int64 {
	return s.s.fewest(mass, thickness)
}
func (s *Suffix) Lowest(n, mass int64) int64 { return s.s.lowest(n, mass) }
func (s *Suffix) Nearest(short, least, most int64, heavy, light bool) int64 {
	return s.s.nearest(short, least, most, heavy, light)
}

// Scale is a·b/c, rounded down or up; RatioLess is a/b < c/d.
func Scale(a, b, c int64, up bool) int64 { return scale(a, b, c, up) }
func RatioLess(a, b, c, d int64) bool    { return ratioLess(a, b, c, d) }
func FloorDiv(a, b int64) int64          { return floorDiv(a, b) }
func CeilDiv(a, b int64) int64           { return ceilDiv(a, b) }

// GCD is the greatest common divisor.
func GCD(a, b int64) int64 { return gcd(a, b) }
