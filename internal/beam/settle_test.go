package beam

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// energy is the complementary energy of pulls that hold the load, times EI: half the square of the moment along the beam, half the
// give of each line times the square of its pull, and pull times low. Moments are cubics between the places where anything
// begins or ends, so that Gauss's rule with four points is exact.
func (o oracle) energy(pulls []float64) (sum float64) {
	places := slices.Clone(o.lines)
	for _, l := range o.loads {
		places = append(places, l.From, l.To)
	}
	slices.Sort(places)
	near, far := math.Sqrt(3./7-2./7*math.Sqrt(1.2)), math.Sqrt(3./7+2./7*math.Sqrt(1.2))
	inner, outer := (18+math.Sqrt(30))/36, (18-math.Sqrt(30))/36
	for k := 1; k < len(places); k++ {
		half := (places[k] - places[k-1]) / 2
		for _, g := range [4][2]float64{{-far, outer}, {-near, inner}, {near, inner}, {far, outer}} {
			m := o.moment(pulls, places[k-1]+half*(1+g[0]))
			sum += half * g[1] * m * m / 2
		}
	}
	for i, r := range pulls {
		sum += r * (at(o.give, i)*r/2 + at(o.low, i))
	}
	return sum
}

// Every set that is settled on holds the load without a line that pushes, and with less energy than the one before; from the last no
// line is left that the beam stands below. What a set comes to is by the oracle.
func TestPropSettleDescends(t *testing.T) {
	steps, level := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 12)
		weight, _ := p.total()
		w := p.work()
		if !w.settle(w.none()) {
			return
		}
		o := p.oracle()
		sets := append(slices.Clone(w.seen), w.set())
		var before float64
		for k, set := range sets {
			if slices.Contains(sets[:k], set) {
				t.Fatalf("settled twice on a set: %b", sets)
			}
			pulls, drops, ok := o.hold(set)
			if !ok {
				t.Fatalf("the oracle finds nothing for %b", set)
			}
			rounding := 1e-9*weight + p.rounding()
			for i, r := range pulls {
				if r < -rounding {
					t.Fatalf("settled on %b, where line %d pushes: %v", set, i, pulls)
				}
				if k == len(sets)-1 && drops[i] > 1e-9*p.size() {
					t.Fatalf("ends with %b, and stands below the end of line %d: %v", set, i, drops)
				}
			}
			energy := o.energy(pulls)
			if k > 0 {
				steps++
				small := 1e-12*math.Abs(before) + rounding*p.size()
				if energy > before+small {
					t.Fatalf("energy goes from %v to %v between sets %b", before, energy, sets[k-1:k+1])
				}
				if energy > before-small {
					level++
				}
			}
			before = energy
		}
	})
	if steps == 0 || 2*level > steps {
		t.Errorf("of %d steps %d have no length: the draw does not test what it should", steps, level)
	}
}

// Lines that are off by so much that one must be let go of just where it goes slack on the way: who lets go of it from other pulls than
// those come to so far ends on two lines beside the load. The pulls are those of the one set of all that has every sign right.
func TestSettleGoesFromThePullsThatItHas(t *testing.T) {
	for _, p := range []problem{
		{
			lines: []float64{0, 1, 4, 7, 9, 12}, low: []float64{0, -0.3, 0.04, 0.03, 4, -0.2},
			loads: []Stretch{{0, 0}, {3, 3}}, weights: []float64{0.05, 0.03}, length: 14,
		},
		{
			lines: []float64{0, 1, 3, 6, 9}, give: []float64{0.01, 0.01, 0.01, 0.01, 10}, low: []float64{-0.03, -0.3, 0.03, 0.02, -0.1},
			loads: []Stretch{{4, 4}, {3, 3}, {0, 0}}, weights: []float64{0.02, 0.03, 0.09}, length: 10,
		},
		{
			lines: []float64{0, 0.5, 4.5, 6.5, 7.5}, give: []float64{0.001, 1, 10, 0.0001, 0.01}, low: []float64{50, 6, -30, -100, 4},
			loads: []Stretch{{4.95, 4.95}, {9.46, 9.46}}, weights: []float64{30, 15}, length: 9.5,
		},
		{
			lines: []float64{0, 1, 2, 3, 4}, give: []float64{100, 0.01, 100, 0.01, 0.1}, low: []float64{-4, 300, 200, -80, 40},
			loads: []Stretch{{3.75, 3.75}, {0.7, 0.7}, {6.78, 6.78}, {0.1, 0.1}, {4.2, 4.2}}, weights: []float64{96, 29, 4, 11, 7}, length: 8,
		},
	} {
		w := p.work()
		if !w.settle(w.none()) {
			t.Errorf("not held: %+v", p)
			continue
		}
		weight, _ := p.total()
		pulls, _, miss := p.oracle().hang()
		if miss > 1e-9 {
			t.Errorf("the oracle finds nothing for %+v", p)
		}
		nearAll(t, "pull", w.Reaction, pulls, 1e-9*weight+p.rounding())
	}
}
