package load_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func TestFaultsOfLinesThatStretch(t *testing.T) {
	nan := units.Force(math.NaN())
	const n = units.Newton
	for _, c := range []struct {
		name, field, want string
		kind              error
		line              load.Line
	}{
		{"a path and nothing to pull on", "batten.lines[2].ea", "how hard the line is to stretch", units.ErrMissing, load.Line{Path: 30}},
		{"no path", "batten.lines[2].path", "under tension", units.ErrMissing, load.Line{EA: 1e6 * n}},
		{"pushes back", "batten.lines[2].ea", "more than 0", units.ErrNegative, load.Line{EA: -1e6 * n, Path: 30}},
		{"path below nothing", "batten.lines[2].path", "more than 0", units.ErrNegative, load.Line{EA: 1e6 * n, Path: -30}},
		{"ea not a number", "batten.lines[2].ea", "finite", units.ErrNotFinite, load.Line{EA: nan, Path: 30}},
		{"an absurd path", "batten.lines[2].path", "at most", units.ErrOutOfRange, load.Line{EA: 1e6 * n, Path: 10_001}},
		{"off by no number", "batten.lines[2].long", "finite", units.ErrNotFinite, load.Line{Long: units.Length(math.Inf(-1))}},
		{"off by an absurd length", "batten.lines[2].long", "to", units.ErrOutOfRange, load.Line{Long: -11}},
		{"gives far more than the pipe", "batten.lines[2].ea", "1e+06 times as much", units.ErrOutOfRange, load.Line{EA: 1e-9 * n, Path: 100}},
	} {
		b := fiveLines()
		c.line.At = b.Lines[2].At
		b.Lines[2] = c.line
		_, err := b.Rig(nil)
		var f *units.FieldError
		if !errors.As(err, &f) || f.Field != c.field || !strings.Contains(f.Want, c.want) || !errors.Is(f, c.kind) {
			t.Errorf("%s: %v, want field %s, %q, %v", c.name, err, c.field, c.want, c.kind)
		}
	}
	for _, taper := range []float64{-1.01, 1.01, math.NaN(), math.Inf(1)} {
		_, err := fiveLines().Rig(load.Hang{{Mass: 1, From: 1, To: 2, Taper: taper}})
		var f *units.FieldError
		if !errors.As(err, &f) || f.Field != "hang[0].taper" || !errors.Is(f, units.ErrOutOfRange) {
			t.Errorf("taper %v: %v", taper, err)
		}
	}
}

// Two lines 10 mm apart hold a stout bar like a vice: a trim error there is worth far more than the weight, and
// beyond a bound the tensions cannot be told. The error says by how much.
func TestConditionIsReported(t *testing.T) {
	bar := load.Tube{Outer: 2, Wall: 1, Density: 1e-6, Modulus: 1e12}
	b := load.Batten{Length: 1, Pipe: bar, Lines: []load.Line{{At: 0.4}, {At: 0.411, Long: 0.1}, {At: 0.6}}}
	_, err := b.Rig(nil)
	var f *units.FieldError
	if !errors.As(err, &f) || f.Field != "batten.lines" || !errors.Is(f, units.ErrOutOfRange) || !strings.Contains(f.Value, "e+2") {
		t.Errorf("%v", err)
	}
	b.Lines[1].Long = 0
	if _, err := b.Share(nil, 0); err != nil {
		t.Errorf("with no trim error: %v", err)
	}
}

// Springs far stiffer than the pipe and one 10¹² times as soft, side by side: it carries what it stretches by, less than
// a ten thousandth of the weight, and the others do as without it.
func TestStiffnessesFarApart(t *testing.T) {
	b := fiveLines()
	for i := range b.Lines {
		b.Lines[i].EA, b.Lines[i].Path = 1e12*units.Newton, 30
	}
	b.Lines[1].EA /= 1e12
	s, err := b.Share(load.Hang{{Mass: 200, From: 3, To: 9}}, 0)
	if err != nil {
		t.Fatal(err)
	}
	without := b
	without.Lines = append(append([]load.Line{}, b.Lines[:1]...), b.Lines[2:]...)
	want, err := without.Share(load.Hang{{Mass: 200, From: 3, To: 9}}, 0)
	if err != nil {
		t.Fatal(err)
	}
	for i, l := range append(append([]load.LineShare{}, s.Lines[:1]...), s.Lines[2:]...) {
		if d := units.Abs(l.Tension - want.Lines[i].Tension); d > s.Weight.Scale(1e-4) {
			t.Errorf("line %d: %v, want as without the soft one %v", i, l.Tension, want.Lines[i].Tension)
		}
	}
}

// Hooke: a single line stretches by pull times path over EA, and two lines of one kind under a centred load share it.
func TestStretch(t *testing.T) {
	line := load.Line{At: 2, EA: 1e6 * units.Newton, Path: 40}
	s, err := load.Batten{Length: 4, Pipe: pipe, Lines: []load.Line{line}}.Share(load.Hang{{Mass: 100, From: 2, To: 2}}, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stretch", s.Lines[0].Stretch.In(units.Metre), s.Weight.In(units.Newton)*40/1e6, 1e-15)
	if s.Lines[0].Slack || s.Slack() != nil {
		t.Errorf("%+v: want no line slack", s)
	}
}

// A middle line that is 50 mm too long hangs loose under a stiff bare pipe; the pipe sags above its end.
func TestTooLongIsSlack(t *testing.T) {
	b := load.Batten{Length: 6, Pipe: pipe, Lines: load.Spaced(0, 3, 3)}
	b.Lines[1].Long = 50 * units.Millimetre
	s, err := b.Share(nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	ei := pipe.Modulus.In(units.Pascal) * pipe.SecondMoment().In(units.MetreToTheFourth)
	sag := 5 * s.Weight.In(units.Newton) * 216 / (384 * ei)
	if got := s.Slack(); len(got) != 1 || got[0] != 1 {
		t.Errorf("slack %v, want the middle line", got)
	}
	near(t, "gap", s.Lines[1].Gap.In(units.Metre), 0.05-sag, 1e-12)
	near(t, "each end", s.Lines[0].Tension.In(units.Newton), s.Weight.In(units.Newton)/2, 1e-9)
}

func TestUse(t *testing.T) {
	s := load.Share{Stress: 60 * units.Megapascal, Lines: []load.LineShare{{Tension: 300}, {Tension: 900}, {Tension: 600}}}
	limits := load.Limits{Line: 1200, Stress: 120 * units.Megapascal}
	if got, want := s.Use(limits), (load.Use{Line: 0.75, Worst: 1, Pipe: 0.5}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if got, want := s.Use(load.Limits{}), (load.Use{Worst: -1}); got != want {
		t.Errorf("without limits %+v, want %+v", got, want)
	}
	if got, want := (load.Share{}).Use(limits), (load.Use{Worst: -1}); got != want {
		t.Errorf("nothing carried %+v, want %+v", got, want)
	}
}

// ShareInto gives what Share gives, in the same memory, and an error leaves what was there.
func TestShareInto(t *testing.T) {
	b := fiveLines()
	for i := range b.Lines {
		b.Lines[i].EA, b.Lines[i].Path = 1e6*units.Newton, 30
	}
	r, err := b.Rig(load.Hang{{Mass: 100, From: 2, To: 6, Height: 5, OnDeck: load.Piles}, {Mass: 4000, From: 0, To: 0, Height: 7, OnDeck: load.Stands}})
	if err != nil {
		t.Fatal(err)
	}
	var s load.Share
	for _, trim := range []units.Length{3, 1, 6, 3} {
		want, err := r.Share(trim)
		if err != nil {
			t.Fatal(err)
		}
		if err := r.ShareInto(&s, trim); err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(want, s); d != "" {
			t.Errorf("trim %v: %s", trim, d)
		}
	}
	before := s
	before.Lines = append([]load.LineShare{}, s.Lines...)
	var tip *load.TipError
	if err := r.ShareInto(&s, 8); !errors.As(err, &tip) {
		t.Errorf("%v, want that it tips", err)
	}
	if err := r.ShareInto(&s, units.Length(math.NaN())); !errors.Is(err, units.ErrNotFinite) {
		t.Errorf("%v", err)
	}
	if d := cmp.Diff(before, s); d != "" {
		t.Errorf("changed after an error: %s", d)
	}
}

// Questions of every kind asked at once give what they give alone: scratch is never shared, and a line that one question
// makes longer is not longer for the next.
func TestQuestionsDoNotDisturbEachOther(t *testing.T) {
	b := fiveLines()
	b.Lines[1].Long = 5 * units.Millimetre
	r, err := b.Rig(load.Hang{{Mass: 100, From: 2, To: 6}, {Mass: 80, From: 9, To: 9}})
	if err != nil {
		t.Fatal(err)
	}
	limits := load.Limits{Line: 2000, Stress: 200 * units.Megapascal}
	all := func() (a [4]any) {
		a[0], _ = r.Share(5)
		a[1], _ = r.Envelope(5, 50, 1, 12)
		a[2], _ = r.PointAllowed(5, 2, 8, limits)
		a[3], _ = r.TrimTolerance(5, 2, limits)
		return a
	}
	want := all()
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for range 5 {
				if got := all(); !reflect.DeepEqual(got, want) {
					t.Errorf("%+v, alone %+v", got, want)
				}
			}
		})
	}
	group.Wait()
}

func TestLinesInJSON(t *testing.T) {
	b := fiveLines()
	b.Lines[1] = load.Line{At: b.Lines[1].At, EA: 440_000 * units.PoundForce, Path: 70 * units.Foot, Long: -0.25 * units.Inch}
	h := load.Hang{{Mass: 100, From: 2, To: 6, Taper: -0.5}}
	for _, v := range []any{&b, &h} {
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		back := reflect.New(reflect.TypeOf(v).Elem()).Interface()
		if err := json.Unmarshal(text, back); err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(v, back); d != "" {
			t.Errorf("%s: %s", text, d)
		}
	}
	if text, _ := json.Marshal(load.Line{At: 1}); string(text) != `{"at":"1 m"}` {
		t.Errorf("a plain line is %s", text)
	}
}

// Lines as close as they may be, their places made by adding up.
func TestClosestLines(t *testing.T) {
	b := load.Batten{Length: 12, Pipe: pipe, Lines: load.Spaced(9*units.Metre, 10*units.Millimetre, 5)}
	if _, err := b.Rig(nil); err != nil {
		t.Error(err)
	}
}

// All of a triangle's mass acts at two thirds of its length from its thin end; half as much lean moves it half as far from the middle.
func TestCentreOfAnItemThatLeans(t *testing.T) {
	for taper, want := range map[float64]float64{1: 5, -1: 4, 0: 4.5, 0.5: 4.75} {
		r, err := load.Batten{Length: 9, Pipe: pipe, Lines: load.Spaced(1, 7, 2)}.Rig(load.Hang{{Mass: 1e6, From: 3, To: 6, Taper: taper}})
		if err != nil {
			t.Fatal(err)
		}
		// The batten's own mass is in the middle, 4.5 m, and next to nothing.
		near(t, "centre", r.Centre(1).In(units.Metre), want, 1e-4)
	}
}
