package stack_test

import (
	"slices"
	"testing"

	"example.com/steelyard/internal/stack"
)

// What the walk must look at, counted by hand: the first kind's choices are steps, and the last kind's number follows from the
// wish without any more. A number of plates is a step of its own. No row may take more than its steps.
func TestWalkSteps(t *testing.T) {
	const no = stack.Unlimited
	plate := stack.Plate{Mass: 3, Thickness: 1, Every: 10}
	tens := []stack.Kind{{10, 1, 3}, {3, 1, 3}}
	for _, tt := range []struct {
		name, reason string
		p            stack.Problem
		steps        int
	}{
		{
			"filled up", "two of the 10 and one of the 3: with one of the 10 all the 3s are too little, three are too many",
			stack.Problem{Kinds: tens, Wanted: 23, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			2,
		},
		{
			"one short", "two of the 10 leave 5: one of the 3 leaves 2, two are 1 over. Three of the 10 are 5 over, one leaves 15 for at most 9",
			stack.Problem{Kinds: tens, Wanted: 25, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			2,
		},
		{
			"neither above nor below", "nothing but the wish is allowed, and two of the 10 and two of the 3 are all that can give 26",
			stack.Problem{Kinds: tens, Wanted: 26, MaxMass: no, MaxHeight: no},
			2,
		},
		{
			"no sum", "all are even, the wish is odd, and either side is forbidden: nothing need be looked at",
			stack.Problem{Kinds: []stack.Kind{{10, 1, 3}, {4, 1, 3}}, Wanted: 27, MaxMass: no, MaxHeight: no},
			0,
		},
		{
			"one kind", "its number follows from the wish",
			stack.Problem{Kinds: []stack.Kind{{10, 1, 30}}, Wanted: 123, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			1,
		},
		{
			"one kind with plates", "without plates there is only the empty stack; 36 is five pieces and two plates, and no other number of plates can be 36",
			stack.Problem{Kinds: []stack.Kind{{6, 2, 30}}, Wanted: 36, MaxMass: no, MaxHeight: no, Plate: plate, Heavy: true, Light: true},
			1 + 2,
		},
		{
			"plates that fall short", "66 is 3 more than nine pieces and two plates, and 3 less than ten and three: each is looked at once, and the empty stack",
			stack.Problem{Kinds: []stack.Kind{{6, 2, 30}}, Wanted: 66, MaxMass: no, MaxHeight: no, Plate: plate, Heavy: true, Light: true},
			1 + 2 + 2,
		},
		{
			"too much wanted", "four pieces and a plate are all that the height takes",
			stack.Problem{Kinds: []stack.Kind{{6, 2, 30}}, Wanted: 999, MaxMass: no, MaxHeight: 10, Plate: plate, Heavy: true, Light: true},
			1 + 2,
		},
		{
			"as near in many ways", "60 is six of the 10; five to two of them and the 5s give as much, and are left at once for their more pieces",
			stack.Problem{Kinds: []stack.Kind{{10, 1, 9}, {5, 1, 9}}, Wanted: 60, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			1 + 5,
		},
		{
			"with more pieces", "as above, with 1s: six of the 10; five to one of them are left at once, for the rest takes two pieces or more for every 10",
			stack.Problem{Kinds: []stack.Kind{{10, 1, 9}, {5, 1, 9}, {1, 1, 9}}, Wanted: 60, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			3 + 5,
		},
		{
			"past the capacity", "four and three plates need more pieces than the capacity: only the empty stack, in two steps, and two plates with seven to none of the first",
			stack.Problem{Kinds: []stack.Kind{{6, 2, 30}, {6, 2, 30}}, Wanted: 100, MaxMass: 50, MaxHeight: no, Plate: plate, Heavy: true, Light: true},
			2 + 1 + 1 + (1 + 1 + 8),
		},
	} {
		c := stack.BestAfter(tt.p, 1000, 1000)
		if !c.Proven || c.Nodes > tt.steps {
			t.Errorf("%s: %s: %d steps, want %d: %+v", tt.name, tt.reason, c.Nodes, tt.steps, c)
		}
	}
}

// Six pieces must go in: with fewer it is not tried.
func TestRefillSteps(t *testing.T) {
	p := stack.Problem{Kinds: []stack.Kind{{10, 1, 9}}, Wanted: 60, MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited, Heavy: true, Light: true}
	if c := stack.Refill(p, []int64{0}, 0, 1000); !c.Proven || c.Pieces != 6 || c.Nodes > 2 {
		t.Errorf("%+v: want six in, in one step for the best and one for the way there", c)
	}
}

// How long the lists of two halves are, by hand. Every entry of either is a step, for each number of plates anew, and so is a
// number of plates.
func TestListSteps(t *testing.T) {
	const no = stack.Unlimited
	plate := stack.Plate{Every: 1000}
	const most = 1 << 17 // entries
	for _, tt := range []struct {
		name, reason string
		p            stack.Problem
		steps        int
	}{
		{
			"two kinds", "none to three of the one, none to two of the other",
			stack.Problem{Kinds: []stack.Kind{{7, 1, 3}, {5, 1, 2}}, Wanted: 17, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			4 + 3,
		},
		{
			"the shorter grows", "six choices of the first; four of the second, and three of the third with each",
			stack.Problem{Kinds: []stack.Kind{{100, 1, 5}, {10, 1, 3}, {1, 1, 2}}, Wanted: 426, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			6 + 4*3,
		},
		{
			"capacity", "of 10s and 8s 26, 28 and 36 are past it, six are left; 0, 9 and 18",
			stack.Problem{Kinds: []stack.Kind{{10, 1, 2}, {9, 1, 2}, {8, 1, 2}}, Wanted: 20, MaxMass: 20, MaxHeight: no, Heavy: true, Light: true},
			6 + 3,
		},
		{
			"height", "of thicknesses 10 and 8 26, 28 and 36 are past it, six are left; 0, 9 and 18",
			stack.Problem{Kinds: []stack.Kind{{100, 10, 2}, {10, 9, 2}, {1, 8, 2}}, Wanted: 222, MaxMass: no, MaxHeight: 20, Heavy: true, Light: true},
			6 + 3,
		},
		{
			"twins", "none to four of the two that are alike; none to two of the other",
			stack.Problem{Kinds: []stack.Kind{{6, 1, 2}, {100, 1, 2}, {6, 1, 2}}, Wanted: 224, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			5 + 3,
		},
		{
			"of one mass", "of as many pieces of one mass the thinner alone",
			stack.Problem{Kinds: []stack.Kind{{6, 1, 2}, {100, 1, 2}, {6, 5, 2}}, Wanted: 224, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			5 + 3,
		},
		{
			"of one mass, with plates", "a thicker one may bring a plate: all nine, and they again for the one plate",
			stack.Problem{Kinds: []stack.Kind{{6, 1, 2}, {100, 1, 2}, {6, 5, 2}}, Wanted: 224, MaxMass: no, MaxHeight: no, Plate: plate, Heavy: true, Light: true},
			2*(9+3) + 1,
		},
		{
			"twins, with plates", "five, and three, and they again for the one plate",
			stack.Problem{Kinds: []stack.Kind{{6, 1, 2}, {100, 1, 2}, {6, 1, 2}}, Wanted: 224, MaxMass: no, MaxHeight: no, Plate: plate, Heavy: true, Light: true},
			2*(5+3) + 1,
		},
		{
			"as long as is kept", "all choices of either, and the wish is all there is",
			stack.Problem{Kinds: []stack.Kind{{1 << 17, 1, most - 1}, {1, 1, most - 1}}, Wanted: most*most - 1, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			2 * most,
		},
		{
			"too long by one", "no lists: the walk, of one step, as there is one kind",
			stack.Problem{Kinds: []stack.Kind{{1, 1, most}}, Wanted: most, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			1,
		},
		{
			"the other too long", "no lists: the walk, a step for each kind, as the wish is all there is",
			stack.Problem{Kinds: []stack.Kind{{1_000_000, 1, 999}, {1000, 1, 998}, {1, 1, 200}}, Wanted: 999*1_000_000 + 998*1000 + 200, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			3,
		},
		{
			"the most kinds", "of thirty there are none",
			stack.Problem{Kinds: slices.Concat([]stack.Kind{{7, 1, 3}}, slices.Repeat([]stack.Kind{{6, 1, 0}}, 30), []stack.Kind{{5, 1, 2}}), Wanted: 17, MaxMass: no, MaxHeight: no, Heavy: true, Light: true},
			4 + 3,
		},
	} {
		c := stack.Meet(tt.p, 1<<20)
		if !c.Proven || c.Nodes != tt.steps {
			t.Errorf("%s: %s: %d steps, want %d: %+v", tt.name, tt.reason, c.Nodes, tt.steps, c)
		}
	}
}

// With just as many steps as the lists are long they are met, and two windows take twice as many.
func TestListLimit(t *testing.T) {
	p := stack.Problem{Kinds: []stack.Kind{{7, 1, 3}, {5, 1, 2}}, Wanted: 17, MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited, Heavy: true, Light: true}
	if c := stack.Meet(p, 7); !c.Proven || c.Nodes != 7 {
		t.Errorf("seven steps for lists of four and three: %+v", c)
	}
	p.Plate = stack.Plate{Every: 1000}
	if c := stack.Meet(p, 15); !c.Proven || c.Nodes != 15 {
		t.Errorf("twice seven, and one for the plate: %+v", c)
	}
	if c := stack.Meet(p, 14); c.Proven || c.Nodes != 15 {
		t.Errorf("one too few: %+v", c)
	}
}

// Six kinds of twenty that were weighed one by one: the walk alone takes long. The halves are 21 · 21 · 21 choices each, and what
// the walk gets first is no more than they.
func TestHalvesTakeOver(t *testing.T) {
	p := stack.Problem{Kinds: weighed(6, 20), MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited, Heavy: true, Light: true}
	mass, _ := sums(p.Kinds)
	p.Wanted = mass / 4 * 3 // more than either half weighs
	const lists = 2 * 21 * 21 * 21
	if c := stack.BestAfter(p, 2*lists, 2*lists); c.Proven {
		t.Fatalf("the walk alone: %+v", c)
	}
	for _, limit := range []int{2 * lists, 4_000_000} {
		if c := stack.Best(p, limit); !c.Proven || c.Nodes <= lists || c.Nodes > 2*lists {
			t.Errorf("within %d: %d steps, want more than %d and less than twice as many: %+v", limit, c.Nodes, lists, c)
		}
	}
	// Where there are not steps for the lists the walk has them all.
	if c := stack.Best(p, lists-1); c.Proven || c.Nodes != lists {
		t.Errorf("with one step too few for the lists: %+v", c)
	}
}
