package lineset_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// house is a house of two sets, one of them hung on a shared rigging.
func house() lineset.House {
	return lineset.House{
		Name: "test", Stock: append(arbor.Stock{}, stock...),
		Riggings: map[string]lineset.Rigging{"single": rigging(purchase.Single)},
		Sets: []lineset.Set{
			electric(),
			{
				Name: "border", Like: "single", Low: 20 * units.Foot, High: 44 * units.Foot, Balance: lineset.Even,
				Hang: load.Hang{{Name: "cloth", Mass: 71 * units.Pound, From: 1 * units.Foot, To: 41 * units.Foot, Height: 8 * units.Foot, OnDeck: load.Piles}},
			},
		},
	}
}

func TestHouseRefused(t *testing.T) {
	single := func(h *lineset.House, change func(*lineset.Rigging)) {
		r := h.Riggings["single"]
		r.Batten.Lines = append([]load.Line{}, r.Batten.Lines...)
		change(&r)
		h.Riggings["single"] = r
	}
	own := func(h *lineset.House, change func(*lineset.Loft)) {
		single(h, func(r *lineset.Rigging) {
			r.Loft = make([]lineset.Loft, len(r.Batten.Lines))
			change(&r.Loft[3])
		})
	}
	for _, c := range []struct {
		name   string
		change func(*lineset.House)
		field  string
		of     string
		kind   error
		reason string
	}{
		{"no sets", func(h *lineset.House) { h.Sets = nil }, "sets", "", units.ErrMissing, "a house without sets is a slip"},
		{"no name", func(h *lineset.House) { h.Sets[0].Name = "" }, "sets[0].name", "", units.ErrMissing, "sets are found by name"},
		{"duplicate name", func(h *lineset.House) { h.Sets[1].Name = "first electric" }, "sets[1].name", `"first electric"`, units.ErrDuplicate, "sets are found by name"},
		{"negative mass", func(h *lineset.House) { h.Sets[0].Hang[1].Mass = -1 }, "sets[0].hang[1].mass", `"cable tail" of "first electric"`, units.ErrNegative, "things have mass"},
		{"NaN mass", func(h *lineset.House) { h.Sets[0].Hang[1].Mass = units.Mass(math.NaN()) }, "sets[0].hang[1].mass", `"cable tail" of "first electric"`, units.ErrNotFinite, "no NaN goes in"},
		{"item off the batten", func(h *lineset.House) { h.Sets[0].Hang[0].To = 50 * units.Foot }, "sets[0].hang[0].to", `"12 fixtures" of "first electric"`, units.ErrOutOfRange, "the batten is 42 ft long"},
		{"low above high", func(h *lineset.House) { h.Sets[0].Low = 30 * units.Foot }, "sets[0].low_trim", `"first electric"`, units.ErrOutOfRange, "swapped trims"},
		{"infinite trim", func(h *lineset.House) { h.Sets[0].High = units.Length(math.Inf(1)) }, "sets[0].high_trim", `"first electric"`, units.ErrNotFinite, "no infinity goes in"},
		{"trim as made off of no possible size", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.MadeOff = units.Length(math.NaN()) }) }, `riggings.single.made_off`, "", units.ErrNotFinite, "no NaN goes in"},
		{"dead end limit without a basis", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Limits.DeadEnd.Max = 1 }) }, `riggings.single.limits.dead_end.basis`, "", units.ErrMissing, "on whose word?"},
		{"no balance", func(h *lineset.House) { h.Sets[0].Balance = 0 }, "sets[0].balance", `"first electric"`, units.ErrMissing, "a choice that must be made"},
		{"no rigging", func(h *lineset.House) { h.Sets[1].Like = "" }, "sets[1].rigging", `"border"`, units.ErrMissing, "nothing is installed there"},
		{"two riggings", func(h *lineset.House) { h.Sets[1].Rigging = rigging(purchase.Single) }, "sets[1].like", `"border"`, units.ErrDuplicate, "which of the two?"},
		{"unknown rigging", func(h *lineset.House) { h.Sets[1].Like = "treble" }, "sets[1].like", `"border"`, units.ErrUnknown, "the house has no such rigging"},
		{"no purchase", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Purchase = 0 }) }, `riggings.single.purchase`, "", units.ErrMissing, "a choice that must be made"},
		{"zero lift lines", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Batten.Lines = nil }) }, `riggings.single.batten.lines`, "", units.ErrMissing, "nothing holds the batten"},
		{"line beyond the end", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Batten.Lines[4].At = 43 * units.Foot })
		}, `riggings.single.batten.lines[4].at`, "", units.ErrOutOfRange, "the batten is 42 ft long"},
		{"two lines at one place", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Batten.Lines[1].At = r.Batten.Lines[2].At })
		}, `riggings.single.batten.lines[2].at`, "", units.ErrDuplicate, "a beam on two supports at one place has no answer"},
		{"arbor taller than its run", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Run.UpperStop = 9 * units.Foot })
		}, `riggings.single.run.upper_stop`, "", units.ErrOutOfRange, "8 ft of arbor over a stop at 1.5 ft"},
		{"batten into the loft blocks", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.LoftBlocks = 45 * units.Foot })
		}, `riggings.single.loft_blocks`, "", units.ErrOutOfRange, "made off at 4 ft it would reach 47.5 ft"},
		{"arbor through the head block", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Run.UpperStop = 56 * units.Foot })
		}, `riggings.single.run.upper_stop`, "", units.ErrOutOfRange, "the head block is at 55 ft"},
		{"idler in the arbor's way", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Idler.Height = 3 * units.Foot })
		}, `riggings.single.idler.height`, "", units.ErrOutOfRange, "the arbor's foot comes down to 1.5 ft"},
		{"line over the arbor", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Offset = 0; r.Batten.Lines[0].At = 0 })
		}, `riggings.single.offset`, "", units.ErrMissing, "its loft block would be the head block"},
		{"no head block", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.HeadBlock = 0 }) }, `riggings.single.head_block`, "", units.ErrMissing, "blocks have a place"},
		{"no trim as made off", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.MadeOff = 0 }) }, `riggings.single.made_off`, "", units.ErrMissing, "nothing says where the batten is"},
		{"negative idler", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Idler.Mass = -1 }) }, `riggings.single.idler.mass`, "", units.ErrNegative, "things have mass"},
		{"negative offset", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Offset = -1 }) }, `riggings.single.offset`, "", units.ErrNegative, "the arbor is beside the batten"},
		{"offset of no possible size", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Offset = 1e12 }) }, `riggings.single.offset`, "", units.ErrOutOfRange, "once, not for every line"},
		{"negative lift line", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.LiftLine = -1 }) }, `riggings.single.lift_line`, "", units.ErrNegative, "ropes weigh something or nothing"},
		{"negative hand line", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.HandLine = -1 }) }, `riggings.single.hand_line`, "", units.ErrNegative, "ropes weigh something or nothing"},
		{"no arbor length", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Arbor.Length = 0 }) }, `riggings.single.arbor.length`, "", units.ErrMissing, "reported once, though travel and ropes both want it"},
		{"rail over the head block", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Rail = 60 * units.Foot }) }, `riggings.single.rail`, "", units.ErrOutOfRange, "the lock is on a rope below it"},
		{"no dead ends", func(h *lineset.House) { h.Sets[0].Rigging.DeadEnds = 0 }, "sets[0].rigging.dead_ends", `"first electric"`, units.ErrMissing, "double purchase has them"},
		{"rail in the arbor's way", func(h *lineset.House) { h.Sets[0].Rigging.Rail = 23 * units.Foot }, "sets[0].rigging.rail", `"first electric"`, units.ErrOutOfRange, "the arbor's foot comes down to 22 ft"},
		{"rail over the arbor", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Rail = 46 * units.Foot }) }, `riggings.single.rail`, "", units.ErrOutOfRange, "the arbor's foot goes up to 45 ft"},
		{"unknown hand line", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.HandPurchase = 7 }) }, `riggings.single.hand_purchase`, "", units.ErrUnknown, "there are three"},
		{"double hand line without dead ends", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.HandPurchase, r.Rail = purchase.Double, 1.25*units.Foot })
		}, `riggings.single.dead_ends`, "", units.ErrMissing, "the hand line has one there"},
		{"dead end in the arbor's way", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.HandPurchase, r.DeadEnds = purchase.Double, 55.5*units.Foot })
		}, `riggings.single.rail`, "", units.ErrOutOfRange, "the foot comes down to 1.5 ft, and the rail is at 3.5 ft"},
		{"negative base", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Idler.Base = -1 }) }, `riggings.single.idler.base`, "", units.ErrNegative, "ropes do not push"},
		{"negative loft blocks", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.LoftBlocks = -1 }) }, `riggings.single.loft_blocks`, "", units.ErrNegative, "below the deck"},
		{"loft of three lines of five", func(h *lineset.House) { single(h, func(r *lineset.Rigging) { r.Loft = make([]lineset.Loft, 3) }) }, `riggings.single.loft`, "", units.ErrOutOfRange, "which three?"},
		{"batten into one loft block", func(h *lineset.House) { own(h, func(l *lineset.Loft) { l.Height = 47 * units.Foot }) }, `riggings.single.loft[3].height`, "", units.ErrOutOfRange, "made off at 4 ft it reaches 47.5 ft"},
		{"one loft block on the deck", func(h *lineset.House) { own(h, func(l *lineset.Loft) { l.Height = -1 }) }, `riggings.single.loft[3].height`, "", units.ErrOutOfRange, "below the batten"},
		{"loft block of no possible size", func(h *lineset.House) {
			own(h, func(l *lineset.Loft) { l.Height = units.Length(math.NaN()) })
		}, `riggings.single.loft[3].height`, "", units.ErrNotFinite, "no NaN goes in"},
		{"mule block without a name", func(h *lineset.House) {
			own(h, func(l *lineset.Loft) { l.Mules = []purchase.Mule{{Across: 5, Height: 17}} })
		}, `riggings.single.loft[3].mules[0].name`, "", units.ErrMissing, "its load is found by name"},
		{"mule block on the batten", func(h *lineset.House) {
			own(h, func(l *lineset.Loft) {
				l.Mules = []purchase.Mule{{Name: "mule", On: purchase.Batten, Across: 5, Height: 17}}
			})
		}, `riggings.single.loft[3].mules[0].on`, "", units.ErrOutOfRange, "it would fly with it"},
		{"mule block straight over the loft block", func(h *lineset.House) {
			own(h, func(l *lineset.Loft) {
				l.Mules = []purchase.Mule{{Name: "mule", Across: (7 + 31) * units.Foot, Height: 60 * units.Foot}}
			})
		}, `riggings.single.loft[3].mules[0]`, "", purchase.ErrNoTurn, "the line runs straight past the loft block"},
		{"limit without a basis", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Limits.HeadBlock.Max = 1 })
		}, `riggings.single.limits.head_block.basis`, "", units.ErrMissing, "on whose word?"},
		{"basis without a limit", func(h *lineset.House) {
			single(h, func(r *lineset.Rigging) { r.Limits.HeadBlock.Basis = "common practice" })
		}, `riggings.single.limits.head_block.max`, "", units.ErrMissing, "the figure was forgotten"},
		{"no stock", func(h *lineset.House) { h.Stock = nil }, "stock", "", units.ErrMissing, "nothing could be answered"},
		{"negative stock", func(h *lineset.House) { h.Stock[0].Mass = -1 }, "stock[0].mass", `"44"`, units.ErrNegative, "things have mass"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := house()
			c.change(&h)
			rigged, err := h.Rig()
			if rigged != nil {
				t.Fatalf("half of a house was computed: %s", c.reason)
			}
			var fe *units.FieldError
			if !errors.As(err, &fe) {
				t.Fatalf("error %v, want a *units.FieldError: %s", err, c.reason)
			}
			if fe.Field != c.field || fe.Of != c.of || !errors.Is(err, c.kind) || fe.Want == "" {
				t.Errorf("error %v; want field %s of %s, %q and a remedy: %s", err, c.field, c.of, c.kind, c.reason)
			}
			if n := strings.Count(err.Error(), "\n") + 1; n != 1 {
				t.Errorf("%d faults reported for one: %v", n, err)
			}
		})
	}
}

// A batten that would tip is refused with the trim at which it would; a trim that
// the set never reaches does not count.
func TestTipping(t *testing.T) {
	s := electric()
	s.Hang = load.Hang{{Name: "speaker", Mass: 3000 * units.Pound, From: 0, To: 0}}
	_, err := s.Rig(stock)
	var tip *load.TipError
	var fe *units.FieldError
	if !errors.As(err, &tip) || !errors.As(err, &fe) || fe.Field != "hang" {
		t.Errorf("error %v, want a *load.TipError at hang", err)
	}
	// Piled on the deck at trim 0, the balance of the two is only lost below the reach.
	s.Hang = load.Hang{
		{Name: "speaker", Mass: 3000 * units.Pound, From: 0, To: 0},
		{Name: "curtain", Mass: 1000 * units.Pound, From: 20 * units.Foot, To: 42 * units.Foot, Height: 3 * units.Foot, OnDeck: load.Piles},
	}
	if _, err := s.Rig(stock); err != nil {
		t.Errorf("refused for a trim below the reach: %v", err)
	}
}

// A rigging reports all that is wrong with it in one go, and the set that hangs on
// it reports its own beside.
func TestRiggingFaultsComeTogether(t *testing.T) {
	s := electric()
	r := &s.Rigging
	r.Purchase, r.HeadBlock, r.LoftBlocks, r.LiftLine = 0, 0, units.Length(math.NaN()), -1
	r.Batten.Length, r.Arbor.Room, r.Idler.Height = -5, -1, 60*units.Foot
	s.Hang[0].Mass = -1
	_, err := s.Rig(stock)
	for _, field := range []string{
		"rigging.purchase", "rigging.head_block", "rigging.loft_blocks", "rigging.lift_line",
		"rigging.batten.length", "rigging.arbor.room", "rigging.idler.height", "hang[0].mass",
	} {
		if err == nil || !strings.Contains(err.Error(), field) {
			t.Errorf("%s is not reported in: %v", field, err)
		}
	}
}

func TestFaultsComeTogether(t *testing.T) {
	h := house()
	h.Stock[1].Thickness = 0
	h.Sets[0].Low = 0
	h.Sets[0].Hang[0].Mass = -5
	h.Sets[1].Balance = 9
	h.Sets[1].Hang[0].Height = 0
	_, err := h.Rig()
	for _, field := range []string{"stock[1].thickness", "sets[0].low_trim", "sets[0].hang[0].mass", "sets[1].balance", "sets[1].hang[0].height"} {
		if err == nil || !strings.Contains(err.Error(), field) {
			t.Errorf("%s is not reported in: %v", field, err)
		}
	}
}

func TestLikeNeedsAHouse(t *testing.T) {
	s := electric()
	s.Like = "single"
	if _, err := s.Rig(stock); !errors.Is(err, units.ErrUnknown) {
		t.Errorf("error %v, want %q", err, units.ErrUnknown)
	}
}

func TestTextRefused(t *testing.T) {
	for _, c := range []struct {
		name, text, field string
		kind              error
		reason            string
	}{
		{"missing unit", `{"sets":[{"name":"a","low_trim":"5"}]}`, "sets[0].low_trim", units.ErrNoUnit, "5 of what?"},
		{"bare number", `{"sets":[{"name":"a","low_trim":5}]}`, "sets[0].low_trim", units.ErrWrongType, "5 of what?"},
		{"wrong dimension", `{"sets":[{"name":"a","low_trim":"5 lb"}]}`, "sets[0].low_trim", units.ErrWrongQuantity, "a trim is a length"},
		{"NaN", `{"sets":[{"name":"a","low_trim":"NaN ft"}]}`, "sets[0].low_trim", units.ErrNotFinite, "no NaN goes in"},
		{"unknown field", `{"sets":[{"name":"a","lowtrim":"5 ft"}]}`, "sets[0].lowtrim", units.ErrUnknown, "a slip of the pen must not be ignored"},
		{"mule block on the moon", `{"sets":[{"name":"a","rigging":{"loft":[{},{"mules":[{"on":"moon"}]}]}}]}`, "sets[0].rigging.loft[1].mules[0].on", units.ErrUnknown, "there is no such body"},
		{"hand line of four parts", `{"sets":[{"name":"a","rigging":{"hand_purchase":"quadruple"}}]}`, "sets[0].rigging.hand_purchase", units.ErrUnknown, "there are three"},
		{"unknown word", `{"sets":[{"name":"a","balance":"middle"}]}`, "sets[0].balance", units.ErrUnknown, "there are three choices"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var h lineset.House
			err := h.UnmarshalJSON([]byte(c.text))
			var fe *units.FieldError
			if !errors.As(err, &fe) {
				t.Fatalf("error %v, want a *units.FieldError: %s", err, c.reason)
			}
			if fe.Field != c.field || fe.Of != `"a"` || !errors.Is(err, c.kind) {
				t.Errorf("error %v; want field %s of \"a\", %q: %s", err, c.field, c.kind, c.reason)
			}
		})
	}
	for _, text := range []string{"", " ", "{", "[]", "null", "{} {}", "\xff", strings.Repeat("[", 1<<20), strings.Repeat(`{"sets":[`, 1<<12)} {
		var h lineset.House
		if err := h.UnmarshalJSON([]byte(text)); err == nil {
			t.Errorf("%.20q was accepted", text)
		}
	}
}
