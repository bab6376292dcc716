package arbor_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/units"
)

func job(name string, wanted units.Mass) arbor.Job {
	return arbor.Job{Name: name, Frame: arbor.Frame{Length: 3, Room: 2, Capacity: 1000}, Wanted: arbor.Wanted{Show: wanted}}
}

func kind(name string, mass units.Mass, count int) arbor.Piece {
	return arbor.Piece{Name: name, Mass: mass, Thickness: 0.02, Count: count}
}

// By hand: what the worst off gets counts before the total, and what is missing is what would have to be hired.
func TestAllotByHand(t *testing.T) {
	for _, c := range []struct {
		name         string
		jobs         []arbor.Job
		stock        arbor.Stock
		worst, total units.Mass
		calls        []string // nil: it does not matter who gets what
		hire         []arbor.Hire
	}{
		{"enough for both", []arbor.Job{job("a", 10), job("b", 12)}, arbor.Stock{kind("12", 12, 1), kind("10", 10, 1)}, 0, 0, []string{"1 of the 10", "1 of the 12"}, nil},
		{"each could take what the other needs", []arbor.Job{job("a", 20), job("b", 18)}, arbor.Stock{kind("10", 10, 2), kind("9", 9, 2)}, 0, 0, []string{"2 of the 10", "2 of the 9"}, nil},
		{"one must do with less", []arbor.Job{job("a", 20), job("b", 24)}, arbor.Stock{kind("10", 10, 3), kind("4", 4, 1)}, 6, 10, nil, []arbor.Hire{{Name: "10", Count: 1}}},
		{"nothing at all", []arbor.Job{job("a", 10)}, arbor.Stock{kind("10", 10, 0)}, 10, 10, []string{"nothing"}, []arbor.Hire{{Name: "10", Count: 1}}},
		{
			"hire what no other kind makes up for",
			[]arbor.Job{job("a", 20), job("b", 20), job("c", 7)},
			arbor.Stock{kind("5", 5, 9), kind("7", 7, 0), kind("10", 10, 1)},
			2, 2, nil,
			[]arbor.Hire{{Name: "7", Count: 1}},
		},
		{
			// Four of the 10 would be taken; with three, two of the 5 make up for one.
			"hire less than all would take",
			[]arbor.Job{job("a", 20), job("b", 20), job("c", 7)},
			arbor.Stock{kind("5", 5, 3), kind("7", 7, 0), kind("10", 10, 1)},
			10, 22, nil,
			[]arbor.Hire{{Name: "10", Count: 2}, {Name: "7", Count: 1}},
		},
		{
			// Two of the 10 are taken by who wants 20, whom 10 and two of the 5 serve as well: then one is left for the arbor with
			// room for one piece.
			"hire what trading does not make up for",
			[]arbor.Job{job("a", 20), {Name: "b", Frame: arbor.Frame{Length: 3, Room: 0.02, Capacity: 1000}, Wanted: arbor.Wanted{Show: 10}}, job("c", 7)},
			arbor.Stock{kind("5", 5, 4), kind("7", 7, 0), kind("10", 10, 2)},
			2, 2, nil,
			[]arbor.Hire{{Name: "7", Count: 1}},
		},
		{"no jobs", nil, arbor.Stock{kind("10", 10, 1)}, 0, 0, []string{}, nil},
	} {
		got, err := arbor.Allot(c.jobs, c.stock)
		if err != nil || !got.Proven {
			t.Errorf("%s: proven %v, %v", c.name, got.Proven, err)
			continue
		}
		var calls []string
		for _, s := range got.Stacks {
			calls = append(calls, s.Call())
		}
		if got.LeastWorst != got.Worst || got.LeastTotal != got.Total {
			t.Errorf("%s: proved, but at the least %v and %v", c.name, got.LeastWorst, got.LeastTotal)
		}
		if got.Worst != c.worst || got.Total != c.total || !slices.Equal(got.Hire, c.hire) || c.calls != nil && !slices.Equal(calls, c.calls) {
			t.Errorf("%s: worst %v, total %v, %q, hire %v", c.name, got.Worst, got.Total, calls, got.Hire)
		}
	}
}

// A double purchase set's error counts half as much, when it is referred to the batten.
func TestAllotRefers(t *testing.T) {
	single, double := job("single", 10), job("double", 10)
	double.Ratio = 2
	got, err := arbor.Allot([]arbor.Job{single, double}, arbor.Stock{kind("10", 10, 1), kind("6", 6, 1)})
	if err != nil || got.Worst != 2 || got.Stacks[0].Call() != "1 of the 10" {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestAllotRefuses(t *testing.T) {
	bad, fussy := job("bad", 10), job("fussy", 10)
	bad.Frame.Room, bad.Ratio = 0, -1
	fussy.Side = arbor.NeverBattenHeavy
	for _, c := range []struct {
		name  string
		jobs  []arbor.Job
		stock arbor.Stock
		field string
	}{
		{"no room", []arbor.Job{job("a", 1), bad}, arbor.Stock{kind("10", 10, 1)}, "jobs[1].frame.room"},
		{"a ratio below zero", []arbor.Job{bad}, arbor.Stock{kind("10", 10, 1)}, "jobs[0].ratio"},
		{"a piece without mass", nil, arbor.Stock{kind("10", 0, 1)}, "stock[0].mass"},
		{"a wish that is none", []arbor.Job{job("a", units.Mass(math.NaN()))}, arbor.Stock{kind("10", 10, 1)}, "jobs[0].wanted.show"},
		{"too many", make([]arbor.Job, 2001), nil, "jobs"},
	} {
		if _, err := arbor.Allot(c.jobs, c.stock); !slices.Contains(fields(t, err), c.field) {
			t.Errorf("%s: %v, want %s", c.name, err, c.field)
		}
	}
	// Each fault is told once, with the path of what the caller gave.
	weird := job("weird", 20)
	weird.Ratio = -1
	bad.Ratio = 0
	_, err := arbor.Allot([]arbor.Job{job("a", 9), bad, weird}, arbor.Stock{kind("10", -1, 1)})
	if got, want := fields(t, err), []string{"stock[0].mass", "jobs[1].frame.room", "jobs[2].ratio"}; !slices.Equal(got, want) {
		t.Errorf("faults of %q, want %q", got, want)
	}
	// Three of the 4 are never too light for 10; who comes last has one.
	for _, c := range []struct {
		name   string
		jobs   []arbor.Job
		pieces int
		field  string
		proven bool
	}{
		{"alone", []arbor.Job{job("easy", 7), fussy}, 2, "jobs[1]", true},
		{"two of three", []arbor.Job{fussy, job("easy", 7), fussy}, 4, "jobs[2]", false},
	} {
		var none *arbor.NoStackError
		var at *units.FieldError
		_, err := arbor.Allot(c.jobs, arbor.Stock{kind("4", 4, c.pieces)})
		if !errors.As(err, &none) || !errors.As(err, &at) || at.Field != c.field || at.Of != `"fussy"` ||
			none.Wanted != fussy.Wanted || none.Side != fussy.Side || none.Proven != c.proven {
			t.Errorf("a side that nothing keeps to, %s: %v", c.name, err)
		}
	}
	got, err := arbor.Allot([]arbor.Job{job("easy", 16), fussy}, arbor.Stock{kind("4", 4, 4)})
	if err != nil || got.Stacks[1].Call() != "3 of the 4" || got.Worst != 12 || !got.Proven {
		t.Errorf("a side that one of two keeps to: %+v, %v", got, err)
	}
}

// drawHouse is a few sets over a little stock.
func drawHouse(t *rapid.T) ([]arbor.Job, arbor.Stock) {
	var stock arbor.Stock
	for k := range rapid.IntRange(1, 3).Draw(t, "kinds") {
		mass := units.Mass(rapid.IntRange(1, 12).Draw(t, "mass"))
		stock = append(stock, kind(fmt.Sprint(k), mass+units.Mass(0.1*float64(k)), rapid.IntRange(0, 4).Draw(t, "count")))
	}
	var jobs []arbor.Job
	for i := range rapid.IntRange(1, 4).Draw(t, "jobs") {
		j := job(fmt.Sprint(i), units.Mass(rapid.IntRange(0, 30).Draw(t, "wanted")))
		j.Frame.Room = units.Length(rapid.IntRange(1, 6).Draw(t, "room")) / 50
		if rapid.Bool().Draw(t, "plates") {
			j.Frame.Plate = arbor.Plate{Mass: 0.5, Thickness: 0.003, Every: 0.05}
		}
		j.Wanted.Pipe = units.Mass(rapid.IntRange(-5, 10).Draw(t, "pipe"))
		if j.Wanted.Pipe >= 0 { // else even an empty arbor may be too heavy
			j.Side = rapid.SampledFrom([]arbor.Side{arbor.EitherSide, arbor.NeverArborHeavy}).Draw(t, "side")
		}
		j.Ratio = float64(rapid.IntRange(1, 2).Draw(t, "ratio"))
		jobs = append(jobs, j)
	}
	return jobs, stock
}

type fataler interface{ Fatal(...any) }

// exhaustive tries every way to share the pieces out.
func exhaustive(t fataler, jobs []arbor.Job, stock arbor.Stock) (worst, total float64) {
	worst, total = math.Inf(1), math.Inf(1)
	left := make([]int, len(stock))
	for k, p := range stock {
		left[k] = p.Count
	}
	known := make([]map[[4]int]float64, len(jobs)) // by the share: of four kinds at most
	off := func(i int, share []int) float64 {
		var key [4]int
		copy(key[:], share)
		if e, ok := known[i][key]; ok {
			return e
		}
		own := slices.Clone(stock)
		for k := range own {
			own[k].Count = share[k]
		}
		s, err := jobs[i].Frame.Fill(jobs[i].Wanted, own, jobs[i].Side)
		if err != nil {
			t.Fatal(err)
		}
		if known[i] == nil {
			known[i] = map[[4]int]float64{}
		}
		known[i][key] = referred(s, jobs[i])
		return known[i][key]
	}
	var deal func(i int, w, sum float64)
	deal = func(i int, w, sum float64) {
		if w > worst+1e-12 {
			return
		}
		if i == len(jobs) {
			if w < worst-1e-12 || sum < total {
				worst, total = w, sum
			}
			return
		}
		share := make([]int, len(stock))
		var choose func(k int)
		choose = func(k int) {
			if k == len(stock) {
				deal(i+1, math.Max(w, off(i, share)), sum+off(i, share))
				return
			}
			for n := range left[k] + 1 {
				share[k] = n
				left[k] -= n
				choose(k + 1)
				left[k] += n
			}
		}
		choose(0)
	}
	deal(0, 0, 0)
	return worst, total
}

// Small houses: as good as the best of every way to share the pieces out, and proved.
func TestPropAllotIsExhaustive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		jobs, stock := drawHouse(t)
		got, err := arbor.Allot(jobs, stock)
		if err != nil {
			t.Fatal(err)
		}
		worst, total := exhaustive(t, jobs, stock)
		if !got.Proven || !near.Abs(got.Worst.In(units.Kilogram), worst, 1e-9) || !near.Abs(got.Total.In(units.Kilogram), total, 1e-9) {
			t.Fatalf("proven %v: worst %v, total %v, want %v and %v", got.Proven, got.Worst, got.Total, worst, total)
		}
	})
}

// referred is how far a stack is off in kilograms, as its job counts it.
func referred(s arbor.Stack, j arbor.Job) float64 {
	off := math.Abs(s.Error.In(units.Kilogram))
	if j.Ratio != 0 {
		off /= j.Ratio
	}
	return off
}

// keeps tells what an allotment must be whatever the house: no more of a kind than there is, each stack within its arbor, the
// errors those of the stacks, never better than what is said to be the least.
func keeps(t fataler, jobs []arbor.Job, stock arbor.Stock, got arbor.Allotment) {
	var worst, total float64
	used := map[string]int{}
	for i, s := range got.Stacks {
		off := referred(s, jobs[i])
		worst, total = math.Max(worst, off), total+off
		for name, n := range s.Kinds() {
			used[name] += n
		}
		if s.Height > jobs[i].Frame.Room || s.Mass > jobs[i].Frame.Capacity {
			t.Fatal("job", i, "does not fit:", s)
		}
	}
	if !near.Abs(worst, got.Worst.In(units.Kilogram), 1e-9) || !near.Abs(total, got.Total.In(units.Kilogram), 1e-9) || got.LeastWorst > got.Worst || got.LeastTotal > got.Total {
		t.Fatal("worst", worst, "and total", total, "of", got)
	}
	if got.Proven && (got.LeastWorst != got.Worst || got.LeastTotal != got.Total) {
		t.Fatal("proved, but less may be had:", got)
	}
	for _, p := range stock {
		if used[p.Name] > p.Count {
			t.Fatal(used[p.Name], "of the", p.Name, "of", p.Count)
		}
	}
}

// withHire is a stock and what is to be hired for it.
func withHire(stock arbor.Stock, hire []arbor.Hire) arbor.Stock {
	out := slices.Clone(stock)
	for k := range out {
		for _, h := range hire {
			if h.Name == out[k].Name {
				out[k].Count += h.Count
			}
		}
	}
	return out
}

// aloneWithPlenty is what all jobs are off in all, each by itself with as many pieces of each kind as it takes.
func aloneWithPlenty(t fataler, jobs []arbor.Job, stock arbor.Stock) (worst, total float64) {
	plenty := slices.Clone(stock)
	for k := range plenty {
		plenty[k].Count = 1000
	}
	for _, j := range jobs {
		best, err := j.Frame.Fill(j.Wanted, plenty, j.Side)
		if err != nil {
			t.Fatal(err)
		}
		off := referred(best, j)
		worst, total = math.Max(worst, off), total+off
	}
	return worst, total
}

// An allotment keeps to all that it must; more stock is never worse; and with what is to be hired the house is as near as with
// plenty.
func TestPropAllotKeeps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		jobs, stock := drawHouse(t)
		got, err := arbor.Allot(jobs, stock)
		if err != nil {
			t.Fatal(err)
		}
		keeps(t, jobs, stock, got)
		more := slices.Clone(stock)
		more[0].Count += rapid.IntRange(1, 3).Draw(t, "more")
		if better, err := arbor.Allot(jobs, more); err != nil || better.Worst > got.Worst+1e-9 {
			t.Fatalf("with more stock %v, without %v (%v)", better.Worst, got.Worst, err)
		}
		all, err := arbor.Allot(jobs, withHire(stock, got.Hire))
		if err != nil {
			t.Fatal(err)
		}
		worst, total := aloneWithPlenty(t, jobs, stock)
		if all.Worst.In(units.Kilogram) > worst+1e-9 || all.Worst.In(units.Kilogram) > worst-1e-9 && all.Total.In(units.Kilogram) > total+1e-9 {
			t.Fatalf("with %v hired %v and %v off, with plenty %v and %v", got.Hire, all.Worst, all.Total, worst, total)
		}
	})
}

// A house of 60 sets over a shared stock; gap-g is how far the worst error may be from the best there is.
func BenchmarkAllot(b *testing.B) {
	for _, c := range []struct {
		name  string
		stock arbor.Stock
	}{
		{"enough", arbor.Stock{kind("22", 22.3, 3000), kind("11", 11.1, 600), kind("5", 5.3, 600)}},
		{"tight in small pieces", arbor.Stock{kind("22", 22.3, 3000), kind("11", 11.1, 30), kind("5", 5.3, 20)}},
		{"short", arbor.Stock{kind("22", 22.3, 500), kind("11", 11.1, 100), kind("5", 5.3, 60)}},
		{"six kinds, tight", arbor.Stock{kind("22", 22.3, 700), kind("18", 18.1, 100), kind("11", 11.1, 60), kind("7", 7.2, 40), kind("5", 5.3, 30), kind("2", 2.4, 20)}},
	} {
		var jobs []arbor.Job
		for i := range 60 {
			j := job(fmt.Sprint(i), units.Mass(60+float64(i*7919%400)+0.37*float64(i)))
			j.Ratio = float64(1 + i%2)
			j.Frame.Plate = arbor.Plate{Mass: 1.1, Thickness: 0.003, Every: 0.6}
			jobs = append(jobs, j)
		}
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			var got arbor.Allotment
			for b.Loop() {
				var err error
				if got, err = arbor.Allot(jobs, c.stock); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric((got.Worst - got.LeastWorst).In(units.Gram), "gap-g")
			b.ReportMetric(got.Worst.In(units.Gram), "worst-g")
		})
	}
}
