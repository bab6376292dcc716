package arbor

import (
	"cmp"
	"slices"
)

// hire finds what is missing: first all that the jobs would take beyond the stock, were there plenty; then less of each kind, the
// heaviest first, as long as trading still brings all jobs as near.
func (a *allotting) hire() []Hire {
	plenty := a.plenty()
	ample := newAllotting(a.jobs, a.kinds)
	wanted := make([]int, len(a.stock))
	better := false
	for i := range a.jobs {
		f := ample.orNothing(i, plenty)
		ample.alone, ample.least = append(ample.alone, f), append(ample.least, f.off)
		ample.leastWorst = max(ample.leastWorst, f.off)
		ample.leastTotal += f.off
		better = better || f.off < a.now[i].off-hair
		put(wanted, f.used)
	}
	if !better {
		return nil
	}
	missing := make([]int, len(a.stock))
	for k := range missing {
		missing[k] = max(0, wanted[k]-a.stock[k])
	}
	enough := func(missing []int) bool {
		ample.stock = slices.Clone(a.stock)
		put(ample.stock, missing)
		ample.most = ample.spent + hireSteps/20
		ample.shareLess(0)
		ample.trade()
		for i, f := range ample.now {
			if f.off > ample.alone[i].off+hair {
				return false
			}
		}
		return true
	}
	kinds := a.heaviestFirst()
	ample.spent = 0
	for _, k := range kinds {
		for low := 0; low < missing[k] && ample.spent < hireSteps; {
			mid := (low + missing[k]) / 2
			trial := slices.Clone(missing)
			trial[k] = mid
			if enough(trial) {
				missing[k] = mid
			} else {
				low = mid + 1
			}
		}
	}
	var hire []Hire
	for _, k := range kinds {
		if missing[k] > 0 {
			hire = append(hire, Hire{Name: a.kinds[k].Name, Count: missing[k]})
		}
	}
	return hire
}

func (a *allotting) plenty() []int {
	plenty := make([]int, len(a.stock))
	for k := range plenty {
		plenty[k] = max(plentyOfAKind, a.stock[k])
	}
	return plenty
}

// plentyOfAKind is more than any arbor takes.
const plentyOfAKind = 10_000

func (a *allotting) heaviestFirst() []int {
	kinds := make([]int, len(a.kinds))
	for k := range kinds {
		kinds[k] = k
	}
	slices.SortStableFunc(kinds, func(i, j int) int { return cmp.Compare(a.kinds[j].Mass, a.kinds[i].Mass) })
	return kinds
}
