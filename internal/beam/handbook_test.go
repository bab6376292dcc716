package beam

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/internal/verification"
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

// rows checks a list of figures, each as a row of a family; what is zero, such as the moment over an end, is compared and is no row.
func rows(t *testing.T, r verification.Row, what, unit string, got, want []float64, tol float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
	for i := range want {
		if name := fmt.Sprint(what, " ", i+1); want[i] == 0 {
			near(t, name, got[i], 0, tol)
		} else {
			r.Of(name, unit, want[i], tol).Check(t, got[i])
		}
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
func TestVerifyEqualSpans(t *testing.T) {
	for _, c := range []struct {
		pulls, moments []float64 // from the left to the middle; the rest by symmetry
		source, place  string
	}{
		{over(2, 1), over(1, 0), "Civil Engineering Formulas", "Table 2.1, p. 50"},
		{over(8, 3, 10), over(8, 0, 1), "Civil Engineering Formulas", "Table 2.1, p. 50"},
		{over(10, 4, 11), over(10, 0, 1), "Civil Engineering Formulas", "Table 2.1, p. 50"},
		{over(28, 11, 32, 26), over(28, 0, 3, 2), "Civil Engineering Formulas", "Table 2.1, p. 50"},
		{over(38, 15, 43, 37), over(38, 0, 4, 3), "Civil Engineering Formulas", "Table 2.1, p. 50"},
		{over(104, 41, 118, 100, 106), over(104, 0, 11, 8, 9), "Civil Engineering Formulas", "Table 2.1, p. 50"},
		{over(142, 56, 161, 137, 143), over(142, 0, 15, 11, 12), "Civil Engineering Formulas", "Table 2.1, p. 50"},
		{over(388, 153, 440, 374, 392, 386), over(388, 0, 41, 30, 33, 32), "beam theory", "eight spans, beyond the table"},
	} {
		n := 2*len(c.pulls) - 1
		if c.pulls[0] == 0.5 || c.pulls[0] == over(10, 4)[0] || c.pulls[0] == over(38, 15)[0] || c.pulls[0] == over(142, 56)[0] {
			n++ // an even number of supports
		}
		t.Run(fmt.Sprintf("%d supports", n), func(t *testing.T) {
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
			name := fmt.Sprintf("equal spans, %d supports", n)
			row := verification.Row{Key: "beam/" + name, Source: c.source, Place: c.place, What: name + ", uniform load", Why: "exact fractions, but for rounding"}
			half := len(c.pulls)
			rows(t, row, "pull", "wL", w.Reaction[:half], c.pulls, 1e-12)
			rows(t, row, "moment over line", "wL²", w.moment[:half], m[:half], 1e-12)
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
func TestVerifyEqualSpansCrests(t *testing.T) {
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
			m, at := w.crestFrom(j)
			row := verification.Row{
				Key: fmt.Sprintf("beam/equal spans, %d supports/span %d", n+1, j+1), Source: "Civil Engineering Formulas", Place: "Table 2.1, p. 50",
				What: fmt.Sprintf("span %d of %d, uniform load", j+1, n), Why: "half the last digit, and one unit more where the table truncates",
			}
			row.Of("largest moment", "wL²", want.Value, 1e-4).Check(t, m)
			if n == 6 && j == 1 {
				row = row.Because("its own shears and moment give 0.529, where it prints 0.533").From("beam theory", "shear 55/104 beside the support, by Table 2.1")
			}
			row.Of("its place", "L", want.At, 1e-3).Check(t, at-float64(j))
		}
		sag, _, _ := w.Extremes()
		near(t, fmt.Sprintf("%d spans: largest sagging", n), sag.Value, crests[0].Value, 1e-4)
	}
}

// book is a source of the register, and a place in it. Figures that it does not print are worked out: of those a case says why,
// and where pulls, moments over lines or what is in the spans are such, which.
type book struct {
	source, place, why string
	workedOut          string // "pulls", "moments", "crests"
}

// of gives the row of a beam and one kind of its figures.
func (b book) of(beam, kind string) verification.Row {
	r := verification.Row{Key: "beam/" + beam, Source: b.source, Place: b.place, What: beam, Why: b.why}
	if strings.Contains(b.workedOut, kind) {
		r = r.From("beam theory", "worked out beside "+b.source)
	}
	return r
}

// Cases with the places, figures and roundings of their sources. A case in which a support
// pushes is one for Hold alone.
func TestVerifyPublishedBeams(t *testing.T) {
	const l = 1.0 // spans where the source has L
	for _, c := range []struct {
		name       string
		from       book
		lines      []float64
		loads      []Stretch
		weights    []float64
		pulls      []float64
		tol        float64
		moments    []float64 // over the lines; none to compare where nil
		tolM       float64
		crests     map[int]Peak // in the span of that index; place from its left end
		tolC, tolX float64
	}{
		{
			name: "unequal spans with loads of both kinds", from: book{"Handbook of Civil Engineering Calculations", "p. 1.63, Fig. 43; kip and ft", "two decimals, worked from a moment rounded to 80.2", ""},
			lines: spans(10, 15), loads: []Stretch{{0, 10}, {5, 5}, {10, 25}, {19, 19}}, weights: []float64{20, 6, 45, 10},
			pulls: []float64{4.98, 52.87, 23.15}, tol: 0.006, // two decimals, worked from a moment rounded to 80.2
			moments: []float64{0, -80.2, 0}, tolM: 0.05,
		},
		{
			name: "fixed end and overhang", from: book{"Structural Analysis", "Appendix D, Example D.3; kip and ft", "a clamp is a support with a neighbour so near that it errs by that share of a span, 1e-8, and their pulls cancel to some 1e-7", ""},
			lines: append([]float64{-20e-8}, spans(20, 30)...), loads: []Stretch{{10, 10}, {20, 60}}, weights: []float64{45, 72},
			moments: []float64{0, -97.5, -142.5, -90}, tolM: 1e-4,
		},
		{
			name: "couple on the first of three spans", from: book{"strength of materials problems", "problem 826: 16·M2 + 4·M3 = −40, 4·M2 + 14·M3 = −52; kN and m; printed −1692.3 and −3230.7 N·m, the second cut short", "a couple of 8 kN·m, clockwise as its term +8 says, is two points 1/512 m apart and errs by that squared", ""},
			lines: spans(4, 4, 3), loads: []Stretch{{2 - 1./1024, 2 - 1./1024}, {2 + 1./1024, 2 + 1./1024}, {4, 8}, {9, 9}}, weights: []float64{-8 * 512, 8 * 512, 8, 6},
			moments: []float64{0, -352. / 208, -672. / 208, 0}, tolM: 1e-6,
		},
		{
			name: "three spans of 10 ft", from: book{"strength of materials problems", "problem 823, three-moment equation; lb and ft", "exact, but for rounding", "pulls"},
			lines: spans(10, 10, 10), loads: []Stretch{{5, 5}, {10, 20}, {25, 25}}, weights: []float64{400, 800, 640},
			pulls: []float64{136, 634, 844, 226}, tol: 1e-9, // computed with an independent solver
			moments: []float64{0, -640, -940, 0}, tolM: 1e-9,
		},
		{
			name: "equal pulls with two overhangs", from: book{"strength of materials problems", "300 N/m on three supports 3 m apart, overhangs of 1.319 m", "the overhang is rounded to 1 mm", ""},
			lines: []float64{1.319, 4.319, 7.319}, loads: []Stretch{{0, 8.638}}, weights: []float64{300 * 8.638},
			pulls: []float64{863.8, 863.8, 863.8}, tol: 0.3,
			moments: []float64{-300 * 1.319 * 1.319 / 2, -207, -300 * 1.319 * 1.319 / 2}, tolM: 0.5,
		},
		{
			name: "two spans of 3 m", from: book{"NPTEL", "Example 5.22; kN and m", "exact, but for rounding", ""},
			lines: spans(3, 3), loads: []Stretch{{1.5, 1.5}, {3, 6}}, weights: []float64{120, 120},
			pulls: []float64{41.25, 157.5, 41.25}, tol: 1e-10,
			moments: []float64{0, -56.25, 0}, tolM: 1e-10,
		},
		{
			name: "middle span loaded, spans 2L, L, 3L", from: book{"strength of materials problems", "problem 822: M2 = −(wL²/4)(1+2β)/[4(1+α)(1+β)−1], M3 with α and β swapped above", "exact, but for rounding", ""},
			lines: spans(2, 1, 3), loads: []Stretch{{2, 3}}, weights: []float64{1},
			moments: []float64{0, -0.25 * 7 / 47, -0.25 * 5 / 47, 0}, tolM: 1e-13,
		},
		{
			name: "point in the middle of both of two spans", from: book{"beam diagrams", "three copies", "exact, but for rounding", ""},
			lines: spans(l, l), loads: []Stretch{{0.5, 0.5}, {1.5, 1.5}}, weights: []float64{1, 1},
			pulls: over(16, 5, 22, 5), tol: 1e-13,
			moments: []float64{0, -3. / 16, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {5. / 32, 0.5}, 1: {5. / 32, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "point in the middle of one of two spans", from: book{"beam diagrams", "which print the last pull without its minus", "exact, but for rounding", ""},
			lines: spans(l, l), loads: []Stretch{{0.5, 0.5}}, weights: []float64{1},
			pulls: over(32, 13, 22, -3), tol: 1e-13,
			moments: []float64{0, -3. / 32, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {13. / 64, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "point in the middle of each of three spans", from: book{"beam formulas from memory", "", "exact, but for rounding", ""},
			lines: spans(l, l, l), loads: []Stretch{{0.5, 0.5}, {1.5, 1.5}, {2.5, 2.5}}, weights: []float64{1, 1, 1},
			pulls: []float64{0.35, 1.15, 1.15, 0.35}, tol: 1e-13,
			moments: []float64{0, -0.15, -0.15, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {0.175, 0.5}, 1: {0.1, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "spans 1 and 2 of three loaded", from: book{"beam diagrams", "which cut 0.0534 short and transpose its place to 0.538: the shears 1.200 − 0.617 give 0.583; the moment over line 2 is worked out", "three and four decimals", ""},
			lines: spans(l, l, l), loads: []Stretch{{0, 2}}, weights: []float64{2},
			pulls: []float64{0.383, 1.2, 0.45, -0.033}, tol: 5e-4,
			moments: []float64{0, -0.1167, -0.0333, 0}, tolM: 5e-5,
			crests: map[int]Peak{0: {0.0735, 0.383}, 1: {0.0534, 0.583}}, tolC: 1e-4, tolX: 5.1e-4,
		},
		{
			name: "spans 1 and 3 of three loaded", from: book{"beam diagrams", "", "exact pulls, but for rounding; three and four decimals in the spans", ""},
			lines: spans(l, l, l), loads: []Stretch{{0, 1}, {2, 3}}, weights: []float64{1, 1},
			pulls: []float64{0.45, 0.55, 0.55, 0.45}, tol: 1e-13,
			moments: []float64{0, -0.05, -0.05, 0}, tolM: 1e-13,
			crests: map[int]Peak{0: {0.1013, 0.45}, 2: {0.1013, 0.55}}, tolC: 5.1e-5, tolX: 5e-4,
		},
		{
			name: "span 2 of three loaded", from: book{"beam diagrams", "", "exact, but for rounding", "pulls and crests"},
			lines: spans(l, l, l), loads: []Stretch{{1, 2}}, weights: []float64{1},
			pulls: []float64{-0.05, 0.55, 0.55, -0.05}, tol: 1e-13,
			moments: []float64{0, -0.05, -0.05, 0}, tolM: 1e-13,
			crests: map[int]Peak{1: {0.075, 0.5}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "spans 1 and 3 of four loaded", from: book{"beam diagrams", "which print 0.805 for 0.0805; 0.518 runs from the right end of span 3", "pulls are sums of two rounded shears, and one figure is cut short", ""},
			lines: spans(l, l, l, l), loads: []Stretch{{0, 1}, {2, 3}}, weights: []float64{1, 1},
			pulls: []float64{0.446, 0.572, 0.464, 0.572, -0.054}, tol: 1e-3,
			moments: []float64{0, -0.0536, -0.0357, -0.0536, 0}, tolM: 5e-5,
			crests: map[int]Peak{0: {0.0996, 0.446}, 2: {0.0805, 1 - 0.518}}, tolC: 1e-4, tolX: 5e-4,
		},
		{
			name: "overhang with a point at its tip", from: book{"beam diagrams", "three copies: −Pa/L and P(L+a)/L, moment −Pa", "exact, but for rounding", ""},
			lines: []float64{0, 4}, loads: []Stretch{{5, 5}}, weights: []float64{8},
			pulls: []float64{-2, 10}, tol: 1e-13, moments: []float64{0, -8}, tolM: 1e-13,
		},
		{
			name: "overhang, uniform load on all", from: book{"beam formulas from memory", "w(L²−a²)/2L and w(L+a)²/2L, moment −wa²/2, in the span w(L+a)²(L−a)²/8L² at (L/2)(1−a²/L²)", "exact, but for rounding", ""},
			lines: []float64{0, 4}, loads: []Stretch{{0, 5}}, weights: []float64{5},
			pulls: []float64{15. / 8, 25. / 8}, tol: 1e-13, moments: []float64{0, -0.5}, tolM: 1e-13,
			crests: map[int]Peak{0: {25. * 9 / 128, 2 * (1 - 1./16)}}, tolC: 1e-13, tolX: 1e-13,
		},
		{
			name: "overhang, uniform load on it alone", from: book{"beam formulas from memory", "−wa²/2L and wa(2L+a)/2L, moment −wa²/2", "exact, but for rounding", ""},
			lines: []float64{0, 4}, loads: []Stretch{{4, 6}}, weights: []float64{2},
			pulls: []float64{-0.5, 2.5}, tol: 1e-13, moments: []float64{0, -2}, tolM: 1e-13,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := held(c.lines, c.loads, c.weights...)
			if c.pulls != nil {
				rows(t, c.from.of(c.name, "pulls"), "pull", "", w.Reaction, c.pulls, c.tol)
			}
			rows(t, c.from.of(c.name, "moments"), "moment over line", "", w.moment, c.moments, c.tolM)
			for j, want := range c.crests {
				m, at := w.crestFrom(j)
				row := c.from.of(c.name, "crests")
				row.Of(fmt.Sprint("moment in span ", j+1), "", want.Value, c.tolC).Check(t, m)
				row.Of(fmt.Sprint("its place in span ", j+1), "", want.At, c.tolX).Check(t, at-c.lines[j])
			}
		})
	}
}

// The shears on the two sides of the middle support in the first of the cases above, as printed:
// 21.02 and 31.85 kip, from a moment rounded to 80.2. And the pull at the clamp and of the others
// in the second, computed: 20.25, 53.5, 43.25 kip.
func TestVerifyPublishedShears(t *testing.T) {
	w := held(spans(10, 15), []Stretch{{0, 10}, {5, 5}, {10, 25}, {19, 19}}, 20, 6, 45, 10)
	row := verification.Row{
		Key: "beam/unequal spans with loads of both kinds", Source: "Handbook of Civil Engineering Calculations", Place: "p. 1.63, Fig. 43; kip and ft",
		What: "unequal spans with loads of both kinds", Why: "two decimals, worked from a moment rounded to 80.2",
	}
	rows(t, row, "shear beside the middle", "kip", []float64{w.held[0].right, w.held[1].left}, []float64{21.02, 31.85}, 0.0055)
	w = held(append([]float64{-20e-8}, spans(20, 30)...), []Stretch{{10, 10}, {20, 60}}, 45, 72)
	row = verification.Row{Key: "beam/fixed end and overhang", Source: "beam theory", Place: "worked out beside Structural Analysis, Example D.3", What: "fixed end and overhang", Why: "the pulls of a clamp cancel to some 1e-7"}
	rows(t, row, "pull with a clamp", "kip", []float64{w.Reaction[0] + w.Reaction[1], w.Reaction[2], w.Reaction[3]}, []float64{20.25, 53.5, 43.25}, 1e-5)
}

// Where the moment is zero in spans under a uniform load, from each span's left support: the table
// of equal spans in Civil Engineering Formulas, 2nd ed., Table 2.1, p. 50. Three decimals, the last one
// out by one in 0.806 and 0.194: its own moments and shears give 0.8054 there.
func TestVerifyInflections(t *testing.T) {
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
			row := verification.Row{
				Key: fmt.Sprintf("beam/equal spans, %d supports/span %d", n+1, j+1), Source: "Civil Engineering Formulas", Place: "Table 2.1, p. 50",
				What: fmt.Sprintf("span %d of %d, uniform load", j+1, n), Why: "three decimals, the last of them out by one in places",
			}
			rows(t, row, "where the moment is zero", "L", got, want[j], 1e-3)
		}
	}
}

// A point load P at a from the left end of two equal spans, b = L − a: AISC-type beam
// diagram. R1 = Pb[4L²−a(L+a)]/4L³, R2 = Pa[2L²+b(L+a)]/2L³,
// R3 = −Pab(L+a)/4L³, over the middle −Pab(L+a)/4L².
func TestVerifyPointAnywhereOnTwoSpans(t *testing.T) {
	const l, p = 3.0, 7.0
	for _, a := range []float64{0, 1e-6, 0.1, 1, 1.5, 2.9, 3} {
		b := l - a
		w := held(spans(l, l), []Stretch{{a, a}}, p)
		row := verification.Row{
			Key: fmt.Sprint("beam/point anywhere on two spans/a = ", a), Source: "beam diagrams", Place: "two equal spans, concentrated load at any point",
			What: fmt.Sprint("7 at ", a, " of the first of two spans of 3"), Why: "a formula, but for rounding",
		}
		rows(t, row, "pull", "", w.Reaction, []float64{
			p * b * (4*l*l - a*(l+a)) / (4 * l * l * l),
			p * a * (2*l*l + b*(l+a)) / (2 * l * l * l),
			-p * a * b * (l + a) / (4 * l * l * l),
		}, 1e-13*p)
		if want := -p * a * b * (l + a) / (4 * l * l); want != 0 {
			row.Of("moment over the middle", "", want, 1e-13*p*l).Check(t, w.moment[1])
		} else {
			near(t, "moment over the middle", w.moment[1], 0, 1e-13*p*l)
		}
	}
}
