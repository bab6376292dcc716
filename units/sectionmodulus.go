package units

// SectionModulus is the elastic section modulus of a cross-section, in cubic metres.
type SectionModulus float64

const (
	CubicMetre      SectionModulus = 1
	CubicCentimetre SectionModulus = 1e-6
	CubicMillimetre SectionModulus = 1e-9
	CubicInch       SectionModulus = 0.0254 * 0.0254 * 0.0254
)

// In counts how many of the given unit make up the quantity.
func (q SectionModulus) In(unit SectionModulus) float64 { return float64(q) / float64(unit) }
