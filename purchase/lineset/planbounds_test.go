package lineset

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Whatever is guessed, the last number for which it holds is found; near the guess with few questions, and from anywhere with no more than
// halving takes.
func TestPropLastOf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		most := rapid.OneOf(rapid.Int64Range(0, 20), rapid.Int64Range(0, 1e18)).Draw(t, "most")
		want := rapid.OneOf(rapid.Int64Range(-1, most), rapid.Just(most), rapid.Just(int64(-1))).Draw(t, "last")
		off := rapid.OneOf(rapid.Int64Range(-1030, 1030), rapid.Int64Range(-2e18, 2e18)).Draw(t, "off")
		guess := float64(want) + float64(off)
		if rapid.IntRange(0, 9).Draw(t, "wild") == 0 {
			guess = rapid.SampledFrom([]float64{math.Inf(1), math.Inf(-1), 1e300, -1e300}).Draw(t, "guess")
		}
		asked := 0
		got := lastOf(most, guess, func(n int64) bool {
			asked++
			if n < 0 || n > most {
				t.Fatalf("asked of %d, which is not among 0 to %d", n, most)
			}
			return n <= want
		})
		if got != want {
			t.Fatalf("%d is the last of 0 to %d, found %d from %v", want, most, got, guess)
		}
		enough := 2 + int(math.Ceil(math.Log2(float64(most)+2)))
		// A guess of more than 2^53 is itself rounded.
		if abs := max(off, -off); abs <= 1000 && most < 1<<53 && guess == float64(want)+float64(off) {
			enough = min(enough, 2+11)
		}
		if asked > enough {
			t.Fatalf("%d questions from %v for %d of %d, and %d are enough", asked, guess, want, most, enough)
		}
	})
}

// Near the guess it takes 2 questions and the halving of 1024 numbers; what is not among the numbers is never asked.
func TestLastOfNearTheGuess(t *testing.T) {
	const most = 1_000_000_000_000_000
	for _, c := range []struct{ most, last, guess int64 }{
		{most, 4e14, 4e14},
		{most, 4e14, 4e14 + 1000},
		{most, 4e14, 4e14 - 1000},
		{most, most, most},
		{most, most - 5, most},
		{most, -1, 0},
		{most, 0, 0},
		{most, 900, 1023},
		{most, most - 900, most - 1023},
		{1023, 1000, 1023},
		{1024, 3, 0},
		{0, 0, 0},
		{0, -1, 0},
	} {
		asked := 0
		got := lastOf(c.most, float64(c.guess), func(n int64) bool {
			if asked++; n < 0 || n > c.most {
				t.Fatalf("%+v: asked of %d", c, n)
			}
			return n <= c.last
		})
		if got != c.last || asked > 13 {
			t.Errorf("%+v: %d after %d questions", c, got, asked)
		}
	}
}
