package arbor_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"pgregory.net/rapid"
)

// slabs adds pieces that no arbor of these tests wants, of so many kinds that not every share of the stock is tried: what each
// set gets is then what sharing out and trading come to, and proved is only what the bounds prove.
func slabs(stock arbor.Stock) arbor.Stock {
	stock = slices.Clone(stock)
	for n := range 14 {
		stock = append(stock, kind(fmt.Sprint("slab ", n), 600+units.Mass(n), 1))
	}
	return stock
}

// By hand, in houses of which not every way is tried.
func TestTradedByHand(t *testing.T) {
	doubled := func(j arbor.Job) arbor.Job { j.Ratio = 2; return j }
	for _, c := range []struct {
		name, reason string
		jobs         []arbor.Job
		stock        arbor.Stock
		worst, total units.Mass
		proven       bool
		hire         []arbor.Hire
	}{
		{"enough", "each as if it were alone", []arbor.Job{job("a", 10), job("b", 12)}, arbor.Stock{kind("12", 12, 1), kind("10", 10, 1)}, 0, 0, true, nil},
		{"what the other needs", "two of the 10 and two of the 9", []arbor.Job{job("a", 20), job("b", 18)}, arbor.Stock{kind("10", 10, 2), kind("9", 9, 2)}, 0, 0, true, nil},
		{
			"one does with less", "34 for 44, and one of two goes without a 10; the slabs hide that 10 are missing in all",
			[]arbor.Job{job("a", 20), job("b", 24)},
			arbor.Stock{kind("10", 10, 3), kind("4", 4, 1)},
			6, 10, false,
			[]arbor.Hire{{Name: "10", Count: 1}},
		},
		{
			"the greater wish takes the odd piece", "10 would take both of the 5 that 6 and 5 want",
			[]arbor.Job{job("a", 10), job("b", 6), job("c", 5)},
			arbor.Stock{kind("5", 5, 2), kind("8", 8, 1)},
			2, 3, false,
			[]arbor.Hire{{Name: "5", Count: 2}},
		},
		{
			"at the batten", "two kilograms in double purchase are one at its batten",
			[]arbor.Job{job("single", 10), doubled(job("double", 10))},
			arbor.Stock{kind("10", 10, 1), kind("8", 8, 1)},
			1, 1, true,
			[]arbor.Hire{{Name: "10", Count: 1}},
		},
		{"no pieces", "each is off what it wants", []arbor.Job{job("a", 10), job("b", 12)}, arbor.Stock{kind("10", 10, 0)}, 12, 22, true, []arbor.Hire{{Name: "10", Count: 2}}},
		{
			"a kind that is out", "40 for 37 and for 44, and eleven of the 1 bring both to what they want",
			[]arbor.Job{job("a", 30), job("b", 37), job("c", 44)},
			arbor.Stock{kind("10", 10, 20), kind("1", 1, 0)},
			4, 7, true,
			[]arbor.Hire{{Name: "1", Count: 11}},
		},
		{
			"no 33 makes up for itself, but two tens for a 20", "both tens go to the 33 and bring it to 13 off; with a 33 they are there for the 20",
			[]arbor.Job{job("a", 33), job("b", 20)},
			arbor.Stock{kind("33", 33, 0), kind("20", 20, 0), kind("10", 10, 2)},
			20, 33, false,
			[]arbor.Hire{{Name: "33", Count: 1}},
		},
	} {
		got, err := arbor.Allot(c.jobs, slabs(c.stock))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		keeps(t, c.jobs, slabs(c.stock), got)
		if got.Worst != c.worst || got.Total != c.total || got.Proven != c.proven || !slices.Equal(got.Hire, c.hire) {
			t.Errorf("%s: worst %v, total %v, proven %v, hire %v: %s", c.name, got.Worst, got.Total, got.Proven, got.Hire, c.reason)
		}
	}
}

// littleHouse is two or three sets over up to three kinds of piece, the same for a number each time.
func littleHouse(number uint64) ([]arbor.Job, arbor.Stock) {
	draw := rand.New(rand.NewPCG(number, 1))
	var stock arbor.Stock
	for k := range 1 + draw.IntN(3) {
		stock = append(stock, kind(fmt.Sprint(k), units.Mass(1+draw.IntN(12))+units.Mass(0.1*float64(k)), 1+draw.IntN(6)))
	}
	var jobs []arbor.Job
	for i := range 2 + draw.IntN(2) {
		j := job(fmt.Sprint(i), units.Mass(draw.IntN(30)))
		j.Frame.Room = units.Length(1+draw.IntN(8)) / 50
		if draw.IntN(3) == 0 {
			j.Frame.Plate = arbor.Plate{Mass: 0.5, Thickness: 0.003, Every: 0.05}
		}
		if draw.IntN(3) == 0 {
			j.Wanted.Pipe = units.Mass(draw.IntN(10))
			if draw.IntN(2) == 0 {
				j.Side = arbor.NeverArborHeavy
			}
		}
		j.Ratio = float64(1 + draw.IntN(2))
		jobs = append(jobs, j)
	}
	return jobs, stock
}

// Of 120 little houses trading finds the best in 115 and in half of all that is proved without every way being tried; the bounds
// lie some 0.3 kg under the least worst error on an average, and 0.8 kg under the least total. Those are found by counting, and
// are not to become worse. What is said to be the least is never more than the best there is, and what is proved is the best.
func TestTradedLittleHouses(t *testing.T) {
	const microgram = 1e-9
	best, proved := 0, 0
	var worstGap, totalGap float64
	for number := range uint64(120) {
		jobs, stock := littleHouse(number)
		worst, total := exhaustive(t, jobs, stock)
		got, err := arbor.Allot(jobs, slabs(stock))
		if err != nil {
			t.Fatal(err)
		}
		keeps(t, jobs, slabs(stock), got)
		leastWorst, leastTotal := got.LeastWorst.In(units.Kilogram), got.LeastTotal.In(units.Kilogram)
		is := got.Worst.In(units.Kilogram) < worst+microgram && got.Total.In(units.Kilogram) < total+microgram
		if is {
			best++
		}
		if leastWorst > worst+microgram || got.Worst.In(units.Kilogram) < worst+microgram && leastTotal > total+microgram || got.Proven && !is {
			t.Errorf("house %d: %v and %v are off at the best, and %+v", number, worst, total, got)
		}
		if got.Proven {
			proved++
		}
		worstGap += worst - leastWorst
		totalGap += total - leastTotal
	}
	if best < 115 || proved < 61 || worstGap > 37 || totalGap > 97.2 {
		t.Errorf("%d found, %d proved, the bounds %v and %v kg under the best in all", best, proved, worstGap, totalGap)
	}
}

// Where every set is as near as it would be with plenty, nothing is to be hired, though sharing out and trading alone would not have
// come so near with what there is.
func TestNothingIsHiredInVain(t *testing.T) {
	enough := 0
	for number := range uint64(400) {
		jobs, stock := littleHouse(number)
		got, err := arbor.Allot(jobs, stock)
		if err != nil {
			t.Fatal(err)
		}
		plenty := slices.Clone(stock)
		for k := range plenty {
			plenty[k].Count = 10_000
		}
		near := true
		for i, j := range jobs {
			s, err := j.Frame.Fill(j.Wanted, plenty, j.Side)
			if err != nil {
				t.Fatal(err)
			}
			near = near && referred(got.Stacks[i], j) < referred(s, j)+1e-12
		}
		if near {
			enough++
		}
		if near && got.Hire != nil {
			t.Errorf("house %d: %+v is hired, and all are as near without: %+v of %+v", number, got.Hire, jobs, stock)
		}
	}
	if enough == 0 || enough == 400 {
		t.Errorf("%d of 400 houses have enough: the test shows nothing", enough)
	}
}

// Houses of which no best is known: neither what trading comes to nor the bounds, in kilograms, are to become worse than they were
// found to be.
func TestTradedLargeHouses(t *testing.T) {
	for _, c := range []struct {
		name                                 string
		stock                                arbor.Stock
		worst, total, leastWorst, leastTotal float64
		part                                 float64 // of the masses
	}{
		{"tight in small pieces", arbor.Stock{kind("22", 22.3, 300), kind("11", 11.1, 8), kind("5", 5.3, 6)}, 2.58, 24.04, 2.58, 22.22, 1},
		{"short", arbor.Stock{kind("22", 22.3, 120), kind("11", 11.1, 25), kind("5", 5.3, 15)}, 63.18, 952.61, 57.541, 690.5, 1},
		{"short of small pieces", arbor.Stock{kind("22", 0.223, 120), kind("11", 0.111, 25), kind("5", 0.053, 15)}, 0.6318, 9.5261, 0.57541, 6.905, 0.01},
		{"four kinds, tight", arbor.Stock{kind("22", 22.3, 150), kind("18", 18.1, 20), kind("7", 7.2, 20), kind("2", 2.4, 10)}, 27.975, 389.51, 22.458, 269.5, 1},
	} {
		var jobs []arbor.Job
		for i := range 16 {
			j := job(fmt.Sprint(i), units.Mass(60+float64(i*7919%400)+0.37*float64(i)).Scale(c.part))
			j.Ratio = float64(1 + i%2)
			j.Frame.Plate = arbor.Plate{Mass: units.Mass(1.1).Scale(c.part), Thickness: 0.003, Every: 0.6}
			jobs = append(jobs, j)
		}
		got, err := arbor.Allot(jobs, c.stock)
		if err != nil {
			t.Fatal(err)
		}
		keeps(t, jobs, c.stock, got)
		const rounding = 1e-6
		if got.Worst.In(units.Kilogram) > c.worst+rounding || got.Total.In(units.Kilogram) > c.total+rounding ||
			got.LeastWorst.In(units.Kilogram) < c.leastWorst-rounding || got.LeastTotal.In(units.Kilogram) < c.leastTotal-rounding {
			t.Errorf("%s: worst %v, total %v, at the least %v and %v", c.name, got.Worst, got.Total, got.LeastWorst, got.LeastTotal)
		}
	}
}

// No more is to be hired than it takes: with one piece less of any kind not every set is as near as it could be. (With pipe
// weight, which is chosen first, less of a kind may be nearer in all.)
func TestPropHireIsNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		jobs, stock := drawHouse(t)
		for i := range jobs {
			jobs[i].Wanted.Pipe = min(jobs[i].Wanted.Pipe, 0)
		}
		got, err := arbor.Allot(jobs, stock)
		if err != nil {
			t.Fatal(err)
		}
		_, total := aloneWithPlenty(t, jobs, stock)
		for i, h := range got.Hire {
			less := slices.Clone(got.Hire)
			less[i].Count--
			all, err := arbor.Allot(jobs, withHire(stock, less))
			if err != nil || h.Count < 1 || all.Total.In(units.Kilogram) < total+1e-9 {
				t.Fatalf("%v are hired, and without one %s %v off, as near as with plenty", got.Hire, h.Name, all.Total)
			}
		}
	})
}
