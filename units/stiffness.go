package units

import "fmt"

// Stiffness is the force that it takes to stretch a thing, such as a lift line, by
// a length, in newtons per metre.
//
// It has the dimension of [LineLoad] and is another quantity: a load of 3 N/m lies
// along a batten, a rope of 3 N/m gives by a metre under 3 N. Text in N/m or lbf/ft
// is read as whichever of the two is asked for. The customary units are quotients
// of the exact pound-force and the exact inch or foot, each rounded once. The zero
// Stiffness gives way to any force.
//
// Source: NIST SP 811 (2008), Appendix B.9, force divided by length.
type Stiffness float64

// Units of Stiffness: write a value as a number of one of them, such as 3*NewtonPerMetreStretch.
const (
	NewtonPerMetreStretch     Stiffness = 1
	KilonewtonPerMetreStretch Stiffness = 1000 // also N/mm
	PoundForcePerInchStretch  Stiffness = kilogramsPerPound * standardGravity / metresPerInch
	PoundForcePerFootStretch  Stiffness = kilogramsPerPound * standardGravity / metresPerFoot
)

// In gives k as a number of the given unit, as in k.In(units.PoundForcePerInchStretch).
func (k Stiffness) In(unit Stiffness) float64 { return float64(k) / float64(unit) }

// Scale gives n times k.
func (k Stiffness) Scale(n float64) Stiffness { return Stiffness(n * float64(k)) }

// Force gives the force at which k has stretched by the given length.
func (k Stiffness) Force(stretch Length) Force { return Force(float64(k) * float64(stretch)) }

// Stretch gives the length by which k stretches under f. A zero k gives an
// infinity, or NaN where f is zero too.
func (k Stiffness) Stretch(f Force) Length { return Length(float64(f) / float64(k)) }

// Within reports whether k and other are at most tol apart. What is not finite is
// within no distance of anything.
func (k Stiffness) Within(other, tol Stiffness) bool { return near(k, other, tol) }

// String writes k in N/m with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (k Stiffness) String() string { return textSI(k) }

// Format writes k for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (k Stiffness) Format(state fmt.State, verb rune) { format(state, verb, k) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (k Stiffness) AppendText(b []byte) ([]byte, error) { return encode(b, k) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (k Stiffness) MarshalText() ([]byte, error) { return encode(nil, k) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (k *Stiffness) UnmarshalText(text []byte) error { return decode(k, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves k
// alone under null. A bare number is refused: it has no unit.
func (k *Stiffness) UnmarshalJSON(data []byte) error { return decodeJSON(k, data) }

func (k Stiffness) si() float64           { return float64(k) }
func (k Stiffness) dimension() *dimension { return &stiffnessDimension }
