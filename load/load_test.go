package load_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// pipe is 1-1/2 in schedule 40.
var pipe = load.Tube{
	Outer:   1.900 * units.Inch,
	Wall:    0.145 * units.Inch,
	Density: load.PipeSteelDensity,
	Modulus: load.SteelModulusUS,
}

func fiveLines() load.Batten {
	return load.Batten{Length: 42 * units.Foot, Pipe: pipe, Lines: load.Spaced(1*units.Foot, 10*units.Foot, 5)}
}

func TestCarried(t *testing.T) {
	const m, ft = units.Mass(100), units.Foot
	for _, c := range []struct {
		name        string
		item        load.Item
		trim        units.Length
		want, above units.Mass
	}{
		{"hangs clear at any trim", load.Item{Mass: m}, -1, m, m},
		{"pile, high", load.Item{Mass: m, Below: 2 * ft, Height: 10 * ft, OnDeck: load.Piles}, 30 * ft, m, m},
		{"pile, just touching", load.Item{Mass: m, Below: 2 * ft, Height: 10 * ft, OnDeck: load.Piles}, 2*ft + 10*ft, m, m},
		{"pile, three quarters up", load.Item{Mass: m, Below: 2 * ft, Height: 8 * ft, OnDeck: load.Piles}, 8 * ft, 0.75 * m, 0.75 * m},
		{"pile, all down", load.Item{Mass: m, Below: 2 * ft, Height: 10 * ft, OnDeck: load.Piles}, 2 * ft, 0, 0},
		{"pile, batten below its place", load.Item{Mass: m, Below: 2 * ft, Height: 10 * ft, OnDeck: load.Piles}, ft, 0, 0},
		{"stands on the deck", load.Item{Mass: m, Below: 2 * ft, Height: 10 * ft, OnDeck: load.Stands}, 11 * ft, 0, 0},
		{"stands, about to lift", load.Item{Mass: m, Below: 2 * ft, Height: 10 * ft, OnDeck: load.Stands}, 2*ft + 10*ft, 0, m},
		{"stands, lifted", load.Item{Mass: m, Below: 2 * ft, Height: 10 * ft, OnDeck: load.Stands}, 12.001 * ft, m, m},
		{"no trim, hangs", load.Item{Mass: m}, units.Length(math.NaN()), m, m},
		{"no trim, piles", load.Item{Mass: m, Height: 1, OnDeck: load.Piles}, units.Length(math.NaN()), 0, 0},
		{"no trim, stands", load.Item{Mass: m, Height: 1, OnDeck: load.Stands}, units.Length(math.NaN()), 0, 0},
		{"endless trim", load.Item{Mass: m, Height: 1, OnDeck: load.Piles}, units.Length(math.Inf(1)), m, m},
	} {
		got, above := c.item.Carried(c.trim), c.item.CarriedAbove(c.trim)
		if math.Abs(float64(got-c.want)) > 1e-12 || math.Abs(float64(above-c.above)) > 1e-12 {
			t.Errorf("%s: %v and %v, want %v and %v", c.name, got, above, c.want, c.above)
		}
	}
}

func TestBreaksLowestHung(t *testing.T) {
	h := load.Hang{
		{Name: "border", Mass: 20, From: 1, To: 11, Below: 1, Height: 5, OnDeck: load.Piles},
		{Name: "flat", Mass: 30, From: 4, To: 8, Below: 1, Height: 4, OnDeck: load.Stands},
		{Name: "pipe", Mass: 7, From: 2, To: 10, Below: 8},
		{Name: "same foot", Mass: 1, From: 6, To: 6, Height: 6, OnDeck: load.Stands},
	}
	r, err := fiveLines().Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]units.Length{1, 5, 6}, r.Breaks()); diff != "" {
		t.Error(diff)
	}
	if r.Lowest() != 8 || r.Hung() != 58 {
		t.Errorf("lowest %v, hung %v", r.Lowest(), r.Hung())
	}
	bare := fiveLines().BareMass()
	near(t, "bare, 2.718 lb/ft over 42 ft", bare.In(units.Pound), 2.718*42, 0.03)
	near(t, "carried at 5 m", float64(r.Carried(5)-bare), 20*4./5+7, 1e-12)
	near(t, "carried just above 5 m", float64(r.CarriedAbove(5)-bare), 20*4./5+7+30, 1e-12)
	r.Breaks()[0] = 99
	h[0].Mass = 99
	if r.Breaks()[0] != 1 || r.Hung() != 58 {
		t.Error("what was rigged has changed with the caller's slices")
	}
	empty, err := fiveLines().Rig(nil)
	if err != nil || len(empty.Breaks()) != 0 || empty.Lowest() != 0 || empty.Hung() != 0 {
		t.Errorf("bare batten: %v, %v", empty, err)
	}
}

// A uniform load on four equal spans with the pipe's ends beyond: symmetrical, so the
// centre is in the middle and pulls match in pairs; by hand the whole is the weight.
func TestShareBare(t *testing.T) {
	b := fiveLines()
	b.Fittings = 12 * units.Pound
	s, err := b.Share(nil, 20*units.Foot)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "carried", float64(s.Carried), float64(b.BareMass()), 1e-12)
	near(t, "weight", float64(s.Weight), float64(b.BareMass())*9.80665, 1e-9)
	near(t, "centre", s.Centre.In(units.Foot), 21, 1e-12)
	var sum units.Force
	for i, l := range s.Lines {
		sum += l.Tension
		near(t, "pair", float64(l.Tension), float64(s.Lines[4-i].Tension), 1e-10)
		if l.Slack || l.Gap != 0 || l.At != b.Lines[i].At {
			t.Errorf("line %d: %+v", i, l)
		}
	}
	near(t, "sum", float64(sum), float64(s.Weight), 1e-9)
	i, worst := s.Worst()
	if i != 1 || worst != s.Lines[1] {
		t.Errorf("worst %d %+v, want the second of two equal ones", i, worst)
	}
	near(t, "stress", float64(s.Stress), -float64(s.Hogging.Moment)/float64(pipe.SectionModulus()), 1e-6)
	same := units.Force(math.Nextafter(100, 101))
	if i, _ := (load.Share{Lines: []load.LineShare{{Tension: 1}, {Tension: 100}, {Tension: same}}}).Worst(); i != 1 {
		t.Errorf("worst of two that rounding tells apart: %d, want the first", i)
	}
	if i, _ := (load.Share{}).Worst(); i != -1 {
		t.Errorf("worst of none: %d", i)
	}
}

// A point load mid-way between the first two of five lines, on a pipe of next to no
// weight: the third line and beyond. The gap of a slack line follows from the
// continuous beam of the others.
func TestSlackLineAndGap(t *testing.T) {
	b := load.Batten{
		Length: 8,
		Pipe:   load.Tube{Outer: 50 * units.Millimetre, Wall: 5 * units.Millimetre, Density: 1e-6, Modulus: load.SteelModulusEN},
		Lines:  []load.Line{{At: 0}, {At: 4}, {At: 8}},
	}
	s, err := b.Share(load.Hang{{Mass: 100, From: 2, To: 2}}, 5)
	if err != nil {
		t.Fatal(err)
	}
	w := 100 * 9.80665
	near(t, "first", float64(s.Lines[0].Tension), w/2, 1e-3)
	near(t, "second", float64(s.Lines[1].Tension), w/2, 1e-3)
	if !s.Lines[2].Slack || s.Lines[2].Tension != 0 {
		t.Errorf("third: %+v, want slack", s.Lines[2])
	}
	for i, l := range s.Lines[:2] {
		if l.Gap != 0 || math.Signbit(float64(l.Gap)) {
			t.Errorf("line %d pulls, with a gap of %v", i, l.Gap)
		}
	}
	// A simple span of L leaves its supports at a slope PL²/16EI; the far end stands L further on.
	inertia := math.Pi / 64 * (math.Pow(0.05, 4) - math.Pow(0.04, 4))
	near(t, "gap", float64(s.Lines[2].Gap), w*16/(16*210e9*inertia)*4, 1e-6)
	near(t, "sagging", float64(s.Sagging.Moment), w*4/4, 1e-2)
	near(t, "where", float64(s.Sagging.At), 2, 1e-9)
	near(t, "shear", math.Abs(float64(s.Shear.Force)), w/2, 1e-3)
}

// Places that agree but for rounding are taken as they are meant.
func TestRoundingAtTheEnds(t *testing.T) {
	b := load.Batten{Length: 41 * units.Foot, Pipe: pipe, Lines: load.Spaced(0.1*units.Foot, 10.2*units.Foot, 5)}
	b.Lines[4].At = 41*units.Foot + 1e-9
	h := load.Hang{load.Drape{Width: 40 * units.Foot, Drop: 10, Cloth: 0.3}.Item("border", 1*units.Foot), {Mass: 1, From: -1e-9, To: 0}}
	s, err := b.Share(h, 20)
	if err != nil {
		t.Fatal(err)
	}
	if s.Lines[4].At != b.Length {
		t.Errorf("last line at %v, want the batten's end", s.Lines[4].At)
	}
}

// What is spread over as good as no length is a point, and no quotient overflows. All else is
// symmetrical, so the first line carries more than the last by just the piece above it.
func TestShortestSpread(t *testing.T) {
	b := load.Batten{Length: 42 * units.Foot, Pipe: pipe, Lines: load.Spaced(0, 10.5*units.Foot, 5)}
	for _, short := range []units.Length{0, 5e-324, 1e-308, 1e-300, 1e-7, 2e-6} {
		s, err := b.Share(load.Hang{{Mass: 1, To: short}}, 20)
		if err != nil {
			t.Errorf("over %v: %v", short, err)
			continue
		}
		near(t, "first less last", float64(s.Lines[0].Tension-s.Lines[4].Tension), 9.80665, 1e-4)
	}
}

func TestOneLine(t *testing.T) {
	b := load.Batten{Length: 4, Pipe: pipe, Lines: []load.Line{{At: 2}}}
	s, err := b.Share(nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "tension", float64(s.Lines[0].Tension), float64(s.Weight), 1e-9)
	near(t, "hogging", float64(s.Hogging.Moment), -float64(s.Weight)*4/8, 1e-9)
	b.Lines[0].At = 2.001
	var tip *load.TipError
	if _, err := b.Share(nil, 0); !errors.As(err, &tip) || tip.First != tip.Last {
		t.Errorf("a millimetre beside the centre: %v, want a TipError", err)
	}
}

func TestTrimMustBeFinite(t *testing.T) {
	r, err := fiveLines().Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, trim := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		var f *units.FieldError
		if _, err := r.Share(units.Length(trim)); !errors.As(err, &f) || f.Field != "trim" {
			t.Errorf("trim %v: %v", trim, err)
		}
	}
	if _, err := r.Share(-3); err != nil {
		t.Errorf("below the deck, as in a pit: %v", err)
	}
}

func TestSpaced(t *testing.T) {
	for _, n := range []int{math.MinInt, -1, 0} {
		if got := load.Spaced(1, 1, n); len(got) != 0 {
			t.Errorf("%d lines asked, %d given", n, len(got))
		}
	}
	if got := len(load.Spaced(1, 1, math.MaxInt)); got != load.MaxLines+1 {
		t.Errorf("%d lines", got)
	}
}

func TestOnDeckText(t *testing.T) {
	for d, name := range map[load.OnDeck]string{load.Hangs: "hangs", load.Piles: "piles", load.Stands: "stands"} {
		text, err := d.MarshalText()
		if err != nil || string(text) != name || d.String() != name {
			t.Errorf("%s: %s, %v", name, text, err)
		}
		var back load.OnDeck
		if err := back.UnmarshalText(text); err != nil || back != d {
			t.Errorf("%s: %v, %v", name, back, err)
		}
	}
	for _, none := range []load.OnDeck{load.Stands + 1, 9} {
		if want := fmt.Sprintf("OnDeck(%d)", int(none)); none.String() != want {
			t.Errorf("%q, want %q", none.String(), want)
		}
		if _, err := none.MarshalText(); !errors.Is(err, units.ErrUnknown) {
			t.Errorf("%v: %v", none, err)
		}
	}
	kept := load.Piles
	var f *units.FieldError
	if err := kept.UnmarshalText([]byte("Piles ")); !errors.As(err, &f) || kept != load.Piles || f.Value != `"Piles "` {
		t.Errorf("%v, %v", err, kept)
	}
}

func TestJSON(t *testing.T) {
	type both struct {
		Batten load.Batten `json:"batten"`
		Hang   load.Hang   `json:"hang"`
	}
	const text = `{
		"batten": {"length": "42 ft", "pipe": {"outer": "1.9 in", "wall": "0.145 in", "density": "0.2833 lb/in3", "modulus": "29000 ksi"},
			"fittings": "12 lb", "lines": [{"at": "1 ft"}, {"at": "21 ft"}, {"at": "41 ft"}]},
		"hang": [{"name": "flat", "mass": "80 lb", "from": "10 ft", "to": "18 ft", "below": "6 in", "height": "12 ft", "on_deck": "stands"}]}`
	var in both
	if err := json.Unmarshal([]byte(text), &in); err != nil {
		t.Fatal(err)
	}
	want := both{
		load.Batten{
			Length: 42 * units.Foot, Pipe: pipe, Fittings: 12 * units.Pound,
			Lines: []load.Line{{At: 1 * units.Foot}, {At: 21 * units.Foot}, {At: 41 * units.Foot}},
		},
		load.Hang{{Name: "flat", Mass: 80 * units.Pound, From: 10 * units.Foot, To: 18 * units.Foot, Below: 6 * units.Inch, Height: 12 * units.Foot, OnDeck: load.Stands}},
	}
	near := cmp.Comparer(func(a, b units.Length) bool { return units.Abs(a-b) < 1e-12 })
	heavy := cmp.Comparer(func(a, b units.Mass) bool { return units.Abs(a-b) < 1e-12 })
	dense := cmp.Comparer(func(a, b units.Density) bool { return units.Abs(a-b) < 1e-9 })
	stiff := cmp.Comparer(func(a, b units.Stress) bool { return units.Abs(a-b) < 1 })
	if diff := cmp.Diff(want, in, near, heavy, dense, stiff); diff != "" {
		t.Error(diff)
	}
	out, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var again both
	if err := json.Unmarshal(out, &again); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(in, again); diff != "" {
		t.Errorf("out and in again: %s", diff)
	}
	bare, _ := json.Marshal(load.Item{Mass: 1})
	if got := string(bare); strings.Contains(got, "on_deck") || strings.Contains(got, "below") || strings.Contains(got, "name") {
		t.Errorf("what is not given is written: %s", got)
	}
	if got, _ := json.Marshal(load.Batten{Lines: []load.Line{}}); strings.Contains(string(got), "lines") {
		t.Errorf("a list of no lines is written: %s", got)
	}
	s, err := in.Batten.Share(in.Hang, 20*units.Foot)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := json.Marshal(s); err != nil {
		t.Error(err)
	}
}
