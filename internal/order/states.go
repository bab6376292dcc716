package order

import (
	"slices"
	"sort"
)

// states is a problem laid out: choices of items are numbered, each item being a digit that counts how many of it
// hang, so that one more of it adds its stride.
type states struct {
	*Problem
	choices int
	words   int
	stride  []int    // of each item
	hung    []uint32 // for each choice, a bit for each item of which any hangs
	allow   []uint64 // the allowed states, as a set
	reach   []uint64 // for each position, the numbers of pieces to which one more can be put in
	carried []int64  // for each position and choice
}

func newStates(p *Problem) *states {
	s := &states{Problem: p, choices: 1, words: words(p.Pieces)}
	for _, item := range p.Items {
		s.stride = append(s.stride, s.choices)
		s.choices *= item.Count + 1
	}
	s.hung = make([]uint32, s.choices)
	s.carried, s.allow = make([]int64, s.choices*len(p.Positions)), s.rows()
	s.reach = make([]uint64, s.words*len(p.Positions))
	for at, position := range p.Positions {
		for n, reached := range position.Reach {
			if reached && position.Halt && n < p.Pieces {
				put(s.reached(at), n)
			}
		}
	}
	for i, item := range p.Items {
		// The choices of the items before this one stand first; each block of as many has one more of it.
		for c := s.stride[i]; c < s.stride[i]*(item.Count+1); c++ {
			s.hung[c] = s.hung[c%s.stride[i]] | 1<<i
		}
	}
	for at := range p.Positions {
		sums := s.carried[at*s.choices : (at+1)*s.choices]
		for i, item := range p.Items {
			for c := s.stride[i]; c < s.stride[i]*(item.Count+1); c++ {
				sums[c] = sums[c-s.stride[i]] + item.Carried[at]
			}
		}
		low, high := p.Low[at], p.High[at]
		hung := make([]int, len(p.Items))
		for c, sum := range sums {
			if p.Barred != nil {
				for i, item := range p.Items {
					hung[i] = c / s.stride[i] % (item.Count + 1)
				}
				if p.Barred(at, hung) {
					continue
				}
			}
			first := sort.Search(p.Pieces+1, func(n int) bool { return high[n] >= sum })
			last := sort.Search(p.Pieces+1, func(n int) bool { return low[n] > sum }) - 1
			for w, row := 0, s.row(s.allow, at, c); w < len(row); w++ {
				row[w] = span(first-64*w, last-64*w)
			}
		}
	}
	s.sway()
	return s
}

// sway takes away the states at a position that are not allowed at those that it also looks at.
func (s *states) sway() {
	if !slices.ContainsFunc(s.Positions, func(p Position) bool { return len(p.Also) > 0 }) {
		return
	}
	alone, n := slices.Clone(s.allow), s.choices*s.words
	for at, position := range s.Positions {
		row := s.allow[at*n : (at+1)*n]
		for _, other := range position.Also {
			for i, w := range alone[other*n : (other+1)*n] {
				row[i] &= w
			}
		}
	}
}

// allowed tells whether a state is.
func (s *states) allowed(at, choice, pieces int) bool { return has(s.row(s.allow, at, choice), pieces) }

// more tells whether one more of the item can be hung.
func (s *states) more(choice, item int) bool {
	return choice/s.stride[item]%(s.Items[item].Count+1) < s.Items[item].Count
}

// rows makes a set of states, none in it.
func (s *states) rows() []uint64 { return make([]uint64, len(s.Positions)*s.choices*s.words) }

// row gives the numbers of pieces for one position and choice.
func (s *states) row(set []uint64, at, choice int) []uint64 {
	i := (at*s.choices + choice) * s.words
	return set[i : i+s.words]
}

// span is a word with the bits from one to another set, both included, as far as they lie in it.
func span(from, to int) uint64 {
	from, to = max(from, 0), min(to, 63)
	if from > to {
		return 0
	}
	return ^uint64(0) >> (63 - to + from) << from
}

func has(row []uint64, n int) bool { return row[n/64]>>(n%64)&1 != 0 }

func put(row []uint64, n int) { row[n/64] |= 1 << (n % 64) }

// reached gives the numbers of pieces to which one more can be put in at a position.
func (s *states) reached(at int) []uint64 { return s.reach[at*s.words : (at+1)*s.words] }

// fill adds to a row every number below one of its own that is linked to it by numbers at each of which one more
// piece can be put in and is allowed, and tells whether there were any. The numbers are flooded by doubling, as rays
// are on boards of bits.
func (s *states) fill(row []uint64, at, choice int) (grown bool) {
	allow, reach := s.row(s.allow, at, choice), s.reached(at)
	above := uint64(0) // the lowest number of the word above, as the highest bit
	for w := len(row) - 1; w >= 0; w-- {
		free := allow[w] & reach[w]
		bits := row[w] | above&free
		if bits != 0 {
			for by := 1; by < 64; by *= 2 {
				bits |= free & (bits >> by)
				free &= free >> by
			}
			grown = grown || bits != row[w]
			row[w] = bits
		}
		above = row[w] << 63
	}
	return grown
}
