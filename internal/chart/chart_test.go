package chart

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/internal/svg"
	"pgregory.net/rapid"
)

func TestMarks(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      string
	}{
		{0, 60, "0 10 20 30 40 50 60"},
		{0, 45, "0 5 10 15"},
		{-12, 7.5, "-12 -10 -8 -6 -4 -2 0 2 4 6 8"},
		{0, 51, "0 10 20 30 40 50 60"},
		{0, 0.9, "0.0 0.1 0.2"},
		{3, 3, "2.0 2.5 3.0 3.5 4.0"},
		{101, 101.3, "101.00 101.05"},
		{0, 1e6, "0 200000 400000"},
		{-0.3, 0.31, "-0.3 -0.2 -0.1 0 0.1"},
	} {
		s := Axis{}.span(span{low: c.low, high: c.high})
		var got []string
		for _, v := range s.marks() {
			got = append(got, s.label(v))
		}
		// Zero is written without places, and the rest is left out of the table above.
		want := strings.Fields(strings.ReplaceAll(c.want, "0.0 ", "0 "))
		if len(got) < len(want) || !slices.Equal(got[:len(want)], want) && c.low != 3 {
			t.Errorf("%v to %v: %q, want %q", c.low, c.high, got, want)
		}
	}
}

// An axis holds all that is drawn, has few enough marks to be read, and begins and ends with one.
func TestAxisHoldsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := nothing()
		for _, v := range rapid.SliceOfN(rapid.Float64Range(-1e9, 1e9), 1, 5).Draw(t, "values") {
			s.include(v)
		}
		s.include(math.NaN())
		s.include(math.Inf(1))
		a := Axis{Zero: rapid.Bool().Draw(t, "zero")}.span(s)
		if a.low > s.low || a.high < s.high {
			t.Fatalf("%v does not hold %v", a, s)
		}
		marks := a.marks()
		if n := len(marks); n < 2 || n > 13 {
			t.Fatalf("%d marks over %v", n, a)
		}
		if off := math.Abs(marks[0] - a.low); off > 1e-6*a.step {
			t.Fatalf("first mark %v of %v", marks[0], a)
		}
		if off := math.Abs(marks[len(marks)-1] - a.high); off > 1e-6*a.step {
			t.Fatalf("last mark %v of %v", marks[len(marks)-1], a)
		}
	})
}

// Names at the ends of lines that meet are moved apart, and stay in the picture.
func TestNamesAreMovedApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Chart{Title: "lines", X: Axis{Label: "x"}, Y: Axis{Label: "y"}}
		for i := range rapid.IntRange(1, 8).Draw(t, "lines") {
			end := rapid.Float64Range(0, 1).Draw(t, "end")
			c.Series = append(c.Series, Series{Name: strings.Repeat("w", i+1), Points: []svg.Point{{}, {X: 1, Y: end}}})
		}
		p := svg.New(500, 300, "t", "d")
		c.Draw(p, svg.Box{W: 500, H: 300})
		if clashes := p.Clashes(); len(clashes) > 0 {
			t.Fatal(strings.Join(clashes, "\n"))
		}
	})
}

// The place of a point is by the axes: the corners of the frame are the ends of the axes.
func TestPlace(t *testing.T) {
	p := svg.New(400, 300, "t", "d")
	Chart{X: Axis{From: 10, To: 20}, Y: Axis{From: -5, To: 5}, Series: []Series{{Points: []svg.Point{{X: 10, Y: -5}, {X: 15, Y: 0}, {X: 20, Y: 5}}}}}.
		Draw(p, svg.Box{W: 400, H: 300})
	// To the left 34 and the width of "-4", 0.361 and 0.636 of 11; to the right 14, over 30, under 46.
	if want := `points="44.97,254 215.48,142 386,30"`; !strings.Contains(p.String(), want) {
		t.Errorf("no %s in\n%s", want, p)
	}
}

// Charts over one another share an axis where both keep the same distance from the sides, and numbers and names still fit.
func TestSharedAxis(t *testing.T) {
	draw := func(left, right, most float64) string {
		p := svg.New(400, 300, "t", "d")
		Chart{
			Left: left, Right: right, X: Axis{From: 0, To: 10}, Y: Axis{From: 0, To: most},
			Series: []Series{{Points: []svg.Point{{X: 0, Y: 0}, {X: 10, Y: most}}}},
		}.Draw(p, svg.Box{W: 400, H: 300})
		return p.String()
	}
	for _, most := range []float64{1, 5000} {
		if want := `points="100,254 350,30"`; !strings.Contains(draw(100, 50, most), want) {
			t.Errorf("up to %v: no %s in\n%s", most, want, draw(100, 50, most))
		}
	}
	// 34 and the width of "100000", 6 times 0.636 of 11: more than was asked for.
	if want := `points="75.98,254 `; !strings.Contains(draw(50, 0, 100000), want) {
		t.Errorf("no %s: numbers must fit", want)
	}
}

func TestGaps(t *testing.T) {
	p := svg.New(400, 300, "t", "d")
	Chart{Series: []Series{{Points: []svg.Point{{X: 0, Y: 0}, {X: 1, Y: 1}, {X: 2, Y: math.NaN()}, {X: 3, Y: 1}, {X: 4, Y: 0}}}}}.Draw(p, svg.Box{W: 400, H: 300})
	if n := strings.Count(p.String(), "<polyline"); n != 2 {
		t.Errorf("%d lines, want two with a gap between them", n)
	}
}
