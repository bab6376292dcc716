package units

// Acceleration is a change of speed in time, in metres per second squared.
type Acceleration float64

const (
	MetrePerSecondSquared Acceleration = 1
	FootPerSecondSquared  Acceleration = 0.3048
	StandardGravity       Acceleration = 9.80665
)

// In counts how many of the given unit make up the quantity.
func (q Acceleration) In(unit Acceleration) float64 { return float64(q) / float64(unit) }
