package lineset_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// What an order, a plan and a state are stored with is one word each, and is read back as what it was. A number that stands for
// nothing has no word, and a word that is none is refused with the words there are; what was to be set is left as it was.
func TestWordsOfAnOrder(t *testing.T) {
	const acts = `"hang", "strip", "add", "take", "fly", "lock", "unlock", "set line" or "free line"`
	t.Run("act", func(t *testing.T) {
		checkWords(t, map[lineset.Act]string{
			lineset.HangItem: "hang", lineset.StripItem: "strip", lineset.AddPieces: "add", lineset.TakePieces: "take", lineset.FlyTo: "fly",
			lineset.LockRope: "lock", lineset.UnlockRope: "unlock", lineset.SetLine: "set line", lineset.FreeLine: "free line",
		}, map[lineset.Act]string{0: "Act(0)", 10: "Act(10)", 255: "Act(255)"}, acts)
	})
	t.Run("from", func(t *testing.T) {
		checkWords(t, map[lineset.From]string{lineset.FromBare: "bare", lineset.FromLoaded: "loaded"},
			map[lineset.From]string{0: "From(0)", 3: "From(3)", 255: "From(255)"}, `"bare" or "loaded"`)
	})
	t.Run("job", func(t *testing.T) {
		checkWords(t, map[lineset.Job]string{lineset.Loading: "loading", lineset.Stripping: "stripping"},
			map[lineset.Job]string{0: "Job(0)", 3: "Job(3)", 255: "Job(255)"}, `"loading" or "stripping"`)
	})
	t.Run("hazard", func(t *testing.T) {
		checkWords(t, map[lineset.Hazard]string{
			lineset.Balanced: "balanced", lineset.RunsOut: "arbor-heavy: would run out", lineset.RunsIn: "batten-heavy: would run in",
			lineset.RestsOnStop: "batten-heavy: rests on the stop", lineset.HeldByLine: "held by the line that is set",
		}, nil, `a hazard as it is printed, such as "arbor-heavy: would run out"`)
		if got := lineset.Hazard(5).String(); got != "Hazard(5)" {
			t.Errorf("a hazard that there is not: %q", got)
		}
	})
}

type word interface {
	comparable
	fmt.Stringer
	encoding.TextMarshaler
}

func checkWords[W word, P interface {
	*W
	encoding.TextUnmarshaler
}](t *testing.T, words, none map[W]string, want string) {
	t.Helper()
	for w, text := range words {
		stored, err := w.MarshalText()
		if w.String() != text || string(stored) != text || err != nil {
			t.Errorf("%q is printed as %q and stored as %q, %v", text, w.String(), stored, err)
		}
		var back W
		if err := P(&back).UnmarshalText([]byte(text)); err != nil || back != w {
			t.Errorf("%q is read as %v, %v", text, back, err)
		}
		kept := w
		for _, wrong := range []string{"", "hoist"} {
			err := P(&kept).UnmarshalText([]byte(wrong))
			checkFault(t, err, units.FieldError{Value: fmt.Sprintf("%q", wrong), Want: want, Err: units.ErrUnknown})
			if kept != w {
				t.Errorf("%q was read, and %v is now %v", wrong, w, kept)
			}
		}
	}
	for w, text := range none {
		stored, err := w.MarshalText()
		if w.String() != text || stored != nil {
			t.Errorf("%q is printed as %q and stored as %q", text, w.String(), stored)
		}
		checkFault(t, err, units.FieldError{Value: text, Want: want, Err: units.ErrUnknown})
	}
}

// checkFault looks at every word of a fault.
func checkFault(t *testing.T, err error, want units.FieldError) {
	t.Helper()
	var fe *units.FieldError
	if !errors.As(err, &fe) || *fe != want {
		t.Errorf("%v\nwant %v", err, want.Error())
	}
}

// A step as it is called out to the crew.
func TestCallsOfSteps(t *testing.T) {
	for _, c := range []struct {
		step lineset.OrderStep
		want string
	}{
		{lineset.OrderStep{Act: lineset.HangItem, Item: "border", Place: 3}, "hang border"},
		{lineset.OrderStep{Act: lineset.HangItem, Place: 3}, "hang item 3"},
		{lineset.OrderStep{Act: lineset.StripItem, Item: "border"}, "strip border"},
		{lineset.OrderStep{Act: lineset.StripItem, Place: 12}, "strip item 12"},
		{lineset.OrderStep{Act: lineset.StripItem, Item: `a "b"`}, `strip "a \"b\""`},
		{lineset.OrderStep{Act: lineset.AddPieces, Piece: "44", Count: 5}, "add 5 of the 44"},
		{lineset.OrderStep{Act: lineset.TakePieces, Piece: "44", Count: 1}, "take out 1 of the 44"},
		{lineset.OrderStep{Act: lineset.FlyTo, Trim: 20 * units.Foot}, "fly to 20' 0\""},
		{lineset.OrderStep{Act: lineset.LockRope}, "shut the rope lock"},
		{lineset.OrderStep{Act: lineset.UnlockRope}, "open the rope lock"},
		{lineset.OrderStep{Act: lineset.SetLine, On: purchase.Batten}, "set a line on the batten"},
		{lineset.OrderStep{Act: lineset.SetLine, On: purchase.Arbor}, "set a line on the arbor"},
		{lineset.OrderStep{Act: lineset.FreeLine}, "free the line"},
		{lineset.OrderStep{}, "begin"},
		{lineset.OrderStep{Act: 10}, "begin"},
	} {
		if got := c.step.Call(units.US); got != c.want {
			t.Errorf("%v is called %q, want %q", c.step.Act, got, c.want)
		}
	}
	if got := fly(20).Call(units.Metric); got != "fly to 6.096 m" {
		t.Errorf("in metres: %q", got)
	}
}

// Limits are stored with a word on where they come from and read back whole: none is lost, and where a text is refused they are left as they
// were.
func TestLimitsAreStored(t *testing.T) {
	limits := within(20, 60)
	limits.RestsOnStop = true
	limits.HeldLine = lineset.ForceLimit{Max: 100 * units.PoundForce, Basis: "the line's rating"}
	text, err := json.Marshal(limits)
	if err != nil {
		t.Fatal(err)
	}
	var back lineset.OrderLimits
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(limits, back); diff != "" {
		t.Errorf("%s\n%s", diff, text)
	}
	kept := back
	if err := json.Unmarshal([]byte(`{"arbor_heavy":{"max":"20 lbf","basis":"house rule"},"batten_hevy":{}}`), &back); err == nil || back != kept {
		t.Errorf("%v; %+v", err, back)
	}
}
