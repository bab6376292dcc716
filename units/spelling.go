package units

import (
	"strings"
	"unicode"
)

// fold brings the many signs that keyboards, phones and word processors make for
// one thing down to one of them: every space to ' ', every minus and hyphen to
// '-', every foot and inch mark to ' and ". Superscripts stay, for "5² lb" is
// not 52 lb.
func fold(text string) string {
	plain := true
	for i := range len(text) {
		if text[i] >= 0x80 || text[i] < ' ' {
			plain = false
			break
		}
	}
	if plain {
		return strings.TrimSpace(text)
	}
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch r {
		case '\u2212', '\u2010', '\u2011', '\u2013': // minus, hyphens, en dash
			return '-'
		case '\u2032', '\u2019', '\u2018': // prime, single quotation marks
			return '\''
		case '\u2033', '\u201d', '\u201c': // double prime, double quotation marks
			return '"'
		case '\u2044': // fraction slash
			return '/'
		}
		if unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, text))
}

// unitKey brings the spellings of one unit together: superscripts become plain
// digits, "per" a stroke, and a space, full stop, hyphen or star between two
// letters the dot of a product. So "lbs. per ft." is read as "lbs/ft", "lb / yd^2"
// as "lb/yd2", and "N m" as "N·m".
func unitKey(s string) string {
	if plainKey(s) {
		return s
	}
	var b strings.Builder
	var last rune // the last rune written
	joint := false
	for _, r := range s {
		switch r {
		case ' ', '.', '-', '*', '⋅', '·':
			joint = true
			continue
		case '^':
			continue
		case '²':
			r = '2'
		case '³':
			r = '3'
		case '⁴':
			r = '4'
		}
		// A gap beside a stroke means nothing, nor does one within "100 ft".
		if joint && b.Len() > 0 && r != '/' && last != '/' && !(last >= '0' && last <= '9') {
			b.WriteRune('·')
		}
		joint = false
		b.WriteRune(r)
		last = r
	}
	return strings.ReplaceAll(b.String(), "·per·", "/")
}

// plainKey reports whether unitKey has nothing to do: letters, digits, strokes
// and marks.
func plainKey(s string) bool {
	for i := range len(s) {
		switch c := s[i]; {
		case c >= 0x80, c == ' ', c == '.', c == '-', c == '*', c == '^':
			return false
		}
	}
	return true
}

// ambiguous gives the choices for a unit that people write and that has more
// than one meaning; empty for any other.
func ambiguous(key string) string {
	switch key {
	case "Nm":
		return "N·m for newton metres"
	case "kNm":
		return "kN·m for kilonewton metres"
	case "ton", "tons":
		return "short ton for 2000 lb, t for 1000 kg, or 2240 lb for a long one"
	case "cwt":
		return "100 lb for a short one, 112 lb for a long one"
	case "#", "#s":
		return "lb for a mass, lbf for a force"
	case "lb·ft", "ft·lb", "lbs·ft", "ft·lbs", "lb·in", "in·lb", "in·lbs":
		return "lbf·ft or lbf·in for a moment, lb/ft for a mass per length"
	}
	return ""
}
