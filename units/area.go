package units

// Area is the size of a surface or of a cross-section, in square metres.
type Area float64

const (
	SquareMetre      Area = 1
	SquareCentimetre Area = 1e-4
	SquareMillimetre Area = 1e-6
	SquareInch       Area = 0.0254 * 0.0254
	SquareFoot       Area = 0.3048 * 0.3048
	SquareYard       Area = 0.9144 * 0.9144
)

// In counts how many of the given unit make up the quantity.
func (q Area) In(unit Area) float64 { return float64(q) / float64(unit) }
