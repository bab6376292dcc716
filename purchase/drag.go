package purchase

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Drag is how hard a sheave is to turn: the difference of the tensions on its two
// sides over the resultant of both on its pin, a number from 0 to 0.9. It is a
// property of the bearing, the same whichever way the rope turns there; what it
// costs grows with the turn, as the pin is then loaded more. The zero value is
// [FrictionlessBlocks].
//
// Handbooks give instead the factor by which the tension grows over a sheave on
// which the rope turns back, such as 1.04: [DragPerHalfTurn] takes that. 1.04 is a Drag
// of 0.0196 only: do not mistake the one for the other.
//
// It stands for the bearing. What it costs to bend a stiff rope round the sheave,
// and flanges or other ropes that it rubs on, come on top and are not in it, save
// as far as the factor it was made from was measured with them. Blocks that stood
// dry for years do not know the handbook: measure.
type Drag float64

// Drags by name. Those of a bearing come from factors per half turn of 1.09 and
// 1.04 in Wire Rope Users Manual, 4th ed., p. 88, which are for blocks in good order.
const (
	FrictionlessBlocks   Drag = 0           // no drag: tensions and balance as the ropes' paths alone give them
	PlainBearings        Drag = 0.09 / 2.09 // a sheave on a bush or straight on its pin
	AntiFrictionBearings Drag = 0.04 / 2.04 // a sheave on balls or rollers
)

// mostDrag is a factor of 19 per half turn, about that of a rope that skids round a
// seized sheave with a coefficient of friction of 0.94. More is a slip, most likely
// a factor in place of a Drag; and 64 such sheaves still give a finite tension.
const mostDrag = 0.9

// DragPerHalfTurn makes a Drag of a handbook's factor K per sheave, tight side over
// slack side of a rope that comes back beside itself: c = (K−1)/(K+1). A printed
// efficiency per sheave, such as 0.96, is 1/K.
//
// The error is a *units.FieldError for a factor below 1 or above 19, or none at all.
func DragPerHalfTurn(factor float64) (Drag, error) {
	var p check.Problems
	if !bounded(&p, "factor", factor, 1, 19, "a factor from 1, for no drag, to 19; of an efficiency take 1 over it") {
		return 0, p.Err()
	}
	return Drag((factor - 1) / (factor + 1)), nil
}

// Validate tells whether the drag is a number from 0 to 0.9. The error is a
// *units.FieldError.
func (d Drag) Validate() error {
	var p check.Problems
	d.fault(&p, "")
	return p.Err()
}

func (d Drag) fault(p *check.Problems, field string) (ok bool) {
	return bounded(p, field, float64(d), 0, mostDrag, "a drag from 0 to 0.9; of a factor per half turn, such as 1.04, DragPerHalfTurn makes one")
}

// Factor is how many times the slack side's tension the tight side has, at a sheave
// where the rope's path turns by an angle from none, straight past, to half a turn,
// where it comes back beside itself. The tight side is the one the rope runs to. At
// rest the ratio may be anything between 1/Factor and Factor.
//
// The error joins a *units.FieldError for each of drag and angle that is out of its
// range.
//
// With c the drag and θ the turn: [a + √(a² − b²)]/b, a = 1 − c² cos θ, b = 1 − c². It is the
// equilibrium of the sheave with c times the resultant as its drag.
func (d Drag) Factor(turn units.Angle) (float64, error) {
	var p check.Problems
	d.fault(&p, "drag")
	if check.NotNegative(&p, "turn", turn) && turn > units.Turn/2 {
		p.Add("turn", check.Show(turn), "at most half a turn: of a rope wound round further, see Wraps", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	return rope.DragRatioTurning(float64(d), turn.In(units.Radian)), nil
}
