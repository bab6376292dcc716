package units

import "fmt"

// AreaMass is a mass spread over an area, in kilograms per square metre: how
// cloth is listed.
//
// OuncePerSquareYard and PoundPerSquareFoot are quotients of exact units, rounded
// once. A piece of it is a [Mass], through [AreaMass.Over]. The zero AreaMass is
// massless.
//
// Source: NIST SP 811 (2008), Appendix B.9, mass divided by area.
type AreaMass float64

// Units of AreaMass: write a value as a number of one of them, such as 3*KilogramPerSquareMetre.
const (
	KilogramPerSquareMetre AreaMass = 1
	GramPerSquareMetre     AreaMass = 0.001
	OuncePerSquareYard     AreaMass = kilogramsPerOunce / (metresPerYard * metresPerYard)
	PoundPerSquareFoot     AreaMass = kilogramsPerPound / (metresPerFoot * metresPerFoot)
)

// In gives m as a number of the given unit, as in m.In(units.OuncePerSquareYard).
func (m AreaMass) In(unit AreaMass) float64 { return float64(m) / float64(unit) }

// Scale gives k times m.
func (m AreaMass) Scale(k float64) AreaMass { return AreaMass(k * float64(m)) }

// Over gives the mass of an area a.
func (m AreaMass) Over(a Area) Mass { return Mass(float64(m) * float64(a)) }

// Within reports whether m and other are at most tol apart. What is not finite is
// within no distance of anything.
func (m AreaMass) Within(other, tol AreaMass) bool { return near(m, other, tol) }

// String writes m in kg/m² with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (m AreaMass) String() string { return textSI(m) }

// Format writes m for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (m AreaMass) Format(state fmt.State, verb rune) { format(state, verb, m) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (m AreaMass) AppendText(b []byte) ([]byte, error) { return encode(b, m) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (m AreaMass) MarshalText() ([]byte, error) { return encode(nil, m) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (m *AreaMass) UnmarshalText(text []byte) error { return decode(m, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves m
// alone under null. A bare number is refused: it has no unit.
func (m *AreaMass) UnmarshalJSON(data []byte) error { return decodeJSON(m, data) }

func (m AreaMass) si() float64           { return float64(m) }
func (m AreaMass) dimension() *dimension { return &areaMassDimension }
