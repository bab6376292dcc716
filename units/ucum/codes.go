package ucum

import (
	"iter"

	"example.com/steelyard/units"
)

// codes pairs each code with the symbol of its unit in package units. The SI unit
// of a quantity comes first, and of two codes for one unit the shorter.
var codes = [...]struct{ code, symbol string }{
	{"m", "m"},
	{"mm", "mm"},
	{"cm", "cm"},
	{"[in_i]", "in"},
	{"[ft_i]", "ft"},
	{"[yd_i]", "yd"},

	{"m2", "m²"},
	{"cm2", "cm²"},
	{"mm2", "mm²"},
	{"[sin_i]", "in²"},
	{"[in_i]2", "in²"},
	{"[sft_i]", "ft²"},
	{"[ft_i]2", "ft²"},
	{"[syd_i]", "yd²"},
	{"[yd_i]2", "yd²"},

	{"kg", "kg"},
	{"g", "g"},
	{"t", "t"},
	{"[lb_av]", "lb"},
	{"[oz_av]", "oz"},
	{"[ston_av]", "short ton"},

	{"N", "N"},
	{"kN", "kN"},
	{"[lbf_av]", "lbf"},
	{"kgf", "kgf"},

	{"s", "s"},
	{"ms", "ms"},
	{"min", "min"},
	{"h", "h"},

	{"m/s", "m/s"},
	{"[ft_i]/s", "ft/s"},
	{"[ft_i]/min", "ft/min"},

	{"m/s2", "m/s²"},
	{"[ft_i]/s2", "ft/s²"},
	{"[g]", "gₙ"},

	{"rad", "rad"},
	{"deg", "deg"},
	{"'", "arcmin"},
	{"circ", "turn"},

	// Both orders stand for a moment and for an energy, as in package units.
	{"N.m", "N·m"},
	{"kN.m", "kN·m"},
	{"J", "J"},
	{"kJ", "kJ"},
	{"[lbf_av].[ft_i]", "lbf·ft"},
	{"[ft_i].[lbf_av]", "ft·lbf"},
	{"[lbf_av].[in_i]", "lbf·in"},
	{"[in_i].[lbf_av]", "lbf·in"},

	{"W", "W"},
	{"kW", "kW"},
	{"[HP]", "hp"},

	{"Pa", "Pa"},
	{"kPa", "kPa"},
	{"MPa", "MPa"},
	{"GPa", "GPa"},
	{"[psi]", "psi"},
	{"[lbf_av]/[in_i]2", "psi"},

	{"kg/m", "kg/m"},
	{"g/m", "g/m"},
	{"[lb_av]/[ft_i]", "lb/ft"},

	{"N/m", "N/m"},
	{"kN/m", "kN/m"},
	{"[lbf_av]/[ft_i]", "lbf/ft"},
	{"[lbf_av]/[in_i]", "lbf/in"},

	{"kg/m2", "kg/m²"},
	{"g/m2", "g/m²"},
	{"[oz_av]/[syd_i]", "oz/yd²"},
	{"[oz_av]/[yd_i]2", "oz/yd²"},
	{"[lb_av]/[sft_i]", "lb/ft²"},
	{"[lb_av]/[ft_i]2", "lb/ft²"},

	{"kg/m3", "kg/m³"},
	{"[lb_av]/[cft_i]", "lb/ft³"},
	{"[lb_av]/[ft_i]3", "lb/ft³"},
	{"[lb_av]/[cin_i]", "lb/in³"},
	{"[lb_av]/[in_i]3", "lb/in³"},

	{"m4", "m⁴"},
	{"cm4", "cm⁴"},
	{"mm4", "mm⁴"},
	{"[in_i]4", "in⁴"},

	{"m3", "m³"},
	{"cm3", "cm³"},
	{"mm3", "mm³"},
	{"[cin_i]", "in³"},
	{"[in_i]3", "in³"},

	{"kg.m2", "kg·m²"},
	{"[lb_av].[sft_i]", "lb·ft²"},
	{"[lb_av].[ft_i]2", "lb·ft²"},
	{"[lb_av].[sin_i]", "lb·in²"},
	{"[lb_av].[in_i]2", "lb·in²"},
}

// symbolOf gives the symbol in package units of the unit that a code stands for;
// empty for a code that is not in the table.
func symbolOf(code string) string {
	for i := range codes {
		if codes[i].code == code {
			return codes[i].symbol
		}
	}
	return ""
}

// Codes goes through the codes of the units of Q, that of the SI unit first.
func Codes[Q units.Quantity]() iter.Seq[string] {
	return func(yield func(string) bool) {
		for i := range codes {
			if _, err := units.Unit[Q](codes[i].symbol); err == nil && !yield(codes[i].code) {
				return
			}
		}
	}
}
