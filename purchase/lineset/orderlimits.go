package lineset

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/units"
)

// OrderLimits are what the states of an order are held against, all inclusive. Here a limit of 0 with a basis is a
// limit: nothing at all. A limit without a basis was not given.
type OrderLimits struct {
	ArborHeavy  ForceLimit `json:"arbor_heavy,omitzero"`  // referred to the batten, at every trim
	BattenHeavy ForceLimit `json:"batten_heavy,omitzero"` // the same; at the lowest trim too unless it rests on the stop

	// RestsOnStop says that at the lowest trim that the set reaches, with the arbor against its upper stop, a
	// batten-heavy set is held by the stop and not limited. At the other stop nothing is taken to be held.
	RestsOnStop bool `json:"rests_on_stop,omitempty"`

	HeldLine ForceLimit `json:"held_line,omitzero"` // force in a line that is set: at the arbor the ratio times that at the batten
}

// UnmarshalJSON decodes limits as House.UnmarshalJSON decodes a house: a limit that is misspelt is not lost.
func (l *OrderLimits) UnmarshalJSON(text []byte) error {
	type plain OrderLimits // without this method, so that the decoder looks at the fields
	var p plain
	if err := strictjson.Decode(text, &p); err != nil {
		return err
	}
	*l = OrderLimits(p)
	return nil
}

// validate reports what is wrong with the limits.
func (l OrderLimits) validate() error {
	var p check.Problems
	for _, one := range [...]struct {
		field string
		limit ForceLimit
	}{{"arbor_heavy", l.ArborHeavy}, {"batten_heavy", l.BattenHeavy}, {"held_line", l.HeldLine}} {
		if check.NotNegative(&p, one.field+".max", one.limit.Max) && one.limit.Max > 0 && one.limit.Basis == "" {
			p.Add(one.field+".basis", "", `where the limit comes from, such as a house rule or "common practice"`, units.ErrMissing)
		}
	}
	return p.Err()
}

// given tells whether there is a limit.
func (l ForceLimit) given() bool { return l.Basis != "" }

// heavy is the limit that holds for a batten-heavy set.
func (l OrderLimits) heavy(onStop bool) ForceLimit {
	if onStop && l.RestsOnStop {
		return ForceLimit{}
	}
	return l.BattenHeavy
}

// allow tells whether an imbalance is within the limits.
func (l OrderLimits) allow(i units.Force, onStop bool) bool {
	lim, demand := l.ArborHeavy, -i
	if i > 0 {
		lim, demand = l.heavy(onStop), i
	}
	return !lim.given() || !passes(demand, lim.Max)
}

// onStop is the basis of a check of what rests on the stop.
const onStop = "rests on the stop, as said"

// check holds one imbalance against its limit.
func (l OrderLimits) check(i units.Force, h Hazard, onStopNow bool) Check {
	if i < 0 {
		return compare("arbor-heavy", h.String(), -i, l.ArborHeavy.Max, l.ArborHeavy.Basis)
	}
	lim := l.heavy(onStopNow)
	c := compare("batten-heavy", h.String(), i, lim.Max, lim.Basis)
	if onStopNow && l.RestsOnStop {
		c.Basis = onStop
	}
	return c
}
