package rope_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/rope"
)

// A 3-4-5 triangle and a plumb drop, by hand.
func TestByHand(t *testing.T) {
	p := rope.Path{{Body: 1, X: 3, Z: 0}, {Body: 0, X: 3, Z: 9}, {Body: 0, X: 0, Z: 13}, {Body: 2, X: 0, Z: 0}}
	h := rope.Heights{1: 2, 2: 6}
	if got := p.Length(&h); got != 7+5+7 {
		t.Errorf("length %v, want 19", got)
	}
	if ux, uz, l := p.Part(1, &h); ux != -0.6 || uz != 0.8 || l != 5 {
		t.Errorf("part runs (%v, %v) for %v, want (-0.6, 0.8) for 5", ux, uz, l)
	}
	last := len(p) - 1
	if got := p.Rate(1, last, &h); got != -1 {
		t.Errorf("raising the first body gives %v of rope, want -1", got)
	}
	if n, s := p.Pull(2, 0, last, &h); n != 1 || s != 6 {
		t.Errorf("pull %v and %v, want one part up at a height of 6", n, s)
	}
	if ux, uz, l := (rope.Path{{}, {}}).Part(0, &h); ux != 0 || uz != 0 || l != 0 {
		t.Errorf("stops that coincide give (%v, %v) for %v, want zeros", ux, uz, l)
	}
}

// The rate is the slope of the length, on slanting paths too, and the pull's count
// of parts is the rate with its sign turned: what would shorten the rope is pulled.
func TestPropRateIsTheSlopeOfLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := make(rope.Path, rapid.IntRange(2, 7).Draw(t, "stops"))
		for i := range p {
			p[i] = rope.Stop{Body: rapid.IntRange(0, 3).Draw(t, "body"), X: 3 * float64(i), Z: rapid.Float64Range(-5, 5).Draw(t, "z")}
		}
		h := rope.Heights{0, rapid.Float64Range(0, 9).Draw(t, "h1"), rapid.Float64Range(0, 9).Draw(t, "h2"), rapid.Float64Range(0, 9).Draw(t, "h3")}
		last := len(p) - 1
		for body := 1; body <= 3; body++ {
			const step = 1e-4
			up, down := h, h
			up[body] += step
			down[body] -= step
			slope := (p.Length(&up) - p.Length(&down)) / (2 * step)
			rate := p.Rate(body, last, &h)
			if !near.Abs(rate, slope, 1e-6) {
				t.Fatalf("body %d: rate %v, slope %v", body, rate, slope)
			}
			if n, _ := p.Pull(body, 0, last, &h); math.Abs(n+rate) > 1e-12 {
				t.Fatalf("body %d: %v parts pull up, rate %v", body, n, rate)
			}
		}
	})
}
