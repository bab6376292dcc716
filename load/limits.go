package load

import (
	"slices"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Limits are what the caller lets the lines and the pipe carry. A limit of zero is not given, and
// nothing exceeds it. A [Line] may have a limit of its own, which then stands in place of this one. Where they come from is the caller's to know: the maker's figure for
// the rope and its terminations over a design factor, the allowable stress of the pipe.
type Limits struct {
	Line   units.Force  `json:"line,omitzero"`   // tension of any lift line
	Stress units.Stress `json:"stress,omitzero"` // bending stress in the pipe
}

// limitFaults reports what is wrong with limits for this batten.
func (r *Rigged) limitFaults(l Limits) error {
	var p check.Problems
	check.NotNegative(&p, "line", l.Line)
	check.NotNegative(&p, "stress", l.Stress)
	if l == (Limits{}) && !slices.ContainsFunc(r.lines, func(l made) bool { return l.limit > 0 }) {
		p.Add("", "", "a limit for the lines, the pipe, or both", units.ErrMissing)
	}
	return p.Err()
}

// limit is what line i is let carry; 0 where no limit is given.
func (r *Rigged) limit(i int, l Limits) units.Force {
	if own := r.lines[i].limit; own > 0 {
		return own
	}
	return l.Line
}

// Use is how far limits are used: demand over limit, 0 where no limit is given. With 1 a demand is
// just within its limit.
type Use struct {
	Line  float64 `json:"line"`  // the greatest tension over its limit
	Worst int     `json:"worst"` // the place in Lines of the line that has it; −1 where no line has a limit
	Pipe  float64 `json:"pipe"`  // the bending stress over its limit
}

// Use holds the share against limits. It does not look whether they make sense: one that is zero or less is none.
func (s Share) Use(l Limits) Use {
	u := Use{Worst: -1}
	for i, line := range s.Lines {
		limit := l.Line
		if line.Limit > 0 {
			limit = line.Limit
		}
		if limit > 0 {
			if used := units.Ratio(line.Tension, limit); u.Worst < 0 || used > u.Line*(1+1e-12) {
				u.Line, u.Worst = used, i
			}
		}
	}
	if l.Stress > 0 {
		u.Pipe = units.Ratio(s.Stress, l.Stress)
	}
	return u
}
