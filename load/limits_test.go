package load_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// drawReal is a batten and hang as drawRig gives it, sometimes on ropes that stretch, trimmed
// by hand, with leaning items.
func drawReal(t *rapid.T) (load.Batten, load.Hang) {
	b, h := drawRig(t)
	if rapid.Bool().Draw(t, "ropes") {
		for i := range b.Lines {
			b.Lines[i].EA, b.Lines[i].Path = 2000*units.Kilonewton, units.Metre.Scale(30+float64(3*i))
		}
	}
	if rapid.Bool().Draw(t, "trimmed by hand") {
		for i := range b.Lines {
			b.Lines[i].Long = units.Millimetre.Scale(float64(rapid.IntRange(-15, 15).Draw(t, "long")))
		}
	}
	for i := range h {
		if rapid.Bool().Draw(t, "leans") {
			h[i].Taper = float64(rapid.IntRange(-4, 4).Draw(t, "taper")) / 4
		}
	}
	return b, h
}

// with is the hang and a point.
func with(h load.Hang, mass units.Mass, at units.Length) load.Hang {
	return append(append(load.Hang{}, h...), load.Item{Mass: mass, From: at, To: at})
}

// Envelope against the batten rigged anew with the point as one of its items, at many places.
func TestEnvelopeIsWhatOneMoreItemDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawReal(t)
		r, err := b.Rig(h)
		if err != nil {
			t.Fatal(err)
		}
		mass := units.Mass(rapid.Float64Range(1, 300).Draw(t, "mass"))
		x, y := rapid.Float64Range(0, 12).Draw(t, "from"), rapid.Float64Range(0, 12).Draw(t, "to")
		from, to := units.Length(min(x, y)), units.Length(max(x, y))
		const trim = 20
		e, err := r.Envelope(trim, mass, to, from) // in either order
		for k := range 21 {
			at := from + (to - from).Scale(float64(k)/20)
			s, tips := b.Share(with(h, mass, at), trim)
			if err != nil {
				var tip *load.TipError
				if !errors.As(err, &tip) {
					t.Fatal(err)
				}
				if k == 0 || k == 20 {
					continue
				}
				return
			}
			if tips != nil {
				t.Fatalf("with the point at %v: %v", at, tips)
			}
			tol := s.Weight.Scale(1e-7)
			for i, l := range s.Lines {
				if most, least := e.Lines[i].Most.Tension, e.Lines[i].Least.Tension; l.Tension > most+tol || l.Tension < least-tol {
					t.Fatalf("line %d with the point at %v: %v, envelope %v to %v", i, at, l.Tension, least, most)
				}
			}
			if units.Ratio(s.Stress, e.Stress) > 1+1e-6 {
				t.Fatalf("with the point at %v: stress %v, envelope %v", at, s.Stress, e.Stress)
			}
		}
		if err != nil {
			return
		}
		for i, l := range e.Lines {
			for _, c := range []load.TensionWith{l.Most, l.Least} {
				s, err := b.Share(with(h, mass, c.Load), trim)
				if err != nil || units.Abs(s.Lines[i].Tension-c.Tension) > s.Weight.Scale(1e-7) {
					t.Fatalf("line %d with the point at %v: %v %v, want %v", i, c.Load, s.Lines, err, c.Tension)
				}
			}
		}
	})
}

// The point allowed just meets a limit, a little more exceeds it, and less does not.
func TestPointAllowedMeetsALimit(t *testing.T) {
	bound := map[load.Bound]int{}
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawReal(t)
		r, err := b.Rig(h)
		if err != nil {
			t.Fatal(err)
		}
		x, y := rapid.Float64Range(0, 12).Draw(t, "from"), rapid.Float64Range(0, 12).Draw(t, "to")
		from, to := units.Length(min(x, y)), units.Length(max(x, y))
		limits := load.Limits{
			Line:   units.Newton.Scale(rapid.Float64Range(500, 5000).Draw(t, "line limit")),
			Stress: units.Megapascal.Scale(rapid.Float64Range(20, 200).Draw(t, "stress limit")),
		}
		switch rapid.SampledFrom([]string{"both", "lines", "pipe"}).Draw(t, "limited") {
		case "lines":
			limits.Stress = 0
		case "pipe":
			limits.Line = 0
		}
		if rapid.Bool().Draw(t, "hardly limited") {
			limits = load.Limits{Line: limits.Line.Scale(100), Stress: limits.Stress.Scale(100)}
		}
		const trim = 20
		bare, err := r.Share(trim)
		p, errP := r.PointAllowed(trim, from, to, limits)
		if err != nil {
			if errP == nil {
				t.Fatal("it tips as it is")
			}
			return
		}
		if errP != nil {
			t.Fatal(errP)
		}
		used := func(mass units.Mass, at units.Length) float64 {
			s, err := b.Share(with(h, mass, at), trim)
			if err != nil {
				return math.Inf(1)
			}
			u := s.Use(limits)
			return max(u.Line, u.Pipe)
		}
		if u := bare.Use(limits); max(u.Line, u.Pipe) >= 1 {
			if p.Mass != 0 {
				t.Fatalf("%v allowed beside %v used", p.Mass, u)
			}
			return
		}
		bound[p.Bound]++
		if p.Bound == load.BoundByNothing {
			p.Mass = 1e5
			for k := range 11 {
				at := from + (to - from).Scale(float64(k)/10)
				if u := used(p.Mass, at); u > 1 {
					t.Fatalf("bound by nothing, yet %v is used with %v at %v", u, p.Mass, at)
				}
			}
			return
		}
		if p.Mass < 1e-6 {
			return
		}
		if u := used(p.Mass.Scale(1.0001), p.At); u < 1 {
			t.Fatalf("%+v: with a little more at the place named %v is used", p, u)
		}
		for k := range 11 {
			at := from + (to - from).Scale(float64(k)/10)
			for _, share := range []float64{1 - 1e-6, 0.7, 0.2} {
				if u := used(p.Mass.Scale(share), at); u > 1+1e-6 {
					t.Fatalf("%+v: with %v of it at %v %v is used", p, share, at, u)
				}
			}
		}
	})
	for _, what := range []load.Bound{load.BoundByLine, load.BoundByPipe, load.BoundByTipping} {
		if bound[what] == 0 {
			t.Errorf("never bound by %v: %v", what, bound)
		}
	}
}

// A line that is off by what is allowed just meets a limit; by a little more it exceeds it, by less not.
func TestTrimToleranceMeetsALimit(t *testing.T) {
	met, free := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawReal(t)
		r, err := b.Rig(h)
		if err != nil {
			t.Fatal(err)
		}
		const trim = 20
		line := rapid.IntRange(0, len(b.Lines)-1).Draw(t, "line")
		bare, err := r.Share(trim)
		if err != nil {
			if _, errT := r.TrimTolerance(trim, line, load.Limits{Line: 1}); errT == nil {
				t.Fatal("it tips as it is")
			}
			return
		}
		_, worst := bare.Worst()
		limits := load.Limits{Line: worst.Tension.Scale(rapid.Float64Range(1.01, 2).Draw(t, "limit"))}
		if rapid.Bool().Draw(t, "pipe too") {
			limits.Stress = max(bare.Stress.Scale(rapid.Float64Range(1.01, 3).Draw(t, "stress limit")), 1*units.Megapascal)
		}
		tol, err := r.TrimTolerance(trim, line, limits)
		if err != nil {
			t.Fatal(err)
		}
		used := func(off units.Length) (load.Share, float64) {
			c := b
			c.Lines = append([]load.Line{}, b.Lines...)
			c.Lines[line].Long += off
			s, err := c.Share(h, trim)
			if err != nil {
				t.Fatal(err)
			}
			u := s.Use(limits)
			return s, max(u.Line, u.Pipe)
		}
		for _, side := range []struct {
			off  load.Off
			sign float64
		}{{tol.Short, -1}, {tol.Long, 1}} {
			by := side.off.By.Scale(side.sign)
			if side.off.Bound == load.BoundByNothing {
				free++
				for _, off := range []float64{0.001, 0.01, 0.1, 1, 5} {
					if _, u := used(units.Length(side.sign * off)); u > 1+1e-6 {
						t.Fatalf("bound by nothing, yet %v is used when off by %v", u, side.sign*off)
					}
				}
				continue
			}
			met++
			if side.off.By > 4 {
				continue
			}
			if _, u := used(by); math.Abs(u-1) > 1e-6 {
				t.Fatalf("off by %v: %v is used", by, u)
			}
			if _, u := used(by.Scale(1.001) + units.Length(side.sign*1e-9)); u < 1 {
				t.Fatalf("off by a little more than %v: %v is used", by, u)
			}
			for _, share := range []float64{0.9, 0.5, 0.1} {
				if _, u := used(by.Scale(share)); u > 1+1e-9 {
					t.Fatalf("off by %v of %v: %v is used", share, by, u)
				}
			}
		}
	})
	if met == 0 || free == 0 {
		t.Errorf("a limit was met %d times and not %d times: the draw does not test what it should", met, free)
	}
}

// Two equal spans of length L of weightless pipe with the middle line long by d: it carries 6EI·d/L³ less, and each
// other one half of that more (any text on the three-moment equation).
func TestTrimToleranceInClosedForm(t *testing.T) {
	b := load.Batten{Length: 6, Pipe: pipe, Lines: load.Spaced(0, 3, 3)}
	r, err := b.Rig(load.Hang{{Mass: 300, From: 0, To: 6}})
	if err != nil {
		t.Fatal(err)
	}
	s, err := r.Share(1)
	if err != nil {
		t.Fatal(err)
	}
	ei := pipe.Modulus.In(units.Pascal) * pipe.SecondMoment().In(units.MetreToTheFourth)
	limit := s.Lines[1].Tension + 60*units.Newton
	tol, err := r.TrimTolerance(1, 1, load.Limits{Line: limit})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "short by", tol.Short.By.In(units.Metre), 60*27/(6*ei), 1e-12)
	if tol.Short.Line != 1 || tol.Short.Bound != load.BoundByLine || tol.Long != (load.Off{}) {
		t.Errorf("%+v: want the middle line to meet its limit when short, and nothing to when long", tol)
	}
}

func TestQuestionsWithFaults(t *testing.T) {
	r, err := fiveLines().Rig(load.Hang{{Mass: 10, From: 5, To: 6}})
	if err != nil {
		t.Fatal(err)
	}
	nan := math.NaN()
	good := load.Limits{Line: 1000}
	for _, c := range []struct {
		name  string
		ask   func() error
		field string
		kind  error
	}{
		{"envelope, trim", func() error { _, err := r.Envelope(units.Length(nan), 1, 0, 1); return err }, "trim", units.ErrNotFinite},
		{"envelope, mass", func() error { _, err := r.Envelope(1, -1, 0, 1); return err }, "mass", units.ErrNegative},
		{"envelope, from", func() error { _, err := r.Envelope(1, 1, -1, 1); return err }, "from", units.ErrOutOfRange},
		{"envelope, to", func() error { _, err := r.Envelope(1, 1, 0, units.Length(nan)); return err }, "to", units.ErrNotFinite},
		{"point, from", func() error { _, err := r.PointAllowed(1, -1, 1, good); return err }, "from", units.ErrOutOfRange},
		{"point, trim", func() error { _, err := r.PointAllowed(units.Length(nan), 0, 1, good); return err }, "trim", units.ErrNotFinite},
		{"point, no limit", func() error { _, err := r.PointAllowed(1, 0, 1, load.Limits{}); return err }, "limits", units.ErrMissing},
		{"point, bad limit", func() error { _, err := r.PointAllowed(1, 0, 1, load.Limits{Line: -1}); return err }, "limits.line", units.ErrNegative},
		{"tolerance, line", func() error { _, err := r.TrimTolerance(1, 5, good); return err }, "line", units.ErrOutOfRange},
		{"tolerance, line before the first", func() error { _, err := r.TrimTolerance(1, -1, good); return err }, "line", units.ErrOutOfRange},
		{"tolerance, limit", func() error { _, err := r.TrimTolerance(1, 0, load.Limits{Stress: units.Stress(nan)}); return err }, "limits.stress", units.ErrNotFinite},
		{"tolerance, trim", func() error { _, err := r.TrimTolerance(units.Length(nan), 0, good); return err }, "trim", units.ErrNotFinite},
	} {
		var fault *units.FieldError
		if err := c.ask(); !errors.As(err, &fault) || fault.Field != c.field || !errors.Is(err, c.kind) {
			t.Errorf("%s: %v, want %s %v", c.name, err, c.field, c.kind)
		}
		if c.field == "line" && fault.Want != "0 to 4" {
			t.Errorf("%s: %v, which does not name the lines from the first to the last", c.name, fault)
		}
	}
}

// A load on a tip lets lines go slack one after the other, and the second line carries more with 28 kg there than with 50: the
// least mass that exceeds is what counts.
func TestTheLeastMassThatExceeds(t *testing.T) {
	for _, scale := range []float64{1, 1e-4} { // a model of it is bound alike: by less than a newton
		leastMassThatExceeds(t, scale)
	}
}

func leastMassThatExceeds(t *testing.T, scale float64) {
	tube, err := load.StandardPipe("48.3 x 3.2 mm", load.SteelModulusEN)
	if err != nil {
		t.Fatal(err)
	}
	tube.Density = tube.Density.Scale(scale)
	b := load.Batten{Length: 12, Pipe: tube, Lines: []load.Line{{At: 0.5}, {At: 1.5}, {At: 4}, {At: 8}}}
	h := load.Hang{{Mass: units.Mass(200 * scale), From: 2, To: 2}}
	r, err := b.Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	limits := load.Limits{Line: units.Force(1625.97 * scale)}
	got, err := r.PointAllowed(5, 12, 12, limits)
	if err != nil || got.Bound != load.BoundByLine || got.Line != 1 {
		t.Fatalf("%+v %v", got, err)
	}
	for k := range 1001 {
		mass := got.Mass.Scale(float64(k) / 1000)
		if mass == 0 {
			continue
		}
		s, err := b.Share(with(h, mass, 12), 5)
		if err != nil {
			t.Fatal(err)
		}
		if u := s.Use(limits); u.Line > 1+1e-9 {
			t.Fatalf("%v of %v: %+v", mass, got.Mass, u)
		}
	}
	s, err := b.Share(with(h, got.Mass.Scale(1.001), 12), 5)
	if err != nil || s.Use(limits).Line <= 1 {
		t.Errorf("a little more: %+v %v", s.Use(limits), err)
	}
}

// Straight over a line a point bends nothing, and without a limit for the lines nothing binds.
func TestNothingBindsAPointOnALine(t *testing.T) {
	r, err := fiveLines().Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	at := fiveLines().Lines[1].At
	got, err := r.PointAllowed(5, at, at, load.Limits{Stress: 200 * units.Megapascal})
	if err != nil || got != (load.PointAllowed{}) {
		t.Errorf("%+v %v", got, err)
	}
	for b, want := range map[load.Bound]string{load.BoundByNothing: "nothing", load.BoundByLine: "line", load.BoundByPipe: "pipe", load.BoundByTipping: "tipping", 99: "tipping"} {
		if text, err := b.MarshalText(); err != nil || string(text) != want || b.String() != want {
			t.Errorf("%d: %s %v", b, text, err)
		}
	}
}

// A line's own limit stands in place of the one for all.
func TestALimitOfItsOwn(t *testing.T) {
	b := fiveLines()
	b.Lines[2].Limit = 100 * units.Newton
	h := load.Hang{{Mass: 300, From: 1, To: 11}}
	s, err := b.Share(h, 1)
	if err != nil {
		t.Fatal(err)
	}
	if u := s.Use(load.Limits{Line: 1e5 * units.Newton}); u.Worst != 2 || u.Line != units.Ratio(s.Lines[2].Tension, 100*units.Newton) {
		t.Errorf("%+v of %+v", u, s.Lines)
	}
	r, err := b.Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	if p, err := r.PointAllowed(1, 2, 3, load.Limits{}); err != nil || p.Mass != 0 || p.Bound != load.BoundByLine || p.Line != 2 {
		t.Errorf("%+v %v: want the third line's own limit to be passed already", p, err)
	}
	b.Lines[2].Limit = -1
	var fault *units.FieldError
	if _, err := b.Rig(h); !errors.As(err, &fault) || fault.Field != "batten.lines[2].limit" {
		t.Errorf("%v", err)
	}
}
