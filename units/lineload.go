package units

import "fmt"

// LineLoad is a force spread along a length, in newtons per metre.
//
// The customary units are quotients of the exact pound-force and the exact foot or
// inch, each rounded once. A length of it is a [Force], through [LineLoad.Over].
// The zero LineLoad is no load.
//
// Source: NIST SP 811 (2008), Appendix B.9, force divided by length.
type LineLoad float64

// Units of LineLoad: write a value as a number of one of them, such as 3*NewtonPerMetre.
const (
	NewtonPerMetre     LineLoad = 1
	KilonewtonPerMetre LineLoad = 1000 // also N/mm
	PoundForcePerFoot  LineLoad = kilogramsPerPound * standardGravity / metresPerFoot
	PoundForcePerInch  LineLoad = kilogramsPerPound * standardGravity / metresPerInch
	KipPerFoot         LineLoad = 1000 * kilogramsPerPound * standardGravity / metresPerFoot
)

// In gives w as a number of the given unit, as in w.In(units.PoundForcePerFoot).
func (w LineLoad) In(unit LineLoad) float64 { return float64(w) / float64(unit) }

// Scale gives k times w.
func (w LineLoad) Scale(k float64) LineLoad { return LineLoad(k * float64(w)) }

// Over gives the force on a length l.
func (w LineLoad) Over(l Length) Force { return Force(float64(w) * float64(l)) }

// Within reports whether w and other are at most tol apart. What is not finite is
// within no distance of anything.
func (w LineLoad) Within(other, tol LineLoad) bool { return near(w, other, tol) }

// String writes w in N/m with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (w LineLoad) String() string { return textSI(w) }

// Format writes w for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (w LineLoad) Format(state fmt.State, verb rune) { format(state, verb, w) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (w LineLoad) AppendText(b []byte) ([]byte, error) { return encode(b, w) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (w LineLoad) MarshalText() ([]byte, error) { return encode(nil, w) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (w *LineLoad) UnmarshalText(text []byte) error { return decode(w, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves w
// alone under null. A bare number is refused: it has no unit.
func (w *LineLoad) UnmarshalJSON(data []byte) error { return decodeJSON(w, data) }

func (w LineLoad) si() float64           { return float64(w) }
func (w LineLoad) dimension() *dimension { return &lineLoadDimension }
