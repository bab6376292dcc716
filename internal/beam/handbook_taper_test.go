package beam

import (
	"fmt"
	"math"
	"testing"

	"example.com/steelyard/internal/verification"
)

// leaning solves the textbook's beam under one load with a taper.
func leaning(lines []float64, s Stretch, taper, weight float64) *Work {
	w := NewLayout(Beam{Lines: lines, Loads: []Stretch{s}, Taper: []float64{taper}}).Work()
	w.Load([]float64{weight})
	w.Hold(All(len(lines)))
	return w
}

// A simple span L under a load that rises from nothing to w: pulls wL/6 and wL/3, largest moment
// wL²/(9√3) at L/√3; a span fixed at both ends: wL²/30 and wL²/20; fixed at the heavy end: wL²/15 there,
// wL/10 at the other; fixed at the light end: 7wL²/120 there, 11wL/40 at the other. Any handbook; from memory.
func TestVerifyTriangleOnOneSpan(t *testing.T) {
	const l, load = 3.0, 5.0
	for _, rises := range []bool{true, false} {
		side := "rising"
		if !rises {
			side = "falling"
		}
		row := verification.Row{
			Key: "beam/triangle on one span, " + side, Source: "beam formulas from memory", What: "load " + side + " along one span", Why: "a formula, but for rounding",
		}
		taper, turned := 1.0, func(list ...float64) []float64 { return list }
		place := func(x float64) float64 { return x }
		if !rises {
			taper = -1
			turned = func(list ...float64) []float64 {
				for i, j := 0, len(list)-1; i < j; i, j = i+1, j-1 {
					list[i], list[j] = list[j], list[i]
				}
				return list
			}
			place = func(x float64) float64 { return l - x }
		}
		on, weight := Stretch{0, l}, load*l/2
		w := leaning([]float64{0, l}, on, taper, weight)
		rows(t, row.At("wL/6 and wL/3"), "simple, pull", "", w.Reaction, turned(load*l/6, load*l/3), 1e-14)
		sag, hog, shear := w.Extremes()
		row.At("wL²/(9√3) at L/√3").Of("simple, sagging", "", load*l*l/(9*math.Sqrt(3)), 1e-14).Check(t, sag.Value)
		row.At("wL²/(9√3) at L/√3").Of("simple, place of sagging", "", place(l/math.Sqrt(3)), 1e-14).Check(t, sag.At)
		near(t, "simple: shear", math.Abs(shear.Value), load*l/3, 1e-14)
		near(t, "simple: its place", shear.At, place(l), 0)
		near(t, "simple: hogging", hog.Value, 0, 0)

		const gap = l * clamp
		w = leaning([]float64{-gap, 0, l, l + gap}, on, taper, weight)
		clamped := row.Because("a formula, but for the clamp's 1e-8 of a span")
		rows(t, clamped.At("wL²/30 and wL²/20"), "fixed at both ends, moment over line", "", w.moment, turned(0, -load*l*l/30, -load*l*l/20, 0), 1e-6)
		heavy := []float64{0, l, l + gap}
		light := []float64{-gap, 0, l}
		if !rises {
			heavy, light = light, heavy
		}
		w = leaning(heavy, on, taper, weight)
		rows(t, clamped.At("wL²/15"), "fixed at the heavy end, moment over line", "", w.moment, turned(0, -load*l*l/15, 0), 1e-6)
		clamped.At("wL/10").Of("fixed at the heavy end, pull", "", load*l/10, 1e-6).Check(t, turned(w.Reaction...)[0])
		w = leaning(light, on, taper, weight)
		rows(t, clamped.At("7wL²/120"), "fixed at the light end, moment over line", "", w.moment, turned(0, -7*load*l*l/120, 0), 1e-6)
		clamped.At("11wL/40").Of("fixed at the light end, pull", "", 11*load*l/40, 1e-6).Check(t, turned(w.Reaction...)[2])
	}
}

// Two equal spans, by the three-moment equation with the slopes of a simple span under such a
// load, 7wL³/360 at the light and 8wL³/360 at the heavy end (any handbook; from memory).
func TestVerifyTriangleOnTwoSpans(t *testing.T) {
	const l, load = 2.0, 3.0
	for _, c := range []struct {
		name          string
		on            Stretch
		taper, weight float64
		moment        float64
	}{
		{"first span, rising: 4L·M = −8wL³/60", Stretch{0, l}, 1, load * l / 2, -load * l * l / 30},
		{"first span, falling: 4L·M = −7wL³/60", Stretch{0, l}, -1, load * l / 2, -7 * load * l * l / 240},
		{"second span, rising", Stretch{l, 2 * l}, 1, load * l / 2, -7 * load * l * l / 240},
		{"second span, falling", Stretch{l, 2 * l}, -1, load * l / 2, -load * l * l / 30},
		// With the same load turned round it makes an even one of 2·w/2: half of wL²/8 each.
		{"both spans, rising: half of an even load", Stretch{0, 2 * l}, 1, load * l, -load * l * l / 16},
		{"both spans, leaning by a third", Stretch{0, 2 * l}, -1. / 3, load * l, -load * l * l / 16},
	} {
		w := leaning(spans(l, l), c.on, c.taper, c.weight)
		verification.Row{
			Key: "beam/triangle on two spans", Source: "beam theory", Place: "three-moment equation, with slopes of 7wL³/360 and 8wL³/360 from memory", What: "moment over the middle line", Why: "a formula, but for rounding",
		}.Of(c.name, "", c.moment, 1e-14).Check(t, w.moment[1])
		sum := w.Reaction[0] + w.Reaction[1] + w.Reaction[2]
		near(t, c.name+": sum", sum, c.weight, 1e-14)
		centre := (c.on.From+c.on.To)/2 + c.taper*(c.on.To-c.on.From)/6
		near(t, c.name+": about the first", w.Reaction[1]*l+w.Reaction[2]*2*l, c.weight*centre, 1e-13)
	}
	// Pulls under the last but one, in wL: 1/48, 30/48, 17/48.
	w := leaning(spans(l, l), Stretch{0, 2 * l}, 1, load*l)
	row := verification.Row{Key: "beam/triangle on two spans/both, rising", Source: "beam theory", Place: "1/48, 30/48 and 17/48 of wL", What: "load rising along two spans", Why: "a formula, but for rounding"}
	rows(t, row, "pull", "", w.Reaction, []float64{load * l / 48, 30 * load * l / 48, 17 * load * l / 48}, 1e-14)
}

// An overhang a beyond two supports, under a load that rises from nothing to w at the tip or falls to
// nothing there: moment wa²/3 and wa²/6 over the support. Statics.
func TestVerifyTriangleOnOverhang(t *testing.T) {
	const l, a, load = 4.0, 1.5, 6.0
	for taper, part := range map[float64]float64{1: 1. / 3, -1: 1. / 6, 0: 1. / 4} {
		m := part * load * a * a
		w := leaning([]float64{0, l}, Stretch{l, l + a}, taper, load*a/2)
		name := fmt.Sprintf("taper %v on an overhang", taper)
		row := verification.Row{Key: "beam/" + name, Source: "equilibrium", Place: "of an overhang", What: name, Why: "a formula, but for rounding"}
		rows(t, row, "moment over line", "", w.moment, []float64{0, -m}, 1e-14)
		rows(t, row, "pull", "", w.Reaction, []float64{-m / l, load*a/2 + m/l}, 1e-14)
		w = leaning([]float64{a, l + a}, Stretch{0, a}, -taper, load*a/2)
		nearAll(t, "moment on the left", w.moment, []float64{-m, 0}, 1e-14)
	}
}

// A load over many spans, cut at lines that come and go, is one load: three spans of which inner
// supports are taken away give the simple span.
func TestVerifyTriangleOverSlackLines(t *testing.T) {
	const l = 4.0
	w := NewLayout(Beam{Lines: []float64{0, 0.5, 1.5, l}, Loads: []Stretch{{0, l}}, Taper: []float64{1}}).Work()
	w.Load([]float64{l / 2}) // up to w = 1
	w.Hold(0b1001)
	w.Deflect()
	nearAll(t, "pull", w.Reaction, []float64{l / 6, 0, 0, l / 3}, 1e-14)
	for i, x := range []float64{0, 0.5, 1.5, l} {
		// wx(3x⁴ − 10L²x² + 7L⁴)/360L: any handbook, from memory.
		if want := x * (3*x*x*x*x - 10*l*l*x*x + 7*l*l*l*l) / (360 * l); w.Reaction[i] == 0 {
			verification.Row{Key: "beam/triangle over slack lines", Source: "beam formulas from memory", Place: "wx(3x⁴ − 10L²x² + 7L⁴)/360L", What: "drop of a slack line", Why: "a formula, but for rounding"}.
				Of(fmt.Sprint("at ", x), "", want, 1e-13).Check(t, w.Deflection[i])
		} else {
			near(t, "drop over a line", w.Deflection[i], want, 1e-13)
		}
	}
	sag, _, _ := w.Extremes()
	near(t, "sagging", sag.Value, l*l/(9*math.Sqrt(3)), 1e-14)
	near(t, "its place", sag.At, l/math.Sqrt(3), 1e-14)
}

// A heavy load on next to no length leaves nothing behind its end, however it leans: what it gains per length is
// then enormous. Beyond it the beam is as under a point.
func TestShortLeaningLoad(t *testing.T) {
	const long = 1e-6
	for _, at := range []float64{0, 1. / 3, 2.7} {
		for _, taper := range []float64{-1, 0.3, 1} {
			b := Beam{Lines: []float64{0, 4.5}, Loads: []Stretch{{0, 4.5}, {at, at + long}, {at, at}}, Taper: []float64{0.5, taper, 0}}
			short, point := NewLayout(b).Work(), NewLayout(b).Work()
			short.Load([]float64{1, 1000, 0})
			point.Load([]float64{1, 0, 1000})
			short.Hang(0)
			point.Hang(0)
			sag, _, _ := short.Extremes()
			want, _, _ := point.Extremes()
			near(t, "sagging", sag.Value, want.Value, 1000*long)
			field := short.walk(1)
			for field.more() {
				field.step(field.ahead())
				field.take()
			}
			near(t, "per length at the end", field.load(), 0, 1e-6)
		}
	}
}
