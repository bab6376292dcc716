package beam

import (
	"fmt"
	"math"
	"testing"
)

// strung hangs the beam; lines give and are long as told.
func strung(t *testing.T, b Beam, weights ...float64) *Work {
	t.Helper()
	w := NewLayout(b).Work()
	w.Load(weights)
	if !w.Hang(1e-9) {
		t.Fatalf("not held: %+v under %v", b, weights)
	}
	return w
}

// Two equal spans under an even load w, lines that give g each at the ends and m in the middle.
// Without the middle line the beam sinks there by 5wL⁴/24, with a unit of pull it rises by L³/6; the ends
// stretch by g·(2wL−R)/2. So the middle takes
//
//	R = (5wL⁴/24 + g·wL)/(L³/6 + m + g/2)
func TestSpringInTheMiddle(t *testing.T) {
	const l, load = 3.0, 2.0
	l3 := l * l * l
	for _, c := range []struct{ ends, middle float64 }{
		{0, 0}, {0, 0.5}, {0, 100}, {0, 1e6}, {1e-12, 0}, {0.5, 0}, {100, 0}, {3, 3}, {1e-3, 40}, {40, 1e-3}, {1e6, 1e6},
	} {
		w := strung(t, Beam{Lines: spans(l, l), Give: []float64{c.ends, c.middle, c.ends}, Loads: []Stretch{{0, 2 * l}}}, 2*load*l)
		r := (5*load*l3*l/24 + c.ends*load*l) / (l3/6 + c.middle + c.ends/2)
		if r > 2*load*l {
			continue // the ends would push
		}
		name := fmt.Sprintf("giving %v and %v: pull", c.ends, c.middle)
		nearAll(t, name, w.Reaction, []float64{load*l - r/2, r, load*l - r/2}, 1e-11)
	}
}

// Three lines of which one is long by e times EI, two equal spans under an even load w, W = 2wL. Long in
// the middle it takes e/(L³/6) less, until at 5wL⁴/24 it is slack and its gap is what it is longer. Long at an end, half
// of e is felt in the middle; at wL⁴/4 the middle has all of it and the beam tips no further than it balances.
func TestLongLine(t *testing.T) {
	const l, load = 3.0, 2.0
	l3, total := l*l*l, 2*load*l
	alone := 5 * load * l3 * l / 24
	for _, share := range []float64{-0.5, -0.1, 0.01, 0.3, 0.99, 1.01, 2, 100} {
		e := share * alone
		w := strung(t, Beam{Lines: spans(l, l), Low: []float64{0, e, 0}, Loads: []Stretch{{0, 2 * l}}}, total)
		r := max(0, (alone-e)/(l3/6))
		nearAll(t, fmt.Sprintf("middle long by %v: pull", share), w.Reaction, []float64{(total - r) / 2, r, (total - r) / 2}, 1e-12)
		near(t, "its gap", 0-w.Deflection[1], max(0, e-alone), 1e-12*max(1, share)*alone)
	}
	for _, share := range []float64{-0.8, 0.01, 0.5, 0.99} {
		e := share * load * l3 * l / 4
		for end := range 2 {
			low := make([]float64, 3)
			low[2*end] = e
			w := strung(t, Beam{Lines: spans(l, l), Low: low, Loads: []Stretch{{0, 2 * l}}}, total)
			r := (alone + e/2) / (l3 / 6)
			nearAll(t, fmt.Sprintf("an end long by %v: pull", share), w.Reaction, []float64{(total - r) / 2, r, (total - r) / 2}, 1e-12)
		}
	}
	// A middle so short that it carries all: the beam balances on it.
	w := strung(t, Beam{Lines: spans(l, l), Low: []float64{0, -load * l3 * l, 0}, Loads: []Stretch{{0, 2 * l}}}, total)
	nearAll(t, "middle short: pull", w.Reaction, []float64{0, total, 0}, 1e-12)
}

// The end line long and the load off centre: the end goes slack, the beam hangs on two lines as a
// lever, and beyond the nearer it points straight: the gap by hand. Lines at 0, 2, 6, a
// point P at 3: pulls 3/4 and 1/4 of it; over the span of 4 m the slope at its left end is Pb(16−b²)/24 with b = 3,
// downwards to the right, so the end at 0 stands 2 slopes higher.
func TestLongEndGoesSlack(t *testing.T) {
	const p = 8.0
	slope := p * 3 * (16 - 9) / 24.
	for _, long := range []float64{0, 10, 1e3} {
		w := strung(t, Beam{Lines: []float64{0, 2, 6}, Low: []float64{long, 0, 0}, Loads: []Stretch{{3, 3}}}, p)
		nearAll(t, "pull", w.Reaction, []float64{0, p * 3 / 4, p / 4}, 1e-12)
		nearAll(t, "drop", w.Deflection, []float64{-2*slope - long, 0, 0}, 1e-11)
	}
	// With springs the slope is turned by the stretches: (6·P/4 − 5·3P/4)/4 more.
	w := strung(t, Beam{Lines: []float64{0, 2, 6}, Give: []float64{7, 5, 6}, Low: []float64{30, 0, 0}, Loads: []Stretch{{3, 3}}}, p)
	one, two := 5*p*3/4, 6*p/4
	nearAll(t, "drop with springs", w.Deflection, []float64{one - 2*(slope+(two-one)/4) - 30, 0, 0}, 1e-11)
}

// Any number of lines that all give alike and so much that the beam does not bend by comparison: a
// rigid bar on springs. Their pulls are W/n and, about their middle, in proportion to the moment.
func TestRigidBarOnSprings(t *testing.T) {
	for n := 2; n <= 12; n++ {
		b := Beam{Loads: []Stretch{{0, 3 * float64(n)}, {1.7 * float64(n), 1.7 * float64(n)}}}
		weights := []float64{100, 80}
		var middle, square float64
		for i := range n {
			x := 0.5 + 2.7*float64(i) + 0.1*float64(i%3)
			b.Lines, b.Give = append(b.Lines, x), append(b.Give, 1e10)
			middle += x / float64(n)
		}
		for _, x := range b.Lines {
			square += (x - middle) * (x - middle)
		}
		moment := 100*(1.5*float64(n)-middle) + 80*(1.7*float64(n)-middle)
		var want []float64
		for _, x := range b.Lines {
			want = append(want, 180/float64(n)+moment*(x-middle)/square)
		}
		w := NewLayout(b).Work()
		w.Load(weights)
		w.Hold(All(n))
		// What the beam bends, some 180·30³/100 at most, beside the stretch.
		nearAll(t, fmt.Sprintf("%d lines: pull", n), w.Reaction, want, 1e-4)
	}
}

// One line that hardly holds among rigid ones: as good as let go, and its end far below.
func TestHardlyHolds(t *testing.T) {
	for i := range 4 {
		b := Beam{Lines: []float64{0, 2, 4, 6}, Loads: []Stretch{{0, 6}, {2.5, 2.5}}, Give: make([]float64, 4)}
		without := NewLayout(b).Work()
		without.Load([]float64{60, 40})
		without.Hold(All(4) &^ (1 << i))
		without.Deflect()
		b.Give[i] = 1e12
		w := NewLayout(b).Work()
		w.Load([]float64{60, 40})
		w.Hold(All(4))
		nearAll(t, fmt.Sprintf("line %d: pull", i), w.Reaction, without.Reaction, 1e-8)
		// What it does hold is how far the beam stands below its end without it, over its give.
		if got, want := w.Reaction[i]*1e12, without.Deflection[i]; math.Abs(got-want) > 1e-3*math.Abs(want) {
			t.Errorf("line %d: stretched by %v, want %v", i, got, want)
		}
	}
}

// An outermost line that hardly holds stands where the beam would without it, and so a slack line
// beyond it or beside it is stood above or below by what it would be then.
func TestSlackBesideOneThatHardlyHolds(t *testing.T) {
	lines := []float64{0, 1, 3, 4, 6, 8, 9, 10}
	weights := []float64{100, 40}
	for _, soft := range []uint64{1 << 1, 1 << 6, 1<<1 | 1<<6} {
		for _, give := range []float64{1e6, 1e9, 1e12, 1e15} {
			b := Beam{Lines: lines, Loads: []Stretch{{0, 10}, {5, 5}}, Low: []float64{3, 0, 2, 0, 1, 0, 0, 5}, Give: make([]float64, 8)}
			b.Give[3] = 0.1
			set := uint64(0b01101010) // 1, 3, 5 and 6 are tight
			without := NewLayout(b).Work()
			without.Load(weights)
			without.Hold(set &^ soft)
			without.Deflect()
			for i := range b.Give {
				if soft&(1<<i) != 0 {
					b.Give[i] = give
				}
			}
			w := NewLayout(b).Work()
			w.Load(weights)
			w.Hold(set)
			w.Deflect()
			for i, d := range w.Deflection {
				if set&(1<<i) != 0 {
					continue
				}
				want := without.Deflection[i]
				near(t, fmt.Sprintf("lines %b giving %v: drop of %d", soft, give, i), d, want, 1e3/give*math.Abs(want)+1e-10*(1+math.Abs(want)))
			}
		}
	}
}
