package units

import "fmt"

// Speed is a distance in a time, in metres per second.
//
// FootPerSecond is exact by definition; FootPerMinute is a sixtieth of it, rounded
// once. The sign of a Speed is stated where one is given. The zero Speed is rest.
//
// Source: NIST SP 811 (2008), Appendix B.9, velocity.
type Speed float64

// Units of Speed: write a value as a number of one of them, such as 3*MetrePerSecond.
const (
	MetrePerSecond Speed = 1
	FootPerSecond  Speed = metresPerFoot
	FootPerMinute  Speed = metresPerFoot / 60
)

// In gives v as a number of the given unit, as in v.In(units.FootPerMinute).
func (v Speed) In(unit Speed) float64 { return float64(v) / float64(unit) }

// Scale gives k times v.
func (v Speed) Scale(k float64) Speed { return Speed(k * float64(v)) }

// Over gives the distance covered in t at a steady v.
func (v Speed) Over(t TimeSpan) Length { return Length(float64(v) * float64(t)) }

// Per gives the steady acceleration that brings rest to v in t. A zero t gives
// an infinity, or NaN where v is zero too.
func (v Speed) Per(t TimeSpan) Acceleration { return Acceleration(float64(v) / float64(t)) }

// Within reports whether v and other are at most tol apart. What is not finite is
// within no distance of anything.
func (v Speed) Within(other, tol Speed) bool { return near(v, other, tol) }

// String writes v in m/s with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (v Speed) String() string { return textSI(v) }

// Format writes v for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (v Speed) Format(state fmt.State, verb rune) { format(state, verb, v) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (v Speed) AppendText(b []byte) ([]byte, error) { return encode(b, v) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (v Speed) MarshalText() ([]byte, error) { return encode(nil, v) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (v *Speed) UnmarshalText(text []byte) error { return decode(v, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves v
// alone under null. A bare number is refused: it has no unit.
func (v *Speed) UnmarshalJSON(data []byte) error { return decodeJSON(v, data) }

func (v Speed) si() float64           { return float64(v) }
func (v Speed) dimension() *dimension { return &speedDimension }
