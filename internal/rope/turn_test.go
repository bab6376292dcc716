package rope_test

import (
	"math"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/rope"
)

// The turn between two directions, laid down as angles: their difference. Straight
// on, a right angle and back are told from the stops' places by eye.
func TestTurn(t *testing.T) {
	var h rope.Heights
	for _, c := range []struct {
		name    string
		x, z    float64 // the third stop, after (0, 0) and (0, 1)
		degrees float64
	}{
		{"straight on", 0, 5, 0},
		{"level", 3, 1, 90},
		{"level the other way", -3, 1, 90},
		{"back beside itself", 0, -4, 180},
		{"all but back", 1e-9, 0, 180 - 1e-9*180/math.Pi},
		{"a hair", 1e-9, 2, 1e-9 * 180 / math.Pi},
		{"one up in one across", 1, 2, 45},
		{"one down in one across", 1, 0, 135},
	} {
		p := rope.Path{{X: 0, Z: 0}, {X: 0, Z: 1}, {X: c.x, Z: c.z}}
		if got := p.Turn(1, &h) * 180 / math.Pi; !near.Rel(got, c.degrees, 1e-14) {
			t.Errorf("%s: turns by %v degrees, want %v", c.name, got, c.degrees)
		}
		for _, end := range []int{0, 2} {
			if got := p.Turn(end, &h); got != 0 {
				t.Errorf("%s: turns by %v at its end", c.name, got)
			}
		}
	}
}

// The angle between two parts is the same however the path as a whole lies.
func TestTurnOnASlant(t *testing.T) {
	var h rope.Heights
	for _, from := range []float64{0, 20, 65, 110, 200, 290, 345} {
		for _, by := range []float64{0, 15, 90, 140, 179} {
			for _, sense := range []float64{1, -1} {
				z1, x1 := math.Sincos(from * math.Pi / 180)
				z2, x2 := math.Sincos((from + sense*by) * math.Pi / 180)
				p := rope.Path{{X: -2 * x1, Z: -2 * z1}, {}, {X: 3 * x2, Z: 3 * z2}}
				// The ends' places are rounded, and with them the directions.
				if got := p.Turn(1, &h) * 180 / math.Pi; !near.Abs(got, by, 1e-12) {
					t.Errorf("from %v degrees by %v: turns by %v", from, sense*by, got)
				}
			}
		}
	}
	if got := (rope.Path{{X: 1, Z: 2}, {X: 1, Z: 2}, {X: 1, Z: 2}}).Turn(1, &h); got != 0 {
		t.Errorf("where all stops coincide it turns by %v", got)
	}
}
