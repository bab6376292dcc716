package units

import "math/big"

// unit is one way to write a quantity. It holds num/den × 10^tens SI units, where
// a den of 0 is 1.
type unit struct {
	symbol   string   // as it is printed
	aliases  []string // other spellings, in the form that unitKey gives
	num, den uint64
	tens     int
	long     string // num with all its digits, where the word holds only the first of them
}

// factor gives the exact number of SI units in u.
func (u *unit) factor() *big.Rat {
	r := new(big.Rat).SetInt(new(big.Int).SetUint64(u.num))
	if u.long != "" {
		r.SetString(u.long)
	}
	r = shift(r, u.tens)
	return r.Quo(r, new(big.Rat).SetInt(new(big.Int).SetUint64(max(u.den, 1))))
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

// spelled finds a unit by any spelling, in the form that unitKey gives. The
// symbols come first, for they are the commonest; a look at the length and the
// first byte is all that most of the others need.
func (d *dimension) spelled(key string) *unit {
	if key == "" {
		return nil
	}
	for i := range d.units {
		if s := d.units[i].symbol; len(s) == len(key) && s[0] == key[0] && s == key {
			return &d.units[i]
		}
	}
	for i := range d.units {
		for _, s := range d.units[i].aliases {
			if len(s) == len(key) && s[0] == key[0] && s == key {
				return &d.units[i]
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

// The digits of exact factors that many units share. Beside each stands the power
// of ten that its unit gives as tens.
const (
	poundDigits      = 45359237          // kg, -8
	poundForceDigits = 44482216152605    // N, -13: pound × standard gravity
	inchDigits       = 254               // m, -4
	footDigits       = 3048              // m, -4
	squareInchDigits = 64516             // m², -8
	squareFootDigits = 9290304           // m², -8
	squareYardDigits = 83612736          // m², -8
	cubicInchDigits  = 16387064          // m³, -12
	cubicFootDigits  = 28316846592       // m³, -12
	footPoundDigits  = 13558179483314004 // J, -16: pound-force × foot

	// No decimal is π. The digits go far beyond what one rounding to a float64 can
	// show; in a word there is room for nineteen of them, -18.
	piDigits  = 3141592653589793238
	piText    = "3141592653589793238.46264338327950288419716939937510582097494459"
	tauDigits = 6283185307179586476 // 2π
	tauText   = "6283185307179586476.92528676655900576839433879875021164194988918"
)

var lengthDimension = dimension{
	name: "length", want: `a length such as 24' 6 1/2" or 7.48 m`,
	units: []unit{
		{symbol: "m", aliases: []string{"metre", "metres", "meter", "meters"}, num: 1},
		{symbol: "mm", aliases: []string{"millimetre", "millimetres", "millimeter", "millimeters"}, num: 1, tens: -3},
		{symbol: "cm", aliases: []string{"centimetre", "centimetres", "centimeter", "centimeters"}, num: 1, tens: -2},
		{symbol: "in", aliases: []string{`"`, "inch", "inches", "In", "IN"}, num: inchDigits, tens: -4},
		{symbol: "ft", aliases: []string{"'", "foot", "feet", "Ft", "FT"}, num: footDigits, tens: -4},
		{symbol: "yd", aliases: []string{"yds", "yard", "yards", "YD"}, num: 9144, tens: -4},
	},
	us: reading{"ft", 3}, metric: reading{"m", 3},
}

var areaDimension = dimension{
	name: "area", want: "an area such as 720 ft² or 67 m²",
	units: []unit{
		{symbol: "m²", aliases: []string{"m2", "sq·m"}, num: 1},
		{symbol: "cm²", aliases: []string{"cm2", "sq·cm"}, num: 1, tens: -4},
		{symbol: "mm²", aliases: []string{"mm2", "sq·mm"}, num: 1, tens: -6},
		{symbol: "in²", aliases: []string{"in2", "sq·in"}, num: squareInchDigits, tens: -8},
		{symbol: "ft²", aliases: []string{"ft2", "sq·ft"}, num: squareFootDigits, tens: -8},
		{symbol: "yd²", aliases: []string{"yd2", "sq·yd"}, num: squareYardDigits, tens: -8},
	},
	us: reading{"ft²", 2}, fineUS: reading{"in²", 4}, metric: reading{"m²", 3}, fineMet: reading{"cm²", 3},
}

var massDimension = dimension{
	name: "mass", want: "a mass such as 12.5 lb or 5.7 kg",
	units: []unit{
		{symbol: "kg", aliases: []string{"kgs", "kilogram", "kilograms", "KG"}, num: 1},
		{symbol: "g", aliases: []string{"gram", "grams"}, num: 1, tens: -3},
		{symbol: "t", aliases: []string{"tonne", "tonnes"}, num: 1, tens: 3},
		{symbol: "lb", aliases: []string{"lbs", "lbm", "pound", "pounds", "Lb", "Lbs", "LB", "LBS"}, num: poundDigits, tens: -8},
		{symbol: "oz", aliases: []string{"ounce", "ounces", "OZ"}, num: poundDigits, den: 16, tens: -8},
		{symbol: "short ton", aliases: []string{"short·ton", "short·tons"}, num: 90718474, tens: -5},
	},
	us: reading{"lb", 2}, metric: reading{"kg", 2},
}

var forceDimension = dimension{
	name: "force", want: "a force such as 90 lbf or 0.4 kN",
	units: []unit{
		{symbol: "N", aliases: []string{"newton", "newtons"}, num: 1},
		{symbol: "kN", aliases: []string{"kilonewton", "kilonewtons"}, num: 1, tens: 3},
		{symbol: "lbf", aliases: []string{"lbsf", "LBF"}, num: poundForceDigits, tens: -13},
		{symbol: "kip", aliases: []string{"kips", "KIP", "KIPS"}, num: poundForceDigits, tens: -10},
		{symbol: "kgf", aliases: []string{"kp"}, num: 980665, tens: -5},
	},
	us: reading{"lbf", 1}, metric: reading{"kN", 3},
}

var accelerationDimension = dimension{
	name: "acceleration", want: "an acceleration such as 3 ft/s² or 1 m/s²",
	units: []unit{
		{symbol: "m/s²", aliases: []string{"m/s2"}, num: 1},
		{symbol: "ft/s²", aliases: []string{"ft/s2"}, num: footDigits, tens: -4},
		{symbol: "gₙ", aliases: []string{"gn", "g_n"}, num: 980665, tens: -5},
	},
	us: reading{"ft/s²", 3}, metric: reading{"m/s²", 3},
}

var momentDimension = dimension{
	name: "moment", want: "a moment such as 350 lbf·ft or 475 N·m",
	units: []unit{
		{symbol: "N·m", num: 1},
		{symbol: "kN·m", num: 1, tens: 3},
		{symbol: "lbf·ft", aliases: []string{"ft·lbf"}, num: footPoundDigits, tens: -16},
		{symbol: "lbf·in", aliases: []string{"in·lbf"}, num: 1129848290276167, tens: -16},
		{symbol: "kip·ft", aliases: []string{"ft·kip", "kip·foot"}, num: footPoundDigits, tens: -13},
	},
	us: reading{"lbf·ft", 1}, metric: reading{"N·m", 1},
}

var stressDimension = dimension{
	name: "stress", want: "a stress such as 29000 ksi or 200 GPa",
	units: []unit{
		{symbol: "Pa", aliases: []string{"N/m2"}, num: 1},
		{symbol: "kPa", aliases: []string{"kN/m2"}, num: 1, tens: 3},
		{symbol: "MPa", aliases: []string{"N/mm2"}, num: 1, tens: 6},
		{symbol: "GPa", aliases: []string{"kN/mm2"}, num: 1, tens: 9},
		{symbol: "psi", aliases: []string{"lbf/in2", "PSI"}, num: poundForceDigits, den: squareInchDigits, tens: -13 + 8},
		{symbol: "ksi", aliases: []string{"kip/in2", "KSI"}, num: poundForceDigits, den: squareInchDigits, tens: -10 + 8},
	},
	us: reading{"ksi", 3}, metric: reading{"MPa", 2},
}

var lineMassDimension = dimension{
	name: "mass per length", want: "a mass per length such as 0.11 lb/ft or 0.16 kg/m",
	units: []unit{
		{symbol: "kg/m", num: 1},
		{symbol: "g/m", num: 1, tens: -3},
		{symbol: "lb/ft", aliases: []string{"lbs/ft", "lb/foot", "pounds/foot", "LB/FT"}, num: poundDigits, den: footDigits, tens: -8 + 4},
		{symbol: "lb/100 ft", aliases: []string{"lb/100ft", "lbs/100ft"}, num: poundDigits, den: footDigits, tens: -8 + 2},
	},
	us: reading{"lb/ft", 3}, metric: reading{"kg/m", 3},
}

var lineLoadDimension = dimension{
	name: "force per length", want: "a force per length such as 30 lbf/ft or 440 N/m",
	units: []unit{
		{symbol: "N/m", num: 1},
		{symbol: "kN/m", aliases: []string{"N/mm"}, num: 1, tens: 3},
		{symbol: "lbf/ft", aliases: []string{"lbf/foot", "plf"}, num: poundForceDigits, den: footDigits, tens: -13 + 4},
		{symbol: "lbf/in", aliases: []string{"lbf/inch", "pli"}, num: poundForceDigits, den: inchDigits, tens: -13 + 4},
		{symbol: "kip/ft", aliases: []string{"kips/ft", "klf"}, num: poundForceDigits, den: footDigits, tens: -10 + 4},
	},
	us: reading{"lbf/ft", 2}, metric: reading{"N/m", 1},
}

var areaMassDimension = dimension{
	name: "mass per area", want: "a mass per area such as 15 oz/yd² or 509 g/m²",
	units: []unit{
		{symbol: "kg/m²", aliases: []string{"kg/m2"}, num: 1},
		{symbol: "g/m²", aliases: []string{"g/m2", "gsm"}, num: 1, tens: -3},
		{symbol: "oz/yd²", aliases: []string{"oz/yd2", "oz/sq·yd"}, num: poundDigits, den: 16 * squareYardDigits, tens: -8 + 8},
		{symbol: "lb/ft²", aliases: []string{"lb/ft2", "lbs/ft2", "lb/sq·ft"}, num: poundDigits, den: squareFootDigits, tens: -8 + 8},
	},
	us: reading{"oz/yd²", 2}, metric: reading{"g/m²", 1},
}

var densityDimension = dimension{
	name: "density", want: "a density such as 490 lb/ft³ or 7850 kg/m³",
	units: []unit{
		{symbol: "kg/m³", aliases: []string{"kg/m3"}, num: 1},
		{symbol: "lb/ft³", aliases: []string{"lb/ft3", "lbs/ft3", "pcf"}, num: poundDigits, den: cubicFootDigits, tens: -8 + 12},
		{symbol: "lb/in³", aliases: []string{"lb/in3", "lbs/in3"}, num: poundDigits, den: cubicInchDigits, tens: -8 + 12},
	},
	us: reading{"lb/ft³", 1}, metric: reading{"kg/m³", 1},
}

var secondMomentDimension = dimension{
	name: "second moment of area", want: "a second moment of area such as 0.31 in⁴ or 12.9 cm⁴",
	units: []unit{
		{symbol: "m⁴", aliases: []string{"m4"}, num: 1},
		{symbol: "cm⁴", aliases: []string{"cm4"}, num: 1, tens: -8},
		{symbol: "mm⁴", aliases: []string{"mm4"}, num: 1, tens: -12},
		{symbol: "in⁴", aliases: []string{"in4"}, num: 4162314256, tens: -16},
	},
	us: reading{"in⁴", 4}, metric: reading{"cm⁴", 3},
}

var sectionModulusDimension = dimension{
	name: "section modulus", want: "a section modulus such as 0.326 in³ or 5.34 cm³",
	units: []unit{
		{symbol: "m³", aliases: []string{"m3"}, num: 1},
		{symbol: "cm³", aliases: []string{"cm3"}, num: 1, tens: -6},
		{symbol: "mm³", aliases: []string{"mm3"}, num: 1, tens: -9},
		{symbol: "in³", aliases: []string{"in3"}, num: cubicInchDigits, tens: -12},
	},
	us: reading{"in³", 4}, metric: reading{"cm³", 3},
}

var timeDimension = dimension{
	name: "time", want: "a time such as 2.5 s or 1 min",
	units: []unit{
		{symbol: "s", aliases: []string{"sec", "secs", "second", "seconds"}, num: 1},
		{symbol: "ms", aliases: []string{"millisecond", "milliseconds"}, num: 1, tens: -3},
		{symbol: "min", aliases: []string{"mins", "minute", "minutes"}, num: 60},
		{symbol: "h", aliases: []string{"hr", "hrs", "hour", "hours"}, num: 3600},
	},
	us: reading{"s", 2}, metric: reading{"s", 2},
}

var speedDimension = dimension{
	name: "speed", want: "a speed such as 3 ft/s or 0.9 m/s",
	units: []unit{
		{symbol: "m/s", aliases: []string{"m/sec", "metres/second", "meters/second"}, num: 1},
		{symbol: "ft/s", aliases: []string{"ft/sec", "fps", "feet/second"}, num: footDigits, tens: -4},
		{symbol: "ft/min", aliases: []string{"fpm", "feet/minute"}, num: footDigits, den: 60, tens: -4},
	},
	us: reading{"ft/s", 2}, metric: reading{"m/s", 3},
}

var angleDimension = dimension{
	name: "angle", want: "an angle such as 1.5 deg or 0.026 rad",
	units: []unit{
		{symbol: "rad", aliases: []string{"radian", "radians"}, num: 1},
		{symbol: "deg", aliases: []string{"°", "º", "degree", "degrees"}, num: piDigits, den: 18, tens: -18 - 1, long: piText},
		{symbol: "arcmin", aliases: []string{"arc·min", "arcminute", "arcminutes", "arc·minute", "arc·minutes"}, num: piDigits, den: 108, tens: -18 - 2, long: piText},
		{symbol: "turn", aliases: []string{"turns", "rev", "revs", "revolution", "revolutions"}, num: tauDigits, tens: -18, long: tauText},
	},
	us: reading{"deg", 2}, metric: reading{"deg", 2},
}

var energyDimension = dimension{
	name: "energy", want: "an energy such as 350 ft·lbf or 475 J",
	units: []unit{
		{symbol: "J", aliases: []string{"joule", "joules"}, num: 1},
		{symbol: "kJ", aliases: []string{"kilojoule", "kilojoules"}, num: 1, tens: 3},
		{symbol: "ft·lbf", aliases: []string{"lbf·ft"}, num: footPoundDigits, tens: -16},
	},
	us: reading{"ft·lbf", 1}, metric: reading{"J", 1},
}

var powerDimension = dimension{
	name: "power", want: "a power such as 0.5 hp or 0.4 kW",
	units: []unit{
		{symbol: "W", aliases: []string{"watt", "watts"}, num: 1},
		{symbol: "kW", aliases: []string{"kilowatt", "kilowatts"}, num: 1, tens: 3},
		{symbol: "hp", aliases: []string{"HP", "horsepower"}, num: 74569987158227022, tens: -14}, // 550 ft·lbf/s
	},
	us: reading{"hp", 3}, metric: reading{"kW", 3},
}

var stiffnessDimension = dimension{
	name: "stiffness", want: "a stiffness such as 600 lbf/in or 105 kN/m",
	units: []unit{
		{symbol: "N/m", num: 1},
		{symbol: "kN/m", aliases: []string{"N/mm"}, num: 1, tens: 3},
		{symbol: "lbf/in", aliases: []string{"lbf/inch"}, num: poundForceDigits, den: inchDigits, tens: -13 + 4},
		{symbol: "lbf/ft", aliases: []string{"lbf/foot"}, num: poundForceDigits, den: footDigits, tens: -13 + 4},
	},
	us: reading{"lbf/in", 1}, metric: reading{"kN/m", 3},
}

var inertiaDimension = dimension{
	name: "mass moment of inertia", want: "a mass moment of inertia such as 3.2 lb·ft² or 0.135 kg·m²",
	units: []unit{
		{symbol: "kg·m²", aliases: []string{"kg·m2"}, num: 1},
		{symbol: "lb·ft²", aliases: []string{"lb·ft2", "lbs·ft2"}, num: 421401100938048, tens: -16},
		{symbol: "lb·in²", aliases: []string{"lb·in2", "lbs·in2"}, num: 2926396534292, tens: -16},
	},
	us: reading{"lb·ft²", 3}, metric: reading{"kg·m²", 4},
}
