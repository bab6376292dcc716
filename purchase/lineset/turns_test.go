package lineset

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// enough tells whether the stock does for an order, by following it.
func enough(turns []turn, stock []int) bool {
	left := slices.Clone(stock)
	for _, t := range turns {
		for k, n := range t.takes {
			if left[k] -= n; n > 0 && left[k] < 0 {
				return false
			}
		}
	}
	return true
}

// Against every order that there is: where there is one in which the stock does, one is found; nobody is left out or
// has two turns.
func TestPropInTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kinds := rapid.IntRange(1, 3).Draw(t, "kinds")
		var turns []turn
		for range rapid.IntRange(0, 6).Draw(t, "sets") {
			turns = append(turns, turn{takes: rapid.SliceOfN(rapid.IntRange(-4, 4), kinds, kinds).Draw(t, "takes"), set: SetChange{HandOvers: len(turns)}})
		}
		stock := rapid.SliceOfN(rapid.IntRange(0, 8), kinds, kinds).Draw(t, "stock")
		got := inTurn(slices.Clone(turns), stock)
		had := map[int]bool{}
		for _, g := range got {
			had[g.set.HandOvers] = true
		}
		if len(got) != len(turns) || len(had) != len(turns) {
			t.Fatalf("%d of %d have their turn", len(had), len(turns))
		}
		possible := false
		var permute func(order, rest []turn)
		permute = func(order, rest []turn) {
			if possible || len(rest) == 0 {
				possible = possible || enough(order, stock)
				return
			}
			for i := range rest {
				permute(append(slices.Clone(order), rest[i]), slices.Delete(slices.Clone(rest), i, i+1))
			}
		}
		permute(nil, turns)
		if enough(got, stock) != possible {
			t.Fatalf("the stock does: %v; in some order: %v", !possible, possible)
		}
	})
}

// So many sets that change one kind for another, none of which can go first, that not every choice of them can be
// looked at: they are given up, and none is lost.
func TestInTurnGivesUp(t *testing.T) {
	var turns []turn
	for i := range 40 {
		turns = append(turns, turn{takes: []int{1, -1}}, turn{takes: []int{-1, 1}})
		turns[2*i].set.HandOvers = i
	}
	stuck := append(turns, turn{takes: []int{100, -1}})
	if got := inTurn(stuck, []int{20, 20}); len(got) != len(stuck) {
		t.Errorf("%d of %d", len(got), len(stuck))
	}
}
