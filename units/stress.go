package units

// Stress is a force spread over an area, in pascals.
type Stress float64

const (
	Pascal                  Stress = 1
	Kilopascal              Stress = 1e3
	Megapascal              Stress = 1e6
	Gigapascal              Stress = 1e9
	PoundForcePerSquareInch Stress = 0.45359237 * 9.80665 / (0.0254 * 0.0254)
	KipPerSquareInch        Stress = 1000 * 0.45359237 * 9.80665 / (0.0254 * 0.0254)
)

// In counts how many of the given unit make up the quantity.
func (q Stress) In(unit Stress) float64 { return float64(q) / float64(unit) }
