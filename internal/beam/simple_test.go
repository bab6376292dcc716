package beam

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A leaning piece is what the points are that it is made of: Gauss's rule with three places, which is exact up to the fifth
// power, over the point load's closed form, W·c(L²−c²)/L at the right and its mirror image at the left.
func TestSimplePieceIsItsPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(0.5, 20).Draw(t, "length")
		c := length * rapid.Float64Range(0.05, 0.95).Draw(t, "centre")
		h := min(c, length-c) * rapid.Float64Range(0, 1).Draw(t, "half")
		taper := rapid.Float64Range(-1, 1).Draw(t, "taper")
		var want simple
		for _, g := range [3][2]float64{{-math.Sqrt(0.6), 5. / 18}, {0, 8. / 18}, {math.Sqrt(0.6), 5. / 18}} {
			x, w := c+h*g[0], g[1]*(1+taper*g[0])
			want.left += w * (length - x) / length
			want.right += w * x / length
			want.atRight += w * x * (length*length - x*x) / length
			want.atLeft += w * (length - x) * (length*length - (length-x)*(length-x)) / length
		}
		got := simplePiece(length, c, h, taper)
		for _, pair := range [][2]float64{{got.left, want.left}, {got.right, want.right}, {got.atLeft, want.atLeft}, {got.atRight, want.atRight}} {
			if math.Abs(pair[0]-pair[1]) > 1e-13*length*length {
				t.Fatalf("%+v, want %+v", got, want)
			}
		}
	})
}
