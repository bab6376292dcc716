package units

// Density is a mass spread through a volume, in kilograms per cubic metre.
type Density float64

const (
	KilogramPerCubicMetre Density = 1
	PoundPerCubicFoot     Density = 0.45359237 / (0.3048 * 0.3048 * 0.3048)
	PoundPerCubicInch     Density = 0.45359237 / (0.0254 * 0.0254 * 0.0254)
)

// In counts how many of the given unit make up the quantity.
func (q Density) In(unit Density) float64 { return float64(q) / float64(unit) }
