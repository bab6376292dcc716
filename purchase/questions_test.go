package purchase_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Neither end of what the ropes can run is reached: there the arbor is at the head block, 10 m above where it was with the batten at 2 m,
// or the batten at its loft block at 20 m. Just inside, each is.
func TestEndsOfReach(t *testing.T) {
	re := handLines()["plain"]
	re.Hand = purchase.Rope{}
	r, err := re.Rig()
	if err != nil {
		t.Fatal(err)
	}
	if lowest, highest := r.Reach(); lowest != -8 || highest != 20 {
		t.Errorf("%v to %v, want -8 to 20 m", lowest, highest)
	}
	on := purchase.Bodies{Pulls: []units.Force{100}, Arbor: 10}
	for _, c := range []struct {
		trim units.Length
		kind error // none: it is reached
		top  units.Length
	}{
		{-8, units.ErrOutOfRange, 0},
		{20, units.ErrOutOfRange, 0},
		{-9, units.ErrOutOfRange, 0},
		{21, units.ErrOutOfRange, 0},
		{units.Length(math.Inf(1)), units.ErrNotFinite, 0},
		{units.Length(math.Inf(-1)), units.ErrNotFinite, 0},
		{units.Length(math.NaN()), units.ErrNotFinite, 0},
		{-7.5, nil, 19.5},
		{19.5, nil, -7.5},
		{2, nil, 10},
		{2.5, nil, 9.5},
	} {
		top, err := r.ArborTop(c.trim)
		_, rest := r.At(c.trim, on)
		if c.kind != nil {
			one(t, err, "trim", c.kind, "out of reach")
			one(t, rest, "trim", c.kind, "out of reach")
		} else if err != nil || rest != nil {
			t.Errorf("%v: %v, %v", c.trim, err, rest)
		}
		if top != c.top {
			t.Errorf("%v: the arbor's top at %v, want %v", c.trim, top, c.top)
		}
	}
}

// What n turns hold, n turns are wanted for, up to the ten that lie on a rail; more are refused with how many it would take.
func TestPropTurnsAreThoseThatHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turns := rapid.OneOf(rapid.Just(10.0), rapid.Float64Range(0.1, 10)).Draw(t, "turns")
		friction := rapid.Float64Range(0.01, 0.35).Draw(t, "friction")
		hand := units.Force(rapid.Float64Range(1, 200).Draw(t, "hand"))
		pull, err := purchase.Wraps{Turns: turns, Friction: friction}.Holds(hand)
		if err != nil {
			t.Fatal(err)
		}
		got, err := purchase.TurnsWanted(pull, hand, friction)
		if err != nil || !near.Rel(got, turns, 1e-9) || got > 10 {
			t.Fatalf("%v turns hold %v, for which %v are wanted, %v", turns, pull, got, err)
		}
	})
	for pull, value := range map[units.Force]string{
		600:     "11 or more", // ln 600/(2π·0.1) = 10.18
		5000:    "14 or more", // 13.56
		1 << 30: "34 or more", // 33.10
	} {
		_, err := purchase.TurnsWanted(pull, 1, 0.1)
		one(t, err, "turns", units.ErrOutOfRange, "they lie on no rail")
		says(t, err, value, "at most 10")
	}
}

// Shares of strength and design factors just beyond what is taken are not taken.
func TestRopeUseJustBeyondItsBounds(t *testing.T) {
	for _, c := range []struct {
		name                         string
		termination, bending, wanted float64
		field                        string
	}{
		{"an end that keeps less than a hundredth", 0.0099, 1, 8, "termination"},
		{"an end that is stronger than the rope", 1.01, 1, 8, "termination"},
		{"a bend that keeps less than a hundredth", 1, 0.0099, 8, "bending"},
		{"a bend that is stronger than the rope", 1, 1.01, 8, "bending"},
		{"a factor below one", 1, 1, 0.99, "wanted"},
		{"a factor above a hundred", 1, 1, 100.5, "wanted"},
	} {
		use := purchase.RopeUse{Rope: purchase.RopeStock{Diameter: 0.006, Breaking: 1000}, Termination: c.termination, Bending: c.bending}
		limit, err := use.Limit(c.wanted)
		one(t, err, c.field, units.ErrOutOfRange, c.name)
		if limit != 0 {
			t.Errorf("%s: and yet %v", c.name, limit)
		}
	}
}

// A rule of thumb that charges every sheave with more than the whole load is none; one that charges it with all of it is.
func TestShareOfARule(t *testing.T) {
	tackle := purchase.Tackle{Parts: 2, Sheaves: 2}
	if got, err := tackle.PullByRule(100, 1); err != nil || got != 150 {
		t.Errorf("the whole load at each of two sheaves: %v, %v; want 150 N", got, err)
	}
	got, err := tackle.PullByRule(100, 1.01)
	if one(t, err, "share", units.ErrOutOfRange, "more than the load"); got != 0 {
		t.Errorf("and yet %v", got)
	}
}

// Whatever little moves, it moves as it should: half a kilogram in the arbor, on the batten, of rope or of rims, each alone. Of the hand
// line there are 112 ft, and 6 ft less on the arbor's side than beside it.
func TestLittleThatMoves(t *testing.T) {
	plain, roped, rimmed := oneLine(purchase.Single), oneLine(purchase.Single), oneLine(purchase.Single)
	roped.HandMass = 0.01
	rimmed.Rim = 0.1
	for _, c := range []struct {
		name   string
		layout purchase.Layout
		on     purchase.Bodies
		want   float64 // in g, upwards at the batten
	}{
		{"in the arbor", plain, massed(0, 0.5, 20), 1},
		{"on the batten", plain, massed(0.5, 0, 20), -1},
		{"half a newton on the batten", plain, purchase.Bodies{Pulls: []units.Force{0.5}, Idler: 20}, -1},
		{"of rope", roped, massed(0, 0, 20), -6.0 / 112},
		{"of rims", rimmed, massed(0, 0, 20), 0},
	} {
		got, err := mustRig(t, c.layout).Gain(5, c.on, purchase.Out, 0, purchase.Pulling{})
		if err != nil || !near.Abs(got.In(units.MetrePerSecondSquared), c.want*g, 1e-12) {
			t.Errorf("%s: %v, %v; want %v g", c.name, got, err, c.want)
		}
	}
}

// The hand that a set takes is on the rope that pulls: by however little on the inner one, or on the outer, and where nothing is wanted
// of it on either that is there.
func TestHandForLittle(t *testing.T) {
	r := mustRig(t, oneLine(purchase.Single))
	for _, c := range []struct {
		heavy float64 // N on the batten
		on    purchase.Role
	}{{0.5, purchase.InnerRope}, {-0.5, purchase.OuterRope}} {
		for _, way := range []purchase.Way{purchase.Out, purchase.In} {
			on := purchase.Bodies{Pulls: []units.Force{units.Force(500 + c.heavy)}, Arbor: newtons(500), Idler: 20}
			hand, err := r.HandFor(5, on, purchase.Speeding{Way: way})
			if err != nil || hand.Rope != c.on || !near.Abs(hand.Pull.In(units.Newton), 0.5, 1e-9) {
				t.Errorf("%v N batten-heavy, %v: %+v, %v; want half a newton on the %v", c.heavy, way, hand, err, c.on)
			}
		}
	}
	hand, err := deaf(t).HandFor(1.5, massed(100, 100, 20), purchase.Speeding{Way: purchase.Out})
	if err != nil || hand.Rope != purchase.OuterRope || hand.Pull != 0 {
		t.Errorf("%+v, %v; want no pull on the outer rope", hand, err)
	}
}

// A rope whose diameter is wrong is told of alone: its sheaves are not blamed for it.
func TestSheavesOfARopeOfNoDiameter(t *testing.T) {
	for _, d := range []units.Length{-0.006, units.Length(math.NaN()), units.Length(math.Inf(1))} {
		l := weightless(purchase.Double)
		l.Sheaves = purchase.Sheaves{Loft: 0.3, Head: 0.3, Arbor: 0.3, HandHead: 0.3, Idler: 0.3, HandArbor: 0.3}
		l.LiftDiameter = d
		if all := faults(t, l.Validate()); len(all) != 1 || all[0].Field != "lift_line_diameter" {
			t.Errorf("%v: %v", d, all)
		}
		r := weightless(purchase.Double).Reeving()
		r.Hand.Path[2].Tread, r.Hand.Diameter = 0.3, d
		_, err := r.Rig()
		if all := faults(t, err); len(all) != 1 || all[0].Field != "hand.diameter" {
			t.Errorf("%v: %v", d, all)
		}
	}
}

// Bodies of no possible weight are refused, each by its name, and by how it was called.
func TestBodiesOfNoPossibleWeight(t *testing.T) {
	r := mustRig(t, weightless(purchase.Single))
	for field, change := range map[string]func(*purchase.Bodies){
		"pulls[3]": func(b *purchase.Bodies) { b.Pulls = []units.Force{1, 1, 1, 1e13, 1} },
		"arbor":    func(b *purchase.Bodies) { b.Arbor = 1e13 },
		"idler":    func(b *purchase.Bodies) { b.Idler = 1e13 },
		"base":     func(b *purchase.Bodies) { b.Base = 1e13 },
	} {
		on := purchase.Bodies{Pulls: evenly(5, 1)}
		change(&on)
		_, err := r.At(5, on)
		one(t, err, field, units.ErrOutOfRange, "nothing is so heavy")
	}
	on := purchase.Bodies{Pulls: evenly(5, 2e6), Arbor: 2e6, Idler: 2e6, Base: 2e6}
	if _, err := r.At(5, on); err != nil {
		t.Errorf("however heavy, it is a number: %v", err)
	}
}
