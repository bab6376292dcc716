package units

import (
	"fmt"
	"strconv"
	"unicode/utf8"
)

// format writes q under a verb of fmt. Width counts the unit too, so that columns
// keep their edges. A precision never cuts the text short, as it does that of a
// string: under %v, %s and %q it is the number of digits, as under %g. There the
// sign of %+v is only for the structs around q, as it is with plain floats.
func format[Q Quantity](state fmt.State, verb rune, q Q) {
	precision, precise := state.Precision()
	var room [64]byte
	b := room[:0]
	switch verb {
	case 'v', 's', 'q':
		switch {
		case verb == 'v' && state.Flag('#'):
			b = fmt.Appendf(b, "%T(%v)", q, float64(q))
		case precise:
			b = appendNumber(b, state, 'g', precision, precise, q)
		default:
			b = appendSI(b, q)
		}
		switch {
		case verb == 'q' && state.Flag('+'):
			b = strconv.AppendQuoteToASCII(nil, string(b))
		case verb == 'q':
			b = strconv.AppendQuote(nil, string(b))
		}
	case 'e', 'E', 'f', 'F', 'g', 'G', 'b', 'x', 'X':
		b = appendNumber(b, state, verb, precision, precise, q)
	default:
		b = fmt.Appendf(b, "%%!%c(%T=%s)", verb, q, appendSI(nil, q))
	}
	pad(state, b)
}

// appendNumber appends q as a number of its SI unit, and the unit.
func appendNumber[Q Quantity](b []byte, state fmt.State, verb rune, precision int, precise bool, q Q) []byte {
	symbol := q.dimension().si()
	directive := []byte{'%'}
	for _, flag := range "+ #0" {
		if state.Flag(int(flag)) {
			directive = append(directive, byte(flag))
		}
	}
	// Only zeros go between the sign and the number; other padding goes around
	// number and unit together.
	if width, ok := state.Width(); ok && state.Flag('0') && !state.Flag('-') {
		if width -= 1 + utf8.RuneCountInString(symbol); width > 0 {
			directive = strconv.AppendInt(directive, int64(width), 10)
		}
	}
	if precise {
		directive = strconv.AppendInt(append(directive, '.'), int64(precision), 10)
	}
	b = fmt.Appendf(b, string(append(directive, string(verb)...)), float64(q))
	return append(append(b, ' '), symbol...)
}

// pad writes text with the spaces that the width asks for.
func pad(state fmt.State, text []byte) {
	width, _ := state.Width()
	spaces := max(width-utf8.RuneCount(text), 0)
	if state.Flag('-') {
		state.Write(text)
	}
	for range spaces {
		state.Write([]byte{' '})
	}
	if !state.Flag('-') {
		state.Write(text)
	}
}
