package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Wraps are turns of a rope round a rail, a pin or a bollard, by which a small pull
// of the hand holds a large one: each turn multiplies it by the same factor, and
// n turns hold T = P·e^(μ·2πn). The zero value holds no more than the hand does.
//
// Caution: it is no lock and no belay. It must be tended for as long as it holds,
// by a hand on the rope: where the hand lets go, nothing holds, whatever the number of
// turns. A load that bounces, and a rope that is jerked or rides over itself, can
// shake the turns loose. The coefficient spreads widely, falls with wear, polish,
// oil and damp, and is lower while the rope slips than before: take the lowest that may
// be, and more turns than the figure. Whether the rail can take both pulls is
// another question.
type Wraps struct {
	Turns    float64 `json:"turns"`    // whole turns and parts of one, up to 10: a rope that only bends round a rail has a quarter or a half
	Friction float64 `json:"friction"` // coefficient of rope on rail, up to 1
}

// Coefficients of friction as examples, the lowest where a range is printed. They
// are for dry rope and are no rating.
const (
	FrictionHempOnIron  = 0.18 // printed as 0.28 down to 0.18: an old textbook of mechanical engineering, p. 579
	FrictionWireOnIron  = 0.15 // the same
	FrictionNylonOnTube = 0.2  // on galvanised steel tube, from a teaching text
)

const (
	mostTurns    = 10 // more lie on no rail; e^(2π·10) is finite, too
	mostFriction = 1
)

// Holds is the greatest pull of the rope that a pull of the hand holds.
//
// The errors are *units.FieldError, joined, with the fields "turns", "friction", "hand".
func (w Wraps) Holds(hand units.Force) (units.Force, error) {
	k, err := w.ratio("hand", hand)
	if err != nil {
		return 0, err
	}
	return hand.Scale(k), nil
}

// Hand is the least pull of the hand that keeps the rope from slipping; with a little
// less it runs out, which is how a load is let down over wraps.
//
// The errors are *units.FieldError, joined, with the fields "turns", "friction", "pull".
func (w Wraps) Hand(pull units.Force) (units.Force, error) {
	k, err := w.ratio("pull", pull)
	if err != nil {
		return 0, err
	}
	return pull.Scale(1 / k), nil
}

func (w Wraps) ratio(field string, f units.Force) (float64, error) {
	var p check.Problems
	check.NotNegative(&p, field, f)
	bounded(&p, "turns", w.Turns, 0, mostTurns, "from 0 to 10 turns")
	w.frictionFault(&p)
	if err := p.Err(); err != nil {
		return 0, err
	}
	return rope.WrapRatio(w.Friction, w.Turns), nil
}

func (w Wraps) frictionFault(p *check.Problems) {
	bounded(p, "friction", w.Friction, 0, mostFriction, "a coefficient from 0 to 1")
}

// TurnsWanted is the number of turns with which a pull of the hand just holds the
// rope: 0 where the hand holds it alone. On a rail take the next whole turn above it, and
// then one more for the care that [Wraps] calls for.
//
// The errors are *units.FieldError, joined, with the fields "pull", "hand", "friction": a hand
// that pulls nothing holds nothing, and so do turns without friction. Where more
// than 10 turns are wanted the field is "turns".
func TurnsWanted(pull, hand units.Force, friction float64) (float64, error) {
	var p check.Problems
	check.NotNegative(&p, "pull", pull)
	check.Positive(&p, "hand", hand, "the pull of the hand that tends the rope (turns alone hold nothing)")
	Wraps{Friction: friction}.frictionFault(&p)
	if err := p.Err(); err != nil {
		return 0, err
	}
	if pull <= hand {
		return 0, nil
	}
	if friction == 0 {
		p.Add("friction", "", "a coefficient above 0: without friction no turns hold more than the hand", units.ErrMissing)
		return 0, p.Err()
	}
	turns := rope.WrapTurns(friction, units.Ratio(pull, hand))
	if turns > mostTurns*(1+1e-9) { // what ten turns hold is not refused for rounding
		p.Add("turns", plainText(math.Ceil(min(turns, 1e6)))+" or more", "at most 10: another way to hold the load", units.ErrOutOfRange)
		return 0, p.Err()
	}
	return min(turns, mostTurns), nil
}
