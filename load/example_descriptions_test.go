package load_test

import (
	"errors"
	"fmt"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func ExampleStandardPipe() {
	pipe, err := load.StandardPipe("NPS 1-1/2 schedule 40", load.SteelModulusUS)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f in, wall %.3f in, %.3f lb/ft\n",
		pipe.Outer.In(units.Inch), pipe.Wall.In(units.Inch), pipe.LineMass().In(units.PoundPerFoot))

	_, err = load.StandardPipe("1.5 sch 40", load.SteelModulusUS)
	fmt.Println(errors.Is(err, units.ErrUnknown))
	// Output:
	// 1.900 in, wall 0.145 in, 2.718 lb/ft
	// true
}

func ExampleStandardPipes() {
	for _, name := range load.StandardPipes() {
		fmt.Println(name)
	}
	// Output:
	// NPS 1-1/4 schedule 40
	// NPS 1-1/4 schedule 80
	// NPS 1-1/2 schedule 40
	// NPS 1-1/2 schedule 80
	// NPS 2 schedule 40
	// NPS 2 schedule 80
	// 48.3 x 3.2 mm
	// 48.3 x 4.0 mm
}

// With the design wall of US steel design the pipe is weaker, and weighs what it did.
func ExampleTube_Thinned() {
	nominal, err := load.StandardPipe("NPS 1-1/2 schedule 40", load.SteelModulusUS)
	if err != nil {
		fmt.Println(err)
		return
	}
	design := nominal.Thinned(0.93)
	for _, pipe := range []load.Tube{nominal, design} {
		fmt.Printf("section modulus %.3f in³, %.3f lb/ft\n",
			pipe.SectionModulus().In(units.CubicInch), pipe.LineMass().In(units.PoundPerFoot))
	}
	// Output:
	// section modulus 0.326 in³, 2.718 lb/ft
	// section modulus 0.308 in³, 2.718 lb/ft
}

// The pipe in the hem is on the deck as soon as the hem touches, the cloth only as it
// comes in.
func ExampleDrape_Hang() {
	drop := load.Drape{
		Width: 40 * units.Foot,
		Drop:  20 * units.Foot,
		Cloth: 4 * units.OuncePerSquareYard,
		Hem:   1.13 * units.PoundPerFoot,
	}
	hang := drop.Hang("backdrop", 1*units.Foot)
	for _, trim := range []units.Length{20.01 * units.Foot, 20 * units.Foot, 10 * units.Foot} {
		fmt.Printf("trim %.2f ft:", trim.In(units.Foot))
		for _, item := range hang {
			fmt.Printf(" %s %.1f lb", item.Name, item.Carried(trim).In(units.Pound))
		}
		fmt.Println()
	}
	// Output:
	// trim 20.01 ft: backdrop 22.2 lb backdrop, hem 45.2 lb
	// trim 20.00 ft: backdrop 22.2 lb backdrop, hem 0.0 lb
	// trim 10.00 ft: backdrop 11.1 lb backdrop, hem 0.0 lb
}

// A traveller drawn open stacks at its outer edges; the halves of a tab keep their heading
// and are drawn up towards them.
func ExampleDrape_Parted() {
	drape := load.Drape{
		Width:    40 * units.Foot,
		Drop:     18 * units.Foot,
		Cloth:    load.Running(25*units.Ounce, 1*units.Yard, 54*units.Inch),
		Fullness: 0.5,
	}
	show := func(hang load.Hang) {
		for _, item := range hang {
			fmt.Printf("%s: %.1f lb from %.0f to %.0f ft, taper %+.1f, foot %.0f ft down\n", item.Name, item.Mass.In(units.Pound),
				item.From.In(units.Foot), item.To.In(units.Foot), item.Taper, item.Height.In(units.Foot))
		}
	}
	show(drape.Parted("traveller", 1*units.Foot, load.Gather{Width: 5 * units.Foot}))
	show(drape.Parted("tab", 1*units.Foot, load.Gather{Lean: 0.6, Lift: 6 * units.Foot}))
	// Output:
	// traveller, near half: 62.5 lb from 1 to 6 ft, taper +0.0, foot 18 ft down
	// traveller, far half: 62.5 lb from 36 to 41 ft, taper +0.0, foot 18 ft down
	// tab, near half: 62.5 lb from 1 to 21 ft, taper -0.6, foot 12 ft down
	// tab, far half: 62.5 lb from 21 to 41 ft, taper +0.6, foot 12 ft down
}

// Six cables to the fixtures of an electric, dropped at one end and plugged in on the deck.
func ExampleCable_Hang() {
	cable := load.Cable{
		LineMass: 0.25 * units.PoundPerFoot,
		Count:    6,
		From:     2 * units.Foot,
		To:       38 * units.Foot,
		Slack:    0.1,
		Tail:     24 * units.Foot,
		TailAt:   38 * units.Foot,
	}
	for _, trim := range []units.Length{24 * units.Foot, 4 * units.Foot} {
		fmt.Printf("trim %.0f ft:", trim.In(units.Foot))
		for _, item := range cable.Hang("cable") {
			fmt.Printf(" %s %.1f lb", item.Name, item.Carried(trim).In(units.Pound))
		}
		fmt.Println()
	}
	// Output:
	// trim 24 ft: cable 59.4 lb cable, tail 36.0 lb
	// trim 4 ft: cable 59.4 lb cable, tail 6.0 lb
}

// What would give 1/4 in under the piece at rest sees, for an instant, far more than its weight
// when the piece drops onto it.
func ExampleImpactFactor() {
	for _, drop := range []units.Length{0, 1 * units.Inch, 1 * units.Foot} {
		factor, err := load.ImpactFactor(drop, 0.25*units.Inch)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("dropped %2.0f in: %4.1f times its weight\n", drop.In(units.Inch), factor)
	}
	// Output:
	// dropped  0 in:  2.0 times its weight
	// dropped  1 in:  4.0 times its weight
	// dropped 12 in: 10.8 times its weight
}

// How far limits are used, and which line is slack: what hangs on the end lifts the pipe over the last line.
func ExampleShare_Use() {
	batten := load.Batten{
		Length: 42 * units.Foot,
		Pipe:   load.Tube{Outer: 1.900 * units.Inch, Wall: 0.145 * units.Inch, Density: load.PipeSteelDensity, Modulus: load.SteelModulusUS},
		Lines:  load.Spaced(1*units.Foot, 9*units.Foot, 5),
	}
	share, err := batten.Share(load.Hang{{Name: "lamp on the end", Mass: 60 * units.Pound, From: 42 * units.Foot, To: 42 * units.Foot}}, 20*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	use := share.Use(load.Limits{Line: 700 * units.PoundForce, Stress: 21 * units.KipPerSquareInch})
	fmt.Printf("line %d uses %.0f %% of its limit, the pipe %.0f %%\n", use.Worst+1, 100*use.Line, 100*use.Pipe)
	for _, i := range share.Slack() {
		fmt.Println("line", i+1, "is slack: the pipe stands", units.US.Format(share.Lines[i].Gap), "above its end")
	}
	// Output:
	// line 5 uses 17 % of its limit, the pipe 59 %
	// line 4 is slack: the pipe stands 0' 0 7/16" above its end
}

// Shear and bending moment at places along the pipe, as for a diagram: at an end, beside and over a line, between two.
func ExampleRigged_Cuts() {
	batten := load.Batten{
		Length: 42 * units.Foot,
		Pipe:   load.Tube{Outer: 1.900 * units.Inch, Wall: 0.145 * units.Inch, Density: load.PipeSteelDensity, Modulus: load.SteelModulusUS},
		Lines:  load.Spaced(1*units.Foot, 10*units.Foot, 5),
	}
	rigged, err := batten.Rig(load.Hang{{Name: "12 fixtures", Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	cuts, err := rigged.Cuts(20*units.Foot, 0, 11*units.Foot, 16*units.Foot, 21*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	for _, c := range cuts {
		fmt.Println(us.Format(c.At), us.Format(c.Before), us.Format(c.Past), us.Format(c.Moment))
	}
	// Output:
	// 0' 0" 0 lbf 0 lbf 0 lbf·ft
	// 11' 0" -63.2 lbf 65.3 lbf -107.7 lbf·ft
	// 16' 0" -0.2 lbf -0.2 lbf 55.1 lbf·ft
	// 21' 0" -65.8 lbf 65.8 lbf -110.1 lbf·ft
}
