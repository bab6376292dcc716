package purchase

import (
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// Tackle is a rope rove through blocks to lift a load, such as a block and fall for
// an arbor that must be held: how many parts carry, and how many sheaves the rope
// turns back over. The zero value is refused.
type Tackle struct {
	Parts   int `json:"parts"`   // parts of rope at the moving block: the load over the pull, without drag
	Sheaves int `json:"sheaves"` // in both blocks and beyond them; one less than the parts at least
}

// TenPerCentRule is what the rule of thumb adds for each sheave, for
// [Tackle.PullByRule].
//
// Source: US Navy Steelworker, vol. 2, "Allowance for friction"; US Army
// TB 9-2350-292-10 has the method with a percentage of one's own.
const TenPerCentRule = 0.10

// Pull is what the lead line must be pulled with to hoist a load, each sheave taken
// as half a turn with the same drag: each part pulls K times as hard as the one before it, on
// the dead end's side. With N parts and as many sheaves that is load·K^N(K−1)/(K^N−1), and each
// further sheave multiplies it by K.
//
// The errors are *units.FieldError, joined, with the fields "parts", "sheaves", "load",
// "drag".
//
// Source: Wire Rope Users Manual, 4th ed., p. 88.
func (t Tackle) Pull(load units.Force, drag Drag) (units.Force, error) {
	var p check.Problems
	t.faults(&p, load)
	drag.fault(&p, "drag")
	if err := p.Err(); err != nil {
		return 0, err
	}
	k := rope.DragRatioTurning(float64(drag), (units.Turn / 2).In(units.Radian))
	return load.Scale(rope.LeadLine(k, t.Parts, t.Sheaves)), nil
}

// PullByRule is the same by the rule of thumb: each sheave adds a share of the whole
// load, commonly [TenPerCentRule], and the parts divide it: load·(1 + share·sheaves)/parts.
//
// It is another model than that of Pull, not an approximation to it. The rule charges every
// sheave with the load as if all of it hung there, and sheaves do not multiply; Pull
// charges each with the tension that is in the rope at that sheave. With four parts
// and four sheaves ten per cent gives 0.350 of the load, and plain bearings (K = 1.09)
// give 0.309. With as many sheaves as parts ten per cent always asks for more pull than
// plain bearings do; with a row of lead sheaves beyond them it soon asks for less. Pulls
// observed on fibre rope with one to six parts (Workshop Receipts, 5th series) lie up
// to 7 per cent above the rule.
//
// The errors are *units.FieldError, joined, with the fields "parts", "sheaves", "load",
// "share"; a share is from 0 to 1.
func (t Tackle) PullByRule(load units.Force, share float64) (units.Force, error) {
	var p check.Problems
	t.faults(&p, load)
	bounded(&p, "share", share, 0, 1, "what each sheave adds as a share of the load, from 0 to 1, such as 0.1")
	if err := p.Err(); err != nil {
		return 0, err
	}
	return load.Scale((1 + float64(share*float64(t.Sheaves))) / float64(t.Parts)), nil
}

func (t Tackle) faults(p *check.Problems, load units.Force) {
	check.NotNegative(p, "load", load)
	switch {
	case t.Parts == 0:
		p.Add("parts", "", "the number of parts of rope at the moving block", units.ErrMissing)
	case t.Parts < 0 || t.Parts > maxStops:
		p.Add("parts", strconv.Itoa(t.Parts), "from 1 to "+strconv.Itoa(maxStops), units.ErrOutOfRange)
	}
	if least := max(0, min(t.Parts, maxStops)-1); t.Sheaves < least || t.Sheaves > maxStops {
		p.Add("sheaves", strconv.Itoa(t.Sheaves),
			"from "+strconv.Itoa(least)+", one less than the parts, to "+strconv.Itoa(maxStops), units.ErrOutOfRange)
	}
}
