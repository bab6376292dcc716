package units

import "fmt"

// Mass is how much matter a thing holds, in kilograms: what a piece of
// counterweight, a fixture or a cloth is said to "weigh". Its pull is a [Force]
// and comes from [Mass.Weight].
//
// Pound is the avoirdupois pound, 0.45359237 kg exactly; Ounce is a sixteenth of
// it and ShortTon 2000 of it, each to the last bit. The zero Mass is nothing.
//
// Source: NIST SP 811 (2008), Appendix B.8, footnote 22, and B.9, mass.
type Mass float64

// Units of Mass: write a value as a number of one of them, such as 3*Kilogram.
const (
	Kilogram Mass = 1
	Gram     Mass = 0.001
	Tonne    Mass = 1000 // the metric ton
	Pound    Mass = kilogramsPerPound
	Ounce    Mass = kilogramsPerOunce
	ShortTon Mass = 2000 * kilogramsPerPound // the ton of 2000 lb
)

// In gives m as a number of the given unit, as in m.In(units.Pound).
func (m Mass) In(unit Mass) float64 { return float64(m) / float64(unit) }

// Scale gives k times m.
func (m Mass) Scale(k float64) Mass { return Mass(k * float64(m)) }

// Weight gives the pull of gravity on m: m times g, downward. Pass
// [StandardGravity] unless the calculation is about another acceleration.
func (m Mass) Weight(g Acceleration) Force { return Force(float64(m) * float64(g)) }

// Force gives the net force that gives m the acceleration a: m times a, in the
// direction of a. The pull of gravity is [Mass.Weight].
func (m Mass) Force(a Acceleration) Force { return Force(float64(m) * float64(a)) }

// Inertia gives the mass moment of inertia of m, all of it at the given radius
// from the axle: m times radius².
func (m Mass) Inertia(radius Length) Inertia {
	return Inertia(float64(m) * (float64(radius) * float64(radius)))
}

// Per spreads m evenly along l. A zero l gives an infinity, or NaN where m is
// zero too.
func (m Mass) Per(l Length) LineMass { return LineMass(float64(m) / float64(l)) }

// Within reports whether m and other are at most tol apart. What is not finite is
// within no distance of anything.
func (m Mass) Within(other, tol Mass) bool { return near(m, other, tol) }

// String writes m in kilograms with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (m Mass) String() string { return textSI(m) }

// Format writes m for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (m Mass) Format(state fmt.State, verb rune) { format(state, verb, m) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (m Mass) AppendText(b []byte) ([]byte, error) { return encode(b, m) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (m Mass) MarshalText() ([]byte, error) { return encode(nil, m) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (m *Mass) UnmarshalText(text []byte) error { return decode(m, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves m
// alone under null. A bare number is refused: it has no unit.
func (m *Mass) UnmarshalJSON(data []byte) error { return decodeJSON(m, data) }

func (m Mass) si() float64           { return float64(m) }
func (m Mass) dimension() *dimension { return &massDimension }
