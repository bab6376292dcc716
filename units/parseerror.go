package units

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The kinds of fault that a text can have, for use with errors.Is on the error
// of [Parse]. A number that is not finite gives [ErrNotFinite], one that a
// float64 cannot hold [ErrOutOfRange].
var (
	ErrSyntax        = errors.New("cannot be read")
	ErrNoUnit        = errors.New("has no unit")
	ErrUnknownUnit   = errors.New("has an unknown unit")
	ErrAmbiguousUnit = errors.New("has an ambiguous unit")
	ErrWrongQuantity = errors.New("is another quantity")
)

// ParseError reports a text that is not the quantity it should be. Text and Rest
// are cut where they are long, so that an error never carries a whole file.
type ParseError struct {
	Text     string // the text that was read
	Quantity string // what was wanted: "mass", "force per length"
	Reason   string // what is wrong with the text, to be read after it
	Rest     string // the end of the text, from where it could not be read
	Err      error  // the kind of fault
}

// Error says it in one line: the text, the fault, and what was wanted.
func (e *ParseError) Error() string {
	want := e.Quantity
	for _, d := range dimensions {
		if d.name == e.Quantity {
			want = d.want
		}
	}
	return quote(e.Text) + " " + e.Reason + "; want " + want
}

// Unwrap gives the kind of fault.
func (e *ParseError) Unwrap() error { return e.Err }

// maxQuoted is how many bytes of a text an error repeats.
const maxQuoted = 60

// clip cuts a long text between two runes and marks the cut.
func clip(s string) string {
	if len(s) <= maxQuoted {
		return s
	}
	n := maxQuoted
	for n > maxQuoted-utf8.UTFMax && !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:n] + "…"
}

// quote puts a text in quotes, plainly where it holds inch marks.
func quote(s string) string {
	s = clip(s)
	if strings.Contains(s, `"`) && strconv.CanBackquote(s) {
		return "`" + s + "`"
	}
	return strconv.Quote(s)
}
