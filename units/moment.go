package units

import "fmt"

// Moment is a force at an arm, in newton metres: what bends a batten.
//
// The customary units are products of the exact pound-force and the exact foot or
// inch, each rounded once. A sagging moment is positive where this library gives
// one. The zero Moment is no moment.
//
// Source: NIST SP 811 (2008), Appendix B.9, moment of force.
type Moment float64

// Units of Moment: write a value as a number of one of them, such as 3*NewtonMetre.
const (
	NewtonMetre     Moment = 1
	KilonewtonMetre Moment = 1000
	PoundForceFoot  Moment = kilogramsPerPound * standardGravity * metresPerFoot
	PoundForceInch  Moment = kilogramsPerPound * standardGravity * metresPerInch
	KipFoot         Moment = 1000 * kilogramsPerPound * standardGravity * metresPerFoot
)

// In gives m as a number of the given unit, as in m.In(units.PoundForceFoot).
func (m Moment) In(unit Moment) float64 { return float64(m) / float64(unit) }

// Scale gives k times m.
func (m Moment) Scale(k float64) Moment { return Moment(k * float64(m)) }

// Arm gives the arm at which f has the moment m. A zero f gives an infinity, or
// NaN where m is zero too.
func (m Moment) Arm(f Force) Length { return Length(float64(m) / float64(f)) }

// Stress gives the bending stress at the outer fibre of a cross-section whose
// elastic section modulus is z: m/z. A zero z gives an infinity, or NaN where m
// is zero too.
func (m Moment) Stress(z SectionModulus) Stress { return Stress(float64(m) / float64(z)) }

// Within reports whether m and other are at most tol apart. What is not finite is
// within no distance of anything.
func (m Moment) Within(other, tol Moment) bool { return near(m, other, tol) }

// String writes m in newton metres with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (m Moment) String() string { return textSI(m) }

// Format writes m for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (m Moment) Format(state fmt.State, verb rune) { format(state, verb, m) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (m Moment) AppendText(b []byte) ([]byte, error) { return encode(b, m) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (m Moment) MarshalText() ([]byte, error) { return encode(nil, m) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (m *Moment) UnmarshalText(text []byte) error { return decode(m, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves m
// alone under null. A bare number is refused: it has no unit.
func (m *Moment) UnmarshalJSON(data []byte) error { return decodeJSON(m, data) }

func (m Moment) si() float64           { return float64(m) }
func (m Moment) dimension() *dimension { return &momentDimension }
