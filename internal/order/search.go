package order

import "math/bits"

// The two sides on which the crew works.
const (
	onDeck = iota
	onBridge
)

// Move is one thing that is done: an item hung, a piece put in, or a flight to another halt.
type Move struct {
	Kind     Kind
	Item     int // of a Hang
	Position int // after the move
}

// Kind is what a Move does.
type Kind uint8

// The moves.
const (
	Hang Kind = iota
	Add
	Fly
)

// Order is what Best found.
type Order struct {
	Moves     []Move
	HandOvers int // changes between deck and bridge; flights belong to neither
	Flights   int
}

// cost counts hand-overs first and flights second.
type cost struct{ hand, fly int }

// layer is the set of the states that cost just so much to the end, for each side that worked last.
type layer struct {
	rows [2][]uint64
}

// Best finds an order with the fewest hand-overs and, of those, the fewest flights. Of several it gives the one that
// at every step goes on with the side that works, the deck first of all, hangs the earliest item of the list that may
// hang, and hands over from the bridge, or flies, as soon as the batten is not the heavier. Where there is none,
// found is false, which is proved, as every state was looked at from which the end can be reached.
//
// The problem must fit (see Problem.Fits) and be in proportion: as many entries in every list as there are positions,
// pieces + 1 and positions.
func Best(p *Problem) (o Order, found bool) {
	s := newStates(p)
	if !s.allowed(p.Start, 0, 0) {
		return Order{}, false
	}
	layers, first := s.layers()
	if first == nil {
		return Order{}, false
	}
	return s.walk(layers, *first), true
}

// layers goes back from the end until the start is reached, and gives the cost of it.
func (s *states) layers() (map[cost]*layer, *cost) {
	layers := map[cost]*layer{}
	seen := [2][]uint64{s.rows(), s.rows()}
	next := [2][]uint64{s.rows(), s.rows()}
	flights := 0 // no layer has more
	for hand := 0; ; hand++ {
		any := false
		for fly := 0; ; fly++ {
			at := cost{hand, fly}
			after, near := layers[cost{hand - 1, fly}], layers[cost{hand, fly - 1}]
			if fly > flights && near == nil {
				break
			}
			s.before(next, after, near)
			if at == (cost{}) {
				s.end(next)
			}
			s.unhang(next[onDeck], next[onDeck])
			s.goOnTaking(next[onBridge])
			if !fresh(next, seen) {
				continue
			}
			any, flights = true, max(flights, fly)
			layers[at] = &layer{rows: next}
			next = [2][]uint64{s.rows(), s.rows()}
			if has(s.row(seen[onDeck], s.Start, 0), 0) || has(s.row(seen[onBridge], s.Start, 0), 0) {
				return layers, &at
			}
		}
		if !any {
			return layers, nil
		}
	}
}

// before adds the states from which one hand-over leads into the layer after, or one flight into the layer near;
// either may be none.
func (s *states) before(sets [2][]uint64, after, near *layer) {
	if after != nil {
		s.unhang(sets[onBridge], after.rows[onDeck])
		s.take(sets[onDeck], after.rows[onBridge])
	}
	if near != nil && len(s.Positions) > 1 {
		for side := range sets {
			s.flyBack(sets[side], near.rows[side])
		}
	}
}

// fresh takes away what was seen before, adds the rest to it, and tells whether there is any.
func fresh(sets, seen [2][]uint64) bool {
	var any uint64
	for side := range sets {
		for i, w := range sets[side] {
			w &^= seen[side][i]
			sets[side][i] = w
			seen[side][i] |= w
			any |= w
		}
	}
	return any != 0
}

// end marks the states at which an order may end.
func (s *states) end(sets [2][]uint64) {
	for at, position := range s.Positions {
		if position.Halt && position.End && s.allowed(at, s.choices-1, s.Pieces) {
			for _, set := range sets {
				put(s.row(set, at, s.choices-1), s.Pieces)
			}
		}
	}
}

// unhang adds to set the states from which hanging one thing leads into to. Where they are the same set, it adds
// those from which hanging any number does: choices with more hung have higher numbers, and are done first.
func (s *states) unhang(set, to []uint64) {
	for at, position := range s.Positions {
		if !position.Deck {
			continue
		}
		first := at * s.choices
		for c := s.choices - 1; c > 0; c-- {
			for w := range s.words {
				into := to[(first+c)*s.words+w]
				if into == 0 {
					continue
				}
				for items := s.hung[c]; items != 0; items &= items - 1 {
					from := (first+c-s.stride[bits.TrailingZeros32(items)])*s.words + w
					set[from] |= into & s.allow[from]
				}
			}
		}
	}
}

// take adds to set the states from which putting in one piece leads into to.
func (s *states) take(set, to []uint64) {
	for at := range s.Positions {
		reach := s.reached(at)
		for c := range s.choices {
			into, row, allow := s.row(to, at, c), s.row(set, at, c), s.row(s.allow, at, c)
			for w := range row {
				from := into[w] >> 1
				if w+1 < len(row) {
					from |= into[w+1] << 63
				}
				row[w] |= from & allow[w] & reach[w]
			}
		}
	}
}

// goOnTaking adds the states from which putting in any number of pieces leads into the set.
func (s *states) goOnTaking(set []uint64) {
	for at := range s.Positions {
		for c := range s.choices {
			s.fill(s.row(set, at, c), at, c)
		}
	}
}

// flyBack adds to set the states from which one flight leads into to: every position on the way must be allowed, too.
func (s *states) flyBack(set, to []uint64) {
	for c := range s.choices {
		for w := range s.words {
			for from, position := range s.Positions {
				if !position.Halt {
					continue
				}
				here := s.row(s.allow, from, c)[w]
				var reach uint64
				for _, step := range [2]int{1, -1} {
					way := here
					for at := from + step; way != 0 && at >= 0 && at < len(s.Positions); at += step {
						way &= s.row(s.allow, at, c)[w]
						if s.Positions[at].Halt {
							reach |= way & to[(at*s.choices+c)*s.words+w]
						}
					}
				}
				set[(from*s.choices+c)*s.words+w] |= reach
			}
		}
	}
}
