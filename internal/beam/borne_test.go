package beam

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Loads that are still are on the beam without being laid on, and do there what they do when they are laid on with the others.
func TestPropStillLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6)
		still := slices.Clone(p.weights)
		for k := range still {
			if rapid.Bool().Draw(t, "moves") {
				still[k] = 0
			}
		}
		a := NewLayout(Beam{p.lines, p.give, p.low, p.loads, p.taper, still}).Work()
		for k, v := range p.weights {
			if still[k] == 0 {
				a.Weights[k] = v
			}
		}
		a.LoadWeights()
		b := NewLayout(Beam{p.lines, p.give, p.low, p.loads, p.taper, nil}).Work()
		b.Load(p.weights)
		tol := 1e-9 * (1 + b.total)
		if math.Abs(a.total-b.total) > tol {
			t.Fatalf("weighs %v, laid on all at once %v", a.total, b.total)
		}
		a.Hold(All(len(p.lines)))
		b.Hold(All(len(p.lines)))
		for i, r := range b.Reaction {
			if math.Abs(a.Reaction[i]-r) > tol*(1+math.Abs(r)) {
				t.Fatalf("pulls %v, laid on all at once %v", a.Reaction, b.Reaction)
			}
		}
		sag, hog, shear := a.Extremes()
		asag, ahog, ashear := b.Extremes()
		for i, pair := range [][2]float64{{sag.Value, asag.Value}, {hog.Value, ahog.Value}, {math.Abs(shear.Value), math.Abs(ashear.Value)}} {
			if math.Abs(pair[0]-pair[1]) > tol*(1+p.length)*(1+math.Abs(pair[1])) {
				t.Fatalf("extreme %d is %v, laid on all at once %v", i, pair[0], pair[1])
			}
		}
	})
}

// A load so short, so far from the line before it, that both its ends are at one distance from that line is a point there.
func TestShorterThanRounding(t *testing.T) {
	const far = 1e6
	from := 0.1
	w := NewLayout(Beam{Lines: []float64{-far, 1}, Loads: []Stretch{{from, math.Nextafter(from, 1)}}}).Work()
	w.Load([]float64{1})
	w.Hold(All(2))
	sag, _, _ := w.Extremes()
	if want := (far + from) * (1 - from) / (far + 1); math.Abs(sag.Value-want) > 1e-9 || math.Abs(sag.At-from) > 1e-9 {
		t.Errorf("%+v, want the moment %v at %v", sag, want, from)
	}
}
