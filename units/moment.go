package units

// Moment is a force at an arm, in newton metres.
type Moment float64

const (
	NewtonMetre     Moment = 1
	KilonewtonMetre Moment = 1000
	PoundForceFoot  Moment = 0.45359237 * 9.80665 * 0.3048
	PoundForceInch  Moment = 0.45359237 * 9.80665 * 0.0254
	KipFoot         Moment = 1000 * 0.45359237 * 9.80665 * 0.3048
)

// In counts how many of the given unit make up the quantity.
func (q Moment) In(unit Moment) float64 { return float64(q) / float64(unit) }
