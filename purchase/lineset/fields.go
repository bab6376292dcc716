package lineset

import (
	"errors"
	"strings"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// layoutFields are the names that the fields of a purchase.Layout have in a
// Rigging. The blocks of all lift lines are at one height here, and apart as the
// batten's lines are.
var layoutFields = map[string]string{
	"kind": "purchase", "head_block": "head_block", "dead_end": "dead_ends", "rail": "rail", "idler": "idler.height",
	"arbor_length": "arbor.length", "lift_line_mass": "lift_line", "hand_line_mass": "hand_line",
	"drag": "drag", "trim": "made_off", "arbor_top": "run.upper_stop",
}

// rename gives the faults of the rigging's layout under the names that the reader
// wrote: each once, and none of a field that known has a fault of already.
func (r Rigging) rename(layout, known error) error {
	seen := map[string]bool{}
	for _, e := range flatten(known) {
		if fe := (*units.FieldError)(nil); errors.As(e, &fe) {
			seen[fe.Field] = true
		}
	}
	var p check.Problems
	for _, e := range flatten(layout) {
		var fe *units.FieldError
		if !errors.As(e, &fe) {
			p.Within("", "", e)
			continue
		}
		c := *fe
		switch {
		case layoutFields[c.Field] != "":
			c.Field = layoutFields[c.Field]
		case c.Field == "loft":
			c.Field = "batten.lines"
		case strings.HasPrefix(c.Field, "loft") && strings.HasSuffix(c.Field, ".height"):
			c.Field = "loft_blocks"
		case strings.HasPrefix(c.Field, "loft["):
			c.Field, c.Want = "offset", "so much that every line's loft block is clear of the arbor, and no more than a stage is wide"
		}
		if c.Field == "offset" && c.Value != "" {
			c.Value = check.Show(r.Offset)
		}
		if !seen[c.Field] {
			seen[c.Field] = true
			p.Within("", "", &c)
		}
	}
	return p.Err()
}

// flatten takes joined errors apart.
func flatten(err error) []error {
	if err == nil {
		return nil
	}
	many, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return []error{err}
	}
	var out []error
	for _, e := range many.Unwrap() {
		out = append(out, flatten(e)...)
	}
	return out
}
