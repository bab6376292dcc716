package purchase

import (
	"strconv"
	"strings"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// RopeStock is a rope as it is bought, wire or fibre: what the maker's sheet or the
// tag says of it. The zero value is refused.
type RopeStock struct {
	Name     string         `json:"name,omitempty"`
	Diameter units.Length   `json:"diameter"`       // nominal
	Breaking units.Force    `json:"breaking"`       // least breaking strength of new rope, before terminations and bends
	Mass     units.LineMass `json:"mass,omitzero"`  // per length; zero: not given
	EA       units.Force    `json:"ea,omitzero"`    // axial stiffness: the pull over the share by which it grows longer; zero: not given
	Basis    string         `json:"basis,omitzero"` // where the figures are from, in a few words
}

// Validate tells everything that is wrong: a diameter or strength that is missing, a
// figure that is negative or not finite. The error joins a *units.FieldError for each.
func (r RopeStock) Validate() error {
	var p check.Problems
	check.Positive(&p, "diameter", r.Diameter, "the nominal diameter of the rope")
	check.Positive(&p, "breaking", r.Breaking, "the least breaking strength of the rope")
	check.NotNegative(&p, "mass", r.Mass)
	if r.EA != 0 {
		check.Positive(&p, "ea", r.EA, "the axial stiffness of the rope, or none")
	}
	return p.Err()
}

// Stretch is how much longer a length of the rope grows under a pull, while it is
// elastic: pull·length/EA. New wire rope sets by up to 1 % beside that as its wires bed
// in (common practice).
//
// The errors are *units.FieldError, joined, with the fields "ea", "pull", "length"; an EA that
// is not given is one.
func (r RopeStock) Stretch(pull units.Force, length units.Length) (units.Length, error) {
	var p check.Problems
	check.Positive(&p, "ea", r.EA, "the axial stiffness of the rope, from its maker or as StretchModulus says")
	check.NotNegative(&p, "pull", pull)
	check.NotNegative(&p, "length", length)
	if err := p.Err(); err != nil {
		return 0, err
	}
	return length.Scale(units.Ratio(pull, r.EA)), nil
}

// What basis a standard rope's figures stand on.
const (
	basisCable  = "FAA AC 43.13-1B (1998), Table 7-3; stretch rule (common practice)"
	basisCable7 = "FAA AC 43.13-1B (1998), Table 7-3; MIL-W-83420 from memory (mass); stretch rule (common practice)"
	basisManila = "OSHA 29 CFR 1910.184, Table N-184-16 (strength is five times its vertical rating)"
	basisCore   = "engineering reference page (common practice)"
)

// Strengths of cable are those of the table, in lbf, which prints pounds. Its
// composition A is carbon steel with zinc or tin, composition B corrosion resistant
// steel. The table has no masses: those of 7x19 are from memory, the same for both.
//
// Ratings of manila are for a vertical sling; the design factor behind them is 5 by
// back-calculation: for 3/4 in that makes 4850 lbf, where a supplier prints 4860.
var standardRopes = [...]RopeStock{
	cable7x7("1/16 in 7x7 galvanised", 1.0/16, 480, StretchModulus7x7Galvanised),
	cable7x7("3/32 in 7x7 galvanised", 3.0/32, 920, StretchModulus7x7Galvanised),
	cable7x7("1/16 in 7x7 stainless", 1.0/16, 480, 0),
	cable7x7("3/32 in 7x7 stainless", 3.0/32, 920, 0),

	cable7x19("3/32 in 7x19 galvanised", 3.0/32, 1000, 1.74, StretchModulus7x19Galvanised),
	cable7x19("1/8 in 7x19 galvanised", 1.0/8, 2000, 2.9, StretchModulus7x19Galvanised),
	cable7x19("5/32 in 7x19 galvanised", 5.0/32, 2800, 4.5, StretchModulus7x19Galvanised),
	cable7x19("3/16 in 7x19 galvanised", 3.0/16, 4200, 6.5, StretchModulus7x19Galvanised),
	cable7x19("7/32 in 7x19 galvanised", 7.0/32, 5600, 8.6, StretchModulus7x19Galvanised),
	cable7x19("1/4 in 7x19 galvanised", 1.0/4, 7000, 11.0, StretchModulus7x19Galvanised),
	cable7x19("9/32 in 7x19 galvanised", 9.0/32, 8000, 13.9, StretchModulus7x19Galvanised),
	cable7x19("5/16 in 7x19 galvanised", 5.0/16, 9800, 17.3, StretchModulus7x19Galvanised),
	cable7x19("11/32 in 7x19 galvanised", 11.0/32, 12500, 20.7, StretchModulus7x19Galvanised),
	cable7x19("3/8 in 7x19 galvanised", 3.0/8, 14400, 24.3, StretchModulus7x19Galvanised),

	cable7x19("3/32 in 7x19 stainless", 3.0/32, 920, 1.74, StretchModulus7x19Stainless),
	cable7x19("1/8 in 7x19 stainless", 1.0/8, 1760, 2.9, StretchModulus7x19Stainless),
	cable7x19("5/32 in 7x19 stainless", 5.0/32, 2400, 4.5, StretchModulus7x19Stainless),
	cable7x19("3/16 in 7x19 stainless", 3.0/16, 3700, 6.5, StretchModulus7x19Stainless),
	cable7x19("7/32 in 7x19 stainless", 7.0/32, 5000, 8.6, StretchModulus7x19Stainless),
	cable7x19("1/4 in 7x19 stainless", 1.0/4, 6400, 11.0, StretchModulus7x19Stainless),
	cable7x19("9/32 in 7x19 stainless", 9.0/32, 7800, 13.9, StretchModulus7x19Stainless),
	cable7x19("5/16 in 7x19 stainless", 5.0/16, 9000, 17.3, StretchModulus7x19Stainless),
	cable7x19("3/8 in 7x19 stainless", 3.0/8, 12000, 24.3, StretchModulus7x19Stainless), // 11/32 is blank in the table

	standardRope("1/4 in 6x19 fibre core", 1.0/4, 5480, 11, basisCore), // improved plow steel, bright
	standardRope("5/16 in 6x19 fibre core", 5.0/16, 8520, 16, basisCore),
	standardRope("3/8 in 6x19 fibre core", 3.0/8, 12200, 24, basisCore),
	standardRope("1/2 in 6x19 fibre core", 1.0/2, 21400, 42, basisCore),

	standardRope("1/2 in manila", 1.0/2, 5*480, 7.5, basisManila),
	standardRope("9/16 in manila", 9.0/16, 5*620, 10.4, basisManila),
	standardRope("5/8 in manila", 5.0/8, 5*790, 13.3, basisManila),
	standardRope("3/4 in manila", 3.0/4, 5*970, 16.7, basisManila),
	standardRope("13/16 in manila", 13.0/16, 5*1170, 19.5, basisManila),
	standardRope("7/8 in manila", 7.0/8, 5*1390, 22.5, basisManila),
	standardRope("1 in manila", 1, 5*1620, 27.0, basisManila),

	standardRope("3/4 in polyester and polyolefin", 3.0/4, 8400, 13.5, basisCore), // three-strand
}

func standardRope(name string, inches, pounds, perHundredFeet float64, basis string) RopeStock {
	return RopeStock{
		Name: name, Diameter: units.Inch.Scale(inches), Breaking: units.PoundForce.Scale(pounds),
		Mass: units.PoundPerHundredFeet.Scale(perHundredFeet), Basis: basis,
	}
}

func cable7x7(name string, inches, pounds float64, modulus units.Stress) RopeStock {
	r := standardRope(name, inches, pounds, 0, basisCable)
	r.EA = modulus.Over(r.Diameter.By(r.Diameter))
	return r
}

func cable7x19(name string, inches, pounds, perHundredFeet float64, modulus units.Stress) RopeStock {
	r := standardRope(name, inches, pounds, perHundredFeet, basisCable7)
	r.EA = modulus.Over(r.Diameter.By(r.Diameter))
	return r
}

// StandardRope gives a rope of a published table by its name, one of [StandardRopes] such
// as "1/4 in 7x19 galvanised". Its Basis says where the figures are from; a figure that
// no source gives is zero. Galvanised is carbon steel, coated; stainless is corrosion
// resistant steel.
//
// The figures are those of new rope to that specification: the rope in a house may be
// another, and worn. The maker's certificate goes before a table.
//
// The error for any other name is a *units.FieldError of kind ErrUnknown that lists the
// names.
func StandardRope(name string) (RopeStock, error) {
	for _, r := range standardRopes {
		if r.Name == name {
			return r, nil
		}
	}
	return RopeStock{}, &units.FieldError{
		Value: strconv.Quote(name), Want: "one of " + strings.Join(StandardRopes(), ", "), Err: units.ErrUnknown,
	}
}

// StandardRopes lists the names that [StandardRope] knows: wire, then fibre. The slice
// is the caller's.
func StandardRopes() []string {
	names := make([]string, len(standardRopes))
	for i, r := range standardRopes {
		names[i] = r.Name
	}
	return names
}
