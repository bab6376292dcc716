package units

import (
	"math"
	"strconv"
)

// System is a way to write quantities for a reader. The zero System is none: it
// has no name, and it prints as String does, in plain SI units.
type System uint8

const (
	US     System = iota + 1 // US customary: feet and inches, lb, lbf
	Metric                   // m, kg, kN
)

// String gives the name of the system, as it is stored.
func (s System) String() string {
	switch s {
	case US:
		return "us"
	case Metric:
		return "metric"
	}
	return "System(" + strconv.Itoa(int(s)) + ")"
}

// MarshalText gives "us" or "metric". It refuses any other System, with a
// *[FieldError].
func (s System) MarshalText() ([]byte, error) {
	if s != US && s != Metric {
		return nil, &FieldError{Value: s.String(), Want: "units.US or units.Metric", Err: ErrUnknown}
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads "us" or "metric". On an error, a *[FieldError], the
// receiver keeps its value.
func (s *System) UnmarshalText(text []byte) error {
	switch string(text) {
	case "us":
		*s = US
	case "metric":
		*s = Metric
	default:
		return &FieldError{Value: quote(string(text)), Want: `"us" or "metric"`, Err: ErrUnknown}
	}
	return nil
}

// Format writes q as a reader of the system expects it, for people and not for
// storage. Decimals are those of the table, without zeros at the end.
//
//	quantity        US                     Metric
//	Length          24' 6 1/2"             7.48 m         sixteenths; 3 places
//	Area            720 ft², 0.799 in²     66.89 m², …    2 (4 under 1 ft²); 3 (cm² under 0.1 m²)
//	Mass            1000 lb                453.59 kg      2; 2
//	Force           112.4 lbf              0.5 kN         1; 3
//	Acceleration    32.174 ft/s²           9.807 m/s²     3; 3
//	Moment          350.5 lbf·ft           475.2 N·m      1; 1
//	Stress          36 ksi                 248.21 MPa     3; 2
//	LineMass        0.11 lb/ft             0.164 kg/m     3; 3
//	LineLoad        30.25 lbf/ft           441.5 N/m      2; 1
//	AreaMass        15 oz/yd²              508.6 g/m²     2; 1
//	Density         490.1 lb/ft³           7850 kg/m³     1; 1
//	SecondMoment    0.31 in⁴               12.903 cm⁴     4; 3
//	SectionModulus  0.3262 in³             5.346 cm³      4; 3
//	TimeSpan        2.5 s                  2.5 s          2; 2
//	Speed           3 ft/s                 0.914 m/s      2; 3
//	Angle           1.5 deg                1.5 deg        2; 2
//	Energy          350.5 ft·lbf           475.2 J        1; 1
//	Power           0.5 hp                 0.373 kW       3; 3
//	Stiffness       600 lbf/in             105.076 kN/m   1; 3
//	Inertia         3.2 lb·ft²             0.1348 kg·m²   3; 4
//
// A length always has its feet and its inches, so that a column reads evenly:
// 0' 6", 43' 0", and -0' 6" for six inches down.
//
// The exact value is rounded once to the nearest step, and away from zero in a
// tie. A value that rounds to zero has no sign. What is not finite is written as
// String writes it. A nil q, and a nil pointer to a quantity, is written as
// nothing; so is a type of your own that only embeds one: pass the quantity in it.
func (s System) Format(q Value) string {
	var room [64]byte
	return string(s.Append(room[:0], q))
}

// Append appends what Format writes. For what people hang, measure or pull it makes
// no allocation, nor do AppendPlaces and AppendRounded.
func (s System) Append(b []byte, q Value) []byte {
	x, d := valueOf(q)
	if s == US && d == &lengthDimension && finite(x) {
		return appendFeetInches(b, x)
	}
	if read, ok := s.reading(x, d); ok {
		b = appendDecimals(b, x, d.unit(read.symbol), read.places, HalfAway, true)
		return appendSymbol(b, read.symbol)
	}
	return appendPlain(b, x, d)
}

// FormatPlaces writes q as a decimal number of the unit that [System.Symbol]
// names, a length in feet or metres, with the given places behind the point,
// zeros too. It rounds as Format does. Places under 0 count as 0 and those over
// 20 as 20.
func (s System) FormatPlaces(q Value, places int) string {
	return s.FormatRounded(q, places, HalfAway)
}

// AppendPlaces appends what FormatPlaces writes.
func (s System) AppendPlaces(b []byte, q Value, places int) []byte {
	return s.AppendRounded(b, q, places, HalfAway)
}

// FormatRounded writes q as FormatPlaces does, and rounds as r says.
func (s System) FormatRounded(q Value, places int, r Rounding) string {
	var room [64]byte
	return string(s.AppendRounded(room[:0], q, places, r))
}

// AppendRounded appends what FormatRounded writes.
func (s System) AppendRounded(b []byte, q Value, places int, r Rounding) []byte {
	x, d := valueOf(q)
	read, ok := s.reading(x, d)
	if !ok {
		return appendPlain(b, x, d)
	}
	b = appendDecimals(b, x, d.unit(read.symbol), min(max(places, 0), maxPlaces), r, false)
	return appendSymbol(b, read.symbol)
}

// Symbol gives the symbol of the unit in which the system writes q, as for the
// head of a column: ft for a length in US, whose Format is in feet and inches.
// It depends on the type of q alone, but for a small Area.
func (s System) Symbol(q Value) string {
	x, d := valueOf(q)
	if read, ok := s.reading(x, d); ok {
		return read.symbol
	}
	if d == nil {
		return ""
	}
	return d.si()
}

// reading chooses the unit for x. It is false where the system has none, or where
// x is not a number.
func (s System) reading(x float64, d *dimension) (reading, bool) {
	size := math.Abs(x)
	switch {
	case d == nil || !finite(x):
		return reading{}, false
	case s == US && d.fineUS.symbol != "" && size < float64(SquareFoot):
		return d.fineUS, true
	case s == US:
		return d.us, true
	case s == Metric && d.fineMet.symbol != "" && size < 0.1*float64(SquareMetre):
		return d.fineMet, true
	case s == Metric:
		return d.metric, true
	}
	return reading{}, false
}
