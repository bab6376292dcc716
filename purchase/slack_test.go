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
