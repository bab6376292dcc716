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
		{-8, units.ErrOutOfRange, 0}, {20, units.ErrOutOfRange, 0}, {-9, units.ErrOutOfRange, 0}, {21, units.ErrOutOfRange, 0},
		{units.Length(math.Inf(1)), units.ErrNotFinite, 0}, {units.Length(math.Inf(-1)), units.ErrNotFinite, 0}, {units.Length(math.NaN()), units.ErrNotFinite, 0},
		{-7.5, nil, 19.5}, {19.5, nil, -7.5}, {2, nil, 10}, {2.5, nil, 9.5},
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
