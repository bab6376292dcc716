package units

import "fmt"

// Value is any quantity of this package, held without saying which. No other
// type can be one. A [System] prints it.
type Value interface {
	fmt.Stringer

	si() float64
	dimension() *dimension
}

// Quantity is the closed set of types that [Parse], [Ratio], [Sum] and [Abs]
// work on. A type defined from one of them is not in it.
type Quantity interface {
	Length | Area | Mass | Force | Acceleration | Moment | Stress | LineMass | LineLoad | AreaMass | Density |
		SecondMoment | SectionModulus | TimeSpan | Speed | Angle | Energy | Power | Stiffness | Inertia

	Value
}

// Ratio gives a/b, the pure number of how many times b goes into a. A zero b
// gives an infinity with the sign of a, or NaN where a is zero too: look at b
// first where it can be zero.
func Ratio[Q Quantity](a, b Q) float64 { return float64(a) / float64(b) }

// Sum adds quantities from the first to the last. The sum of none is zero.
func Sum[Q Quantity](qs ...Q) Q {
	var sum Q
	for _, q := range qs {
		sum += q
	}
	return sum
}

// Abs gives q without its sign.
func Abs[Q Quantity](q Q) Q {
	if q <= 0 {
		return 0 - q // from 0, so that a negative zero comes out positive
	}
	return q
}
