package beam

import (
	"math"
	"slices"

	"pgregory.net/rapid"
)

// problem is a beam with its loads, drawn so that coincidences are common: most places lie on
// a coarse grid, so loads fall on lines, on each other, and the centre of
// gravity on a line.
type problem struct {
	lines     []float64
	give, low []float64 // nil: none
	loads     []Stretch
	taper     []float64 // nil: none
	weights   []float64
	length    float64
}

func (p problem) oracle() oracle {
	return oracle{p.lines, p.give, p.low, p.loads, p.taper, p.weights}
}

// work lays the loads on, every other one as one that is still: what comes out must not depend on that.
func (p problem) work() *Work { return p.workTo(p.weights) }

// workTo does the same where the weights will change to others.
func (p problem) workTo(to []float64) *Work {
	still := slices.Clone(p.weights)
	for k, w := range p.weights {
		if k%2 == 0 || w != to[k] {
			still[k] = 0
		}
	}
	w := NewLayout(Beam{p.lines, p.give, p.low, p.loads, p.taper, still}).Work()
	w.Load(p.weights)
	return w
}

func drawProblem(t *rapid.T, most int) problem {
	const length = 12
	var p problem
	p.length = length
	place := rapid.Custom(func(t *rapid.T) float64 {
		if rapid.IntRange(0, 3).Draw(t, "off grid") == 0 {
			// A fine grid in binary: turning the beam end for end loses nothing.
			return float64(rapid.IntRange(0, length<<20).Draw(t, "place")) / (1 << 20)
		}
		return float64(rapid.IntRange(0, 2*length).Draw(t, "half metres")) / 2
	})
	n := rapid.IntRange(2, most).Draw(t, "lines")
	for len(p.lines) < n {
		x := place.Draw(t, "line")
		i := 0
		for i < len(p.lines) && p.lines[i] < x {
			i++
		}
		near := func(k int) bool { return k >= 0 && k < len(p.lines) && math.Abs(p.lines[k]-x) < 0.1 }
		if near(i) || near(i-1) {
			n--
			if n < 2 {
				n = 2
			}
			continue
		}
		p.lines = append(p.lines, 0)
		copy(p.lines[i+1:], p.lines[i:])
		p.lines[i] = x
	}
	if rapid.Bool().Draw(t, "own weight") {
		p.loads, p.weights = append(p.loads, Stretch{0, length}), append(p.weights, rapid.Float64Range(1, 100).Draw(t, "pipe"))
	}
	for range rapid.IntRange(1, 6).Draw(t, "loads") {
		a, b := place.Draw(t, "from"), place.Draw(t, "to")
		if rapid.Bool().Draw(t, "point") {
			b = a
		}
		p.loads = append(p.loads, Stretch{min(a, b), max(a, b)})
		p.weights = append(p.weights, float64(rapid.IntRange(1, 1000).Draw(t, "weight")))
	}
	weight, _ := p.total()
	// A span of 3 m sinks by some 0.5·weight, times EI, under all of it, one of 12 m by some 40: so there are
	// lines that hardly give or stretch by many times that, and trim errors that are next to nothing or
	// leave most lines slack.
	if rapid.Bool().Draw(t, "springs") {
		for range p.lines {
			g := 0.0
			if k := rapid.IntRange(0, 9).Draw(t, "give"); k > 0 {
				g = math.Pow10(rapid.IntRange(-3, 3).Draw(t, "give in tens")) * float64(k)
			}
			p.give = append(p.give, g)
		}
	}
	if rapid.Bool().Draw(t, "trim errors") {
		size := weight / 8 * rapid.SampledFrom([]float64{0.001, 0.1, 1, 10}).Draw(t, "size")
		for range p.lines {
			p.low = append(p.low, size*float64(rapid.IntRange(-8, 8).Draw(t, "low")))
		}
	}
	if rapid.Bool().Draw(t, "leaning loads") {
		for range p.loads {
			p.taper = append(p.taper, float64(rapid.IntRange(-4, 4).Draw(t, "taper"))/4)
		}
	}
	return p
}

// rounding is the pull that the rounding of trim errors can bring about between the two closest lines, in
// the oracle's sums of cubes too.
func (p problem) rounding() float64 {
	if p.low == nil {
		return 0
	}
	least := math.Inf(1)
	for i := 1; i < len(p.lines); i++ {
		least = min(least, p.lines[i]-p.lines[i-1])
	}
	return 1e-12 * (slices.Max(p.low) - slices.Min(p.low)) / (least * least * least)
}

// size is what deflections are measured by.
func (p problem) size() float64 {
	weight, _ := p.total()
	size := weight * p.length * p.length * p.length
	for i := range p.lines {
		size = max(size, math.Abs(at(p.low, i)), at(p.give, i)*weight)
	}
	return size
}

// total is the weight and its moment about the left end.
func (p problem) total() (weight, moment float64) {
	for i, l := range p.loads {
		weight += p.weights[i]
		moment += p.weights[i] * ((l.From+l.To)/2 + at(p.taper, i)*(l.To-l.From)/6)
	}
	return weight, moment
}
