package load_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// threeLines is a batten of three lines 10 m apart on a pipe whose own weight hogs it most, over the middle line.
func threeLines() load.Batten {
	return load.Batten{
		Length: 22 * units.Metre, Lines: load.Spaced(1*units.Metre, 10*units.Metre, 3),
		Pipe: load.Tube{Outer: 60.3 * units.Millimetre, Wall: 3.9 * units.Millimetre, Density: load.SteelDensity, Modulus: load.SteelModulusEN},
	}
}

// Where the pipe hogs most, a point that roves is bound by that, in the middle of nowhere: no place along the stretch exceeds
// the limit under the mass allowed, and one does under a little more. The places are gone through one by one.
func TestPointAllowedWhereThePipeHogs(t *testing.T) {
	r, err := threeLines().Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	const trim = 5 * units.Metre
	bare, err := r.Share(trim)
	if err != nil {
		t.Fatal(err)
	}
	if -bare.Hogging.Moment < bare.Sagging.Moment {
		t.Fatalf("hogging %v, sagging %v: not what is to be tested", bare.Hogging, bare.Sagging)
	}
	limits := load.Limits{Stress: bare.Stress.Scale(1.02)}
	got, err := r.PointAllowed(trim, 1*units.Metre, 11*units.Metre, limits)
	if err != nil || got.Bound != load.BoundByPipe || !(got.Mass > 0) {
		t.Fatalf("%+v, %v: want a mass bound by the pipe", got, err)
	}
	worst := func(mass units.Mass) (most float64) {
		for k := range 501 {
			at := 1*units.Metre + (10 * units.Metre).Scale(float64(k)/500)
			more, err := threeLines().Rig(load.Hang{{Mass: mass, From: at, To: at}})
			if err != nil {
				t.Fatal(err)
			}
			s, err := more.Share(trim)
			if err != nil {
				t.Fatal(err)
			}
			most = max(most, s.Use(limits).Pipe)
		}
		return most
	}
	if used := worst(got.Mass); used > 1+1e-9 {
		t.Errorf("%v uses %v of the limit", got.Mass, used)
	}
	if used := worst(got.Mass.Scale(1.01)); used <= 1 {
		t.Errorf("a hundredth more than %v uses only %v of the limit", got.Mass, used)
	}
}

// How far the centre of gravity may lie outside the lines: a micrometre beside one line, nothing but rounding outside two.
func TestHowFarOutsideTheLines(t *testing.T) {
	pipe := load.Tube{Outer: 48.3 * units.Millimetre, Wall: 3.2 * units.Millimetre, Density: load.SteelDensity, Modulus: load.SteelModulusEN}
	for _, c := range []struct {
		name  string
		lines []load.Line
		held  bool
	}{
		{"one line under the middle", []load.Line{{At: 3}}, true},
		{"half a micrometre off", []load.Line{{At: 3 + 5e-7}}, true},
		{"two micrometres off", []load.Line{{At: 3 + 2e-6}}, false},
		{"two micrometres off the other way", []load.Line{{At: 3 - 2e-6}}, false},
		{"two lines, one of them under the middle", []load.Line{{At: 1}, {At: 3}}, true},
		{"two lines, half a micrometre short of it", []load.Line{{At: 1}, {At: 3 - 5e-7}}, false},
		{"two lines, half a micrometre past it", []load.Line{{At: 3 + 5e-7}, {At: 5}}, false},
		{"five lines, all short of it", []load.Line{{At: 0.5}, {At: 1}, {At: 1.5}, {At: 2}, {At: 3 - 5e-7}}, false},
	} {
		r, err := load.Batten{Length: 6, Pipe: pipe, Lines: c.lines}.Rig(nil)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		var tip *load.TipError
		if _, err := r.Share(4); (err == nil) != c.held || err != nil && !errors.As(err, &tip) {
			t.Errorf("%s: %v, held should be %t", c.name, err, c.held)
		}
		if err := r.Tips(4, 4); (err == nil) != c.held {
			t.Errorf("%s: tips %v, held should be %t", c.name, err, c.held)
		}
	}
}

// A share without lines, or without limits, has no worst line; of equal ones the first is given, at rounding's distance too.
func TestWorstLine(t *testing.T) {
	if i, line := (load.Share{}).Worst(); i != -1 || line != (load.LineShare{}) {
		t.Errorf("without lines: %d, %+v", i, line)
	}
	s := load.Share{Lines: []load.LineShare{{Tension: 5}, {Tension: 7}, {Tension: units.Force(math.Nextafter(7, 8))}, {Tension: 6}}}
	if i, line := s.Worst(); i != 1 || line.Tension != 7 {
		t.Errorf("line %d with %v, want the first of 7 N", i, line.Tension)
	}
	if u := s.Use(load.Limits{}); u != (load.Use{Worst: -1}) {
		t.Errorf("without limits: %+v", u)
	}
	if u := s.Use(load.Limits{Line: 14}); u.Worst != 1 || u.Line != 0.5 || u.Pipe != 0 {
		t.Errorf("%+v, want half of the limit in the first of 7 N", u)
	}
	s.Lines[3].Limit = 4
	if u := s.Use(load.Limits{Line: 14}); u.Worst != 3 || u.Line != 1.5 {
		t.Errorf("%+v, want 1.5 of the last line's own limit", u)
	}
}

// EN 10220 reckons masses per length with 7.85 kg/dm³ (from memory); its tables are rounded too far to tell that from 7.851.
func TestSteelDensity(t *testing.T) {
	if got := load.SteelDensity.In(units.KilogramPerCubicMetre); got != 7850 {
		t.Errorf("%v kg/m³, want 7850", got)
	}
}

// A mass that would tip the batten, or one that tips already: the error says where the centre of gravity would be, and nothing
// is answered beside it.
func TestMoreWouldTip(t *testing.T) {
	b := load.Batten{Length: 10, Pipe: pipe, Lines: []load.Line{{At: 3}, {At: 7}}}
	r, err := b.Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	bare := float64(b.BareMass())
	const mass = 200.0
	for _, at := range []float64{0, 10} {
		centre := (bare*5 + mass*at) / (bare + mass)
		give, err := r.Give(4, mass, units.Length(at))
		var tip *load.TipError
		if !errors.As(err, &tip) || give != 0 || math.Abs(float64(tip.Centre)-centre) > 1e-9 {
			t.Errorf("give at %v: %v, %v: want nothing, and the centre at %v", at, give, err, centre)
		}
		tip = nil
		if _, err := r.Envelope(4, mass, 5, units.Length(at)); !errors.As(err, &tip) || math.Abs(float64(tip.Centre)-centre) > 1e-9 {
			t.Errorf("envelope to %v: %v: want the centre at %v", at, err, centre)
		}
	}
	r, err = b.Rig(load.Hang{{Mass: mass, From: 0, To: 0}})
	if err != nil {
		t.Fatal(err)
	}
	var tip *load.TipError
	if give, err := r.Give(4, 1, 5); give != 0 || !errors.As(err, &tip) || tip.Centre >= 3 {
		t.Errorf("one that tips already gives %v, %v", give, err)
	}
}

// A line may give up to a million times as much as a span of the pipe would, L³/EI with the mean span L, wherever the lines are.
func TestLineThatHardlyHolds(t *testing.T) {
	ei := pipe.Modulus.In(units.Pascal) * pipe.SecondMoment().In(units.MetreToTheFourth)
	for _, lines := range [][]load.Line{
		{{At: 4}, {At: 9}}, {{At: 3}, {At: 6}, {At: 10}}, {{At: 2}, {At: 4}, {At: 7}, {At: 8}, {At: 10}},
	} {
		n := len(lines)
		span := float64(lines[n-1].At-lines[0].At) / float64(n-1)
		for _, c := range []struct {
			times  float64
			refuse bool
			told   string
		}{{0.99e6, false, ""}, {1.01e6, true, "not 1e+06 times"}, {1.26e6, true, "not 1.3e+06 times"}} {
			const path = 10.0
			b := load.Batten{Length: 12, Pipe: pipe, Lines: append([]load.Line(nil), lines...)}
			b.Lines[n-1].Path, b.Lines[n-1].EA = path, units.Force(path/(c.times*span*span*span/ei))
			_, err := b.Rig(nil)
			var fault *units.FieldError
			if errors.As(err, &fault) != c.refuse || c.refuse && (!strings.HasSuffix(fault.Field, "].ea") || !strings.HasSuffix(fault.Want, c.told) || !errors.Is(err, units.ErrOutOfRange)) {
				t.Errorf("%d lines, %v times a span: %v", n, c.times, err)
			}
		}
	}
}

// Trim errors may come to a hundred million times the batten's weight, as 12EI·d/l³ with the shortest span l: what a span clamped at both
// ends asks for when one end sinks by d (any handbook).
func TestTrimErrorsThatThePipeFollows(t *testing.T) {
	ei := pipe.Modulus.In(units.Pascal) * pipe.SecondMoment().In(units.MetreToTheFourth)
	for _, c := range []struct {
		times  float64
		refuse bool
	}{{0.99e8, false}, {1.01e8, true}} {
		for _, sign := range []float64{1, -1} {
			b := load.Batten{Length: 6, Pipe: pipe, Lines: []load.Line{{At: 1}, {At: 1.01}, {At: 5}}}
			span := float64(b.Lines[1].At - b.Lines[0].At)
			b.Lines[2].Long = units.Length(sign * c.times * float64(b.BareMass()) * 9.80665 * span * span * span / (12 * ei))
			_, err := b.Rig(nil)
			var fault *units.FieldError
			if errors.As(err, &fault) != c.refuse || c.refuse && (fault.Field != "batten.lines" || !errors.Is(err, units.ErrOutOfRange)) {
				t.Errorf("%v times its weight, off by %v: %v", c.times, b.Lines[2].Long, err)
			}
		}
	}
}

// All that is wrong with a question is told at once, the trim among it.
func TestFaultsOfAQuestionTogether(t *testing.T) {
	r, err := fiveLines().Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	nan := units.Length(math.NaN())
	_, give := r.Give(nan, -1, 99)
	_, cuts := r.Cuts(nan, 1, 99)
	_, most := r.PointAllowed(nan, -9, 99, load.Limits{})
	for name, c := range map[string]struct {
		err    error
		fields []string
	}{"give": {give, []string{"trim", "mass", "at"}}, "cuts": {cuts, []string{"trim", "at[1]"}}, "point allowed": {most, []string{"trim", "from", "to", "limits"}}} {
		for _, field := range c.fields {
			if c.err == nil || !strings.Contains("\n"+c.err.Error(), "\n"+field+":") {
				t.Errorf("%s: %v says nothing of %s", name, c.err, field)
			}
		}
	}
}

// A fault is told once, with the figures that it is about.
func TestFaultsSayTheFigures(t *testing.T) {
	for _, c := range []struct {
		name, field, value, want string
		mend                     func(b *load.Batten, h load.Hang)
	}{
		{"begins beyond the end, ends on the batten", "hang[0].from", "(20 m)", "on the batten", func(b *load.Batten, h load.Hang) { h[0].From = 20 }},
		{"ends before the start", "hang[0].to", "(-2 m)", "on the batten", func(b *load.Batten, h load.Hang) { h[0].To = -2 }},
		{"beyond the longest batten", "hang[0].to", "(1001 m)", "(1000 m), on the batten", func(b *load.Batten, h load.Hang) { b.Length, h[0].To = 1000, 1001 }},
		{"leans", "hang[0].taper", "1.0625", "-1 to 1", func(b *load.Batten, h load.Hang) { h[0].Taper = 1.0625 }},
		{"lines out of order by 10 mm", "batten.lines[2].at", "(4.99 m)", "in order", func(b *load.Batten, h load.Hang) { b.Lines[1].At, b.Lines[2].At = 5, 4.99 }},
		{"a line beside one that is nowhere", "batten.lines[1].at", "NaN", "finite", func(b *load.Batten, h load.Hang) { b.Lines[1].At = units.Length(math.NaN()) }},
		{"begins without end", "hang[0].from", "+Inf", "finite", func(b *load.Batten, h load.Hang) { h[0].From = units.Length(math.Inf(1)) }},
		{"lines out of order", "batten.lines[2].at", "(3 m)", "(5 m)", func(b *load.Batten, h load.Hang) { b.Lines[1].At, b.Lines[2].At = 5, 3 }},
		{"begins nowhere", "hang[0].from", "NaN", "finite", func(b *load.Batten, h load.Hang) { h[0].From = units.Length(math.NaN()) }},
		{"reaches down no number", "hang[0].height", "NaN", "finite", func(b *load.Batten, h load.Hang) {
			h[0].OnDeck, h[0].Height = load.Piles, units.Length(math.NaN())
		}},
		{"less than no diameter", "batten.pipe.outer", "(-1 m)", "more than 0", func(b *load.Batten, h load.Hang) { b.Pipe.Outer = -1 }},
		{"no diameter", "batten.pipe.outer", "", "outer diameter", func(b *load.Batten, h load.Hang) { b.Pipe.Outer = 0 }},
		{"a trim error beyond all", "batten.lines[1].long", "(-11 m)", "(-10 m) to", func(b *load.Batten, h load.Hang) { b.Lines[1].Long = -11 }},
	} {
		b, h := fiveLines(), load.Hang{{Name: "border", Mass: 10, From: 1, To: 2}}
		c.mend(&b, h)
		_, err := b.Rig(h)
		var fault *units.FieldError
		if !errors.As(err, &fault) || fault.Field != c.field || !strings.Contains(fault.Value, c.value) || !strings.Contains(fault.Want, c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v; want one fault, of %s, %s, %q", c.name, err, c.field, c.value, c.want)
		}
	}
	if _, err := fiveLines().Rig(load.Hang{{Mass: -1}}); err == nil || strings.Contains(err.Error(), "\"") {
		t.Errorf("%v: an item without a name has none in its fault either", err)
	}
}
