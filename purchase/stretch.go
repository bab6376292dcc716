package purchase

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// StretchModulus of a rope is its EA over the square of its nominal diameter. A rule
// of thumb gives the elastic stretch of wire rope as G·W/D² per cent of its length, W in lbf
// and D in inches, with a G for each construction: then EA is D²·100/G, and these are 100/G.
//
// The rule is common practice; other published figures for one construction spread
// by 30 % either way. Take EA from the maker where the answer matters.
const (
	StretchModulus7x7Galvanised  units.Stress = 100 / 1.07e-5 * units.PoundForcePerSquareInch
	StretchModulus7x19Galvanised units.Stress = 100 / 1.40e-5 * units.PoundForcePerSquareInch
	StretchModulus7x19Stainless  units.Stress = 100 / 1.62e-5 * units.PoundForcePerSquareInch
	StretchModulus6x19SteelCore  units.Stress = 100 / 1.36e-5 * units.PoundForcePerSquareInch // galvanised, independent wire rope core
	StretchModulus1x19Galvanised units.Stress = 100 / 6.98e-6 * units.PoundForcePerSquareInch // a strand, not for running over sheaves
)

// RopeEA is the EA of a rope of given diameter by its stretch modulus, such as
// [StretchModulus7x19Galvanised]: modulus·D².
//
// The errors are *units.FieldError, joined, with the fields "diameter", "modulus".
func RopeEA(diameter units.Length, modulus units.Stress) (units.Force, error) {
	return bySquare("diameter", diameter, "modulus", modulus, "the stretch modulus of the rope")
}

// Rules of thumb for the breaking strength of fibre rope, for [BreakingByRule]. Source:
// US Navy Builder 3 & 2, vol. 1.
const (
	ManilaRule units.Stress = 900 * units.PoundForcePerSquareInch
	NylonRule  units.Stress = 2400 * units.PoundForcePerSquareInch
)

// BreakingByRule is the breaking strength of fibre rope by a rule of thumb, such as
// [ManilaRule]: rule·C², with C the length round the rope (not its diameter: about 3.14
// times that). Only for rope of which nothing better is known.
//
// The errors are *units.FieldError, joined, with the fields "round", "rule".
func BreakingByRule(round units.Length, rule units.Stress) (units.Force, error) {
	return bySquare("round", round, "rule", rule, "the strength by the rule, per square of the length round the rope")
}

func bySquare(lengthField string, length units.Length, stressField string, stress units.Stress, what string) (units.Force, error) {
	var p check.Problems
	check.Positive(&p, lengthField, length, "a length across or round the rope")
	check.Positive(&p, stressField, stress, what)
	if err := p.Err(); err != nil {
		return 0, err
	}
	return stress.Over(length.By(length)), nil
}
