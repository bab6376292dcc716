package load

import (
	"example.com/steelyard/internal/beam"
	"example.com/steelyard/units"
)

// Densities of steel. The two differ by one part in a thousand: each is the one
// behind its tables, so take the one that your tables are made with.
const (
	// SteelDensity is behind metric section tables: 7850 kg/m³.
	SteelDensity units.Density = 7850 * units.KilogramPerCubicMetre
	// PipeSteelDensity is behind US pipe weight tables: 0.2833 lb/in³, which gives their
	// 10.68·(D−t)·t lb/ft.
	PipeSteelDensity units.Density = 0.2833 * units.PoundPerCubicInch
)

// Moduli of elasticity of steel. Sources differ by up to 5 %, so it is an input, and there
// is no default. It has no part in tensions, moments and stress on rigid lines,
// only in how far the pipe bends.
const (
	// SteelModulusUS is 29 000 ksi, as in US structural practice (from memory).
	SteelModulusUS units.Stress = 29_000 * units.KipPerSquareInch
	// SteelModulusEN is 210 GPa, as in European structural practice and on scaffold tube data sheets.
	SteelModulusEN units.Stress = 210 * units.Gigapascal
)

// Tube is a round pipe. Its wall may be the nominal one, which weight tables go by, or
// a design wall, which strength is reckoned with where the standard lets the wall run
// thin (0.93 of the nominal for welded ASTM A53 pipe in US steel design): the choice
// is the caller's, and moves the second moment of area of a 1-1/2 in pipe by 5.5 %.
// A Tube with a design wall is lighter than the pipe that hangs; put the
// difference into the density or the batten's Fittings.
//
// A wall of half the outer diameter is a solid bar. The zero value is no tube at all, has
// no mass and no strength, and is refused by [Batten.Rig].
type Tube struct {
	Outer   units.Length  `json:"outer"`   // outer diameter
	Wall    units.Length  `json:"wall"`    // wall thickness
	Density units.Density `json:"density"` // of the material
	Modulus units.Stress  `json:"modulus"` // of elasticity of the material
}

// Area is the area of the material's cross-section, π(D−t)t.
func (t Tube) Area() units.Area {
	a, _, _ := beam.Ring(float64(t.Outer), float64(t.Wall))
	return units.Area(a)
}

// SecondMoment is the second moment of area, π(D⁴−d⁴)/64.
func (t Tube) SecondMoment() units.SecondMoment {
	_, i, _ := beam.Ring(float64(t.Outer), float64(t.Wall))
	return units.SecondMoment(i)
}

// SectionModulus is the elastic section modulus, π(D⁴−d⁴)/32D.
func (t Tube) SectionModulus() units.SectionModulus {
	_, _, s := beam.Ring(float64(t.Outer), float64(t.Wall))
	return units.SectionModulus(s)
}

// LineMass is the mass per length.
func (t Tube) LineMass() units.LineMass { return t.Density.Over(t.Area()) }
