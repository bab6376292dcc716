package lineset

import "slices"

// turn is when a set of a change-over has its turn: how many pieces more than before its arbor then takes, kind by kind.
type turn struct {
	set   SetChange
	takes []int
}

// gives tells whether it takes more of no kind, and wants whether it gives none back.
func (t turn) gives() bool { return !slices.ContainsFunc(t.takes, func(n int) bool { return n > 0 }) }
func (t turn) wants() bool { return !slices.ContainsFunc(t.takes, func(n int) bool { return n < 0 }) }

// schedule puts the sets in the order in which they are worked on.
func (r *RiggedHouse) schedule(c *ChangeOver) {
	var turns []turn
	var still []SetChange
	for _, s := range c.Sets {
		if !s.Changed {
			still = append(still, s)
			continue
		}
		t := turn{set: s}
		for _, piece := range r.house.Stock {
			t.takes = append(t.takes, countOf(s.In, piece.Name)-countOf(s.Out, piece.Name))
		}
		turns = append(turns, t)
	}
	lay := func() {
		c.Sets = nil
		for _, t := range turns {
			c.Sets = append(c.Sets, t.set)
		}
		c.Sets = append(c.Sets, still...)
		c.Pieces = r.count(c.Sets)
	}
	lay()
	if !slices.ContainsFunc(c.Pieces, func(p PieceChange) bool { return p.Short() > 0 }) {
		return
	}
	var left []int
	for _, piece := range r.house.Stock {
		left = append(left, piece.Count-r.inUse(piece.Name))
	}
	names := func() (all []string) {
		for _, t := range turns {
			all = append(all, t.set.Name)
		}
		return all
	}
	before := names()
	turns = inTurn(turns, left)
	c.InTurn = !slices.Equal(before, names())
	lay()
}

// inUse is how many pieces of a kind are in all arbors.
func (r *RiggedHouse) inUse(piece string) (n int) {
	for _, s := range r.sets {
		n += s.counter.Stack.Used(piece)
	}
	return n
}

// mostTurns bounds how many choices of sets that are done are looked at before another order is given up.
const mostTurns = 1 << 14

// inTurn puts sets in an order in which what is left of the stock does, if there is one. Sets that only give
// pieces back go first and those that only want more go last: neither can make another wait that need not. Those
// between, which change one kind for another, are tried in every order, and what is left of the stock depends only on which
// of them are done. Otherwise each group keeps its order.
func inTurn(turns []turn, stock []int) []turn {
	var first, between, last []turn
	for _, t := range turns {
		switch {
		case t.gives():
			first = append(first, t)
		case t.wants():
			last = append(last, t)
		default:
			between = append(between, t)
		}
	}
	left := slices.Clone(stock)
	spend := func(t turn, sign int) (ok bool) {
		ok = true
		for k, n := range t.takes {
			left[k] -= sign * n
			ok = ok && (n <= 0 || left[k] >= 0)
		}
		return ok
	}
	for _, t := range first {
		spend(t, 1)
	}
	done, order := make([]byte, len(between)), make([]turn, 0, len(between))
	seen := map[string]bool{}
	var try func() bool
	try = func() bool {
		if len(order) == len(between) {
			return true
		}
		if seen[string(done)] || len(seen) >= mostTurns {
			return false
		}
		seen[string(done)] = true
		for i, t := range between {
			if done[i] != 0 {
				continue
			}
			done[i] = 1
			order = append(order, t)
			if spend(t, 1) && try() {
				return true
			}
			spend(t, -1)
			order = order[:len(order)-1]
			done[i] = 0
		}
		return false
	}
	if !try() {
		order = between
	}
	return slices.Concat(first, order, last)
}
