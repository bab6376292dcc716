package beam

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/verification"
)

// Largest deflections, times EI, with w = P = L = 1. The sources of the beam diagrams are those of TestVerifyPublishedBeams;
// each is rounded to the digits that it has, and so are places.
func TestVerifyDeflectedLine(t *testing.T) {
	const half = "half the last digit"
	for _, c := range []struct {
		name      string
		from      book
		lines     []float64
		loads     []Stretch
		weights   []float64
		want, tol float64
		at, tolAt float64
		up, upAt  float64 // the highest place; none to compare where 0
	}{
		{name: "simple span, uniform", from: book{"beam formulas from memory", "5wL⁴/384", "a formula, but for rounding", ""}, lines: spans(1), loads: []Stretch{{0, 1}}, weights: []float64{1}, want: 5. / 384, tol: 1e-15, at: 0.5, tolAt: 1e-8},
		{name: "simple span, point in the middle", from: book{"beam formulas from memory", "PL³/48", "a formula, but for rounding", ""}, lines: spans(1), loads: []Stretch{{0.5, 0.5}}, weights: []float64{1}, want: 1. / 48, tol: 1e-15, at: 0.5, tolAt: 1e-8},
		{name: "two spans, uniform", from: book{"Civil Engineering Reference Manual", "", "cut off after five places", ""}, lines: spans(1, 1), loads: []Stretch{{0, 2}}, weights: []float64{2}, want: 0.00541, tol: 1e-5, at: 0.4215, tolAt: 1e-4},
		{name: "three spans, uniform", from: book{"beam diagrams", "", half, ""}, lines: spans(1, 1, 1), loads: []Stretch{{0, 3}}, weights: []float64{3}, want: 0.0069, tol: 5e-5, at: 0.446, tolAt: 5e-4},
		{name: "four spans, uniform", from: book{"beam formulas from memory", "", half, ""}, lines: spans(1, 1, 1, 1), loads: []Stretch{{0, 4}}, weights: []float64{4}, want: 0.0065, tol: 5e-5, at: 0.440, tolAt: 5e-4},
		{name: "spans 1 and 2 of three", from: book{"beam diagrams", "", half, ""}, lines: spans(1, 1, 1), loads: []Stretch{{0, 2}}, weights: []float64{2}, want: 0.0059, tol: 5e-5, at: 0.430, tolAt: 5e-4},
		{name: "spans 1 and 3 of three", from: book{"beam diagrams", "", half, ""}, lines: spans(1, 1, 1), loads: []Stretch{{0, 1}, {2, 3}}, weights: []float64{1, 1}, want: 0.0099, tol: 5e-5, at: 0.479, tolAt: 5e-4},
		{name: "spans 1 and 3 of four", from: book{"beam diagrams", "", half, ""}, lines: spans(1, 1, 1, 1), loads: []Stretch{{0, 1}, {2, 3}}, weights: []float64{1, 1}, want: 0.0097, tol: 5e-5, at: 0.477, tolAt: 5e-4},
		{name: "point in the middle of one of two spans", from: book{"beam diagrams", "which print 0.408 for the place", half, ""}, lines: spans(1, 1), loads: []Stretch{{0.5, 0.5}}, weights: []float64{1}, want: 0.015, tol: 5e-5, at: 0.480, tolAt: 5e-4},
		{name: "overhang with a point at its tip, L = 4, a = 1", from: book{"beam diagrams", "three copies: Pa²(L+a)/3 down, PaL²/(9√3) up at L/√3", "a formula, but for rounding", ""}, lines: spans(4), loads: []Stretch{{5, 5}}, weights: []float64{1}, want: 5. / 3, tol: 1e-14, at: 5, tolAt: 0, up: -16 / (9 * math.Sqrt(3)), upAt: 4 / math.Sqrt(3)},
		{name: "overhang to the left with a point at its tip", from: book{"beam diagrams", "three copies: Pa²(L+a)/3 down, PaL²/(9√3) up at L/√3", "a formula, but for rounding", ""}, lines: []float64{1, 5}, loads: []Stretch{{0, 0}}, weights: []float64{1}, want: 5. / 3, tol: 1e-14, at: 0, tolAt: 0, up: -16 / (9 * math.Sqrt(3)), upAt: 5 - 4/math.Sqrt(3)},
		{name: "overhang, uniform on it alone", from: book{"beam formulas from memory", "wa³(4L+3a)/24", "a formula, but for rounding", ""}, lines: spans(4), loads: []Stretch{{4, 5}}, weights: []float64{1}, want: 19. / 24, tol: 1e-14, at: 5, tolAt: 0},
	} {
		w := held(c.lines, c.loads, c.weights...)
		low, high := w.Bend()
		row := verification.Row{Key: "beam/deflected line/" + c.name, Source: c.from.source, Place: c.from.place, What: c.name, Why: c.from.why}
		row.Of("lowest", "1/EI", c.want, c.tol).Check(t, low.Value)
		if c.at == 0 { // it is the end
			near(t, c.name+": place", low.At, 0, c.tolAt)
		} else {
			row.Of("place of lowest", "", c.at, c.tolAt).Check(t, low.At)
		}
		if c.up != 0 {
			row.Of("highest", "1/EI", c.up, 1e-14).Check(t, high.Value)
			row.Of("place of highest", "", c.upAt, 1e-8).Check(t, high.At)
		}
	}
}

// Nothing of the beam is beyond the two places, and what Deflect finds at slack lines by another road lies between them. The
// deflected line is by Macaulay's brackets from the pulls, through two tight lines.
func TestPropBend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 7)
		weight, _ := p.total()
		w := p.work()
		if !w.Hang(1e-6) || len(w.tight) < 2 {
			return
		}
		low, high := w.Bend()
		bracket := func(x float64) (y float64) {
			for i, r := range w.Reaction {
				y -= r * cube(x-p.lines[i]) / 6
			}
			for k, l := range p.loads {
				taper := 0.0
				if p.taper != nil {
					taper = p.taper[k]
				}
				y += p.weights[k] * fromLoad(l, taper, x)
			}
			return y
		}
		a, b := w.tight[0], w.tight[len(w.tight)-1]
		xa, xb := p.lines[a], p.lines[b]
		slope := (w.level[len(w.tight)-1] - bracket(xb) - w.level[0] + bracket(xa)) / (xb - xa)
		at := func(x float64) float64 { return w.level[0] - bracket(xa) + bracket(x) + slope*(x-xa) }
		size := math.Abs(low.Value) + math.Abs(high.Value) + weight*cube(p.length)
		tol := 1e-9 * size
		for k := range 401 {
			x := w.layout.start + (w.layout.end-w.layout.start)*float64(k)/400
			if y := at(x); y > low.Value+tol || y < high.Value-tol {
				t.Fatalf("%v at %v is beyond %v and %v", y, x, low, high)
			}
		}
		for _, peak := range []Peak{low, high} {
			if y := at(peak.At); math.Abs(y-peak.Value) > tol {
				t.Fatalf("%v at %v, want %v", peak.Value, peak.At, y)
			}
		}
		for i, d := range w.Deflection {
			if y := d + w.low[i]; w.Reaction[i] == 0 && d != 0 && math.Abs(y-at(p.lines[i])) > tol {
				t.Fatalf("slack line %d: %v, want %v", i, y, at(p.lines[i]))
			}
		}
	})
}

// fromLoad is ∫ (x−s)³/6 of a unit of weight, as far as it lies before x, by Gauss's rule with
// three points, which is exact up to the fifth power.
func fromLoad(l Stretch, taper, x float64) float64 {
	if x <= l.From {
		return 0
	}
	if l.To == l.From {
		return cube(x-l.From) / 6
	}
	end := min(x, l.To)
	half := (end - l.From) / 2
	sum := 0.0
	for _, g := range [3][2]float64{{-math.Sqrt(0.6), 5. / 9}, {0, 8. / 9}, {math.Sqrt(0.6), 5. / 9}} {
		s := l.From + half*(1+g[0])
		lean := 2*(s-l.From)/(l.To-l.From) - 1
		sum += g[1] * half * (1 + taper*lean) / (l.To - l.From) * cube(x-s) / 6
	}
	return sum
}

// Equal places to the left and the right: the left one is given, whatever rounding says.
func TestBendTiesGoLeft(t *testing.T) {
	x := make([]float64, 8)
	for i := range x {
		x[i] = float64(i)*1.7 + 0.3
	}
	low, high := held(x, []Stretch{{0.3, x[7]}}, 100).Bend()
	if low.At > x[1] || high.At > x[2] {
		t.Errorf("lowest %v, highest %v: want both near the left end", low, high)
	}
}

// A beam balanced on its one tight line is taken as level there: two cantilevers, qa⁴/8 at their tips.
func TestBendOnOneLine(t *testing.T) {
	w := NewLayout(Beam{Lines: []float64{2}, Loads: []Stretch{{0, 4}}}).Work()
	w.Load([]float64{8})
	w.Hang(1e-9)
	low, high := w.Bend()
	near(t, "lowest", low.Value, 2*16./8, 1e-12)
	near(t, "its place", low.At, 0, 0)
	near(t, "highest", high.Value, 0, 1e-12)
	near(t, "its place", high.At, 2, 1e-6)
	none := NewLayout(Beam{}).Work()
	if low, high := none.Bend(); low != (Peak{}) || high != (Peak{}) {
		t.Errorf("no line: %v and %v", low, high)
	}
}

func BenchmarkBend(b *testing.B) {
	for _, lines := range []int{5, 12} {
		beam, weights := benchmarkBeam(lines, 10)
		w := NewLayout(beam).Work()
		w.Load(weights)
		w.Hang(0)
		b.Run(fmt.Sprint(lines, " lines"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				w.Bend()
			}
		})
	}
}
