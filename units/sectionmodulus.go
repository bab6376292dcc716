package units

import "fmt"

// SectionModulus is the elastic section modulus of a cross-section, in cubic
// metres: the [SecondMoment] over the distance from the axis to the outer fibre.
//
// Every unit here is exact by definition, from the exact inch. The zero
// SectionModulus is a section that does not resist bending.
//
// Source: NIST SP 811 (2008), Appendix B.8, section modulus.
type SectionModulus float64

// Units of SectionModulus: write a value as a number of one of them, such as 3*CubicMetre.
const (
	CubicMetre      SectionModulus = 1
	CubicCentimetre SectionModulus = 1e-6
	CubicMillimetre SectionModulus = 1e-9
	CubicInch       SectionModulus = metresPerInch * metresPerInch * metresPerInch
)

// In gives z as a number of the given unit, as in z.In(units.CubicInch).
func (z SectionModulus) In(unit SectionModulus) float64 { return float64(z) / float64(unit) }

// Scale gives k times z.
func (z SectionModulus) Scale(k float64) SectionModulus { return SectionModulus(k * float64(z)) }

// Within reports whether z and other are at most tol apart. What is not finite is
// within no distance of anything.
func (z SectionModulus) Within(other, tol SectionModulus) bool { return near(z, other, tol) }

// String writes z in m³ with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (z SectionModulus) String() string { return textSI(z) }

// Format writes z for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (z SectionModulus) Format(state fmt.State, verb rune) { format(state, verb, z) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (z SectionModulus) AppendText(b []byte) ([]byte, error) { return encode(b, z) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (z SectionModulus) MarshalText() ([]byte, error) { return encode(nil, z) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (z *SectionModulus) UnmarshalText(text []byte) error { return decode(z, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves z
// alone under null. A bare number is refused: it has no unit.
func (z *SectionModulus) UnmarshalJSON(data []byte) error { return decodeJSON(z, data) }

func (z SectionModulus) si() float64           { return float64(z) }
func (z SectionModulus) dimension() *dimension { return &sectionModulusDimension }
