package units

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

// String writes a in m/s² with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (a Acceleration) String() string { return string(appendSI(nil, a)) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (a Acceleration) AppendText(b []byte) ([]byte, error) { return encode(b, a) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (a Acceleration) MarshalText() ([]byte, error) { return encode(nil, a) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (a *Acceleration) UnmarshalText(text []byte) error { return decode(a, text) }

func (a Acceleration) si() float64           { return float64(a) }
func (a Acceleration) dimension() *dimension { return &accelerationDimension }
