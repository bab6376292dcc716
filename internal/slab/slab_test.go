package slab_test

import (
	"slices"
	"testing"

	"example.com/steelyard/internal/slab"
)

func TestTake(t *testing.T) {
	all := []int{1, 2, 3, 4, 5}
	rest := all
	a, b := slab.Take(&rest, 2), slab.Take(&rest, 0)
	if !slices.Equal(a, []int{1, 2}) || len(b) != 0 || !slices.Equal(rest, []int{3, 4, 5}) {
		t.Errorf("%v, %v, %v", a, b, rest)
	}
	// What is put onto one piece does not run into the next.
	if _ = append(a, 9); all[2] != 3 {
		t.Errorf("%v", all)
	}
}

func TestEnough(t *testing.T) {
	var few [3]int
	for n := range 6 {
		got := slab.Enough(few[:], n)
		if len(got) != n || cap(got) != n || slices.Max(append(got, 0)) != 0 {
			t.Errorf("%d: %v of %d", n, got, cap(got))
		}
		if within := n > 0 && &got[0] == &few[0]; within != (n > 0 && n <= 3) {
			t.Errorf("%d: of the few: %v", n, within)
		}
	}
}
