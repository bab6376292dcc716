package units

// LineMass is a mass spread along a length, in kilograms per metre.
type LineMass float64

const (
	KilogramPerMetre    LineMass = 1
	GramPerMetre        LineMass = 0.001
	PoundPerFoot        LineMass = 0.45359237 / 0.3048
	PoundPerHundredFeet LineMass = 0.45359237 / 30.48
)

// In counts how many of the given unit make up the quantity.
func (q LineMass) In(unit LineMass) float64 { return float64(q) / float64(unit) }
