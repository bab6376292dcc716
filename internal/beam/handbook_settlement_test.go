package beam

import (
	"fmt"
	"testing"

	"example.com/steelyard/internal/verification"
)

// sunk solves the textbook's beam with supports that stand lower than level by the given amounts, times EI.
func sunk(lines, low []float64, loads []Stretch, weights ...float64) *Work {
	w := NewLayout(Beam{Lines: lines, Low: low, Loads: loads}).Work()
	w.Load(weights)
	w.Hold(All(len(lines)))
	return w
}

// A clamp is a support with a neighbour next to it; it errs by the share that its span is of the
// next one.
const clamp = 1e-8

// Two equal spans of which the middle support sinks by d: moment over it 3EId/L², pulls 3EId/L³,
// −6EId/L³, 3EId/L³. Derived with the three-moment equation; any text.
func TestVerifyMiddleSupportSinks(t *testing.T) {
	const l, d = 3.5, 0.02
	w := sunk(spans(l, l), []float64{0, d, 0}, nil)
	r := 3 * d / (l * l * l)
	row := verification.Row{Key: "beam/middle support sinks", Source: "beam theory", Place: "3EId/L² and 3EId/L³, −6EId/L³, by the three-moment equation", What: "middle support of two spans sinks", Why: "a formula, but for rounding"}
	rows(t, row, "pull", "", w.Reaction, []float64{r, -2 * r, r}, 1e-15)
	row.Of("moment", "", 3*d/(l*l), 1e-15).Check(t, w.moment[1])
	sag, hog, shear := w.Extremes() // over a support that pushes the beam sags most
	near(t, "sagging", sag.Value, 3*d/(l*l), 1e-15)
	near(t, "its place", sag.At, l, 1e-15)
	near(t, "hogging", hog.Value, 0, 0)
	near(t, "shear", shear.Value, r, 1e-15)
}

// The whole beam lower, or along a slope, is bent by nothing.
func TestStraightLowBendsNothing(t *testing.T) {
	for name, low := range map[string][]float64{"level": {5, 5, 5, 5}, "slope": {1, 3, 4, 8}, "the other slope": {8, 6, 5, 1}} {
		for _, give := range [][]float64{nil, {0, 0, 1e-9, 0}} {
			w := NewLayout(Beam{Lines: []float64{0, 2, 3, 7}, Low: low, Give: give}).Work()
			w.Load(nil)
			w.Hold(15)
			nearAll(t, name+": pull", w.Reaction, []float64{0, 0, 0, 0}, 1e-14)
		}
	}
}

// Advanced structural analysis text, Example 11.4, pp. 396–397: spans of 6, 4 and 4 m with EI of 1, 2 and
// 2 times EI0, the left end clamped and turned by 0.01, the support between spans 2 and 3 displaced by
// 0.04 m. Printed 98, 96 and 174 × 1e-4·EI0, whole numbers; the joint equations give them exactly.
// No load lies on the spans, so what counts of each is its length over its EI and the angle of its chord:
// with EI0 all along, spans of 6, 2 and 2 m and the same angles are the same beam.
func TestVerifyClampTurnsAndSupportSinks(t *testing.T) {
	const turn, gap = 0.01, 6 * clamp
	lines := append([]float64{-gap}, spans(6, 2, 2)...)
	w := sunk(lines, []float64{-turn * gap, 0, 0, 2 * 0.01, 0}, nil)
	for i, want := range []float64{0, 98, -96, 174, 0} {
		if want == 0 {
			near(t, "end moment", w.moment[i]*1e4, 0, 1e-4)
			continue
		}
		row := verification.Row{Key: "beam/clamp turns and support sinks", Source: "Advanced Structural Analysis", Place: "Example 11.4, pp. 396–397", What: "moment over line", Why: "printed in whole numbers"}
		row.Of(fmt.Sprint("moment ", i), "1e-4 EI0", want, 0.5).Check(t, w.moment[i]*1e4)
		row.From("beam theory", "joint equations of the example").Because("exact, but for the clamp's 1e-8 of a span").
			Of(fmt.Sprint("moment ", i, " by joint equations"), "1e-4 EI0", want, 1e-4).Check(t, w.moment[i]*1e4)
	}
}

// Structural Analysis (textbook), Example 16.5: three spans of 8 m between fixed ends, EI = 70 × 800 =
// 56 000 kN m², the second support sinks by 20 mm. The fixed-end moments, ±105 kN m, are
// the source's; the final values are computed from its joint equations by hand: 98 and 56 hogging, 91 and 28
// sagging, pulls 23.625, −42, 28.875, −10.5 kN.
func TestVerifySupportSinksBetweenFixedEnds(t *testing.T) {
	const ei, gap = 56_000, 8 * clamp
	lines := append([]float64{-gap}, spans(8, 8, 8)...)
	lines = append(lines, 24+gap)
	w := sunk(lines, []float64{0, 0, 0.020 * ei, 0, 0, 0}, nil)
	row := verification.Row{
		Key: "beam/support sinks between fixed ends", Source: "beam theory", Place: "joint equations of Structural Analysis, Example 16.5; kN and m", What: "support sinks between fixed ends",
		Why: "exact, but for the clamps' 1e-8 of a span",
	}
	rows(t, row, "moment over line", "kN·m", w.moment, []float64{0, -98, 91, -56, 28, 0}, 1e-4)
	r := w.Reaction
	rows(t, row, "pull", "kN", []float64{r[0] + r[1], r[2], r[3], r[4] + r[5]}, []float64{23.625, -42, 28.875, -10.5}, 1e-4)
	// One span alone, its right end sunk: the fixed-end moments themselves, 6EId/L².
	w = sunk([]float64{-gap, 0, 8, 8 + gap}, []float64{0, 0, 0.020 * ei, 0.020 * ei}, nil)
	rows(t, row.From("Structural Analysis", "Example 16.5"), "fixed-end moment at line", "kN·m", w.moment, []float64{0, -105, 105, 0}, 1e-4)
}

// Slope-deflection lesson of a national course on beams with yielding supports: three spans of 10 m under
// 5 kN/m, EI = 270 000 kN m². Its equations are those of settlements of 1/600 m and 1/300 m; printed −55.40
// and −28.40 kN m. Pulls computed.
func TestVerifySupportsYield(t *testing.T) {
	const ei = 270_000.
	w := sunk(spans(10, 10, 10), []float64{0, ei / 600, ei / 300, 0}, []Stretch{{0, 30}}, 150)
	row := verification.Row{Key: "beam/supports yield", Source: "yielding supports lesson", Place: "settlements of 1/600 and 1/300 m", What: "supports yield", Why: "half the last digit"}
	rows(t, row, "moment over line", "kN·m", w.moment, []float64{0, -55.40, -28.40, 0}, 0.005)
	rows(t, row.From("beam theory", "worked out beside the lesson"), "pull", "kN", w.Reaction, []float64{19.46, 58.24, 50.14, 22.16}, 0.005)
	// In whole numbers of millimetres, 5 and 10: −66.2 and +14.8, computed.
	w = sunk(spans(10, 10, 10), []float64{0, ei * 0.005, ei * 0.010, 0}, []Stretch{{0, 30}}, 150)
	rows(t, row.From("beam theory", "worked out beside the lesson"), "moment with 5 and 10 mm over line", "kN·m", w.moment, []float64{0, -66.2, 14.8, 0}, 0.05)
}
