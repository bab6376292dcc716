package load_test

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Every bound of a description at its edge: what lies on it is taken, what lies beyond is refused at that field.
func TestBoundsOfADescription(t *testing.T) {
	end, half := float64(fiveLines().Length), float64(pipe.Outer)/2
	const micrometre = 1e-6
	for _, c := range []struct {
		name, field string
		on, beyond  float64
		kind        error
		set         func(b *load.Batten, h load.Hang, v float64)
	}{
		{"longest batten", "batten.length", 1000, 1000.5, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Length = units.Length(v) }},
		{"wall of a solid bar", "batten.pipe.wall", math.Nextafter(half, 1), half * 1.001, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Pipe.Wall = units.Length(v) }},
		{"line off the near end", "batten.lines[0].at", -micrometre, -2 * micrometre, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Lines[0].At = units.Length(v) }},
		{"line off the far end", "batten.lines[4].at", end + micrometre, end + 2*micrometre, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Lines[4].At = units.Length(v) }},
		{"lines 10 mm apart, but for a micrometre", "batten.lines[1].at", float64(10*units.Millimetre - 0.001*units.Millimetre), 0.01 - 2*micrometre, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Lines[0].At, b.Lines[1].At = 0, units.Length(v) }},
		{"lines a micrometre apart", "batten.lines[1].at", 0.01, micrometre, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Lines[0].At, b.Lines[1].At = 0, units.Length(v) }},
		{"lines at one place", "batten.lines[1].at", 0.01, 0.9 * micrometre, units.ErrDuplicate, func(b *load.Batten, _ load.Hang, v float64) { b.Lines[0].At, b.Lines[1].At = 0, units.Length(v) }},
		{"line too long", "batten.lines[1].long", 10, 10.001, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Lines[1].Long = units.Length(v) }},
		{"line too short", "batten.lines[1].long", -10, -10.001, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) { b.Lines[1].Long = units.Length(v) }},
		{"path of a line", "batten.lines[1].path", 10_000, 10_000.5, units.ErrOutOfRange, func(b *load.Batten, _ load.Hang, v float64) {
			b.Lines[1].EA, b.Lines[1].Path = 1e6, units.Length(v)
		}},
		{"item off the near end", "hang[0].from", -micrometre, -2 * micrometre, units.ErrOutOfRange, func(_ *load.Batten, h load.Hang, v float64) { h[0].From = units.Length(v) }},
		{"item off the far end", "hang[0].to", end + micrometre, end + 2*micrometre, units.ErrOutOfRange, func(_ *load.Batten, h load.Hang, v float64) { h[0].To = units.Length(v) }},
		{"item that leans out", "hang[0].taper", 1, 1.001, units.ErrOutOfRange, func(_ *load.Batten, h load.Hang, v float64) { h[0].Taper = v }},
		{"item that leans in", "hang[0].taper", -1, -1.001, units.ErrOutOfRange, func(_ *load.Batten, h load.Hang, v float64) { h[0].Taper = v }},
		{"item that ends where it begins", "hang[0].to", 1, 0.999, units.ErrOutOfRange, func(_ *load.Batten, h load.Hang, v float64) { h[0].To = units.Length(v) }},
	} {
		rig := func(v float64) error {
			b, h := fiveLines(), load.Hang{{Mass: 10, From: 1, To: 2}}
			c.set(&b, h, v)
			_, err := b.Rig(h)
			return err
		}
		if err := rig(c.on); err != nil {
			t.Errorf("%s: %v is refused: %v", c.name, c.on, err)
		}
		var fault *units.FieldError
		if err := rig(c.beyond); !errors.As(err, &fault) || fault.Field != c.field || !errors.Is(err, c.kind) {
			t.Errorf("%s: with %v %v, want %s %v", c.name, c.beyond, err, c.field, c.kind)
		}
	}
}

// What a place ought to be is told with the batten's length, where that is known.
func TestPlacesOnABattenOfUnknownLength(t *testing.T) {
	for _, c := range []struct {
		name   string
		length units.Length
		want   string
	}{
		{"no length", 0, "0 or more"},
		{"a length that is none", -3, "0 or more"},
		{"half a metre", 0.5, "(0.5 m), on the batten"},
	} {
		b := load.Batten{Length: c.length, Pipe: pipe, Lines: []load.Line{{At: 0.25}}}
		_, err := b.Rig(load.Hang{{Mass: 1, From: -1, To: 0.25}})
		if err == nil {
			t.Fatalf("%s: taken", c.name)
		}
		told := false
		for line := range strings.Lines(err.Error()) {
			if strings.HasPrefix(line, "hang[0].from") {
				told = strings.Contains(line, c.want)
			}
		}
		if !told {
			t.Errorf("%s: %v does not say %q of hang[0].from", c.name, err, c.want)
		}
	}
}

// A place that is off the end by less than a micrometre, as after adding up feet and inches, is taken as the end: every answer is the
// same to the last bit.
func TestPlacesARoundingOff(t *testing.T) {
	b := fiveLines()
	b.Lines[0].At = 0
	end := b.Length
	answers := func(near, far units.Length) []any {
		b := fiveLines()
		b.Lines[0].At, b.Lines[4].At = near, far
		b.Length = end
		r, err := b.Rig(load.Hang{{Mass: 20, From: near, To: 3}, {Mass: 5, From: far, To: far}, {Mass: 1, From: near, To: near}})
		if err != nil {
			t.Fatal(err)
		}
		share, err1 := r.Share(4)
		inside, err := fiveLines().Rig(nil) // its ends stand beyond the lines, and give
		if err != nil {
			t.Fatal(err)
		}
		nearGive, err2 := inside.Give(4, 3, near)
		farGive, err3 := inside.Give(4, 3, far)
		cuts, err4 := r.Cuts(4, near, far)
		most, err5 := r.Envelope(4, 3, near, far)
		allowed, err6 := r.PointAllowed(4, near, near, load.Limits{Line: 2000})
		if err := errors.Join(err1, err2, err3, err4, err5, err6); err != nil {
			t.Fatal(err)
		}
		for i := range cuts {
			cuts[i].At = 0 // as asked
		}
		return []any{share, nearGive, farGive, cuts, most, allowed}
	}
	meant, off := answers(0, end), answers(-5e-7, end+5e-7)
	for i := range meant {
		if !reflect.DeepEqual(meant[i], off[i]) {
			t.Errorf("%+v, want %+v", off[i], meant[i])
		}
	}
}

// What is spread over less than a micrometre is a point, wherever it is.
func TestShortSpreadIsAPoint(t *testing.T) {
	for _, at := range []units.Length{0, 5, 12} {
		short, err := fiveLines().Share(load.Hang{{Mass: 100, From: at, To: at + 8e-7}}, 4)
		if err != nil {
			t.Fatal(err)
		}
		middle := at + (at + 8e-7 - at).Scale(0.5)
		point, err := fiveLines().Share(load.Hang{{Mass: 100, From: middle, To: middle}}, 4)
		if err != nil || !reflect.DeepEqual(short, point) {
			t.Errorf("at %v: %+v, want %+v; %v", at, short, point, err)
		}
	}
}

// Limits of less than one newton and one pascal are limits.
func TestSmallLimits(t *testing.T) {
	s := load.Share{Lines: []load.LineShare{{Tension: 0.5}, {Tension: 0.1, Limit: 0.1}}, Stress: 0.4}
	if u := s.Use(load.Limits{Line: 0.8, Stress: 0.5}); u != (load.Use{Line: 1, Worst: 1, Pipe: 0.8}) {
		t.Errorf("%+v", u)
	}
	s.Lines[1].Limit = 0
	if u := s.Use(load.Limits{Line: 0.8}); u != (load.Use{Line: 0.625, Worst: 0}) {
		t.Errorf("%+v", u)
	}
	b := fiveLines()
	b.Lines[2].Limit = 0.5 * units.Newton
	r, err := b.Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	if p, err := r.PointAllowed(1, 2, 3, load.Limits{}); err != nil || p.Bound != load.BoundByLine {
		t.Errorf("%+v %v: want the third line's own limit to bind", p, err)
	}
}
