package purchase

import (
	"math"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// GeometryLimits are what the caller lets the leads and sheaves of a set be; a zero is not given, and nothing exceeds
// it. They have no defaults: the makers of ropes and blocks and the standard that applies set them. The two kinds
// of rope have limits of their own, for wire rope wants larger sheaves than fibre rope does.
type GeometryLimits struct {
	Fleet     units.Angle `json:"fleet,omitzero"`      // the most for any lead, such as FleetLimit; up to 45 degrees
	LiftRatio float64     `json:"lift_ratio,omitzero"` // the least sheave ratio for the lift lines; from 1 to 1000
	HandRatio float64     `json:"hand_ratio,omitzero"` // the least sheave ratio for the hand line; from 1 to 1000
}

// validate reports everything that is wrong, as *units.FieldError joined.
func (l GeometryLimits) validate() error {
	var p check.Problems
	if l.Fleet != 0 && check.Positive(&p, "fleet", l.Fleet, "the largest fleet angle, such as FleetLimit") && l.Fleet > units.Turn/8 {
		p.Add("fleet", check.Show(l.Fleet), "at most 45 degrees", units.ErrOutOfRange)
	}
	ratio := func(field string, least float64) {
		if least != 0 {
			bounded(&p, field, least, 1, 1000, "the least diameter of a sheave over that of its rope, from 1 to 1000")
		}
	}
	ratio("lift_ratio", l.LiftRatio)
	ratio("hand_ratio", l.HandRatio)
	if p.Err() == nil && l == (GeometryLimits{}) {
		p.Add("", "", "a limit for the fleet angle, for the sheaves, or both", units.ErrMissing)
	}
	return p.Err()
}

// GeometryUse is how far limits are used, by the lead and the sheave that use them the most. Of equals to
// within rounding it is the first: lift lines from the arbor out, then the hand line, each along its path.
type GeometryUse struct {
	Lead   LeadUse   `json:"lead"`   // zero where no limit is given
	Sheave SheaveUse `json:"sheave"` // zero where no limit is given, or no ratio of a sheave that has one is known
	// Unknown is how many sheaves have a limit but no ratio, for their tread or their rope's diameter is not given. Nothing
	// is said of them.
	Unknown int `json:"unknown"`
}

// LeadUse is a lead held against the limit of its fleet angle.
type LeadUse struct {
	Trim  units.Length `json:"trim"`  // where its angle is the greatest
	Rope  string       `json:"rope"`  // name of the rope
	Part  int          `json:"part"`  // its place in the rope's Parts
	From  string       `json:"from"`  // name of the stop it leaves
	To    string       `json:"to"`    // name of the stop it runs to
	Angle units.Angle  `json:"angle"` // its fleet angle
	Limit units.Angle  `json:"limit"` // the most that is let be
	Use   float64      `json:"use"`   // Angle over Limit: with 1 it is just within
}

// SheaveUse is a sheave held against the least ratio for its rope.
type SheaveUse struct {
	Rope  string  `json:"rope"` // name of the rope
	Turn  int     `json:"turn"` // its place in the rope's Turns
	At    string  `json:"at"`   // name of the sheave's stop
	On    Body    `json:"on"`
	Ratio float64 `json:"ratio"` // the sheave's tread over the rope's diameter
	Limit float64 `json:"limit"` // the least that is let be
	Use   float64 `json:"use"`   // Limit over Ratio: with 1 it is just within
}

// Use holds the fleet angles at this trim and the sheaves against limits. The error joins a *units.FieldError for each
// limit that makes no sense, or tells that there is none, and none of a Geometry.
func (g Geometry) Use(l GeometryLimits) (GeometryUse, error) {
	if err := l.validate(); err != nil {
		return GeometryUse{}, err
	}
	if len(g.Lift) == 0 {
		var p check.Problems
		p.Add("lift", "", "a geometry that a Reeved has given", units.ErrMissing)
		return GeometryUse{}, p.Err()
	}
	return g.use(l), nil
}

func (g Geometry) use(l GeometryLimits) (u GeometryUse) {
	for _, r := range g.Lift {
		u = u.with(g.Trim, r, l.Fleet, l.LiftRatio)
	}
	return u.with(g.Trim, g.Hand, l.Fleet, l.HandRatio)
}

// more is by how much a use must be greater than another to be the worse.
const more = 1 + 1e-12 // untyped: a plain ratio

// with holds one more rope against its limits.
func (u GeometryUse) with(trim units.Length, r RopeGeometry, fleet units.Angle, ratio float64) GeometryUse {
	for i, part := range r.Parts {
		if fleet <= 0 || !(part.Fleet >= 0 && part.Fleet <= units.Turn) { // no limit, or no angle of ours
			continue
		}
		one := LeadUse{trim, r.Name, i, part.From, part.To, part.Fleet, fleet, units.Ratio(part.Fleet, fleet)}
		if u.Lead.Limit == 0 || one.Use > float64(u.Lead.Use*more) {
			u.Lead = one
		}
	}
	for i, turn := range r.Turns {
		switch {
		case ratio <= 0:
		case !(turn.SheaveRatio >= 1 && turn.SheaveRatio <= math.MaxFloat64):
			u.Unknown++
		default:
			one := SheaveUse{r.Name, i, turn.At, turn.On, turn.SheaveRatio, ratio, ratio / turn.SheaveRatio}
			if one.Use > float64(u.Sheave.Use*more) {
				u.Sheave = one
			}
		}
	}
	return u
}

// GeometryUse holds all leads, at the trim where each has its greatest angle, and all sheaves against limits, for a travel
// between two trims. So the short lead from the head block to an arbor just under it, at low trim, counts with the angle that
// it has there.
//
// The ends of the travel are enough: a part either keeps its length or hangs plumb between two bodies of which one
// moves, and inside Reach these do not meet, so that its length only grows or only shrinks over the travel; and its
// fleet angle falls as the length grows.
//
// The error joins a *units.FieldError for each trim that is out of order or beyond Reach and each limit that makes no
// sense.
func (r *Reeved) GeometryUse(low, high units.Length, l GeometryLimits) (GeometryUse, error) {
	if err := r.unrigged(); err != nil {
		return GeometryUse{}, err
	}
	var p check.Problems
	r.reaches(&p, Flight{Low: low, High: high})
	p.Within("limits", "", l.validate())
	if err := p.Err(); err != nil {
		return GeometryUse{}, err
	}
	worst, other := r.geometry(low).use(l), r.geometry(high).use(l).Lead // its sheaves are the same at every trim
	if other.Use > float64(worst.Lead.Use*more) {
		worst.Lead = other
	}
	return worst, nil
}
