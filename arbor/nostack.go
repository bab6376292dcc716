package arbor

import "fmt"

// NoStackError reports that no whole pieces keep to the side that is allowed:
// never batten-heavy, but what there is, what fits and what may be held is
// lighter than wanted; or never arbor-heavy, but even the empty arbor is too
// heavy. EitherSide always has a stack, except where Refill is to keep pipe weight that
// is more than the arbor takes.
type NoStackError struct {
	Wanted Wanted
	Side   Side
	Pipe   bool // already the pipe weight alone has no stack
	Proven bool // there is none; false where the search was cut short before it found one
}

// Error says what was asked for in vain.
func (e *NoStackError) Error() string {
	what, mass := "pipe and show weight", e.Wanted.Pipe+e.Wanted.Show
	if e.Pipe {
		what, mass = "pipe weight", e.Wanted.Pipe
	}
	fault := "no stack of whole pieces fits"
	if !e.Proven {
		fault = "no stack of whole pieces was found"
	}
	return fmt.Sprintf("%s: %s of %v, %v", fault, what, mass, e.Side)
}
