package load_test

import (
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// A point that does not rove is one more item: with it at one place everything is as it then is shared, and with no mass as it is shared now.
func TestEnvelopeOfOnePlace(t *testing.T) {
	b, h := fiveLines(), load.Hang{{Mass: 80, From: 3, To: 9}}
	r, err := b.Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		mass     units.Mass
		from, to units.Length
	}{{0, 1, 9}, {0, 5, 5}, {120, 0, 0}, {120, 5, 5}, {120, 12.8, 12.8}} {
		e, err := r.Envelope(4, c.mass, c.from, c.to)
		if err != nil {
			t.Fatal(err)
		}
		more := h
		if c.mass > 0 {
			more = with(h, c.mass, c.from)
		}
		s, err := b.Share(more, 4)
		if err != nil {
			t.Fatal(err)
		}
		for i, l := range s.Lines {
			near(t, "most", float64(e.Lines[i].Most.Tension), float64(l.Tension), 1e-6)
			near(t, "least", float64(e.Lines[i].Least.Tension), float64(l.Tension), 1e-6)
		}
		near(t, "sagging", float64(e.Sagging.Moment), float64(s.Sagging.Moment), 1e-6)
		near(t, "hogging", float64(e.Hogging.Moment), float64(s.Hogging.Moment), 1e-6)
		near(t, "stress", float64(e.Stress), float64(s.Stress), 1)
	}
}
