package units

// Quantity is any of the package's quantities: the closed set that Parse, Ratio,
// Sum and Abs work on.
type Quantity interface {
	Length | Area | Mass | Force | Acceleration | Moment | Stress | LineMass | LineLoad | AreaMass | Density |
		SecondMoment | SectionModulus
}
