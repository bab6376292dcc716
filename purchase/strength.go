package purchase

import (
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Shares of a rope's strength that its terminations keep, for [RopeUse.Termination]:
// properly made and of the right size. A maker's figure for the very fitting goes before them.
//
// Source: US Army TM 5-3810-305-10, Table 4, which is for wire rope with a core of
// steel where nothing else is said. Of a range it is the lower end.
const (
	SocketKeeps            = 1.00  // poured with spelter or resin
	SwagedSocketKeeps      = 0.95  // other editions may print 1.00; with a fibre core not established
	SleeveKeeps            = 0.95  // loop with a sleeve pressed on, rope up to 1 in
	SleeveOnFibreCoreKeeps = 0.925 // the same
	TuckedSpliceKeeps      = 0.86  // eye spliced by hand, 1/2 in carbon steel
	StainlessSpliceKeeps   = 0.76  // the same in 1/2 in stainless
	WedgeSocketKeeps       = 0.75  // printed as 0.75 to 0.95
	ClipsKeep              = 0.80  // in the right number, spacing and torque, and looked after
)

// KnotKeeps is what a knot leaves of fibre rope, at the lower end: knots are quoted as
// costing 50 to 60 per cent (common practice).
const KnotKeeps = 0.40

// NothingLost says that no end, or no bend, costs strength.
const NothingLost = 1.00

// bending is the printed table of what wire rope keeps of its strength while it is
// bent over a sheave: the sheave's diameter over the rope's, and the share.
var bending = [...]struct{ ratio, keeps float64 }{
	{1, .50}, {2, .65}, {4, .75}, {6, .79}, {8, .83}, {10, .86}, {15, .89}, {20, .91}, {30, .93}, {40, .95},
}

// SheaveRatio is the diameter of a sheave, at the bottom of its groove, over that of
// the rope: D/d. How large it must be is for the rope's maker and the standard that
// applies to say. For all sheaves of a set see [Reeved.GeometryUse].
//
// The errors are *units.FieldError, joined, with the fields "tread", "rope".
func SheaveRatio(tread, rope units.Length) (float64, error) {
	var p check.Problems
	check.Positive(&p, "tread", tread, "the diameter of the sheave at the bottom of its groove")
	check.Positive(&p, "rope", rope, "the diameter of the rope")
	if err := p.Err(); err != nil {
		return 0, err
	}
	return units.Ratio(tread, rope), nil
}

// BendingKeeps is the share of its breaking strength that wire rope keeps at rest while
// it is bent over a sheave of a given [SheaveRatio], for [RopeUse.Bending].
//
// It is common practice, from a table printed alike on several suppliers' pages
// for ratios from 1 to 40: 0.91 at 20, 0.86 at 10. Between two rows it goes in a
// straight line by the ratio; above 40 it stays at 0.95, for nothing is printed there. It
// tells nothing of wear, which small sheaves hasten much more, nor of fibre rope.
//
// The error is a *units.FieldError for a ratio below 1 or not finite.
func BendingKeeps(sheaveRatio float64) (float64, error) {
	var p check.Problems
	if !bounded(&p, "sheave_ratio", sheaveRatio, bending[0].ratio, math.MaxFloat64, "a sheave at least as large as the rope") {
		return 0, p.Err()
	}
	if last := bending[len(bending)-1]; sheaveRatio >= last.ratio {
		return last.keeps, nil
	}
	i := 1
	for bending[i].ratio < sheaveRatio {
		i++
	}
	from, to := bending[i-1], bending[i]
	part := (sheaveRatio - from.ratio) / (to.ratio - from.ratio)
	return from.keeps + float64(part*(to.keeps-from.keeps)), nil
}

// RopeUse is a rope as it is used: what its ends and its bends leave of its strength.
// Neither share has a default: where nothing is lost, say [NothingLost].
type RopeUse struct {
	Rope        RopeStock `json:"rope"`
	Termination float64   `json:"termination"` // share of strength that the weakest end keeps, such as ClipsKeep
	Bending     float64   `json:"bending"`     // share kept over the smallest sheave, such as from BendingKeeps
}

// RopeCheck is a pull on a rope held against its strength, with every term. Strength is the
// smaller of AtEnd and OverSheave: an end and a bend are different places on the
// rope, and it parts at the weaker. Where an end can come up to a sheave, give RopeUse
// the product of both shares for one of them.
type RopeCheck struct {
	Breaking   units.Force `json:"breaking"`    // of the rope alone
	AtEnd      units.Force `json:"at_end"`      // Breaking times what the termination keeps
	OverSheave units.Force `json:"over_sheave"` // Breaking times what the bend keeps
	Strength   units.Force `json:"strength"`
	Wanted     float64     `json:"wanted"` // design factor wanted
	Limit      units.Force `json:"limit"`  // Strength over the design factor wanted
	Pull       units.Force `json:"pull"`
	Factor     float64     `json:"factor"` // design factor reached: Strength over Pull
	Use        float64     `json:"use"`    // Pull over Limit: 1 is just within
}

// Within tells whether the pull is within the limit; just at it counts as within.
func (c RopeCheck) Within() bool { return c.Pull <= c.Limit }

// Margin is what the pull leaves of the limit; negative where it exceeds it.
func (c RopeCheck) Margin() units.Force { return c.Limit - c.Pull }

// Limit is the greatest pull with which the rope keeps a design factor. The factor is
// the caller's: the standard that applies, or the engineer, sets it. At least 8 is
// customary for overhead lines (common practice).
//
// The error joins a *units.FieldError for everything that is wrong, with the fields
// "rope.diameter" and so on, "termination", "bending", "wanted".
func (u RopeUse) Limit(wanted float64) (units.Force, error) {
	var p check.Problems
	c := u.limits(&p, wanted)
	return c.Limit, p.Err()
}

// Check holds a pull, such as the greatest tension of a lift line, against the rope's
// strength and a design factor wanted. A pull of zero is refused: it is one that was
// not given, and reaches any factor. Errors as for Limit, and "pull".
func (u RopeUse) Check(pull units.Force, wanted float64) (RopeCheck, error) {
	var p check.Problems
	check.Positive(&p, "pull", pull, "the greatest pull on the rope")
	c := u.limits(&p, wanted)
	if err := p.Err(); err != nil {
		return RopeCheck{}, err
	}
	c.Pull = pull
	c.Factor, c.Use = units.Ratio(c.Strength, pull), units.Ratio(pull, c.Limit)
	return c, nil
}

// limits fills in what does not depend on the pull, or notes what is wrong.
func (u RopeUse) limits(p *check.Problems, wanted float64) RopeCheck {
	of := ""
	if u.Rope.Name != "" {
		of = strconv.Quote(u.Rope.Name)
	}
	p.Within("rope", of, u.Rope.Validate())
	bounded(p, "termination", u.Termination, 0.01, 1, "the share of strength that the weakest end keeps, from 0.01 to 1 for all of it")
	bounded(p, "bending", u.Bending, 0.01, 1, "the share of strength kept over the smallest sheave, from 0.01 to 1 for all of it")
	bounded(p, "wanted", wanted, 1, 100, "a design factor from 1 to 100")
	if p.Err() != nil {
		return RopeCheck{}
	}
	c := RopeCheck{
		Breaking: u.Rope.Breaking, AtEnd: u.Rope.Breaking.Scale(u.Termination), OverSheave: u.Rope.Breaking.Scale(u.Bending), Wanted: wanted,
	}
	c.Strength = min(c.AtEnd, c.OverSheave)
	c.Limit = c.Strength / units.Force(wanted)
	return c
}
