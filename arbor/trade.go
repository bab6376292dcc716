package arbor

import "slices"

// hair is less than any two errors differ by, which are whole nanograms over a ratio, and more than their sums are off.
const hair = 1e-13 // untyped: kilograms

// trade lets the worst off, and then all that are further off than they would be alone, trade with each other job and with
// what is left.
func (a *allotting) trade() {
	for !a.done() && a.spent < a.most {
		if !a.tradeWorst() && !a.tradeAny() {
			return
		}
	}
}

func (a *allotting) tradeWorst() bool {
	worst, _ := a.off()
	for i, f := range a.now {
		if f.off < worst-hair || f.off <= a.least[i]+hair {
			continue
		}
		for j := range a.now {
			if a.pair(i, j, worst) {
				return true
			}
		}
	}
	return false
}

func (a *allotting) tradeAny() bool {
	worst, _ := a.off()
	better := false
	for i := range a.now {
		for j := range a.now {
			if a.now[i].off <= a.least[i]+hair || a.spent >= a.most {
				break
			}
			better = a.pair(i, j, worst) || better
		}
	}
	return better
}

// pair fills two jobs anew from all that both have and what is left, and keeps it where it is better: where the two were the
// worst and are no more, or where their total is smaller and they are no further off than the worst was. With i = j it is one job.
func (a *allotting) pair(i, j int, worst float64) bool {
	if a.spent >= a.most {
		return false
	}
	pool := slices.Clone(a.left)
	put(pool, a.now[i].used)
	old := a.now[i].off
	total := old
	if i != j {
		put(pool, a.now[j].used)
		old, total = max(old, a.now[j].off), total+a.now[j].off
	}
	found := false
	var fi, fj filledJob
	try := func(first, second int, share []int) filledJob {
		x := a.orNothing(first, share)
		y := filledJob{used: make([]int, len(pool))}
		if first != second {
			rest := slices.Clone(pool)
			take(rest, x.used)
			y = a.orNothing(second, rest)
		}
		most, sum := max(x.off, y.off), x.off+y.off
		if (old >= worst-hair && most < old-hair) || (sum < total-hair && most <= max(old, worst-2*hair)+hair) {
			found, old, total = true, most, sum
			if fi, fj = x, y; first != i {
				fi, fj = y, x
			}
		}
		return x
	}
	for _, first := range [...]int{i, j} {
		second := i + j - first
		x := try(first, second, pool)
		// One piece less of a kind for the first may be the one that the second is in want of; or all of a kind.
		for k, n := range x.used {
			if n == 0 || first == second {
				continue
			}
			for _, less := range [...]int{n - 1, 0} {
				share := slices.Clone(pool)
				share[k] = less
				try(first, second, share)
			}
		}
		if i == j {
			break
		}
	}
	if !found {
		return false
	}
	a.left = pool
	a.now[i] = fi
	take(a.left, fi.used)
	if i != j {
		a.now[j] = fj
		take(a.left, fj.used)
	}
	return true
}
