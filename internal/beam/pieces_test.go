package beam

import (
	"math"
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The pieces that the answers are made of, each held against another road by itself: in a whole answer one of them may
// make good what another has missed.

// drawHeld draws a beam held on two lines or more, which may push, so that points on lines that are left out are common.
func drawHeld(t *rapid.T) (p problem, w *Work, set uint64) {
	p = drawProblem(t, 7)
	set = rapid.Uint64Range(1, All(len(p.lines))).Draw(t, "set")
	if bits.OnesCount64(set) < 2 {
		set = All(len(p.lines))
	}
	w = p.work()
	w.Hold(set)
	return p, w, set
}

// crestFrom is the crest of the span from tight line j to the next.
func (w *Work) crestFrom(j int) (moment, place float64) {
	return w.crest(w.tight[j], w.tight[j+1], w.moment[j], w.held[j].left)
}

// largest is the size of the largest pull, or of the weight, whichever is more.
func (w *Work) largest() float64 {
	size := w.total
	for _, r := range w.Reaction {
		size = max(size, math.Abs(r))
	}
	return size
}

// with is the problem with one point more.
func (p problem) with(weight, at float64) problem {
	p.loads = append(slices.Clone(p.loads), Stretch{at, at})
	p.weights = append(slices.Clone(p.weights), weight)
	if p.taper != nil {
		p.taper = append(slices.Clone(p.taper), 0)
	}
	return p
}

// A point that is added afterwards is the same as one that belongs to the layout.
func TestPropAddPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, w, set := drawHeld(t)
		weight := float64(rapid.IntRange(1, 1000).Draw(t, "point"))
		at := float64(rapid.IntRange(0, 4*int(p.length)).Draw(t, "quarter metres")) / 4
		at = min(max(at, w.layout.start), w.layout.end)
		q := p.with(weight, at)
		want := q.work()
		w.AddPoint(weight, at)
		w.Hold(set)
		want.Hold(set)
		w.Deflect()
		want.Deflect()
		tol := 1e-9*want.largest() + p.rounding()
		for i := range p.lines {
			if math.Abs(w.Reaction[i]-want.Reaction[i]) > tol || math.Abs(w.Deflection[i]-want.Deflection[i]) > 1e-9*q.size()*want.largest()/want.total {
				t.Fatalf("line %d: pull %v, want %v; %v below its end, want %v", i, w.Reaction[i], want.Reaction[i], w.Deflection[i], want.Deflection[i])
			}
		}
		if math.Abs(w.total-want.total) > 1e-12*want.total {
			t.Fatalf("weighs %v, want %v", w.total, want.total)
		}
		sag, hog, shear := w.Extremes()
		wantSag, wantHog, wantShear := want.Extremes()
		if math.Abs(sag.Value-wantSag.Value) > tol*p.length || math.Abs(hog.Value-wantHog.Value) > tol*p.length || math.Abs(math.Abs(shear.Value)-math.Abs(wantShear.Value)) > tol {
			t.Fatalf("extremes %v, %v, %v, want %v, %v, %v", sag, hog, shear, wantSag, wantHog, wantShear)
		}
		for k := range 25 {
			x := w.layout.start + (w.layout.end-w.layout.start)*float64(k)/24
			if got, want := w.Level(x), want.Level(x); math.Abs(got-want) > 1e-9*q.size()*w.largest()/w.total {
				t.Fatalf("level at %v: %v, want %v", x, got, want)
			}
		}
	})
}

// How far the beam stands below level at a place, by Macaulay's brackets through two tight lines.
func TestPropLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, w, _ := drawHeld(t)
		bracket := func(x float64) (y float64) {
			for i, r := range w.Reaction {
				y -= r * cube(x-p.lines[i]) / 6
			}
			for k, l := range p.loads {
				y += p.weights[k] * fromLoad(l, at(p.taper, k), x)
			}
			return y
		}
		last := len(w.tight) - 1
		a, b := w.tight[0], w.tight[last]
		level := func(i int) float64 { return at(p.low, i) + at(p.give, i)*w.Reaction[i] }
		xa, xb := p.lines[a], p.lines[b]
		slope := (level(b) - bracket(xb) - level(a) + bracket(xa)) / (xb - xa)
		size := p.size() * w.largest() / w.total * p.length / (xb - xa)
		for k := range 49 {
			x := w.layout.start + (w.layout.end-w.layout.start)*float64(k)/48
			want := level(a) - bracket(xa) + bracket(x) + slope*(x-xa)
			if got := w.Level(x); math.Abs(got-want) > 1e-8*size {
				t.Fatalf("at %v: %v, want %v", x, got, want)
			}
		}
		w.Deflect()
		for i, d := range w.Deflection {
			if math.Abs(d) > w.terms[i]*(1+1e-9) {
				t.Fatalf("line %d: the terms of %v add up to no more than %v", i, d, w.terms[i])
			}
		}
	})
}

// The moment at a place, and the crest of each span, by the oracle.
func TestPropMoments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, w, set := drawHeld(t)
		if rapid.Bool().Draw(t, "added") {
			weight := float64(rapid.IntRange(1, 1000).Draw(t, "point"))
			at := float64(rapid.IntRange(0, 4*int(p.length)).Draw(t, "quarter metres")) / 4
			w.AddPoint(weight, at)
			w.Hold(set)
			p = p.with(weight, at)
		}
		o := p.oracle()
		tol := (1e-8*w.largest() + p.rounding()) * p.length
		first, last := p.lines[w.tight[0]], p.lines[w.tight[len(w.tight)-1]]
		for k := range 97 {
			x := float64(k)/96*p.length + 0.001
			field, on := slices.BinarySearch(p.lines, x)
			if on || field == 0 || field == len(p.lines) {
				continue
			}
			want := o.moment(w.Reaction, x)
			if x < first || x > last {
				want = 0 // not wanted there
			}
			if got := w.momentAt(field, x); math.Abs(got-want) > tol {
				t.Fatalf("moment at %v: %v, want %v", x, got, want)
			}
		}
		for j := range len(w.tight) - 1 {
			from, to := p.lines[w.tight[j]], p.lines[w.tight[j+1]]
			s, m, n := &w.held[j], w.moment[j], w.moment[j+1]
			value, place := w.crestFrom(j)
			if got := o.moment(w.Reaction, place); place < from || place > to || math.Abs(got-value) > tol {
				t.Fatalf("crest of %v to %v: %v at %v, where the moment is %v", from, to, value, place, got)
			}
			if less := value - tol; s.crestAtMost(less, to-from, m, n, w.evenOn(w.tight[j], w.tight[j+1])) {
				t.Fatalf("crest of %v to %v: %v, said to be no more than %v", from, to, value, less)
			}
			for k := range 101 {
				x := from + (to-from)*float64(k)/100
				if m := o.moment(w.Reaction, x); m > value+tol {
					t.Fatalf("crest of %v to %v: %v, but %v at %v", from, to, value, m, x)
				}
			}
		}
	})
}

// A span of its own: 10 m under 1 N/m bears 12.5 N·m and may bear 100/6, less 100/24 for each N/m that is known to be even; 8 m
// under 1 N in the middle bears P·L/4 = 2 N·m, all that it may. The greater moment over an end comes on top.
func TestCrestAtMost(t *testing.T) {
	even, point := simpleCover(10, 1, 1), simplePiece(8, 4, 0, 0)
	for _, c := range []struct {
		name                  string
		span                  simple
		length, m, n, q, most float64
		atMost                bool
	}{
		{"even load, as much as it may bear", even, 10, 0, 0, 0, 16.67, true},
		{"even load, less", even, 10, 0, 0, 0, 16.66, false},
		{"half of it known to be even, as much as it may bear", even, 10, 0, 0, 0.5, 14.584, true},
		{"half of it known to be even, less", even, 10, 0, 0, 0.5, 14.583, false},
		{"all of it known to be even, as much as it bears", even, 10, 0, 0, 1, 12.5, true},
		{"all of it known to be even, less", even, 10, 0, 0, 1, 12.499, false},
		{"point, as much as it bears", point, 8, 0, 0, 0, 2, true},
		{"point, less", point, 8, 0, 0, 0, 1.999, false},
		{"point, moments over its ends", point, 8, -1, -3, 0, 1, true},
		{"point, moments over its ends the other way round", point, 8, -3, -1, 0, 1, true},
		{"point, moments over its ends, less", point, 8, -1, -3, 0, 0.999, false},
	} {
		if got := c.span.crestAtMost(c.most, c.length, c.m, c.n, c.q); got != c.atMost {
			t.Errorf("%s: %v, want %v", c.name, got, c.atMost)
		}
	}
}

// 2 N over the first 2 m of a beam on lines at 0, 1, 2 and 10 m are 1 N/m on either span; from the second line to the last, with
// the third slack, nothing is known to lie all along, and what lies there still sags.
func TestEvenOn(t *testing.T) {
	lines, loads := []float64{0, 1, 2, 10}, []Stretch{{0, 2}}
	even := NewLayout(Beam{Lines: lines, Loads: loads}).Work()
	even.Load([]float64{2})
	leaning := NewLayout(Beam{Lines: lines, Loads: loads, Taper: []float64{-1}}).Work()
	leaning.Load([]float64{2})
	for _, c := range []struct {
		name     string
		w        *Work
		from, to int
		want     float64
	}{
		{"a span under the load", even, 1, 2, 1},
		{"a span beside it", even, 2, 3, 0},
		{"over a slack line", even, 1, 3, 0},
		{"a span under a load that leans", leaning, 0, 1, 0},
	} {
		if got := c.w.evenOn(c.from, c.to); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	even.Hold(0b1011)
	sag, _, _ := even.Extremes()
	if m, at := even.crestFrom(1); sag != (Peak{m, at}) || m <= 0 {
		t.Errorf("largest sagging moment %v; it is %v, over the slack line", sag, Peak{m, at})
	}
}

// The places at which the beam is level along a piece, made from the places: the slope is their product.
func TestPropFlat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const length = 10.0
		var roots [3]float64
		place := rapid.IntRange(-30, 130)
		for i := range roots {
			roots[i] = float64(place.Draw(t, "tenths"))/10 + 0.05 + float64(i)/100
		}
		slices.Sort(roots[:])
		if roots[1]-roots[0] < 0.05 || roots[2]-roots[1] < 0.05 {
			return
		}
		a, b, c := roots[0], roots[1], roots[2]
		// θ − Mu − Vu²/2 + qu³/6 + gu⁴/24 = k(u−a)(u−b)(u−c), or that times 1 + u/d, with a d so large that the load stays positive.
		k := rapid.Float64Range(0.1, 5).Draw(t, "k")
		e := [4]float64{-k * a * b * c, k * (a*b + b*c + c*a), -k * (a + b + c), k}
		s := bent{theta: e[0], m: -e[1], v: -2 * e[2], q: 6 * e[3]}
		if rapid.Bool().Draw(t, "leaning") {
			const d = 100
			s = bent{theta: e[0], m: -(e[1] + e[0]/d), v: -2 * (e[2] + e[1]/d), q: 6 * (e[3] + e[2]/d), g: 24 * e[3] / d}
		}
		if rapid.Bool().Draw(t, "turned over") { // between two zeros of the slope that falls, where the load is none
			s = bent{theta: k * a * b, m: k * (a + b), v: -2 * k}
			roots = [3]float64{a, b, -1}
			slices.Sort(roots[:])
		}
		var want []float64
		for _, r := range roots {
			if r > 0 && r < length {
				want = append(want, r)
			}
		}
		at, count := s.flat(s.at(length), length)
		got := at[:count]
		if len(got) != len(want) {
			t.Fatalf("level at %v, want %v", got, want)
		}
		for i := range got {
			if math.Abs(got[i]-want[i]) > 1e-8*length {
				t.Fatalf("level at %v, want %v", got, want)
			}
		}
		// A stretch further on the state is the same polynomial's.
		const step = 3.5
		on := s.at(step)
		direct, via := s.at(step+2), on.at(2)
		for _, pair := range [][2]float64{{direct.y, via.y}, {direct.theta, via.theta}, {direct.m, via.m}, {direct.v, via.v}, {direct.q, via.q}, {direct.g, via.g}} {
			if math.Abs(pair[0]-pair[1]) > 1e-9*(1+math.Abs(s.y)+math.Abs(s.theta)*50+math.Abs(s.m)*500+math.Abs(s.v)*5000) {
				t.Fatalf("%+v in one step, %+v in two", direct, via)
			}
		}
	})
}

// A cubic made from its stationary places.
func TestPropStationary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place := rapid.IntRange(-20, 40)
		a, b := float64(place.Draw(t, "a"))/20+0.01, float64(place.Draw(t, "b"))/20+0.02
		k := rapid.SampledFrom([]float64{-3, -0.5, 1, 4}).Draw(t, "k")
		c := cubic{rapid.Float64Range(-1, 1).Draw(t, "c0"), 3 * k * a * b, -1.5 * k * (a + b), k}
		var want []float64
		for _, u := range []float64{min(a, b), max(a, b)} {
			if u > 0 && u < 1 {
				want = append(want, u)
			}
		}
		at, n := c.stationary()
		if n != len(want) {
			t.Fatalf("%v: level at %v, want %v", c, at[:n], want)
		}
		for i := range want {
			if math.Abs(at[i]-want[i]) > 1e-7 { // the two may be as near as a hundredth
				t.Fatalf("%v: level at %v, want %v", c, at[:n], want)
			}
		}
	})
	if _, n := (cubic{1, 1, 0, 1}).stationary(); n != 0 {
		t.Error("one that only rises is level somewhere")
	}
}

// The stretch about the middle on which a cubic is not below zero by more than a little goes as far as it can.
func TestPropPositive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coefficient := rapid.Float64Range(-3, 3)
		c := cubic{coefficient.Draw(t, "c0"), coefficient.Draw(t, "c1"), coefficient.Draw(t, "c2"), coefficient.Draw(t, "c3")}
		small := rapid.SampledFrom([]float64{0, 0.05}).Draw(t, "small")
		lo, hi := c.positive(small)
		middle := c.at(0.5)
		if middle < -small {
			if lo != 0.5 || hi != 0.5 {
				t.Fatalf("%v is %v in the middle, yet no less than zero from %v to %v", c, middle, lo, hi)
			}
			return
		}
		if lo > 0.5 || hi < 0.5 {
			t.Fatalf("%v: from %v to %v is not about the middle", c, lo, hi)
		}
		const steps = 4000
		for _, side := range []struct{ end, limit float64 }{{lo, 0}, {hi, 1}} {
			dip, least := math.NaN(), math.Inf(1) // the first place outward at which it is below
			for k := range steps + 1 {
				if u := 0.5 + (side.limit-0.5)*float64(k)/steps; c.at(u) < -small-1e-6 {
					dip = u
					break
				} else {
					least = min(least, c.at(u))
				}
			}
			if math.IsNaN(dip) {
				// It may dip between two steps by less than is looked for.
				if side.end != side.limit && least > -small+1e-4 {
					t.Fatalf("%v: ends at %v, want %v", c, side.end, side.limit)
				}
				continue
			}
			if math.Abs(side.end-0.5) > math.Abs(dip-0.5) {
				t.Fatalf("%v: goes to %v, but is %v at %v", c, side.end, c.at(dip), dip)
			}
			if c.at(side.end) > 1e-9 {
				t.Fatalf("%v: ends at %v, where it is %v", c, side.end, c.at(side.end))
			}
			for k := range 100 {
				if u := side.end + (dip-side.end)*float64(k)/100; c.at(u) > 1e-9 {
					t.Fatalf("%v: ends at %v, but is %v at %v, before it is below at %v", c, side.end, c.at(u), u, dip)
				}
			}
		}
	})
}

// Golden section ends at the top of a value, and no look is wasted: each makes the stretch shorter by the same share, 38 of them by
// a hundred million.
func TestCloseIn(t *testing.T) {
	for _, top := range []float64{2.5, 3.1, 4.9, 6.999} {
		r := roving{w: NewLayout(Beam{Lines: []float64{1, 9}, Loads: []Stretch{{0, 10}}}).Work()}
		var looks []float64
		r.closeIn(way{2, 7}, func(at float64) float64 {
			looks = append(looks, at)
			return -math.Abs(at - top)
		})
		best := math.Inf(1)
		for _, at := range looks {
			if at < 2 || at > 7 {
				t.Errorf("looks at %v, beyond 2 to 7", at)
			}
			best = min(best, math.Abs(at-top))
		}
		if best > 1e-7 || len(looks) > 42 {
			t.Errorf("nearest look is %v off after %d of them, want within a hundred millionth of the beam after some 40", best, len(looks))
		}
	}
}

// The greatest moment under a point that roves within a part of a field without a mark is asked for exactly: the place is among
// those looked at, as a search by many small steps finds it.
func TestPropUnderPoint(t *testing.T) {
	asked := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 5)
		w := p.work()
		n := len(p.lines)
		field := rapid.IntRange(1, n-1).Draw(t, "field")
		places := []float64{p.lines[field-1], p.lines[field]}
		for _, m := range w.layout.marks[w.layout.field[field]:w.layout.field[field+1]] {
			places = append(places, p.lines[field-1]+m.place)
		}
		slices.Sort(places)
		k := rapid.IntRange(1, len(places)-1).Draw(t, "part")
		s := way{places[k-1], places[k]}
		if s.hi-s.lo < 0.2 {
			return
		}
		weight := float64(rapid.IntRange(1, 1000).Draw(t, "point"))
		set := All(n)
		moment := func(at float64) float64 {
			w.LoadWeights()
			w.AddPoint(weight, at)
			w.Hold(set)
			return w.momentAt(field, at)
		}
		r := roving{w: w, weight: weight}
		best := math.Inf(-1)
		r.underPoint(s, field, func(at float64) float64 {
			if at < s.lo || at > s.hi {
				t.Fatalf("looks at %v, beyond %v to %v", at, s.lo, s.hi)
			}
			m := moment(at)
			best = max(best, m)
			return m
		})
		top, size := math.Inf(-1), 0.0
		for i := 1; i < 200; i++ {
			m := moment(s.at(float64(i) / 200))
			top, size = max(top, m), max(size, math.Abs(m))
		}
		if m := max(moment(s.at(1e-9)), moment(s.at(1-1e-9))); m >= top {
			return // it is at an end, and that is looked at elsewhere
		}
		asked++
		if best < top-1e-9*size-p.rounding()*p.length {
			t.Fatalf("greatest found %v, there is %v", best, top)
		}
	})
	if asked == 0 {
		t.Error("no top within a part ever: the draw does not test what it should")
	}
}

// Both searches for the tight lines, each by itself, give what the oracle gives by trying all sets.
func TestPropSearches(t *testing.T) {
	trades, settles, slack := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6)
		w := p.work()
		weight, moment := p.total()
		centre := moment / weight
		if first, last := p.lines[0], p.lines[len(p.lines)-1]; centre < first+1e-3 || centre > last-1e-3 {
			return
		}
		pulls, _, miss := p.oracle().hang()
		if miss > 1e-9 {
			return
		}
		compare := func(name string) {
			for i, r := range w.Reaction {
				if math.Abs(r-pulls[i]) > 1e-6*weight+p.rounding() {
					t.Fatalf("%s: pulls %v, want %v", name, w.Reaction, pulls)
				}
				if r == 0 {
					slack++
				}
			}
		}
		if len(p.lines) > 2 {
			if !w.settle(w.none()) {
				t.Fatalf("does not settle, with the centre of gravity at %v in %v", centre, p.lines)
			}
			settles++
			compare("settled")
		}
		w.Hold(All(len(p.lines)))
		if w.trade(w.none()) {
			trades++
			compare("traded")
		}
	})
	// Trading is the quick way, and hardly ever gives up.
	if settles == 0 || slack == 0 || trades < settles*9/10 {
		t.Errorf("settled %d times, traded %d times, %d slack lines", settles, trades, slack)
	}
}

// Where the beam neither sags nor hogs that is told of at its left end, wherever it is.
func TestNothingBends(t *testing.T) {
	w := held([]float64{3, 5}, []Stretch{{3, 3}}, 7)
	sag, hog, shear := w.Extremes()
	if sag != (Peak{0, 3}) || hog != (Peak{0, 3}) || shear != (Peak{0, 3}) {
		t.Errorf("%v, %v, %v: want nothing, at 3", sag, hog, shear)
	}
}

// One line carries what is on it and on both sides of it, and where it gives it stretches by that.
func TestHoldOneLine(t *testing.T) {
	w := NewLayout(Beam{
		Lines: []float64{2, 4, 6}, Give: []float64{0.5, 0.25, 0.5}, Low: []float64{0, 3, 0},
		Loads: []Stretch{{4, 4}, {1, 1}, {5, 7}},
	}).Work()
	w.Load([]float64{7, 2, 3})
	w.Hold(1 << 1)
	nearAll(t, "pulls", w.Reaction, []float64{0, 12, 0}, 1e-12)
	near(t, "how low its end is", w.level[0], 3+0.25*12, 1e-12)
}

// Scratch that is given back with its lines let lower is handed out with them as the layout has them.
func TestBorrowedLows(t *testing.T) {
	l := NewLayout(Beam{Lines: spans(1, 1), Loads: []Stretch{{0, 2}}})
	for range 20 {
		w := l.Borrow()
		w.Load([]float64{2})
		w.Hang(0)
		near(t, "middle line", w.Reaction[1], 1.25, 1e-12) // 10/8 of a span's load
		w.SetLow([]float64{0, 1, 0})
		w.Hang(0)
		near(t, "middle line, long", w.Reaction[1], 0, 1e-12)
		w.Return()
	}
}

// The largest sagging moment may stand far from the point that roves: under a heavy load in another span, which the point
// lifts or presses from where it is. Its place is told as closely as by a search in ten thousand steps, wherever it lies among
// the marks of what hangs on the way, and the moment to the last digits.
func TestRoveMovesAnotherSpan(t *testing.T) {
	for _, c := range []struct {
		name     string
		lines    []float64
		heavy    float64   // where it hangs
		marks    []float64 // small points on the way
		from, to float64
	}{
		{"two spans on", spans(3, 3, 3), 1.5, nil, 6, 9},
		{"two spans on, with marks", spans(3, 3, 3), 1.5, []float64{6.4, 6.9, 8.3}, 6, 9},
		{"a mark just at the top's place", spans(3, 3, 3), 1.5, []float64{7.27}, 6, 9},
		{"two spans back", spans(3, 3, 3), 7.5, []float64{0.5, 2.2}, 0, 3},
		{"part of the way", spans(4, 2, 5), 2, []float64{7.5, 9}, 6.5, 10.5},
		{"only before the top", spans(3, 3, 3), 1.5, []float64{6.5}, 6.2, 7},
		{"only after it", spans(3, 3, 3), 1.5, []float64{8.5}, 7.6, 8.9},
		{"along all of the beam", spans(3, 3, 3, 2), 1.5, []float64{4.4, 7.4}, 3.5, 11},
	} {
		loads, weights := []Stretch{{c.lines[0], c.lines[len(c.lines)-1]}, {c.heavy, c.heavy}}, []float64{300, 1000}
		for _, at := range c.marks {
			loads, weights = append(loads, Stretch{at, at}), append(weights, 2)
		}
		w := NewLayout(Beam{Lines: c.lines, Loads: loads}).Work()
		w.Load(weights)
		const point = 60
		var got Roving
		if !w.Rove(point, c.from, c.to, 1e-9, true, &got) {
			t.Fatalf("%s: not held", c.name)
		}
		sag := func(at float64) float64 {
			w.LoadWeights()
			w.AddPoint(point, at)
			w.Hang(1e-9)
			sag, _, _ := w.Extremes()
			return sag.Value
		}
		best, place := math.Inf(-1), 0.0
		const steps = 10_000
		for k := range steps + 1 {
			at := c.from + (c.to-c.from)*float64(k)/steps
			if v := sag(at); v > best {
				best, place = v, at
			}
		}
		if got.Sag.Value < best*(1-1e-14) || math.Abs(got.Sag.At-place) > 2*(c.to-c.from)/steps {
			t.Errorf("%s: %v, by many steps %v at %v", c.name, got.Sag, best, place)
		}
		near(t, c.name+": what is told of comes about", sag(got.Sag.At), got.Sag.Value, 1e-9)
	}
}
