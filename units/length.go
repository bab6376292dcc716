package units

// Length is a distance, or a height above the stage deck, in metres.
type Length float64

const (
	Metre      Length = 1
	Millimetre Length = 0.001
	Centimetre Length = 0.01
	Inch       Length = 0.0254
	Foot       Length = 0.3048
	Yard       Length = 0.9144
)

// In counts how many of the given unit make up the quantity.
func (q Length) In(unit Length) float64 { return float64(q) / float64(unit) }
