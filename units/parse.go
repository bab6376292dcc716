package units

import (
	"bytes"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// Parse reads a number and its unit, such as
//
//	24'-6"   24' 6 1/2"   24 ft 6 1/2 in   7.4676 m   −3 mm   1/2 in
//	12.5 lb   90 lbf   1e3 N   0.11 lb/ft   11 lb/100 ft   15 oz/yd²   29000 ksi
//
// The number is digits with a decimal point, an exponent of ten, or a fraction,
// which may be one character (6½), and may have a sign; in feet and inches the sign is that of the whole. The
// space before the unit is free, powers may be plain (oz/yd2), and the usual
// spellings of the units are known: lbs, feet, metre, meter. Upper and lower
// case differ.
//
// The exact value of the text is multiplied by the exact factor of the unit and
// rounded once, to the nearest float64 and to even in a tie. What String wrote
// comes back as the same value, bit for bit, and so does what FormatIn wrote.
//
// Parse makes no allocation for what people write: up to 19 digits, fractions with
// up to 9 above and below the stroke. Text of any kind takes bounded time.
//
// The error is a *[ParseError] whose kind is ErrSyntax, ErrNoUnit,
// ErrUnknownUnit, ErrAmbiguousUnit, ErrWrongQuantity, ErrNotFinite or
// ErrOutOfRange. A number without a unit is an error, zero too; so is a decimal
// comma, and a unit of another dimension: a force is not written in lb.
func Parse[Q Quantity](text string) (Q, error) {
	var q Q
	d := q.dimension()
	if f, ok := quick(text, d); ok {
		return Q(f), nil
	}
	f, err := read(text, d)
	return Q(f), err
}

// read gives the SI value of a text that quick cannot read as it stands. With its
// odd characters folded away, most such texts are as good as any; a string of 32
// bytes need not leave the stack.
func read(text string, want *dimension) (float64, error) {
	if len(text) <= maxText && (odd(text) || strings.TrimSpace(text) != text) {
		var room [64]byte
		folded := appendFolded(room[:0], text)
		if f, ok := quick(string(bytes.TrimSpace(folded)), want); ok {
			return f, nil
		}
	}
	return parse(text, want)
}

// parser reads one text.
type parser struct {
	text string
	want *dimension
}

func (p *parser) fail(kind error, rest, reason string) error {
	return &ParseError{Text: clip(p.text), Quantity: p.want.name, Reason: reason, Rest: clip(rest), Err: kind}
}

// parse gives the SI value of a text that should be a quantity of dimension want.
// It reads everything, in exact fractions of any size, and says what is wrong.
func parse(text string, want *dimension) (float64, error) {
	p := parser{text, want}
	if len(text) > maxText {
		return 0, p.fail(ErrSyntax, text, "is longer than "+strconv.Itoa(maxText)+" bytes")
	}
	s := fold(text)
	if s == "" {
		return 0, p.fail(ErrSyntax, "", "is empty")
	}
	negative := s[0] == '-'
	if negative || s[0] == '+' {
		s = s[1:]
	}
	if hasPrefixFold(s, "nan") || hasPrefixFold(s, "inf") {
		return 0, p.fail(ErrNotFinite, s, "is not a finite number")
	}
	n, reason, kind := readNumber(s)
	if kind != nil {
		return 0, p.fail(kind, s, reason)
	}
	value, err := p.measure(&n, strings.TrimLeft(s[n.next:], " "))
	if err != nil {
		return 0, err
	}
	f, _ := value.Float64()
	switch {
	case math.IsInf(f, 0):
		return 0, p.fail(ErrOutOfRange, "", "is too large")
	case f == 0 && value.Sign() != 0:
		return 0, p.fail(ErrOutOfRange, "", "is too small to tell from zero")
	}
	if negative {
		f = -f // of zero too: a negative zero prints as -0 and must come back
	}
	return f, nil
}

// measure gives the exact SI value of n with the unit, or the inches, that rest
// holds.
func (p *parser) measure(n *number, rest string) (*big.Rat, error) {
	if rest == "" {
		return nil, p.fail(ErrNoUnit, "", "has no unit")
	}
	switch c := rest[0]; {
	case c == ',':
		return nil, p.fail(ErrSyntax, rest, "has a comma in its number: a decimal point is wanted, and no mark between thousands")
	case '0' <= c && c <= '9':
		return nil, p.fail(ErrSyntax, rest, "has two numbers where one is wanted")
	case c == '.', c == '/', c == '+', c == '-':
		return nil, p.fail(ErrSyntax, rest, "has "+strconv.Quote(rest[:1])+" after the number")
	}
	key := unitKey(rest)
	u, d := p.find(key)
	if u == nil {
		if inches, ok := cutFeet(rest); ok {
			return p.feetInches(n, inches)
		}
		return nil, p.unknown(key, rest)
	}
	if d != p.want {
		return nil, p.fail(ErrWrongQuantity, rest, p.otherQuantity(u, d))
	}
	value := n.rat()
	return value.Mul(value, u.factor()), nil
}

// find looks a unit up, first where it should be.
func (p *parser) find(key string) (*unit, *dimension) {
	if u := p.want.spelled(key); u != nil {
		return u, p.want
	}
	for _, d := range dimensions {
		if u := d.spelled(key); u != nil {
			return u, d
		}
	}
	return nil, nil
}

// cutFeet takes a foot unit off the front of s where a number of inches follows.
func cutFeet(s string) (inches string, ok bool) {
	for _, mark := range [...]string{"'", "feet", "foot", "ft.", "ft", "Ft", "FT"} {
		tail, found := strings.CutPrefix(s, mark)
		if !found {
			continue
		}
		tail = strings.TrimLeft(tail, " ")
		tail = strings.TrimPrefix(tail, "-")
		tail = strings.TrimLeft(tail, " ")
		return tail, tail != "" && (tail[0] == '.' || '0' <= tail[0] && tail[0] <= '9')
	}
	return "", false
}

// feetInches gives the exact length of feet and the inches that follow them.
func (p *parser) feetInches(feet *number, inches string) (*big.Rat, error) {
	if p.want != &lengthDimension {
		return nil, p.fail(ErrWrongQuantity, inches, "is a length, not "+article(p.want))
	}
	if !feet.whole() {
		return nil, p.fail(ErrSyntax, inches, "has inches behind feet that are not a whole number")
	}
	n, reason, kind := readNumber(inches)
	if kind != nil {
		return nil, p.fail(kind, inches, reason)
	}
	rest := strings.TrimLeft(inches[n.next:], " ")
	if rest == "" {
		return nil, p.fail(ErrNoUnit, inches, "has inches without a mark or unit")
	}
	inch := lengthDimension.unit("in")
	if lengthDimension.spelled(unitKey(rest)) != inch {
		return nil, p.fail(ErrSyntax, rest, "has "+quote(rest)+" where the inches should end")
	}
	value := n.rat()
	if value.Cmp(big.NewRat(12, 1)) >= 0 {
		return nil, p.fail(ErrSyntax, inches, "has 12 or more inches beside the feet")
	}
	value.Mul(value, inch.factor())
	whole := feet.rat()
	return value.Add(value, whole.Mul(whole, lengthDimension.unit("ft").factor())), nil
}

// otherQuantity says that a unit belongs to another quantity, and names the
// likely slip of a pound or kilogram that is meant as a force, or the reverse.
func (p *parser) otherQuantity(u *unit, d *dimension) string {
	reason := "is " + article(d) + ", not " + article(p.want)
	for _, pair := range [...][2]string{{"lbf", "lb"}, {"lb", "lbf"}, {"kgf", "kg"}, {"kg", "kgf"}} {
		if !strings.HasPrefix(u.symbol, pair[0]) {
			continue
		}
		meant := pair[1] + u.symbol[len(pair[0]):]
		for i := range p.want.units {
			if p.want.units[i].symbol == meant {
				return reason + " (which is written " + meant + ")"
			}
		}
	}
	return reason
}

// longestUnit bounds the search for a unit with more text behind it: no spelling
// in the table has more bytes, with some gaps in it.
const longestUnit = 32

// unknown reports a unit that is not in the table: one with two meanings, one
// with more text behind it, one in the wrong case, or none of these.
func (p *parser) unknown(key, rest string) error {
	if choices := ambiguous(key); choices != "" {
		return p.fail(ErrAmbiguousUnit, rest, "has the unit "+quote(rest)+", which has more than one meaning: write "+choices)
	}
	for i := min(len(rest)-1, longestUnit); i > 0; i-- {
		if rest[i] != ' ' && rest[i] != ',' && rest[i] != ';' {
			continue
		}
		if u, _ := p.find(unitKey(rest[:i])); u != nil {
			tail := strings.TrimLeft(rest[i:], " ")
			return p.fail(ErrSyntax, tail, "goes on with "+quote(tail)+" after the unit "+u.symbol)
		}
	}
	var reason strings.Builder
	reason.WriteString("has the unit " + quote(rest) + ", which is not known")
	for i := range p.want.units {
		if u := &p.want.units[i]; strings.EqualFold(unitKey(u.symbol), key) {
			reason.WriteString(" (is " + u.symbol + " meant?)")
			break
		}
	}
	return p.fail(ErrUnknownUnit, rest, reason.String())
}

// article gives the name of a quantity with its article.
func article(d *dimension) string {
	if strings.HasPrefix(d.name, "a") {
		return "an " + d.name
	}
	return "a " + d.name
}

func hasPrefixFold(s, prefix string) bool {
	return len(s) >= len(prefix) && strings.EqualFold(s[:len(prefix)], prefix)
}
