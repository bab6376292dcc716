package beam

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Which unit weights are in makes no difference to where lines let go, nor to how far all goes while a point roves: in one that is a
// power of two far off all is the same to the last bit.
func TestSearchesInAnotherUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6)
		to := make([]float64, len(p.weights))
		for i := range to {
			to[i] = float64(rapid.IntRange(0, 1000).Draw(t, "to"))
		}
		point := float64(rapid.IntRange(1, 1000).Draw(t, "point"))
		from, end := rapid.Float64Range(0, 6).Draw(t, "from"), rapid.Float64Range(6, 12).Draw(t, "end")
		ask := func(unit float64) (turns []float64, held bool, found Roving) {
			times := func(list []float64) []float64 {
				list = slices.Clone(list)
				for i := range list {
					list[i] *= unit
				}
				return list
			}
			q := p
			q.weights, q.low = times(p.weights), times(p.low)
			w := q.workTo(times(to))
			turns = slices.Clone(w.Turns(q.weights, times(to), 1e-9))
			w.Load(q.weights)
			held = w.Rove(point*unit, from, end, 1e-9, true, &found)
			return turns, held, found
		}
		turns, held, found := ask(1)
		for _, unit := range []float64{0x1p-60, 0x1p60} {
			turnsIn, heldIn, foundIn := ask(unit)
			if !slices.Equal(turns, turnsIn) || held != heldIn {
				t.Fatalf("turns %v, %v; in another unit %v, %v", turns, held, turnsIn, heldIn)
			}
			if !held {
				continue
			}
			same := func(a, b Peak) bool { return a.Value*unit == b.Value && a.At == b.At }
			for i, reach := range found.Pulls {
				if in := foundIn.Pulls[i]; !same(reach.Most, in.Most) || !same(reach.Least, in.Least) {
					t.Fatalf("line %d: %v, in another unit %v", i, reach, in)
				}
			}
			if !same(found.Sag, foundIn.Sag) || !same(found.Hog, foundIn.Hog) {
				t.Fatalf("%v and %v, in another unit %v and %v", found.Sag, found.Hog, foundIn.Sag, foundIn.Hog)
			}
		}
	})
}

// A pull of less than 1e-10 of the weight counts as none, one of more counts: a point so far along the way from one line to the next.
func TestPullsThatCountAsNone(t *testing.T) {
	for _, share := range []float64{0, 1e-13, 0.99e-10, 1.01e-10, 1e-9} {
		for _, at := range []float64{share, 1 - share} {
			w := held([]float64{0, 1}, []Stretch{{at, at}}, 8)
			if !w.Hang(0) {
				t.Fatalf("not held with the point at %v", at)
			}
			line, want := 1, 0.0
			if at > 0.5 {
				line = 0
			}
			if share > 1e-10 {
				want = 8 * share
			}
			if math.Abs(w.Reaction[line]-want) > 1e-15 || want == 0 && w.Reaction[line] != 0 {
				t.Errorf("%v of the way: line %d pulls %v, want %v", share, line, w.Reaction[line], want)
			}
		}
	}
}

// Ends that lie on one straight line bend nothing, however steep that is. All hangs on one line, and what the rounding of the lows alone
// asks of the others, a hundred thousand times what counts as none otherwise, counts as none.
func TestSteepLowsBendNothing(t *testing.T) {
	for _, lines := range [][]float64{{0, 0.1, 0.2, 0.3, 0.4}, {0, 0.05, 0.3, 1.3, 6.3}, {0, 5, 5.1, 5.2, 9}} {
		for k := 1; k < 4; k++ {
			for _, steep := range []float64{1e9 / 7, -1e9 / 3} {
				p := problem{lines: lines, loads: []Stretch{{lines[k], lines[k]}}, weights: []float64{1}, length: 10}
				for _, x := range lines {
					p.low = append(p.low, steep*x)
				}
				w := p.work()
				if !w.Hang(0) {
					t.Fatalf("not held: %v", lines)
				}
				for i, r := range w.Reaction {
					if i != k && r != 0 || i == k && math.Abs(r-1) > 1e-3 {
						t.Errorf("lines %v, all on line %d, steep %v: pulls %v", lines, k, steep, w.Reaction)
						break
					}
				}
			}
		}
	}
}

// A load that gains just one per length over four spans, and one that begins with nothing an unnoticeable way before a line: as for any other,
// everything is as the oracle has it.
func TestLeaningLoadsOfOddSizes(t *testing.T) {
	for _, p := range []problem{
		{lines: spans(1, 1, 1, 1), loads: []Stretch{{0, 4}}, taper: []float64{1}, weights: []float64{8}, length: 4},
		{lines: spans(2, 2), loads: []Stretch{{0.5, 1.5}}, taper: []float64{0.5}, weights: []float64{1}, length: 4},
		{lines: []float64{0, math.Nextafter(0.3, 1), 6, 13}, loads: []Stretch{{0.3, 12}}, taper: []float64{1}, weights: []float64{5}, length: 13},
		{lines: []float64{0, 6, math.Nextafter(12, 0), 13}, loads: []Stretch{{0.3, 12}}, taper: []float64{-1}, weights: []float64{5}, length: 13},
	} {
		n := len(p.lines)
		w := p.work()
		w.Hold(All(n))
		o := p.oracle()
		pulls, _, _ := o.hold(All(n))
		nearAll(t, "pull", w.Reaction, pulls, 1e-8)
		sag, hog, _ := w.Extremes()
		near(t, "sagging", o.moment(w.Reaction, sag.At), sag.Value, 1e-9)
		most, least := 0.0, 0.0
		for _, x := range p.lines {
			least = min(least, o.moment(pulls, x))
		}
		for k := range 4001 {
			x := p.length * float64(k) / 4000
			m := o.moment(pulls, x)
			most = max(most, m)
			if field, on := slices.BinarySearch(p.lines, x); !on && field > 0 && field < n {
				near(t, "moment", w.momentAt(field, x), m, 1e-8)
			}
		}
		near(t, "largest sagging", sag.Value, most, 1e-5)
		near(t, "largest hogging", hog.Value, least, 1e-5)
	}
}

// What is left of a heavy load beyond its end is nothing, and of what lies beside it all: a ton on a nanometre at the end of a span under a
// weight that the sum of the two per length has no room for. The moment is that of the even load, qL²/8 in the middle.
func TestNothingOfAHeavyShortLoadIsLeft(t *testing.T) {
	for _, q := range []float64{0.03, 0.7, 1.3} {
		w := held([]float64{0, 10}, []Stretch{{0, 1e-9}, {0, 10}}, 1e6, 10*q)
		sag, _, _ := w.Extremes()
		near(t, "largest moment", sag.Value, q*100/8, 1e-3)
		near(t, "its place", sag.At, 5, 0.05)
	}
}

// The slope 1.2 − 2.2u + u² passes zero at 1, and again at 1.2, which is not between 0.9 and 1.1.
func TestZeroBetweenItsTwoPlaces(t *testing.T) {
	s := bent{theta: 1.2, m: 2.2, v: -2}
	near(t, "zero", s.zero(slope, 0.9, 1.1), 1, 1e-12)
}

// One line with nothing to carry holds it.
func TestNothingToCarryOnOneLine(t *testing.T) {
	w := NewLayout(Beam{Lines: []float64{2}, Loads: []Stretch{{0, 4}}}).Work()
	w.Load([]float64{0})
	if !w.Hang(1e-9) || w.Reaction[0] != 0 {
		t.Errorf("pulls %v", w.Reaction)
	}
}

// A line whose end the beam just touches may come out a rounding above it: no line is told to stand higher than its end.
func TestNoGapBelowNothing(t *testing.T) {
	for _, p := range []problem{
		{lines: []float64{0, 0.2, 1.2, 2.1 - 4e-16, 5.1}, low: []float64{0, 0.2, 1.2, 0, 5.1}, loads: []Stretch{{1.2, 1.2}}, weights: []float64{5}},
		{lines: []float64{0, 0.6, 1.6, 1.9000000000000001}, low: []float64{0, 0.6, 3.2, 1.9000000000000001}, loads: []Stretch{{0, 0}}, weights: []float64{2}},
	} {
		w := p.work()
		if !w.Hang(1e-9) || slices.Max(w.Deflection) > 0 {
			t.Errorf("%v below the ends of the lines", w.Deflection)
		}
	}
}

// Lows that have been laid aside leave nothing behind: a pull that they would have made count as none counts again.
func TestLevelAfterSteepLows(t *testing.T) {
	w := held([]float64{0, 0.1, 0.2}, []Stretch{{1e-6, 1e-6}}, 1)
	w.SetLow([]float64{0, 1e9, -1e9})
	w.SetLow([]float64{0, 0, 0})
	if !w.Hang(0) || math.Abs(w.Reaction[1]-1e-5) > 1e-6 {
		t.Errorf("pulls %v, want some 1e-5 in the second line", w.Reaction)
	}
}
