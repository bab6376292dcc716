package lineset_test

import (
	"encoding/json"
	"errors"
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

// tens is a stock in which orders can be reckoned by head: pieces of 10 lb, an inch thick.
var tens = arbor.Stock{{Name: "10", Mass: 10 * units.Pound, Thickness: 1 * units.Inch, Count: 60}}

// plain is a set on weightless ropes whose empty arbor balances the bare batten, so
// that it needs no pipe weight, and without spreader plates.
func plain(t testing.TB, kind purchase.Kind, hang ...load.Item) lineset.Set {
	t.Helper()
	s := lineset.Set{Name: "plain", Rigging: rigging(kind), Low: 5 * units.Foot, High: 28 * units.Foot, Balance: lineset.AtHigh, Hang: hang}
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	s.Rigging.Arbor.Plate = arbor.Plate{}
	bare, err := s.Rigging.Batten.Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	s.Rigging.Arbor.Tare = bare.Bare().Scale(kind.Ratio())
	return s
}

func rigTens(t testing.TB, s lineset.Set) *lineset.Rigged {
	t.Helper()
	r, err := s.Rig(tens)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func pounds(name string, lb float64) load.Item {
	return load.Item{Name: name, Mass: units.Pound.Scale(lb), From: 10 * units.Foot, To: 30 * units.Foot}
}

// within is a limit for each side, in pounds.
func within(arborHeavy, battenHeavy float64) lineset.OrderLimits {
	return lineset.OrderLimits{
		ArborHeavy:  lineset.ForceLimit{Max: units.PoundForce.Scale(arborHeavy), Basis: "given in the test"},
		BattenHeavy: lineset.ForceLimit{Max: units.PoundForce.Scale(battenHeavy), Basis: "given in the test"},
	}
}

func hang(item string) lineset.OrderStep { return lineset.OrderStep{Act: lineset.HangItem, Item: item} }
func strip(item string) lineset.OrderStep {
	return lineset.OrderStep{Act: lineset.StripItem, Item: item}
}

func add(n int) lineset.OrderStep {
	return lineset.OrderStep{Act: lineset.AddPieces, Piece: "10", Count: n}
}

func take(n int) lineset.OrderStep {
	return lineset.OrderStep{Act: lineset.TakePieces, Piece: "10", Count: n}
}

func fly(feet float64) lineset.OrderStep {
	return lineset.OrderStep{Act: lineset.FlyTo, Trim: units.Foot.Scale(feet)}
}

var (
	lock   = lineset.OrderStep{Act: lineset.LockRope}
	unlock = lineset.OrderStep{Act: lineset.UnlockRope}
)

// The state after each step, reckoned by head: 60 lb and 40 lb, pieces of 10 lb which
// in double purchase answer 5 lb each.
func TestCheckOrderByHand(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Double, pounds("lamps", 60), pounds("cloth", 40)))
	limits := within(20, 60)
	o := lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{
		hang("lamps"), add(12), hang("cloth"), add(12),
		{Act: lineset.SetLine, On: purchase.Arbor},
		take(12),
		{Act: lineset.FreeLine},
		unlock, fly(20), lock, strip("cloth"), hang("cloth"),
	}}
	c, err := r.CheckOrder(o, limits)
	if err != nil {
		t.Fatal(err)
	}
	type row struct {
		Imbalance float64 // lbf
		Hazard    lineset.Hazard
		Verdict   lineset.Verdict
		Held      float64
	}
	want := []row{
		{0, lineset.Balanced, lineset.Within, 0},
		{60, lineset.RestsOnStop, lineset.Within, 0}, // just the limit
		{0, lineset.Balanced, lineset.Within, 0},
		{40, lineset.RestsOnStop, lineset.Within, 0},
		{-20, lineset.RunsOut, lineset.Within, 0},      // just the limit
		{-20, lineset.HeldByLine, lineset.NoLimit, 40}, // no limit for the line was given; at the arbor it is twice as much
		{40, lineset.HeldByLine, lineset.NoLimit, 80},
		{40, lineset.RestsOnStop, lineset.Within, 0},
		{40, lineset.RestsOnStop, lineset.Within, 0},
		{40, lineset.RunsIn, lineset.Within, 0}, // off the stop
		{40, lineset.RunsIn, lineset.Within, 0},
		{0, lineset.Balanced, lineset.Within, 0},
		{40, lineset.RunsIn, lineset.Within, 0},
	}
	var got []row
	for _, s := range c.States {
		got = append(got, row{tidy(s.Imbalance), s.Hazard, s.Balance.Verdict, tidy(s.Held)})
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if c.HandOvers != 4 || c.Flights != 1 || c.Exceeds || c.Worst != 1 || c.ToHang != 0 || c.ToStrip != 2 || c.ToAdd != 8 || c.ToTake != 12 {
		t.Errorf("%+v", c)
	}
	// A hair less is allowed: the same states exceed.
	c, err = r.CheckOrder(o, within(19.999, 59.999))
	if err != nil {
		t.Fatal(err)
	}
	if !c.Exceeds || !c.States[1].Exceeds() || !c.States[4].Exceeds() || c.States[3].Exceeds() || c.Worst != 4 {
		t.Errorf("limits a hair narrower: %+v", c)
	}
	// At the stop the batten may be as heavy as it will, away from it not.
	limits = within(20, 30)
	limits.RestsOnStop = true
	if c, err = r.CheckOrder(o, limits); err != nil {
		t.Fatal(err)
	}
	for i, s := range c.States {
		if want := i == 9 || i == 10 || i == 12; s.Exceeds() != want {
			t.Errorf("state %d, resting on the stop or not: exceeds %v, want %v", i, s.Exceeds(), want)
		}
	}
}

// tidy is a force in whole pounds where it is one to within rounding.
func tidy(f units.Force) float64 {
	lb := f.In(units.PoundForce)
	for n := -400.0; n <= 400; n++ {
		if near.Abs(lb, n, 1e-9) {
			return n
		}
	}
	return lb
}

// A flight is held against its limits on all of its way: here a standing piece leaves
// the deck half way, and a heap is carried more and more.
func TestFlightsCountOnTheirWay(t *testing.T) {
	flat := pounds("flat", 50)
	flat.Height, flat.OnDeck = 16*units.Foot, load.Stands
	s := plain(t, purchase.Single, flat)
	s.Rigging.MadeOff = 4 * units.Foot
	r := rigTens(t, s)
	o := lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("flat"), add(3), unlock, fly(16), fly(20)}}
	c, err := r.CheckOrder(o, within(30, 19))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct{ imbalance, worst float64 }{{0, 0}, {0, 0}, {-30, 30}, {-30, 30}, {-30, 20}, {20, 20}} {
		s := c.States[i]
		if tidy(s.Imbalance) != want.imbalance || tidy(s.Balance.Demand.(units.Force)) != want.worst {
			t.Errorf("state %d: %v, worst of the way %v", i, tidy(s.Imbalance), s.Balance)
		}
	}
	// Standing at 16 ft it is 30 arbor-heavy, a hair above 20 batten-heavy: of the two, 20 exceeds. No rope holds a batten to a
	// hair, so it does where it is halted just there, too.
	if halted := c.States[4]; !halted.Exceeds() || halted.Balance.Name != "batten-heavy" || halted.Balance.Trim != 16*units.Foot {
		t.Errorf("halted where the flat leaves the deck: %+v", halted.Balance)
	}
	if text := c.Lines(units.US)[4]; !strings.Contains(text, "30 lbf arbor-heavy: would run out; a hair higher 20 lbf batten-heavy: would run in; exceeds the limit given") {
		t.Errorf("it is read out as %q", text)
	}
	last := c.States[5]
	if last.Balance.Name != "batten-heavy" || last.Balance.Trim != 16*units.Foot || !last.Exceeds() {
		t.Errorf("%+v", last.Balance)
	}
	// Flying in again meets the same.
	o.Steps = append(o.Steps, fly(10))
	if c, err = r.CheckOrder(o, within(30, 19)); err != nil || !c.States[6].Exceeds() || tidy(c.States[6].Imbalance) != -30 {
		t.Errorf("flown in: %+v, %v", c.States[6], err)
	}
}

// A line that holds the batten where a standing piece leaves the deck must hold it with the piece off the deck as well.
func TestHeldWhereAPieceLeavesTheDeck(t *testing.T) {
	flat := pounds("flat", 50)
	flat.Height, flat.OnDeck = 16*units.Foot, load.Stands
	s := plain(t, purchase.Single, flat)
	s.Rigging.MadeOff = 4 * units.Foot
	held := lineset.OrderStep{Act: lineset.SetLine, On: purchase.Batten}
	limits := within(100, 100)
	limits.HeldLine = lineset.ForceLimit{Max: 25 * units.PoundForce, Basis: "given in the test"}
	c, err := rigTens(t, s).CheckOrder(lineset.Order{From: lineset.FromBare, Trim: 16 * units.Foot, Steps: []lineset.OrderStep{hang("flat"), held, add(2)}}, limits)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{0, 50, 50, 30} { // of 50 lb off the deck, and 10 lb pieces
		if got := tidy(c.States[i].Balance.Demand.(units.Force)); got != want {
			t.Errorf("state %d: %v, want %v", i, got, want)
		}
	}
	if got := tidy(c.States[3].Held); got != 30 || !c.States[3].Exceeds() {
		t.Errorf("holds %v: %+v", got, c.States[3].Balance)
	}
}

// A plan is within its limits a hair higher wherever it halts. A halt just where a flat of 300 lb is about to leave the deck is of no
// use: with all pieces in it is 300 arbor-heavy there. One that is clear of the deck lets the pieces be shared out.
func TestNoHaltAHairBelow(t *testing.T) {
	flat := pounds("flat", 300)
	flat.Height, flat.OnDeck = 14*units.Foot, load.Stands
	s := plain(t, purchase.Single, flat)
	s.Rigging.MadeOff = 4 * units.Foot
	r := rigTens(t, s)
	for _, c := range []struct {
		halt                     units.Length
		arborHeavy, battenHeavy  float64
		can                      bool
		either, arbor, battenToo float64 // smallest limits; 0: more of this one alone does not help
	}{
		{halt: 14 * units.Foot, arborHeavy: 280, battenHeavy: 50, either: 300, arbor: 300},
		{halt: 14 * units.Foot, arborHeavy: 300, battenHeavy: 0, can: true},
		{halt: 14*units.Foot + units.Inch, arborHeavy: 150, battenHeavy: 150, can: true},
		{halt: 14*units.Foot + units.Inch, arborHeavy: 149, battenHeavy: 150, either: 150, arbor: 150, battenToo: 160}, // pieces of 10
		{halt: 14*units.Foot + units.Inch, arborHeavy: 150, battenHeavy: 149, either: 150, arbor: 160, battenToo: 150},
	} {
		limits := within(c.arborHeavy, c.battenHeavy)
		limits.RestsOnStop = true
		plan, err := r.Order(lineset.Loading, limits,
			lineset.WorkTrim{Trim: 4 * units.Foot, Deck: true, Bridge: true}, lineset.WorkTrim{Trim: c.halt, Bridge: true})
		if c.can {
			if err != nil || plan.Check.Exceeds {
				t.Errorf("%+v: %v", c, err)
			}
			continue
		}
		var none *lineset.NoOrderError
		if !errors.As(err, &none) || tidy(none.Either) != c.either || tidy(none.ArborHeavy) != c.arbor || tidy(none.BattenHeavy) != c.battenToo {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// Leaving the stop, what rested on it rests no longer.
func TestLeavingTheStop(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	limits := within(0, 20)
	limits.RestsOnStop = true
	c, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: []lineset.OrderStep{hang("lamps"), unlock, fly(6)}}, limits)
	if err != nil {
		t.Fatal(err)
	}
	if c.States[1].Exceeds() || c.States[1].Balance.Verdict != lineset.NoLimit || !c.States[3].Exceeds() || c.States[3].Balance.Trim != 4*units.Foot {
		t.Errorf("%+v\n%+v", c.States[1].Balance, c.States[3].Balance)
	}
}

// What cannot be done is told with its step.
func TestOrdersThatCannotBeDone(t *testing.T) {
	mixed := arbor.Stock{
		{Name: "10", Mass: 10 * units.Pound, Thickness: 1 * units.Inch, Count: 6},
		{Name: "5", Mass: 5 * units.Pound, Thickness: 0.5 * units.Inch, Count: 6},
	}
	s := plain(t, purchase.Single, pounds("lamps", 60), pounds("cloth", 40), pounds("cloth", 20))
	s.Rigging.Arbor.Room = 8 * units.Inch
	r, err := s.Rig(mixed)
	if err != nil {
		t.Fatal(err)
	}
	fives := lineset.OrderStep{Act: lineset.AddPieces, Piece: "5", Count: 4}
	for _, c := range []struct {
		name  string
		steps []lineset.OrderStep
		field string
		kind  error
	}{
		{"hang twice", []lineset.OrderStep{hang("lamps"), hang("lamps")}, "steps[1].item", lineset.ErrHung},
		{"strip what does not hang", []lineset.OrderStep{strip("lamps")}, "steps[0].item", lineset.ErrNotHung},
		{"unknown item", []lineset.OrderStep{hang("lamp")}, "steps[0].item", units.ErrUnknown},
		{"two of that name", []lineset.OrderStep{hang("cloth")}, "steps[0].item", units.ErrDuplicate},
		{"place and another name", []lineset.OrderStep{{Act: lineset.HangItem, Item: "lamps", Place: 2}}, "steps[0].item", units.ErrUnknown},
		{"no such place", []lineset.OrderStep{{Act: lineset.HangItem, Place: 4}}, "steps[0].place", units.ErrOutOfRange},
		{"no such piece", []lineset.OrderStep{{Act: lineset.AddPieces, Piece: "20", Count: 1}}, "steps[0].piece", units.ErrUnknown},
		{"more than the stock", []lineset.OrderStep{add(7)}, "steps[0].count", units.ErrOutOfRange},
		{"more than the room", []lineset.OrderStep{add(6), {Act: lineset.AddPieces, Piece: "5", Count: 5}}, "steps[1].count", units.ErrOutOfRange},
		{"take what is not in", []lineset.OrderStep{take(1)}, "steps[0].piece", lineset.ErrNotIn},
		{"take more than is in", []lineset.OrderStep{add(2), take(3)}, "steps[1].count", lineset.ErrNotIn},
		{"take from below", []lineset.OrderStep{add(2), fives, take(1)}, "steps[2].piece", lineset.ErrNotOnTop},
		{"take through others", []lineset.OrderStep{add(2), fives, add(1), take(2)}, "steps[3].count", lineset.ErrNotOnTop},
		{"fly locked", []lineset.OrderStep{fly(10)}, "steps[0].act", lineset.ErrLocked},
		{"fly held", []lineset.OrderStep{unlock, {Act: lineset.SetLine, On: purchase.Batten}, fly(10)}, "steps[2].act", lineset.ErrHeld},
		{"two lines", []lineset.OrderStep{{Act: lineset.SetLine, On: purchase.Batten}, {Act: lineset.SetLine, On: purchase.Arbor}}, "steps[1].on", lineset.ErrLineSet},
		{"trim out of reach", []lineset.OrderStep{unlock, fly(200)}, "steps[1].trim", units.ErrOutOfRange},
		{"no act", []lineset.OrderStep{{}}, "steps[0].act", units.ErrMissing},
		{"no such act", []lineset.OrderStep{{Act: 77}}, "steps[0].act", units.ErrUnknown},
		{"nothing to hang", []lineset.OrderStep{{Act: lineset.HangItem}}, "steps[0].item", units.ErrMissing},
		{"no pieces", []lineset.OrderStep{{Act: lineset.AddPieces, Piece: "10"}}, "steps[0].count", units.ErrOutOfRange},
		{"less than no pieces", []lineset.OrderStep{{Act: lineset.TakePieces, Piece: "10", Count: -1}}, "steps[0].count", units.ErrOutOfRange},
		{"a lock with a trim", []lineset.OrderStep{{Act: lineset.LockRope, Trim: 1}}, "steps[0].trim", lineset.ErrNotWanted},
		{"a line on the grid", []lineset.OrderStep{{Act: lineset.SetLine, On: purchase.Grid}}, "steps[0].on", units.ErrUnknown},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := r.CheckOrder(lineset.Order{From: lineset.FromBare, Steps: c.steps}, within(1000, 1000))
			var fe *units.FieldError
			if !errors.As(err, &fe) || fe.Field != c.field || !errors.Is(err, c.kind) {
				t.Errorf("%v", err)
			}
		})
	}
}

func TestOrdersWithBadValues(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	o := lineset.Order{Trim: 300, Steps: []lineset.OrderStep{{Act: lineset.FlyTo, Item: "lamps"}, {Act: lineset.HangItem}}}
	limits := within(10, 10)
	limits.ArborHeavy.Basis, limits.BattenHeavy.Max = "", -1
	_, err := r.CheckOrder(o, limits)
	if err == nil {
		t.Fatal("taken")
	}
	var fields []string
	for line := range strings.Lines(err.Error()) {
		field, _, _ := strings.Cut(line, ":")
		fields = append(fields, field)
	}
	if diff := cmp.Diff([]string{"limits.arbor_heavy.basis", "limits.batten_heavy.max", "trim", "from", "steps[0].item (step 1)", "steps[1].item (step 2)"}, fields); diff != "" {
		t.Errorf("%s\n%v", diff, err)
	}
	for _, o := range []lineset.Order{
		{From: lineset.FromLoaded, Hung: []int{1}},
		{From: lineset.FromLoaded, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 1}}},
		{From: lineset.FromBare, Hung: []int{0}},
		{From: lineset.FromBare, Hung: []int{1, 1}},
		{From: 9},
		{From: lineset.FromBare, Pieces: []lineset.PiecesOf{{Piece: "10"}}},
		{From: lineset.FromBare, Pieces: []lineset.PiecesOf{{Piece: "x", Count: 1}}},
	} {
		if _, err := r.CheckOrder(o, within(1, 1)); err == nil {
			t.Errorf("%+v was taken", o)
		}
	}
	if _, err := new(lineset.Rigged).CheckOrder(lineset.Order{From: lineset.FromBare}, within(1, 1)); err == nil {
		t.Error("a Rigged that Rig did not make was gone through")
	}
}

// An order can be stored and read back, with words for what is done.
func TestOrderText(t *testing.T) {
	o := lineset.Order{
		From: lineset.FromBare, Trim: 4 * units.Foot, Hung: []int{2}, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 2}},
		Steps: []lineset.OrderStep{hang("lamps"), {Act: lineset.StripItem, Place: 1}, add(3), take(1), unlock, fly(20), lock, {Act: lineset.SetLine, On: purchase.Batten}, {Act: lineset.FreeLine}},
	}
	text, err := json.Marshal(o)
	if err != nil {
		t.Fatal(err)
	}
	var back lineset.Order
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(o, back); diff != "" {
		t.Errorf("%s\n%s", diff, text)
	}
	var limits lineset.OrderLimits
	if err := json.Unmarshal([]byte(`{"arbor_heavy":{"max":"20 lbf","basis":"house rule"},"batten_hevy":{"max":"20 lbf","basis":"house rule"}}`), &limits); !errors.Is(err, units.ErrUnknown) {
		t.Errorf("a limit that is misspelt: %v", err)
	}
	err = json.Unmarshal([]byte(`{"from":"laden","steps":[{"act":"lift"},{"act":"add","pieces":"10"}]}`), &back)
	if err == nil || cmp.Diff(o, back) != "" {
		t.Errorf("%v; the order was changed", err)
	}
	for _, act := range []lineset.Act{0, 99} {
		if _, err := act.MarshalText(); err == nil {
			t.Errorf("%v was stored", act)
		}
	}
}
