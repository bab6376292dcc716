package stack

import (
	"slices"
	"sort"

	"example.com/steelyard/internal/slab"
)

// Best finds the allowed choice with the least |Error|; of those the one with
// the fewest pieces, then the lowest, then the one with more of the first kind, of
// the second, and so on. It takes no more than limit steps: a place of the search
// tree is one, an entry of a table that is gone through another, and so is a number
// of plates, of which there can be as many as nanometres in the room. A Problem whose
// numbers could overflow gives a Choice that is neither Found nor Proven: callers
// check first.
//
// The plates depend on the pieces' thickness alone, so the search runs once for
// each number of plates, with the thickness held to the window that needs just
// that number: inside it the plates are a constant.
//
// Two methods share the work, each strong where the other is weak. The walk
// (branch and bound) ends at once where the masses have a large common divisor or
// the room decides. Where it does not end soon, the kinds are cut into two halves
// whose sums are listed and met in the middle: the work is then what the lists
// are long, whatever the numbers (Horowitz and Sahni, Computing partitions with
// applications to the knapsack problem, J. ACM 21, 1974). Lists too long to keep
// leave the walk to run to its limit.
func Best(p Problem, limit int) Choice { return best(p, limit, fewSteps) }

func best(p Problem, limit, few int) Choice {
	if !p.valid() {
		return Choice{}
	}
	var room space
	s := room.search(&p)
	s.limit, s.few = limit, few
	if s.start(&p) {
		s.both(nil)
	}
	return s.choice(p.Room)
}

// Refill starts from what is in today, so many of each kind. Of the allowed
// choices with an |Error| of at most within, or where there is none of the least
// there is, it finds the one that puts in and takes out the fewest pieces, both
// counted; then the one with the least |Error|, and on as Best does. Its Gap is
// against the least |Error| that any choice could have.
func Refill(p Problem, today []int64, within int64, limit int) Choice {
	return refill(p, today, within, limit, fewSteps)
}

func refill(p Problem, today []int64, within int64, limit, few int) Choice {
	if len(today) != len(p.Kinds) || within < 0 || slices.ContainsFunc(today, func(n int64) bool { return n < 0 || n > mostToday }) {
		return Choice{}
	}
	best := best(p, limit, few)
	if !best.Found || !best.Proven { // its limit is used up
		return best
	}
	within = max(min(within, maxWanted), abs(best.Error))
	var room space
	s := room.search(&p)
	s.limit, s.few, s.nodes, s.today = limit, few, best.Nodes, today
	if !s.within(p.Kinds, p.Wanted+within, within) {
		return best
	}
	// best itself is one of the choices: no more need be changed than for it.
	most := int64(0)
	for i, n := range best.Count {
		most += abs(n - today[i])
	}
	s.change = int64(sort.Search(int(most), func(d int) bool { return s.possible(int64(d)) }))
	h := &halves{}
	for ; s.change <= most; s.change++ {
		s.both(h)
		if s.any || s.cut {
			break
		}
	}
	c := s.choice(p.Room)
	if !c.Found { // cut: best is the best there is
		c = best
		c.Nodes, c.Proven = s.nodes, false
	}
	if s.cut { // what is open is a nearer one with as few changes; no error is less than best's
		c.Gap = abs(c.Error) - abs(best.Error)
	}
	return c
}

// both runs the walk and, where that does not soon end, the halves. h is filled
// where it is needed, and serves again for the same kinds; nil: they are wanted once.
func (s *search) both(h *halves) {
	s.trial, s.begun, s.end = true, s.nodes, -1
	s.cut, s.walked, s.open = false, false, none
	s.allPlates()
	s.trial = false
	if !s.cut || s.end < 0 || s.end >= s.limit {
		return
	}
	s.cut, s.open = false, none
	s.nodes = s.end
	if h == nil {
		h = &halves{}
	}
	h.fill(s)
	s.halves = h
	s.allPlates()
	s.halves = nil
}

// tried tells whether the walk has had its trial. It gets about as long as the halves would take: at worst the time is doubled.
func (s *search) tried() bool {
	if !s.trial || s.nodes <= s.begun+s.few {
		return false
	}
	if s.end < 0 {
		switch size := s.size(); {
		case size == 0 || size > s.limit-s.begun: // no halves
			s.end = s.limit
		case s.few == 0:
			s.end = s.begun
		default:
			s.end = min(s.begun+s.few+size/entriesPerStep, s.limit)
		}
	}
	return s.nodes > s.end
}

const (
	// entriesPerStep is how many entries of a list are as much work as one place of
	// the walk, and fewSteps what the walk always gets (both measured).
	entriesPerStep = 8
	fewSteps       = 200
	mostToday      = 1 << 24
)

// possible reports whether the bounds leave anything to look for where so many
// pieces may be put in or taken out, or may, as far as the limit goes.
func (s *search) possible(change int64) bool {
	t := *s
	t.change, t.probe = change, true
	t.allPlates()
	return t.any || t.cut
}

// choice reports what the search found, with its Count in this room.
func (s *search) choice(room []int64) Choice {
	c := Choice{Proven: !s.cut, Nodes: s.nodes}
	if !s.any {
		return c
	}
	b := s.best
	c.Found = true
	c.Count = slab.Enough(room, s.n)
	copy(c.Count, b.count)
	c.Pieces, c.Plates, c.Height, c.Error = b.pieces, b.plates, b.height, b.error
	c.Mass = s.problem.Wanted + b.error
	c.Gap = max(0, abs(b.error)-s.open) // nothing is open without a cut
	return c
}
