package purchase_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// With no idler to keep it tight, a heavy hand line over stiff sheaves goes slack at the rail's dead end, which the
// sheave on the arbor's foot holds it away from while the arbor sinks and no hand pulls on the inner rope: whoever asks what the hand feels is told so, and where.
func TestSlackHandLine(t *testing.T) {
	l := weightless(purchase.Double)
	l.HandMass, l.Drag = 0.5*units.PoundPerFoot, 0.1
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: evenly(5, 100*units.PoundForce), Arbor: 2000 * units.Pound}
	_, run := r.Run(10*units.Foot, on, purchase.Out)
	_, stays := r.Stays(10*units.Foot, on)
	_, weigh := r.Weigh(purchase.Weighing{Trim: 10 * units.Foot, On: on, Out: purchase.Pulled{Pull: 150 * units.PoundForce, Runs: true}, In: purchase.Pulled{Pull: 500 * units.PoundForce}})
	for name, err := range map[string]error{"run": run, "stays": stays, "weigh": weigh} {
		var fe *units.FieldError
		if !errors.Is(err, purchase.ErrSlack) || !errors.As(err, &fe) || fe.Field != "hand.path[0]" || !strings.HasPrefix(fe.Value, `"rail dead end" to "arbor foot" at -`) {
			t.Errorf("%s: %v", name, err)
		}
	}
	on.Idler = 60 * units.Pound
	if _, err := r.Run(10*units.Foot, on, purchase.Out); err != nil {
		t.Errorf("with an idler: %v", err)
	}
	if _, err := r.Stays(10*units.Foot, on); err != nil {
		t.Errorf("with an idler: %v", err)
	}
}

// At rest it is told of by the state: the rope above a lock that is asked for more than it can give up, and a lift line
// that bears nothing at the batten while the arbor is below it.
func TestTaut(t *testing.T) {
	l := weightless(purchase.Double)
	l.LiftMass = 0.11 * units.PoundPerFoot
	r, err := l.Rig()
	if err != nil {
		t.Fatal(err)
	}
	on := purchase.Bodies{Pulls: evenly(5, 100*units.PoundForce), Arbor: 900 * units.Pound, Idler: 30 * units.Pound}
	on.Pulls[3] = 0
	s, err := r.At(45*units.Foot, on)
	if err != nil {
		t.Fatal(err)
	}
	fields := map[string]bool{}
	for _, e := range s.Taut().(interface{ Unwrap() []error }).Unwrap() {
		var fe *units.FieldError
		if !errors.As(e, &fe) || !errors.Is(e, purchase.ErrSlack) {
			t.Fatalf("%v", e)
		}
		fields[fe.Field] = true
	}
	same(t, map[string]bool{"lift[3].path[0]": true, "lift[3].path[2]": true, "lift[3].path[3]": true}, fields)
	on.Pulls[3], on.Arbor = 100*units.PoundForce, 700*units.Pound // and now the lock cannot hold it
	if s, err = r.At(45*units.Foot, on); err != nil || s.Held() {
		t.Fatalf("%v, held %v", err, s.Held())
	}
	var fe *units.FieldError
	if err := s.Taut(); !errors.As(err, &fe) || !errors.Is(err, purchase.ErrSlack) || fe.Field != "hand.path[2]" {
		t.Errorf("%v", err)
	}
	on.Arbor = 1000 * units.Pound
	if s, err = r.At(45*units.Foot, on); err != nil || s.Taut() != nil {
		t.Errorf("%v %v", err, s.Taut())
	}
}

// A rope that bears nothing at its lowest place but its own weight above it just hangs: rounding leaves it a hair of tension there or takes
// one away, and it is not called slack for that.
func TestRopesThatJustHang(t *testing.T) {
	for i := range 100 {
		l := oneLine(purchase.Single)
		l.LiftMass, l.HandMass = units.LineMass(0.1+0.037*float64(i)), units.LineMass(0.2+0.023*float64(i))
		r := mustRig(t, l)
		trim := 1 + units.Length(0.07*float64(i)) // below the arbor
		on := massed(0, 200, 0)
		at, err := r.At(trim, on)
		if err != nil || at.Lift[0].Slack || at.Hand.Slack {
			t.Errorf("at %v: lift line slack %v, hand line slack %v; %v", trim, at.Lift[0].Slack, at.Hand.Slack, err)
		}
		if _, err := r.Stays(trim, on); err != nil {
			t.Errorf("at %v: %v", trim, err)
		}
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			if run, err := r.Run(trim, on, way); err != nil || run.Slack || run.Lift[0].Slack || run.Hand.Slack {
				t.Errorf("%v at %v: slack %v; %v", way, trim, run.Slack, err)
			}
		}
	}
}
