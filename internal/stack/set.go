package stack

import "math/bits"

// set is a set of the numbers from 0 to size-1, in words of 64 bits: a bit of a
// word on one level says that the word below it is not empty. Three levels reach
// to mostEntries.
type set struct {
	level [3][]uint64
}

// newSet is an empty set.
func newSet(size int) set {
	var s set
	for l := range s.level {
		size = (size + 63) / 64
		s.level[l] = make([]uint64, size)
	}
	return s
}

// add puts i in.
func (s *set) add(i int) {
	for l := range s.level {
		s.level[l][i>>6] |= 1 << (i & 63)
		i >>= 6
	}
}

// drop takes i out.
func (s *set) drop(i int) {
	for l := range s.level {
		w := &s.level[l][i>>6]
		*w &^= 1 << (i & 63)
		if *w != 0 {
			return
		}
		i >>= 6
	}
}

// before is the greatest member less than i, -1 where there is none.
func (s *set) before(i int) int {
	for l := range s.level {
		words := s.level[l]
		if w := i >> 6; w < len(words) {
			if below := words[w] & (1<<(i&63) - 1); below != 0 {
				i = w<<6 | (63 - bits.LeadingZeros64(below))
				for ; l > 0; l-- {
					i = i<<6 | (63 - bits.LeadingZeros64(s.level[l-1][i]))
				}
				return i
			}
		}
		i >>= 6
	}
	return -1
}

// from is the least member that is i or more, -1 where there is none.
func (s *set) from(i int) int {
	for l := range s.level {
		words := s.level[l]
		if w := i >> 6; w < len(words) {
			if above := words[w] &^ (1<<(i&63) - 1); above != 0 {
				i = w<<6 | bits.TrailingZeros64(above)
				for ; l > 0; l-- {
					i = i<<6 | bits.TrailingZeros64(s.level[l-1][i])
				}
				return i
			}
		}
		i = i>>6 + 1
	}
	return -1
}
