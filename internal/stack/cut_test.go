package stack_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.com/steelyard/internal/stack"
)

// claim says what a choice claims that is not so; empty where all is. The best and the least error that there is come from trying
// every choice.
func claim(p stack.Problem, want stack.Choice, least int64, got stack.Choice, limit int) string {
	switch {
	case got.Nodes > limit+1:
		return fmt.Sprintf("%d steps", got.Nodes)
	case got.Proven:
		return diff(want, got)
	case !got.Found:
		// Nothing may be found in time; nothing is then said of it.
		return diff(stack.Choice{}, got)
	case !adds(p, got):
		return "does not add up or is not allowed"
	case got.Gap < 0 || got.Gap > max(got.Error, -got.Error):
		return "the gap is not between nothing and the error"
	case max(got.Error, -got.Error)-got.Gap > least:
		return fmt.Sprintf("but there is an error of %d", least)
	}
	return ""
}

// Wherever a search is cut, what it says is so: proven is the best there is by every preference, and with a gap no choice has
// a smaller error than |Error| less Gap.
func TestCutClaims(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	cuts, gaps := 0, 0
	for n := range 1000 {
		p := few(r, n)
		if n%10 == 0 {
			p = crowded(r, n/10)
		}
		want := exhaustive(p)
		least := max(want.Error, -want.Error)
		today, within := stockToday(r, p)
		refilled := exhaustiveRefill(p, today, within)
		for _, few := range []int{0, 1, 200, 1 << 30} {
			limit := 1 + r.IntN(stack.BestAfter(p, 1<<30, few).Nodes+1)
			got := stack.BestAfter(p, limit, few)
			if c := claim(p, want, least, got, limit); c != "" {
				t.Fatalf("best within %d, %d: %+v\n got %+v\n%s", limit, few, p, got, c)
			}
			if !got.Proven {
				cuts++
			}
			if got.Gap > 0 && got.Gap < max(got.Error, -got.Error) {
				gaps++
			}
			limit = 1 + r.IntN(stack.RefillAfter(p, today, within, 1<<30, few).Nodes+1)
			got = stack.RefillAfter(p, today, within, limit, few)
			if c := claim(p, refilled, least, got, limit); c != "" {
				t.Fatalf("refill within %d, %d: %+v\ntoday %v, within %d\n got %+v\n%s", limit, few, p, today, within, got, c)
			}
		}
	}
	if cuts < 1000 || gaps < 100 {
		t.Errorf("only %d searches were cut, %d of them with a gap that says something", cuts, gaps)
	}
}

// A search may take all of its limit: with as many steps as it needs it is proven, with one less it is not.
func TestLimitIsExact(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for n := range 1000 {
		p := few(r, n)
		whole := bests["walk"](p, 1<<30)
		if whole.Nodes == 0 {
			continue // not even the empty stack is allowed, or none can be near enough
		}
		enough := bests["walk"](p, whole.Nodes)
		if !enough.Proven || enough.Nodes != whole.Nodes {
			t.Fatalf("%+v\nwith as many steps as it takes\n got %+v\nwant %+v", p, enough, whole)
		}
		if short := bests["walk"](p, whole.Nodes-1); short.Proven || short.Nodes != whole.Nodes {
			t.Fatalf("%+v\nproven in %d steps, and in one less: %+v", p, whole.Nodes, short)
		}
	}
}

// Plates that lie as close as can be in room without end: the numbers of them are steps, too, and the search ends. Five hundred
// million of them weigh no more than the arbor takes.
func TestManyPlates(t *testing.T) {
	p := stack.Problem{
		Kinds: []stack.Kind{{1, 1 << 46, 100}, {3_000_000_000_000, 3, 21}}, Wanted: 15_000_000_000_000, MaxMass: 500_000_000, MaxHeight: 1_000_000_000_000_000,
		Plate: stack.Plate{Mass: 1, Thickness: 50_000, Every: 70_000}, Light: true,
	}
	const limit = 2000
	for name, c := range map[string]stack.Choice{
		"best":   stack.Best(p, limit),
		"refill": stack.Refill(p, []int64{3, 0}, 0, limit),
	} {
		if c.Nodes > limit+1 || !c.Proven && c.Found && !adds(p, c) {
			t.Errorf("%s: %+v", name, c)
		}
	}
}

// What is left open by a search that gets the first step, by hand.
func TestGap(t *testing.T) {
	plate := stack.Plate{Mass: 3, Thickness: 1, Every: 10}
	const no = stack.Unlimited
	for _, tt := range []struct {
		name, reason string
		p            stack.Problem
		error, gap   int64
	}{
		{
			"tens", "filling up gives 70; whatever the rest may be, it is tens: 3 are missing at least",
			stack.Problem{Kinds: []stack.Kind{{70, 1, 1}, {50, 1, 1}, {30, 1, 1}}, Wanted: 83, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			-13, 10,
		},
		{
			"tens, never light", "nothing is found by filling up from below, and the walk has not begun",
			stack.Problem{Kinds: []stack.Kind{{70, 1, 1}, {50, 1, 1}, {30, 1, 1}}, Wanted: 83, MaxMass: no, MaxHeight: no, Heavy: true},
			0, 0,
		},
		{
			"tens, never heavy", "77 are 7 more than a number of tens: nothing nearer below is known, and 80 is forbidden",
			stack.Problem{Kinds: []stack.Kind{{50, 1, 1}, {40, 1, 1}, {30, 1, 1}}, Wanted: 77, MaxMass: no, MaxHeight: no, Light: true},
			-27, 20,
		},
		{
			"room", "five of the densest are 50 and all that the height takes",
			stack.Problem{Kinds: []stack.Kind{{11, 2, 9}, {10, 1, 9}}, Wanted: 100, MaxMass: no, MaxHeight: 5, Heavy: true, Light: true},
			-100 + 22 + 10, 100 - 32 - 50,
		},
		{
			"capacity", "filling up gives 40; 45 is all that may be, and 5 too little",
			stack.Problem{Kinds: []stack.Kind{{40, 1, 1}, {23, 1, 1}, {22, 1, 1}}, Wanted: 50, MaxMass: 45, MaxHeight: no, Heavy: true, Light: true},
			-10, 5,
		},
		{
			"more plates not looked at", "one plate takes four pieces of 60, 47 too little; five and two plates are 306",
			stack.Problem{Kinds: []stack.Kind{{60, 20, 9}}, Wanted: 290, MaxMass: no, MaxHeight: no, Plate: stack.Plate{3, 1, 100}, Heavy: true, Light: true},
			-47, 47 - 16,
		},
		{
			"fewer plates not looked at", "with two plates less than 20 of thickness: 57 of pieces and 6 of plates at the most",
			stack.Problem{Kinds: []stack.Kind{{6, 2, 99}}, Wanted: 64, MaxMass: no, MaxHeight: no, Plate: plate, Heavy: true, Light: true},
			-64, 64 - 1,
		},
		{
			"few of the densest", "the one of 50 and three of the 10 are all that the height takes, though not looked at to the end",
			stack.Problem{Kinds: []stack.Kind{{50, 1, 1}, {10, 1, 9}}, Wanted: 200, MaxMass: no, MaxHeight: 4, Heavy: true, Light: true},
			-120, 0,
		},
		{
			"capacity with plates", "filling up gives 84; with any number of plates 100 are all that may be",
			stack.Problem{Kinds: []stack.Kind{{30, 1, 9}, {1, 5, 9}}, Wanted: 200, MaxMass: 100, MaxHeight: no, Plate: plate, Heavy: true, Light: true},
			-116, 16,
		},
	} {
		limit := 1
		if tt.p.Plate.Every > 0 {
			limit = len(tt.p.Kinds) + 1 // the empty stack has no plate, and is one step for each kind; a number of plates is one
		}
		got := stack.BestAfter(tt.p, limit, 0)
		if got.Proven || got.Error != tt.error || got.Gap != tt.gap {
			t.Errorf("%s: %s:\n got %+v\nwant error %d, gap %d", tt.name, tt.reason, got, tt.error, tt.gap)
		}
	}
}
