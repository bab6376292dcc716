package units

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// fold brings the many signs that keyboards, phones and word processors make for
// one thing down to one of them, and takes the space from both ends.
func fold(text string) string {
	if !odd(text) {
		return strings.TrimSpace(text)
	}
	return strings.TrimSpace(string(appendFolded(nil, text)))
}

// odd reports whether appendFolded may have something to do.
func odd(text string) bool {
	for i := range len(text) {
		if text[i] >= 0x80 || text[i] < ' ' {
			return true
		}
	}
	return false
}

// appendFolded appends text with every space as ' ', every minus and hyphen as
// '-', every foot and inch mark as ' and ", and every fraction in one character
// as digits. Superscripts stay, for "5² lb" is not 52 lb.
func appendFolded(b []byte, text string) []byte {
	last := ' ' // the last character read
	for _, r := range text {
		switch r {
		case '\u2212', '\u2010', '\u2011', '\u2013': // minus, hyphens, en dash
			r = '-'
		case '\u2032', '\u2019', '\u2018': // prime, single quotation marks
			r = '\''
		case '\u2033', '\u201d', '\u201c': // double prime, double quotation marks
			r = '"'
		case '\u2044': // fraction slash
			r = '/'
		default:
			if unicode.IsSpace(r) {
				r = ' '
			}
		}
		// 6½ is 6 1/2, not 61/2; and ½2 is two numbers, not 1/22.
		fraction, before := vulgar(r), vulgar(last)
		if fraction != "" && (before != "" || '0' <= last && last <= '9') || before != "" && '0' <= r && r <= '9' {
			b = append(b, ' ')
		}
		if fraction != "" {
			b = append(b, fraction...)
		} else {
			b = utf8.AppendRune(b, r)
		}
		last = r
	}
	return b
}

// vulgar gives the digits of a fraction that is one character; empty for any other.
func vulgar(r rune) string {
	switch r {
	case '½':
		return "1/2"
	case '⅓':
		return "1/3"
	case '⅔':
		return "2/3"
	case '¼':
		return "1/4"
	case '¾':
		return "3/4"
	case '⅛':
		return "1/8"
	case '⅜':
		return "3/8"
	case '⅝':
		return "5/8"
	case '⅞':
		return "7/8"
	}
	return ""
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// unitKey brings the spellings of one unit together: superscripts become plain
// digits, "per" a stroke, and a space, full stop, hyphen or star between two
// letters the dot of a product. So "lbs. per ft." is read as "lbs/ft", "lb / yd^2"
// as "lb/yd2", and "N m" as "N·m".
func unitKey(s string) string {
	if plainKey(s) {
		return s
	}
	return string(appendUnitKey(nil, s))
}

// appendUnitKey appends what unitKey gives.
func appendUnitKey(b []byte, s string) []byte {
	begin := len(b)
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
		if joint && len(b) > begin && r != '/' && last != '/' && !(last >= '0' && last <= '9') {
			b = append(b, "·"...)
		}
		joint = false
		b = utf8.AppendRune(b, r)
		last = r
	}
	const per = "·per·"
	for i := begin; i+len(per) <= len(b); i++ {
		if string(b[i:i+len(per)]) == per {
			b[i] = '/'
			b = append(b[:i+1], b[i+len(per):]...)
		}
	}
	return b
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
