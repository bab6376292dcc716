package units_test

import (
	"errors"
	"fmt"

	"example.com/steelyard/units"
)

// What a batten's load is, what it pulls, and how both are read in two houses.
func Example() {
	pipe := 2.72 * units.PoundPerFoot
	batten := pipe.Over(42 * units.Foot)
	hung := 312 * units.Pound
	load := units.Sum(batten, hung)
	pull := load.Weight(units.StandardGravity)

	for _, system := range []units.System{units.US, units.Metric} {
		fmt.Println(system.Format(load), "pulls with", system.Format(pull))
	}
	fmt.Printf("%.1f\n", load.In(units.Pound))
	// Output:
	// 426.24 lb pulls with 426.2 lbf
	// 193.34 kg pulls with 1.896 kN
	// 426.2
}

func ExampleParse() {
	for _, text := range []string{`24'-6 1/2"`, "24 ft 6 1/2 in", "7.4803 m", "24.5", "24.5 lb"} {
		trim, err := units.Parse[units.Length](text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(trim)
	}
	// Output:
	// 7.4803 m
	// 7.4803 m
	// 7.4803 m
	// "24.5" has no unit; want a length such as 24' 6 1/2" or 7.48 m
	// "24.5 lb" is a mass, not a length; want a length such as 24' 6 1/2" or 7.48 m
}

// A program that can help with the mistake asks for its kind.
func ExampleParse_kinds() {
	_, err := units.Parse[units.Force]("90 lb")
	var text *units.ParseError
	if errors.Is(err, units.ErrWrongQuantity) && errors.As(err, &text) {
		fmt.Printf("a %s is wanted, and %q is not one\n", text.Quantity, text.Rest)
	}
	// Output:
	// a force is wanted, and "lb" is not one
}

func ExampleSystem_Format() {
	trim := 24*units.Foot + 6.5*units.Inch
	piece := 23.5 * units.Pound
	fmt.Println(units.US.Format(trim), "|", units.US.Format(-6*units.Inch), "|", units.US.Format(piece))
	fmt.Println(units.Metric.Format(trim), "|", units.Metric.Format(-6*units.Inch), "|", units.Metric.Format(piece))
	// Output:
	// 24' 6 1/2" | -0' 6" | 23.5 lb
	// 7.48 m | -0.152 m | 10.66 kg
}

// A column of figures keeps its places and has its unit at the head.
func ExampleSystem_FormatPlaces() {
	for _, tension := range []units.Force{112.5 * units.PoundForce, 90 * units.PoundForce} {
		fmt.Println(units.US.FormatPlaces(tension, 1), "|", units.Metric.FormatPlaces(tension, 3))
	}
	fmt.Println(units.US.Symbol(units.PoundForce), units.US.Symbol(units.Foot), units.Metric.Symbol(units.PoundForce))
	// Output:
	// 112.5 lbf | 0.500 kN
	// 90.0 lbf | 0.400 kN
	// lbf ft kN
}

// What it takes to bring a set out of rest, and what its hand must do.
func ExampleForce_Power() {
	moving := 800 * units.Kilogram
	speed := (6 * units.Metre).Per(8 * units.Second)
	pull := moving.Force(speed.Per(2 * units.Second))
	fmt.Println(units.US.Format(speed), "|", units.Metric.Format(speed))
	fmt.Println(units.US.Format(pull), "|", units.Metric.Format(pull))
	fmt.Println(units.US.Format(pull.Power(speed)), "|", units.Metric.Format(pull.Power(speed)))
	// Output:
	// 2.46 ft/s | 0.75 m/s
	// 67.4 lbf | 0.3 kN
	// 0.302 hp | 0.225 kW
}

// A time crosses to Go's own durations, which hold no more than 292 years.
func ExampleTimeSpan_Duration() {
	cue, err := (12 * units.Metre).Time(0.8 * units.MetrePerSecond).Duration()
	fmt.Println(cue, err)
	_, err = (12 * units.Metre).Time(0).Duration()
	fmt.Println(err)
	// Output:
	// 15s <nil>
	// +Inf s is not a finite number; want a finite time
}

func ExampleLength_Format() {
	trim := 24*units.Foot + 6*units.Inch
	fmt.Printf("%.3v|%.2f|%10.1f|%.1f ft\n", trim, trim, trim, trim.In(units.Foot))
	// Output:
	// 7.47 m|7.47 m|     7.5 m|24.5 ft
}

// Two ways to the same trim differ in the last bit, and by no more.
func ExampleLength_Within() {
	sum, text := 24*units.Foot+6.5*units.Inch, `24' 6 1/2"`
	trim, err := units.Parse[units.Length](text)
	fmt.Println(err, sum == trim, sum.Within(trim, units.Millimetre))
	// Output:
	// <nil> false true
}

// A list to choose a unit from, and the unit that was chosen.
func ExampleSymbols() {
	for symbol := range units.Symbols[units.Mass]() {
		unit, err := units.Unit[units.Mass](symbol)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%.4g %s\n", units.ShortTon.In(unit), symbol)
	}
	// Output:
	// 907.2 kg
	// 9.072e+05 g
	// 0.9072 t
	// 2000 lb
	// 3.2e+04 oz
	// 1 short ton
}

func ExampleRatio() {
	arbor, batten := 1000*units.Pound, 500*units.Pound
	fmt.Println(units.Ratio(arbor, batten))
	// Output:
	// 2
}

// A description reports every fault together, each with its path.
func ExampleFieldError() {
	line := errors.Join(
		&units.FieldError{Field: "at", Value: units.US.Format(-units.Foot), Want: "0 or more", Err: units.ErrNegative},
		&units.FieldError{Field: "rope", Want: "the rope of the line", Err: units.ErrMissing},
	)
	err := units.At("batten.lines[2]", `set "Border"`, line)
	fmt.Println(err)

	var first *units.FieldError
	if errors.As(err, &first) {
		fmt.Println(first.Field, "-", first.Want)
	}
	fmt.Println(errors.Is(err, units.ErrMissing))
	// Output:
	// batten.lines[2].at (set "Border"): -1' 0" is negative; want 0 or more
	// batten.lines[2].rope (set "Border"): is missing; want the rope of the line
	// batten.lines[2].at - 0 or more
	// true
}

// A demand is shown rounded up in size and a limit down, so that rounding never
// hides an excess. What was typed in stays as it was typed.
func ExampleSystem_FormatRounded() {
	demand, limit := 2000.04*units.PoundForce, 2000*units.PoundForce
	us := units.US
	fmt.Println(us.FormatPlaces(demand, 1), "of", us.FormatPlaces(limit, 1))
	fmt.Println(us.FormatRounded(demand, 1, units.AwayFromZero), "of", us.FormatRounded(limit, 1, units.TowardZero))
	fmt.Println(us.FormatRounded(12.5*units.PoundForce, 1, units.AwayFromZero))
	// Output:
	// 2000.0 lbf of 2000.0 lbf
	// 2000.1 lbf of 2000.0 lbf
	// 12.5 lbf
}

// A table of many rows is written into one buffer.
func ExampleSystem_Append() {
	var row []byte
	for _, trim := range []units.Length{24*units.Foot + 6.5*units.Inch, 31 * units.Foot} {
		row = units.US.Append(row[:0], trim)
		row = append(row, " | "...)
		row = units.Metric.Append(row, trim)
		fmt.Printf("%s\n", row)
	}
	// Output:
	// 24' 6 1/2" | 7.48 m
	// 31' 0" | 9.449 m
}

// What was typed in one unit is stored in another and comes back as it was typed.
func ExampleFormatIn() {
	piece, _ := units.Parse[units.Mass]("12.35 lb")
	for _, symbol := range []string{"kg", "lb", "oz", "lbf"} {
		text, err := units.FormatIn(piece, symbol)
		fmt.Println(text, err)
	}
	// Output:
	// 5.6018657695 kg <nil>
	// 12.35 lb <nil>
	// 197.6 oz <nil>
	//  "lbf" is another quantity; want a unit of mass: kg, g, t, lb, oz, short ton
}
