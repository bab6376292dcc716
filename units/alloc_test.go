package units_test

import (
	"testing"

	"example.com/steelyard/units"
)

// The calls that must not allocate, and those that make one allocation, the text
// that they return. The results go to variables of the package so that nothing is
// left out as unused.
var (
	sinkLength units.Length
	sinkMass   units.Mass
	sinkBytes  []byte
	sinkText   string
)

func TestAllocations(t *testing.T) {
	var room [64]byte
	b := room[:0]
	trim, piece, pull := 24*units.Foot+6.5*units.Inch, 23.5*units.Pound, units.Force(412.7)
	var err error
	parse := func(text string) func() {
		return func() { sinkLength, err = units.Parse[units.Length](text) }
	}
	text := []byte(`24' 6 1/2"`)
	for _, row := range []struct {
		name string
		want float64
		call func()
	}{
		{"Parse metres", 0, parse("7.4676 m")},
		{"Parse 17 digits", 0, parse("7.4675999999999999 m")},
		{"Parse exponent", 0, parse("1.25e-3 m")},
		{"Parse feet and inches", 0, parse(`24'-6"`)},
		{"Parse feet, inches and a fraction", 0, parse(`-24' 6 1/2"`)},
		{"Parse in letters", 0, parse("24 ft 6 1/2 in")},
		{"Parse full stops", 0, parse("24 ft. 6.5 in.")},
		{"Parse a fraction", 0, parse("1/2 in")},
		{"Parse a fraction in one character", 0, parse("24′ 6½″")},
		{"Parse a thin space and a minus sign", 0, parse("−3\u2009mm")},
		{"Parse with space around", 0, parse(" 3 mm\n")},
		{"Parse pounds", 0, func() { sinkMass, err = units.Parse[units.Mass]("12.5 lb") }},
		{"Parse an alias", 0, func() { sinkMass, err = units.Parse[units.Mass]("12.5 pounds") }},
		{"Parse an ounce per square yard", 0, func() { _, err = units.Parse[units.AreaMass]("15 oz per sq. yd.") }},
		{"Parse a moment", 0, func() { _, err = units.Parse[units.Moment]("350.123 lbf·ft") }},
		{"Parse a product with a space", 0, func() { _, err = units.Parse[units.Moment]("350 N m") }},
		{"Parse degrees", 0, func() { _, err = units.Parse[units.Angle]("1.5°") }},
		{"UnmarshalText", 0, func() { err = sinkLength.UnmarshalText(text) }},
		{"AppendText", 0, func() { sinkBytes, err = trim.AppendText(b) }},
		{"AppendIn", 0, func() { sinkBytes, err = units.AppendIn(b, piece, "lb") }},
		{"AppendIn, a long factor", 0, func() { sinkBytes, err = units.AppendIn(b, 35.05*units.PoundForceFoot, "lbf·ft") }},
		{"AppendIn, fine steps", 0, func() { sinkBytes, err = units.AppendIn(b, 0.31*units.InchToTheFourth, "in⁴") }},
		{"AppendIn, 17 digits", 0, func() { sinkBytes, err = units.AppendIn(b, trim, "ft") }},
		{"Append feet and inches", 0, func() { sinkBytes = units.US.Append(b, trim) }},
		{"Append pounds", 0, func() { sinkBytes = units.US.Append(b, piece) }},
		{"Append kilonewtons", 0, func() { sinkBytes = units.Metric.Append(b, pull) }},
		{"Append degrees", 0, func() { sinkBytes = units.US.Append(b, 1.5*units.Degree) }},
		{"Append a second moment", 0, func() { sinkBytes = units.US.Append(b, 0.31*units.InchToTheFourth) }},
		{"Append through a pointer", 0, func() { sinkBytes = units.US.Append(b, &trim) }},
		{"Append in no system", 0, func() { sinkBytes = units.System(0).Append(b, pull) }},
		{"AppendPlaces", 0, func() { sinkBytes = units.US.AppendPlaces(b, trim, 3) }},
		{"AppendRounded", 0, func() { sinkBytes = units.US.AppendRounded(b, piece, 1, units.AwayFromZero) }},
		{"Symbol", 0, func() { sinkText = units.US.Symbol(piece) }},
		{"String", 1, func() { sinkText = trim.String() }},
		{"MarshalText", 1, func() { sinkBytes, err = trim.MarshalText() }},
		{"Format", 1, func() { sinkText = units.US.Format(trim) }},
		{"FormatPlaces", 1, func() { sinkText = units.Metric.FormatPlaces(pull, 3) }},
		{"FormatIn", 1, func() { sinkText, err = units.FormatIn(piece, "lb") }},
	} {
		if got := testing.AllocsPerRun(100, row.call); got != row.want || err != nil {
			t.Errorf("%s: %v allocations, want %v; %v", row.name, got, row.want, err)
		}
	}
}
