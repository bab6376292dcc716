package rope_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/rope"
)

// root finds the ratio from the defining equation itself, T₂ − T₁ = c·|R| with T₁ = 1, by
// halving: the left side grows faster in T₂ than the right, as c is below 1. The
// resultant is summed from the two pulls on the sheave, back along the part that
// comes and on along the part that leaves.
func root(c, ux, uz, vx, vz float64) float64 {
	excess := func(k float64) float64 {
		rx, rz := k*vx-ux, k*vz-uz
		return k - 1 - c*math.Hypot(rx, rz)
	}
	low, high := 1.0, 2.0
	for excess(high) < 0 {
		high *= 2
	}
	for range 200 {
		if mid := (low + high) / 2; excess(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// The closed form is the root of the equation it was made from, on any two
// directions; so is the form by angle, and neither minds which way the rope is
// laid. The root is found no better than the rounding of its two sides over c's
// distance from 1, hence the tolerance.
func TestPropDragRatioSolvesItsEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(0, 0.95).Draw(t, "c")
		from := rapid.Float64Range(0, 2*math.Pi).Draw(t, "from")
		turn := rapid.Float64Range(0, math.Pi).Draw(t, "turn")
		uz, ux := math.Sincos(from)
		vz, vx := math.Sincos(from + turn)
		want := root(c, ux, uz, vx, vz)
		for name, got := range map[string]float64{
			"directions": rope.DragRatio(c, ux, uz, vx, vz),
			"back":       rope.DragRatio(c, -vx, -vz, -ux, -uz),
			"angle":      rope.DragRatioTurning(c, turn),
		} {
			if !near.Rel(got, want, 1e-13/(1-c)) {
				t.Fatalf("by %s: %v, root %v", name, got, want)
			}
		}
	})
}

// The ratio never falls as the turn or the drag grows.
func TestPropDragRatioGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(0, 0.9).Draw(t, "c")
		turn := rapid.Float64Range(0, math.Pi).Draw(t, "turn")
		more := rapid.Float64Range(c, 0.9).Draw(t, "more drag")
		wider := rapid.Float64Range(turn, math.Pi).Draw(t, "wider")
		k := rope.DragRatioTurning(c, turn)
		if k < 1 || rope.DragRatioTurning(more, turn) < k*(1-1e-15) || rope.DragRatioTurning(c, wider) < k*(1-1e-15) {
			t.Fatalf("K %v, with more drag %v, turning wider %v", k, rope.DragRatioTurning(more, turn), rope.DragRatioTurning(c, wider))
		}
	})
}

// A small turn by θ gives K − 1 = cθ/√(1−c²) to first order: the textbook form, through
// a² − b², has lost every digit here. The next term is of the order of (K−1)².
func TestDragRatioOfSmallTurns(t *testing.T) {
	const c = 0.02
	for _, turn := range []float64{1e-3, 1e-5, 1e-7, 1e-9} {
		want := c * turn / math.Sqrt(1-c*c)
		sin, cos := math.Sincos(turn)
		for _, got := range []float64{rope.DragRatioTurning(c, turn) - 1, rope.DragRatio(c, 1, 0, cos, sin) - 1} {
			// K itself is rounded to 2.2e-16, and so is what is subtracted from it.
			if math.Abs(got-want) > want*want+5e-16 {
				t.Errorf("turn %v: K − 1 is %v, want %v", turn, got, want)
			}
		}
	}
}

// At the ends there is nothing to round: straight past, half a turn, no drag.
func TestDragRatioAtTheEnds(t *testing.T) {
	for _, c := range []float64{0, 0.0196, 0.3, 0.9, math.Nextafter(1, 0)} {
		if got := rope.DragRatio(c, 0.6, 0.8, 0.6, 0.8); got != 1 {
			t.Errorf("c %v: straight past %v, want 1 exactly", c, got)
		}
		if got, want := rope.DragRatio(c, 0.6, 0.8, -0.6, -0.8), (1+c)/(1-c); !near.Rel(got, want, 1e-15) || math.IsInf(got, 0) {
			t.Errorf("c %v: half a turn %v, want %v", c, got, want)
		}
		if got, want := rope.DragRatioTurning(c, math.Pi), (1+c)/(1-c); !near.Rel(got, want, 1e-15) {
			t.Errorf("c %v: half a turn by angle %v, want %v", c, got, want)
		}
	}
	if got := rope.DragRatio(0, 1, 0, 0, 1); got != 1 {
		t.Errorf("no drag: %v, want 1 exactly", got)
	}
	// Unit vectors are a hair long or short: that must not carry the turn beyond half.
	long := math.Nextafter(1, 2)
	if got := rope.DragRatio(0.5, 0, long, 0, -long); got != 3 {
		t.Errorf("half a turn of long vectors: %v, want 3", got)
	}
}

// The lead line from the equilibrium of each block, part by part, and from the
// printed formula K^N(K−1)/(K^N−1).
func TestPropLeadLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(1.001, 3).Draw(t, "k")
		parts := rapid.IntRange(1, 12).Draw(t, "parts")
		sheaves := rapid.IntRange(parts-1, parts+3).Draw(t, "sheaves")
		// From the dead end, a tension of 1, outward over each sheave.
		tension, load := 1.0, 0.0
		for i := range sheaves + 1 {
			if i > 0 {
				tension *= k
			}
			if i < parts {
				load += tension
			}
		}
		if got := rope.LeadLine(k, parts, sheaves); !near.Rel(got, tension/load, 1e-12) {
			t.Fatalf("%v, by the parts %v", got, tension/load)
		}
		n := math.Pow(k, float64(parts))
		if got, want := rope.LeadLine(k, parts, parts), n*(k-1)/(n-1); !near.Rel(got, want, 1e-11) {
			t.Fatalf("%v, by the formula %v", got, want)
		}
		if got, want := rope.LeadLine(1, parts, sheaves), 1/float64(parts); !near.Rel(got, want, 1e-15) {
			t.Fatalf("without drag %v, want %v", got, want)
		}
	})
}

// Turns and ratio are each other's reverse, and turns add where ratios multiply.
func TestPropWraps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mu := rapid.Float64Range(0.01, 1).Draw(t, "mu")
		a := rapid.Float64Range(0, 5).Draw(t, "a")
		b := rapid.Float64Range(0, 5).Draw(t, "b")
		ra, rb, both := rope.WrapRatio(mu, a), rope.WrapRatio(mu, b), rope.WrapRatio(mu, a+b)
		if !near.Rel(ra*rb, both, 1e-13) {
			t.Fatalf("%v times %v, together %v", ra, rb, both)
		}
		if got := rope.WrapTurns(mu, ra); !near.Rel(got, a, 1e-13/mu) {
			t.Fatalf("%v turns back, want %v", got, a)
		}
	})
}

// Angle and offset are each other's reverse up to an eighth of a turn.
func TestPropFleet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(0, math.Pi/4).Draw(t, "angle")
		lead := rapid.Float64Range(0.01, 100).Draw(t, "lead")
		offset := rope.FleetOffset(angle, lead)
		if !near.Rel(offset, lead*math.Tan(angle), 1e-14) {
			t.Fatalf("offset %v, want %v", offset, lead*math.Tan(angle))
		}
		if got := rope.FleetAngle(offset, lead); !near.Rel(got, angle, 1e-14) {
			t.Fatalf("angle back %v, want %v", got, angle)
		}
	})
}
