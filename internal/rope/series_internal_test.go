package rope

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The series against package math, over the ranges that they state. Both are good to
// a unit or two in the last place of a float64, 2.2e-16; the exponential loses as
// many as its argument has doublings over the split of ln 2, hence a wider one.
func TestPropSeries(t *testing.T) {
	for _, c := range []struct {
		name       string
		ours, want func(float64) float64
		from, to   float64
		tol        float64
	}{
		{"sin", sin, math.Sin, 0, math.Pi / 2, 1e-15},
		{"exp", exp, math.Exp, 0, 700, 2e-15},
		{"log", log, math.Log, 1, 1e30, 1e-15},
		{"log below one", log, math.Log, 1e-12, 1, 1e-15},
		{"log about one", log, math.Log, 0.99, 1.01, 1e-15},
		{"arctan", arctan, math.Atan, 0, 3, 2e-15},
		{"arctan of small slopes", arctan, math.Atan, 0, 0.05, 2e-15},
		{"arctan of steep ones", arctan, math.Atan, 1, 1e21, 2e-15},
	} {
		t.Run(c.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				x := rapid.Float64Range(c.from, c.to).Draw(t, "x")
				got, want := c.ours(x), c.want(x)
				if math.Abs(got-want) > c.tol*math.Abs(want)+1e-300 { // the last is for numbers so small that they have few digits
					t.Fatalf("%v: %v, want %v", x, got, want)
				}
			})
		})
	}
}

// Where the answer is exact it must be: a level run has no drag, half a turn all of it.
func TestSeriesExact(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"sin 0", sin(0), 0},
		{"sin of a quarter turn", sin(math.Pi / 2), 1},
		{"exp 0", exp(0), 1},
		{"log 1", log(1), 0},
		{"arctan 0", arctan(0), 0},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v exactly", c.name, c.got, c.want)
		}
	}
}
