package units

import "fmt"

// Force is a pull, a push or a weight, in newtons.
//
// PoundForce is the pull of standard gravity on a [Pound], 4.4482216152605 N
// exactly, and the constant equals Pound.Weight(StandardGravity) to the last bit.
// Kip is 1000 of it; KilogramForce is 9.80665 N exactly. The sign of a Force is
// stated where one is given. The zero Force is no pull.
//
// Source: NIST SP 811 (2008), Appendix B.8, footnote 23, and B.9, force.
type Force float64

// Units of Force: write a value as a number of one of them, such as 3*Newton.
const (
	Newton        Force = 1
	Kilonewton    Force = 1000
	PoundForce    Force = kilogramsPerPound * standardGravity
	Kip           Force = 1000 * kilogramsPerPound * standardGravity // 1000 lbf
	KilogramForce Force = standardGravity
)

// In gives f as a number of the given unit, as in f.In(units.PoundForce).
func (f Force) In(unit Force) float64 { return float64(f) / float64(unit) }

// Scale gives k times f.
func (f Force) Scale(k float64) Force { return Force(k * float64(f)) }

// Mass gives the mass on which gravity g pulls with f, the reverse of
// [Mass.Weight]. A zero g gives an infinity, or NaN where f is zero too.
func (f Force) Mass(g Acceleration) Mass { return Mass(float64(f) / float64(g)) }

// Acceleration gives the acceleration that a net force f gives to m, in the
// direction of f. A zero m gives an infinity, or NaN where f is zero too.
func (f Force) Acceleration(m Mass) Acceleration { return Acceleration(float64(f) / float64(m)) }

// Moment gives the moment of f at the given arm, the distance at right angles to
// the force.
func (f Force) Moment(arm Length) Moment { return Moment(float64(f) * float64(arm)) }

// Per spreads f evenly along l. A zero l gives an infinity, or NaN where f is
// zero too.
func (f Force) Per(l Length) LineLoad { return LineLoad(float64(f) / float64(l)) }

// Stress gives the stress of f spread evenly over the cross-section a, along its
// axis. A zero a gives an infinity, or NaN where f is zero too.
func (f Force) Stress(a Area) Stress { return Stress(float64(f) / float64(a)) }

// Stiffness gives the stiffness of what f stretches by the given length. A zero
// length gives an infinity, or NaN where f is zero too.
func (f Force) Stiffness(stretch Length) Stiffness { return Stiffness(float64(f) / float64(stretch)) }

// Work gives the work of f along the given travel, which is measured in the
// direction of f.
func (f Force) Work(travel Length) Energy { return Energy(float64(f) * float64(travel)) }

// Power gives the power of f on what moves at v in the direction of f.
func (f Force) Power(v Speed) Power { return Power(float64(f) * float64(v)) }

// Within reports whether f and other are at most tol apart. What is not finite is
// within no distance of anything.
func (f Force) Within(other, tol Force) bool { return near(f, other, tol) }

// String writes f in newtons with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (f Force) String() string { return textSI(f) }

// Format writes f for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (f Force) Format(state fmt.State, verb rune) { format(state, verb, f) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (f Force) AppendText(b []byte) ([]byte, error) { return encode(b, f) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (f Force) MarshalText() ([]byte, error) { return encode(nil, f) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (f *Force) UnmarshalText(text []byte) error { return decode(f, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves f
// alone under null. A bare number is refused: it has no unit.
func (f *Force) UnmarshalJSON(data []byte) error { return decodeJSON(f, data) }

func (f Force) si() float64           { return float64(f) }
func (f Force) dimension() *dimension { return &forceDimension }
