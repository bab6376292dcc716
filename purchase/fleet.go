package purchase

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// FleetLimit is a fleet angle that is commonly kept, about 1 in 38. It is common practice
// and no default: the blocks' maker or the standard that applies sets the limit.
const FleetLimit units.Angle = 1.5 * units.Degree

// FleetAngle is the angle between a rope and the plane of the sheave it runs to,
// from how far its other end stands off that plane, to either side, and the lead: the
// length between the two along the plane. The angle is never negative. Too much of it
// makes a rope climb its flange, wear, and jump. For all leads of a set see
// [Reeved.GeometryUse].
//
// The errors are *units.FieldError, joined, with the fields "offset", "lead".
func FleetAngle(offset, lead units.Length) (units.Angle, error) {
	var p check.Problems
	check.Finite(&p, "offset", offset)
	leadFault(&p, lead)
	if err := p.Err(); err != nil {
		return 0, err
	}
	return units.Angle(rope.FleetAngle(units.Abs(offset).In(units.Metre), lead.In(units.Metre))), nil
}

// FleetOffset is how far the other end of a lead may stand off the plane of the sheave
// to keep a limit of the fleet angle: lead·tan(limit).
//
// The errors are *units.FieldError, joined, with the fields "lead", "limit"; a limit is up
// to 45 degrees.
func FleetOffset(lead units.Length, limit units.Angle) (units.Length, error) {
	var p check.Problems
	leadFault(&p, lead)
	if check.Positive(&p, "limit", limit, "the largest fleet angle, such as FleetLimit") && limit > units.Turn/8 {
		p.Add("limit", check.Show(limit), "at most 45 degrees", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	return units.Length(rope.FleetOffset(limit.In(units.Radian), lead.In(units.Metre))), nil
}

func leadFault(p *check.Problems, lead units.Length) {
	check.Positive(p, "lead", lead, "the length of the lead, from one sheave to the next")
}
