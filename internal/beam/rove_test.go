package beam

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Brute force beside the search: the point is laid at many places one after the other. Nothing may be beyond
// what Rove gives, and what it gives must come about at the place that it names.
func TestPropRove(t *testing.T) {
	slack := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 7)
		weight, _ := p.total()
		point := float64(rapid.IntRange(0, 1000).Draw(t, "point"))
		a, b := rapid.Float64Range(0, p.length).Draw(t, "from"), rapid.Float64Range(0, p.length).Draw(t, "to")
		from, to := min(a, b), max(a, b)
		w := p.work()
		var got Roving
		held := w.Rove(point, from, to, 1e-6, true, &got)
		hang := func(at float64) bool {
			w.LoadWeights()
			w.AddPoint(point, at)
			return w.Hang(1e-6)
		}
		if held != (hang(from) && hang(to)) {
			t.Fatalf("held: %v, want %v", held, !held)
		}
		if !held {
			return
		}
		tol := 1e-7 * (weight + point)
		for k := range 301 {
			at := from + (to-from)*float64(k)/300
			if !hang(at) {
				t.Fatalf("not held with the point at %v", at)
			}
			for i, r := range w.Reaction {
				if r == 0 {
					slack++
				}
				if reach := got.Pulls[i]; r > reach.Most.Value+tol || r < reach.Least.Value-tol {
					t.Fatalf("line %d with the point at %v: %v is not within %v to %v", i, at, r, reach.Least, reach.Most)
				}
			}
			sag, hog, _ := w.Extremes()
			if sag.Value > got.Sag.Value+tol*p.length || hog.Value < got.Hog.Value-tol*p.length {
				t.Fatalf("with the point at %v: moments %v and %v are beyond %v and %v", at, sag, hog, got.Sag, got.Hog)
			}
		}
		for i, reach := range got.Pulls {
			for _, peak := range []Peak{reach.Most, reach.Least} {
				if hang(peak.At); math.Abs(w.Reaction[i]-peak.Value) > tol {
					t.Fatalf("line %d with the point at %v: %v, want %v", i, peak.At, w.Reaction[i], peak.Value)
				}
			}
		}
		hang(got.Sag.At)
		if sag, _, _ := w.Extremes(); math.Abs(sag.Value-got.Sag.Value) > tol*p.length {
			t.Fatalf("sagging with the point at %v: %v, want %v", got.Sag.At, sag.Value, got.Sag.Value)
		}
		hang(got.Hog.At)
		if _, hog, _ := w.Extremes(); math.Abs(hog.Value-got.Hog.Value) > tol*p.length {
			t.Fatalf("hogging with the point at %v: %v, want %v", got.Hog.At, hog.Value, got.Hog.Value)
		}
	})
	if slack == 0 {
		t.Error("no slack line ever: the draw does not test what it should")
	}
}

// A point on two equal spans without other load (AISC-type beam diagram): the middle line carries most with the
// point over it, the far one is pushed most with a at L/√3 of the near span, by PL³·2/(3√3)/4L³. Lines
// that pull go slack there, so only what the others then carry is asked of Rove: with
// its far line slack the point is on a simple span, PL/4 in its middle.
func TestRoveOnTwoSpans(t *testing.T) {
	w := NewLayout(Beam{Lines: spans(3, 3)}).Work()
	w.Load(nil)
	var got Roving
	if !w.Rove(8, 0, 3, 1e-9, true, &got) {
		t.Fatal("not held")
	}
	near(t, "middle, most", got.Pulls[1].Most.Value, 8, 1e-12)
	near(t, "its place", got.Pulls[1].Most.At, 3, 1e-12)
	near(t, "first, most", got.Pulls[0].Most.Value, 8, 1e-12)
	near(t, "last, most", got.Pulls[2].Most.Value, 0, 1e-12)
	near(t, "sagging", got.Sag.Value, 8*3./4, 1e-12)
	near(t, "its place", got.Sag.At, 1.5, 1e-6)
}

// The slope of a quartic from five of its values.
func TestSlopeOfQuartic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var c [5]float64
		for i := range c {
			c[i] = rapid.Float64Range(-10, 10).Draw(t, "coefficient")
		}
		at := func(u float64) float64 { return c[0] + u*(c[1]+u*(c[2]+u*(c[3]+u*c[4]))) }
		got := slopeOfQuartic([5]float64{at(0), at(0.25), at(0.5), at(0.75), at(1)})
		for i, want := range []float64{c[1], 2 * c[2], 3 * c[3], 4 * c[4]} {
			if math.Abs(got[i]-want) > 1e-11 {
				t.Fatalf("%v of %v", got, c)
			}
		}
	})
}

// A cubic through four values, its stationary places, and where about the middle it is no less than zero.
func TestCubic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coefficient := rapid.Float64Range(-10, 10)
		want := cubic{coefficient.Draw(t, "c0"), coefficient.Draw(t, "c1"), coefficient.Draw(t, "c2"), coefficient.Draw(t, "c3")}
		c := cubicOf(want.at(0), want.at(1./3), want.at(2./3), want.at(1))
		for i := range c {
			if math.Abs(c[i]-want[i]) > 1e-12 {
				if math.Abs(c[i]-want[i]) > 1e-11 {
					t.Fatalf("coefficients %v, want %v", c, want)
				}
			}
		}
		at, n := c.stationary()
		most, least := max(c.at(0), c.at(1)), min(c.at(0), c.at(1))
		for _, u := range at[:n] {
			most, least = max(most, c.at(u)), min(least, c.at(u))
		}
		lo, hi := c.positive(0)
		for k := range 1001 {
			u := float64(k) / 1000
			if v := c.at(u); v > most+1e-9 || v < least-1e-9 {
				t.Fatalf("%v at %v is not within %v to %v", v, u, least, most)
			}
			if v := c.at(u); u > lo && u < hi && v < -1e-9 {
				t.Fatalf("%v at %v, within %v to %v", v, u, lo, hi)
			}
		}
		for _, end := range []float64{lo, hi} {
			if end != 0 && end != 1 && end != 0.5 && math.Abs(c.at(end)) > 1e-9 {
				t.Fatalf("ends at %v with %v", end, c.at(end))
			}
		}
	})
}

// The cubic of a moment over a line holds only as long as the same lines are tight: here one has its turning point beyond that. So a place
// is named at which the moment comes about, and there is none where it is greater.
func TestRoveHogsAsItComesAbout(t *testing.T) {
	for _, p := range []problem{
		{lines: []float64{0, 2, 4, 7}, loads: []Stretch{{5, 5}}, weights: []float64{13}, length: 8},
		{lines: []float64{0, 2, 3, 5, 8}, loads: []Stretch{{6, 6}}, weights: []float64{15}, length: 9},
		{lines: []float64{0, 1, 4, 5, 8}, loads: []Stretch{{3, 3}}, weights: []float64{13}, length: 9},
	} {
		w := p.work()
		var got Roving
		last := p.lines[len(p.lines)-1]
		if !w.Rove(5, 0, last, 1e-9, false, &got) {
			t.Fatalf("not held: %+v", p)
		}
		hog := func(at float64) float64 {
			w.LoadWeights()
			w.AddPoint(5, at)
			w.Hang(1e-9)
			_, hog, _ := w.Extremes()
			return hog.Value
		}
		near(t, "hogging where it is greatest", hog(got.Hog.At), got.Hog.Value, 1e-9)
		for k := range 701 {
			if at := last * float64(k) / 700; hog(at) < got.Hog.Value-1e-9 {
				t.Errorf("%v with the point at %v, and no more than %v was found", hog(at), at, got.Hog)
				break
			}
		}
	}
}
