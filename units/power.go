package units

import "fmt"

// Power is work in a time, in watts.
//
// Horsepower is the mechanical one of 550 ft·lbf/s, 745.69987158227022 W exactly;
// the metric horsepower and the electric one are other units and are not here.
// The zero Power is none.
//
// Source: NIST SP 811 (2008), Appendix B.9, power.
type Power float64

// Units of Power: write a value as a number of one of them, such as 3*Watt.
const (
	Watt       Power = 1
	Kilowatt   Power = 1000
	Horsepower Power = 550 * kilogramsPerPound * standardGravity * metresPerFoot
)

// In gives p as a number of the given unit, as in p.In(units.Horsepower).
func (p Power) In(unit Power) float64 { return float64(p) / float64(unit) }

// Scale gives k times p.
func (p Power) Scale(k float64) Power { return Power(k * float64(p)) }

// Over gives the work of p in t.
func (p Power) Over(t TimeSpan) Energy { return Energy(float64(p) * float64(t)) }

// Within reports whether p and other are at most tol apart. What is not finite is
// within no distance of anything.
func (p Power) Within(other, tol Power) bool { return near(p, other, tol) }

// String writes p in watts with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (p Power) String() string { return textSI(p) }

// Format writes p for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (p Power) Format(state fmt.State, verb rune) { format(state, verb, p) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (p Power) AppendText(b []byte) ([]byte, error) { return encode(b, p) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (p Power) MarshalText() ([]byte, error) { return encode(nil, p) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (p *Power) UnmarshalText(text []byte) error { return decode(p, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves p
// alone under null. A bare number is refused: it has no unit.
func (p *Power) UnmarshalJSON(data []byte) error { return decodeJSON(p, data) }

func (p Power) si() float64           { return float64(p) }
func (p Power) dimension() *dimension { return &powerDimension }
