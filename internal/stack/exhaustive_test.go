package stack_test

import (
	"cmp"
	"slices"
	"testing"

	"example.com/steelyard/internal/stack"
	gocmp "github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// exhaustive tries every choice there is, with the plates counted from their
// rule, and keeps the best by the order of preference. It shares nothing with
// the search.
func exhaustive(p stack.Problem) stack.Choice {
	return every(p, func(_ []int64, c *stack.Choice) (int64, bool) { return 0, true })
}

// exhaustiveRefill is exhaustive for Refill: of the choices that are near enough the one that changes the fewest pieces.
func exhaustiveRefill(p stack.Problem, today []int64, within int64) stack.Choice {
	least := exhaustive(p)
	if !least.Found {
		return least
	}
	allowed := max(within, least.Error, -least.Error)
	return every(p, func(count []int64, c *stack.Choice) (int64, bool) {
		return changed(count, today), max(c.Error, -c.Error) <= allowed
	})
}

// every keeps the allowed choice that comes first by a key, then by its error, its pieces and its height. Of choices that
// are equal in all of these the first one met has more of the earlier kinds.
func every(p stack.Problem, key func([]int64, *stack.Choice) (int64, bool)) stack.Choice {
	best := stack.Choice{Proven: true}
	var least int64
	count := make([]int64, len(p.Kinds))
	var try func(i int, c stack.Choice)
	try = func(i int, c stack.Choice) {
		if i < len(p.Kinds) {
			for n := p.Kinds[i].Count; n >= 0; n-- {
				count[i] = n
				next := c
				next.Pieces += n
				next.Mass += n * p.Kinds[i].Mass
				next.Height += n * p.Kinds[i].Thickness
				if next.Mass <= p.MaxMass && next.Height <= p.MaxHeight { // more pieces only add to both
					try(i+1, next)
				}
			}
			return
		}
		if p.Plate.Every > 0 && c.Pieces > 0 {
			c.Plates = 1 + c.Height/p.Plate.Every
			c.Mass += c.Plates * p.Plate.Mass
			c.Height += c.Plates * p.Plate.Thickness
		}
		c.Error = c.Mass - p.Wanted
		if c.Mass > p.MaxMass || c.Height > p.MaxHeight || c.Error > 0 && !p.Heavy || c.Error < 0 && !p.Light {
			return
		}
		k, ok := key(count, &c)
		if ok && (!best.Found || cmp.Or(
			cmp.Compare(k, least),
			cmp.Compare(max(c.Error, -c.Error), max(best.Error, -best.Error)),
			cmp.Compare(c.Pieces, best.Pieces),
			cmp.Compare(c.Height, best.Height),
		) < 0) {
			best, least = c, k
			best.Count = slices.Clone(count)
		}
	}
	try(0, stack.Choice{Found: true, Proven: true})
	return best
}

// changed counts the pieces put in and taken out.
func changed(count, today []int64) int64 {
	n := int64(0)
	for i := range today {
		n += max(count[i]-today[i], today[i]-count[i])
	}
	return n
}

// diff is how a choice differs from what is wanted, the steps left out.
func diff(want, got stack.Choice) string {
	figures := func(c *stack.Choice) [6]int64 {
		return [...]int64{c.Pieces, c.Plates, c.Mass, c.Height, c.Error, c.Gap}
	}
	if slices.Equal(want.Count, got.Count) && figures(&want) == figures(&got) && want.Found == got.Found && want.Proven == got.Proven {
		return "" // nearly always, and without reflection
	}
	got.Nodes = 0
	return gocmp.Diff(want, got, cmpopts.EquateEmpty())
}

// adds reports whether what is found is made of the pieces there are, adds up and is allowed.
func adds(p stack.Problem, c stack.Choice) bool {
	sum := stack.Choice{Count: c.Count, Gap: c.Gap, Found: c.Found, Proven: c.Proven, Nodes: c.Nodes}
	if len(c.Count) != len(p.Kinds) {
		return false
	}
	for i, n := range c.Count {
		if n < 0 || n > p.Kinds[i].Count {
			return false
		}
		sum.Pieces += n
		sum.Mass += n * p.Kinds[i].Mass
		sum.Height += n * p.Kinds[i].Thickness
	}
	if p.Plate.Every > 0 && sum.Pieces > 0 {
		sum.Plates = 1 + sum.Height/p.Plate.Every
		sum.Mass += sum.Plates * p.Plate.Mass
		sum.Height += sum.Plates * p.Plate.Thickness
	}
	sum.Error = sum.Mass - p.Wanted
	return diff(sum, c) == "" && c.Mass <= p.MaxMass && c.Height <= p.MaxHeight &&
		(c.Error <= 0 || p.Heavy) && (c.Error >= 0 || p.Light)
}

// The reference by hand: six choices of two kinds, written out.
func TestExhaustive(t *testing.T) {
	// 0:0, 1:4, 2:8 and with the 5: 5, 9, 13; 13 is past the capacity. 7 is wanted: 8 is 1 over, 5 is 2 under.
	p := stack.Problem{Kinds: []stack.Kind{{4, 1, 2}, {5, 2, 1}}, Wanted: 7, MaxMass: 12, MaxHeight: 9, Heavy: true, Light: true}
	want := stack.Choice{Count: []int64{2, 0}, Pieces: 2, Mass: 8, Height: 2, Error: 1, Found: true, Proven: true}
	if d := diff(want, exhaustive(p)); d != "" {
		t.Error(d)
	}
	// With the 5 in today and 2 allowed, nothing is moved.
	want = stack.Choice{Count: []int64{0, 1}, Pieces: 1, Mass: 5, Height: 2, Error: -2, Found: true, Proven: true}
	if d := diff(want, exhaustiveRefill(p, []int64{0, 1}, 2)); d != "" {
		t.Error(d)
	}
}
