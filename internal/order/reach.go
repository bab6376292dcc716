package order

import "math/bits"

// Possible tells whether there is any order at all, however often the sides change: what Best finds, in a fraction of
// the time. The problem must be as for Best.
func Possible(p *Problem) bool {
	s := newStates(p)
	if !s.allowed(p.Start, 0, 0) {
		return false
	}
	set := s.rows()
	s.end([2][]uint64{set, set})
	// Hanging alone changes the choice, so that a choice is done with once pieces and flights add nothing.
	for c := s.choices - 1; c >= 0; c-- {
		for s.spread(set, c) {
		}
		s.seed(set, c)
	}
	return has(s.row(set, p.Start, 0), 0)
}

// seed adds the states from which hanging one thing leads into those of the choice.
func (s *states) seed(set []uint64, c int) {
	for at, position := range s.Positions {
		if !position.Deck {
			continue
		}
		for items := s.hung[c]; items != 0; items &= items - 1 {
			b := c - s.stride[bits.TrailingZeros32(items)]
			from, allow := s.row(set, at, b), s.row(s.allow, at, b)
			for w, into := range s.row(set, at, c) {
				from[w] |= into & allow[w]
			}
		}
	}
}

// spread adds the states of one choice from which pieces or one step of a flight lead into the set, and tells whether
// there were any. Steps that end between halts count, as the batten may fly on.
func (s *states) spread(set []uint64, c int) (grown bool) {
	for at := range s.Positions {
		row, allow := s.row(set, at, c), s.row(s.allow, at, c)
		grown = s.fill(row, at, c) || grown
		for _, next := range [2]int{at - 1, at + 1} {
			if next < 0 || next >= len(s.Positions) {
				continue
			}
			for w, to := range s.row(set, next, c) {
				more := row[w] | to&allow[w]
				grown = grown || more != row[w]
				row[w] = more
			}
		}
	}
	return grown
}
