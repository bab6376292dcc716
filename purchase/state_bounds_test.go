package purchase_test

import (
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// newtons is a mass that weighs so much.
func newtons(n float64) units.Mass { return units.Mass(n / g) }

// A lock that is asked for just all that the rope above it has holds; with more it does not.
func TestHeldAtTheLimit(t *testing.T) {
	for _, c := range []struct {
		lock, grip units.Force
		held       bool
	}{{50, 50, true}, {50, 50.5, true}, {50.5, 50, false}, {-80, 50, true}, {0, 0, true}} {
		if got := (purchase.State{Lock: c.lock, Grip: c.grip}).Held(); got != c.held {
			t.Errorf("asked %v of %v: held %v", c.lock, c.grip, got)
		}
	}
}

// Of a slack rope the parts that bear nothing at either end are told, and no others; of one that is taut none, whatever little it bears.
func TestTautByPart(t *testing.T) {
	part := func(from, to units.Force) purchase.Part {
		return purchase.Part{From: "a", To: "b", TensionFrom: from, TensionTo: to}
	}
	parts := []purchase.Part{part(0, 7), part(7, 0), part(0.5, 0.25), part(0, 0), part(0.5, 7)}
	for _, c := range []struct {
		name  string
		state purchase.State
		field string // none: it is taut
	}{
		{"a slack lift line", purchase.State{Lift: []purchase.RopeState{{Parts: parts}, {Slack: true, Parts: parts}}}, "lift[1].path[0], lift[1].path[1], lift[1].path[3]"},
		{"a slack hand line", purchase.State{Lift: []purchase.RopeState{{Parts: parts}}, Hand: purchase.RopeState{Slack: true, Parts: parts[2:]}}, "hand.path[1]"},
		{"ropes that just bear nothing", purchase.State{Lift: []purchase.RopeState{{Parts: parts}}, Hand: purchase.RopeState{Parts: parts}}, ""},
	} {
		err := c.state.Taut()
		if c.field != "" {
			one(t, err, c.field, purchase.ErrSlack, c.name)
		} else if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if got := (purchase.RopeState{Parts: parts}).Greatest(); got != 7 {
		t.Errorf("%v is the greatest tension, want 7 N", got)
	}
}

// With an idler that is held the lock always holds, by however little: the base tension is what each of the idler's two parts bears, and
// beyond that the rope below the lock takes what is asked. A free idler of no weight bears nothing and holds nothing.
func TestHeldAndFreeIdlers(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	for _, c := range []struct {
		name         string
		base         units.Force
		idler        float64 // N
		heavy        float64 // N on the batten
		below, above float64
		held, slack  bool
	}{
		{"a base of half a newton", 0.5, 100, 0, 0.5, 0.5, true, false},
		{"a base of half a newton, arbor-heavy", 0.5, 100, -20, 0.5, 20.5, true, false},
		{"a base of half a newton, batten-heavy by less", 0.5, 100, 0.25, 0.5, 0.25, true, false},
		{"a base of half a newton, batten-heavy", 0.5, 100, 20, 20, 0, true, false},
		{"a base of 30 N, batten-heavy by as much", 30, 0, 30, 30, 0, true, false},
		{"a base of 30 N, batten-heavy by more", 30, 0, 31, 31, 0, true, false},
		{"an idler of no weight", 0, 0, 0, 0, 0, true, false},
		{"an idler of no weight, arbor-heavy", 0, 0, -20, 0, 20, true, false},
		{"an idler of no weight, batten-heavy", 0, 0, 20, 0, 0, false, true},
		{"an idler of a newton, batten-heavy by half", 0, 1, 0.25, 0.5, 0.25, true, false},
	} {
		s, err := r.At(5, purchase.Bodies{Pulls: evenly(5, units.Force((500+c.heavy)/5)), Arbor: newtons(500), Idler: newtons(c.idler), Base: c.base})
		if err != nil {
			t.Fatal(err)
		}
		inner, outer := s.Hand.Parts[0], s.Hand.Parts[1]
		for _, end := range []struct{ got, want float64 }{
			{inner.TensionFrom.In(units.Newton), c.below},
			{inner.TensionTo.In(units.Newton), c.below},
			{outer.TensionFrom.In(units.Newton), c.below},
			{outer.TensionTo.In(units.Newton), c.above},
			{s.Hand.Parts[2].TensionTo.In(units.Newton), c.above},
			{s.Lock.In(units.Newton), c.heavy},
		} {
			if !near.Abs(end.got, end.want, 1e-9) {
				t.Errorf("%s: %v N below and %v above, asked %v; want %v and %v", c.name, inner.TensionTo, outer.TensionTo, s.Lock, c.below, c.above)
				break
			}
		}
		if rounds := c.base == 0 && c.heavy == 0; !rounds && (s.Held() != c.held || s.Hand.Slack != c.slack) {
			t.Errorf("%s: held %v, slack %v", c.name, s.Held(), s.Hand.Slack)
		}
	}
}

// A hand line is slack where it comes down so far that its own weight takes all of its tension: below the lock, where a part goes lower
// than the idler, and above it, where an end is lower than the lock, though the lock is asked for less than it has. It weighs 2 kg/m.
func TestHandLineSlackByItsOwnWeight(t *testing.T) {
	for _, c := range []struct {
		line  string
		idler float64 // N
		short float64 // how much less the lock is asked for than it has; none: nothing is asked
		slack string
	}{
		{"dead end at the lock", 8, 0, "hand.path[0], hand.path[1]"}, // the floor is 0.3 m under the idler, which bears 4 N a part: 5.9 N
		{"dead end at the lock", 40, 0, ""},
		{"both dead ends at the rail", 40, 2, "hand.path[5]"}, // the end is 0.2 m under the lock: 3.9 N
		{"both dead ends at the rail", 40, 5, ""},
	} {
		re := handLines()[c.line]
		re.Hand.Mass = 2
		r, err := re.Rig()
		if err != nil {
			t.Fatal(err)
		}
		on := purchase.Bodies{Pulls: []units.Force{1000}, Idler: newtons(c.idler)}
		arbor, err := r.Counterweight(5, newtons(1000))
		if err != nil {
			t.Fatal(err)
		}
		on.Arbor = arbor
		s, err := r.At(5, on)
		if err != nil {
			t.Fatal(err)
		}
		if c.short > 0 { // lighter at the arbor by what the lock then takes
			asked := (s.Grip - units.Force(c.short)).Scale(r.HandRatio() * r.Ratio())
			on.Arbor -= asked.Mass(units.StandardGravity)
			if s, err = r.At(5, on); err != nil || !near.Abs((s.Grip-s.Lock).In(units.Newton), c.short, 1e-6) {
				t.Fatalf("asked %v of %v, %v", s.Lock, s.Grip, err)
			}
		}
		if err := s.Taut(); c.slack != "" {
			one(t, err, c.slack, purchase.ErrSlack, c.line)
		} else if err != nil {
			t.Errorf("%s: %v", c.line, err)
		}
		if s.Hand.Slack != (c.slack != "") || !s.Held() {
			t.Errorf("%s: slack %v, held %v", c.line, s.Hand.Slack, s.Held())
		}
	}
}
