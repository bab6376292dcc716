package lineset

import (
	"math"
	"slices"

	"example.com/steelyard/internal/order"
	"example.com/steelyard/units"
)

// layTrims marks the spots at which the batten halts.
func (q *planning) layTrims() {
	q.problem.Positions = make([]order.Position, len(q.spots))
	q.bridged = make([]bool, len(q.spots))
	anywhere := !slices.ContainsFunc(q.trims, func(t WorkTrim) bool { return t.End })
	for i, s := range slices.Backward(q.spots) {
		k := slices.IndexFunc(q.trims, func(t WorkTrim) bool { return t.Trim == s.trim })
		if k < 0 || s.above {
			continue
		}
		at := order.Position{Halt: true, End: anywhere || q.trims[k].End, Deck: q.trims[k].Deck}
		for other, beside := range q.spots {
			if other != i && q.beside(s.trim, beside.trim) {
				at.Also = append(at.Also, other)
			}
		}
		q.problem.Positions[i], q.problem.Start = at, i // in the end the lowest
		q.bridged[i] = q.trims[k].Bridge
	}
}

// layItems puts items together that are carried alike at every spot, and sums up what else is carried.
func (q *planning) layItems() {
	q.base, q.all = make([]int64, len(q.spots)), make([]int64, len(q.spots))
	for k, s := range q.spots {
		for _, place := range q.kept.hung {
			q.base[k] += carriedAt(q.set.Hang[place], s)
		}
	}
	over := q.overhangs()
	if over {
		q.problem.Barred = q.barred
	}
	for place, item := range q.set.Hang {
		if slices.Contains(q.kept.hung, place) {
			continue
		}
		carried := make([]int64, len(q.spots))
		for k, s := range q.spots {
			carried[k] = carriedAt(item, s)
			q.all[k] += carried[k]
		}
		g := 0
		for ; g < len(q.groups); g++ {
			// Where the batten may tip, it matters where they hang.
			place := over && centreOf(q.set.Hang[q.groups[g][0]]) != centreOf(item)
			if !place && slices.Equal(q.problem.Items[g].Carried, carried) {
				break
			}
		}
		if g == len(q.groups) {
			q.groups = append(q.groups, nil)
			q.problem.Items = append(q.problem.Items, order.Item{Carried: carried})
		}
		q.groups[g] = append(q.groups[g], place)
		q.problem.Items[g].Count++
	}
}

// barred tells whether the batten tips at a spot with so many of each group, and what is kept.
func (q *planning) barred(k int, hung []int) bool {
	hangs := make([]bool, len(q.set.Hang))
	for _, place := range q.kept.hung {
		hangs[place] = true
	}
	for g, n := range hung {
		for _, place := range q.groups[g][:n] {
			hangs[place] = true
		}
	}
	return q.tips(q.spots[k], func(place int) bool { return hangs[place] })
}

// layPieces weighs the arbor with each number of pieces.
func (q *planning) layPieces() {
	in := inArbor{frame: q.set.Rigging.Arbor, rows: slices.Clone(q.counter.Stack.Pipe)}
	in.pipe = in.count()
	n := 0
	weigh := func() {
		if n >= q.kept.pieces {
			q.arbor = append(q.arbor, q.counter.Tare+kilograms(in.nanograms()))
		}
	}
	weigh()
	for _, row := range q.counter.Stack.Show {
		each := row
		each.Count = 1
		for range row.Count {
			in.put(each)
			n++
			weigh()
		}
	}
	q.problem.Pieces = len(q.arbor) - 1
}

// bound finds, for each spot and number of pieces, between which sums of what is carried the limits are kept. The
// sums are found by asking the imbalance itself, so that what is planned is to the last bit what is checked.
func (q *planning) bound(limits OrderLimits) {
	n := len(q.spots)
	q.problem.Low, q.problem.High, q.problem.Even = make([][]int64, n), make([][]int64, n), make([][]int64, n)
	for k, s := range q.spots {
		low, high, even := make([]int64, len(q.arbor)), make([]int64, len(q.arbor)), make([]int64, len(q.arbor))
		stop := q.onStop(s)
		for pieces, arbor := range q.arbor {
			imbalance := func(sum int64) units.Force { return q.unbalanced(s.trim, q.base[k]+sum, arbor) }
			// What one nanogram does to the imbalance tells where to look first.
			at := func(i units.Force) float64 {
				left := (i - imbalance(0)).Mass(units.StandardGravity)
				return left.In(units.Kilogram) * nanogramsPerKilogram
			}
			most := q.all[k]
			even[pieces] = lastOf(most, at(0), func(sum int64) bool { return imbalance(sum) <= 0 })
			high[pieces] = most
			if lim := limits.heavy(stop); lim.given() {
				high[pieces] = lastOf(most, at(lim.Max), func(sum int64) bool { i := imbalance(sum); return i <= 0 || limits.allow(i, stop) })
			}
			if lim := limits.ArborHeavy; lim.given() {
				low[pieces] = 1 + lastOf(most, at(-lim.Max), func(sum int64) bool { i := imbalance(sum); return i < 0 && !limits.allow(i, stop) })
			}
		}
		q.problem.Low[k], q.problem.High[k], q.problem.Even[k] = low, high, even
	}
}

// lastOf finds the last number from 0 to most for which ok, which holds up to some number and from there on not,
// holds, or -1. It looks near the guess first.
func lastOf(most int64, guess float64, ok func(int64) bool) int64 {
	low, high := int64(-1), most+1 // ok holds at low, and not at high
	const near = 1 << 10
	g := int64(math.Min(math.Max(guess, 0), float64(most)))
	for _, probe := range [2]int64{g - near, g + near} {
		switch {
		case probe <= low || probe >= high:
		case ok(probe):
			low = probe
		default:
			high = probe
		}
	}
	for high-low > 1 {
		if mid := low + (high-low)/2; ok(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
