package load_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// A batten that holds with a drape in the air tips once the drape is on the deck. The pipe
// weighs 2.718 lb/ft, 40.45 kg over 10 m; with it and 100 kg at 2 m the centre is at 2.86 m.
func TestTips(t *testing.T) {
	b := load.Batten{Length: 10, Pipe: pipe, Lines: []load.Line{{At: 3}, {At: 7}}}
	motor := load.Item{Name: "motor", Mass: 100, From: 2, To: 2}
	leg := load.Item{Name: "leg", Mass: 100, From: 7, To: 9, Height: 6, OnDeck: load.Piles}
	standing := leg
	standing.OnDeck = load.Stands
	lifts := motor
	lifts.OnDeck, lifts.Height = load.Stands, 2
	first := lifts
	first.Height = 6
	for _, c := range []struct {
		name     string
		hang     load.Hang
		from, to units.Length
		trim     units.Length
		above    bool
		centre   float64 // 0 where it must not tip
	}{
		{"leg on the deck", load.Hang{motor, leg}, 0, 9, 0, false, 2.86},
		{"leg on the deck, asked from above", load.Hang{motor, leg}, 9, 0, 0, false, 2.86},
		{"leg in the air", load.Hang{motor, leg}, 5, 9, 0, false, 0},
		{"what stands below the range has no part", load.Hang{motor, standing}, 6.001, 9, 0, false, 0},
		{"flat about to lift", load.Hang{motor, standing}, 3, 9, 3, false, 2.86},
		{"at the upper end alone", load.Hang{lifts, standing}, 1, 2, 0, false, 0},
		{"just above a trim in between", load.Hang{lifts, standing}, 1, 2.5, 2, true, 2.86},
		{"just above a trim in between, asked from above", load.Hang{lifts, standing}, 2.5, 1, 2, true, 2.86},
		{"just above the lower end", load.Hang{lifts, standing}, 2, 2.5, 2, true, 2.86},
		{"both lift off together", load.Hang{first, standing}, 0, 9, 0, false, 0},
		{"a single trim, below the deck as in a pit", load.Hang{motor, leg}, -1, -1, -1, false, 2.86},
	} {
		r, err := b.Rig(c.hang)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		err = r.Tips(c.from, c.to)
		var tip *load.TipError
		switch {
		case c.centre == 0 && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.centre == 0:
		case !errors.As(err, &tip):
			t.Errorf("%s: %v, want a TipError", c.name, err)
		case tip.Trim != c.trim || tip.Above != c.above || tip.First != 3 || tip.Last != 7:
			t.Errorf("%s: %+v", c.name, tip)
		default:
			near(t, c.name, float64(tip.Centre), c.centre, 0.01)
		}
	}
}

func TestTipErrorSays(t *testing.T) {
	b := load.Batten{Length: 10, Pipe: pipe, Lines: []load.Line{{At: 3}, {At: 7}}}
	h := load.Hang{{Mass: 100, From: 2, To: 2}, {Mass: 100, From: 8, To: 8, Height: 6, OnDeck: load.Piles}}
	_, err := b.Share(h, 0)
	var tip *load.TipError
	if !errors.As(err, &tip) {
		t.Fatalf("%v, want a TipError", err)
	}
	for _, part := range []string{"the batten would tip at trim 0", ": the centre of gravity, 9' ", ", is outside the outermost lines, ", "(3 m) to ", "(7 m)"} {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("%q says nothing of %q", err, part)
		}
	}
	if _, err := b.Share(h, 6); err != nil {
		t.Errorf("in the air: %v", err)
	}
	tip.Above = true
	if !strings.Contains(tip.Error(), "the batten would tip just above trim 0") {
		t.Error(tip)
	}
	tip.Last = tip.First
	if !strings.Contains(tip.Error(), "is not under the only line, ") {
		t.Error(tip)
	}
	r, err := b.Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	for field, ask := range map[string][2]units.Length{"from": {units.Length(math.NaN()), 1}, "to": {1, units.Length(math.Inf(1))}} {
		var f *units.FieldError
		if err := r.Tips(ask[0], ask[1]); !errors.As(err, &f) || f.Field != field || !errors.Is(err, units.ErrNotFinite) {
			t.Errorf("%s not finite: %v", field, err)
		}
	}
}

// TestPropTips: over a range it tips if and only if it does at some trim of it, and nowhere
// further out than where it says.
func TestPropTips(t *testing.T) {
	tipped, held := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawRig(t)
		r, err := b.Rig(h)
		if err != nil {
			t.Fatal(err)
		}
		from := units.Length(rapid.Float64Range(-1, 13).Draw(t, "from"))
		to := from + units.Length(rapid.Float64Range(0, 5).Draw(t, "range"))
		out := func(centre units.Length) units.Length {
			return max(b.Lines[0].At-centre, centre-b.Lines[len(b.Lines)-1].At)
		}
		err = r.Tips(from, to)
		var tip *load.TipError
		furthest := units.Length(1e-6)
		if errors.As(err, &tip) {
			tipped++
			furthest = out(tip.Centre) + 1e-9
			if tip.Trim < from || tip.Trim > to {
				t.Fatalf("%v is outside %v to %v", tip, from, to)
			}
			at := tip.Trim
			if tip.Above {
				at = units.Length(math.Nextafter(float64(at), 99))
			}
			if _, err := r.Share(at); !errors.As(err, &tip) {
				t.Fatalf("it does not at %v: %v", at, err)
			}
		} else {
			held++
		}
		trims := append(r.Breaks(), r.Turns(from, to)...)
		for k := range 101 {
			trims = append(trims, from+(to-from).Scale(float64(k)/100))
		}
		for _, b := range r.Breaks() {
			trims = append(trims, units.Length(math.Nextafter(float64(b), 99)))
		}
		for _, trim := range trims {
			if trim < from || trim > to {
				continue
			}
			if got := out(r.Centre(trim)); got > furthest {
				t.Fatalf("at %v it is %v out, said %v", trim, got, err)
			}
			_, shared := r.Share(trim)
			if err == nil && shared != nil || (shared == nil) != (r.Tips(trim, trim) == nil) {
				t.Fatalf("at %v: %v; over the range: %v", trim, shared, err)
			}
		}
	})
	if tipped == 0 || held == 0 {
		t.Errorf("%d tipped, %d held: the draw does not test what it should", tipped, held)
	}
}
