package load

import (
	"math"

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
// thin: the choice is the caller's, and moves the second moment of area of a 1-1/2 in
// pipe by 5.5 %. A Tube with a design wall and the density of steel is lighter than the
// pipe that hangs: [Tube.Thinned] goes from the nominal wall to another and keeps the weight.
// [StandardPipe] knows sizes by name.
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

// Thinned is the same pipe reckoned with a share of its wall, more than 0 and no more
// than 1. Its outer diameter stays, and so does its weight: the density goes up for it.
//
// Two shares are in use with ASTM A53 pipe. Steel design in the US reckons welded
// pipe with 0.93 of its nominal wall (from memory; AISC Shapes Database v16.0 has a
// 1-1/2 in pipe of 0.145 in with 0.135 in). The standard lets the wall at any one
// point be as thin as 0.875 of the nominal. Which to take, if any, is the caller's
// choice: 1 is the nominal wall of the usual tables, and gives the greatest strength.
//
// Any other share, or one that leaves next to nothing, gives a tube that [Batten.Rig]
// refuses for its wall. A tube with no wall, or more than half its diameter, comes back
// as it is, and is refused too.
func (t Tube) Thinned(share float64) Tube {
	// A solid bar's wall may come out a rounding over half its diameter.
	if !(t.Wall > 0 && t.Wall <= t.Outer.Scale(0.5*(1+1e-12))) {
		return t
	}
	thin := t
	thin.Wall = t.Wall.Scale(share)
	times := units.Ratio(t.Area(), thin.Area()) // infinite where no area is left
	if !(share <= 1 && times < math.Inf(1)) {
		t.Wall = 0
		return t
	}
	thin.Density = t.Density.Scale(times)
	return thin
}
