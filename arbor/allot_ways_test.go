package arbor

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"example.com/steelyard/units"
)

// Every share that a job can make use of, each once: no more of a kind than there is, than its room holds and than its capacity
// bears.
func TestSharesOfAStock(t *testing.T) {
	low, weak := wants(9), wants(9)
	low.Frame.Room, weak.Frame.Capacity = 0.04, 25
	stock := Stock{of("10", 10, 3), of("500", 500, 3)}
	for _, c := range []struct {
		name, reason string
		job          Job
		shares       int
	}{
		{"all of it", "three of the 10, two of the 500: three weigh more than it bears", wants(9), 4 * 3},
		{"low", "two pieces of 2 cm in 4 cm", low, 3 * 3},
		{"weak", "two of the 10 and none of the 500 in 25 kg", weak, 3},
	} {
		shares, all := newAllotting([]Job{c.job}, stock).shares()
		if !all || len(shares) != 1 || len(shares[0]) != c.shares {
			t.Errorf("%s: %v, %v, want %d: %s", c.name, shares, all, c.shares, c.reason)
			continue
		}
		seen := map[[2]int]bool{}
		for _, s := range shares[0] {
			seen[[2]int{s[0], s[1]}] = true
			if s[0] > 3 || s[1] > 2 {
				t.Errorf("%s: a share of %v", c.name, s)
			}
		}
		if len(seen) != c.shares {
			t.Errorf("%s: the same twice in %v", c.name, shares[0])
		}
	}
}

// Ten thousand shares of all jobs together are tried, and no more.
func TestSharesThatAreTooMany(t *testing.T) {
	thin := func(count int) Piece { return Piece{Name: "thin", Mass: 0.01, Thickness: 0.0001, Count: count} }
	flat := func(count int) Piece { return Piece{Name: "flat", Mass: 0.02, Thickness: 0.0001, Count: count} }
	one, two := []Job{wants(9)}, []Job{wants(9), wants(9)}
	for _, c := range []struct {
		name  string
		jobs  []Job
		stock Stock
		all   bool
	}{
		{"10,000 of one job", one, Stock{thin(9_999)}, true},
		{"10,001 of one job", one, Stock{thin(10_000)}, false},
		{"5,000 of each of two", two, Stock{thin(4_999)}, true},
		{"5,001 of each of two", two, Stock{thin(5_000)}, false},
		{"100 times 100", one, Stock{thin(99), flat(99)}, true},
		{"100 times 101", one, Stock{thin(99), flat(100)}, false},
		{"more than whole numbers count", one, make(Stock, 32), false},
		{"no jobs", nil, Stock{thin(1)}, true},
		{"no pieces", one, nil, true},
	} {
		for k := range c.stock {
			if c.stock[k].Mass == 0 { // 4 to the power of 32
				c.stock[k] = thin(3)
			}
		}
		shares, all := newAllotting(c.jobs, c.stock).shares()
		if all != c.all || all && len(shares) != len(c.jobs) {
			t.Errorf("%s: %v, want %v; of %d jobs", c.name, all, c.all, len(shares))
		}
	}
}

// Of two stacks that are as near, or nearer, with no more of any kind, one will do: the one that takes less.
func TestChoicesThatNothingBetters(t *testing.T) {
	choice := func(off float64, used ...int) filledJob { return filledJob{off: off, used: used} }
	for _, c := range []struct {
		name    string
		choices []filledJob
		kept    [][]int
	}{
		{"the nearest first", []filledJob{choice(9, 0, 0), choice(1, 1, 1), choice(5, 1, 0)}, [][]int{{1, 1}, {1, 0}, {0, 0}}},
		{"as near with more", []filledJob{choice(5, 2, 0), choice(5, 1, 0)}, [][]int{{1, 0}}},
		{"further off with more", []filledJob{choice(1, 1, 0), choice(5, 2, 0)}, [][]int{{1, 0}}},
		{"the same twice", []filledJob{choice(1, 1, 0), choice(1, 1, 0)}, [][]int{{1, 0}}},
		{"as near with another kind", []filledJob{choice(1, 1, 0), choice(1, 0, 1)}, [][]int{{0, 1}, {1, 0}}},
		{"as near with fewer of another kind", []filledJob{choice(1, 0, 2), choice(1, 1, 0)}, [][]int{{1, 0}, {0, 2}}},
		{"none", nil, nil},
	} {
		var kept [][]int
		for _, k := range undominated(c.choices) {
			kept = append(kept, k.used)
		}
		if !slices.EqualFunc(kept, c.kept, slices.Equal[[]int]) {
			t.Errorf("%s: %v, want %v", c.name, kept, c.kept)
		}
	}
}

// What each search may cost falls with the number of sets, between bounds.
func TestStepsOfOneStack(t *testing.T) {
	for jobs, each := range map[int]int{0: 50_000, 1: 50_000, 20: 50_000, 40: 25_000, 500: 2000, 1000: 1000, 2000: 1000} {
		if got := newAllotting(make([]Job, jobs), nil).each; got != each {
			t.Errorf("%d sets: %d steps for each, want %d", jobs, got, each)
		}
	}
}

// Every search is counted, pipe weight and show weight, and what a stack costs beside it.
func TestStepsAreCounted(t *testing.T) {
	stock := Stock{of("10", 10, 9), of("7", 7, 9), of("4", 4, 9)}
	steps := func(j Job) int {
		a := newAllotting([]Job{j}, stock)
		if _, err := a.fill(0, a.stock); err != nil {
			t.Fatal(err)
		}
		once := a.spent
		if _, err := a.fill(0, a.stock); err != nil || a.spent != 2*once {
			t.Errorf("%d steps, and for the same again %d more, %v", once, a.spent-once, err)
		}
		return once
	}
	pipe, show := steps(wants(0).withPipe(33)), steps(wants(33))
	if both := steps(wants(33).withPipe(33)); pipe <= overhead || show <= overhead || both <= max(pipe, show) {
		t.Errorf("%d for the pipe weight, %d for the show weight, %d for both", pipe, show, both)
	}
	if nothing := steps(wants(0)); nothing < overhead || nothing > overhead+10 || overhead < 1 {
		t.Errorf("%d steps for nothing", nothing)
	}
}

// Pipe weight and show weight share the steps of one stack: what the one took is not there for the other, but for a step that it has
// in any case. Seventeen kinds of which no two go into one another are more than a thousand steps see through.
func TestStepsAreShared(t *testing.T) {
	var stock Stock
	for n := range 17 {
		stock = append(stock, Piece{Name: strconv.Itoa(n), Mass: units.Mass(20 + math.Sqrt(float64(3+7*n))), Thickness: units.Length(0.0100001 + 0.0013*math.Sqrt(float64(n))), Count: 9})
	}
	a := newAllotting([]Job{wants(301.237).withPipe(288.413)}, stock)
	a.each = 1000
	f, err := a.fill(0, a.stock)
	if err != nil || f.stack.Proven || len(f.stack.Pipe) == 0 || len(f.stack.Show) == 0 {
		t.Fatalf("%+v, %v: want both weights, and no proof", f.stack, err)
	}
	// Each of the two counts the step that it was refused.
	if spent := a.spent - overhead; spent < a.each || spent > a.each+1+2 {
		t.Errorf("%d steps spent of %d", spent, a.each)
	}
}

// twelve is a house in which trading does better than sharing out, and of which not every way can be tried.
func twelve() ([]Job, Stock) {
	var jobs []Job
	for n := range 12 {
		jobs = append(jobs, wants(units.Mass(20+7*n)))
	}
	return jobs, Stock{of("10", 10, 50), of("7", 7, 30), of("4", 4, 5)}
}

// Trading ends when its steps are spent, with the stack that is being filled then; the more it may spend, the nearer all come.
func TestTradingEnds(t *testing.T) {
	jobs, stock := twelve()
	var worst, total [4]float64
	for i, more := range []int{0, 1, 10_000, 1_000_000} {
		a := house(t, jobs, stock)
		a.share()
		a.most = a.spent + more
		start := a.spent
		a.trade()
		worst[i], total[i] = a.off()
		if more == 0 && a.spent != start || more == 1_000_000 && a.spent > start+500_000 {
			t.Errorf("%d of %d steps spent", a.spent-start, more)
		}
		if pair := 20 * (overhead + 1000); a.spent > a.most+pair {
			t.Errorf("%d of %d steps spent, and %d are the stacks of one trade", a.spent-start, more, pair)
		}
	}
	// 4 off at the worst and 8 in all as shared out, 1 and 2 as traded.
	if worst[0] != 4 || total[0] != 8 || worst[3] != 1 || total[3] != 2 || total[1] > 8 || total[2] > total[1] || total[3] > total[2] {
		t.Errorf("worst %v, total %v", worst, total)
	}
}

// What is looked at before trading is not taken off its steps: six hundred sets with pipe weight, for each of which up to fifty plates
// are looked at one by one, take more than five million; and the twelve sets of the test above still come as near.
func TestTradingHasItsOwnSteps(t *testing.T) {
	jobs, stock := twelve()
	for range 600 {
		j := wants(0).withPipe(0.001).withPlate(Plate{1, 0.003, 1})
		j.Frame.Length, j.Frame.Room = 49, 49
		jobs = append(jobs, j)
	}
	if got, err := Allot(jobs, stock); err != nil || got.Worst != 1 {
		t.Errorf("worst %v, %v, want 1", got.Worst, err)
	}
}

// Trying every way is no proof where the ways are too many, or where a stack was not proved to be the nearest; what was found
// is kept all the same.
func TestEveryWayThatProvesNothing(t *testing.T) {
	var jobs []Job
	for n := range 18 {
		jobs = append(jobs, wants(units.Mass(30+n)))
	}
	a := house(t, jobs, Stock{of("10", 10, 36), of("1", 1, 2)})
	a.share()
	before, _ := a.off()
	if a.everyWay() {
		t.Error("every way of eighteen sets is tried")
	}
	if after, _ := a.off(); after >= before {
		t.Errorf("%v off after %v", after, before)
	}
	few := []Job{wants(20), wants(24)}
	a = house(t, few, Stock{of("10", 10, 3), of("4", 4, 1)})
	a.share()
	if !a.everyWay() {
		t.Error("two sets: not every way is tried")
	}
	a.cut = true // of a stack that was filled before, and is of no account
	if !a.everyWay() {
		t.Error("two sets: every way is tried, and proves nothing")
	}
	a.each = 1
	if a.everyWay() {
		t.Error("a stack that is not proved proves all")
	}
}
