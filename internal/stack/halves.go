package stack

import (
	"cmp"
	"slices"
)

// mostEntries is the longest list that is kept: 4 MB.
const mostEntries = 1 << 17

// entry is one choice of the kinds of one half. Code ranks the choices of all
// kinds: of two codes, the higher has more of the first kind in which they
// differ. Code, like all the rest, adds up over the halves.
type entry struct {
	mass, thickness int64
	code            int64
	pieces          int32
	change          int32 // against today
}

// halves are the choices of two groups of kinds: every choice of all kinds is
// one of each. Each list runs by rising mass, then pieces, then thickness, then
// falling code.
type halves struct {
	filled  bool
	weight  [MaxKinds]int64 // of one piece of a kind in the code
	a, b    []entry
	changeA []int // with today, a[changeA[d]:changeA[d+1]] are those of change d
	changeB []int
	scratch meeting
}

// split shares the kinds out: the one with the most choices always to the list
// that is the shorter so far. It gives the lengths of both lists, at most
// mostEntries+1 where a list would be too long.
func (s *search) split() (inB [MaxKinds]bool, a, b int64) {
	order := make([]int, s.n)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(s.kinds[j].Count, s.kinds[i].Count), cmp.Compare(i, j))
	})
	a, b = 1, 1
	for _, i := range order {
		to := &a
		if b < a {
			to, inB[i] = &b, true
		}
		*to = min(product(*to, s.kinds[i].Count+1), mostEntries+1)
	}
	return inB, a, b
}

// size is how many entries the halves have at most; 0 where that is too many.
func (s *search) size() int {
	_, a, b := s.split()
	if a > mostEntries || b > mostEntries {
		return 0
	}
	return int(a + b)
}

// rule says which of several entries of one mass need not be kept.
type rule uint8

const (
	dropSame  rule = iota // one of the same choice, listed twice
	dropEqual             // one that is equal in thickness and pieces, and ranks lower
	dropWorse             // one that is neither thinner nor has fewer pieces
)

// fill lists both halves.
func (h *halves) fill(s *search) {
	if h.filled {
		return
	}
	h.filled = true
	inB, a, b := s.split()
	roomA, roomB := a, b
	weight := int64(1)
	for i := s.n - 1; i >= 0; i-- {
		h.weight[i] = weight
		weight *= s.kinds[i].Count + 1
	}
	drop := dropWorse
	switch {
	case s.today != nil:
		drop = dropSame // the change differs, and is counted last
	case s.problem.Plate.Every > 0:
		drop = dropEqual // a thicker one may bring the plate that is missing
	}
	// The last merge reads a list of c/2+1 parts in c+1 twice: room for both.
	for i := s.n - 1; i >= 0; i-- {
		if c := s.kinds[i].Count; c > 0 {
			if inB[i] {
				roomB = b + b/(c+1)
			} else {
				roomA = a + a/(c+1)
			}
		}
	}
	spare := make([]entry, 0, max(roomA, roomB))
	h.a, spare = s.list(h, inB, false, roomA, drop, spare)
	h.b, _ = s.list(h, inB, true, roomB, drop, spare)
	if s.today != nil {
		h.changeA = s.byChange(h, h.a, inB, false)
		h.changeB = s.byChange(h, h.b, inB, true)
	}
}

// list gives every choice of one half within the limits of all. It works with a
// spare list and hands one on.
func (s *search) list(h *halves, inB [MaxKinds]bool, half bool, size int64, drop rule, to []entry) (full, spare []entry) {
	from := make([]entry, 1, size)
	for i := s.n - 1; i >= 0; i-- {
		k := s.kinds[i]
		if inB[i] != half || k.Count == 0 {
			continue
		}
		// From the choices with up to c/2 pieces of this kind to those with up to c:
		// they and they again with c - c/2 pieces more. Where the two overlap, one drops out.
		for bit := lastBit(k.Count); bit >= 0; bit-- {
			c := k.Count >> bit
			n := c - c/2
			to = s.merge(to, from, entry{n * k.Mass, n * k.Thickness, n * h.weight[i], int32(n), 0}, drop)
			from, to = to, from
		}
	}
	return from, to
}

// lastBit is the place of n's highest bit.
func lastBit(n int64) int {
	b := -1
	for ; n > 0; n >>= 1 {
		b++
	}
	return b
}

// merge fills one list with the entries of another and they again with more added
// to each, in order; without those past the limits and those that drop tells.
func (s *search) merge(to, list []entry, more entry, drop rule) []entry {
	if cap(to) < 2*len(list) {
		to = make([]entry, 0, 2*len(list))
	}
	to = to[:2*len(list)]
	height := s.problem.MaxHeight
	n, i, j := 0, 0, 0
	plus := list[0].plus(&more)
	for {
		e := &to[n]
		switch {
		case i < len(list) && (list[i].mass < plus.mass || list[i].mass == plus.mass && !plus.less(&list[i])):
			*e = list[i]
			i++
		case plus.mass <= s.mass:
			*e = plus
			if j++; j < len(list) {
				plus = list[j].plus(&more)
			} else {
				plus.mass = none
			}
		case i < len(list):
			plus.mass = none // as are all that follow: only those of list are left
			continue
		default:
			return to[:n]
		}
		if e.thickness > height {
			continue
		}
		if n > 0 {
			if last := &to[n-1]; last.mass == e.mass && e.drops(last, drop) {
				continue
			}
		}
		if n++; n == len(to) {
			return to
		}
	}
}

// drops reports that an entry need not be kept after the last that was, which is of
// the same mass.
func (e *entry) drops(last *entry, drop rule) bool {
	switch drop {
	case dropWorse:
		return e.thickness >= last.thickness
	case dropEqual:
		return e.thickness == last.thickness && e.pieces == last.pieces
	}
	return e.code == last.code
}

// plus is e with more added.
func (e *entry) plus(more *entry) entry {
	return entry{e.mass + more.mass, e.thickness + more.thickness, e.code + more.code, e.pieces + more.pieces, 0}
}

// less orders a list.
func (e *entry) less(f *entry) bool {
	switch {
	case e.mass != f.mass:
		return e.mass < f.mass
	case e.pieces != f.pieces:
		return e.pieces < f.pieces
	case e.thickness != f.thickness:
		return e.thickness < f.thickness
	}
	return e.code > f.code
}

// digit is how many of kind i the choice with this code takes.
func (s *search) digit(h *halves, code int64, i int) int64 {
	return code / h.weight[i] % (s.kinds[i].Count + 1)
}

// byChange counts what each entry changes against today, sorts the list by that
// and gives where each number of changes begins.
func (s *search) byChange(h *halves, list []entry, inB [MaxKinds]bool, half bool) []int {
	for j := range list {
		e := &list[j]
		change := int64(0)
		for i := range s.n {
			if inB[i] == half {
				change += abs(s.digit(h, e.code, i) - s.today[i])
			}
		}
		e.change = int32(change)
	}
	slices.SortStableFunc(list, func(e, f entry) int { return cmp.Compare(e.change, f.change) })
	var begin []int
	for j, e := range list {
		for len(begin) <= int(e.change) {
			begin = append(begin, j)
		}
	}
	return append(begin, len(list))
}
