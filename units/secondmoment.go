package units

// SecondMoment is the second moment of area of a cross-section, in metres to the fourth.
type SecondMoment float64

const (
	MetreToTheFourth      SecondMoment = 1
	CentimetreToTheFourth SecondMoment = 1e-8
	MillimetreToTheFourth SecondMoment = 1e-12
	InchToTheFourth       SecondMoment = 0.0254 * 0.0254 * 0.0254 * 0.0254
)

// In counts how many of the given unit make up the quantity.
func (q SecondMoment) In(unit SecondMoment) float64 { return float64(q) / float64(unit) }
