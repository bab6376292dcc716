package units

// Mass is how much matter a thing holds, in kilograms.
type Mass float64

const (
	Kilogram Mass = 1
	Gram     Mass = 0.001
	Tonne    Mass = 1000
	Pound    Mass = 0.45359237
	Ounce    Mass = 0.45359237 / 16
	ShortTon Mass = 2000 * 0.45359237
)

// In counts how many of the given unit make up the quantity.
func (q Mass) In(unit Mass) float64 { return float64(q) / float64(unit) }
