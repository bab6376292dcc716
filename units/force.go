package units

// Force is a pull, a push or a weight, in newtons.
type Force float64

const (
	Newton        Force = 1
	Kilonewton    Force = 1000
	PoundForce    Force = 0.45359237 * 9.80665
	Kip           Force = 1000 * 0.45359237 * 9.80665
	KilogramForce Force = 9.80665
)

// In counts how many of the given unit make up the quantity.
func (q Force) In(unit Force) float64 { return float64(q) / float64(unit) }
