package units

import "fmt"

// Energy is work, done or stored, in joules.
//
// FootPoundForce is the product of the exact foot and the exact pound-force,
// 1.3558179483314004 J, and the constant equals PoundForce.Work(Foot) to the last
// bit. A [Moment] is another quantity, though it has the same dimension: text in
// ft·lbf or lbf·ft is read as whichever of the two is asked for, text in N·m as a
// moment only. The zero Energy is no work.
//
// Source: NIST SP 811 (2008), Appendix B.9, energy.
type Energy float64

// Units of Energy: write a value as a number of one of them, such as 3*Joule.
const (
	Joule          Energy = 1
	Kilojoule      Energy = 1000
	FootPoundForce Energy = kilogramsPerPound * standardGravity * metresPerFoot
)

// In gives e as a number of the given unit, as in e.In(units.FootPoundForce).
func (e Energy) In(unit Energy) float64 { return float64(e) / float64(unit) }

// Scale gives k times e.
func (e Energy) Scale(k float64) Energy { return Energy(k * float64(e)) }

// Per gives the power that does e evenly in t. A zero t gives an infinity, or NaN
// where e is zero too.
func (e Energy) Per(t TimeSpan) Power { return Power(float64(e) / float64(t)) }

// Within reports whether e and other are at most tol apart. What is not finite is
// within no distance of anything.
func (e Energy) Within(other, tol Energy) bool { return near(e, other, tol) }

// String writes e in joules with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (e Energy) String() string { return textSI(e) }

// Format writes e for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (e Energy) Format(state fmt.State, verb rune) { format(state, verb, e) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (e Energy) AppendText(b []byte) ([]byte, error) { return encode(b, e) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (e Energy) MarshalText() ([]byte, error) { return encode(nil, e) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (e *Energy) UnmarshalText(text []byte) error { return decode(e, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves e
// alone under null. A bare number is refused: it has no unit.
func (e *Energy) UnmarshalJSON(data []byte) error { return decodeJSON(e, data) }

func (e Energy) si() float64           { return float64(e) }
func (e Energy) dimension() *dimension { return &energyDimension }
