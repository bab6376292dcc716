package beam

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %v, want %v ± %v", what, got, want, tol)
	}
}

func nearAll(t *testing.T, what string, got, want []float64, tol float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
	for i := range want {
		near(t, fmt.Sprint(what, " ", i+1), got[i], want[i], tol)
	}
}

// held solves the textbook's beam, whose supports push and pull.
func held(lines []float64, loads []Stretch, weights ...float64) *Work {
	w := NewLayout(Beam{Lines: lines, Loads: loads}).Work()
	w.Load(weights)
	w.Hold(All(len(lines)))
	return w
}

// spans gives the supports of spans of the given lengths.
func spans(lengths ...float64) []float64 {
	x := []float64{0}
	for _, l := range lengths {
		x = append(x, x[len(x)-1]+l)
	}
	return x
}

func over(d float64, xs ...float64) []float64 {
	for i := range xs {
		xs[i] /= d
	}
	return xs
}

func symmetric(n int, half []float64) []float64 {
	full := make([]float64, n)
	for i := range full {
		full[i] = half[min(i, n-1-i)]
	}
	return full
}

// Equal spans under a uniform load on all of them, simple end supports: Civil
// Engineering Formulas, 2nd ed., Table 2.1, p. 50 (two to eight supports). The
// fractions are exact, so only rounding separates. Pulls in wL, moments in wL².
func TestEqualSpans(t *testing.T) {
	for _, c := range []struct {
		pulls, moments []float64 // from the left to the middle; the rest by symmetry
		why            string
	}{
		{over(2, 1), over(1, 0), "Table 2.1"},
		{over(8, 3, 10), over(8, 0, 1), "Table 2.1"},
		{over(10, 4, 11), over(10, 0, 1), "Table 2.1"},
		{over(28, 11, 32, 26), over(28, 0, 3, 2), "Table 2.1"},
		{over(38, 15, 43, 37), over(38, 0, 4, 3), "Table 2.1"},
		{over(104, 41, 118, 100, 106), over(104, 0, 11, 8, 9), "Table 2.1"},
		{over(142, 56, 161, 137, 143), over(142, 0, 15, 11, 12), "Table 2.1"},
		{over(388, 153, 440, 374, 392, 386), over(388, 0, 41, 30, 33, 32), "beyond the table: computed with an independent stiffness solution"},
	} {
		n := 2*len(c.pulls) - 1
		if c.pulls[0] == 0.5 || c.pulls[0] == over(10, 4)[0] || c.pulls[0] == over(38, 15)[0] || c.pulls[0] == over(142, 56)[0] {
			n++ // an even number of supports
		}
		t.Run(fmt.Sprintf("%d supports, %s", n, c.why), func(t *testing.T) {
			lines := make([]float64, n)
			for i := range lines {
				lines[i] = float64(i)
			}
			w := held(lines, []Stretch{{0, float64(n - 1)}}, float64(n-1))
			nearAll(t, "pull", w.Reaction, symmetric(n, c.pulls), 1e-12)
			m := symmetric(n, c.moments)
			for i := range m {
				m[i] = 0 - m[i]
			}
			nearAll(t, "moment over line", w.moment, m, 1e-12)
			w.Hang(0)
			nearAll(t, "pull where lines cannot push", w.Reaction, symmetric(n, c.pulls), 1e-12)
		})
	}
}

// Largest moment in each span, in wL² and x/L from the span's left support: the
// same table, rounded to four places (two figures: 0.080 and 0.025, which are exact) and
// its places to three. Half the last digit, and one more unit for figures
// that the table truncates. For span 2 of six it gives the place as 0.533, at odds with its own
// shear there, 55/104 = 0.529, and with its moment: 0.529 is taken.
func TestEqualSpansCrests(t *testing.T) {
	for n, crests := range map[int][]Peak{
		1: {{0.125, 0.5}},
		2: {{0.0703, 0.375}, {0.0703, 0.625}},
		3: {{0.080, 0.4}, {0.025, 0.5}},
		4: {{0.0772, 0.393}, {0.0364, 0.536}},
		5: {{0.0779, 0.395}, {0.0332, 0.526}, {0.0461, 0.5}},
		6: {{0.0777, 0.394}, {0.0340, 0.529}, {0.0433, 0.490}},
		7: {{0.0778, 0.394}, {0.0338, 0.528}, {0.0440, 0.493}, {0.0405, 0.5}},
	} {
		lines := make([]float64, n+1)
		for i := range lines {
			lines[i] = float64(i)
		}
		w := held(lines, []Stretch{{0, float64(n)}}, float64(n))
		for j, want := range crests {
			m, at := w.crest(j)
			near(t, fmt.Sprintf("%d spans: moment in span %d", n, j+1), m, want.Value, 1e-4)
			near(t, fmt.Sprintf("%d spans: its place in span %d", n, j+1), at-float64(j), want.At, 1e-3)
		}
		sag, _, _ := w.Extremes()
		near(t, fmt.Sprintf("%d spans: largest sagging", n), sag.Value, crests[0].Value, 1e-4)
	}
}

// Cases with the places, figures and roundings of their sources. A case in which a support
// pushes is one for Hold alone.
func TestPublishedBeams(t *testing.T) {
	const l = 1.0 // spans where the source has L
	for _, c := range []struct {
		name, source string
		lines        []float64
		loads        []Stretch
		weights      []float64
		pulls        []float64
		tol          float64
		moments      []float64 // over the lines; none to compare where nil
		tolM         float64
		crests       map[int]Peak // in the span of that index; place from its left end
		tolC, tolX   float64
	}{
		{
			name: "unequal spans with loads of both kinds", source: "Handbook of Civil Engineering Calculations, 2nd ed., p. 1.63, Fig. 43; kip and ft",
			lines: spans(10, 15), loads: []Stretch{{0, 10}, {5, 5}, {10, 25}, {19, 19}}, weights: []float64{20, 6, 45, 10},
			pulls: []float64{4.98, 52.87, 23.15}, tol: 0.006, // two decimals, worked from a moment rounded to 80.2
			moments: []float64{0, -80.2, 0}, tolM: 0.05,
		},
		{
			name: "fixed end and overhang", source: "Structural Analysis (textbook), Appendix D, Example D.3; kip and ft; pulls computed. A clamp is a support with a neighbour so near that it errs by that share of a span, 1e-8; the pulls of the two, a hundred million times the moment, cancel to some 1e-7",
			lines: append([]float64{-20e-8}, spans(20, 30)...), loads: []Stretch{{10, 10}, {20, 60}}, weights: []float64{45, 72},
			moments: []float64{0, -97.5, -142.5, -90}, tolM: 1e-4,
		},
		{
			name: "couple on the first of three spans", source: "textbook problem 826: 16·M2 + 4·M3 = −40, 4·M2 + 14·M3 = −52, printed −1692.3 and −3230.7 N m (cut short from 3230.77). The couple of 8 kN m, clockwise as its term +8 says, is two points 1/512 m apart; it errs by that squared",
			lines: spans(4, 4, 3), loads: []Stretch{{2 - 1./1024, 2 - 1./1024}, {2 + 1./1024, 2 + 1./1024}, {4, 8}, {9, 9}}, weights: []float64{-8 * 512, 8 * 512, 8, 6},
			moments: []float64{0, -352. / 208, -672. / 208, 0}, tolM: 1e-6,
		},
		{
			name: "three spans of 10 ft", source: "textbook problem 823, three-moment equation; lb and ft; exact",
			lines: spans(10, 10, 10), loads: []Stretch{{5, 5}, {10, 20}, {25, 25}}, weights: []float64{400, 800, 640},
			pulls: []float64{136, 634, 844, 226}, tol: 1e-9, // computed with an independent solver
			moments: []float64{0, -640, -940, 0}, tolM: 1e-9,
		},
		{
			name: "equal pulls with two overhangs", source: "textbook problem: 300 N/m on three supports 3 m apart, overhangs of 1.319 m; place rounded to 1 mm",
			lines: []float64{1.319, 4.319, 7.319}, loads: []Stretch{{0, 8.638}}, weights: []float64{300 * 8.638},
			pulls: []float64{863.8, 863.8, 863.8}, tol: 0.3,
			moments: []float64{-300 * 1.319 * 1.319 / 2, -207, -300 * 1.319 * 1.319 / 2}, tolM: 0.5,
		},
		{
			name: "two spans of 3 m", source: "NPTEL course, Example 5.22; kN and m; exact",
			lines: spans(3, 3), loads: []Stretch{{1.5, 1.5}, {3, 6}}, weights: []float64{120, 120},
			pulls: []float64{41.25, 157.5, 41.25}, tol: 1e-10,
			moments: []float64{0, -56.25, 0}, tolM: 1e-10,
		},
		{
			name: "middle span loaded, spans 2L, L, 3L", source: "textbook problem 822: M2 = −(wL²/4)(1+2β)/[4(1+α)(1+β)−1], M3 with α and β swapped above; exact",
			lines: spans(2, 1, 3), loads: []Stretch{{2, 3}}, weights: []float64{1},
			moments: []float64{0, -0.25 * 7 / 47, -0.25 * 5 / 47, 0}, tolM: 1e-13,
		},
		{
			name: "point in the middle of both of two spans", source: "AISC-type beam diagram, three copies; exact",
			lines: spans(l, l), loads: []Stretch{{0.5, 0.5}, {1.5, 1.5}}, weights: []float64{1, 1},
			pulls: over(16, 5, 22, 5), tol: 1e-13,
			moments: []float64{0, -3. / 16, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {5. / 32, 0.5}, 1: {5. / 32, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "point in the middle of one of two spans", source: "AISC-type beam diagram (which prints the last pull without its minus); exact",
			lines: spans(l, l), loads: []Stretch{{0.5, 0.5}}, weights: []float64{1},
			pulls: over(32, 13, 22, -3), tol: 1e-13,
			moments: []float64{0, -3. / 32, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {13. / 64, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "point in the middle of each of three spans", source: "from memory; exact",
			lines: spans(l, l, l), loads: []Stretch{{0.5, 0.5}, {1.5, 1.5}, {2.5, 2.5}}, weights: []float64{1, 1, 1},
			pulls: []float64{0.35, 1.15, 1.15, 0.35}, tol: 1e-13,
			moments: []float64{0, -0.15, -0.15, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {0.175, 0.5}, 1: {0.1, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "spans 1 and 2 of three loaded", source: "AISC-type beam diagram; three and four decimals (0.0534 cut short, its place transposed to 0.538: the shears 1.200 − 0.617 give 0.583); the moment over support 2 computed",
			lines: spans(l, l, l), loads: []Stretch{{0, 2}}, weights: []float64{2},
			pulls: []float64{0.383, 1.2, 0.45, -0.033}, tol: 5e-4,
			moments: []float64{0, -0.1167, -0.0333, 0}, tolM: 5e-5,
			crests: map[int]Peak{0: {0.0735, 0.383}, 1: {0.0534, 0.583}}, tolC: 1e-4, tolX: 5.1e-4,
		},
		{
			name: "spans 1 and 3 of three loaded", source: "AISC-type beam diagram",
			lines: spans(l, l, l), loads: []Stretch{{0, 1}, {2, 3}}, weights: []float64{1, 1},
			pulls: []float64{0.45, 0.55, 0.55, 0.45}, tol: 1e-13,
			moments: []float64{0, -0.05, -0.05, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {0.1013, 0.45}, 2: {0.1013, 0.55}}, tolC: 5.1e-5, tolX: 5e-4,
		},
		{
			name: "span 2 of three loaded", source: "AISC-type beam diagram; pulls and sagging computed",
			lines: spans(l, l, l), loads: []Stretch{{1, 2}}, weights: []float64{1},
			pulls: []float64{-0.05, 0.55, 0.55, -0.05}, tol: 1e-13,
			moments: []float64{0, -0.05, -0.05, 0}, tolM: 1e-13,
			crests: map[int]Peak{1: {0.075, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "spans 1 and 3 of four loaded", source: "AISC-type beam diagram (which prints 0.805 for 0.0805); its pulls are sums of two rounded shears; 0.518 runs from the right end of span 3",
			lines: spans(l, l, l, l), loads: []Stretch{{0, 1}, {2, 3}}, weights: []float64{1, 1},
			pulls: []float64{0.446, 0.572, 0.464, 0.572, -0.054}, tol: 1e-3,
			moments: []float64{0, -0.0536, -0.0357, -0.0536, 0}, tolM: 5e-5,
			crests: map[int]Peak{0: {0.0996, 0.446}, 2: {0.0805, 1 - 0.518}}, tolC: 1e-4, tolX: 5e-4,
		},
		{
			name: "overhang with a point at its tip", source: "beam diagrams, three copies: −Pa/L and P(L+a)/L, moment −Pa",
			lines: []float64{0, 4}, loads: []Stretch{{5, 5}}, weights: []float64{8},
			pulls: []float64{-2, 10}, tol: 1e-13, moments: []float64{0, -8}, tolM: 1e-13,
		},
		{
			name: "overhang, uniform load on all", source: "from memory: w(L²−a²)/2L and w(L+a)²/2L, moment −wa²/2, in the span w(L+a)²(L−a)²/8L² at (L/2)(1−a²/L²)",
			lines: []float64{0, 4}, loads: []Stretch{{0, 5}}, weights: []float64{5},
			pulls: []float64{15. / 8, 25. / 8}, tol: 1e-13, moments: []float64{0, -0.5}, tolM: 1e-13,
			crests: map[int]Peak{0: {25. * 9 / 128, 2 * (1 - 1./16)}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "overhang, uniform load on it alone", source: "from memory: −wa²/2L and wa(2L+a)/2L, moment −wa²/2",
			lines: []float64{0, 4}, loads: []Stretch{{4, 6}}, weights: []float64{2},
			pulls: []float64{-0.5, 2.5}, tol: 1e-13, moments: []float64{0, -2}, tolM: 1e-13,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := held(c.lines, c.loads, c.weights...)
			if c.pulls != nil {
				nearAll(t, "pull", w.Reaction, c.pulls, c.tol)
			}
			nearAll(t, "moment over line", w.moment, c.moments, c.tolM)
			for j, want := range c.crests {
				m, at := w.crest(j)
				near(t, "moment in span", m, want.Value, c.tolC)
				near(t, "its place", at-c.lines[j], want.At, c.tolX)
			}
			if t.Failed() {
				t.Log(c.source)
			}
		})
	}
}

// The shears on the two sides of the middle support in the first of the cases above, as printed:
// 21.02 and 31.85 kip, from a moment rounded to 80.2. And the pull at the clamp and of the others
// in the second, computed: 20.25, 53.5, 43.25 kip.
func TestPublishedShears(t *testing.T) {
	w := held(spans(10, 15), []Stretch{{0, 10}, {5, 5}, {10, 25}, {19, 19}}, 20, 6, 45, 10)
	nearAll(t, "shear beside the middle", []float64{w.held[0].right, w.held[1].left}, []float64{21.02, 31.85}, 0.0055)
	w = held(append([]float64{-20e-8}, spans(20, 30)...), []Stretch{{10, 10}, {20, 60}}, 45, 72)
	nearAll(t, "pull with a clamp", []float64{w.Reaction[0] + w.Reaction[1], w.Reaction[2], w.Reaction[3]}, []float64{20.25, 53.5, 43.25}, 1e-5)
}

// Where the moment is zero in spans under a uniform load, from each span's left support: the table
// of equal spans in Civil Engineering Formulas, 2nd ed., Table 2.1, p. 50. Three decimals, the last one
// out by one in 0.806 and 0.194: its own moments and shears give 0.8054 there.
func TestInflections(t *testing.T) {
	for n, want := range map[int][][]float64{
		2: {{0.75}, {0.25}},
		3: {{0.8}, {0.276, 0.724}, {0.2}},
		4: {{0.786}, {0.266, 0.806}, {0.194, 0.734}, {0.214}},
	} {
		lengths := slices.Repeat([]float64{1}, n)
		w := held(spans(lengths...), []Stretch{{0, float64(n)}}, float64(n))
		for j := range n {
			var got []float64
			m, v := w.moment[j], w.held[j].left // m + v·x − x²/2 = 0
			root := math.Sqrt(v*v + 2*m)
			for _, x := range []float64{v - root, v + root} {
				if x > 1e-9 && x < 1-1e-9 {
					got = append(got, x)
				}
			}
			nearAll(t, fmt.Sprintf("span %d of %d", j+1, n), got, want[j], 1e-3)
		}
	}
}

// A point load P at a from the left end of two equal spans, b = L − a: AISC-type beam
// diagram. R1 = Pb[4L²−a(L+a)]/4L³, R2 = Pa[2L²+b(L+a)]/2L³,
// R3 = −Pab(L+a)/4L³, over the middle −Pab(L+a)/4L².
func TestPointAnywhereOnTwoSpans(t *testing.T) {
	const l, p = 3.0, 7.0
	for _, a := range []float64{0, 1e-6, 0.1, 1, 1.5, 2.9, 3} {
		b := l - a
		w := held(spans(l, l), []Stretch{{a, a}}, p)
		nearAll(t, fmt.Sprint("a = ", a, ": pull"), w.Reaction, []float64{
			p * b * (4*l*l - a*(l+a)) / (4 * l * l * l),
			p * a * (2*l*l + b*(l+a)) / (2 * l * l * l),
			-p * a * b * (l + a) / (4 * l * l * l),
		}, 1e-13*p)
		near(t, "moment over the middle", w.moment[1], -p*a*b*(l+a)/(4*l*l), 1e-13*p*l)
	}
}
