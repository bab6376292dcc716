package units

import "fmt"

// Stress is a force spread over an area, in pascals. An elastic modulus is a
// Stress too.
//
// The customary units are quotients of the exact pound-force and the exact square
// inch, each rounded once; they do not end in decimals. The zero Stress is none.
//
// Source: NIST SP 811 (2008), Appendix B.9, pressure or stress.
type Stress float64

// Units of Stress: write a value as a number of one of them, such as 3*Pascal.
const (
	Pascal                  Stress = 1
	Kilopascal              Stress = 1e3
	Megapascal              Stress = 1e6 // also N/mm²
	Gigapascal              Stress = 1e9
	PoundForcePerSquareInch Stress = kilogramsPerPound * standardGravity / (metresPerInch * metresPerInch)
	KipPerSquareInch        Stress = 1000 * kilogramsPerPound * standardGravity / (metresPerInch * metresPerInch)
)

// In gives s as a number of the given unit, as in s.In(units.KipPerSquareInch).
func (s Stress) In(unit Stress) float64 { return float64(s) / float64(unit) }

// Scale gives k times s.
func (s Stress) Scale(k float64) Stress { return Stress(k * float64(s)) }

// Moment gives the bending moment that brings the outer fibre of a cross-section
// of elastic section modulus z to the stress s: s times z.
func (s Stress) Moment(z SectionModulus) Moment { return Moment(float64(s) * float64(z)) }

// Over gives the force of s on the cross-section a, along its axis.
func (s Stress) Over(a Area) Force { return Force(float64(s) * float64(a)) }

// Within reports whether s and other are at most tol apart. What is not finite is
// within no distance of anything.
func (s Stress) Within(other, tol Stress) bool { return near(s, other, tol) }

// String writes s in pascals with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (s Stress) String() string { return textSI(s) }

// Format writes s for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (s Stress) Format(state fmt.State, verb rune) { format(state, verb, s) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (s Stress) AppendText(b []byte) ([]byte, error) { return encode(b, s) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (s Stress) MarshalText() ([]byte, error) { return encode(nil, s) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (s *Stress) UnmarshalText(text []byte) error { return decode(s, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves s
// alone under null. A bare number is refused: it has no unit.
func (s *Stress) UnmarshalJSON(data []byte) error { return decodeJSON(s, data) }

func (s Stress) si() float64           { return float64(s) }
func (s Stress) dimension() *dimension { return &stressDimension }
