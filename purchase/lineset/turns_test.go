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

// Against every order that there is: where there is one in which the stock does, the first of them is found, in the order of the house but
// that those who only give go first and those who only want go last. Where there is none all keep their order but for that.
func TestPropInTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kinds := rapid.IntRange(1, 3).Draw(t, "kinds")
		var turns, first, between, last []turn
		for range rapid.IntRange(0, 6).Draw(t, "sets") {
			one := turn{takes: rapid.SliceOfN(rapid.IntRange(-3, 3), kinds, kinds).Draw(t, "takes"), set: SetChange{HandOvers: len(turns)}}
			turns = append(turns, one)
			switch least, most := slices.Min(one.takes), slices.Max(one.takes); {
			case most <= 0:
				first = append(first, one)
			case least >= 0:
				last = append(last, one)
			default:
				between = append(between, one)
			}
		}
		stock := rapid.SliceOfN(rapid.IntRange(0, 5), kinds, kinds).Draw(t, "stock")
		want := slices.Concat(first, between, last)
		var permute func(order, rest []turn) bool
		permute = func(order, rest []turn) bool {
			if len(rest) == 0 && enough(order, stock) {
				want = append(order, last...)
				return true
			}
			for i := range rest {
				if permute(append(slices.Clone(order), rest[i]), slices.Delete(slices.Clone(rest), i, i+1)) {
					return true
				}
			}
			return false
		}
		permute(slices.Clone(first), between)
		had := func(turns []turn) (sets []int) {
			for _, turn := range turns {
				sets = append(sets, turn.set.HandOvers)
			}
			return sets
		}
		if got := inTurn(slices.Clone(turns), stock); !slices.Equal(had(got), had(want)) {
			t.Fatalf("%v have their turn as %v, want %v of %v", turns, had(got), had(want), stock)
		}
	})
}

// Two sets that change two pieces of one kind for one of the other: what the stock has left is just enough or one too few.
func TestInTurnWithJustEnough(t *testing.T) {
	one, other := turn{takes: []int{2, -1}, set: SetChange{HandOvers: 1}}, turn{takes: []int{-1, 2}, set: SetChange{HandOvers: 2}}
	for _, c := range []struct {
		stock []int
		first int
	}{
		{[]int{2, 1}, 1}, // 2 of 2 first, then 2 of 2
		{[]int{1, 2}, 2},
		{[]int{1, 1}, 1}, // neither
		{[]int{2, 0}, 1}, // the first, and then there is 1 of the 2: as the house stands
	} {
		if got := inTurn([]turn{one, other}, c.stock); len(got) != 2 || got[0].set.HandOvers != c.first {
			t.Errorf("of %v: %+v", c.stock, got)
		}
	}
	// What a third gives back before them counts, once: with 1 of the one kind given to none, the first still has to wait.
	gives := turn{takes: []int{-1, 0}, set: SetChange{HandOvers: 3}}
	if got := inTurn([]turn{one, other, gives}, []int{0, 2}); got[0].set.HandOvers != 3 || got[1].set.HandOvers != 2 || got[2].set.HandOvers != 1 {
		t.Errorf("%+v", got)
	}
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
