package lineset_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// two is a set that can be reckoned by head: 500 lb in the middle between two lift lines, a batten and an arbor of
// nothing, every block at 54 ft so that all ropes turn by 90° or 180°, lift lines of 0.1 lb/ft and a hand line of
// 0.2 lb/ft. At 4 ft the lines weigh 2 · 0.1 · (53 − 4) on the batten's side and the hand line 0.2 · 8 for each of its parts:
// 11.4 lbf.
func two(kind purchase.Kind) lineset.Set {
	s := lineset.Set{
		Name: "two", Rigging: rigging(purchase.Double), Low: 4 * units.Foot, High: 10 * units.Foot, Balance: lineset.Even,
		Hang: load.Hang{{Name: "load", Mass: 500 * units.Pound, From: 21 * units.Foot, To: 21 * units.Foot}},
	}
	r := &s.Rigging
	r.Purchase = kind
	r.Batten.Pipe.Density = 1e-6
	r.Batten.Lines = load.Spaced(11*units.Foot, 20*units.Foot, 2)
	r.Arbor.Tare, r.Arbor.Plate = 0, arbor.Plate{}
	r.Arbor.Capacity = 2000 * units.Pound
	r.LoftBlocks, r.HeadBlock, r.DeadEnds = 54*units.Foot, 54*units.Foot, 54*units.Foot
	r.LiftLine, r.HandLine = 10*units.PoundPerHundredFeet, 20*units.PoundPerHundredFeet
	r.Run.LowerStop = 36 * units.Foot
	return s
}

// fifties is a stock of so many pieces of 50 lb, 2 in thick.
func fifties(n int) arbor.Stock {
	return arbor.Stock{{Name: "50", Mass: 50 * units.Pound, Thickness: 2 * units.Inch, Count: n}}
}

func handOf(t testing.TB, s lineset.Set, pieces int) lineset.Hand {
	t.Helper()
	r, err := s.Rig(fifties(pieces))
	if err != nil {
		t.Fatal(err)
	}
	h, err := r.Hand(s.Low)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// reads writes steps as they are read: what is found, from what, and what comes of it.
func reads(steps []lineset.Step) []string {
	var lines []string
	for _, s := range steps {
		lines = append(lines, s.Name+": "+s.Formula+" = "+s.Result)
	}
	return lines
}

// No drag, and one piece too few: every line by head. Parts and travel ratio cancel, so that the hand pulls 61.4 lbf in all three
// purchases.
func TestHandWorkingByHead(t *testing.T) {
	inner := []string{
		"inner rope at the lock: 60.0 lbf idler / 2 + 0.3 lbf = 30.3 lbf",
		"outer rope above the lock: 30.3 lbf − 61.4 lbf = −31.1 lbf: slack, the idler lifts and the lock does not hold the set",
	}
	lines := []string{
		"lift line 1 at the arbor: 250.0 lbf at the batten + 5.0 lbf − 0.1 lbf = 254.9 lbf",
		"lift line 2 at the arbor: 250.0 lbf at the batten + 5.0 lbf − 0.1 lbf = 254.9 lbf",
	}
	idler := "idler's parts: 60.0 lbf idler / 2 = 30.0 lbf inner, 30.0 lbf outer"
	top := "hand line at the arbor's top: 30.0 lbf outer rope + 6.9 lbf − 0.2 lbf = 36.7 lbf"
	foot := "hand line at the arbor's foot: 30.0 lbf inner rope + 5.1 lbf = 35.1 lbf"
	for kind, want := range map[purchase.Kind][]string{
		purchase.Single: {
			"out of balance, no drag: 500.0 lbf carried + 11.4 lbf ropes − 450.0 lbf arbor = 61.4 lbf batten-heavy",
			"own weight of each lift line: 0.1 lb/ft × 50' 0\" up to loft block, 1' 0\" down to arbor top = 5.0 lbf, 0.1 lbf",
			"own weight of the hand line: 0.2 lb/ft × 25' 6\" down to idler, 34' 6\" up to head block, 1' 0\" down to arbor top, " +
				"1' 6\" from the idler up to the rope lock = 5.1 lbf, 6.9 lbf, 0.2 lbf, 0.3 lbf",
			"asked of the rope lock: 61.4 lbf out of balance = 61.4 lbf, inner rope the tighter",
			inner[0], inner[1], lines[0], lines[1],
			"lift lines on the arbor: 254.9 lbf + 254.9 lbf = 509.8 lbf",
			idler, top, foot,
			"ropes hold the arbor up: 509.8 lbf + 36.7 lbf − 35.1 lbf = 511.4 lbf",
			"left to the hand at the arbor: 511.4 lbf − 450.0 lbf arbor = 61.4 lbf",
			"pull on the inner rope, out: 61.4 lbf at the arbor = 61.4 lbf",
			"pull back on the inner rope, in: 61.4 lbf at the arbor = 61.4 lbf",
		},
		purchase.Double: {
			"out of balance, no drag: 500.0 lbf carried + 11.4 lbf ropes − 900.0 lbf arbor / 2 = 61.4 lbf batten-heavy",
			"own weight of each lift line: 0.1 lb/ft × 50' 0\" up to loft block, 1' 0\" down to arbor top, 1' 0\" up to dead end = 5.0 lbf, 0.1 lbf, 0.1 lbf",
			"own weight of the hand line: 0.2 lb/ft × 24' 0\" up to arbor foot, 25' 6\" down to idler, 34' 6\" up to head block, 1' 0\" down to arbor top, " +
				"1' 0\" up to hand line dead end, 1' 6\" from the idler up to the rope lock = 4.8 lbf, 5.1 lbf, 6.9 lbf, 0.2 lbf, 0.2 lbf, 0.3 lbf",
			"asked of the rope lock: 2 × 61.4 lbf out of balance / 2 = 61.4 lbf, inner rope the tighter",
			inner[0], inner[1], lines[0], lines[1],
			"lift lines on the arbor: (254.9 lbf + 254.9 lbf) × 2 = 1019.6 lbf",
			idler, top,
			"hand line holds the arbor up: 36.7 lbf × 2 = 73.4 lbf",
			foot,
			"hand line pulls it down: 35.1 lbf × 2 = 70.2 lbf",
			"ropes hold the arbor up: 1019.6 lbf + 73.4 lbf − 70.2 lbf = 1022.8 lbf",
			"left to the hand at the arbor: 1022.8 lbf − 900.0 lbf arbor = 122.8 lbf",
			"pull on the inner rope, out: 122.8 lbf at the arbor / 2 = 61.4 lbf",
			"pull back on the inner rope, in: 122.8 lbf at the arbor / 2 = 61.4 lbf",
		},
		purchase.Triple: {
			"out of balance, no drag: 500.0 lbf carried + 11.4 lbf ropes − 1350.0 lbf arbor / 3 = 61.4 lbf batten-heavy",
			"own weight of each lift line: 0.1 lb/ft × 50' 0\" up to loft block, 1' 0\" down to arbor top, 1' 0\" up to beam block, " +
				"1' 0\" down to arbor top = 5.0 lbf, 0.1 lbf, 0.1 lbf, 0.1 lbf",
			"own weight of the hand line: 0.2 lb/ft × 24' 0\" down to rail block, 24' 0\" up to arbor foot, 25' 6\" down to idler, 34' 6\" up to head block, " +
				"1' 0\" down to arbor top, 1' 0\" up to hand line block, 1' 0\" down to arbor top, 1' 6\" from the idler up to the rope lock = " +
				"4.8 lbf, 4.8 lbf, 5.1 lbf, 6.9 lbf, 0.2 lbf, 0.2 lbf, 0.2 lbf, 0.3 lbf",
			"asked of the rope lock: 3 × 61.4 lbf out of balance / 3 = 61.4 lbf, inner rope the tighter",
			inner[0], inner[1], lines[0], lines[1],
			"lift lines on the arbor: (254.9 lbf + 254.9 lbf) × 3 = 1529.4 lbf",
			idler, top,
			"hand line holds the arbor up: 36.7 lbf × 3 = 110.1 lbf",
			foot,
			"hand line pulls it down: 35.1 lbf × 3 = 105.3 lbf",
			"ropes hold the arbor up: 1529.4 lbf + 110.1 lbf − 105.3 lbf = 1534.2 lbf",
			"left to the hand at the arbor: 1534.2 lbf − 1350.0 lbf arbor = 184.2 lbf",
			"pull on the inner rope, out: 184.2 lbf at the arbor / 3 = 61.4 lbf",
			"pull back on the inner rope, in: 184.2 lbf at the arbor / 3 = 61.4 lbf",
		},
	} {
		got := reads(handOf(t, two(kind), 9*int(kind.Ratio())).Working(units.US))
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%v (-want +got):\n%s", kind, diff)
		}
	}
}

// With a drag of 0.02 a sheave has K = 1.02/0.98 = 1.0408 at 180° and, from a = 1 and b = 0.9996, 1.0287 at 90°. Out, the lines
// come to 255 · 1.0287² − 0.1 at the arbor, in to 255 / 1.0287² − 0.1; the hand line works against its own idler the same way.
func TestHandWorkingWithDrag(t *testing.T) {
	s := two(purchase.Single)
	s.Rigging.Drag = 0.02
	want := []string{
		"drag factors K, lift line 1: drag 0.02; loft block 1 90°, head block 90° = 1.0287, 1.0287",
		"drag factors K, lift line 2: drag 0.02; loft block 2 90°, head block 90° = 1.0287, 1.0287",
		"drag factors K, hand line: drag 0.02; idler 180°, head block 180° = 1.0408, 1.0408",
		"lift line 1 at the arbor, out: (250.0 lbf at the batten + 5.0 lbf) × 1.0287 × 1.0287 − 0.1 lbf = 269.7 lbf",
		"lift line 2 at the arbor, out: (250.0 lbf at the batten + 5.0 lbf) × 1.0287 × 1.0287 − 0.1 lbf = 269.7 lbf",
		"lift lines on the arbor, out: 269.7 lbf + 269.7 lbf = 539.5 lbf",
		"idler's parts, out: 60.0 lbf idler / (1 + 1.0408); outer × 1.0408 of that = 29.4 lbf inner, 30.6 lbf outer",
		"hand line at the arbor's top, out: (30.6 lbf outer rope + 6.9 lbf) × 1.0408 − 0.2 lbf = 38.8 lbf",
		"hand line at the arbor's foot, out: 29.4 lbf inner rope + 5.1 lbf = 34.5 lbf",
		"ropes hold the arbor up, out: 539.5 lbf + 38.8 lbf − 34.5 lbf = 543.8 lbf",
		"stays, until it runs out: 500.0 lbf carried + 11.4 lbf ropes − 543.8 lbf = 32.4 lbf arbor-heavy",
		"left to the hand at the arbor, out: 543.8 lbf − 450.0 lbf arbor = 93.8 lbf",
		"pull on the inner rope, out: 93.8 lbf at the arbor = 93.8 lbf",
		"lift line 1 at the arbor, in: (250.0 lbf at the batten + 5.0 lbf) / 1.0287 / 1.0287 − 0.1 lbf = 240.9 lbf",
		"lift line 2 at the arbor, in: (250.0 lbf at the batten + 5.0 lbf) / 1.0287 / 1.0287 − 0.1 lbf = 240.9 lbf",
		"lift lines on the arbor, in: 240.9 lbf + 240.9 lbf = 481.7 lbf",
		"idler's parts, in: 60.0 lbf idler / (1 + 1.0408); inner × 1.0408 of that = 30.6 lbf inner, 29.4 lbf outer",
		"hand line at the arbor's top, in: (29.4 lbf outer rope + 6.9 lbf) / 1.0408 − 0.2 lbf = 34.7 lbf",
		"hand line at the arbor's foot, in: 30.6 lbf inner rope + 5.1 lbf = 35.7 lbf",
		"ropes hold the arbor up, in: 481.7 lbf + 34.7 lbf − 35.7 lbf = 480.7 lbf",
		"stays, until it runs in: 500.0 lbf carried + 11.4 lbf ropes − 480.7 lbf = 30.7 lbf batten-heavy",
		"left to the hand at the arbor, in: 480.7 lbf − 450.0 lbf arbor = 30.7 lbf",
		"pull back on the inner rope, in: 30.7 lbf at the arbor = 30.7 lbf",
	}
	if diff := cmp.Diff(want, reads(handOf(t, s, 9).Working(units.US))[6:]); diff != "" {
		t.Error(diff)
	}
}

// What changes a line of the working, and how it then reads.
func TestHandWorkingReads(t *testing.T) {
	for _, c := range []struct {
		name   string
		kind   purchase.Kind
		pieces int
		change func(*lineset.Set)
		sys    units.System
		want   []string
		not    string // no line has this in it
	}{
		{"arbor-heavy", purchase.Single, 11, func(s *lineset.Set) { s.Rigging.Arbor.Tare = 550 * units.Pound }, units.US, []string{
			"out of balance, no drag: 500.0 lbf carried + 11.4 lbf ropes − 550.0 lbf arbor = 38.6 lbf arbor-heavy",
			"asked of the rope lock: 38.6 lbf out of balance = 38.6 lbf, outer rope the tighter",
			"outer rope above the lock: 30.3 lbf + 38.6 lbf = 68.9 lbf",
			"left to the hand at the arbor: 550.0 lbf arbor − 511.4 lbf = 38.6 lbf",
			"pull back on the outer rope, out: 38.6 lbf at the arbor = 38.6 lbf",
			"pull on the outer rope, in: 38.6 lbf at the arbor = 38.6 lbf",
		}, "slack"},
		{"arbor-heavy, with drag", purchase.Double, 1, func(s *lineset.Set) { s.Rigging.Arbor.Tare, s.Rigging.Drag = 1000*units.Pound, 0.02 }, units.US, []string{
			"lift lines on the arbor, in: (240.9 lbf + 240.9 lbf) × (1 + 1 / 1.0408) = 944.6 lbf",
			"stays, until it runs in: 500.0 lbf carried + 11.4 lbf ropes − 939.7 lbf / 2 = 41.5 lbf batten-heavy",
			"left to the hand at the arbor, in: 1000.0 lbf arbor − 939.7 lbf = 60.3 lbf",
			"pull on the outer rope, in: 60.3 lbf at the arbor × 1.0408 / (1 + 1 / 1.0408) = 32.0 lbf",
		}, "back"},
		{"balanced", purchase.Single, 10, func(s *lineset.Set) { s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0 }, units.US, []string{
			"out of balance, no drag: 500.0 lbf carried + 0.0 lbf ropes − 500.0 lbf arbor = 0.0 lbf balanced",
			"asked of the rope lock: 0.0 lbf out of balance = 0.0 lbf, ropes alike",
			"inner rope at the lock: 60.0 lbf idler / 2 = 30.0 lbf",
			"hand line at the arbor's top: 30.0 lbf outer rope = 30.0 lbf",
			"pull on the inner rope, out: 0.0 lbf at the arbor = 0.0 lbf",
			"pull on the inner rope, in: 0.0 lbf at the arbor = 0.0 lbf",
		}, "own weight"},
		{"hand line alone weighs", purchase.Single, 9, func(s *lineset.Set) { s.Rigging.LiftLine = 0 }, units.US, []string{
			"lift line 2 at the arbor: 250.0 lbf at the batten = 250.0 lbf",
		}, "own weight of each lift line"},
		{"idler not given", purchase.Single, 9, func(s *lineset.Set) { s.Rigging.Idler.Mass = 0 }, units.US, []string{
			"inner rope at the lock: 0.0 lbf idler, not given, / 2 + 0.3 lbf = 0.3 lbf",
			"idler's parts: 0.0 lbf idler, not given, / 2 = 0.0 lbf inner, 0.0 lbf outer",
		}, "held"},
		{"held idler", purchase.Single, 9, func(s *lineset.Set) { s.Rigging.Idler.Base = 100 * units.PoundForce }, units.US, []string{
			"inner rope at the lock: 100.0 lbf at the held idler + 0.3 lbf = 100.3 lbf",
			"outer rope above the lock: 100.3 lbf − 61.4 lbf = 38.9 lbf",
			"idler's parts: 2 × 100.0 lbf at the held idler / 2 = 100.0 lbf inner, 100.0 lbf outer",
		}, "slack"},
		{"held by next to nothing", purchase.Single, 10, func(s *lineset.Set) { s.Rigging.Idler.Base = 0.5 * units.Newton }, units.US, []string{
			"inner rope at the lock: 0.1 lbf at the held idler + 0.3 lbf = 0.4 lbf",
			"outer rope above the lock: 0.4 lbf − 11.4 lbf = −11.0 lbf: slack, and what holds the idler bears so much more",
			"idler's parts: 2 × 0.1 lbf at the held idler / 2 = 0.1 lbf inner, 0.1 lbf outer",
		}, "60.0"},
		{"an idler of a kilogram", purchase.Single, 10, func(s *lineset.Set) { s.Rigging.Idler.Mass = 1 * units.Kilogram }, units.US, []string{
			"inner rope at the lock: 2.2 lbf idler / 2 + 0.3 lbf = 1.4 lbf",
			"idler's parts: 2.2 lbf idler / 2 = 1.1 lbf inner, 1.1 lbf outer",
		}, "not given"},
		{"held idler that is not tight enough", purchase.Single, 9, func(s *lineset.Set) { s.Rigging.Idler.Base, s.Rigging.Drag = 30*units.PoundForce, 0.02 }, units.US, []string{
			"outer rope above the lock: 30.3 lbf − 61.4 lbf = −31.1 lbf: slack, and what holds the idler bears so much more",
			"idler's parts, out: 2 × 30.0 lbf at the held idler / (1 + 1.0408); outer × 1.0408 of that = 29.4 lbf inner, 30.6 lbf outer",
			"idler's parts, in: 2 × 30.0 lbf at the held idler / (1 + 1.0408); inner × 1.0408 of that = 30.6 lbf inner, 29.4 lbf outer",
		}, "idler lifts"},
		{"triple hand line under single lift lines", purchase.Single, 9, func(s *lineset.Set) { s.Rigging.HandPurchase = purchase.Triple }, units.US, []string{
			"asked of the rope lock: 64.6 lbf out of balance / 3 = 21.5 lbf, inner rope the tighter",
			"pull on the inner rope, out: 64.6 lbf at the arbor / 3 = 21.5 lbf",
		}, "slack"},
		{"single hand line under double lift lines", purchase.Double, 18, func(s *lineset.Set) { s.Rigging.HandPurchase = purchase.Single }, units.US, []string{
			"asked of the rope lock: 2 × 60.6 lbf out of balance = 121.2 lbf, inner rope the tighter",
			"pull on the inner rope, out: 121.2 lbf at the arbor = 121.2 lbf",
		}, "hand line dead end"},
		{"triple purchase with drag", purchase.Triple, 27, func(s *lineset.Set) { s.Rigging.Drag = 0.02 }, units.US, []string{
			"lift lines on the arbor, out: (269.7 lbf + 269.7 lbf) × (1 + 1.0408 + 1.0408 × 1.0408) + 2 × (0.1 lbf × 1.0408 − 0.1 lbf) = 1685.4 lbf",
			"hand line holds the arbor up, out: 38.8 lbf × (1 + 1.0408 + 1.0408 × 1.0408) + (0.2 lbf × 1.0408 − 0.2 lbf) = 121.3 lbf",
			"hand line pulls it down, out: 34.5 lbf × (1 + 1 / 1.0408 + 1 / 1.0408 / 1.0408) + (−4.8 lbf / 1.0408 + 4.8 lbf) = 99.7 lbf",
			"pull back on the inner rope, in: 28.0 lbf at the arbor / (1 + 1.0408 + 1.0408 × 1.0408) = 8.9 lbf",
		}, "cannot be told"},
		{"in metric", purchase.Single, 9, func(s *lineset.Set) { s.Rigging.LiftLine, s.Rigging.HandLine = 1, 2 }, units.Metric, []string{
			"own weight of each lift line: 1 kg/m × 9.80665 m/s² × 15.24 m up to loft block, 0.305 m down to arbor top = 0.149 kN, 0.003 kN",
		}, "lbf"},
		{"one lift line alone", purchase.Double, 18, func(s *lineset.Set) { s.Rigging.Batten.Lines = load.Spaced(21*units.Foot, 1, 1) }, units.US, []string{
			"lift lines on the arbor: 504.9 lbf × 2 = 1009.8 lbf",
		}, "lift line 2"},
		{"one lift line alone, with drag", purchase.Triple, 27, func(s *lineset.Set) {
			s.Rigging.Batten.Lines, s.Rigging.Drag = load.Spaced(21*units.Foot, 1, 1), 0.02
		}, units.US, []string{
			"lift lines on the arbor, out: 534.3 lbf × (1 + 1.0408 + 1.0408 × 1.0408) + (0.1 lbf × 1.0408 − 0.1 lbf) = 1669.2 lbf",
		}, "lift line 2"},
		{"a loft block of its own", purchase.Single, 9, func(s *lineset.Set) { s.Rigging.Loft = []lineset.Loft{{}, {Height: 50 * units.Foot}} }, units.US, []string{
			"own weight of lift line 1: 0.1 lb/ft × 50' 0\" up to loft block, 1' 0\" down to arbor top = 5.0 lbf, 0.1 lbf",
			"own weight of lift line 2: 0.1 lb/ft × 46' 0\" up to loft block, 4' 0\" up to head block, 1' 0\" down to arbor top = 4.6 lbf, 0.4 lbf, 0.1 lbf",
		}, "each lift line"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := two(c.kind)
			c.change(&s)
			lines := reads(handOf(t, s, c.pieces).Working(c.sys))
			readsSo(t, lines, c.want, c.not)
		})
	}
}

// A set that is balanced but for the rounding of its sums is balanced: it runs nowhere by itself, and no rope is the tighter.
func TestBalancedButForRounding(t *testing.T) {
	for lb := 10.0; lb <= 300; lb += 10 {
		for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
			h, err := rigTens(t, plain(t, kind, pounds("lamps", lb))).Hand(5 * units.Foot)
			if err != nil {
				t.Fatal(err)
			}
			if notes := h.Notes(); len(notes) != 0 {
				t.Errorf("%v lb, %v: %q", lb, kind, notes)
			}
			lines := reads(h.Working(units.US))
			if !contains(lines, "out of balance = 0.0 lbf, ropes alike") && !contains(lines, "out of balance / 2 = 0.0 lbf, ropes alike") || contains(lines, "pull back") {
				t.Errorf("%v lb, %v:\n%s", lb, kind, strings.Join(lines, "\n"))
			}
		}
	}
}

// Each line says what it rests on: rope paths, the arbor's balance, the idler's or the tension that is given where it is held.
func TestWhatTheHandWorkingRestsOn(t *testing.T) {
	held := two(purchase.Double)
	held.Rigging.Idler.Base = 100 * units.PoundForce
	free := two(purchase.Double)
	free.Rigging.Drag = 0.02
	for name, s := range map[string]lineset.Set{"free": free, "held": held} {
		idler := "balance of the idler"
		if name == "held" {
			idler = "tension at the idler, as given"
		}
		for _, step := range handOf(t, s, 18).Working(units.US) {
			what, _, _ := strings.Cut(step.Name, ",")
			want, known := map[string]string{
				"out of balance": "constant length of each rope", "own weight of each lift line": "T = T₀", "own weight of the hand line": "T = T₀",
				"asked of the rope lock": "virtual work", "inner rope at the lock": idler, "outer rope above the lock": "balance of the idler", "drag factors K": "K = ",
				"lift line 1 at the arbor": "T = T₀", "lift line 2 at the arbor": "T = T₀", "lift lines on the arbor": "balance of the arbor: every part",
				"idler's parts": idler, "hand line at the arbor's top": "T = T₀", "hand line at the arbor's foot": "T = T₀",
				"hand line holds the arbor up": "balance of the arbor: every part", "hand line pulls it down": "balance of the arbor: every part",
				"ropes hold the arbor up": "balance of the arbor: parts that go up", "left to the hand at the arbor": "balance of the arbor: parts that go up",
				"stays": "constant length of each rope", "pull on the inner rope": "balance of the arbor: a hand", "pull back on the inner rope": "balance of the arbor: a hand",
			}[what]
			if !known || !strings.HasPrefix(step.Basis, want) {
				t.Errorf("%s idler, %s: %q, want %q", name, step.Name, step.Basis, want)
			}
		}
	}
}

// A line that hangs slack at high trim bears nothing at the batten, 13 m up, and 4 m of it hang on that side of the blocks, 13 m on the
// arbor's: it would have to push. Its name stands beside the pull, and in the notes.
func TestSlackLinesAreNamed(t *testing.T) {
	s := eighths(purchase.Single)
	s.High = 13
	s.Rigging.Batten.Lines[1].Long, s.Rigging.Batten.Lines[2].Long = 0.5, 0.5
	r := mustRig(t, s)
	h, err := r.Hand(13)
	if err != nil {
		t.Fatal(err)
	}
	var slack []string
	for i, line := range r.High().Share.Lines {
		if line.Slack {
			slack = append(slack, r.High().Ropes.Lift[i].Name)
		}
	}
	if diff := cmp.Diff(slack, h.Out.Slack); diff != "" || len(slack) < 2 || !cmp.Equal(slack, h.In.Slack) {
		t.Errorf("slack out: %q, in: %q; want %q", h.Out.Slack, h.In.Slack, slack)
	}
	names := strings.Join(slack, ", ")
	lines, notes := reads(h.Working(units.US)), h.Notes()
	for _, way := range []string{"out", "in"} {
		if !contains(lines, ", "+way+": 15.2 lbf at the arbor = 15.2 lbf; slack on the way: "+names) ||
			!contains(notes, "flying "+way+", slack somewhere on the way: "+names+"; the pull to fly "+way+" does not quite add up") {
			t.Errorf("%s: %s are not named in %q, %q", way, names, lines, notes)
		}
	}
	low, err := r.Hand(s.Low) // the arbor is up, and nothing hangs on its side
	if err != nil || low.Out.Slack != nil || contains(low.Notes(), "slack") || contains(reads(low.Working(units.US)), "slack on the way") {
		t.Errorf("at low trim: %v, %q", err, low.Notes())
	}
}

// A hand line that would be slack says so in the place of its pull.
func TestLoosePullReads(t *testing.T) {
	s := electric()
	slackHandLine(&s)
	h := handOf(t, s, 0)
	if lines := reads(h.Working(units.US)); !h.Out.Loose || !contains(lines, "pull, out: the hand line would be slack on its way = cannot be told") ||
		contains(lines, "stays, until it runs out") || contains(lines, "pull, in: the hand line") {
		t.Errorf("%+v\n%s", h.Out, strings.Join(lines, "\n"))
	}
}

// readsSo holds lines against those that must be among them and the one that must not.
func readsSo(t *testing.T, lines, want []string, not string) {
	t.Helper()
	for _, line := range want {
		if !contains(lines, line) {
			t.Errorf("no line reads\n%s\nin\n%s", line, strings.Join(lines, "\n"))
		}
	}
	if contains(lines, not) {
		t.Errorf("%q in\n%s", not, strings.Join(lines, "\n"))
	}
}
