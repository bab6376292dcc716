package units

// AreaMass is a mass spread over an area, such as a cloth's, in kilograms per square metre.
type AreaMass float64

const (
	KilogramPerSquareMetre AreaMass = 1
	GramPerSquareMetre     AreaMass = 0.001
	OuncePerSquareYard     AreaMass = 0.45359237 / 16 / (0.9144 * 0.9144)
	PoundPerSquareFoot     AreaMass = 0.45359237 / (0.3048 * 0.3048)
)

// In counts how many of the given unit make up the quantity.
func (q AreaMass) In(unit AreaMass) float64 { return float64(q) / float64(unit) }
