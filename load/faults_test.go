package load_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func TestFaults(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name, field, want string
		kind              error
		mend              func(b *load.Batten, h load.Hang)
	}{
		{"no lines", "batten.lines", "at least one", units.ErrMissing, func(b *load.Batten, h load.Hang) { b.Lines = nil }},
		{"too many lines", "batten.lines", "at most 64", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Lines = load.Spaced(0, 0.1, math.MaxInt) }},
		{"line beyond the end", "batten.lines[4].at", "on the batten", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Lines[4].At = 50 * units.Foot }},
		{"line before the start", "batten.lines[0].at", "on the batten", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Lines[0].At = -1 }},
		{"line nowhere", "batten.lines[1].at", "finite", units.ErrNotFinite, func(b *load.Batten, h load.Hang) { b.Lines[1].At = units.Length(nan) }},
		{"two lines at one place", "batten.lines[2].at", "a place of its own", units.ErrDuplicate, func(b *load.Batten, h load.Hang) { b.Lines[2].At = b.Lines[1].At }},
		{"two lines too close", "batten.lines[2].at", "from the line before it", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Lines[2].At = b.Lines[1].At + 0.009 }},
		{"lines out of order", "batten.lines[2].at", "in order", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Lines[1], b.Lines[2] = b.Lines[2], b.Lines[1] }},
		{"no length", "batten.length", "length of the batten", units.ErrMissing, func(b *load.Batten, h load.Hang) { b.Length = 0 }},
		{"negative length", "batten.length", "more than 0", units.ErrNegative, func(b *load.Batten, h load.Hang) { b.Length = -5 }},
		{"endless length", "batten.length", "finite", units.ErrNotFinite, func(b *load.Batten, h load.Hang) { b.Length = units.Length(inf) }},
		{"absurd length", "batten.length", "at most", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Length = 1e4 }},
		{"no pipe", "batten.pipe.outer", "outer diameter", units.ErrMissing, func(b *load.Batten, h load.Hang) { b.Pipe = load.Tube{} }},
		{"wall too thick", "batten.pipe.wall", "half the outer", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Pipe.Wall = 1 * units.Inch }},
		{"no modulus", "batten.pipe.modulus", "modulus of elasticity", units.ErrMissing, func(b *load.Batten, h load.Hang) { b.Pipe.Modulus = 0 }},
		{"negative density", "batten.pipe.density", "more than 0", units.ErrNegative, func(b *load.Batten, h load.Hang) { b.Pipe.Density = -1 }},
		{"negative fittings", "batten.fittings", "0 or more", units.ErrNegative, func(b *load.Batten, h load.Hang) { b.Fittings = -1 }},
		{"no mass", "hang[0].mass", "the mass of the item", units.ErrMissing, func(b *load.Batten, h load.Hang) { h[0].Mass = 0 }},
		{"negative mass", "hang[0].mass", "more than 0", units.ErrNegative, func(b *load.Batten, h load.Hang) { h[0].Mass = -5 }},
		{"mass not a number", "hang[0].mass", "finite", units.ErrNotFinite, func(b *load.Batten, h load.Hang) { h[0].Mass = units.Mass(nan) }},
		{"absurd mass", "hang[0].mass", "at most", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { h[0].Mass = 1e13 }},
		{"off the near end", "hang[0].from", "on the batten", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { h[0].From = -1 }},
		{"off the far end", "hang[0].to", "on the batten", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { h[0].To = 43 * units.Foot }},
		{"ends before it begins", "hang[0].to", "or more", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { h[0].From, h[0].To = 3, 2 }},
		{"above the batten", "hang[0].below", "0 or more", units.ErrNegative, func(b *load.Batten, h load.Hang) { h[0].Below = -1 }},
		{"piles with no height", "hang[0].height", "an item that piles", units.ErrMissing, func(b *load.Batten, h load.Hang) { h[0].OnDeck = load.Piles }},
		{"stands with no height", "hang[0].height", "an item that stands", units.ErrMissing, func(b *load.Batten, h load.Hang) { h[0].OnDeck = load.Stands }},
		{"hangs with a negative height", "hang[0].height", "0 or more", units.ErrNegative, func(b *load.Batten, h load.Hang) { h[0].Height = -1 }},
		{"begins nowhere", "hang[0].from", "finite", units.ErrNotFinite, func(b *load.Batten, h load.Hang) { h[0].From = units.Length(nan) }},
		{"leans beyond all", "hang[0].taper", "-1 to 1", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { h[0].Taper = 1.01 }},
		{"leans beyond all the other way", "hang[0].taper", "-1 to 1", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { h[0].Taper = -1.01 }},
		{"a line too many", "batten.lines", "at most 64", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Lines = load.Spaced(0, 0.1, 65) }},
		{"longer than the longest", "batten.length", "at most", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) { b.Length = 1000.001 }},
		{"reaches down beyond all sense", "hang[0].height", "at most", units.ErrOutOfRange, func(b *load.Batten, h load.Hang) {
			h[0].Below, h[0].Height, h[0].OnDeck = 1e12*units.Metre, 1e12*units.Metre, load.Piles
		}},
		{"does what", "hang[0].on_deck", "hangs, piles or stands", units.ErrUnknown, func(b *load.Batten, h load.Hang) { h[0].OnDeck = 7 }},
		{"a drape without sense", "hang[0].mass", "the mass of the item", units.ErrMissing, func(b *load.Batten, h load.Hang) {
			h[0] = load.Drape{Width: 2, Drop: 2, Cloth: 1, Fullness: -0.5}.Item("border", 1)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, h := fiveLines(), load.Hang{{Name: "border", Mass: 10, From: 1, To: 2}}
			c.mend(&b, h)
			r, err := b.Rig(h)
			if r != nil || err == nil {
				t.Fatal("rigged")
			}
			var f *units.FieldError
			if !errors.As(err, &f) || f.Field != c.field || !strings.Contains(f.Want, c.want) || !errors.Is(f, c.kind) {
				t.Errorf("%+v, want field %s, %q, %v", f, c.field, c.want, c.kind)
			}
			if strings.HasPrefix(c.field, "hang") && f.Of != `"border"` {
				t.Errorf("of %q", f.Of)
			}
			if c.field == "batten.length" && strings.Contains(err.Error(), "\n") {
				t.Errorf("%v: where the length is not known nothing is off the batten", err)
			}
			if _, err := b.Share(h, 1); err == nil {
				t.Error("shared")
			}
		})
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	b := fiveLines()
	b.Length, b.Pipe.Wall, b.Lines[3].At = 0, -1, units.Length(math.NaN())
	_, err := b.Rig(load.Hang{{Mass: 1}, {Name: "x", Mass: -1, Below: -1}})
	for _, field := range []string{"batten.length:", "batten.pipe.wall:", "batten.lines[3].at:", `hang[1].mass ("x"):`, `hang[1].below ("x"):`} {
		if !strings.Contains(err.Error(), field) {
			t.Errorf("%v\nsays nothing of %s", err, field)
		}
	}
}

func TestTooManyItems(t *testing.T) {
	item := load.Item{Name: "lamp", Mass: 1, From: 1, To: 1}
	for n, want := range map[int]error{load.MaxItems: nil, load.MaxItems + 1: units.ErrOutOfRange} {
		_, err := fiveLines().Rig(slices.Repeat(load.Hang{item}, n))
		if !errors.Is(err, want) {
			t.Errorf("%d items: error %v, want %v", n, err, want)
		}
	}
}

// What stands just at a bound is taken.
func TestAtTheBounds(t *testing.T) {
	for _, c := range []struct {
		name string
		mend func(b *load.Batten, h load.Hang)
	}{
		{"as many lines as there may be", func(b *load.Batten, h load.Hang) { b.Lines = load.Spaced(0, 0.1, load.MaxLines) }},
		{"one line", func(b *load.Batten, h load.Hang) { b.Lines = b.Lines[2:3] }},
		{"the longest batten", func(b *load.Batten, h load.Hang) { b.Length = 1000 }},
		{"leans wholly to the left", func(b *load.Batten, h load.Hang) { h[0].Taper = -1 }},
		{"leans wholly to the right", func(b *load.Batten, h load.Hang) { h[0].Taper = 1 }},
		{"a point", func(b *load.Batten, h load.Hang) { h[0].From = h[0].To }},
		{"a point at the far end", func(b *load.Batten, h load.Hang) { h[0].From, h[0].To = b.Length, b.Length }},
		{"a solid bar", func(b *load.Batten, h load.Hang) { b.Pipe.Wall = b.Pipe.Outer.Scale(0.5) }},
	} {
		b, h := fiveLines(), load.Hang{{Name: "border", Mass: 10, From: 1, To: 2}}
		c.mend(&b, h)
		if _, err := b.Rig(h); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// A trim that is no number is told of by every question that takes one, and nothing is answered.
func TestTrimThatIsNoNumber(t *testing.T) {
	r, err := fiveLines().Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, trim := range []units.Length{units.Length(math.NaN()), units.Length(math.Inf(1)), units.Length(math.Inf(-1))} {
		for name, ask := range map[string]func() error{
			"share": func() error { _, err := r.Share(trim); return err },
			"give": func() error {
				give, err := r.Give(trim, 10, 3)
				if give != 0 {
					t.Errorf("gives %v", give)
				}
				return err
			},
			"cuts": func() error { _, err := r.Cuts(trim, 3); return err },
		} {
			var fault *units.FieldError
			if err := ask(); !errors.As(err, &fault) || fault.Field != "trim" || !errors.Is(err, units.ErrNotFinite) {
				t.Errorf("%s at %v: %v, want a fault of the trim", name, float64(trim), err)
			}
		}
	}
}
