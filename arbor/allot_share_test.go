package arbor

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/steelyard/units"
)

// Of all measures by which the jobs are made to want less the one is kept with the least worst error, and of those that with the least
// total: here each of them is tried by itself. A smaller total is no reason to be further off at the worst.
func TestShareTakesTheBestMeasure(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	const near = 1e-9
	traps, later := 0, 0
	for range 400 {
		var stock Stock
		for k := range 2 + r.IntN(2) {
			stock = append(stock, of(fmt.Sprint(k), units.Mass(1+r.IntN(12))+units.Mass(k)/10, r.IntN(9)))
		}
		var jobs []Job
		for range 3 + r.IntN(4) {
			jobs = append(jobs, wants(units.Mass(5+r.IntN(40))))
		}
		a := house(t, jobs, stock)
		a.bound()
		a.share()
		worst, total := a.off()
		a.shareLess(0)
		bestWorst, bestTotal := a.off()
		for i, more := range []float64{0, 1, 1.02, 1.05, 1.1, 1.2} {
			a.shareLess(a.leastWorst * more)
			w, sum := a.off()
			if w > bestWorst+near && sum < bestTotal-near {
				traps++
			}
			if w < bestWorst-near || w <= bestWorst+near && sum < bestTotal-near {
				bestWorst, bestTotal = w, sum
				later = max(later, i)
			}
		}
		if worst > bestWorst+near || total > bestTotal+near {
			t.Errorf("%+v of %+v: worst %v, total %v; a measure comes to %v and %v", jobs, stock, worst, total, bestWorst, bestTotal)
		}
	}
	if traps == 0 || later == 0 {
		t.Errorf("%d smaller totals that are worse, and the first measure is the best in all: the test shows nothing", traps)
	}
}

// Two sets want 11 each, and there are 20 of a kilogram: each does with one less, a whole kilogram, and not one with two.
func TestShareOfAKilogramLess(t *testing.T) {
	a := house(t, []Job{wants(11), wants(11)}, Stock{of("1", 1, 20)})
	a.bound()
	a.share()
	if worst, total := a.off(); worst != 1 || total != 2 {
		t.Errorf("%v at the worst, %v in all, want 1 and 2", worst, total)
	}
}

// What is as near as a microgram is there: 0.1 and 0.2 are more than 0.3 as sums go, and no better can be had.
func TestDoneToTheMicrogram(t *testing.T) {
	for _, c := range []struct {
		least, off []float64 // worst and total; of two jobs
		done       bool
	}{
		{[]float64{0.2, 0.3}, []float64{0.1, 0.2}, true},
		{[]float64{0, 0}, []float64{1e-9, 0}, true},
		{[]float64{0, 2}, []float64{1.01e-9, 0}, false},
		{[]float64{2, 0}, []float64{0.7e-9, 0.7e-9}, false},
	} {
		a := allotting{leastWorst: c.least[0], leastTotal: c.least[1], now: []filledJob{{off: c.off[0]}, {off: c.off[1]}}}
		if a.done() != c.done {
			t.Errorf("%v off, and %v at the least: done %v", c.off, c.least, a.done())
		}
	}
}

// With no steps left nothing is traded, and nothing looked at.
func TestNoTradeWithoutSteps(t *testing.T) {
	a := house(t, []Job{wants(20), wants(20)}, Stock{of("10", 10, 2)})
	a.shareLess(0) // 0 and 20 off, where 10 and 10 can be had
	worst, _ := a.off()
	a.most = a.spent
	before := a.spent
	if a.pair(0, 1, worst) || a.spent != before {
		t.Errorf("traded in %d steps, and none are left", a.spent-before)
	}
	if a.most++; !a.pair(0, 1, worst) {
		t.Error("a step is left, and nothing is traded")
	}
}

// Of an error of tonnes a hair is no part that a float64 can tell: what is as near is as near all the same.
func TestTradingInTonnes(t *testing.T) {
	a := house(t, []Job{wants(3000), wants(2900)}, Stock{of("100", 100, 10)})
	for i := range a.jobs {
		a.jobs[i].Frame.Capacity = 5000
	}
	a.shareLess(0)
	if worst, _ := a.off(); worst != 2900 || !a.tradeWorst() {
		t.Errorf("%v off at the worst, and not traded", worst)
	}
	if worst, total := a.off(); worst >= 2900 || total != 4900 {
		t.Errorf("%v off at the worst, %v in all", worst, total)
	}

	// The one takes ten of the 100 as well as five of the 200, and is 2000 off with either; the other has room for one piece alone.
	weak, low := wants(3000), wants(200)
	low.Frame.Room = 0.02
	stock := Stock{of("200", 200, 5), of("100", 100, 10)}
	for name, better := range map[string]func(*allotting) bool{"trading": (*allotting).tradeAny, "every way": (*allotting).everyWay} {
		a = house(t, []Job{weak, low}, stock)
		a.shareLess(0)
		if _, total := a.off(); total != 2100 || !better(a) {
			t.Errorf("%s: %v off in all, and not bettered", name, total)
		}
		if worst, total := a.off(); worst != 2000 || total != 2000 {
			t.Errorf("%s: %v off at the worst, %v in all, want 2000 and 2000", name, worst, total)
		}
	}
	got, err := Allot([]Job{weak, low}, Stock{of("200", 200, 0), of("100", 100, 10)})
	if err != nil || got.Worst != 2000 || got.Total != 2200 || !slices.Equal(got.Hire, []Hire{{Name: "200", Count: 1}}) {
		t.Errorf("%+v, %v: want one more of the 200", got, err)
	}
}
