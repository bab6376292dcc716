package units

// LineLoad is a force spread along a length, in newtons per metre.
type LineLoad float64

const (
	NewtonPerMetre     LineLoad = 1
	KilonewtonPerMetre LineLoad = 1000
	PoundForcePerFoot  LineLoad = 0.45359237 * 9.80665 / 0.3048
	KipPerFoot         LineLoad = 1000 * 0.45359237 * 9.80665 / 0.3048
)

// In counts how many of the given unit make up the quantity.
func (q LineLoad) In(unit LineLoad) float64 { return float64(q) / float64(unit) }
