package units

import "fmt"

// SecondMoment is the second moment of area of a cross-section about an axis
// through its centroid, in metres to the fourth: the I of a beam formula.
//
// Every unit here is exact by definition, from the exact inch. The zero
// SecondMoment is a section that does not resist bending.
//
// Source: NIST SP 811 (2008), Appendix B.8, second moment of area.
type SecondMoment float64

// Units of SecondMoment: write a value as a number of one of them, such as 3*MetreToTheFourth.
const (
	MetreToTheFourth      SecondMoment = 1
	CentimetreToTheFourth SecondMoment = 1e-8
	MillimetreToTheFourth SecondMoment = 1e-12
	InchToTheFourth       SecondMoment = metresPerInch * metresPerInch * metresPerInch * metresPerInch
)

// In gives i as a number of the given unit, as in i.In(units.InchToTheFourth).
func (i SecondMoment) In(unit SecondMoment) float64 { return float64(i) / float64(unit) }

// Scale gives k times i.
func (i SecondMoment) Scale(k float64) SecondMoment { return SecondMoment(k * float64(i)) }

// Within reports whether i and other are at most tol apart. What is not finite is
// within no distance of anything.
func (i SecondMoment) Within(other, tol SecondMoment) bool { return near(i, other, tol) }

// String writes i in m⁴ with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (i SecondMoment) String() string { return textSI(i) }

// Format writes i for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (i SecondMoment) Format(state fmt.State, verb rune) { format(state, verb, i) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (i SecondMoment) AppendText(b []byte) ([]byte, error) { return encode(b, i) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (i SecondMoment) MarshalText() ([]byte, error) { return encode(nil, i) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (i *SecondMoment) UnmarshalText(text []byte) error { return decode(i, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves i
// alone under null. A bare number is refused: it has no unit.
func (i *SecondMoment) UnmarshalJSON(data []byte) error { return decodeJSON(i, data) }

func (i SecondMoment) si() float64           { return float64(i) }
func (i SecondMoment) dimension() *dimension { return &secondMomentDimension }
