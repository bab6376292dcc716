package purchase_test

import (
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// weightless is a set whose ropes weigh nothing: five lines, head block at 60 ft.
func weightless(kind purchase.Kind) purchase.Layout {
	l := purchase.Layout{
		Kind: kind, HeadBlock: 60 * units.Foot, Rail: 4 * units.Foot, Idler: 1 * units.Foot,
		ArborLength: 6 * units.Foot, Trim: 4 * units.Foot, ArborTop: 58 * units.Foot,
	}
	if kind == purchase.Double {
		l.DeadEnd = 61 * units.Foot
		l.Rail, l.Idler = 14*units.Foot, 13*units.Foot
	}
	for i := range 5 {
		l.Loft = append(l.Loft, purchase.Loft{Across: 6*units.Foot + 10*units.Foot.Scale(float64(i)), Height: 60 * units.Foot})
	}
	return l
}

// The free body of a double purchase set (common practice, no source): with no
// drag, no rope weight and a weightless arbor, 500 lb on the batten answers
// 1000 lb in the arbor.
func TestVerifyDoubleFreeBody(t *testing.T) {
	r, err := weightless(purchase.Double).Rig()
	if err != nil {
		t.Fatal(err)
	}
	pulls := make([]units.Force, 5)
	for i := range pulls {
		pulls[i] = 100 * units.PoundForce
	}
	carried, arbor := 500*units.Pound, 1000*units.Pound
	st, err := r.At(20*units.Foot, purchase.Bodies{Pulls: pulls, Arbor: arbor})
	if err != nil {
		t.Fatal(err)
	}

	free := verification.Row{Key: "free body/reeving", Source: "counterweight practice", Place: "free body of a double purchase set", What: "500 lb on the batten", Why: "exact arithmetic, but for rounding"}
	var inLine, upFirst, upSecond, atDeadEnd units.Force
	for i, rope := range st.Lift {
		if len(rope.Parts) != 4 {
			t.Fatalf("%s has %d parts, want 4", rope.Name, len(rope.Parts))
		}
		inLine += rope.Parts[0].TensionFrom
		upFirst += rope.Parts[2].TensionTo
		upSecond += rope.Parts[3].TensionFrom
		atDeadEnd += units.Abs(st.Load(purchase.DeadEnd(i + 1)).Up)
	}
	for _, c := range []struct {
		name string
		got  units.Force
		want units.Force
	}{
		{"in the line", inLine, 500 * units.PoundForce},
		{"first up-pull on the arbor", upFirst, 500 * units.PoundForce},
		{"second up-pull on the arbor", upSecond, 500 * units.PoundForce},
		{"at the dead ends", atDeadEnd, 500 * units.PoundForce},
		{"both up-pulls on the arbor's sheave", st.Load(purchase.ArborTop).Up, 1000 * units.PoundForce},
		{"out of balance", st.Imbalance, 0},
		{"down on the head block", -st.Load(purchase.HeadBlock).Up, 500 * units.PoundForce},
		{"towards the stage on the head block", st.Load(purchase.HeadBlock).Across, 500 * units.PoundForce},
		{"down on the head beam", -st.On(purchase.HeadBeam).Up, 1000 * units.PoundForce},
	} {
		free.Of(c.name, "lbf", c.want.In(units.PoundForce), 1e-9).Check(t, c.got.In(units.PoundForce))
	}

	wanted, err := r.Counterweight(20*units.Foot, carried)
	if err != nil {
		t.Fatal(err)
	}
	free.Of("counterweight", "lb", 1000, 1e-9).Check(t, wanted.In(units.Pound))
	if got := purchase.Double.Counterweight(carried); got != arbor {
		t.Errorf("one-line counterweight %v, want %v", got, arbor)
	}
	// The hand line is as fast as the batten, in both purchases (common practice).
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
		r, err := weightless(kind).Rig()
		if err != nil {
			t.Fatal(err)
		}
		if r.Ratio() != kind.Ratio() {
			t.Errorf("%v: ratio %v, want %v", kind, r.Ratio(), kind.Ratio())
		}
		verification.Row{Key: "hand line", Source: "counterweight practice", What: "speed of the hand line over the batten's", Why: "exact"}.
			Of(kind.String(), "", 1, 0).Check(t, r.HandRatio())
	}
}

// The ropes can run between the trims at which a stop would meet the next: the
// batten the loft blocks, the arbor the head block or the idler.
func TestReach(t *testing.T) {
	r, err := weightless(purchase.Single).Rig()
	if err != nil {
		t.Fatal(err)
	}
	// The arbor's top is at 58 ft for a trim of 4 ft: 2 ft up it meets the head block,
	// its foot meets the idler 51 ft down; the batten meets the loft blocks 56 ft up.
	lowest, highest := r.Reach()
	if !near.Abs(lowest.In(units.Foot), 2, 1e-9) || !near.Abs(highest.In(units.Foot), 55, 1e-9) {
		t.Errorf("reach %v to %v ft, want 2 to 55", lowest.In(units.Foot), highest.In(units.Foot))
	}
}

// The greatest tension may be at either end of a part.
func TestGreatest(t *testing.T) {
	for _, parts := range [][]purchase.Part{
		{{TensionFrom: 1, TensionTo: 3}, {TensionFrom: 3, TensionTo: 2}},
		{{TensionFrom: 3, TensionTo: 1}},
		{{TensionFrom: 1, TensionTo: 3}},
	} {
		if got := (purchase.RopeState{Parts: parts}).Greatest(); got != 3 {
			t.Errorf("%v: greatest %v, want 3", parts, got)
		}
	}
}

// A lift line that bears nothing, with the arbor below the batten, would have to be
// pushed up by it: it is slack there, and says so.
func TestLiftLineSlackAtTheArbor(t *testing.T) {
	l := weightless(purchase.Single)
	l.LiftMass = 11 * units.PoundPerHundredFeet
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	st, err := r.At(45*units.Foot, purchase.Bodies{Pulls: []units.Force{0, 99, 99, 99, 99}, Arbor: 10, Idler: 10})
	if err != nil {
		t.Fatal(err)
	}
	if first := st.Lift[0]; !first.Slack || first.Parts[2].TensionTo != 0 || st.Lift[1].Slack {
		t.Errorf("first line %+v, second slack: %v", first, st.Lift[1].Slack)
	}
}

// What was rigged keeps paths of its own.
func TestReevedKeepsItsOwn(t *testing.T) {
	reeving := weightless(purchase.Single).Reeving()
	reeving.Lift[0].Path[1].Name = "block"
	r, err := reeving.Rig()
	if err != nil {
		t.Fatal(err)
	}
	reeving.Lift[0].Path[1].Name = "other"
	st, err := r.At(20*units.Foot, purchase.Bodies{Pulls: []units.Force{9, 9, 9, 9, 9}})
	if err != nil {
		t.Fatal(err)
	}
	if to := st.Lift[0].Parts[0].To; to != "block" {
		t.Errorf("the first part runs to %q", to)
	}
}

func TestVector(t *testing.T) {
	v := purchase.Vector{Across: 3, Up: 5}.Add(purchase.Vector{Across: -6, Up: -1})
	if v.Across != -3 || v.Up != 4 || v.Size() != 5 {
		t.Errorf("sum %v of size %v, want -3 across, 4 up, size 5", v, v.Size())
	}
}

// Three ropes stand at the rail of a double set, and one of them is dead (common
// practice): the one that is made off there does not run.
func TestDoubleRailHasADeadRope(t *testing.T) {
	hand := weightless(purchase.Double).Reeving().Hand
	first, last := hand.Path[0], hand.Path[len(hand.Path)-1]
	if first.Name != purchase.RailDeadEnd || first.On != purchase.Rail || last.Name != purchase.HandDeadEnd || last.On != purchase.HeadBeam {
		t.Errorf("hand line runs from %q on the %v to %q on the %v", first.Name, first.On, last.Name, last.On)
	}
}

// When the set is out of balance the lock takes the difference, and the idler's
// weight bounds what it can do for a batten-heavy one: half of 60 lb on each of
// its two parts, nothing more, in ropes that weigh nothing.
func TestLockAndIdler(t *testing.T) {
	for _, c := range []struct {
		name   string
		arbor  units.Mass
		lock   float64
		slack  bool
		top    float64 // tension at the arbor's top
		reason string
	}{
		{"balanced", 1000 * units.Pound, 0, false, 30, "both ends of the hand line hang on half the idler"},
		{"batten-heavy by 20", 960 * units.Pound, 20, false, 10, "the rope above the lock gives up what the lock holds"},
		{"batten-heavy by 50", 900 * units.Pound, 50, true, 0, "it has only 30 to give: the idler lifts"},
		{"arbor-heavy by 20", 1040 * units.Pound, -20, false, 50, "the rope above the lock holds the arbor"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := weightless(purchase.Double).Rig()
			if err != nil {
				t.Fatal(err)
			}
			pulls := []units.Force{100 * units.PoundForce, 100 * units.PoundForce, 100 * units.PoundForce, 100 * units.PoundForce, 100 * units.PoundForce}
			st, err := r.At(30*units.Foot, purchase.Bodies{Pulls: pulls, Arbor: c.arbor, Idler: 60 * units.Pound})
			if err != nil {
				t.Fatal(err)
			}
			top := st.Hand.Parts[3].TensionTo
			if st.Held() == c.slack {
				t.Errorf("held: %v", st.Held())
			}
			if !near.Abs(st.Lock.In(units.PoundForce), c.lock, 1e-9) || st.Hand.Slack != c.slack || !near.Abs(top.In(units.PoundForce), c.top, 1e-9) {
				t.Errorf("lock %v, slack %v, at the top %v; want %v, %v, %v: %s",
					st.Lock.In(units.PoundForce), st.Hand.Slack, top.In(units.PoundForce), c.lock, c.slack, c.top, c.reason)
			}
			if grip := st.Grip.In(units.PoundForce); !near.Abs(grip, 30, 1e-9) {
				t.Errorf("grip %v, want 30", grip)
			}
		})
	}
}

// A rope that the lock cannot keep tight hangs from the head block by its own
// weight alone, down to the lock and down to the arbor.
func TestSlackRopeHangsFromTheHeadBlock(t *testing.T) {
	l := weightless(purchase.Double)
	l.HandMass = 16.7 * units.PoundPerHundredFeet
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	pulls := make([]units.Force, 5)
	for i := range pulls {
		pulls[i] = 100 * units.PoundForce
	}
	st, err := r.At(30*units.Foot, purchase.Bodies{Pulls: pulls, Arbor: 500 * units.Pound, Idler: 60 * units.Pound})
	if err != nil {
		t.Fatal(err)
	}
	head := st.Hand.Parts[2].TensionTo.In(units.PoundForce) // from the idler, through the lock, up to the head block
	if want := 0.167 * (60 - 14); st.Held() || !near.Abs(head, want, 1e-9) {
		t.Errorf("held: %v, %v lbf at the head block; want %v, the weight of 46 ft of rope", st.Held(), head, want)
	}
	top := st.Hand.Parts[3].TensionTo.In(units.PoundForce)
	if want := 0.167 * (58 - (30-4)/2. - 14); !near.Abs(top, want, 1e-9) {
		t.Errorf("%v lbf at the arbor's top, want %v", top, want)
	}
	if lock := -st.Load(purchase.RopeLock).Up; lock != st.Grip {
		t.Errorf("the lock holds %v, want all that there is, %v", lock, st.Grip)
	}
}

// Rope weight shifts with travel: five lines of 0.11 lb/ft over 55 ft shift about
// 60 lb in single and 45 lb in double purchase, towards the arbor as the batten
// flies out (arithmetic: twice and one and a half times 55 ft of 0.55 lb/ft).
func TestVerifyRopeWeightShift(t *testing.T) {
	for kind, want := range map[purchase.Kind]float64{purchase.Single: 2 * 55 * 0.55, purchase.Double: 1.5 * 55 * 0.55} {
		l := weightless(kind)
		l.HeadBlock, l.ArborTop, l.DeadEnd = 70*units.Foot, 68*units.Foot, 71*units.Foot
		for i := range l.Loft {
			l.Loft[i].Height = 70 * units.Foot
		}
		l.LiftMass = 0.11 * units.PoundPerFoot
		r, err := l.Rig()
		if err != nil {
			t.Fatal(err)
		}
		low, errLow := r.RopeImbalance(5 * units.Foot)
		high, errHigh := r.RopeImbalance(60 * units.Foot)
		if errLow != nil || errHigh != nil {
			t.Fatal(errLow, errHigh)
		}
		verification.Row{Key: "rope weight", Source: "equilibrium", Place: "twice and one and a half times 55 ft of 0.55 lb/ft", What: "shift of the lines' weight over 55 ft", Why: "exact arithmetic, but for rounding"}.
			Of(kind.String(), "lbf", want, 1e-9).Check(t, (low - high).In(units.PoundForce))
	}
}

// A double hand line that is made off on the idler itself and not at the rail: three parts hold 60 kg, 20 kg each, and raised by a foot
// it slacks three feet of rope.
func TestHandLineMadeOffOnTheIdler(t *testing.T) {
	l := oneLine(purchase.Double)
	reeving := l.Reeving()
	end := &reeving.Hand.Path[0]
	end.Name, end.On, end.Height = "idler's becket", purchase.Idler, 0.1
	r, err := reeving.Rig()
	if err != nil {
		t.Fatal(err)
	}
	s, err := r.At(10, massed(100, 200, 60))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range s.Hand.Parts {
		if from, to := p.TensionFrom.In(units.Newton), p.TensionTo.In(units.Newton); !near.Rel(from, 20*g, 1e-12) || !near.Rel(to, 20*g, 1e-12) {
			t.Errorf("%s to %s: %v and %v N, want a third of the idler, %v N", p.From, p.To, from, to, 20*g)
		}
	}
	if raised, err := r.RaiseIdler(1*units.Foot, 60); err != nil || !near.Rel(raised.Slack.In(units.Foot), 3, 1e-12) {
		t.Errorf("raised by a foot: %+v, %v", raised, err)
	}
}
