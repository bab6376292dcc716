package units

import "fmt"

// Acceleration is a change of speed in time, in metres per second squared.
//
// All three units are exact. StandardGravity is a convention, not a measurement:
// 9.80665 m/s² everywhere. The zero Acceleration is steady motion or rest.
//
// Source: NIST SP 811 (2008), Appendix B.9, acceleration.
type Acceleration float64

// Units of Acceleration: write a value as a number of one of them, such as 3*MetrePerSecondSquared.
const (
	MetrePerSecondSquared Acceleration = 1
	FootPerSecondSquared  Acceleration = metresPerFoot
	StandardGravity       Acceleration = standardGravity
)

// In gives a as a number of the given unit, as in a.In(units.StandardGravity).
func (a Acceleration) In(unit Acceleration) float64 { return float64(a) / float64(unit) }

// Scale gives k times a.
func (a Acceleration) Scale(k float64) Acceleration { return Acceleration(k * float64(a)) }

// Over gives the change of speed that a steady a makes in t.
func (a Acceleration) Over(t TimeSpan) Speed { return Speed(float64(a) * float64(t)) }

// Within reports whether a and other are at most tol apart. What is not finite is
// within no distance of anything.
func (a Acceleration) Within(other, tol Acceleration) bool { return near(a, other, tol) }

// String writes a in m/s² with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (a Acceleration) String() string { return textSI(a) }

// Format writes a for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (a Acceleration) Format(state fmt.State, verb rune) { format(state, verb, a) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (a Acceleration) AppendText(b []byte) ([]byte, error) { return encode(b, a) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (a Acceleration) MarshalText() ([]byte, error) { return encode(nil, a) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (a *Acceleration) UnmarshalText(text []byte) error { return decode(a, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves a
// alone under null. A bare number is refused: it has no unit.
func (a *Acceleration) UnmarshalJSON(data []byte) error { return decodeJSON(a, data) }

func (a Acceleration) si() float64           { return float64(a) }
func (a Acceleration) dimension() *dimension { return &accelerationDimension }
