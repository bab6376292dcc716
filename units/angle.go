package units

import (
	"fmt"
	"math"
)

// Angle is a turn, or the corner between two directions, in radians.
//
// No unit but the radian is exact, for π is no fraction: each constant is the
// float64 nearest to its definition. So 90 degrees equal a quarter of a turn and
// 60 arc minutes a degree to the last bit, and sin(Turn/2) is not quite zero. An
// Angle may be more than a turn and may be negative; nothing here wraps it around.
// The zero Angle is none.
//
// Source: NIST SP 811 (2008), Appendix B.9, angle.
type Angle float64

// Units of Angle: write a value as a number of one of them, such as 3*Radian.
const (
	Radian    Angle = 1
	Degree    Angle = math.Pi / 180
	ArcMinute Angle = math.Pi / 10800
	Turn      Angle = 2 * math.Pi
)

// In gives a as a number of the given unit, as in a.In(units.Degree).
func (a Angle) In(unit Angle) float64 { return float64(a) / float64(unit) }

// Scale gives k times a.
func (a Angle) Scale(k float64) Angle { return Angle(k * float64(a)) }

// Arc gives the length that a runs along a circle of the given radius: the rope
// that a turning sheave takes up at its tread.
func (a Angle) Arc(radius Length) Length { return Length(float64(a) * float64(radius)) }

// Within reports whether a and other are at most tol apart. What is not finite is
// within no distance of anything.
func (a Angle) Within(other, tol Angle) bool { return near(a, other, tol) }

// String writes a in radians with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (a Angle) String() string { return textSI(a) }

// Format writes a for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (a Angle) Format(state fmt.State, verb rune) { format(state, verb, a) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (a Angle) AppendText(b []byte) ([]byte, error) { return encode(b, a) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (a Angle) MarshalText() ([]byte, error) { return encode(nil, a) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (a *Angle) UnmarshalText(text []byte) error { return decode(a, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves a
// alone under null. A bare number is refused: it has no unit.
func (a *Angle) UnmarshalJSON(data []byte) error { return decodeJSON(a, data) }

func (a Angle) si() float64           { return float64(a) }
func (a Angle) dimension() *dimension { return &angleDimension }
