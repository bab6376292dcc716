package beam

import (
	"math"
	"testing"
)

// On these six lines the fourth would push, as the sixth would, if all were held. Dropped
// for good, it leaves a beam that stands below its end; it has to come back.
func TestALineLetGoComesBack(t *testing.T) {
	p := problem{
		lines:   []float64{1, 3, 5, 7, 9, 11},
		loads:   []Stretch{{8, 8}, {4, 4}, {1, 1}},
		weights: []float64{1, 6, 2},
		length:  12,
	}
	w := p.work()
	w.Hold(All(6))
	if w.Reaction[3] >= 0 || w.Reaction[5] >= 0 {
		t.Fatalf("held on all: %v, want the fourth and sixth to push", w.Reaction)
	}
	w.Hold(0b010111)
	w.Deflect()
	if w.Deflection[3] <= 0 {
		t.Fatalf("without the two: drops %v, want the fourth below its line's end", w.Deflection)
	}
	if !w.Hang(0) || w.Reaction[3] <= 0 || w.Reaction[5] != 0 {
		t.Fatalf("pulls %v, want the fourth line back and the sixth slack", w.Reaction)
	}
	pulls, drops, _ := p.oracle().hang()
	nearAll(t, "pull", w.Reaction, pulls, 1e-9)
	nearAll(t, "drop", w.Deflection, drops, 1e-8)
}

// On these trade does not get on and gives up, and settle has to find the answer.
func TestTradeGivesUp(t *testing.T) {
	for _, p := range []problem{
		{lines: []float64{1, 3, 5, 7, 9, 11, 13, 15, 17}, loads: []Stretch{{0, 0}, {11, 11}}, weights: []float64{8, 1}, length: 18},
		{lines: []float64{1, 3, 5, 7, 9, 11, 13, 15, 17, 19}, loads: []Stretch{{13, 13}, {2, 2}, {3, 3}}, weights: []float64{9, 4, 7}, length: 20},
		{
			lines: []float64{1, 3, 5, 7, 9, 11, 13, 15, 17}, low: []float64{8, 0, -8, 8, 16, -16, -16, -16, 0},
			loads: []Stretch{{18, 18}, {10, 10}, {17, 17}, {7, 7}}, weights: []float64{6, 9, 9, 8}, length: 18,
		},
	} {
		w := p.work()
		weight, _ := p.total()
		none := float64(roundoff*weight) + w.slight
		w.Hold(All(len(p.lines)))
		if w.pull(none) || w.trade(none) {
			t.Errorf("trade finds an answer to %+v: choose another", p)
		}
		if !w.Hang(1e-9) {
			t.Errorf("not held: %+v", p)
			continue
		}
		pulls, drops, _ := p.oracle().hang()
		nearAll(t, "pull", w.Reaction, pulls, 1e-9*weight)
		nearAll(t, "drop", w.Deflection, drops, 1e-12*p.size())
	}
}

func TestCoincidences(t *testing.T) {
	tenth := 0.1 + 0.2 // not quite 0.3
	for _, c := range []struct {
		name    string
		lines   []float64
		loads   []Stretch
		weights []float64
		want    []float64
		why     string
	}{
		{"all on one line", []float64{0, 1, 2, 3, 4}, []Stretch{{2, 2}, {2, 2}, {2, 2}}, []float64{1, 2, 3}, []float64{0, 0, 6, 0, 0}, "nothing bends"},
		{"all on the end line", []float64{0, 1, 2}, []Stretch{{0, 0}}, []float64{5}, []float64{5, 0, 0}, "the centre of gravity may be at the edge"},
		{"each line its own", []float64{0, 1, 2}, []Stretch{{0, 0}, {1, 1}, {2, 2}}, []float64{1, 2, 3}, []float64{1, 2, 3}, "nothing bends"},
		{"no weight at all", []float64{0, 1, 2}, []Stretch{{0, 2}}, []float64{0}, []float64{0, 0, 0}, "nothing to carry"},
		{"a rounding beside a line", []float64{0, 0.3, 1}, []Stretch{{tenth, tenth}}, []float64{1}, []float64{0, 1, 0}, "stations a bit apart"},
		{"a stretch as short as a rounding", []float64{0, 0.3, 1}, []Stretch{{0.3, tenth}}, []float64{1}, []float64{0, 1, 0}, "weight per length is huge there"},
		{"a heavy short load leaves nothing behind its end", []float64{0, 1, 2}, []Stretch{{1, 1 + 1e-9}, {1, 2}}, []float64{1e9, 1}, nil, ""},
		{"the centre of gravity over an inner line, ends laden", []float64{0, 2, 4}, []Stretch{{1, 1}, {3, 3}}, []float64{4, 4}, []float64{1.25, 5.5, 1.25}, "two equal spans: 5/16, 22/16, 5/16"},
		{"balanced on the middle by two tips", []float64{1, 2, 3}, []Stretch{{0, 0}, {4, 4}}, []float64{1, 1}, []float64{1, 0, 1}, "the middle line would push"},
		{"one line under the centre", []float64{2}, []Stretch{{0, 4}}, []float64{8}, []float64{8}, "balanced"},
	} {
		w := NewLayout(Beam{Lines: c.lines, Loads: c.loads}).Work()
		w.Load(c.weights)
		if !w.Hang(1e-9) {
			t.Errorf("%s: not held", c.name)
			continue
		}
		if c.want != nil {
			nearAll(t, c.name+" ("+c.why+"): pull", w.Reaction, c.want, 1e-12)
		}
		if c.want != nil {
			continue
		}
		p := w.walk(2)
		for range 4 {
			p.step(w.layout.marks[p.next].place)
			p.take()
		}
		if q := p.load(); q != 0 {
			t.Errorf("%s: %v per length beyond, want none", c.name, q)
		}
	}
}

func TestNoEquilibrium(t *testing.T) {
	for name, p := range map[string]problem{
		"no line":                  {loads: []Stretch{{0, 1}}, weights: []float64{1}},
		"beyond the first":         {lines: []float64{1, 2, 3}, loads: []Stretch{{0.9, 0.9}}, weights: []float64{1}},
		"beyond the last":          {lines: []float64{1, 2, 3}, loads: []Stretch{{3, 3.1}}, weights: []float64{1}},
		"beside the only line":     {lines: []float64{1}, loads: []Stretch{{0, 2.1}}, weights: []float64{1}},
		"a rounding is not a foot": {lines: []float64{1, 2}, loads: []Stretch{{1 - 1e-7, 1 - 1e-7}}, weights: []float64{1}},
	} {
		if p.work().Hang(1e-9) {
			t.Errorf("%s: held", name)
		}
	}
}

// With equal extremes left and right, the left one is given, whatever rounding says.
func TestTiesGoLeft(t *testing.T) {
	x := make([]float64, 8)
	for i := range x {
		x[i] = float64(i)*1.7 + 0.3
	}
	w := held(x, []Stretch{{0.3, x[7]}}, 100)
	sag, hog, shear := w.Extremes()
	if sag.At > x[1] || hog.At != x[1] || shear.At != x[1] || shear.Value > 0 {
		t.Errorf("sagging %v, hogging %v, shear %v: want all near %v, shear on its left", sag, hog, shear, x[1])
	}
	// On two lines alone the shear is alike beside both.
	w = held([]float64{0.3, 2}, []Stretch{{0.3, 2}}, 100)
	if _, _, shear := w.Extremes(); shear.At != 0.3 || math.Abs(shear.Value-50) > 1e-12 {
		t.Errorf("shear %v: want 50 beside the first line", shear)
	}
}

// A beam that weighs something, with the middle one of three lines too long to bear any: the moment is largest just there, where
// one field ends and the next begins, and rounding alone tells in which of them the shear passes zero.
func TestCrestOverASlackMiddleLine(t *testing.T) {
	for k := range 400 {
		length, tip := 6.0047+0.0237*float64(k), 0.0331+0.0023*float64(k)
		own := 70 + 3.713*float64(k)
		w := NewLayout(Beam{
			Lines: []float64{tip, length / 2, length - tip}, Low: []float64{0, 1e9, 0},
			Loads: []Stretch{{0, length}}, Still: []float64{own},
		}).Work()
		w.Load([]float64{own})
		if !w.Hang(1e-9) || w.Reaction[1] != 0 {
			t.Fatalf("pulls %v, want none on the middle line", w.Reaction)
		}
		sag, _, _ := w.Extremes()
		want := own/2*(length/2-tip) - own/2*length/4
		if !(math.Abs(sag.Value-want) <= 1e-9*own*length) || !(math.Abs(sag.At-length/2) <= 1e-6) {
			t.Fatalf("%v over %v: %+v, want %v in the middle", own, length-2*tip, sag, want)
		}
	}
}

// A single line carries two cantilevers: no sagging, hogging wL²/8 over the line, shear wL/2.
func TestOneLine(t *testing.T) {
	w := NewLayout(Beam{Lines: []float64{2}, Loads: []Stretch{{0, 4}}}).Work()
	w.Load([]float64{8})
	w.Hang(1e-9)
	sag, hog, shear := w.Extremes()
	if sag != (Peak{0, 0}) || math.Signbit(sag.Value) || hog != (Peak{-4, 2}) || shear != (Peak{-4, 2}) {
		t.Errorf("sagging %v, hogging %v, shear %v", sag, hog, shear)
	}
}

// A Work may be used again: nothing of the last question stays.
func TestWorkIsUsedAgain(t *testing.T) {
	l := NewLayout(Beam{Lines: []float64{1, 3, 5, 7, 9, 11}, Loads: []Stretch{{8, 8}, {4, 4}, {1, 1}}})
	w := l.Work()
	for _, weights := range [][]float64{{1, 6, 2}, {0, 0, 1}, {3, 3, 3}, {1, 6, 2}} {
		fresh := l.Work()
		fresh.Load(weights)
		w.Load(weights)
		fresh.Hang(0)
		w.Hang(0)
		nearAll(t, "pull", w.Reaction, fresh.Reaction, 0)
		nearAll(t, "drop", w.Deflection, fresh.Deflection, 0)
	}
	if n := testing.AllocsPerRun(20, func() { w.Load([]float64{1, 6, 2}); w.Hang(0); w.Extremes() }); n != 0 {
		t.Errorf("%v allocations with scratch at hand", n)
	}
}

// A tube's section against the textbook's difference of powers.
func TestRing(t *testing.T) {
	for _, c := range []struct{ outer, wall float64 }{{0.0483, 0.004}, {0.06, 0.03}, {1, 1e-9}} {
		inner := c.outer - 2*c.wall
		a, i, s := Ring(c.outer, c.wall)
		d2, d4 := c.outer*c.outer-inner*inner, math.Pow(c.outer, 4)-math.Pow(inner, 4)
		near(t, "area", a, math.Pi/4*d2, 1e-9*c.outer*c.outer)
		near(t, "second moment", i, math.Pi/64*d4, 1e-9*math.Pow(c.outer, 4))
		near(t, "modulus", s, math.Pi/32*d4/c.outer, 1e-9*math.Pow(c.outer, 3))
	}
	a, i, second := Ring(2, 1)
	if a2, i2, s2 := Ring(2, 1.5); a2 != a || i2 != i || s2 != second {
		t.Errorf("a wall of more than half the diameter: %v %v %v, want those of the bar, %v %v %v", a2, i2, s2, a, i, second)
	}
	for _, c := range [][2]float64{{0, 1}, {1, 0}, {-1, 1}, {math.NaN(), 1}, {1, math.NaN()}} {
		if a, i, s := Ring(c[0], c[1]); a != 0 || i != 0 || s != 0 {
			t.Errorf("Ring(%v): %v %v %v, want nothing", c, a, i, s)
		}
	}
}
