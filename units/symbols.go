package units

import "math/big"

// unit is one way to write a quantity.
type unit struct {
	symbol  string   // as it is printed
	aliases []string // other spellings, in the form that unitKey gives
	num     string   // exact number of SI units in it, as num/den
	den     string   // empty for 1
}

// factor gives the exact number of SI units in u.
func (u *unit) factor() *big.Rat {
	r, _ := new(big.Rat).SetString(u.num)
	if u.den != "" {
		d, _ := new(big.Rat).SetString(u.den)
		r.Quo(r, d)
	}
	return r
}

// reading is how a system prints a quantity: the symbol of one of its units, and
// the decimals that Format keeps.
type reading struct {
	symbol string
	places int
}

// dimension is what the package knows about one quantity.
type dimension struct {
	name    string // in the middle of a sentence
	want    string // with an example in both systems
	units   []unit // the SI unit first
	us      reading
	metric  reading
	fineUS  reading // where set, for values under 1 ft²
	fineMet reading // where set, for values under 0.1 m²
}

// si is the symbol of the coherent SI unit.
func (d *dimension) si() string { return d.units[0].symbol }

// unit finds a unit by its printed symbol.
func (d *dimension) unit(symbol string) *unit {
	for i := range d.units {
		if d.units[i].symbol == symbol {
			return &d.units[i]
		}
	}
	return &d.units[0]
}

// spelled finds a unit by any spelling, in the form that unitKey gives.
func (d *dimension) spelled(key string) *unit {
	for i := range d.units {
		u := &d.units[i]
		if u.symbol == key {
			return u
		}
		for _, alias := range u.aliases {
			if alias == key {
				return u
			}
		}
	}
	return nil
}

// dimensions holds the table of all units. Nothing writes to it.
var dimensions = [...]*dimension{
	&lengthDimension, &areaDimension, &massDimension, &forceDimension, &accelerationDimension, &momentDimension,
	&stressDimension, &lineMassDimension, &lineLoadDimension, &areaMassDimension, &densityDimension,
	&secondMomentDimension, &sectionModulusDimension, &timeDimension, &speedDimension, &angleDimension,
	&energyDimension, &powerDimension, &stiffnessDimension, &inertiaDimension,
}

// Exact factors that many units share; the rest is written out where it is used.
const (
	poundText      = "0.45359237"
	ounceText      = "0.028349523125"  // pound/16
	poundForceText = "4.4482216152605" // pound × standard gravity
	kipText        = "4448.2216152605"
	inchText       = "0.0254"
	footText       = "0.3048"
	squareInchText = "0.00064516"
	squareFootText = "0.09290304"
	squareYardText = "0.83612736"
	cubicInchText  = "0.000016387064"
	cubicFootText  = "0.028316846592"
	footPoundText  = "1.3558179483314004" // pound-force × foot
	// No decimal is π. These are the digits of math.Pi, far beyond what one
	// rounding to a float64 can show.
	piText = "3.14159265358979323846264338327950288419716939937510582097494459"
)

var lengthDimension = dimension{
	name: "length", want: `a length such as 24' 6 1/2" or 7.48 m`,
	units: []unit{
		{symbol: "m", aliases: []string{"metre", "metres", "meter", "meters"}, num: "1"},
		{symbol: "mm", aliases: []string{"millimetre", "millimetres", "millimeter", "millimeters"}, num: "0.001"},
		{symbol: "cm", aliases: []string{"centimetre", "centimetres", "centimeter", "centimeters"}, num: "0.01"},
		{symbol: "in", aliases: []string{`"`, "inch", "inches", "In", "IN"}, num: inchText},
		{symbol: "ft", aliases: []string{"'", "foot", "feet", "Ft", "FT"}, num: footText},
		{symbol: "yd", aliases: []string{"yds", "yard", "yards", "YD"}, num: "0.9144"},
	},
	us: reading{"ft", 3}, metric: reading{"m", 3},
}

var areaDimension = dimension{
	name: "area", want: "an area such as 720 ft² or 67 m²",
	units: []unit{
		{symbol: "m²", aliases: []string{"m2", "sq·m"}, num: "1"},
		{symbol: "cm²", aliases: []string{"cm2", "sq·cm"}, num: "0.0001"},
		{symbol: "mm²", aliases: []string{"mm2", "sq·mm"}, num: "0.000001"},
		{symbol: "in²", aliases: []string{"in2", "sq·in"}, num: squareInchText},
		{symbol: "ft²", aliases: []string{"ft2", "sq·ft"}, num: squareFootText},
		{symbol: "yd²", aliases: []string{"yd2", "sq·yd"}, num: squareYardText},
	},
	us: reading{"ft²", 2}, fineUS: reading{"in²", 4}, metric: reading{"m²", 3}, fineMet: reading{"cm²", 3},
}

var massDimension = dimension{
	name: "mass", want: "a mass such as 12.5 lb or 5.7 kg",
	units: []unit{
		{symbol: "kg", aliases: []string{"kgs", "kilogram", "kilograms", "KG"}, num: "1"},
		{symbol: "g", aliases: []string{"gram", "grams"}, num: "0.001"},
		{symbol: "t", aliases: []string{"tonne", "tonnes"}, num: "1000"},
		{symbol: "lb", aliases: []string{"lbs", "lbm", "pound", "pounds", "Lb", "Lbs", "LB", "LBS"}, num: poundText},
		{symbol: "oz", aliases: []string{"ounce", "ounces", "OZ"}, num: ounceText},
		{symbol: "short ton", aliases: []string{"short·ton", "short·tons"}, num: "907.18474"},
	},
	us: reading{"lb", 2}, metric: reading{"kg", 2},
}

var forceDimension = dimension{
	name: "force", want: "a force such as 90 lbf or 0.4 kN",
	units: []unit{
		{symbol: "N", aliases: []string{"newton", "newtons"}, num: "1"},
		{symbol: "kN", aliases: []string{"kilonewton", "kilonewtons"}, num: "1000"},
		{symbol: "lbf", aliases: []string{"lbsf", "LBF"}, num: poundForceText},
		{symbol: "kip", aliases: []string{"kips", "KIP", "KIPS"}, num: kipText},
		{symbol: "kgf", aliases: []string{"kp"}, num: "9.80665"},
	},
	us: reading{"lbf", 1}, metric: reading{"kN", 3},
}

var accelerationDimension = dimension{
	name: "acceleration", want: "an acceleration such as 3 ft/s² or 1 m/s²",
	units: []unit{
		{symbol: "m/s²", aliases: []string{"m/s2"}, num: "1"},
		{symbol: "ft/s²", aliases: []string{"ft/s2"}, num: footText},
		{symbol: "gₙ", aliases: []string{"gn", "g_n"}, num: "9.80665"},
	},
	us: reading{"ft/s²", 3}, metric: reading{"m/s²", 3},
}

var momentDimension = dimension{
	name: "moment", want: "a moment such as 350 lbf·ft or 475 N·m",
	units: []unit{
		{symbol: "N·m", num: "1"},
		{symbol: "kN·m", num: "1000"},
		{symbol: "lbf·ft", aliases: []string{"ft·lbf"}, num: footPoundText},
		{symbol: "lbf·in", aliases: []string{"in·lbf"}, num: "0.1129848290276167"},
		{symbol: "kip·ft", aliases: []string{"ft·kip", "kip·foot"}, num: "1355.8179483314004"},
	},
	us: reading{"lbf·ft", 1}, metric: reading{"N·m", 1},
}

var stressDimension = dimension{
	name: "stress", want: "a stress such as 29000 ksi or 200 GPa",
	units: []unit{
		{symbol: "Pa", aliases: []string{"N/m2"}, num: "1"},
		{symbol: "kPa", aliases: []string{"kN/m2"}, num: "1000"},
		{symbol: "MPa", aliases: []string{"N/mm2"}, num: "1000000"},
		{symbol: "GPa", aliases: []string{"kN/mm2"}, num: "1000000000"},
		{symbol: "psi", aliases: []string{"lbf/in2", "PSI"}, num: poundForceText, den: squareInchText},
		{symbol: "ksi", aliases: []string{"kip/in2", "KSI"}, num: kipText, den: squareInchText},
	},
	us: reading{"ksi", 3}, metric: reading{"MPa", 2},
}

var lineMassDimension = dimension{
	name: "mass per length", want: "a mass per length such as 0.11 lb/ft or 0.16 kg/m",
	units: []unit{
		{symbol: "kg/m", num: "1"},
		{symbol: "g/m", num: "0.001"},
		{symbol: "lb/ft", aliases: []string{"lbs/ft", "lb/foot", "pounds/foot", "LB/FT"}, num: poundText, den: footText},
		{symbol: "lb/100 ft", aliases: []string{"lb/100ft", "lbs/100ft"}, num: poundText, den: "30.48"},
	},
	us: reading{"lb/ft", 3}, metric: reading{"kg/m", 3},
}

var lineLoadDimension = dimension{
	name: "force per length", want: "a force per length such as 30 lbf/ft or 440 N/m",
	units: []unit{
		{symbol: "N/m", num: "1"},
		{symbol: "kN/m", aliases: []string{"N/mm"}, num: "1000"},
		{symbol: "lbf/ft", aliases: []string{"lbf/foot", "plf"}, num: poundForceText, den: footText},
		{symbol: "lbf/in", aliases: []string{"lbf/inch", "pli"}, num: poundForceText, den: inchText},
		{symbol: "kip/ft", aliases: []string{"kips/ft", "klf"}, num: kipText, den: footText},
	},
	us: reading{"lbf/ft", 2}, metric: reading{"N/m", 1},
}

var areaMassDimension = dimension{
	name: "mass per area", want: "a mass per area such as 15 oz/yd² or 509 g/m²",
	units: []unit{
		{symbol: "kg/m²", aliases: []string{"kg/m2"}, num: "1"},
		{symbol: "g/m²", aliases: []string{"g/m2", "gsm"}, num: "0.001"},
		{symbol: "oz/yd²", aliases: []string{"oz/yd2", "oz/sq·yd"}, num: ounceText, den: squareYardText},
		{symbol: "lb/ft²", aliases: []string{"lb/ft2", "lbs/ft2", "lb/sq·ft"}, num: poundText, den: squareFootText},
	},
	us: reading{"oz/yd²", 2}, metric: reading{"g/m²", 1},
}

var densityDimension = dimension{
	name: "density", want: "a density such as 490 lb/ft³ or 7850 kg/m³",
	units: []unit{
		{symbol: "kg/m³", aliases: []string{"kg/m3"}, num: "1"},
		{symbol: "lb/ft³", aliases: []string{"lb/ft3", "lbs/ft3", "pcf"}, num: poundText, den: cubicFootText},
		{symbol: "lb/in³", aliases: []string{"lb/in3", "lbs/in3"}, num: poundText, den: cubicInchText},
	},
	us: reading{"lb/ft³", 1}, metric: reading{"kg/m³", 1},
}

var secondMomentDimension = dimension{
	name: "second moment of area", want: "a second moment of area such as 0.31 in⁴ or 12.9 cm⁴",
	units: []unit{
		{symbol: "m⁴", aliases: []string{"m4"}, num: "1"},
		{symbol: "cm⁴", aliases: []string{"cm4"}, num: "0.00000001"},
		{symbol: "mm⁴", aliases: []string{"mm4"}, num: "0.000000000001"},
		{symbol: "in⁴", aliases: []string{"in4"}, num: "0.0000004162314256"},
	},
	us: reading{"in⁴", 4}, metric: reading{"cm⁴", 3},
}

var sectionModulusDimension = dimension{
	name: "section modulus", want: "a section modulus such as 0.326 in³ or 5.34 cm³",
	units: []unit{
		{symbol: "m³", aliases: []string{"m3"}, num: "1"},
		{symbol: "cm³", aliases: []string{"cm3"}, num: "0.000001"},
		{symbol: "mm³", aliases: []string{"mm3"}, num: "0.000000001"},
		{symbol: "in³", aliases: []string{"in3"}, num: cubicInchText},
	},
	us: reading{"in³", 4}, metric: reading{"cm³", 3},
}

var timeDimension = dimension{
	name: "time", want: "a time such as 2.5 s or 1 min",
	units: []unit{
		{symbol: "s", aliases: []string{"sec", "secs", "second", "seconds"}, num: "1"},
		{symbol: "ms", aliases: []string{"millisecond", "milliseconds"}, num: "0.001"},
		{symbol: "min", aliases: []string{"mins", "minute", "minutes"}, num: "60"},
		{symbol: "h", aliases: []string{"hr", "hrs", "hour", "hours"}, num: "3600"},
	},
	us: reading{"s", 2}, metric: reading{"s", 2},
}

var speedDimension = dimension{
	name: "speed", want: "a speed such as 3 ft/s or 0.9 m/s",
	units: []unit{
		{symbol: "m/s", aliases: []string{"m/sec", "metres/second", "meters/second"}, num: "1"},
		{symbol: "ft/s", aliases: []string{"ft/sec", "fps", "feet/second"}, num: footText},
		{symbol: "ft/min", aliases: []string{"fpm", "feet/minute"}, num: footText, den: "60"},
	},
	us: reading{"ft/s", 2}, metric: reading{"m/s", 3},
}

var angleDimension = dimension{
	name: "angle", want: "an angle such as 1.5 deg or 0.026 rad",
	units: []unit{
		{symbol: "rad", aliases: []string{"radian", "radians"}, num: "1"},
		{symbol: "deg", aliases: []string{"°", "º", "degree", "degrees"}, num: piText, den: "180"},
		{symbol: "arcmin", aliases: []string{"arc·min", "arcminute", "arcminutes", "arc·minute", "arc·minutes"}, num: piText, den: "10800"},
		{symbol: "turn", aliases: []string{"turns", "rev", "revs", "revolution", "revolutions"}, num: piText, den: "0.5"},
	},
	us: reading{"deg", 2}, metric: reading{"deg", 2},
}

var energyDimension = dimension{
	name: "energy", want: "an energy such as 350 ft·lbf or 475 J",
	units: []unit{
		{symbol: "J", aliases: []string{"joule", "joules"}, num: "1"},
		{symbol: "kJ", aliases: []string{"kilojoule", "kilojoules"}, num: "1000"},
		{symbol: "ft·lbf", aliases: []string{"lbf·ft"}, num: footPoundText},
	},
	us: reading{"ft·lbf", 1}, metric: reading{"J", 1},
}

var powerDimension = dimension{
	name: "power", want: "a power such as 0.5 hp or 0.4 kW",
	units: []unit{
		{symbol: "W", aliases: []string{"watt", "watts"}, num: "1"},
		{symbol: "kW", aliases: []string{"kilowatt", "kilowatts"}, num: "1000"},
		{symbol: "hp", aliases: []string{"HP", "horsepower"}, num: "745.69987158227022"}, // 550 ft·lbf/s
	},
	us: reading{"hp", 3}, metric: reading{"kW", 3},
}

var stiffnessDimension = dimension{
	name: "stiffness", want: "a stiffness such as 600 lbf/in or 105 kN/m",
	units: []unit{
		{symbol: "N/m", num: "1"},
		{symbol: "kN/m", aliases: []string{"N/mm"}, num: "1000"},
		{symbol: "lbf/in", aliases: []string{"lbf/inch"}, num: poundForceText, den: inchText},
		{symbol: "lbf/ft", aliases: []string{"lbf/foot"}, num: poundForceText, den: footText},
	},
	us: reading{"lbf/in", 1}, metric: reading{"kN/m", 3},
}

var inertiaDimension = dimension{
	name: "mass moment of inertia", want: "a mass moment of inertia such as 3.2 lb·ft² or 0.135 kg·m²",
	units: []unit{
		{symbol: "kg·m²", aliases: []string{"kg·m2"}, num: "1"},
		{symbol: "lb·ft²", aliases: []string{"lb·ft2", "lbs·ft2"}, num: "0.0421401100938048"},
		{symbol: "lb·in²", aliases: []string{"lb·in2", "lbs·in2"}, num: "0.0002926396534292"},
	},
	us: reading{"lb·ft²", 3}, metric: reading{"kg·m²", 4},
}
