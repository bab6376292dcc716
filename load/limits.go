package load

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Limits are what the caller lets the lines and the pipe carry. A limit of zero is not given, and
// nothing exceeds it. Where they come from is the caller's to know: the maker's figure for
// the rope and its terminations over a design factor, the allowable stress of the pipe.
type Limits struct {
	Line   units.Force  `json:"line,omitzero"`   // tension of any lift line
	Stress units.Stress `json:"stress,omitzero"` // bending stress in the pipe
}

func (l Limits) faults() error {
	var p check.Problems
	check.NotNegative(&p, "line", l.Line)
	check.NotNegative(&p, "stress", l.Stress)
	if l == (Limits{}) {
		p.Add("", "", "a limit for the lines, the pipe, or both", units.ErrMissing)
	}
	return p.Err()
}

// Use is how far limits are used: demand over limit, 0 where no limit is given. With 1 a demand is
// just within its limit.
type Use struct {
	Line  float64 `json:"line"`  // the greatest tension over its limit
	Worst int     `json:"worst"` // the place in Lines of the line that has it; see [Share.Worst]
	Pipe  float64 `json:"pipe"`  // the bending stress over its limit
}

// Use holds the share against limits.
func (s Share) Use(l Limits) Use {
	worst, line := s.Worst()
	u := Use{Worst: worst}
	if l.Line > 0 {
		u.Line = units.Ratio(line.Tension, l.Line)
	}
	if l.Stress > 0 {
		u.Pipe = units.Ratio(s.Stress, l.Stress)
	}
	return u
}

// most is the greater of the two.
func (u Use) most() float64 { return max(u.Line, u.Pipe) }
