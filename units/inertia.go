package units

import "fmt"

// Inertia is the mass moment of inertia of a thing that turns, such as a sheave,
// about its axle, in kilogram metres squared. That of a cross-section, which
// bending needs, is [SecondMoment].
//
// Both customary units are exact by definition, from the exact pound, foot and
// inch; each constant is the float64 nearest to it. The zero Inertia is a thing
// that turns without resistance.
//
// Source: NIST SP 811 (2008), Appendix B.9, moment of inertia.
type Inertia float64

// Units of Inertia: write a value as a number of one of them, such as 3*KilogramMetreSquared.
const (
	KilogramMetreSquared Inertia = 1
	PoundFootSquared     Inertia = kilogramsPerPound * metresPerFoot * metresPerFoot
	PoundInchSquared     Inertia = kilogramsPerPound * metresPerInch * metresPerInch
)

// In gives i as a number of the given unit, as in i.In(units.PoundFootSquared).
func (i Inertia) In(unit Inertia) float64 { return float64(i) / float64(unit) }

// Scale gives k times i.
func (i Inertia) Scale(k float64) Inertia { return Inertia(k * float64(i)) }

// Mass gives the mass that is as hard to set in motion as i is through a rope at
// the given radius: i/radius². A zero radius gives an infinity, or NaN where i is
// zero too.
func (i Inertia) Mass(radius Length) Mass {
	return Mass(float64(i) / (float64(radius) * float64(radius)))
}

// Within reports whether i and other are at most tol apart. What is not finite is
// within no distance of anything.
func (i Inertia) Within(other, tol Inertia) bool { return near(i, other, tol) }

// String writes i in kg·m² with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (i Inertia) String() string { return textSI(i) }

// Format writes i for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (i Inertia) Format(state fmt.State, verb rune) { format(state, verb, i) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (i Inertia) AppendText(b []byte) ([]byte, error) { return encode(b, i) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (i Inertia) MarshalText() ([]byte, error) { return encode(nil, i) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (i *Inertia) UnmarshalText(text []byte) error { return decode(i, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves i
// alone under null. A bare number is refused: it has no unit.
func (i *Inertia) UnmarshalJSON(data []byte) error { return decodeJSON(i, data) }

func (i Inertia) si() float64           { return float64(i) }
func (i Inertia) dimension() *dimension { return &inertiaDimension }
