package stack

import "slices"

// ladder bounds the mass that a thickness of pieces can have, with no more of
// each kind than there are: filled from the densest kind on it is the most, from
// the airiest the least. Part pieces count, as in Dantzig's bound of the knapsack
// problem (Operations Research 5, 1957); so it is a bound, and rises with the
// thickness.
type ladder []Kind // densest first

// fill makes it a ladder of the kinds of which there are any, and tells how many there are.
func (l ladder) fill(kinds []Kind) (rungs int) {
	for _, k := range kinds {
		if k.Count > 0 {
			l[rungs] = k
			rungs++
		}
	}
	slices.SortFunc(l[:rungs], func(a, b Kind) int {
		switch {
		case ratioLess(b.Mass, b.Thickness, a.Mass, a.Thickness):
			return -1
		case ratioLess(a.Mass, a.Thickness, b.Mass, b.Thickness):
			return 1
		}
		return 0
	})
	return rungs
}

// most is the most mass of pieces up to this thickness.
func (l ladder) most(thickness int64) int64 {
	mass := int64(0)
	for i := 0; i < len(l) && thickness > 0; i++ {
		k := &l[i]
		all := product(k.Count, k.Thickness)
		if all > thickness {
			return min(Unlimited, mass+scale(thickness, k.Mass, k.Thickness, false))
		}
		mass = min(Unlimited, mass+product(k.Count, k.Mass))
		thickness -= all
	}
	return mass
}

// least is the least mass of pieces from this thickness on, of which there are so many.
func (l ladder) least(thickness int64) int64 {
	mass := int64(0)
	for i := len(l) - 1; i >= 0 && thickness > 0; i-- {
		k := &l[i]
		all := product(k.Count, k.Thickness)
		if all > thickness {
			return min(Unlimited, mass+scale(thickness, k.Mass, k.Thickness, true))
		}
		mass = min(Unlimited, mass+product(k.Count, k.Mass))
		thickness -= all
	}
	return mass
}
