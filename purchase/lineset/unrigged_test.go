package lineset_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// asked is every question of a set at one trim, with whether it was refused. A refusal gives no figure.
func asked(r *lineset.Rigged, trim units.Length) map[string]error {
	refused := map[string]error{}
	ask := func(what string, answer any, err error) {
		refused[what] = err
		if given := reflect.ValueOf(answer); err != nil && given.IsValid() && !given.IsZero() {
			refused[what] = fmt.Errorf("refused, and yet %+v: %s", answer, err.Error())
		}
	}
	at, err := r.At(trim)
	ask("At", at, err)
	ask("AtInto", nil, r.AtInto(new(lineset.State), trim))
	imbalance, err := r.Imbalance(trim)
	ask("Imbalance", imbalance, err)
	hand, err := r.Hand(trim)
	ask("Hand", hand, err)
	felt, err := r.Felt(trim)
	ask("Felt", felt, err)
	run, err := r.Run(trim, purchase.Out)
	ask("Run", run, err)
	letGo, err := r.LetGo(trim)
	ask("LetGo", letGo, err)
	flown, err := r.Fly(trim, 8, 1, 2*units.Second, 1)
	ask("Fly from", flown, err)
	flown, err = r.Fly(8, trim, 1, 2*units.Second, 1)
	ask("Fly to", flown, err)
	jolt, err := r.Jolt(purchase.Runaway{From: trim, Speed: 1})
	ask("Jolt", jolt, err)
	return refused
}

// A trim that the set reaches is answered, up to a hair beyond either end; one further off is refused by every question, with the
// trim and what would be right.
func TestEveryQuestionOfATrim(t *testing.T) {
	s := eighths(purchase.Double)
	for i := range s.Rigging.Batten.Lines {
		s.Rigging.Batten.Lines[i].EA = 100_000 * units.PoundForce
	}
	s.Rigging.Drag = 0.02
	r := mustRig(t, s)
	const hair = 1e-6
	for _, c := range []struct {
		trim units.Length
		ok   bool
	}{
		{1, true},
		{1 - hair/2, true},
		{1 - hair, true},
		{1 - 2*hair, false},
		{0.5, false},
		{-1, false},
		{14, true},
		{14 + hair/2, true},
		{14 + hair, true},
		{14 + 2*hair, false},
		{14.5, false},
		{1e12, false},
		{5, true},
	} {
		for what, err := range asked(r, c.trim) {
			if c.ok && err != nil {
				t.Errorf("%s %v: %v", what, c.trim, err)
			}
			var fe *units.FieldError
			if !c.ok && (!errors.As(err, &fe) || !errors.Is(err, units.ErrOutOfRange) || fe.Field != "trim" ||
				!strings.HasPrefix(fe.Want, "a trim that the set reaches, from 3' 3 3/8\" (1 m) to ") || !strings.HasSuffix(fe.Want, "(14 m)")) {
				t.Errorf("%s %v: %v", what, c.trim, err)
			}
		}
	}
	// 53 ft less 8 and 1.5 is not quite 43.5 ft in binary, and 47.5 ft, to which the batten comes, is a little beyond its highest trim.
	s = electric()
	s.Rigging = rigging(purchase.Single)
	if r = mustRig(t, s); r.Travel().Highest >= 47.5*units.Foot {
		t.Errorf("%v is not below 47.5 ft", r.Travel().Highest)
	}
	if run, err := r.LetGo(47.5 * units.Foot); err != nil || run.From != 47.5*units.Foot {
		t.Errorf("%+v, %v", run, err)
	}
	// An arbor that stops within a hair of the head block: what is a hair beyond its lowest trim, no rope can reach.
	s = eighths(purchase.Double)
	s.Rigging.Run.UpperStop = s.Rigging.HeadBlock - 3e-7
	r = mustRig(t, s)
	for what, err := range asked(r, r.Travel().Lowest-0.9e-6) {
		if !errors.Is(err, units.ErrOutOfRange) || !strings.Contains(err.Error(), "between which the ropes can run") {
			t.Errorf("%s beyond the head block: %v", what, err)
		}
	}
	var fe *units.FieldError
	if err := r.AtInto(nil, 5); !errors.As(err, &fe) || fe.Field != "state" || !errors.Is(err, units.ErrMissing) {
		t.Errorf("nowhere to put it: %v", err)
	}
}

// A Rigged that Rig did not make is asked in vain: every question says so, and what cannot refuse holds nothing.
func TestRiggedThatIsNone(t *testing.T) {
	r := new(lineset.Rigged)
	refused := asked(r, 5)
	limits := within(100, 100)
	_, refused["Order"] = r.Order(lineset.Loading, limits)
	_, refused["CheckOrder"] = r.CheckOrder(lineset.Order{From: lineset.FromBare}, limits)
	_, refused["LetGoAfter"] = r.LetGoAfter(lineset.Order{From: lineset.FromBare})
	for what, err := range refused {
		var fe *units.FieldError
		if !errors.As(err, &fe) || !errors.Is(err, units.ErrMissing) || fe.Value != "a Rigged that is none" || fe.Want != "one that Set.Rig or House.Rig made" {
			t.Errorf("%s: %v", what, err)
		}
	}
	if r.Bare() != 0 || r.Hung() != 0 || r.Ratio() != 0 || r.Load() != nil || r.Checks() != nil || r.Exceeds() || r.Set().Name != "" ||
		!cmp.Equal(r.Travel(), lineset.Travel{}) || !cmp.Equal(r.Low(), lineset.State{}) || !cmp.Equal(r.High(), lineset.State{}) ||
		r.Balance().Worst() != (lineset.Point{}) || len(r.WorkTrims(5, 5)) != 0 || r.Report().Exceeds {
		t.Errorf("%+v", r.Report())
	}
	none := new(lineset.RiggedHouse)
	if totals := none.Totals(); totals.Sets != 0 || none.Exceeds() || len(none.Report().Sets) != 0 {
		t.Errorf("%+v", totals)
	}
}

// The jolt at the stop is that of the stiffest of the lines that pull: its stretch is pull · path / EA. Two lines share 500 lb, 250 lbf
// each, the second four times as stiff; a third hangs slack beside them, and nothing is known of it.
func TestJoltOfTheStiffestLine(t *testing.T) {
	s := two(purchase.Single)
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	for i, ea := range []units.Force{5_000 * units.PoundForce, 20_000 * units.PoundForce} {
		s.Rigging.Batten.Lines[i].EA, s.Rigging.Batten.Lines[i].Path = ea, 100*units.Foot
	}
	run := purchase.Runaway{From: 5 * units.Foot, Speed: 12 * units.FootPerSecond}
	// 250 · 100 / 20 000 = 1.25 ft; 1 + 12 / √(32.174 · 1.25)
	got, err := rigFifties(t, s, 40).Jolt(run)
	if err != nil || !near.Abs(got, 1+12/6.34173, 1e-4) {
		t.Errorf("%v, %v; by hand 2.892", got, err)
	}
	s.Rigging.Batten.Lines[0].EA, s.Rigging.Batten.Lines[1].EA = s.Rigging.Batten.Lines[1].EA, s.Rigging.Batten.Lines[0].EA
	if again, err := rigFifties(t, s, 40).Jolt(run); err != nil || !near.Rel(again, got, 1e-9) {
		t.Errorf("the other way round %v, %v; want %v", again, err, got)
	}
	// Lines that give by 250 · 100 / 5000 = 5 ft: 1 + 12 / √(32.174 · 5)
	soft := s
	soft.Rigging.Batten.Lines = slices.Clone(s.Rigging.Batten.Lines)
	soft.Rigging.Batten.Lines[0].EA, soft.Rigging.Batten.Lines[1].EA = 5_000*units.PoundForce, 5_000*units.PoundForce
	if got, err := rigFifties(t, soft, 40).Jolt(run); err != nil || !near.Abs(got, 1+12/12.68347, 1e-4) {
		t.Errorf("%v, %v; by hand 1.946", got, err)
	}
	// A batten that weighs something, and 10 ft of slack: the others bear all of it, and stretch by pull · 100 ft / EA.
	s.Rigging.Batten.Pipe.Density = load.PipeSteelDensity
	s.Rigging.Batten.Lines = append(s.Rigging.Batten.Lines, load.Line{At: 41 * units.Foot, Long: 10 * units.Foot})
	r := rigFifties(t, s, 40)
	lines := r.Low().Share.Lines
	stretch := lines[0].Tension.In(units.PoundForce) * 100 / 20_000
	if other := lines[1].Tension.In(units.PoundForce) * 100 / 5_000; !lines[2].Slack || other < stretch {
		t.Fatalf("%+v", lines)
	}
	want := 1 + 12/math.Sqrt(32.17405*stretch)
	if got, err = r.Jolt(run); err != nil || !near.Rel(got, want, 1e-6) {
		t.Errorf("with a slack line %v, %v; want %v", got, err, want)
	}
	s.Rigging.Batten.Lines[1].EA, s.Rigging.Batten.Lines[1].Path = 0, 0
	var fe *units.FieldError
	if got, err := rigFifties(t, s, 40).Jolt(run); !errors.As(err, &fe) || fe.Field != "batten.lines[1].ea" || !errors.Is(err, units.ErrMissing) || got != 0 {
		t.Errorf("a line that does not give: %v, %v", got, err)
	}
}

// A house exceeds where a set of it does, or where all sets together want more pieces than there are, though each alone has enough.
func TestHouseExceeds(t *testing.T) {
	// Two of 25 lb come as close as the one of 50 that there is not: nothing is missing, and nothing is to be fetched.
	small := two(purchase.Single)
	small.Rigging.LiftLine, small.Rigging.HandLine, small.Hang[0].Mass = 0, 0, 50*units.Pound
	r, err := lineset.House{Name: "test", Sets: []lineset.Set{small}, Stock: arbor.Stock{
		{Name: "50", Mass: 50 * units.Pound, Thickness: 2 * units.Inch}, {Name: "25", Mass: 25 * units.Pound, Thickness: 1 * units.Inch, Count: 2},
	}}.Rig()
	if err != nil {
		t.Fatal(err)
	}
	want := []lineset.PieceCount{{Name: "50"}, {Name: "25", Used: 2, Wanted: 2, Stock: 2}}
	if diff := cmp.Diff(want, r.Totals().Pieces); diff != "" || r.Exceeds() {
		t.Errorf("exceeds %v (-want +got):\n%s", r.Exceeds(), diff)
	}
	a, b := two(purchase.Single), two(purchase.Single)
	b.Name = "other"
	for _, s := range []*lineset.Set{&a, &b} {
		s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	}
	exceeding := b
	exceeding.Rigging.Limits.LiftLine = lineset.ForceLimit{Max: 249 * units.PoundForce, Basis: "given in the test"}
	for _, c := range []struct {
		name    string
		sets    []lineset.Set
		pieces  int
		count   lineset.PieceCount
		exceeds int
		want    bool
	}{
		{"just enough for both", []lineset.Set{a, b}, 20, lineset.PieceCount{Name: "50", Used: 20, Wanted: 20, Stock: 20}, 0, false},
		{"one too few for both", []lineset.Set{a, b}, 19, lineset.PieceCount{Name: "50", Used: 20, Wanted: 20, Stock: 19}, 0, true},
		{"one too few for each", []lineset.Set{a, b}, 9, lineset.PieceCount{Name: "50", Used: 18, Wanted: 20, Stock: 9}, 2, true},
		{"a set exceeds", []lineset.Set{a, exceeding}, 40, lineset.PieceCount{Name: "50", Used: 20, Wanted: 20, Stock: 40}, 1, true},
	} {
		r, err := lineset.House{Name: "test", Stock: fifties(c.pieces), Sets: c.sets}.Rig()
		if err != nil {
			t.Fatal(err)
		}
		totals := r.Totals()
		if diff := cmp.Diff([]lineset.PieceCount{c.count}, totals.Pieces); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
		if totals.Sets != 2 || totals.Exceeding != c.exceeds || r.Exceeds() != c.want {
			t.Errorf("%s: %d sets exceed, the house %v; want %d, %v", c.name, totals.Exceeding, r.Exceeds(), c.exceeds, c.want)
		}
		if short := totals.Pieces[0].Short(); short != max(c.count.Wanted-c.pieces, 0) {
			t.Errorf("%s: short of %d", c.name, short)
		}
		report := r.Report()
		if report.Name != "test" || report.Caution != lineset.Caution || len(report.Sets) != 2 || report.Sets[1].Name != c.sets[1].Name ||
			report.Sets[0].Exceeds == (c.exceeds == 2) == false || report.Sets[1].Exceeds != (c.exceeds > 0) {
			t.Errorf("%s: %+v", c.name, report.Totals)
		}
		if r.House().Name != "test" || !cmp.Equal(r.House().Stock, fifties(c.pieces)) {
			t.Errorf("%s: %+v", c.name, r.House())
		}
	}
}
