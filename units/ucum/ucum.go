package ucum

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/units"
)

// Parse reads a decimal number, a space and a code, such as "12.5 [lb_av]". The
// number may have a sign and an exponent of ten. The exact value is rounded once.
//
// The error is a *[units.FieldError] whose kind is one of those of [units.Parse],
// and says which codes are known for Q.
func Parse[Q units.Quantity](text string) (Q, error) {
	trimmed := strings.TrimSpace(text)
	number, code, found := strings.Cut(trimmed, " ")
	symbol := symbolOf(strings.TrimLeft(code, " "))
	switch {
	case !isDecimal(number):
		return 0, refuse[Q](text, units.ErrSyntax)
	case !found:
		return 0, refuse[Q](text, units.ErrNoUnit)
	case symbol == "":
		return 0, refuse[Q](text, units.ErrUnknownUnit)
	}
	q, err := units.Parse[Q](number + " " + symbol)
	var fault *units.ParseError
	if errors.As(err, &fault) {
		return 0, refuse[Q](text, fault.Err)
	}
	return q, err
}

// Format writes q as a number of the unit of the given code, and the code, with the
// fewest digits that [Parse] reads back as the same value, bit for bit.
//
// The error is a *[units.FieldError] of kind [units.ErrUnknownUnit] for a code that
// is not in the table, [units.ErrWrongQuantity] for one of another quantity, or
// [units.ErrNotFinite].
func Format[Q units.Quantity](q Q, code string) (string, error) {
	var room [64]byte
	b, err := Append(room[:0], q, code)
	return string(b), err
}

// Append appends what [Format] writes, and nothing beside an error.
func Append[Q units.Quantity](b []byte, q Q, code string) ([]byte, error) {
	symbol := symbolOf(code)
	if symbol == "" {
		return b, refuse[Q](code, units.ErrUnknownUnit)
	}
	if _, err := units.Unit[Q](symbol); err != nil {
		return b, refuse[Q](code, units.ErrWrongQuantity)
	}
	start := len(b)
	text, err := units.AppendIn(b, q, symbol)
	if err != nil {
		return b, err
	}
	end := start + strings.LastIndexByte(string(text[start:len(text)-len(symbol)]), ' ') + 1
	return append(text[:end], code...), nil
}

// refuse reports a text or a code that cannot be used.
func refuse[Q units.Quantity](text string, kind error) error {
	const most = 60 // bytes: an error never carries a whole file
	if len(text) > most {
		text = strings.ToValidUTF8(text[:most], "") + "…"
	}
	return &units.FieldError{
		Value: strconv.Quote(text),
		Want:  "a decimal number, a space and one of " + strings.Join(slices.Collect(Codes[Q]()), ", "),
		Err:   kind,
	}
}

// isDecimal reports whether s is a decimal number and nothing else. Package units
// reads more, such as fractions, which other programs do not.
func isDecimal(s string) bool {
	s = afterSign(s)
	whole := digits(s)
	rest := s[whole:]
	if strings.HasPrefix(rest, ".") {
		places := digits(rest[1:])
		rest, whole = rest[1+places:], whole+places
	}
	if whole == 0 {
		return false
	}
	if rest == "" {
		return true
	}
	if rest[0] != 'e' && rest[0] != 'E' {
		return false
	}
	exponent := afterSign(rest[1:])
	return exponent != "" && digits(exponent) == len(exponent)
}

// afterSign cuts one sign off the front of s.
func afterSign(s string) string {
	if s != "" && (s[0] == '-' || s[0] == '+') {
		return s[1:]
	}
	return s
}

// digits counts the digits at the front of s.
func digits(s string) int {
	return len(s) - len(strings.TrimLeft(s, "0123456789"))
}
