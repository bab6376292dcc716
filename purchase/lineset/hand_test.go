package lineset_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// Without drag the hands pull what is out of balance: on the inner rope to fly a batten-heavy set out, on the same to hold
// it back as it runs in. With drag both take more, the one that lets it run less, and the set stays by itself in a band
// about balance.
func TestHand(t *testing.T) {
	s := electric()
	free, err := s.Rig(stock)
	if err != nil {
		t.Fatal(err)
	}
	s.Rigging.Drag = purchase.AntiFrictionBearings
	dragged, err := s.Rig(stock)
	if err != nil {
		t.Fatal(err)
	}
	trim := s.Low
	out, err := free.Imbalance(trim)
	if err != nil || out <= 0 {
		t.Fatalf("%v %v: want a set that is batten-heavy at low trim", out, err)
	}
	h, err := free.Hand(trim)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []lineset.HandPull{h.Out, h.In} {
		if !near.Rel(p.Pull.In(units.Newton), out.In(units.Newton), 1e-9) || p.Rope != purchase.InnerRope {
			t.Errorf("%+v, want %v on the inner rope", p, out)
		}
	}
	if h.Out.Runs || !h.In.Runs || h.Feel.Tight != purchase.InnerRope || !near.Rel(h.Feel.More.In(units.Newton), out.In(units.Newton), 1e-9) {
		t.Errorf("%+v", h)
	}
	if h.Stays.BattenHeavy > 1e-9 || h.Stays.ArborHeavy < -1e-9 {
		t.Errorf("without drag it stays at %+v", h.Stays)
	}
	d, err := dragged.Hand(trim)
	if err != nil {
		t.Fatal(err)
	}
	signed := func(p lineset.HandPull) units.Force {
		if p.Runs {
			return -p.Pull
		}
		return p.Pull
	}
	if signed(d.Out) <= signed(h.Out) || signed(d.In) <= signed(h.In) || d.Stays.BattenHeavy <= 0 || d.Stays.ArborHeavy >= 0 || d.Feel != h.Feel {
		t.Errorf("with drag %+v, without %+v", d, h)
	}
	if _, err := dragged.Hand(units.Length(math.NaN())); !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("%v", err)
	}
}

// The checks take the worst over the travel, name the rope, and are silent about what has no limit.
func TestHandChecks(t *testing.T) {
	s := electric()
	s.Rigging.Drag = purchase.AntiFrictionBearings
	s.Rigging.Limits.HandPull = lineset.ForceLimit{Max: 40 * units.PoundForce, Basis: "given in the test"}
	s.Rigging.Limits.RopeLock = lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: "given in the test"}
	r, err := s.Rig(stock)
	if err != nil {
		t.Fatal(err)
	}
	low, err := r.Hand(s.Low)
	if err != nil {
		t.Fatal(err)
	}
	high, err := r.Hand(s.High)
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, c := range r.Checks() {
		want := map[string]lineset.HandPull{"hand pull to fly out": low.Out, "hand pull to fly in": high.In}[c.Name]
		if want.Pull == 0 {
			continue
		}
		found++
		if got := c.Ratio * 40; !near.Rel(got, want.Pull.In(units.PoundForce), 1e-9) || c.Where != want.Rope.String() {
			t.Errorf("%v, want %+v", c, want)
		}
		if exceeds := want.Pull > 40*units.PoundForce; (c.Verdict == lineset.Exceeds) != exceeds {
			t.Errorf("%v, pull %v", c, want.Pull)
		}
	}
	if found != 2 {
		t.Errorf("%d checks of the hands' pull", found)
	}
	s.Rigging.Drag = 1.04
	var fault *units.FieldError
	if _, err := s.Rig(stock); !errors.As(err, &fault) || fault.Field != "rigging.drag" {
		t.Errorf("a factor for a drag: %v", err)
	}
}

// The report holds what the hands feel at both trims; that of a zero Rigged holds nothing.
func TestHandsInTheReport(t *testing.T) {
	s := electric()
	r, err := s.Rig(stock)
	if err != nil {
		t.Fatal(err)
	}
	low, err := r.Hand(s.Low)
	if err != nil {
		t.Fatal(err)
	}
	high, err := r.Hand(s.High)
	if err != nil {
		t.Fatal(err)
	}
	if got := r.Report(); !reflect.DeepEqual(got.LowHand, low) || !reflect.DeepEqual(got.HighHand, high) {
		t.Errorf("%+v and %+v, want %+v and %+v", got.LowHand, got.HighHand, low, high)
	}
	if got := new(lineset.Rigged).Report(); !reflect.DeepEqual(got.LowHand, lineset.Hand{}) {
		t.Errorf("%+v of nothing", got.LowHand)
	}
}

// slackHandLine makes the arbor so heavy that drag just keeps the batten from running out, and takes the idler's weight away.
func slackHandLine(s *lineset.Set) {
	s.Hang, s.Low, s.Rigging.Drag = nil, 10*units.Foot, 0.1
	s.Rigging.Arbor.Tare, s.Rigging.Idler.Mass = 415*units.Pound, 0
}

func contains(notes []string, part string) bool {
	return slices.ContainsFunc(notes, func(note string) bool { return strings.Contains(note, part) })
}

// What the figures do not say is said in words.
func TestHandNotes(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*lineset.Set)
		want   []string // a part of each note
		reason string
	}{
		{"nothing to be said", func(s *lineset.Set) { s.Rigging.Drag = 0.02 }, nil, "nearly in balance, and drag holds it"},
		{"runs", func(*lineset.Set) {}, []string{"the batten runs in by itself"}, "batten-heavy and nothing holds it"},
		{
			"idler lifts", func(s *lineset.Set) { s.Rigging.Idler.Mass, s.Rigging.Drag = 15*units.Pound, 0.02 },
			[]string{"the idler lifts and the rope lock alone does not hold"},
			"9.1 lbf are asked of 7.5 lbf",
		},
		{
			"an idler of a kilogram lifts", func(s *lineset.Set) { s.Rigging.Idler.Mass, s.Rigging.Drag = 1*units.Kilogram, 0.02 },
			[]string{"the idler lifts and the rope lock alone does not hold"},
			"1.1 lbf and the rope's own",
		},
		{
			"held by half a newton", func(s *lineset.Set) { s.Rigging.Idler.Base, s.Rigging.Drag = 0.5*units.Newton, 0.02 },
			[]string{"what holds the idler bears the rest"},
			"9.1 lbf are asked of next to nothing",
		},
		{"held tight", func(s *lineset.Set) { s.Rigging.Idler.Base, s.Rigging.Drag = 10*units.PoundForce, 0.02 }, nil, "9.1 lbf are asked of 10 lbf and more"},
		{"idler not given", func(s *lineset.Set) { s.Rigging.Idler.Mass = 0 }, []string{"weight is not given", "runs in"}, "nobody can tell whether it lifts"},
		{
			"arbor-heavy", func(s *lineset.Set) {
				s.Low, s.High = 28*units.Foot, 45*units.Foot
				s.Balance = lineset.AtHigh
				s.Hang = nil
			},
			[]string{"the batten runs out by itself"},
			"an empty set keeps its pipe weight, and is arbor-heavy above the middle",
		},
		{
			"hand line slack", slackHandLine,
			[]string{"is not given", "with no hand on a rope the hand line would be slack", "flying out, the hand line would be slack"},
			"next to none of the pull that would fly it out is left to keep the rope tight",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := electric()
			c.change(&s)
			h, err := mustRig(t, s).Hand(s.Low)
			if err != nil {
				t.Fatal(err)
			}
			notes := h.Notes()
			if len(notes) != len(c.want) {
				t.Fatalf("%q, want %q: %s", notes, c.want, c.reason)
			}
			for i, part := range c.want {
				if !strings.Contains(notes[i], part) {
					t.Errorf("%q, want %q: %s", notes[i], part, c.reason)
				}
			}
		})
	}
	// Ropes that are slack on the way are named, if it is one.
	for _, slack := range [][]string{nil, {"lift line 3"}, {"lift line 3", "lift line 4"}} {
		h := lineset.Hand{Trim: 5, Feel: purchase.Feel{Held: true}, Terms: lineset.HandTerms{Idler: 20}, In: lineset.HandPull{Slack: slack}}
		var want []string
		if slack != nil {
			want = []string{"flying in, slack somewhere on the way: " + strings.Join(slack, ", ") + "; the pull to fly in does not quite add up"}
		}
		if notes := h.Notes(); !slices.Equal(notes, want) {
			t.Errorf("%q, want %q", notes, want)
		}
	}
	if notes := (lineset.Hand{}).Notes(); notes != nil {
		t.Errorf("%q of nothing", notes)
	}
	if steps := (lineset.Hand{}).Working(units.US); steps != nil {
		t.Errorf("%v of nothing", steps)
	}
}

// A pull that cannot be told is within no limit; where the idler's weight was not given, it is not checked.
func TestSlackHandLineIsWithinNoLimit(t *testing.T) {
	s := electric()
	slackHandLine(&s)
	s.Rigging.Limits.HandPull = lineset.ForceLimit{Max: 1000 * units.PoundForce, Basis: "given in the test"}
	c := named(t, mustRig(t, s), "hand pull to fly out")
	if c.Verdict != lineset.NoLimit || c.Where != "hand line slack" || c.Basis != "" || c.Trim != s.Low {
		t.Errorf("idler not given: %v", c)
	}
	given := func(idler lineset.Idler, want lineset.Verdict) {
		idler.Height = s.Rigging.Idler.Height
		s.Rigging.Idler = idler
		c := named(t, mustRig(t, s), "hand pull to fly out")
		if c.Verdict != want || c.Where != "hand line slack" || c.Demand != units.Value(units.Force(0)) || c.Trim != s.Low || c.Basis != s.Rigging.Limits.HandPull.Basis {
			t.Errorf("%+v: %v, want %v", idler, c, want)
		}
	}
	given(lineset.Idler{Mass: units.Gram}, lineset.Exceeds)
	given(lineset.Idler{Base: 0.01 * units.Newton}, lineset.Exceeds)
	s.Rigging.Limits.HandPull = lineset.ForceLimit{}
	given(lineset.Idler{Mass: units.Gram}, lineset.NoLimit)
}

// The load's own questions of a set.
func TestLoadOfASet(t *testing.T) {
	r, err := electric().Rig(stock)
	if err != nil {
		t.Fatal(err)
	}
	p, err := r.Load().PointAllowed(20*units.Foot, 11*units.Foot, 21*units.Foot, load.Limits{Line: 700 * units.PoundForce})
	if err != nil || p.Mass <= 0 || p.Bound != load.BoundByLine {
		t.Errorf("%+v %v", p, err)
	}
}

// What the hands feel at low trim: the first electric is a little batten-heavy there.
func ExampleRigged_Hand() {
	set := electric()
	set.Rigging.Drag = purchase.AntiFrictionBearings
	rigged, err := set.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	hand, err := rigged.Hand(5 * units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("lock shut: the %v is tighter by %.1f lbf\n", hand.Feel.Tight, hand.Feel.More.In(units.PoundForce))
	fmt.Printf("to fly out: %.1f lbf on the %v\n", hand.Out.Pull.In(units.PoundForce), hand.Out.Rope)
	fmt.Printf("to fly in: %.1f lbf on the %v\n", hand.In.Pull.In(units.PoundForce), hand.In.Rope)
	fmt.Printf("stays by itself up to %.1f lbf batten-heavy\n", hand.Stays.BattenHeavy.In(units.PoundForce))
	// Output:
	// lock shut: the inner rope is tighter by 9.1 lbf
	// to fly out: 51.4 lbf on the inner rope
	// to fly in: 30.9 lbf on the outer rope
	// stays by itself up to 38.3 lbf batten-heavy
}

// Rise and factor of each stop of a rope: nothing comes before its first, and only over sheaves it turns and is dragged upon, which makes
// the next part the tighter while the batten flies out.
func TestTermsOfEachRope(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		s := two(kind)
		s.Rigging.Drag = 0.02
		h, err := mustRig(t, s).Hand(6 * units.Foot)
		if err != nil {
			t.Fatal(err)
		}
		for _, rope := range append(slices.Clone(h.Terms.Lift), h.Terms.Hand) {
			last := len(rope.Stops) - 1
			for i, stop := range rope.Stops {
				sheave := i > 0 && i < last
				if i == 0 && stop.Rise != 0 || sheave != (stop.Factor > 1) || sheave != (stop.Turn > 0) || stop.Turn > units.Turn/2 {
					t.Errorf("%v purchase, %s at %s: %+v", kind, rope.Name, stop.At, stop)
				}
			}
			if first := rope.Stops[0]; first.Factor != 1 || rope.Stops[last].Factor != 1 {
				t.Errorf("%v purchase, %s: %+v", kind, rope.Name, rope.Stops)
			}
		}
	}
}
