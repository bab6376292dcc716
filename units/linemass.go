package units

import "fmt"

// LineMass is a mass spread along a length, in kilograms per metre: how wire
// rope, pipe, chain and cable are listed.
//
// PoundPerFoot and PoundPerHundredFeet are quotients of the exact pound and the
// exact foot, rounded once. A length of it is a [Mass], through [LineMass.Over].
// The zero LineMass is massless.
//
// Source: NIST SP 811 (2008), Appendix B.9, mass divided by length.
type LineMass float64

// Units of LineMass: write a value as a number of one of them, such as 3*KilogramPerMetre.
const (
	KilogramPerMetre    LineMass = 1
	GramPerMetre        LineMass = 0.001
	PoundPerFoot        LineMass = kilogramsPerPound / metresPerFoot
	PoundPerHundredFeet LineMass = kilogramsPerPound / (100 * metresPerFoot)
)

// In gives m as a number of the given unit, as in m.In(units.PoundPerFoot).
func (m LineMass) In(unit LineMass) float64 { return float64(m) / float64(unit) }

// Scale gives k times m.
func (m LineMass) Scale(k float64) LineMass { return LineMass(k * float64(m)) }

// Over gives the mass of a length l.
func (m LineMass) Over(l Length) Mass { return Mass(float64(m) * float64(l)) }

// Weight gives the pull of gravity on each unit of length, downward.
func (m LineMass) Weight(g Acceleration) LineLoad { return LineLoad(float64(m) * float64(g)) }

// Within reports whether m and other are at most tol apart. What is not finite is
// within no distance of anything.
func (m LineMass) Within(other, tol LineMass) bool { return near(m, other, tol) }

// String writes m in kg/m with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (m LineMass) String() string { return textSI(m) }

// Format writes m for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (m LineMass) Format(state fmt.State, verb rune) { format(state, verb, m) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (m LineMass) AppendText(b []byte) ([]byte, error) { return encode(b, m) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (m LineMass) MarshalText() ([]byte, error) { return encode(nil, m) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (m *LineMass) UnmarshalText(text []byte) error { return decode(m, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves m
// alone under null. A bare number is refused: it has no unit.
func (m *LineMass) UnmarshalJSON(data []byte) error { return decodeJSON(m, data) }

func (m LineMass) si() float64           { return float64(m) }
func (m LineMass) dimension() *dimension { return &lineMassDimension }
