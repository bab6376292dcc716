package purchase

import (
	"math"

	"example.com/steelyard/units"
)

// Vector is a force in the plane of the set: Across is positive away from the
// arbor, towards the far end of the batten; Up is positive upward. A block that
// is pulled down carries a negative Up.
type Vector struct {
	Across units.Force `json:"across"`
	Up     units.Force `json:"up"`
}

// Size is the magnitude of the force, never negative.
func (v Vector) Size() units.Force {
	across, up := v.Across.In(units.Newton), v.Up.In(units.Newton)
	// Not math.Hypot, which rounds in its own way on some platforms.
	return units.Force(math.Sqrt(float64(across*across) + float64(up*up)))
}

// Add is the vector sum of two forces.
func (v Vector) Add(w Vector) Vector {
	return Vector{Across: v.Across + w.Across, Up: v.Up + w.Up}
}
