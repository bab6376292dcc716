package purchase_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/internal/verification"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// hand asks for the hand's pull, with the rope's turn in radians over π.
func hand(t *testing.T, pull, halfTurns, friction float64) float64 {
	t.Helper()
	got, err := purchase.Wraps{Turns: halfTurns / 2, Friction: friction}.Hand(units.Newton.Scale(pull))
	if err != nil {
		t.Fatal(err)
	}
	return got.In(units.Newton)
}

// Problem:   a rope round a drum.
// Source:    Engineering Mechanics, Examples 7.4, 7.6 and 7.5; capstan exercise, lowering; capstan study pages (2.5
// turns; one turn)
// Tolerance: 0.05 N and 0.003 N, as the book takes e as 2.718; half the last digit; 39 to 40 N as printed
func TestVerifyWraps(t *testing.T) {
	for _, row := range []struct {
		name, source, place string
		unit                string
		got, want, tol      float64
		why                 string
	}{
		{"half a turn", "Engineering Mechanics", "Example 7.4", "N", hand(t, 1000, 1, 0.25), 455.98, 0.05, "the book takes e as 2.718"},
		{"three turns", "Engineering Mechanics", "Example 7.6", "N", hand(t, 1000, 6, 0.3), 3.5025, 0.003, "the book takes e as 2.718"},
		{"lowering 100 kg", "capstan exercise", "", "N", hand(t, 100*9.81, 1.5, 0.2), 382.26, 0.005, "half the last digit"},
		{"braking moment over 0.25 m", "Engineering Mechanics", "Example 7.5", "N·m", (200 - hand(t, 200, 225.0/180, 0.5)) * 0.25, 42.98, 0.005, "half the last digit"},
		{"two and a half turns", "capstan study pages", "2000 N, friction 0.25", "N", hand(t, 2000, 5, 0.25), 39.5, 0.5, "printed as 39 to 40"},
		{"one turn", "capstan study pages", "friction 0.3", "", 1 / hand(t, 1, 2, 0.3), 6.6, 0.05, "half the last digit"},
	} {
		verification.Row{Key: "wraps", Source: row.source, Place: row.place, What: "rope round a drum", Why: row.why}.Of(row.name, row.unit, row.want, row.tol).Check(t, row.got)
	}
}

// The coefficients are those printed, the lowest of each range.
func TestVerifyFriction(t *testing.T) {
	for _, row := range []struct {
		name, source string
		got, printed float64
	}{
		{"hemp on iron", "textbook of mechanical engineering", purchase.FrictionHempOnIron, 0.18},
		{"wire on iron", "textbook of mechanical engineering", purchase.FrictionWireOnIron, 0.15},
		{"nylon on galvanised tube", "teaching text on friction", purchase.FrictionNylonOnTube, 0.2},
	} {
		verification.Row{Key: "friction", Source: row.source, What: "coefficient of friction", Why: "as printed"}.Of(row.name, "", row.printed, 0).Check(t, row.got)
	}
}

// The familiar table of what turns multiply a hand's pull by, in an independent
// calculation: half of the last digit.
func TestVerifyWrapTable(t *testing.T) {
	for _, row := range []struct{ turns, friction, want, tol float64 }{
		{1, 0.1, 1.874, 5e-4},
		{1, 0.2, 3.514, 5e-4},
		{1, 0.3, 6.586, 5e-4},
		{1, 0.4, 12.345, 5e-4},
		{2, 0.1, 3.514, 5e-4},
		{2, 0.2, 12.345, 5e-4},
		{2, 0.3, 43.376, 5e-4},
		{2, 0.4, 152.41, 5e-3},
		{3, 0.1, 6.586, 5e-4},
		{3, 0.2, 43.376, 5e-4},
		{3, 0.3, 285.68, 5e-3},
		{3, 0.4, 1881.5, 5e-2},
		{0.25, 0.3, 1.602, 5e-4},
		{0.5, 0.3, 2.566, 5e-4},
	} {
		got, err := purchase.Wraps{Turns: row.turns, Friction: row.friction}.Holds(units.Newton)
		if err != nil {
			t.Fatal(err)
		}
		verification.Row{Key: "wraps/table", Source: "belt friction formula", What: "pull held over the hand's", Why: "half of the last digit of an independent calculation"}.
			Of(fmt.Sprintf("%v turns at friction %v", row.turns, row.friction), "", row.want, row.tol).Check(t, got.In(units.Newton))
		turns, err := purchase.TurnsWanted(units.Newton.Scale(row.want), units.Newton, row.friction)
		if err != nil || !near.Abs(turns, row.turns, 1e-3) {
			t.Errorf("turns for %v at %v: %v, %v; want %v", row.want, row.friction, turns, err, row.turns)
		}
	}
}

// The turns wanted hold what they were wanted for, more turns hold more, and what the
// hand must give goes back to what is held.
func TestPropWraps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		friction := rapid.Float64Range(0.15, 1).Draw(t, "friction")
		hand := units.Force(rapid.Float64Range(1, 500).Draw(t, "hand"))
		pull := units.Force(rapid.Float64Range(0, 5000).Draw(t, "pull"))
		turns, err := purchase.TurnsWanted(pull, hand, friction)
		if err != nil {
			t.Fatal(err)
		}
		held, err := purchase.Wraps{Turns: turns, Friction: friction}.Holds(hand)
		if err != nil || !near.Rel(held.In(units.Newton), max(pull, hand).In(units.Newton), 1e-12) {
			t.Fatalf("%v turns hold %v, %v; want %v", turns, held, err, pull)
		}
		more := purchase.Wraps{Turns: min(turns+0.1, 10), Friction: friction}
		if above, err := more.Holds(hand); err != nil || above <= held && turns < 9.9 {
			t.Fatalf("more turns hold %v, %v; fewer %v", above, err, held)
		}
		if back, err := more.Hand(pull); err != nil || back > hand {
			t.Fatalf("hand %v, %v; fewer turns take %v", back, err, hand)
		}
	})
}
