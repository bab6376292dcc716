package units

import (
	"errors"
	"fmt"
)

// The kinds of thing that can be wrong with a value, for use with errors.Is.
var (
	ErrMissing    = errors.New("is missing")
	ErrNotFinite  = errors.New("is not a finite number")
	ErrNegative   = errors.New("is negative")
	ErrOutOfRange = errors.New("is out of range")
	ErrDuplicate  = errors.New("stands twice")
	ErrUnknown    = errors.New("is not known")
	ErrWrongType  = errors.New("is of the wrong type")
)

// FieldError reports one value that cannot be used: where it stands, what it
// is, what is wrong with it, and what would be right. Validation reports all of
// them together with errors.Join; errors.As finds the first.
type FieldError struct {
	Field string // path from the value that was checked, as in its JSON: "batten.lines[2].at"
	Of    string // the named thing that the field belongs to, where it has a name: `set "Second electric"`
	Value string // the value as a reader would write it; empty where none was given
	Want  string // what would be right
	Err   error  // the kind of fault: one of the errors above, or a *ParseError
}

// Error says it in one line: field, owner, value, fault, remedy.
func (e *FieldError) Error() string {
	s := e.Field
	if e.Of != "" {
		s += " (" + e.Of + ")"
	}
	s += ": "
	if e.Value != "" {
		s += e.Value + " "
	}
	s += fmt.Sprint(e.Err)
	if e.Want != "" {
		s += "; want " + e.Want
	}
	return s
}

// Unwrap gives the kind of fault.
func (e *FieldError) Unwrap() error { return e.Err }

// Within puts the path of an outer field, and the name of the thing it belongs
// to, in front of every FieldError in err, which may be one error or many
// joined. The result holds copies: err itself is left as it was. A nil err stays nil.
func Within(field, of string, err error) error {
	if err == nil {
		return nil
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		var out []error
		for _, e := range many.Unwrap() {
			out = append(out, Within(field, of, e))
		}
		return errors.Join(out...)
	}
	var fe *FieldError
	if !errors.As(err, &fe) {
		return fmt.Errorf("%s: %w", field, err)
	}
	c := *fe
	switch {
	case c.Field == "":
		c.Field = field
	case field != "" && c.Field[0] != '[':
		c.Field = field + "." + c.Field
	case field != "":
		c.Field = field + c.Field
	}
	if c.Of == "" {
		c.Of = of
	} else if of != "" {
		c.Of = c.Of + " of " + of
	}
	return &c
}
