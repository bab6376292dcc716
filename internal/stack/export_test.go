package stack

// Meet is Best by the halves alone.
func Meet(p Problem, limit int) Choice { return best(p, limit, 0) }

// MeetRefill is Refill by the halves alone.
func MeetRefill(p Problem, today []int64, within int64, limit int) Choice {
	return refill(p, today, within, limit, 0)
}

// Ladder gives the least mass from a thickness on and the most up to it.
func Ladder(kinds []Kind, thickness int64) (least, most int64) {
	l := newLadder(kinds)
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
