package units

import "fmt"

// Area is the size of a surface or of a cross-section, in square metres.
//
// Every unit here is exact by definition, from the exact inch; each constant is
// the float64 nearest to it. A foot by a foot equals SquareFoot to the last
// bit; 144 square inches differ from it there. The zero Area is no surface.
//
// Source: NIST SP 811 (2008), Appendix B.9, area.
type Area float64

// Units of Area: write a value as a number of one of them, such as 3*SquareMetre.
const (
	SquareMetre      Area = 1
	SquareCentimetre Area = 1e-4
	SquareMillimetre Area = 1e-6
	SquareInch       Area = metresPerInch * metresPerInch
	SquareFoot       Area = metresPerFoot * metresPerFoot
	SquareYard       Area = metresPerYard * metresPerYard
)

// In gives a as a number of the given unit, as in a.In(units.SquareFoot).
func (a Area) In(unit Area) float64 { return float64(a) / float64(unit) }

// Scale gives k times a.
func (a Area) Scale(k float64) Area { return Area(k * float64(a)) }

// Within reports whether a and other are at most tol apart. What is not finite is
// within no distance of anything.
func (a Area) Within(other, tol Area) bool { return near(a, other, tol) }

// String writes a in square metres with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (a Area) String() string { return textSI(a) }

// Format writes a for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (a Area) Format(state fmt.State, verb rune) { format(state, verb, a) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (a Area) AppendText(b []byte) ([]byte, error) { return encode(b, a) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (a Area) MarshalText() ([]byte, error) { return encode(nil, a) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (a *Area) UnmarshalText(text []byte) error { return decode(a, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves a
// alone under null. A bare number is refused: it has no unit.
func (a *Area) UnmarshalJSON(data []byte) error { return decodeJSON(a, data) }

func (a Area) si() float64           { return float64(a) }
func (a Area) dimension() *dimension { return &areaDimension }
