package beam

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// problem is a beam with its loads, drawn so that coincidences are common: most places lie on
// a coarse grid, so loads fall on lines, on each other, and the centre of
// gravity on a line.
type problem struct {
	lines   []float64
	loads   []Stretch
	weights []float64
	length  float64
}

func (p problem) oracle() oracle { return oracle{p.lines, p.loads, p.weights} }

func (p problem) work() *Work {
	w := NewLayout(Beam{Lines: p.lines, Loads: p.loads}).Work()
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
		at := place.Draw(t, "line")
		i := 0
		for i < len(p.lines) && p.lines[i] < at {
			i++
		}
		near := func(k int) bool { return k >= 0 && k < len(p.lines) && math.Abs(p.lines[k]-at) < 0.1 }
		if near(i) || near(i-1) {
			n--
			if n < 2 {
				n = 2
			}
			continue
		}
		p.lines = append(p.lines, 0)
		copy(p.lines[i+1:], p.lines[i:])
		p.lines[i] = at
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
	return p
}

func (p problem) total() (weight, moment float64) {
	for i, l := range p.loads {
		weight += p.weights[i]
		moment += p.weights[i] * (l.From + l.To) / 2
	}
	return weight, moment
}

// TestHangAgainstEnumeration compares with the one set of lines, among all, that has every sign right.
func TestHangAgainstEnumeration(t *testing.T) {
	slack := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		weight, moment := p.total()
		w := p.work()
		held := w.Hang(1e-6)
		centre := moment / weight
		if first, last := p.lines[0], p.lines[len(p.lines)-1]; centre < first-1e-6 || centre > last+1e-6 {
			if held {
				t.Fatalf("centre of gravity %v outside %v to %v, yet held", centre, first, last)
			}
			return
		} else if centre < first+1e-6 || centre > last-1e-6 {
			if !held && centre > first && centre < last {
				t.Fatalf("not held, centre %v", centre)
			}
			return // the oracle's own rounding decides here
		}
		if !held {
			t.Fatalf("not held, centre %v in %v", centre, p.lines)
		}
		var sum, about float64
		scale := weight * p.length * p.length * p.length
		for i, r := range w.Reaction {
			gap := -w.Deflection[i]
			if r < 0 || gap < 0 || r*gap != 0 {
				t.Fatalf("line %d: pull %v and gap %v", i, r, gap)
			}
			sum += r
			about += r * p.lines[i]
			if r == 0 {
				slack++
			}
		}
		if math.Abs(sum-weight) > 1e-9*weight || math.Abs(about-moment) > 1e-9*weight*p.length {
			t.Fatalf("pulls add up to %v of %v, their moment to %v of %v", sum, weight, about, moment)
		}
		pulls, drops, miss := p.oracle().hang()
		if miss > 1e-9 {
			t.Fatalf("the oracle found nothing: %v", miss)
		}
		for i := range pulls {
			if math.Abs(pulls[i]-w.Reaction[i]) > 1e-6*weight || math.Abs(drops[i]-w.Deflection[i]) > 1e-8*scale {
				t.Fatalf("line %d: pull %v, want %v; drop %v, want %v\n%v\n%v\nof %+v", i,
					w.Reaction[i], pulls[i], w.Deflection[i], drops[i], w.Reaction, pulls, p)
			}
		}
	})
	if slack == 0 {
		t.Error("no slack line ever: the draw does not test what it should")
	}
}

// TestHoldAgainstOracle compares pulls, deflections, moments and extremes of any set of supports.
func TestHoldAgainstOracle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		set := rapid.Uint64Range(1, All(len(p.lines))).Draw(t, "set")
		if set&(set-1) == 0 {
			return
		}
		weight, _ := p.total()
		w, o := p.work(), p.oracle()
		w.Hold(set)
		w.Deflect()
		pulls, drops, _ := o.hold(set)
		size := weight
		for _, r := range pulls {
			size = max(size, math.Abs(r))
		}
		for i := range pulls {
			if math.Abs(pulls[i]-w.Reaction[i]) > 1e-7*size {
				t.Fatalf("pull %d: %v, want %v", i, w.Reaction[i], pulls[i])
			}
			if math.Abs(drops[i]-w.Deflection[i]) > 1e-9*size*1728 {
				t.Fatalf("drop %d: %v, want %v", i, w.Deflection[i], drops[i])
			}
		}
		sag, hog, shear := w.Extremes()
		tol := 1e-7 * size * p.length
		if sag.Value < 0 || hog.Value > 0 {
			t.Fatalf("sagging %v, hogging %v", sag, hog)
		}
		for _, m := range []Peak{sag, hog} {
			if m.Value != 0 && math.Abs(o.moment(pulls, m.At)-m.Value) > tol {
				t.Fatalf("moment at %v: %v, want %v", m.At, m.Value, o.moment(pulls, m.At))
			}
		}
		left, right := o.shear(pulls, shear.At, false), o.shear(pulls, shear.At, true)
		if shear.Value != 0 && min(math.Abs(left-shear.Value), math.Abs(right-shear.Value)) > 1e-7*size {
			t.Fatalf("shear at %v: %v, want %v or %v", shear.At, shear.Value, left, right)
		}
		for k := range 481 {
			x := float64(k) / 480 * p.length
			if m := o.moment(pulls, x); m > sag.Value+tol || m < hog.Value-tol {
				t.Fatalf("moment %v at %v is beyond %v and %v", m, x, sag, hog)
			}
			for _, side := range []bool{false, true} {
				if v := o.shear(pulls, x, side); math.Abs(v) > math.Abs(shear.Value)+1e-7*size {
					t.Fatalf("shear %v at %v is beyond %v", v, x, shear)
				}
			}
		}
	})
}

// TestMirror: a beam turned end for end gives the same, turned end for end.
func TestMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		q := problem{length: p.length, weights: p.weights}
		for i := len(p.lines) - 1; i >= 0; i-- {
			q.lines = append(q.lines, p.length-p.lines[i])
		}
		for _, l := range p.loads {
			q.loads = append(q.loads, Stretch{p.length - l.To, p.length - l.From})
		}
		a, b := p.work(), q.work()
		weight, _ := p.total()
		heldA, heldB := a.Hang(1e-6), b.Hang(1e-6)
		if heldA != heldB {
			t.Skip("balanced on the edge")
		}
		if !heldA {
			return
		}
		n := len(p.lines)
		for i := range n {
			if math.Abs(a.Reaction[i]-b.Reaction[n-1-i]) > 1e-7*weight {
				t.Fatalf("pulls %v and %v", a.Reaction, b.Reaction)
			}
		}
		sagA, hogA, shearA := a.Extremes()
		sagB, hogB, shearB := b.Extremes()
		for _, pair := range [][2]Peak{{sagA, sagB}, {hogA, hogB}, {shearA, shearB}} {
			if math.Abs(math.Abs(pair[0].Value)-math.Abs(pair[1].Value)) > 1e-7*weight*p.length {
				t.Fatalf("extremes %v", pair)
			}
		}
	})
}

// TestSuperposition: supports that push and pull answer two loads together with the sum of
// what they answer to each.
func TestSuperposition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		cut := rapid.IntRange(0, len(p.weights)).Draw(t, "cut")
		one, two := p, p
		one.weights, two.weights = make([]float64, len(p.weights)), make([]float64, len(p.weights))
		copy(one.weights, p.weights[:cut])
		copy(two.weights[cut:], p.weights[cut:])
		a, b, both := one.work(), two.work(), p.work()
		set := All(len(p.lines))
		a.Hold(set)
		b.Hold(set)
		both.Hold(set)
		size := 0.0
		for i := range p.lines {
			size = max(size, math.Abs(a.Reaction[i]), math.Abs(b.Reaction[i]))
		}
		for i := range p.lines {
			if got, want := both.Reaction[i], a.Reaction[i]+b.Reaction[i]; math.Abs(got-want) > 1e-11*size {
				t.Fatalf("pull %d: %v, want %v", i, got, want)
			}
		}
	})
}

// TestManyLines settles many lines under wild loads: whatever set comes out, every sign is right.
func TestManyLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(9, MaxLines).Draw(t, "lines")
		p := problem{length: float64(n + 1)}
		for i := range n {
			p.lines = append(p.lines, float64(i+1))
		}
		p.loads, p.weights = []Stretch{{0, p.length}}, []float64{0.01}
		for range rapid.IntRange(1, 12).Draw(t, "points") {
			at := rapid.Float64Range(0, p.length).Draw(t, "at")
			p.loads, p.weights = append(p.loads, Stretch{at, at}), append(p.weights, rapid.Float64Range(0, 1000).Draw(t, "weight"))
		}
		w := p.work()
		weight, moment := p.total()
		if !w.Hang(1e-6) {
			if c := moment / weight; c > p.lines[0]+1e-9 && c < p.lines[n-1]-1e-9 {
				t.Fatalf("not held, centre %v", c)
			}
			return
		}
		var set uint64
		sum := 0.0
		for i, r := range w.Reaction {
			if r < 0 {
				t.Fatalf("line %d pushes %v", i, r)
			}
			sum += r
			if r > 0 {
				set |= 1 << i
			}
		}
		if math.Abs(sum-weight) > 1e-8*weight {
			t.Fatalf("pulls add up to %v of %v", sum, weight)
		}
		if set&(set-1) == 0 {
			return
		}
		w.Hold(set)
		w.Deflect()
		for i, d := range w.Deflection {
			// A line that held next to nothing is left out here, and all pulls of that kind bend
			// the beam by no more than this.
			if d > 1e-9*w.terms[i]+1e-8*weight {
				t.Fatalf("line %d slack, yet the beam is %v below its end", i, d)
			}
		}
	})
}
