package lineset_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// A line that stretches needs no path: it is the whole rope. By hand, in feet: 50 up
// from the batten at 4 to the loft block at 54; on to the head block 1 higher and
// 8, 18 ... 48 across; 2 down to the arbor's top at 53 and, in double purchase,
// 2.5 up to the dead end at 55.5.
func TestPathOfALineThatStretches(t *testing.T) {
	for kind, rest := range map[purchase.Kind]float64{purchase.Single: 52, purchase.Double: 54.5} {
		set := electric()
		set.Rigging = rigging(kind)
		for i := range set.Rigging.Batten.Lines {
			set.Rigging.Batten.Lines[i].EA = 20_000 * units.PoundForce
		}
		byHand := set
		byHand.Rigging.Batten.Lines = append(byHand.Rigging.Batten.Lines[:0:0], set.Rigging.Batten.Lines...)
		for i := range byHand.Rigging.Batten.Lines {
			across := 8 + 10*float64(i)
			byHand.Rigging.Batten.Lines[i].Path = units.Foot.Scale(rest + math.Sqrt(across*across+1))
		}
		stiff := set
		stiff.Rigging = rigging(kind)
		got, want, rigid := mustRig(t, set), mustRig(t, byHand), mustRig(t, stiff)
		moved := false
		for i, line := range got.High().Share.Lines {
			if w := want.High().Share.Lines[i].Tension; !near.Rel(line.Tension.In(units.PoundForce), w.In(units.PoundForce), 1e-9) {
				t.Errorf("%v: line %d carries %v, with the path by hand %v", kind, i+1, line.Tension, w)
			}
			moved = moved || !near.Rel(line.Tension.In(units.PoundForce), rigid.High().Share.Lines[i].Tension.In(units.PoundForce), 0.01)
		}
		if !moved {
			t.Errorf("%v: the lines carry what they would if they did not stretch", kind)
		}
		// What was described stays as it was: a path worked out is no part of it.
		if path := set.Rigging.Batten.Lines[0].Path; path != 0 {
			t.Errorf("%v: the caller's line has a path of %v now", kind, path)
		}
		if diff := cmp.Diff(set, got.Set()); diff != "" {
			t.Errorf("%v: %s", kind, diff)
		}
	}
}

// A path that is given is taken as it is, and one that cannot be worked out for some
// other fault adds none of its own.
func TestPathsAndFaults(t *testing.T) {
	set := electric()
	lines := set.Rigging.Batten.Lines
	for i := range lines {
		lines[i].EA = 20_000 * units.PoundForce
	}
	worked := mustRig(t, set).High().Share.Lines[2].Tension
	lines[2].Path = 300 * units.Foot
	if given := mustRig(t, set).High().Share.Lines[2].Tension; given >= worked.Scale(0.9) {
		t.Errorf("three times as long the middle line carries %v, before %v", given, worked)
	}
	set.Rigging.Rail = 0
	for _, c := range []struct {
		name   string
		ea     units.Force
		fields []string
	}{
		{"rail", 20_000 * units.PoundForce, []string{"rail"}},
		{"rail and stiffness", -1, []string{"batten.lines[0].ea", "rail"}},
		{"stiffness not a number", units.Force(math.NaN()), []string{"batten.lines[0].ea", "rail"}},
	} {
		lines[0].EA = c.ea
		err := set.Rigging.Validate()
		many, _ := err.(interface{ Unwrap() []error })
		if many == nil || len(many.Unwrap()) != len(c.fields) {
			t.Fatalf("%s: error %v, want one for each of %v", c.name, err, c.fields)
		}
		for i, e := range many.Unwrap() {
			var fe *units.FieldError
			if !errors.As(e, &fe) || fe.Field != c.fields[i] {
				t.Errorf("%s: error %v, want one of %s", c.name, e, c.fields[i])
			}
		}
	}
}

// A triple purchase set: 500 lb answers 1500, 9 ft of arbor travel give 27 of batten
// travel, each beam block bears two parts of its line, and the rail must be
// under the arbor.
func TestTripleSet(t *testing.T) {
	set := weightless()
	set.Rigging.Purchase = purchase.Triple
	set.Rigging.Run.LowerStop = 36 * units.Foot
	set.Rigging.Arbor.Capacity = 2000 * units.Pound
	set.Rigging.Limits.BeamBlock = lineset.ForceLimit{Max: 200 * units.PoundForce, Basis: "given in the test"}
	pieces := arbor.Stock{{Name: "50", Mass: 50 * units.Pound, Thickness: 2 * units.Inch, Count: 40}}
	r, err := set.Rig(pieces)
	if err != nil {
		t.Fatal(err)
	}
	st := r.High()
	_, line := st.WorstLine()
	_, block := st.Ropes.Heaviest(purchase.BeamBlock)
	for _, row := range []struct {
		name      string
		got, want float64
	}{
		{"lb wanted at the arbor", r.Counterweight().Loaded.Wanted.In(units.Pound), 1500},
		{"pieces", float64(r.Counterweight().Stack.Pieces), 30},
		{"ft of batten travel", r.Travel().Batten.In(units.Foot), 27},
		{"beam block over its line", units.Ratio(block, line), 2},
	} {
		if !near.Rel(row.got, row.want, 1e-6) {
			t.Errorf("%s: %v, want %v", row.name, row.got, row.want)
		}
	}
	found := false
	for _, c := range r.Checks() {
		if c.Name == "lift line dead end" {
			t.Errorf("a dead end is checked where there is none: %v", c)
		}
		if c.Name == "lift line beam block" {
			found = true
			if c.Verdict != lineset.Exceeds || !near.Rel(c.Demand.(units.Force).In(units.PoundForce), block.In(units.PoundForce), 1e-9) {
				t.Errorf("%v; want more than 200 lbf, %v", c, block)
			}
		}
	}
	if !found {
		t.Error("the beam blocks are not checked")
	}
	// The ropes' weight by the closed form for plumb paths: w·(y − x) + w_hand·a.
	set.Rigging.LiftLine, set.Rigging.HandLine = 11*units.PoundPerHundredFeet, 16.7*units.PoundPerHundredFeet
	if r, err = set.Rig(pieces); err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Balance().Curve {
		want := 5*0.11*(p.ArborTop-p.Trim).In(units.Foot) + 0.167*8
		if !near.Rel(p.Ropes.In(units.PoundForce), want, 1e-9) {
			t.Errorf("at %v the ropes weigh %v lbf, want %v", p.Trim, p.Ropes.In(units.PoundForce), want)
		}
	}
	set.Rigging.Limits.BeamBlock.Basis = ""
	var noBasis *units.FieldError
	if _, err = set.Rig(pieces); !errors.As(err, &noBasis) || noBasis.Field != "rigging.limits.beam_block.basis" {
		t.Errorf("a limit on nobody's word: error %v", err)
	}
	set.Rigging.Limits.BeamBlock = lineset.ForceLimit{}
	set.Rigging.Rail = 40 * units.Foot
	var fe *units.FieldError
	if _, err = set.Rig(pieces); !errors.As(err, &fe) || fe.Field != "rigging.rail" {
		t.Errorf("a rail over the arbor's foot: error %v", err)
	}
}
