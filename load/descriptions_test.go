package load_test

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// accepted reports whether the items may hang on a batten, and which fields are at fault.
func accepted(h load.Hang) (bool, string) {
	_, err := fiveLines().Rig(h)
	if err != nil {
		return false, err.Error()
	}
	return true, ""
}

func TestStandardPipeNames(t *testing.T) {
	names := load.StandardPipes()
	for _, name := range names {
		tube, err := load.StandardPipe(name, load.SteelModulusEN)
		if err != nil || tube.Modulus != load.SteelModulusEN {
			t.Errorf("%s: %+v, %v", name, tube, err)
		}
		density := load.SteelDensity
		if strings.HasPrefix(name, "NPS") {
			density = load.PipeSteelDensity
		}
		if tube.Density != density {
			t.Errorf("%s: density %v, want %v", name, tube.Density, density)
		}
		b := fiveLines()
		b.Pipe = tube
		if _, err := b.Rig(nil); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	names[0] = "mine"
	if load.StandardPipes()[0] == "mine" {
		t.Error("the list is not the caller's own")
	}
	for _, name := range []string{"", "nps 2 schedule 40", "NPS 2 schedule 40 ", "NPS 3 schedule 40", "\x00\xff"} {
		tube, err := load.StandardPipe(name, load.SteelModulusUS)
		var f *units.FieldError
		if !errors.As(err, &f) || !errors.Is(err, units.ErrUnknown) || tube != (load.Tube{}) {
			t.Fatalf("%q: %+v, %v", name, tube, err)
		}
		for _, known := range load.StandardPipes() {
			if !strings.Contains(f.Want, known) {
				t.Errorf("%q: the error %v does not list %s", name, err, known)
			}
		}
	}
}

func TestThinnedWithoutSense(t *testing.T) {
	for _, share := range []float64{0, -0.93, 1.0001, 93, math.NaN(), math.Inf(1), math.Inf(-1), 5e-324, 1e-300} {
		b := fiveLines()
		b.Pipe = pipe.Thinned(share)
		var f *units.FieldError
		if _, err := b.Rig(nil); !errors.As(err, &f) || f.Field != "batten.pipe.wall" {
			t.Errorf("share %v: %+v, error %v", share, b.Pipe, err)
		}
		none := pipe
		none.Wall = 0
		if share != 1e-300 && b.Pipe != none {
			t.Errorf("share %v: %+v, want no wall and all else as it was", share, b.Pipe)
		}
	}
	for name, size := range map[string]struct{ outer, wall units.Length }{
		"none":            {},
		"wall too thick":  {1 * units.Inch, 0.51 * units.Inch},
		"wall below zero": {1 * units.Inch, -1 * units.Inch},
		"no outer":        {0, 1 * units.Inch},
	} {
		b := fiveLines()
		b.Pipe.Outer, b.Pipe.Wall = size.outer, size.wall
		before := b.Pipe
		b.Pipe = b.Pipe.Thinned(0.93)
		if _, err := b.Rig(nil); err == nil || b.Pipe != before {
			t.Errorf("%s: %+v, want it as it was, and refused: error %v", name, b.Pipe, err)
		}
	}
}

func TestThinnedKeepsOrThins(t *testing.T) {
	if got := pipe.Thinned(1); got != pipe {
		t.Errorf("the whole wall: %+v, want %+v", got, pipe)
	}
	// A solid bar whose wall comes out a rounding over half its diameter is accepted by Rig, and must
	// not come back as strong as it was.
	bar := pipe
	bar.Wall = units.Length(math.Nextafter(float64(bar.Outer.Scale(0.5)), 1))
	if got := bar.Thinned(0.5).Wall; math.Abs(units.Ratio(got, bar.Outer)-0.25) > 1e-12 {
		t.Errorf("half the wall of a solid bar of %v: %v", bar.Outer, got)
	}
	thin := pipe.Thinned(0.875)
	near(t, "wall", thin.Wall.In(units.Inch), 0.875*0.145, 1e-12)
	near(t, "weight", units.Ratio(thin.LineMass(), pipe.LineMass()), 1, 1e-12)
	if thin.Outer != pipe.Outer || thin.Modulus != pipe.Modulus {
		t.Errorf("%+v", thin)
	}
}

// Two metres by three of cloth of 1 kg/m², half as much again in it, with 0.5 kg/m in the
// hem: by hand 9 kg of cloth and 1 kg in the hem.
var leg = load.Drape{Width: 2, Drop: 3, Below: 0.5, Cloth: 1, Fullness: 0.5, Hem: 0.5}

func TestDrapeHang(t *testing.T) {
	cloth := load.Item{Name: "leg", Mass: 9, From: 1, To: 3, Below: 0.5, Height: 3, OnDeck: load.Piles}
	hem := load.Item{Name: "leg, hem", Mass: 1, From: 1, To: 3, Below: 3.475, Height: 0.025, OnDeck: load.Stands}
	unnamed := hem
	unnamed.Name = "hem"
	noHem, noCloth, short := leg, leg, leg
	noHem.Hem, noCloth.Cloth = 0, 0
	short.Drop, short.Cloth, short.Below = 0.04, 0, 0
	shortHem := load.Item{Name: "leg, hem", Mass: 1, From: 1, To: 3, Below: 0.02, Height: 0.02, OnDeck: load.Stands}
	near := cmp.Comparer(func(a, b units.Length) bool { return a.Within(b, 1e-12) })
	for _, c := range []struct {
		name string
		got  load.Hang
		want load.Hang
	}{
		{"cloth and hem", leg.Hang("leg", 1), load.Hang{cloth, hem}},
		{"without a hem one item", noHem.Hang("leg", 1), load.Hang{cloth}},
		{"without cloth the hem alone", noCloth.Hang("leg", 1), load.Hang{hem}},
		{"without a name the hem has one", noCloth.Hang("", 1), load.Hang{unnamed}},
		{"too short for a hem of its usual height", short.Hang("leg", 1), load.Hang{shortHem}},
	} {
		if diff := cmp.Diff(c.want, c.got, near); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		if ok, faults := accepted(c.got); !ok {
			t.Errorf("%s: %s", c.name, faults)
		}
	}
	if got := leg.Item("leg", 1); got.Below != 0.5 || got.Mass != 10 {
		t.Errorf("in one piece: %+v", got)
	}
}

// What the batten carries of the leg: its foot is 3.5 m down.
func TestHemOnDeck(t *testing.T) {
	rigged, err := fiveLines().Rig(leg.Hang("leg", 1))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name              string
		trim              units.Length
		carried, justOver units.Mass
	}{
		{"clear", 4, 10, 10},
		{"touching: the hem lies, the cloth still hangs", 3.5, 9, 10},
		{"a third of the cloth down", 2.5, 6, 6},
		{"all down", 0.5, 0, 0},
	} {
		near(t, c.name, float64(rigged.Carried(c.trim)-rigged.Bare()), float64(c.carried), 1e-9)
		near(t, c.name+", above", float64(rigged.CarriedAbove(c.trim)-rigged.Bare()), float64(c.justOver), 1e-9)
	}
}

func TestParted(t *testing.T) {
	item := func(name string, mass units.Mass, from, to, below, height units.Length, deck load.OnDeck, taper float64) load.Item {
		return load.Item{Name: name, Mass: mass, From: from, To: to, Below: below, Height: height, OnDeck: deck, Taper: taper}
	}
	plain := leg
	plain.Hem = 0
	near := cmp.Comparer(func(a, b units.Length) bool { return a.Within(b, 1e-12) })
	for _, c := range []struct {
		name  string
		drape load.Drape
		by    load.Gather
		want  load.Hang
	}{
		{"closed", plain, load.Gather{}, load.Hang{
			item("main, near half", 4.5, 1, 2, 0.5, 3, load.Piles, 0),
			item("main, far half", 4.5, 2, 3, 0.5, 3, load.Piles, 0),
		}},
		{"traveller", leg, load.Gather{Width: 0.25}, load.Hang{
			item("main, near half", 4.5, 1, 1.25, 0.5, 3, load.Piles, 0),
			item("main, near half, hem", 0.5, 1, 1.25, 3.475, 0.025, load.Stands, 0),
			item("main, far half", 4.5, 2.75, 3, 0.5, 3, load.Piles, 0),
			item("main, far half, hem", 0.5, 2.75, 3, 3.475, 0.025, load.Stands, 0),
		}},
		{"tab", leg, load.Gather{Lean: 0.75, Lift: 1}, load.Hang{
			item("main, near half", 4.5, 1, 2, 0.5, 2, load.Piles, -0.75),
			item("main, near half, hem", 0.5, 1, 2, 2.475, 0.025, load.Stands, -0.75),
			item("main, far half", 4.5, 2, 3, 0.5, 2, load.Piles, 0.75),
			item("main, far half, hem", 0.5, 2, 3, 2.475, 0.025, load.Stands, 0.75),
		}},
	} {
		got := c.drape.Parted("main", 1, c.by)
		if diff := cmp.Diff(c.want, got, near); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		if ok, faults := accepted(got); !ok {
			t.Errorf("%s: %s", c.name, faults)
		}
	}
}

func TestDescriptionsWithoutSense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	cable := load.Cable{LineMass: 0.4, Count: 2, From: 1, To: 5, Slack: 0.1, Tail: 6, TailAt: 5}
	hang := func(mend func(*load.Drape)) load.Hang {
		d := leg
		mend(&d)
		return d.Hang("x", 1)
	}
	run := func(mend func(*load.Cable)) load.Hang {
		c := cable
		mend(&c)
		return c.Hang("x")
	}
	part := func(g load.Gather) load.Hang { return leg.Parted("x", 1, g) }
	for _, c := range []struct {
		name string
		hang load.Hang
	}{
		{"no drape", load.Drape{}.Hang("x", 1)},
		{"no drape, parted", load.Drape{}.Parted("x", 1, load.Gather{})},
		{"drape of no width", hang(func(d *load.Drape) { d.Width = 0 })},
		{"drape of endless width", hang(func(d *load.Drape) { d.Width = units.Length(inf) })},
		{"drape of no drop", hang(func(d *load.Drape) { d.Drop = 0 })},
		{"drape above the batten", hang(func(d *load.Drape) { d.Below = -0.1 })},
		{"hem above the batten", hang(func(d *load.Drape) { d.Cloth, d.Below = 0, -0.1 })},
		{"drape with less than no hem", hang(func(d *load.Drape) { d.Hem = -0.1 })},
		{"hem no number", hang(func(d *load.Drape) { d.Hem = units.LineMass(nan) })},
		{"less than no fullness", hang(func(d *load.Drape) { d.Fullness = -0.1 })},
		{"gathered to less than nothing", part(load.Gather{Width: -1})},
		{"gathered to more than its width", part(load.Gather{Width: 2.1})},
		{"gathered to no number", part(load.Gather{Width: units.Length(nan)})},
		{"leaning too far in", part(load.Gather{Lean: -1.01})},
		{"leaning too far out", part(load.Gather{Lean: 1.01})},
		{"leaning nowhere", part(load.Gather{Lean: nan})},
		{"lowered", part(load.Gather{Lift: -0.1})},
		{"lifted the whole drop", part(load.Gather{Lift: 3})},
		{"lifted without end", part(load.Gather{Lift: units.Length(inf)})},
		{"no cable", load.Cable{}.Hang("x")},
		{"cable of no mass", run(func(c *load.Cable) { c.LineMass = 0 })},
		{"cable of endless mass", run(func(c *load.Cable) { c.LineMass = units.LineMass(inf) })},
		{"fewer than no cables", run(func(c *load.Cable) { c.Count = -1 })},
		{"less than no slack", run(func(c *load.Cable) { c.Slack = -0.1 })},
		{"slack without end, tail only", run(func(c *load.Cable) { c.To, c.Slack = c.From, inf })},
		{"slack no number", run(func(c *load.Cable) { c.Slack = nan })},
		{"less than no tail", run(func(c *load.Cable) { c.Tail = -1 })},
		{"endless tail", run(func(c *load.Cable) { c.Tail = units.Length(inf) })},
		{"run that ends before it begins", run(func(c *load.Cable) { c.To = 0.5 })},
		{"run from nowhere", run(func(c *load.Cable) { c.From = units.Length(nan) })},
		{"neither run nor tail", run(func(c *load.Cable) { c.To, c.Tail = c.From, 0 })},
	} {
		if ok, _ := accepted(c.hang); ok {
			t.Errorf("%s: %+v is accepted", c.name, c.hang)
		}
		if !slices.ContainsFunc(c.hang, func(i load.Item) bool { return i.Mass == 0 }) {
			t.Errorf("%s: %+v has mass throughout", c.name, c.hang)
		}
	}
	for _, c := range []struct {
		name string
		hang load.Hang
	}{
		{"drape endlessly far down", hang(func(d *load.Drape) { d.Below = units.Length(inf) })},
		{"run beyond all bounds", run(func(c *load.Cable) { c.From, c.To = units.Length(inf), units.Length(inf) })},
		{"tail off the batten", run(func(c *load.Cable) { c.TailAt = 99 })},
	} {
		if ok, _ := accepted(c.hang); ok {
			t.Errorf("%s: %+v is accepted", c.name, c.hang)
		}
	}
}

// Two cables of 0.4 kg/m run 4 m with a tenth of slack, 3.52 kg, and hang down 6 m, 4.8 kg.
func TestCable(t *testing.T) {
	run := load.Item{Name: "cable", Mass: 3.52, From: 1, To: 5}
	tail := load.Item{Name: "cable, tail", Mass: 4.8, From: 5, To: 5, Height: 6, OnDeck: load.Piles}
	cable := load.Cable{LineMass: 0.4, Count: 2, From: 1, To: 5, Slack: 0.1, Tail: 6, TailAt: 5}
	one, noTail, onlyTail, taut := cable, cable, cable, cable
	taut.Slack = 0
	tautRun := run
	tautRun.Mass = 3.2
	one.Count = 0
	noTail.Tail, noTail.TailAt = 0, -7
	onlyTail.To = onlyTail.From
	near := cmp.Comparer(func(a, b units.Mass) bool { return a.Within(b, 1e-12) })
	halfRun, halfTail := run, tail
	halfRun.Mass, halfTail.Mass = 1.76, 2.4
	for _, c := range []struct {
		name      string
		got, want load.Hang
	}{
		{"run and tail", cable.Hang("cable"), load.Hang{run, tail}},
		{"a count of none given is one", one.Hang("cable"), load.Hang{halfRun, halfTail}},
		{"without a tail, wherever", noTail.Hang("cable"), load.Hang{run}},
		{"without slack", taut.Hang("cable"), load.Hang{tautRun, tail}},
		{"without mass", load.Cable{From: 1, To: 5, Tail: 6}.Hang("cable"), load.Hang{{Name: "cable", From: 1, To: 5}}},
		{"a tail alone", onlyTail.Hang("cable"), load.Hang{tail}},
	} {
		if diff := cmp.Diff(c.want, c.got, near); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		if ok, faults := accepted(c.got); ok != (c.name != "without mass") {
			t.Errorf("%s: %s", c.name, faults)
		}
	}
}

// A gram over a length of 0.2 m at a bolt of 0.5 m is 0.01 kg/m²; a length or a bolt of nothing or less gives nothing.
func TestRunning(t *testing.T) {
	near(t, "a sample", load.Running(1*units.Gram, 0.2, 0.5).In(units.KilogramPerSquareMetre), 0.01, 1e-15)
	for _, c := range [][2]units.Length{{0, 1}, {1, 0}, {0, 0}, {-1, 1}, {1, -1}, {-1, -1}} {
		if got := load.Running(1, c[0], c[1]); got != 0 {
			t.Errorf("%v by %v: %v", c[0], c[1], got)
		}
	}
}

func TestImpactFactorFaults(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	for _, c := range []struct {
		name          string
		drop, stretch units.Length
		fields        []string
		kind          error
	}{
		{"drop below zero", -0.1, 1, []string{"drop"}, units.ErrNegative},
		{"drop no number", nan, 1, []string{"drop"}, units.ErrNotFinite},
		{"endless drop", inf, 1, []string{"drop"}, units.ErrNotFinite},
		{"absurd drop", 1e300, 1, []string{"drop"}, units.ErrOutOfRange},
		{"does not give", 1, 0, []string{"stretch"}, units.ErrMissing},
		{"does not give, put down gently", 0, 0, []string{"stretch"}, units.ErrMissing},
		{"gives next to nothing", 1, 5e-324, []string{"stretch"}, units.ErrOutOfRange},
		{"gives upward", 1, -0.1, []string{"stretch"}, units.ErrNegative},
		{"gives no number", 1, nan, []string{"stretch"}, units.ErrNotFinite},
		{"gives without end", 1, inf, []string{"stretch"}, units.ErrNotFinite},
		{"both", -1, -1, []string{"drop", "stretch"}, units.ErrNegative},
	} {
		factor, err := load.ImpactFactor(c.drop, c.stretch)
		var f *units.FieldError
		if factor != 0 || !errors.As(err, &f) || !errors.Is(err, c.kind) {
			t.Errorf("%s: %v, %v", c.name, factor, err)
			continue
		}
		var fields []string
		for line := range strings.Lines(err.Error()) {
			field, _, _ := strings.Cut(line, ":")
			fields = append(fields, field)
		}
		if !slices.Equal(fields, c.fields) {
			t.Errorf("%s: %v, want faults of %v", c.name, err, c.fields)
		}
	}
}

func TestDescriptionsJSON(t *testing.T) {
	type all struct {
		Drape  load.Drape  `json:"drape"`
		Gather load.Gather `json:"gather"`
		Cable  load.Cable  `json:"cable"`
	}
	const text = `{
		"drape": {"width": "2 m", "drop": "3 m", "below": "0.5 m", "cloth": "1 kg/m²", "fullness": 0.5, "hem": "0.5 kg/m"},
		"gather": {"width": "0.25 m", "lean": 0.75, "lift": "1 m"},
		"cable": {"line_mass": "0.4 kg/m", "count": 2, "from": "1 m", "to": "5 m", "slack": 0.1, "tail": "6 m", "tail_at": "5 m"}}`
	want := all{
		leg,
		load.Gather{Width: 0.25, Lean: 0.75, Lift: 1},
		load.Cable{LineMass: 0.4, Count: 2, From: 1, To: 5, Slack: 0.1, Tail: 6, TailAt: 5},
	}
	var in all
	if err := json.Unmarshal([]byte(text), &in); err != nil || in != want {
		t.Errorf("%+v, %v", in, err)
	}
	out, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var again all
	if err := json.Unmarshal(out, &again); err != nil || again != in {
		t.Errorf("out as %s, and in again: %+v, %v", out, again, err)
	}
	const bare = `{"drape":{"width":"0 m","drop":"0 m","cloth":"0 kg/m²"},"gather":{},"cable":{"line_mass":"0 kg/m","from":"0 m","to":"0 m"}}`
	if got, _ := json.Marshal(all{}); string(got) != bare {
		t.Errorf("what is not given is written: %s", got)
	}
}
