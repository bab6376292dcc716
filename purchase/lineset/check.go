package lineset

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"example.com/steelyard/units"
)

// Verdict is the outcome of a check. It speaks of the limit that was given and
// of nothing else.
type Verdict uint8

// The verdicts.
const (
	NoLimit Verdict = iota // no limit was given, so nothing was checked
	Within                 // the demand is at most the limit
	Exceeds                // the demand is more than the limit
)

// String says the verdict as it is printed.
func (v Verdict) String() string {
	switch v {
	case Within:
		return "within the limit given"
	case Exceeds:
		return "exceeds"
	}
	return "no limit given"
}

// MarshalText writes the verdict as it is printed.
func (v Verdict) MarshalText() ([]byte, error) { return []byte(v.String()), nil }

// UnmarshalText reads what MarshalText wrote. Where it fails, with a *units.FieldError, the verdict is left as it was.
func (v *Verdict) UnmarshalText(text []byte) error {
	for _, verdict := range [...]Verdict{NoLimit, Within, Exceeds} {
		if verdict.String() == string(text) {
			*v = verdict
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: `"no limit given", "within the limit given" or "exceeds"`, Err: units.ErrUnknown}
}

// Check compares a demand with a limit. Limits are inclusive: a demand equal to
// the limit is within it.
type Check struct {
	Name    string       `json:"name"`            // what is checked: "stack height"
	Where   string       `json:"where,omitempty"` // which line, block or side governs
	Trim    units.Length `json:"trim,omitzero"`   // the trim at which it is worst; zero where trim does not matter
	Demand  units.Value  `json:"demand"`
	Limit   units.Value  `json:"limit"`
	Margin  units.Value  `json:"margin"` // limit less demand; negative: over
	Ratio   float64      `json:"ratio"`  // demand over limit; 0 where no limit was given, or the limit is nothing
	Verdict Verdict      `json:"verdict"`
	Basis   string       `json:"basis"` // where the limit comes from
}

// UnmarshalJSON reads a check as it was stored. The dimension of its demand is told by its unit.
func (c *Check) UnmarshalJSON(text []byte) error {
	type plain Check // without this method, so that the decoder looks at the fields
	var p struct {
		*plain
		Demand stored `json:"demand"`
		Limit  stored `json:"limit"`
		Margin stored `json:"margin"`
	}
	var out Check
	p.plain = (*plain)(&out)
	if err := json.Unmarshal(text, &p); err != nil {
		return err
	}
	out.Demand, out.Limit, out.Margin = p.Demand.Value, p.Limit.Value, p.Margin.Value
	*c = out
	return nil
}

// stored is a quantity of any of the dimensions that are checked.
type stored struct{ units.Value }

// UnmarshalText reads the quantity by its unit.
func (s *stored) UnmarshalText(text []byte) error {
	for _, parse := range [...]func(string) (units.Value, error){
		parsed[units.Force], parsed[units.Length], parsed[units.Mass], parsed[units.Stress], parsed[units.Moment],
	} {
		if v, err := parse(string(text)); err == nil {
			s.Value = v
			return nil
		}
	}
	return &units.FieldError{Value: strconv.Quote(string(text)), Want: "a force, a length, a mass, a stress or a moment with its unit", Err: units.ErrUnknown}
}

func parsed[Q interface {
	units.Quantity
	units.Value
}](text string) (units.Value, error) {
	q, err := units.Parse[Q](text)
	return q, err
}

// String says the check in one line, in metric units; format the fields for any
// other reader.
func (c Check) String() string {
	m := units.Metric
	s := c.Name + ": " + m.Format(c.Demand)
	if c.Verdict != NoLimit {
		s += fmt.Sprintf(" of %s, ratio %.2f", m.Format(c.Limit), c.Ratio)
	}
	s += ", " + c.Verdict.String()
	if c.Where != "" {
		s += ", " + c.Where
	}
	if c.Trim != 0 {
		s += " at trim " + m.Format(c.Trim)
	}
	if c.Basis != "" {
		s += " (" + c.Basis + ")"
	}
	return s
}

// compare makes the check of one demand. A limit with no basis was not given.
func compare[Q units.Quantity](name, where string, demand, most Q, basis string) Check {
	c := Check{Name: name, Where: where, Demand: demand, Limit: most, Margin: most - demand, Basis: basis}
	if basis == "" {
		return c
	}
	c.Verdict = Within
	if passes(demand, most) {
		c.Verdict = Exceeds
	}
	if most > 0 {
		c.Ratio = min(units.Ratio(demand, most), math.MaxFloat64)
	}
	return c
}

// passes tells whether a demand is more than a limit.
func passes[Q units.Quantity](demand, most Q) bool { return demand > most+Q(rounding*units.Abs(most)) }

// rounding is how far, as a part of the limit, two sums of the same decimals may
// lie apart in float64. It is not a tolerance on what is carried: without it a
// travel of 24 ft wanted out of 24 ft could be printed as exceeding by nothing.
const rounding = 1e-12 // untyped: a plain ratio
