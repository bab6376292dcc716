package lineset_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// bridged is the electric with a loading bridge, its pieces 6 in above the arbor's foot.
func bridged() lineset.Set {
	s := electric()
	s.Rigging.Bed = 6 * units.Inch
	s.Rigging.Run.Grid = 56 * units.Foot
	s.Rigging.Run.Bridges = []arbor.Bridge{{Name: "loading bridge", Floor: 40 * units.Foot, Low: 1 * units.Foot, High: 6 * units.Foot}}
	return s
}

// The stack is 4 pieces of pipe weight and, on a plate of 1/8 in, the show weight. At low
// trim of 5 ft, 1 ft above its lowest, the arbor's foot is at 44.5 ft and its bed at 45:
// arms, up to 46 ft, reach 12 in on the rods. Three pieces of 2 in and one of 1 in come
// to 7 in, two of 2 in on the plate to 11 1/8.
func TestFlight(t *testing.T) {
	set := bridged()
	r := mustRig(t, set)
	set.Rigging.Run.Bridges[0].Name = "changed afterwards"
	f := r.Flight()
	reach, err := f.Reach("loading bridge", 5*units.Foot, r.Counterweight().Stack)
	if err != nil || reach.First != 1 || reach.Last != 6 || reach.Above != 14 || !near.Abs(reach.To.In(units.Inch), 12, 1e-9) {
		t.Errorf("%+v, %v", reach, err)
	}
	travel := r.Travel()
	// The rigging's own blocks stand around the run.
	if f.UnderHead.Clear != travel.UnderHead || f.UnderLoft.Clear != travel.UnderLoft || !near.Abs(f.UnderGrid.Clear.In(units.Foot), 56-50, 1e-9) {
		t.Errorf("%+v of %+v", f, travel)
	}
	if got := r.Set().Rigging.Run.Bridges[0].Name; got != "loading bridge" {
		t.Errorf("the bridge is now %q", got)
	}
	if f := (&lineset.Rigged{}).Flight(); f.Arbor != 0 {
		t.Errorf("of a Rigged that Rig did not make: %+v", f)
	}
}

func TestRunOfARigging(t *testing.T) {
	for _, tt := range []struct {
		name, reason string
		change       func(*lineset.Set)
		field        string // none: accepted
		kind         error
	}{
		{"said twice", "the same height is no fault", func(s *lineset.Set) { s.Rigging.Run.HeadBlock, s.Rigging.Run.LoftBlocks = 55*units.Foot, 54*units.Foot }, "", nil},
		{"another head block", "which of the two?", func(s *lineset.Set) { s.Rigging.Run.HeadBlock = 56 * units.Foot }, "rigging.run.head_block", units.ErrOutOfRange},
		{"other loft blocks", "which of the two?", func(s *lineset.Set) { s.Rigging.Run.LoftBlocks = 53 * units.Foot }, "rigging.run.loft_blocks", units.ErrOutOfRange},
		{"bridge without reach", "must be given", func(s *lineset.Set) { s.Rigging.Run.Bridges[0].High = 0 }, "rigging.run.bridges[0].high", units.ErrMissing},
		{"bed too high", "the room ends above the arbor", func(s *lineset.Set) { s.Rigging.Bed = 2 * units.Foot }, "rigging.bed", units.ErrOutOfRange},
		{"negative bed", "pieces do not hang", func(s *lineset.Set) { s.Rigging.Bed = -1 }, "rigging.bed", units.ErrNegative},
		{"high trim in metres", "a slip of the unit", func(s *lineset.Set) { s.High = 28_000 }, "high_trim", units.ErrOutOfRange},
	} {
		s := bridged()
		tt.change(&s)
		_, err := s.Rig(stock)
		var fe *units.FieldError
		switch {
		case tt.kind == nil && err != nil:
			t.Errorf("%s: %s: %v", tt.name, tt.reason, err)
		case tt.kind != nil && (!errors.As(err, &fe) || fe.Field != tt.field || !errors.Is(err, tt.kind) || strings.Count(err.Error(), "\n") > 0):
			t.Errorf("%s: %s: %v", tt.name, tt.reason, err)
		}
	}
}

// A rigging without them is written as it was before there were any.
func TestRunJSON(t *testing.T) {
	text, err := json.Marshal(electric())
	for _, name := range []string{"bed", "bridges", "grid"} {
		if err != nil || strings.Contains(string(text), `"`+name+`"`) {
			t.Errorf("%q is written of a rigging that has none, %v", name, err)
		}
	}
	var back lineset.Set
	if text, err = json.Marshal(bridged()); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &back); err != nil || back.Rigging.Run.Bridges[0].Name != "loading bridge" || back.Rigging.Bed != 6*units.Inch {
		t.Errorf("%+v, %v", back.Rigging.Run, err)
	}
}
