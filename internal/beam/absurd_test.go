package beam

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// sound checks what must hold whatever the numbers: everything finite, no line pushes, none that pulls has a
// gap, and the pulls hold the weight and its moment.
func (p problem) sound(t interface{ Fatalf(string, ...any) }, w *Work) {
	weight, moment := p.total()
	sag, hog, shear := w.Extremes()
	for _, v := range slices.Concat(w.Reaction, w.Deflection, []float64{sag.Value, sag.At, hog.Value, hog.At, shear.Value, shear.At}) {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("pulls %v, drops %v, extremes %v %v %v of %+v", w.Reaction, w.Deflection, sag, hog, shear, p)
		}
	}
	var sum, about float64
	for i, r := range w.Reaction {
		if gap := 0 - w.Deflection[i]; r < 0 || gap < 0 || r*gap != 0 {
			t.Fatalf("line %d: pull %v and gap %v", i, r, gap)
		}
		sum += r
		about += r * p.lines[i]
	}
	off := max(math.Abs(sum-weight), math.Abs(about-moment)/p.length)
	if off > 1e-9*weight+float64(len(p.lines))*p.rounding() {
		t.Fatalf("pulls add up to %v of %v, their moment to %v of %v: %v of %+v", sum, weight, about, moment, w.Reaction, p)
	}
	if sag.Value < 0 || hog.Value > 0 || max(sag.At, hog.At, shear.At) > p.length || min(sag.At, hog.At, shear.At) < 0 {
		t.Fatalf("sagging %v, hogging %v, shear %v", sag, hog, shear)
	}
}

// TestAbsurd: gives that differ by 1e12, lines 10 mm apart beside spans of 30 m, weights from none to huge, many at
// one place: whatever is told can be carried, or not, but never comes out as nonsense.
func TestAbsurd(t *testing.T) {
	hung := 0
	rapid.Check(t, func(t *rapid.T) {
		var p problem
		x := rapid.Float64Range(0, 5).Draw(t, "first")
		n := rapid.IntRange(2, 12).Draw(t, "lines")
		for range n {
			p.lines = append(p.lines, x)
			x += rapid.SampledFrom([]float64{0.01, 0.3, 3, 30}).Draw(t, "span")
		}
		p.length = x
		if rapid.Bool().Draw(t, "springs") {
			for range n {
				p.give = append(p.give, rapid.SampledFrom([]float64{0, 1e-9, 1e-6, 1e-3, 1, 1e3}).Draw(t, "give"))
			}
		}
		if rapid.Bool().Draw(t, "leaning") {
			p.taper = []float64{0}
		}
		unit := math.Pow10(rapid.IntRange(-30, 30).Draw(t, "unit of weight"))
		p.loads, p.weights = []Stretch{{0, p.length}}, []float64{unit}
		for range rapid.IntRange(0, 6).Draw(t, "places") {
			from := rapid.Float64Range(0, p.length).Draw(t, "from")
			to := from + rapid.SampledFrom([]float64{0, 0, 1e-6, 0.01, 1, 40}).Draw(t, "long")
			weight := unit * rapid.SampledFrom([]float64{0, 1e-12, 1e-3, 1, 1e3, 1e6}).Draw(t, "weight")
			taper := float64(rapid.IntRange(-1, 1).Draw(t, "taper"))
			for range rapid.SampledFrom([]int{1, 1, 1, 300}).Draw(t, "times") {
				p.loads, p.weights = append(p.loads, Stretch{from, min(to, p.length)}), append(p.weights, weight)
				if p.taper != nil {
					p.taper = append(p.taper, taper)
				}
			}
		}
		if rapid.Bool().Draw(t, "trim errors") {
			for range n {
				p.low = append(p.low, unit*rapid.SampledFrom([]float64{-1e3, -1, -1e-6, 0, 1e-6, 1, 1e3}).Draw(t, "low"))
			}
		}
		w := p.work()
		weight, moment := p.total()
		c, first, last := moment/weight, p.lines[0], p.lines[n-1]
		edge := 1e-9 * (last - first)
		switch held := w.Hang(0); {
		case held:
			hung++
			p.sound(t, w)
			if c < first-edge || c > last+edge {
				t.Fatalf("held with its centre at %v of %v to %v", c, first, last)
			}
		case c > first+edge && c < last-edge:
			t.Fatalf("not held with its centre at %v of %v to %v: %+v", c, first, last, p)
		}
	})
	if hung == 0 {
		t.Error("nothing was ever held")
	}
}

// Nothing to carry on lines of all kinds: nothing pulls.
func TestNothingToCarry(t *testing.T) {
	for _, low := range [][]float64{nil, {0, 1, 0, -1}, {-3, 2, 5, 1}, {1e6, -1e6, 1e6, -1e6}} {
		for _, give := range [][]float64{nil, {0, 1, 0, 1}, {1e12, 1e-12, 1, 0}} {
			p := problem{lines: []float64{0, 1, 2, 4}, give: give, low: low, loads: []Stretch{{0, 4}, {1, 1}}, weights: []float64{0, 0}, length: 4}
			w := p.work()
			if !w.Hang(1e-9) {
				t.Errorf("low %v, give %v: not held", low, give)
				continue
			}
			p.sound(t, w)
		}
	}
}
