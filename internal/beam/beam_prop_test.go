package beam

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

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
			gapOff := !balanced(pulls) && math.Abs(min(0, drops[i])-w.Deflection[i]) > 1e-8*p.size()
			if math.Abs(pulls[i]-w.Reaction[i]) > 1e-6*weight+p.rounding() || gapOff {
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
			if math.Abs(pulls[i]-w.Reaction[i]) > 1e-7*size+p.rounding() {
				t.Fatalf("pull %d: %v, want %v", i, w.Reaction[i], pulls[i])
			}
			if math.Abs(drops[i]-w.Deflection[i]) > 1e-9*p.size()*size/weight {
				t.Fatalf("drop %d: %v, want %v", i, w.Deflection[i], drops[i])
			}
		}
		sag, hog, shear := w.Extremes()
		tol := 1e-7*size*p.length + p.rounding()*p.length
		if sag.Value < 0 || hog.Value > 0 {
			t.Fatalf("sagging %v, hogging %v", sag, hog)
		}
		for _, m := range []Peak{sag, hog} {
			if m.Value != 0 && math.Abs(o.moment(pulls, m.At)-m.Value) > tol {
				t.Fatalf("moment at %v: %v, want %v", m.At, m.Value, o.moment(pulls, m.At))
			}
		}
		left, right := o.shear(pulls, shear.At, false), o.shear(pulls, shear.At, true)
		if shear.Value != 0 && min(math.Abs(left-shear.Value), math.Abs(right-shear.Value)) > tol/p.length {
			t.Fatalf("shear at %v: %v, want %v or %v", shear.At, shear.Value, left, right)
		}
		for k := range 481 {
			x := float64(k) / 480 * p.length
			if m := o.moment(pulls, x); m > sag.Value+tol || m < hog.Value-tol {
				t.Fatalf("moment %v at %v is beyond %v and %v", m, x, sag, hog)
			}
			for _, side := range []bool{false, true} {
				if v := o.shear(pulls, x, side); math.Abs(v) > math.Abs(shear.Value)+tol/p.length {
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
		q := problem{length: p.length, weights: p.weights, give: slices.Clone(p.give), low: slices.Clone(p.low)}
		slices.Reverse(q.give)
		slices.Reverse(q.low)
		for i := len(p.lines) - 1; i >= 0; i-- {
			q.lines = append(q.lines, p.length-p.lines[i])
		}
		for _, lean := range p.taper {
			q.taper = append(q.taper, -lean)
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
			if math.Abs(a.Reaction[i]-b.Reaction[n-1-i]) > 1e-7*weight+p.rounding() {
				t.Fatalf("pulls %v and %v", a.Reaction, b.Reaction)
			}
			if math.Abs(a.Deflection[i]-b.Deflection[n-1-i]) > 1e-8*p.size() && !balanced(a.Reaction) {
				t.Fatalf("drops %v and %v", a.Deflection, b.Deflection)
			}
		}
		sagA, hogA, shearA := a.Extremes()
		sagB, hogB, shearB := b.Extremes()
		for _, pair := range [][2]Peak{{sagA, sagB}, {hogA, hogB}, {shearA, shearB}} {
			if math.Abs(math.Abs(pair[0].Value)-math.Abs(pair[1].Value)) > 1e-7*weight*p.length+p.rounding()*p.length {
				t.Fatalf("extremes %v", pair)
			}
		}
	})
}

// balanced reports whether one line alone pulls: the beam then balances on it, at any slope.
func balanced(pulls []float64) bool {
	most, sum := slices.Max(pulls), 0.0
	for _, r := range pulls {
		sum += max(0, r)
	}
	return sum-most <= 1e-9*sum
}

// TestSuperposition: supports that push and pull answer two lots of loads and trim errors together with the
// sum of what they answer to each.
func TestSuperposition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		cut := rapid.IntRange(0, len(p.weights)).Draw(t, "cut")
		one, two := p, p
		one.weights, two.weights = make([]float64, len(p.weights)), make([]float64, len(p.weights))
		copy(one.weights, p.weights[:cut])
		copy(two.weights[cut:], p.weights[cut:])
		if p.low != nil {
			one.low, two.low = make([]float64, len(p.low)), make([]float64, len(p.low))
			for i, low := range p.low {
				one.low[i] = low * float64(rapid.IntRange(-2, 3).Draw(t, "share of low"))
				two.low[i] = low - one.low[i]
			}
		}
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
			if got, want := both.Reaction[i], a.Reaction[i]+b.Reaction[i]; math.Abs(got-want) > 1e-11*size+6*p.rounding() {
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
		weight, moment := p.total()
		if rapid.Bool().Draw(t, "springs") {
			for range n {
				p.give = append(p.give, float64(rapid.IntRange(0, 20).Draw(t, "give")))
			}
		}
		if rapid.Bool().Draw(t, "trim errors") {
			for range n {
				p.low = append(p.low, weight*float64(rapid.IntRange(-10, 10).Draw(t, "low"))/100)
			}
		}
		w := p.work()
		if !w.Hang(1e-6) {
			if c := moment / weight; c > p.lines[0]+1e-9 && c < p.lines[n-1]-1e-9 {
				t.Fatalf("not held, centre %v", c)
			}
			return
		}
		var set uint64
		sum := 0.0
		for i, r := range w.Reaction {
			if gap := -w.Deflection[i]; r < 0 || gap < 0 || r*gap != 0 {
				t.Fatalf("line %d: pull %v and gap %v", i, r, gap)
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
