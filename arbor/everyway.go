package arbor

import (
	"cmp"
	"math"
	"slices"

	"example.com/steelyard/units"
)

// everyWay tries every share of the stock for every job, if there are few enough, and keeps the best. True: it is proved.
//
// A job's choices are its best stacks from every share; of two that are as near, or nearer, with no more of any kind, one will
// do. They are then tried job by job, the nearest first, and left where even the other jobs alone could not better what is
// known.
func (a *allotting) everyWay() bool {
	shares, all := a.shares()
	if !all {
		return false
	}
	a.cut = false
	e := every{a: a, left: slices.Clone(a.stock), chosen: make([]filledJob, len(a.jobs))}
	e.worst, e.total = a.off()
	for _, i := range a.byWish() {
		var choices []filledJob
		for _, share := range shares[i] {
			if f := a.orNothing(i, share); !math.IsInf(f.off, 1) {
				choices = append(choices, f)
			}
		}
		e.order, e.choices = append(e.order, i), append(e.choices, undominated(choices))
	}
	e.rest = make([]struct{ worst, total float64 }, len(a.jobs)+1)
	for at := len(a.jobs) - 1; at >= 0; at-- {
		off := a.least[e.order[at]]
		e.rest[at].worst, e.rest[at].total = max(e.rest[at+1].worst, off), e.rest[at+1].total+off
	}
	e.try(0, 0, 0)
	if e.best != nil {
		a.now = e.best
	}
	return e.steps <= exactSteps && !a.cut
}

// shares lists every share of the stock that a job can make use of; false where there are too many.
func (a *allotting) shares() (shares [][][]int, all bool) {
	fills := 0
	for _, job := range a.jobs {
		most := make([]int, len(a.stock))
		ways := 1
		for k, piece := range a.kinds {
			most[k] = min(a.stock[k], int(min(units.Ratio(job.Frame.Room, piece.Thickness), units.Ratio(job.Frame.Capacity, piece.Mass), 1e6)))
			if ways *= most[k] + 1; ways > exactFills {
				return nil, false
			}
		}
		if fills += ways; fills > exactFills {
			return nil, false
		}
		share := make([]int, len(most))
		own := [][]int{slices.Clone(share)}
		for k := 0; k < len(most); {
			if share[k] == most[k] {
				share[k] = 0
				k++
				continue
			}
			share[k]++
			own = append(own, slices.Clone(share))
			k = 0
		}
		shares = append(shares, own)
	}
	return shares, true
}

// undominated leaves out choices that another is no worse than in any way, and puts the nearest first.
func undominated(choices []filledJob) []filledJob {
	pieces := func(f filledJob) (n int) {
		for _, u := range f.used {
			n += u
		}
		return n
	}
	slices.SortStableFunc(choices, func(x, y filledJob) int {
		return cmp.Or(cmp.Compare(x.off, y.off), cmp.Compare(pieces(x), pieces(y)), slices.Compare(x.used, y.used))
	})
	var kept []filledJob
	for _, c := range choices {
		if !slices.ContainsFunc(kept, func(k filledJob) bool { return among(k.used, c.used) }) {
			kept = append(kept, c)
		}
	}
	return kept
}

// every is the trying of every way.
type every struct {
	a       *allotting
	order   []int // of the jobs
	choices [][]filledJob
	rest    []struct{ worst, total float64 } // what the jobs from one on are off at least
	left    []int
	chosen  []filledJob
	steps   int

	worst, total float64
	best         []filledJob
}

func (e *every) try(at int, worst, total float64) {
	if e.steps++; e.steps > exactSteps {
		return
	}
	least, sum := max(worst, e.rest[at].worst), total+e.rest[at].total
	if least > e.worst+hair || (least >= e.worst-hair && sum >= e.total-hair) {
		return
	}
	if at == len(e.order) {
		e.worst, e.total, e.best = worst, total, slices.Clone(e.chosen)
		return
	}
	for _, c := range e.choices[at] {
		if !among(c.used, e.left) {
			continue
		}
		take(e.left, c.used)
		e.chosen[e.order[at]] = c
		e.try(at+1, max(worst, c.off), total+c.off)
		put(e.left, c.used)
	}
}
