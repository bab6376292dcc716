package arbor

import (
	"math"
	"slices"
)

// scarce bounds what a stock can do in which some kinds are too few for all jobs to have what they would take alone. With so
// many of those kinds at most, and all of the others, a job is so far off at least. For all to be within an error they
// must then take so many of them, however they are counted: each kind alone, as pieces, by their mass. Where that is more
// than there is, no allotment is within that error; and where each piece is given a price, no total is smaller than what
// the jobs are then off with what they pay, less what the whole stock is worth.
func (a *allotting) scarce() {
	const (
		mostKinds = 3
		some      = 4 // pieces of a kind that are told apart: none up to three; four or more, as many as there are, count as four
	)
	wanted := make([]int, len(a.stock))
	for _, f := range a.alone {
		put(wanted, f.used)
	}
	var kinds []int
	ways := 1
	for k := range wanted {
		if wanted[k] > a.stock[k] {
			kinds = append(kinds, k)
			ways *= some + 1
		}
	}
	if len(kinds) == 0 || len(kinds) > mostKinds || ways*len(a.jobs) > exactFills {
		return
	}
	taken := make([][]int, ways) // of each kind, by the way
	for w := range taken {
		rest := w
		for range kinds {
			taken[w] = append(taken[w], rest%(some+1))
			rest /= some + 1
		}
	}
	off := make([][]float64, len(a.jobs)) // by job and way
	var errors []float64
	for i := range a.jobs {
		off[i] = make([]float64, ways)
		for w, counts := range taken {
			share := slices.Clone(a.stock)
			for n, k := range kinds {
				if counts[n] < some {
					share[k] = min(share[k], counts[n])
				}
			}
			off[i][w] = a.leastOff(i, share)
			errors = append(errors, off[i][w])
		}
	}
	slices.Sort(errors)
	errors = slices.Compact(errors)

	// Ways to count: a price for a piece of each of the kinds.
	prices := [][]float64{make([]float64, len(kinds)), make([]float64, len(kinds))}
	for n, k := range kinds {
		prices[0][n], prices[1][n] = 1, float64(a.kinds[k].Mass)
		alone := make([]float64, len(kinds))
		alone[n] = 1
		prices = append(prices, alone)
	}
	for _, price := range prices {
		worth := 0.0 // of the stock
		cost := make([]float64, ways)
		for n, k := range kinds {
			worth += price[n] * float64(a.stock[k])
			for w := range cost {
				cost[w] += price[n] * float64(taken[w][n])
			}
		}
		// The first error that does not take more than there is.
		low, _ := slices.BinarySearchFunc(errors, worth*(1+1e-12), func(within, worth float64) int {
			sum := 0.0
			for i := range off {
				least := math.Inf(1)
				for w := range cost {
					if off[i][w] <= within+hair {
						least = min(least, cost[w])
					}
				}
				sum += least
			}
			if sum > worth {
				return -1
			}
			return 1
		})
		a.leastWorst = max(a.leastWorst, errors[low])
		for scale := 1e-6; scale < 1e3; scale *= 1.5 {
			total := -scale * worth
			for i := range off {
				least := math.Inf(1)
				for w := range cost {
					least = min(least, off[i][w]+scale*cost[w])
				}
				total += least
			}
			a.leastTotal = max(a.leastTotal, total)
		}
	}
}
