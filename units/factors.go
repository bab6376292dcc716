package units

// The exact definitions from which every customary unit follows. They stay
// untyped: a typed constant is already rounded, and a unit made of rounded ones
// would be rounded twice.
//
// Source: NIST SP 811 (2008), Appendix B.8, footnotes 22 and 23, and B.9.
const (
	kilogramsPerPound = 0.45359237
	kilogramsPerOunce = kilogramsPerPound / 16
	standardGravity   = 9.80665 // m/s²
	metresPerInch     = 0.0254
	metresPerFoot     = 12 * metresPerInch
	metresPerYard     = 3 * metresPerFoot
)
