package units

import "fmt"

// Length is a distance, or a height above the stage deck, in metres.
//
// Inch, Foot and Yard are exact by definition (1 in = 25.4 mm), and so are the
// metric units; each constant is the float64 nearest to its definition. So 36 in
// equals 1 yd to the last bit, but 12 in and 1 ft, and 3 ft and 1 yd, differ in
// it: never test lengths for ==. The survey foot is another unit and is not here.
// A Length may be negative: a height below the deck, an overtravel that is short.
// The zero Length is no distance.
//
// Source: NIST SP 811 (2008), Appendix B.9, length.
type Length float64

// Units of Length: write a value as a number of one of them, such as 3*Metre.
const (
	Metre      Length = 1
	Millimetre Length = 0.001
	Centimetre Length = 0.01
	Inch       Length = metresPerInch
	Foot       Length = metresPerFoot
	Yard       Length = metresPerYard
)

// In gives l as a number of the given unit, as in l.In(units.Foot).
func (l Length) In(unit Length) float64 { return float64(l) / float64(unit) }

// Scale gives k times l.
func (l Length) Scale(k float64) Length { return Length(k * float64(l)) }

// By gives the area of a rectangle that is l long and width wide.
func (l Length) By(width Length) Area { return Area(float64(l) * float64(width)) }

// Per gives the steady speed at which l is covered in t. A zero t gives an
// infinity, or NaN where l is zero too.
func (l Length) Per(t TimeSpan) Speed { return Speed(float64(l) / float64(t)) }

// Time gives how long l takes at a steady v. A zero v gives an infinity, or NaN
// where l is zero too.
func (l Length) Time(v Speed) TimeSpan { return TimeSpan(float64(l) / float64(v)) }

// Within reports whether l and other are at most tol apart. What is not finite is
// within no distance of anything.
func (l Length) Within(other, tol Length) bool { return near(l, other, tol) }

// String writes l in metres with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (l Length) String() string { return textSI(l) }

// Format writes l for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (l Length) Format(state fmt.State, verb rune) { format(state, verb, l) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (l Length) AppendText(b []byte) ([]byte, error) { return encode(b, l) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (l Length) MarshalText() ([]byte, error) { return encode(nil, l) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (l *Length) UnmarshalText(text []byte) error { return decode(l, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves l
// alone under null. A bare number is refused: it has no unit.
func (l *Length) UnmarshalJSON(data []byte) error { return decodeJSON(l, data) }

func (l Length) si() float64           { return float64(l) }
func (l Length) dimension() *dimension { return &lengthDimension }
