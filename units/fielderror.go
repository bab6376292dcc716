package units

import (
	"errors"
	"fmt"
	"strings"
)

// The kinds of thing that can be wrong with a value, for use with errors.Is.
// Those of a text that cannot be read stand with [ParseError].
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
	Field string // path from the value that was checked, as in its JSON: "batten.lines[2].at"; empty for that value itself
	Of    string // the named thing that the field belongs to, where it has a name: `set "Second electric"`
	Value string // the value as a reader would write it; empty where none was given
	Want  string // what would be right
	Err   error  // the kind of fault: one of the errors above, or a *ParseError
}

// Error says it in one line: field, owner, value, fault, remedy. A *[ParseError]
// already tells the last three.
func (e *FieldError) Error() string {
	s := e.Field
	switch {
	case s == "":
		s = e.Of
	case e.Of != "":
		s += " (" + e.Of + ")"
	}
	if s != "" {
		s += ": "
	}
	var text *ParseError
	if errors.As(e.Err, &text) {
		return s + e.Err.Error()
	}
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

// At puts the path of an outer field, and the name of the thing it belongs
// to, in front of every FieldError in err, which may be one or many joined, in
// joins of joins too. Any other error becomes the fault of a FieldError at the
// outer field. The result holds copies, joined flat and in order: err itself is
// left as it was. A nil err stays nil.
func At(field, of string, err error) error {
	faults := split(nil, err)
	for i, fault := range faults {
		faults[i] = at(field, of, fault)
	}
	if len(faults) == 1 {
		return faults[0]
	}
	return errors.Join(faults...)
}

// at does the work of At on one error that is not a join.
func at(field, of string, err error) *FieldError {
	outer := FieldError{Err: err}
	if inner, ok := err.(*FieldError); ok {
		outer = *inner
	}
	switch {
	case outer.Field == "":
		outer.Field = field
	case field != "" && outer.Field[0] == '[':
		outer.Field = field + outer.Field
	case field != "":
		outer.Field = field + "." + outer.Field
	}
	switch {
	case outer.Of == "":
		outer.Of = of
	case of != "":
		outer.Of += " of " + of
	}
	return &outer
}

// split appends the errors that err joins, down to those that join none. An
// error that wraps several and has words of its own is not opened, so that the
// words are kept.
func split(list []error, err error) []error {
	if err == nil {
		return list
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok && len(many.Unwrap()) > 0 {
		parts := many.Unwrap()
		texts := make([]string, len(parts))
		for i, part := range parts {
			texts[i] = fmt.Sprint(part)
		}
		if strings.Join(texts, "\n") == err.Error() {
			for _, part := range parts {
				list = split(list, part)
			}
			return list
		}
	}
	return append(list, err)
}
