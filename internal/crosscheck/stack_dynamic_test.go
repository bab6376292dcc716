package crosscheck

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// crate is a filling problem in whole half pounds and quarter inches, larger than
// trying every stack could settle.
type crate struct {
	mass, thick, count              []int
	wanted, room, capacity          int
	plateMass, plateThick, interval int
	side                            arbor.Side
}

// result is what two stacks that are equally good have in common.
type result struct {
	Error, Pieces, Height int
	Found                 bool
}

// table solves a crate by dynamic programming, in the plainest form there is: for
// each total of mass and thickness the fewest pieces that make just that, one bundle
// of pieces after the other; then plates are put between, and the best total of
// all is looked for (Bellman's recursion for the bounded knapsack, with the usual
// bundles of 1, 2, 4 … pieces; Kellerer, Pferschy and Pisinger, Knapsack Problems, 2004, 7.2).
func table(c crate) result {
	mass, thick := c.capacity, c.room
	const never = 1 << 30
	fewest := make([]int, (mass+1)*(thick+1))
	for i := range fewest {
		fewest[i] = never
	}
	fewest[0] = 0
	for k := range c.mass {
		for left, bundle := c.count[k], 1; left > 0; bundle *= 2 {
			n := min(bundle, left)
			left -= n
			dm, dt := n*c.mass[k], n*c.thick[k]
			for m := mass; m >= dm; m-- {
				for t := thick; t >= dt; t-- {
					if without := fewest[(m-dm)*(thick+1)+t-dt]; without+n < fewest[m*(thick+1)+t] {
						fewest[m*(thick+1)+t] = without + n
					}
				}
			}
		}
	}
	var best result
	for m := range mass + 1 {
		for t := range thick + 1 {
			pieces := fewest[m*(thick+1)+t]
			if pieces == never {
				continue
			}
			plates := 0
			if c.interval > 0 && pieces > 0 {
				plates = 1 + t/c.interval
			}
			all, height := m+plates*c.plateMass, t+plates*c.plateThick
			e := all - c.wanted
			if all > mass || height > thick || e > 0 && c.side == arbor.NeverArborHeavy || e < 0 && c.side == arbor.NeverBattenHeavy {
				continue
			}
			r := result{e, pieces, height, true}
			if !best.Found || slices.Compare(r.key(), best.key()) < 0 {
				best = r
			}
		}
	}
	// Of +e and -e the order does not tell: only how far off is common to equals.
	best.Error = max(best.Error, -best.Error)
	return best
}

func (r result) key() []int { return []int{max(r.Error, -r.Error), r.Pieces, r.Height} }

// fill solves a crate with the library.
func fill(c crate) (result, error) {
	half, quarter := units.Pound/2, units.Inch/4
	var stock arbor.Stock
	for k := range c.mass {
		stock = append(stock, arbor.Piece{Name: fmt.Sprint(k), Mass: half.Scale(float64(c.mass[k])), Thickness: quarter.Scale(float64(c.thick[k])), Count: c.count[k]})
	}
	f := arbor.Frame{Length: 100 * units.Foot, Room: quarter.Scale(float64(c.room)), Capacity: half.Scale(float64(c.capacity))}
	if c.interval > 0 {
		f.Plate = arbor.Plate{Mass: half.Scale(float64(c.plateMass)), Thickness: quarter.Scale(float64(c.plateThick)), Every: quarter.Scale(float64(c.interval))}
	}
	s, err := f.Fill(arbor.Wanted{Show: half.Scale(float64(c.wanted))}, stock, c.side)
	if err != nil {
		if none, ok := err.(*arbor.NoStackError); ok && none.Proven {
			return result{}, nil
		}
		return result{}, err
	}
	if !s.Proven {
		return result{}, fmt.Errorf("not proven: %+v", s)
	}
	round := func(x float64) int { return int(x + 0.5) }
	return result{round(units.Abs(s.Error).In(half)), s.Pieces, round(s.Height.In(quarter)), true}, nil
}

// TestStackAgainstTable fills arbors with up to ten kinds and hundreds of pieces.
func TestStackAgainstTable(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	found := 0
	for n := range 400 {
		c := crate{room: 40 + r.IntN(200), capacity: 100 + r.IntN(900), side: arbor.Side(r.IntN(3))}
		kinds := 1 + r.IntN(10)
		step := 1 + r.IntN(4)
		for range kinds {
			c.mass = append(c.mass, step*(5+r.IntN(60/step)))
			c.thick = append(c.thick, 1+r.IntN(10))
			c.count = append(c.count, r.IntN(51))
		}
		c.wanted = r.IntN(c.capacity + c.capacity/5)
		if r.IntN(2) == 0 {
			c.plateMass, c.plateThick, c.interval = 1+r.IntN(8), 1+r.IntN(3), 12+r.IntN(96)
		}
		want := table(c)
		got, err := fill(c)
		if err != nil || got != want {
			t.Fatalf("%d: %+v\n got %+v, %v\nwant %+v", n, c, got, err, want)
		}
		if want.Found {
			found++
		}
	}
	if found < 200 {
		t.Errorf("only %d of 400 have a stack: the test shows too little", found)
	}
}

// TestTable checks the table by what can be counted on the fingers.
func TestTable(t *testing.T) {
	// Two of the 5 and no plate; one of the 6 and its plate of 4 make the same 10 with
	// one piece less.
	c := crate{mass: []int{6, 5}, thick: []int{3, 1}, count: []int{1, 2}, wanted: 10, room: 20, capacity: 40}
	if got, want := table(c), (result{0, 2, 2, true}); got != want {
		t.Errorf("without plates: got %+v, want %+v", got, want)
	}
	c.plateMass, c.plateThick, c.interval = 4, 1, 9
	if got, want := table(c), (result{0, 1, 4, true}); got != want {
		t.Errorf("with plates: got %+v, want %+v", got, want)
	}
	c.room, c.side = 3, arbor.NeverBattenHeavy
	if got, want := table(c), (result{4, 2, 3, true}); got != want {
		t.Errorf("with less room: got %+v, want %+v", got, want)
	}
}
