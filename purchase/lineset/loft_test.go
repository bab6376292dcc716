package lineset_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// muled is the single purchase set with its two longest lines under a duct: lower loft blocks, and a mule block up to the
// others' height. Its hand line is double, its idler held.
func muled() lineset.Set {
	s := electric()
	s.Rigging = rigging(purchase.Single)
	r := &s.Rigging
	mule := []purchase.Mule{{Name: "mule block", On: purchase.Grid, Across: 33 * units.Foot, Height: 54 * units.Foot}}
	r.Loft = []lineset.Loft{{}, {}, {}, {Height: 50 * units.Foot, Mules: mule}, {Height: 49 * units.Foot, Mules: mule}}
	r.Batten.Lines = append([]load.Line{}, r.Batten.Lines...)
	r.HandPurchase, r.DeadEnds = purchase.Double, 55.5*units.Foot
	r.Rail = 1.25 * units.Foot
	r.Idler.Base = 30 * units.PoundForce
	return s
}

// What is written comes back as it was, and a rigging that has nothing of it is written without it.
func TestLoftRoundTrip(t *testing.T) {
	s := muled()
	text, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	var back lineset.Set
	if err := back.UnmarshalJSON(text); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(s, back); d != "" {
		t.Error(d)
	}
	plain, err := json.Marshal(electric())
	if err != nil {
		t.Fatal(err)
	}
	var fields struct{ Rigging map[string]json.RawMessage }
	if err := json.Unmarshal(plain, &fields); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"loft", "hand_purchase"} {
		if _, written := fields.Rigging[name]; written {
			t.Errorf("%s is written of a rigging that has none", name)
		}
	}
}

// The figures by hand, in feet and pounds: the travel ends 3 ft under the lowest loft block, and the mule block bears two lines
// that turn there. Each pulls at it with what it carries and its own weight up to it, along the lead that comes
// from the loft block and the one that goes on to the head block.
func TestMuleBlock(t *testing.T) {
	s := muled()
	s.Rigging.Limits.MuleBlock = lineset.ForceLimit{Max: 100 * units.PoundForce, Basis: "given in the test"}
	s.Rigging.MadeOff = 2.5 * units.Foot
	r := mustRig(t, s)
	// 53 − 8 − 1.5 of travel from 2.5 ft
	if got := r.Travel().UnderLoft.In(units.Foot); !near.Abs(got, 49-(2.5+43.5), 1e-9) {
		t.Errorf("%v ft under the lowest loft block", got)
	}
	low := r.Low()
	var across, up float64
	for _, line := range []struct {
		i            int
		loft, height float64 // of its loft block
	}{{3, 38, 50}, {4, 48, 49}} {
		tension := low.Share.Lines[line.i].Tension.In(units.PoundForce) + 0.11*(54-5)
		from := math.Hypot(line.loft-33, 54-line.height)
		on := math.Hypot(33, 1)
		across += tension * ((line.loft-33)/from - 33/on)
		up += tension * ((line.height-54)/from + 1/on)
	}
	got := low.Ropes.Load("mule block")
	if !near.Rel(got.Across.In(units.PoundForce), across, 1e-9) || !near.Rel(got.Up.In(units.PoundForce), up, 1e-9) {
		t.Errorf("mule block bears %v, by hand %v across and %v up", got, across, up)
	}
	c := named(t, r, "mule block load")
	if want := math.Hypot(across, up); !near.Abs(c.Ratio, want/100, 1e-6) || c.Where != "mule block" || (c.Verdict == lineset.Exceeds) != (want > 100) {
		t.Errorf("%v, by hand %v lbf", c, want)
	}
	for _, c := range mustRig(t, electric()).Checks() {
		if c.Name == "mule block load" {
			t.Errorf("%v of a set without", c)
		}
	}
}

// A hand line of another kind changes what the hand pulls, and no more than that of the balance which its own weight makes: with
// lift lines of two parts and one of its own at the arbor, the hand bears twice the imbalance.
func TestHandOfAnotherKind(t *testing.T) {
	s := electric()
	s.Rigging.HandLine = 0
	double := mustRig(t, s)
	s.Rigging.HandPurchase = purchase.Single
	s.Rigging.Rail = 23 * units.Foot // in the arbor's way, were there a dead end
	mixed := mustRig(t, s)
	if double.Ratio() != mixed.Ratio() || double.Balance().Low != mixed.Balance().Low {
		t.Errorf("ratio %v, balance %v; as double %v, %v", mixed.Ratio(), mixed.Balance().Low, double.Ratio(), double.Balance().Low)
	}
	h, err := mixed.Hand(s.Low)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := h.Out.Pull.In(units.Newton), 2*mixed.Balance().Low.In(units.Newton); !near.Rel(got, want, 1e-9) || !near.Rel(h.Feel.More.In(units.Newton), want, 1e-9) {
		t.Errorf("pull %v, lock asked for %v; want %v", h.Out.Pull, h.Feel.More, want)
	}
	if load := mixed.Low().Ropes.Load(purchase.RailDeadEnd); load != (purchase.Vector{}) {
		t.Errorf("a dead end at the rail bears %v", load)
	}
}

// A held idler keeps its tension whatever it weighs; at the lock the rope's weight up to it comes on top. A set that takes off
// more leaves the rope above the lock slack, and stays held.
func TestHeldIdler(t *testing.T) {
	s := electric()
	s.Rigging.Idler.Mass, s.Rigging.Idler.Base = 0, 30*units.PoundForce
	r := mustRig(t, s)
	h, err := r.Hand(s.Low)
	if err != nil {
		t.Fatal(err)
	}
	const grip = 30 + 0.167*1.5 // lbf, the rail 18 in above the idler
	if got := h.Feel.Inner.In(units.PoundForce); !near.Rel(got, grip, 1e-9) || len(h.Notes()) != 1 {
		t.Errorf("inner rope %v lbf, by hand %v; %q", got, grip, h.Notes())
	}
	c := named(t, r, "outer rope kept tight")
	if want := r.Balance().Low.In(units.PoundForce) / grip; !near.Rel(c.Ratio, want, 1e-9) || c.Verdict != lineset.Within {
		t.Errorf("%v, by hand ratio %v", c, want)
	}
	s.Rigging.Idler.Base = 5 * units.PoundForce
	r = mustRig(t, s)
	c = named(t, r, "outer rope kept tight")
	if c.Verdict != lineset.Exceeds || !r.Low().Ropes.Held() {
		t.Errorf("%v, held %v", c, r.Low().Ropes.Held())
	}
	h, err = r.Hand(s.Low)
	if notes := h.Notes(); err != nil || len(notes) != 2 || !contains(notes, "what holds the idler bears the rest") {
		t.Errorf("%q, %v", notes, err)
	}
}

// Where loft blocks hang, and over what mule blocks a line goes, changes no balance, no travel and no stack: only its ends pull at
// batten and arbor.
func TestPropLoftLeavesTheBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSet(t)
		plain, err := s.Rig(stock)
		if err != nil {
			t.Skip(err)
		}
		s.Rigging.Loft = make([]lineset.Loft, 5)
		for i := range s.Rigging.Loft {
			l := &s.Rigging.Loft[i]
			l.Height = units.Length(rapid.Float64Range(15.3, 17).Draw(t, "height"))
			if rapid.Bool().Draw(t, "mule") {
				l.Mules = []purchase.Mule{{Name: "mule", Across: units.Length(rapid.Float64Range(1, 2).Draw(t, "across")), Height: 20 * units.Metre}}
			}
		}
		own, err := s.Rig(stock)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(plain.Balance().Curve, own.Balance().Curve, cmp.Comparer(units.Near(1e-9*units.Newton))); d != "" {
			t.Fatal(d)
		}
	})
}
