package arbor

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/steelyard/units"
)

// wants is a set over a shared stock: an arbor of 2 m of room for a tonne.
func wants(show units.Mass) Job {
	return Job{Frame: Frame{Length: 3, Room: 2, Capacity: 1000}, Wanted: Wanted{Show: show}}
}

func (j Job) at(ratio float64) Job      { j.Ratio = ratio; return j }
func (j Job) withPlate(p Plate) Job     { j.Frame.Plate = p; return j }
func (j Job) withLock(l Lock) Job       { j.Frame.Lock = l; return j }
func (j Job) withPipe(p units.Mass) Job { j.Wanted.Pipe = p; return j }

// of is a kind of piece 2 cm thick.
func of(name string, mass units.Mass, count int) Piece {
	return Piece{Name: name, Mass: mass, Thickness: 0.02, Count: count}
}

// house has each job filled as if it were alone.
func house(t testing.TB, jobs []Job, stock Stock) *allotting {
	t.Helper()
	a := newAllotting(jobs, stock)
	for i := range jobs {
		alone, err := a.fill(i, a.stock)
		if err != nil {
			t.Fatal(err)
		}
		a.alone = append(a.alone, alone)
	}
	a.settle()
	return a
}

// By hand: what all want together and there is not, shared so that none misses more than it must; nor less than each misses alone.
func TestWhatAStockCannotGive(t *testing.T) {
	tens := func(count int) Stock { return Stock{of("10", 10, count), of("4", 4, 1)} }
	plate := Plate{Mass: 1, Thickness: 0.003, Every: 1}
	for _, c := range []struct {
		name, reason string
		jobs         []Job
		stock        Stock
		worst, total float64
	}{
		{"enough", "alone one has what it wants, the other is 4 off", []Job{wants(20), wants(34)}, Stock{of("10", 10, 9)}, 4, 4},
		{"as much as there is", "34 wanted of 34", []Job{wants(10), wants(24)}, tens(3), 0, 0},
		{"all miss alike", "44 wanted of 34", []Job{wants(20), wants(24)}, tens(3), 5, 10},
		{"no sets", "and no pieces", nil, nil, 0, 0},
		{"half a kilogram", "21 of 20.5, and either could have what it wants", []Job{wants(10.5), wants(10.5)}, Stock{of("10.5", 10.5, 1), of("10", 10, 1)}, 0.25, 0.5},
		{"none misses more than it wants", "43 of 10: one misses its 3, the other 30", []Job{wants(3), wants(40)}, Stock{of("10", 10, 1)}, 30, 33},
		{"one alone is further off", "22 of 20: alone with three there 2 are off, and 1 on an average", []Job{wants(10), wants(12)}, Stock{of("10", 10, 2)}, 2, 2},
		{"at the batten", "120 of 20: 20 at each batten are 20, 40 and 40 at the arbor; in all no less than 100/2", []Job{wants(40).at(1), wants(40).at(2), wants(40).at(2)}, Stock{of("10", 10, 2)}, 20, 50},
		{"plates", "44 of 34, and up to three plates of 1 in each arbor", []Job{wants(20).withPlate(plate), wants(24).withPlate(plate)}, tens(3), 2, 4},
		{"lock plates", "44 of 34, and a lock plate of 2 in each", []Job{wants(20).withLock(Lock{2, 0.01}), wants(24).withLock(Lock{2, 0.01})}, tens(3), 3, 6},
		{"pipe weight", "is wanted as well: 44 of 34", []Job{wants(10).withPipe(10), wants(12).withPipe(12)}, tens(3), 5, 10},
		{"a tare that is over", "is 1 off, and gives nothing to the others: 44 of 34", []Job{wants(9).withPipe(-10), wants(20), wants(24)}, tens(3), 5, 10},
	} {
		a := house(t, c.jobs, c.stock)
		a.bound()
		if !(math.Abs(a.leastWorst-c.worst) <= 1e-9) || !(math.Abs(a.leastTotal-c.total) <= 1e-9) {
			t.Errorf("%s: worst %v, total %v, want %v and %v: %s", c.name, a.leastWorst, a.leastTotal, c.worst, c.total, c.reason)
		}
	}
}

// By hand: pipe weight is chosen first, and may take what the whole would be nearer without; no share of the stock then comes
// nearer than the best of all sums of its pieces, whatever the plates.
func TestLeastOffWithPipeWeight(t *testing.T) {
	stock := Stock{of("12", 12, 1), of("9", 9, 1), of("8", 8, 1)} // sums of 8, 9, 12, 17, 20, 21, 29
	plate := Plate{Mass: 1, Thickness: 0.003, Every: 1}
	low := func(j Job, room units.Length) Job { j.Frame.Room = room; return j }
	for _, c := range []struct {
		name, reason string
		job          Job
		want         float64
	}{
		{"as it is chosen", "9 for the pipe, and on it 12: 21", wants(11).withPipe(10), 0},
		{"nearer without", "9 for the pipe and 12 are 21, but 12 and 8 are 20", wants(10).withPipe(10), 0},
		{"at the batten", "none is 14: 12 and 2 more", wants(4).withPipe(10).at(2), 1},
		{"a plate", "17 and one", low(wants(8).withPipe(10).withPlate(plate), 0.9), 0},
		{"a plate too few", "19 is 17 and two, or 20 without", low(wants(9).withPipe(10).withPlate(plate), 0.9), 1},
		{"two plates", "17 and two", low(wants(9).withPipe(10).withPlate(plate), 1.5), 0},
		{"two plates just", "the interval is as high as the room", low(wants(9).withPipe(10).withPlate(Plate{1, 0.003, 0.9}), 0.9), 0},
		{"pieces of less than a kilogram", "0.8 for the pipe leaves 0.9 or 0.7 for 0.8 more, but those two are 1.6", wants(0.8).withPipe(0.8), 0},
		{"less than a plate", "half a kilogram is wanted, and a plate is half of one too much", wants(0).withPipe(0.5).withPlate(plate), 0.5},
		{"less than a plate, at the batten", "the same", wants(0).withPipe(0.5).withPlate(plate).at(2), 0.25},
		{"a plate too much, at the batten", "a plate is 0.3 over the 0.7 wanted, which is half of that there; with none all of it is missing", wants(0).withPipe(0.7).withPlate(plate).at(2), 0.15},
	} {
		a := newAllotting([]Job{c.job}, stock)
		if c.job.Wanted.Pipe < 1 && c.job.Frame.Plate == (Plate{}) {
			a = newAllotting([]Job{c.job}, Stock{of("9", 0.9, 1), of("8", 0.8, 1), of("7", 0.7, 1)})
		}
		if got := a.leastOff(0, a.stock); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v: %s", c.name, got, c.want, c.reason)
		}
		if a.jobs[0] != c.job {
			t.Errorf("%s: the job is %+v afterwards", c.name, a.jobs[0])
		}
	}
}

// Each number of plates is a stack of its own, up to fifty; of more nothing is said, for a room of a kilometre with a plate to each
// millimetre holds a million. By hand: 14 are wanted of 8, 9 and 12, and a plate of ten brings none of these nearer.
func TestLeastOffWithManyPlates(t *testing.T) {
	for _, c := range []struct {
		room, every units.Length
		stacks      int
		want        float64
	}{{49, 1, 51, 2}, {50, 1, 0, 0}, {1000, units.Millimetre, 0, 0}} {
		j := wants(4).withPipe(10).withPlate(Plate{10, 0.003, c.every})
		j.Frame.Room, j.Frame.Length = c.room, 1000
		a := newAllotting([]Job{j}, Stock{of("12", 12, 1), of("9", 9, 1), of("8", 8, 1)})
		if got := a.leastOff(0, a.stock); got != c.want || a.spent < c.stacks*overhead || c.stacks == 0 && a.spent > 0 {
			t.Errorf("%v for every %v: %v after %d steps, want %v", c.room, c.every, got, a.spent, c.want)
		}
	}
}

// By hand: kinds of which there are fewer than all would take. The totals hold over so wide a range of prices that one that is
// tried lies in it.
func TestWhatScarceKindsCannotGive(t *testing.T) {
	many := func(jobs ...any) (out []Job) {
		for i := 0; i < len(jobs); i += 2 {
			for range jobs[i].(int) {
				out = append(out, wants(units.Mass(jobs[i+1].(int))))
			}
		}
		return out
	}
	open := math.NaN() // not worked out
	either := Stock{of("10", 10, 1), of("19", 19, 3)}
	for _, c := range []struct {
		name, reason string
		jobs         []Job
		stock        Stock
		worst, total float64
	}{
		{"none is scarce", "no bound beside what each is off alone", many(2, 10), Stock{of("10", 10, 2)}, 0, 0},
		{"one kind", "four of the 10 to be nearer than 6, and at a price of 6 to 10 each six are paid back", many(1, 20, 1, 24), Stock{of("10", 10, 3), of("4", 4, 1)}, 6, 6},
		{"who needs it more", "the one that is 10 off without it, or the one that is 6 off and with it 4", many(1, 10, 1, 6), Stock{of("10", 10, 1)}, 6, 6},
		{"none there", "is not scarce: what each is off alone tells all", many(1, 10, 1, 6), Stock{of("10", 10, 0)}, 0, 0},
		{"four each", "eight of the seven: one is 10 off", many(2, 40), Stock{of("10", 10, 7)}, 10, open},
		{"more than are told apart", "four or six, they count as four: no more is known than what each is off alone", many(2, 60), Stock{of("10", 10, 11)}, 0, 0},
		{"more than are told apart, too few", "four each are twelve: to be nearer than three of them would take more", many(3, 60), Stock{of("10", 10, 11)}, 30, open},
		// The nearest else to 10 and to 12 is a 16, and there are enough of those; 68 is four of the 17, or three of them and a 16.
		{"one kind alone", "who wants 12 loses 2 without the only 10, who wants 10 loses 6", many(1, 10, 1, 12, 2, 68), Stock{of("10", 10, 1), of("17", 17, 7), of("16", 16, 5)}, 4, 4},
		{"the other kind alone", "the same with the kinds the other way round", many(1, 10, 1, 12, 2, 68), Stock{of("17", 17, 7), of("10", 10, 1), of("16", 16, 5)}, 4, 4},
		{"as pieces", "each of six is 4 or 5 off with either, but there are four in all", many(2, 14, 4, 15), either, 14, open},
		{"as pieces, by price", "two that gain 2 by it go without: 12, and four times 4", many(2, 6, 4, 15), either, open, 28},
		{"by their mass", "three times 15 to be within 5, and 40 are there", many(3, 20, 5, 5), Stock{of("10", 10, 1), of("5", 5, 6)}, 10, open},
		{"three kinds", "to be nearer than 12 the four others take a piece each, and three are there", many(2, 10, 2, 12, 2, 15), Stock{of("10", 10, 1), of("12", 12, 1), of("15", 15, 1)}, 12, open},
		{"four kinds", "are not looked at", many(2, 10, 2, 12, 2, 15, 2, 19), Stock{of("10", 10, 1), of("12", 12, 1), of("15", 15, 1), of("19", 19, 1)}, 0, 0},
	} {
		a := house(t, c.jobs, c.stock)
		a.scarce()
		if math.Abs(a.leastWorst-c.worst) > 1e-9 || math.Abs(a.leastTotal-c.total) > 1e-9 {
			t.Errorf("%s: worst %v, total %v, want %v and %v: %s", c.name, a.leastWorst, a.leastTotal, c.worst, c.total, c.reason)
		}
	}
}

// What scarce kinds cannot give is looked for up to ten thousand stacks: with three such kinds up to 80 sets, for there are 5·5·5 ways
// to have none to four of each. By hand: to be nearer than 15 each of 26 sets must have a piece, and three are there.
func TestHowManyStacksTheScarceMayTake(t *testing.T) {
	for sets, worst := range map[int]float64{80: 15, 81: 0} {
		var jobs []Job
		for n := range sets {
			jobs = append(jobs, wants([]units.Mass{10, 12, 15}[n%3]))
		}
		a := house(t, jobs, Stock{of("10", 10, 1), of("12", 12, 1), of("15", 15, 1)})
		a.scarce()
		if a.leastWorst != worst {
			t.Errorf("%d sets: %v, want %v", sets, a.leastWorst, worst)
		}
	}
}

// No bound is above the best that there is: here every way to give two sets the pieces is tried. Either wants some of both kinds, of
// which there are too few.
func TestScarceBoundsAreNoneTooHigh(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	tight := 0
	for range 4000 {
		m := [2]float64{float64(10+r.IntN(90)) / 10, float64(10+r.IntN(90)) / 10}
		n := [2]int{1 + r.IntN(6), 1 + r.IntN(6)}
		var jobs []Job
		var want [2]float64
		for i := range want {
			want[i] = m[0]*float64(r.IntN(5)) + m[1]*float64(r.IntN(5))
			jobs = append(jobs, wants(units.Mass(want[i])))
		}
		a := house(t, jobs, Stock{of("a", units.Mass(m[0]), n[0]), of("b", units.Mass(m[1]), n[1])})
		a.scarce()
		worst, total := math.Inf(1), math.Inf(1)
		for all := range (n[0] + 1) * (n[0] + 1) * (n[1] + 1) * (n[1] + 1) {
			a0, a1 := all%(n[0]+1), all/(n[0]+1)%(n[0]+1)
			b0, b1 := all/(n[0]+1)/(n[0]+1)%(n[1]+1), all/(n[0]+1)/(n[0]+1)/(n[1]+1)
			if a0+a1 > n[0] || b0+b1 > n[1] {
				continue
			}
			x, y := math.Abs(m[0]*float64(a0)+m[1]*float64(b0)-want[0]), math.Abs(m[0]*float64(a1)+m[1]*float64(b1)-want[1])
			worst, total = min(worst, max(x, y)), min(total, x+y)
		}
		if a.leastWorst > worst+1e-9 || a.leastTotal > total+1e-9 {
			t.Fatalf("%v and %v wanted of %v of %v: %v at the worst and %v in all can be had, and the bounds are %v and %v", want[0], want[1], n, m, worst, total, a.leastWorst, a.leastTotal)
		}
		if a.leastWorst > worst-1e-9 && worst > 1e-9 {
			tight++
		}
	}
	if tight == 0 {
		t.Error("no bound that says anything: the test shows nothing")
	}
}

// Those that want the most at their battens come first; of equals, the first of the jobs.
func TestWhoseWishComesFirst(t *testing.T) {
	jobs := []Job{wants(40).at(2), wants(25), wants(5).withPipe(30), wants(20), wants(90).at(3)}
	if got, want := newAllotting(jobs, nil).byWish(), []int{2, 4, 1, 0, 3}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// A stack that was not proved may be off by its gap less, at the batten as its error is.
func TestLeastOffOfASearchCutShort(t *testing.T) {
	f := filledJob{off: 6, stack: Stack{Gap: 4}}
	if f.least(1) != 2 || f.least(2) != 4 || f.least(0.5) != 0 {
		t.Errorf("%v, %v, %v, want 2, 4 and 0", f.least(1), f.least(2), f.least(0.5))
	}
}
