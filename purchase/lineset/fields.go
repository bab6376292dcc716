package lineset

import (
	"errors"
	"strconv"
	"strings"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// layoutFields are the names that the fields of a purchase.Layout have in a
// Rigging. The loft blocks are apart as the batten's lines are.
var layoutFields = map[string]string{
	"kind": "purchase", "hand": "hand_purchase", "head_block": "head_block", "dead_end": "dead_ends", "rail": "rail", "idler": "idler.height",
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
		default:
			r.renameLoft(&c)
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

// renameLoft does it for the faults of one loft block and the mule blocks beyond it. Mule blocks have the same names here.
func (r Rigging) renameLoft(fault *units.FieldError) {
	number, rest, _ := strings.Cut(strings.TrimPrefix(fault.Field, "loft["), "]")
	line, err := strconv.Atoi(number)
	switch {
	case err != nil || strings.HasPrefix(rest, ".mules"):
	case rest == ".height":
		fault.Field = r.loftField(line)
	case rest == "" && len(r.loft(line).Mules) > 0:
		// The line runs straight past its loft block: it is the mule block beyond it that is out of place.
		fault.Field += ".mules[0]"
	default:
		fault.Field, fault.Want = "offset", "so much that every line's loft block is clear of the arbor, and no more than a stage is wide"
	}
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
