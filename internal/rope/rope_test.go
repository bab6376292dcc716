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

// The direction of a part, and how long it is, as one sees it.
func TestPart(t *testing.T) {
	var h rope.Heights
	for _, c := range []struct {
		name           string
		x, z           float64 // where the part ends, from (2, 3)
		ux, uz, length float64
	}{
		{"up", 2, 8, 0, 1, 5},
		{"down", 2, 1, 0, -1, 2},
		{"level", 9, 3, 1, 0, 7},
		{"level, back", -2, 3, -1, 0, 4},
		{"up and back", -1, 7, -0.6, 0.8, 5},
		{"nowhere", 2, 3, 0, 0, 0},
	} {
		ux, uz, length := (rope.Path{{X: 2, Z: 3}, {X: c.x, Z: c.z}}).Part(0, &h)
		if ux != c.ux || uz != c.uz || length != c.length {
			t.Errorf("%s: (%v, %v) for %v, want (%v, %v) for %v", c.name, ux, uz, length, c.ux, c.uz, c.length)
		}
	}
}

// What a sheave's body feels of a rope that weighs something: each part pulls with c + w·z at the sheave's own height z.
func TestPullAtASheave(t *testing.T) {
	h := rope.Heights{1: 5}
	for _, c := range []struct {
		name string
		path rope.Path
		n, s float64
	}{
		{"hung in two parts", rope.Path{{X: 0, Z: 9}, {Body: 1, X: 0, Z: -1}, {X: 0, Z: 12}}, 2, 2 * 4},
		{"hung over, with two parts down", rope.Path{{X: 0, Z: 0}, {Body: 1, X: 0, Z: -1}, {X: 0, Z: 1}}, -2, -2 * 4},
		{"one part comes from below and one goes on up", rope.Path{{X: 0, Z: 0}, {Body: 1, X: 0, Z: -1}, {X: 0, Z: 12}}, 0, 0},
		{"one level part, one slanting up", rope.Path{{X: -9, Z: 4}, {Body: 1, X: 0, Z: -1}, {X: 3, Z: 8}}, 0.8, 0.8 * 4},
		{"one slanting up, one level part", rope.Path{{X: 3, Z: 8}, {Body: 1, X: 0, Z: -1}, {X: -9, Z: 4}}, 0.8, 0.8 * 4},
	} {
		if n, s := c.path.Pull(1, 0, 2, &h); !near.Abs(n, c.n, 1e-15) || !near.Abs(s, c.s, 1e-15) {
			t.Errorf("%s: %v and %v, want %v and %v", c.name, n, s, c.n, c.s)
		}
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
