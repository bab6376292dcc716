package lineset_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func rigFifties(t testing.TB, s lineset.Set, pieces int) *lineset.Rigged {
	t.Helper()
	r, err := s.Rig(fifties(pieces))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The counterweight of the set that can be reckoned by head: 500 lb and ropes of 0.2 · (53 − 4) + 1.6 lbf at 4 ft, of
// 0.2 · (47 − 10) + 1.6 lbf at 10 ft, and of 0.2 · (44 − 13) + 1.6 lbf at 13 ft, the highest that the bare batten reaches.
func TestCounterweightByHead(t *testing.T) {
	want := []string{
		"carried, with what hangs at 4' 0\": 500.0 lb at standard gravity = 500.0 lbf",
		"rope weight at 4' 0\": lift lines 0.2 lb/ft × (53' 0\" − 4' 0\") + hand line 0.2 lb/ft × 8' 0\" = 11.4 lbf batten-heavy",
		"carried, with what hangs at 10' 0\": 500.0 lb at standard gravity = 500.0 lbf",
		"rope weight at 10' 0\": lift lines 0.2 lb/ft × (47' 0\" − 10' 0\") + hand line 0.2 lb/ft × 8' 0\" = 9.0 lbf batten-heavy",
		"wanted at the arbor, with what hangs: 1 × the mean of 511.4 lbf and 509.0 lbf, as mass = 510.2 lb",
		"carried, bare batten at 4' 0\": 0.0 lb at standard gravity = 0.0 lbf",
		"rope weight at 4' 0\": lift lines 0.2 lb/ft × (53' 0\" − 4' 0\") + hand line 0.2 lb/ft × 8' 0\" = 11.4 lbf batten-heavy",
		"carried, bare batten at 13' 0\": 0.0 lb at standard gravity = 0.0 lbf",
		"rope weight at 13' 0\": lift lines 0.2 lb/ft × (44' 0\" − 13' 0\") + hand line 0.2 lb/ft × 8' 0\" = 7.8 lbf batten-heavy",
		"wanted at the arbor, bare batten: 1 × the mean of 11.4 lbf and 7.8 lbf, as mass = 9.6 lb",
		"pipe weight wanted: 9.6 lb for the bare batten − 0.0 lb arbor = 9.6 lb",
		"show weight wanted: 510.2 lb − 9.6 lb = 500.6 lb",
		"pipe weight: no pieces = 0.0 lb",
		"show weight: 9 × 50.0 lb = 450.0 lb",
		"left over: 450.0 lb stacked − 510.2 lb wanted = -60.2 lb",
		"arbor with stack: 0.0 lb + 450.0 lb = 450.0 lb",
	}
	r := rigFifties(t, two(purchase.Single), 9)
	steps := r.Counterweight().Working(units.US)
	if diff := cmp.Diff(want, reads(steps)); diff != "" {
		t.Error(diff)
	}
	for _, s := range steps {
		if s.Basis == "" {
			t.Errorf("%s rests on nothing", s.Name)
		}
	}
}

// What changes a line of the counterweight's working, and how it then reads.
func TestCounterweightReads(t *testing.T) {
	for _, c := range []struct {
		name   string
		kind   purchase.Kind
		sys    units.System
		change func(*lineset.Set)
		want   []string
		not    string // no line has this in it
	}{
		{"balanced at one trim", purchase.Double, units.US, func(s *lineset.Set) { s.Balance = lineset.AtLow }, []string{
			"wanted at the arbor, with what hangs: 2 × 511.4 lbf, as mass = 1022.8 lb",
		}, "with what hangs at 10'"},
		{"balanced at high trim", purchase.Double, units.US, func(s *lineset.Set) { s.Balance = lineset.AtHigh }, []string{
			"wanted at the arbor, with what hangs: 2 × 509.6 lbf, as mass = 1019.2 lb", // 0.2 · (50 − 10) + 1.6
		}, "with what hangs at 4'"},
		{"nothing hangs", purchase.Single, units.US, func(s *lineset.Set) { s.Hang = nil }, []string{
			"wanted at the arbor, with what hangs: 1 × the mean of 11.4 lbf and 7.8 lbf, as mass = 9.6 lb",
			"show weight wanted: 9.6 lb − 9.6 lb = 0.0 lb",
			"show weight: no pieces = 0.0 lb",
		}, "carried, bare batten"},
		{"less hangs than the ropes take off", purchase.Single, units.US, func(s *lineset.Set) { s.Hang[0].Mass, s.Balance = 0.1*units.Pound, lineset.AtHigh }, []string{
			"show weight wanted: 9.1 lb − 9.6 lb, and pipe weight stays = 0.0 lb",
		}, "− 0.5"},
		{"spreader plates", purchase.Single, units.US, func(s *lineset.Set) {
			s.Rigging.Arbor.Plate = arbor.Plate{Mass: 2 * units.Pound, Thickness: 0.5 * units.Inch, Every: 8 * units.Inch}
		}, []string{"spreader plates: 3 under and between the show weight = 6.0 lb"}, "lock plate"}, // under the first of ten, over the fourth and over the eighth
		{"one spreader plate", purchase.Single, units.US, func(s *lineset.Set) {
			s.Rigging.Arbor.Plate = arbor.Plate{Mass: 2 * units.Pound, Thickness: 0.5 * units.Inch, Every: 80 * units.Inch}
		}, []string{"spreader plates: 1 under and between the show weight = 2.0 lb"}, "lock plate"},
		{"lock plate", purchase.Single, units.US, func(s *lineset.Set) {
			s.Rigging.Arbor.Lock = arbor.Lock{Mass: 2 * units.Pound, Thickness: 0.5 * units.Inch}
		}, []string{"lock plate: as given, on top of the stack = 2.0 lb"}, "spreader"},
		{"triple hand line", purchase.Single, units.US, func(s *lineset.Set) { s.Rigging.HandPurchase = purchase.Triple }, []string{
			"rope weight at 4' 0\": lift lines 0.2 lb/ft × (53' 0\" − 4' 0\") + hand line 0.2 lb/ft × 8' 0\" × 3 = 14.6 lbf batten-heavy",
		}, "plate"},
		{"single hand line under double lift lines", purchase.Double, units.US, func(s *lineset.Set) { s.Rigging.HandPurchase = purchase.Single }, []string{
			"rope weight at 4' 0\": lift lines 0.2 lb/ft × (53' 0\" − 4' 0\") + hand line 0.2 lb/ft × 8' 0\" × 0.5 = 10.6 lbf batten-heavy",
		}, "plate"},
		{"in metric", purchase.Single, units.Metric, func(s *lineset.Set) {
			s.Rigging.LiftLine, s.Rigging.HandLine, s.Hang[0].Mass = 0.1, 0.2, 200
			s.Rigging.MadeOff, s.Rigging.Arbor.Length, s.Rigging.Run.UpperStop = 1.5, 2, 16
			s.Low = 1.5
		}, []string{
			"carried, with what hangs at 1.5 m: 200.00 kg at standard gravity = 1.961 kN",
			// 0.2 · 14.5 + 0.2 · 2 kg
			"rope weight at 1.5 m: lift lines 0.2 kg/m × (16 m − 1.5 m) + hand line 0.2 kg/m × 2 m, × 9.80665 m/s² = 0.032 kN batten-heavy",
		}, "lb"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := two(c.kind)
			c.change(&s)
			lines := reads(rigFifties(t, s, 40).Counterweight().Working(c.sys))
			readsSo(t, lines, c.want, c.not)
		})
	}
}

// The out of balance at low and high trim and where it is the most either way, each once.
func TestBalanceReads(t *testing.T) {
	jumps := two(purchase.Single)
	jumps.Rigging.LiftLine, jumps.Rigging.HandLine, jumps.Balance = 0, 0, lineset.AtLow
	jumps.Hang = append(jumps.Hang, load.Item{
		Name: "flat", Mass: 40 * units.Pound, From: 21 * units.Foot, To: 21 * units.Foot, Height: 6 * units.Foot, OnDeck: load.Stands,
	})
	still := two(purchase.Double)
	still.High = still.Low
	for _, c := range []struct {
		name   string
		set    lineset.Set
		pieces int
		want   []string
	}{
		{"falls as it flies", two(purchase.Single), 9, []string{
			"out of balance at 4' 0\": 500.0 lbf carried + 11.4 lbf ropes − 450.0 lbf arbor = 61.4 lbf batten-heavy",
			"out of balance at 10' 0\": 500.0 lbf carried + 9.0 lbf ropes − 450.0 lbf arbor = 59.0 lbf batten-heavy",
		}},
		{"a flat leaves the deck on the way", jumps, 40, []string{
			"out of balance at 4' 0\": 500.0 lbf carried + 0.0 lbf ropes − 500.0 lbf arbor = 0.0 lbf balanced",
			"out of balance at 10' 0\": 540.0 lbf carried + 0.0 lbf ropes − 500.0 lbf arbor = 40.0 lbf batten-heavy",
			"out of balance at 6' 0\": 540.0 lbf carried + 0.0 lbf ropes − 500.0 lbf arbor = 40.0 lbf batten-heavy",
		}},
		{"does not fly", still, 18, []string{
			"out of balance at 4' 0\": 500.0 lbf carried + 11.4 lbf ropes − 900.0 lbf arbor / 2 = 61.4 lbf batten-heavy",
		}},
	} {
		if diff := cmp.Diff(c.want, reads(rigFifties(t, c.set, c.pieces).Balance().Working(units.US))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
	if steps := (lineset.Balance{}).Working(units.US); steps != nil {
		t.Errorf("%v of nothing", steps)
	}
}

// Where the stops let the batten go, and what is left over or short at both ends.
func TestTravelReads(t *testing.T) {
	s := two(purchase.Triple)
	s.Low, s.High = 3*units.Foot, 33*units.Foot
	want := []string{
		"batten travel: 3 × 9' 0\" of the arbor = 27' 0\"",
		"highest trim reached: 4' 0\" as made off + 27' 0\" = 31' 0\"",
		"arbor travel wanted: (33' 0\" − 3' 0\") / 3 = 10' 0\"",
		"overtravel at low trim: 3' 0\" wanted − 4' 0\" reached = -1' 0\"",
		"overtravel at high trim: 31' 0\" reached − 33' 0\" wanted = -2' 0\"",
	}
	if diff := cmp.Diff(want, reads(rigFifties(t, s, 40).Travel().Working(units.US))); diff != "" {
		t.Error(diff)
	}
}

// What lines and blocks carry at 4 ft, the arbor with ten pieces of 50 lb for each part: each line 250 lbf and 50 ft of its own. Batten-heavy
// by 11.4 lbf, the rope above the lock keeps 30 + 0.3 − 11.4 lbf and has 0.2 · (54 − 21) more at the head block, 25.5 lbf on each side of it.
// Across, both lines pull 510 lbf; down, as much, the hand line, and what ends or turns at the head beam.
func TestStateReads(t *testing.T) {
	lines := []string{
		"carried at 4' 0\": 500.0 lb at standard gravity = 500.0 lbf",
		"lift line 1 at 4' 0\": 250.0 lbf at the batten + 5.0 lbf of its own up to the blocks = 255.0 lbf",
		"lift line 2 at 4' 0\": 250.0 lbf at the batten + 5.0 lbf of its own up to the blocks = 255.0 lbf",
		"head block at 4' 0\": √(510.0 lbf² across + 561.0 lbf² down); down: lift lines and 51.0 lbf of the hand line = 758.2 lbf",
	}
	for kind, beam := range map[purchase.Kind]string{
		purchase.Single: "561.0 lbf² down); head block and dead ends = 758.2 lbf",
		purchase.Double: "1096.5 lbf² down); head block and dead ends = 1209.3 lbf", // 2 · 255 and 25.5 more
		purchase.Triple: "1632.0 lbf² down); head block and dead ends = 1709.8 lbf", // 2 · 2 · 255 and 2 · 25.5 more
	} {
		want := append(lines[:4:4], "head beam at 4' 0\": √(510.0 lbf² across + "+beam)
		if diff := cmp.Diff(want, reads(rigFifties(t, two(kind), 10*int(kind.Ratio())).Low().Working(units.US))); diff != "" {
			t.Errorf("%v (-want +got):\n%s", kind, diff)
		}
	}
	if steps := (lineset.State{}).Working(units.US); len(steps) != 3 || steps[0].Result != "0.0 lbf" {
		t.Errorf("%q of nothing", reads(steps))
	}
}
