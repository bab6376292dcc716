package load_test

import (
	"fmt"
	"strings"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func ExampleBatten_Share() {
	batten := load.Batten{
		Length: 42 * units.Foot,
		Pipe: load.Tube{
			Outer:   1.900 * units.Inch,
			Wall:    0.145 * units.Inch,
			Density: load.PipeSteelDensity,
			Modulus: load.SteelModulusUS,
		},
		Lines: load.Spaced(1*units.Foot, 10*units.Foot, 5),
	}
	hang := load.Hang{
		{Name: "electric, 12 fixtures", Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot},
		{Name: "cable tail", Mass: 24 * units.Pound, From: 1 * units.Foot, To: 1 * units.Foot},
	}
	share, err := batten.Share(hang, 20*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, line := range share.Lines {
		fmt.Printf("line %d at %s: %.1f lbf\n", i+1, units.US.Format(line.At), line.Tension.In(units.PoundForce))
	}
	i, _ := share.Worst()
	fmt.Printf("line %d carries most\n", i+1)
	// Output:
	// line 1 at 1' 0": 42.7 lbf
	// line 2 at 11' 0": 128.6 lbf
	// line 3 at 21' 0": 131.7 lbf
	// line 4 at 31' 0": 128.6 lbf
	// line 5 at 41' 0": 18.7 lbf
	// line 3 carries most
}

// Every fault is reported, each on a line that begins with the path of its field and goes on
// with the value and what would be right.
func ExampleBatten_Rig() {
	batten := load.Batten{
		Length: 10 * units.Metre,
		Pipe: load.Tube{
			Outer:   48.3 * units.Millimetre,
			Wall:    32 * units.Millimetre, // 3.2 was meant
			Density: load.SteelDensity,
			Modulus: load.SteelModulusEN,
		},
		Lines: load.Spaced(1*units.Metre, 3*units.Metre, 4),
	}
	_, err := batten.Rig(load.Hang{{Name: "leg", Mass: 12 * units.Kilogram, From: 9 * units.Metre, To: 11 * units.Metre, OnDeck: load.Piles}})
	for line := range strings.Lines(err.Error()) {
		field, _, _ := strings.Cut(line, ": ")
		fmt.Println(field)
	}
	// Output:
	// batten.pipe.wall
	// hang[0].to ("leg")
	// hang[0].height ("leg")
}

// The worst over a range of trims is at one of its ends or at a turn between: here where the middle
// line lets go while a leg lifts off the deck beyond the last line.
func ExampleRigged_Turns() {
	batten := load.Batten{
		Length: 42 * units.Foot,
		Pipe:   load.Tube{Outer: 1.900 * units.Inch, Wall: 0.145 * units.Inch, Density: load.PipeSteelDensity, Modulus: load.SteelModulusUS},
		Lines:  load.Spaced(3*units.Foot, 16*units.Foot, 3),
	}
	rigged, err := batten.Rig(load.Hang{
		{Name: "chain motor", Mass: 625 * units.Pound, From: 3 * units.Foot, To: 3 * units.Foot},
		{Name: "leg", Mass: 330 * units.Pound, From: 41 * units.Foot, To: 42 * units.Foot, Height: 20 * units.Foot, OnDeck: load.Piles},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	low, high := 1*units.Foot, 18*units.Foot
	if err := rigged.Tips(low, high); err != nil {
		fmt.Println(err)
		return
	}
	for _, trim := range append(rigged.Turns(low, high), low, high) {
		share, err := rigged.Share(trim)
		if err != nil {
			fmt.Println(err)
			return
		}
		i, worst := share.Worst()
		fmt.Printf("trim %.2f ft: line %d carries %.1f lbf\n", trim.In(units.Foot), i+1, worst.Tension.In(units.PoundForce))
	}
	// Output:
	// trim 4.67 ft: line 1 carries 659.3 lbf
	// trim 1.00 ft: line 1 carries 653.1 lbf
	// trim 18.00 ft: line 1 carries 614.6 lbf
}

func ExampleDrape_Item() {
	border := load.Drape{
		Width:    40 * units.Foot,
		Drop:     18 * units.Foot,
		Cloth:    load.Running(16*units.Ounce, 1*units.Yard, 54*units.Inch),
		Fullness: 0.5,
	}.Item("border", 1*units.Foot)
	fmt.Printf("%s: %.1f lb, %.0f ft long\n", border.Name, border.Mass.In(units.Pound), border.Height.In(units.Foot))
	// Output:
	// border: 80.0 lb, 18 ft long
}

func ExampleItem_Carried() {
	drop := load.Item{Name: "backdrop", Mass: 60 * units.Pound, To: 40 * units.Foot, Height: 20 * units.Foot, OnDeck: load.Piles}
	flat := load.Item{Name: "flat", Mass: 80 * units.Pound, To: 8 * units.Foot, Height: 12 * units.Foot, OnDeck: load.Stands}
	for _, trim := range []units.Length{4 * units.Foot, 12 * units.Foot, 24 * units.Foot} {
		fmt.Printf("trim %.0f ft: backdrop %.0f lb, flat %.0f lb, just above %.0f lb\n", trim.In(units.Foot),
			drop.Carried(trim).In(units.Pound), flat.Carried(trim).In(units.Pound), flat.CarriedAbove(trim).In(units.Pound))
	}
	// Output:
	// trim 4 ft: backdrop 12 lb, flat 0 lb, just above 0 lb
	// trim 12 ft: backdrop 36 lb, flat 0 lb, just above 80 lb
	// trim 24 ft: backdrop 60 lb, flat 80 lb, just above 80 lb
}

func ExampleSpaced() {
	for _, line := range load.Spaced(1*units.Foot, 10*units.Foot, 5) {
		fmt.Print(line.At.In(units.Foot), " ft ")
	}
	// Output:
	// 1 ft 11 ft 21 ft 31 ft 41 ft
}

func ExampleTube() {
	tube := load.Tube{Outer: 48.3 * units.Millimetre, Wall: 3.2 * units.Millimetre, Density: load.SteelDensity, Modulus: load.SteelModulusEN}
	fmt.Printf("%.2f kg/m\n", tube.LineMass().In(units.KilogramPerMetre))
	fmt.Printf("%.2f cm⁴\n", tube.SecondMoment().In(units.CentimetreToTheFourth))
	fmt.Printf("%.2f cm³\n", tube.SectionModulus().In(units.CubicCentimetre))
	// Output:
	// 3.56 kg/m
	// 11.59 cm⁴
	// 4.80 cm³
}

// A batten on wire ropes that stretch, its third line made off 10 mm too long. EA is the maker's to
// say; the path is from the batten to the dead end.
func ExampleLine() {
	lines := load.Spaced(1*units.Foot, 10*units.Foot, 5)
	for i := range lines {
		lines[i].EA = 440_000 * units.PoundForce
		lines[i].Path = 130*units.Foot + units.Foot.Scale(10*float64(i))
	}
	lines[2].Long = 10 * units.Millimetre
	batten := load.Batten{Length: 42 * units.Foot, Pipe: exampleTube(), Lines: lines}
	share, err := batten.Share(load.Hang{{Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot}}, 20*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, line := range share.Lines {
		fmt.Printf("line %d: %.1f lbf, stretched by %.2f in\n", i+1, line.Tension.In(units.PoundForce), line.Stretch.In(units.Inch))
	}
	// Output:
	// line 1: 18.0 lbf, stretched by 0.06 in
	// line 2: 135.3 lbf, stretched by 0.52 in
	// line 3: 120.4 lbf, stretched by 0.49 in
	// line 4: 133.6 lbf, stretched by 0.58 in
	// line 5: 18.8 lbf, stretched by 0.09 in
}

// How far may the middle line be off before any line carries more than 250 lbf?
func ExampleRigged_TrimTolerance() {
	rigged, err := exampleBatten().Rig(load.Hang{{Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	tolerance, err := rigged.TrimTolerance(20*units.Foot, 2, load.Limits{Line: 250 * units.PoundForce})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("short by %.2f in: then line %d carries 250 lbf\n", tolerance.Short.By.In(units.Inch), tolerance.Short.Line+1)
	fmt.Println("long: bound by", tolerance.Long.Bound)
	// Output:
	// short by 1.66 in: then line 3 carries 250 lbf
	// long: bound by nothing
}

// The heaviest thing that may still be hung between the second line and the third.
func ExampleRigged_PointAllowed() {
	rigged, err := exampleBatten().Rig(load.Hang{{Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	limits := load.Limits{Line: 500 * units.PoundForce, Stress: 15 * units.KipPerSquareInch}
	allowed, err := rigged.PointAllowed(20*units.Foot, 11*units.Foot, 21*units.Foot, limits)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f lb, bound by the %v; worst at %s\n", allowed.Mass.In(units.Pound), allowed.Bound, units.US.Format(allowed.At))
	// Output:
	// 204 lb, bound by the pipe; worst at 15' 11 1/2"
}

// A traveller's carrier of 60 lb runs from end to end.
func ExampleRigged_Envelope() {
	rigged, err := exampleBatten().Rig(load.Hang{{Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	envelope, err := rigged.Envelope(20*units.Foot, 60*units.Pound, 0, 42*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, line := range envelope.Lines {
		fmt.Printf("line %d: %.1f to %.1f lbf, most with the carrier at %s\n", i+1, line.Least.Tension.In(units.PoundForce),
			line.Most.Tension.In(units.PoundForce), units.US.Format(line.Most.Load))
	}
	// Output:
	// line 1: 13.9 to 86.3 lbf, most with the carrier at 0' 0"
	// line 2: 118.9 to 188.9 lbf, most with the carrier at 10' 4 3/4"
	// line 3: 121.8 to 191.7 lbf, most with the carrier at 21' 0"
	// line 4: 118.9 to 188.9 lbf, most with the carrier at 31' 7 1/4"
	// line 5: 13.9 to 86.3 lbf, most with the carrier at 42' 0"
}

func exampleTube() load.Tube {
	tube, err := load.StandardPipe("NPS 1-1/2 schedule 40", load.SteelModulusUS)
	if err != nil {
		panic(err)
	}
	return tube
}

func exampleBatten() load.Batten {
	return load.Batten{Length: 42 * units.Foot, Pipe: exampleTube(), Lines: load.Spaced(1*units.Foot, 10*units.Foot, 5)}
}

// How far the pipe bends under an electric, and where.
func ExampleRigged_Deflection() {
	rigged, err := exampleBatten().Rig(load.Hang{{Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	bend, err := rigged.Deflection(20 * units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("lowest: %.3f in below level at %s\n", bend.Lowest.Below.In(units.Inch), units.US.Format(bend.Lowest.At))
	fmt.Printf("highest: %.3f in above level at %s\n", -bend.Highest.Below.In(units.Inch), units.US.Format(bend.Highest.At))
	// Output:
	// lowest: 0.068 in below level at 5' 7 5/16"
	// highest: 0.023 in above level at 0' 0"
}
