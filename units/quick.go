package units

import (
	"math/bits"
	"strings"
)

// quick reads the texts that people write and programs print, in one pass and
// without allocation. It takes no decisions: what it does not fully understand,
// right or wrong, it leaves to parse, which reads everything and says what is
// wrong. What it does read it reads as parse does, to the bit.
func quick(s string, d *dimension) (float64, bool) {
	if len(s) > maxText {
		return 0, false
	}
	i, negative := 0, false
	if s != "" && (s[0] == '-' || s[0] == '+') {
		i, negative = 1, s[0] == '-'
	}
	n, i, ok := quickNumber(s, i)
	if !ok {
		return 0, false
	}
	i = spacesAt(s, i)
	if i == len(s) || s[i] < '0' && strings.IndexByte(".,/+-", s[i]) >= 0 {
		return 0, false
	}
	rest := s[i:]
	var f float64
	if at := inchesAt(rest); at != 0 && d == &lengthDimension {
		f, ok = quickFeetInches(&n, rest[at:])
	} else if u := d.quickUnit(rest); u != nil {
		f, ok = u.toSI(n.m, n.per, n.tens)
	} else {
		return 0, false
	}
	if negative {
		f = -f
	}
	return f, ok
}

// quickUnit finds a unit by any spelling, as it stands or in the form of unitKey.
func (d *dimension) quickUnit(s string) *unit {
	if u := d.spelled(s); u != nil {
		return u
	}
	if plainKey(s) {
		return nil
	}
	var room [longestUnit]byte
	return d.spelled(string(appendUnitKey(room[:0], s)))
}

// word is a number in machine words: m/per × 10^tens.
type word struct {
	m, per uint64
	tens   int
	whole  bool // written without decimals, exponent or fraction
}

// quickNumber reads the number that starts at s[i], and gives the place behind it.
func quickNumber(s string, i int) (n word, next int, ok bool) {
	start := i
	for i < len(s) && s[i]-'0' <= 9 {
		n.m = n.m*10 + uint64(s[i]-'0')
		i++
	}
	digits := i - start
	n.per, n.whole = 1, true
	if i < len(s) && s[i] == '.' {
		i++
		point := i
		for i < len(s) && s[i]-'0' <= 9 {
			n.m = n.m*10 + uint64(s[i]-'0')
			i++
		}
		n.tens = point - i
		n.whole = n.tens == 0
		digits += i - point
	} else if digits != 0 && i < len(s) && (s[i] == ' ' || s[i] == '-' || s[i] == '/') {
		if next, ok := n.addFraction(s, i, digits); next != i {
			return n, next, ok
		}
	}
	// A word holds any 19 digits. Zeros in front take no room.
	if digits == 0 || digits > 19 && digits-zerosAt(s, start) > 19 {
		return n, 0, false
	}
	if i < len(s) && s[i]|0x20 == 'e' {
		return n.addExponent(s, i)
	}
	return n, i, true
}

// maxPart is how many digits there may be in each part of a number with a
// fraction, so that whole × under + over fits in a word.
const maxPart = 9

// addFraction reads on behind whole digits, as number.readFraction does: "/2" makes
// them a numerator, and " 1/2" or "-1/2" adds a fraction. Where none stands, next
// is i.
func (n *word) addFraction(s string, i, digits int) (next int, ok bool) {
	whole, over, stroke := uint64(0), n.m, i
	if s[i] != '/' {
		start := i + 1
		if s[i] == ' ' {
			start = spacesAt(s, i)
		}
		whole = n.m
		if over, stroke = wordAt(s, start); stroke == start {
			return i, true
		}
		digits = max(digits, stroke-start)
	}
	if stroke == len(s) || s[stroke] != '/' {
		return i, true
	}
	under, next := wordAt(s, stroke+1)
	n.m, n.per, n.whole = whole*under+over, under, false
	return next, under != 0 && max(digits, next-stroke-1) <= maxPart
}

// addExponent reads on behind the digits where an e and a whole number of one or
// two digits follow.
func (n word) addExponent(s string, i int) (_ word, next int, ok bool) {
	start := i + 1
	if start < len(s) && (s[start] == '-' || s[start] == '+') {
		start++
	}
	exponent, next := wordAt(s, start)
	if next == start {
		return n, i, true
	}
	if s[start-1] == '-' {
		n.tens -= int(exponent)
	} else {
		n.tens += int(exponent)
	}
	n.whole = n.whole && exponent == 0
	return n, next, next-start <= 2
}

// quickFeetInches gives the length of whole feet and the inches in s.
func quickFeetInches(feet *word, s string) (float64, bool) {
	n, i, ok := quickNumber(s, 0)
	if !ok || !feet.whole || n.tens > 0 || n.tens < -maxPart {
		return 0, false
	}
	i = spacesAt(s, i)
	if i == len(s) {
		return 0, false
	}
	inch := lengthDimension.unit("in")
	if s[i:] != `"` && lengthDimension.quickUnit(s[i:]) != inch {
		return 0, false
	}
	// 12·feet + m/(per·10^-tens), on one stroke. An inch part under 12 leaves no
	// room for an overflow but in the product with feet.
	foot := 12 * n.per * tensUpTo19[-n.tens]
	if n.m >= foot {
		return 0, false
	}
	over, m := bits.Mul64(feet.m, foot)
	m, carry := bits.Add64(m, n.m, 0)
	if over|carry != 0 {
		return 0, false
	}
	return inch.toSI(m, n.per, n.tens)
}

// inchesAt gives the place in s of a number of inches behind a foot unit, as
// cutFeet does; 0 where s is no such thing.
func inchesAt(s string) int {
	i := 0
	switch s[0] {
	case '\'':
		i = 1
	case 'f', 'F':
		switch {
		case strings.HasPrefix(s, "feet"), strings.HasPrefix(s, "foot"):
			i = 4
		case strings.HasPrefix(s, "ft."):
			i = 3
		case strings.HasPrefix(s, "ft"), strings.HasPrefix(s, "Ft"), strings.HasPrefix(s, "FT"):
			i = 2
		default:
			return 0
		}
	default:
		return 0
	}
	i = spacesAt(s, i)
	if i < len(s) && s[i] == '-' {
		i = spacesAt(s, i+1)
	}
	if i < len(s) && (s[i] == '.' || isDigit(s[i])) {
		return i
	}
	return 0
}

// spacesAt gives the end of the run of spaces that starts at i.
func spacesAt(s string, i int) int {
	for i < len(s) && s[i] == ' ' {
		i++
	}
	return i
}

// zerosAt gives how many zeros in front of a number take no room, a decimal point
// between them not counted.
func zerosAt(s string, i int) (zeros int) {
	for ; i < len(s) && (s[i] == '0' || s[i] == '.'); i++ {
		if s[i] == '0' {
			zeros++
		}
	}
	return zeros
}

// wordAt reads the run of digits that starts at i; more than 19 of them wrap round.
func wordAt(s string, i int) (m uint64, next int) {
	for i < len(s) && s[i]-'0' <= 9 {
		m = m*10 + uint64(s[i]-'0')
		i++
	}
	return m, i
}
