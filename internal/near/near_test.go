package near_test

import (
	"math"
	"testing"

	"example.com/steelyard/internal/near"
)

// What compares numbers in tests must itself be able to say no.
func TestNear(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, c := range []struct {
		name     string
		a, b     float64
		abs, rel bool // with a tolerance of a quarter
	}{
		{"the same", 3, 3, true, true},
		{"at the tolerance", 1, 1.25, true, true},
		{"beyond it by itself, within it as a part", 100, 110, false, true},
		{"beyond both", 4, 6, false, false},
		{"small ones are measured against one", 0.25, 0, true, true},
		{"small ones apart", 0.5, 0, false, false},
		{"signs count", -8, 8, false, false},
		{"negative ones", -8, -9, false, true},
		{"an infinity and a number", inf, 1, false, false},
		{"an infinity below", -inf, 1, false, false},
		{"two infinities", inf, inf, false, false},
		{"not a number", nan, nan, false, false},
		{"not a number and one", 1, nan, false, false},
	} {
		for _, d := range [][2]float64{{c.a, c.b}, {c.b, c.a}} {
			if abs, rel := near.Abs(d[0], d[1], 0.25), near.Rel(d[0], d[1], 0.25); abs != c.abs || rel != c.rel {
				t.Errorf("%s: %v and %v: near by itself %t, as a part %t; should be %t, %t", c.name, d[0], d[1], abs, rel, c.abs, c.rel)
			}
		}
	}
}
