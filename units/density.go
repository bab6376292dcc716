package units

import "fmt"

// Density is a mass spread through a volume, in kilograms per cubic metre.
//
// The customary units are quotients of exact units, rounded once. A bar of it has
// a [LineMass], through [Density.Over]. The zero Density is massless.
//
// Source: NIST SP 811 (2008), Appendix B.9, mass divided by volume.
type Density float64

// Units of Density: write a value as a number of one of them, such as 3*KilogramPerCubicMetre.
const (
	KilogramPerCubicMetre Density = 1
	PoundPerCubicFoot     Density = kilogramsPerPound / (metresPerFoot * metresPerFoot * metresPerFoot)
	PoundPerCubicInch     Density = kilogramsPerPound / (metresPerInch * metresPerInch * metresPerInch)
)

// In gives d as a number of the given unit, as in d.In(units.PoundPerCubicFoot).
func (d Density) In(unit Density) float64 { return float64(d) / float64(unit) }

// Scale gives k times d.
func (d Density) Scale(k float64) Density { return Density(k * float64(d)) }

// Over gives the mass per length of a bar, pipe or rope with the cross-section a.
func (d Density) Over(a Area) LineMass { return LineMass(float64(d) * float64(a)) }

// Within reports whether d and other are at most tol apart. What is not finite is
// within no distance of anything.
func (d Density) Within(other, tol Density) bool { return near(d, other, tol) }

// String writes d in kg/m³ with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (d Density) String() string { return textSI(d) }

// Format writes d for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (d Density) Format(state fmt.State, verb rune) { format(state, verb, d) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (d Density) AppendText(b []byte) ([]byte, error) { return encode(b, d) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (d Density) MarshalText() ([]byte, error) { return encode(nil, d) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (d *Density) UnmarshalText(text []byte) error { return decode(d, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves d
// alone under null. A bare number is refused: it has no unit.
func (d *Density) UnmarshalJSON(data []byte) error { return decodeJSON(d, data) }

func (d Density) si() float64           { return float64(d) }
func (d Density) dimension() *dimension { return &densityDimension }
