package arbor_test

import (
	"fmt"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// The show hangs 318 lb on a double-purchase batten, so the arbor wants 636 lb
// on top of what balances the bare pipe.
func ExampleFrame_Fill() {
	stock := arbor.Stock{
		{Name: "23.5", Mass: 23.5 * units.Pound, Thickness: 1 * units.Inch, Count: 40},
		{Name: "11", Mass: 11 * units.Pound, Thickness: 0.5 * units.Inch, Count: 6},
	}
	frame := arbor.Frame{
		Length:   6 * units.Foot,
		Room:     64 * units.Inch,
		Capacity: 1200 * units.Pound,
		Plate:    arbor.Plate{Mass: 3 * units.Pound, Thickness: 0.125 * units.Inch, Every: 24 * units.Inch},
	}
	stack, err := frame.Fill(arbor.Wanted{Pipe: 142 * units.Pound, Show: 636 * units.Pound}, stock, arbor.NeverArborHeavy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(stack.Call())
	fmt.Printf("%s in %s, off by %s\n", units.US.Format(stack.Mass), units.US.Format(stack.Height), units.US.Format(stack.Error))
	for name, n := range stack.Kinds() {
		fmt.Println(n, "off the stock of the", name)
	}
	// Output:
	// pipe weight 6 of the 23.5; show weight 24 of the 23.5, 6 of the 11, with 2 spreader plates
	// 777 lb in 2' 9 1/4", off by -1 lb
	// 30 off the stock of the 23.5
	// 6 off the stock of the 11
}

// Half the height above an elevated locking rail holds half the stack: Ideal
// says how much room the show would take.
func ExampleFrame_Ideal() {
	stock := arbor.Stock{{Name: "20 kg", Mass: 20 * units.Kilogram, Thickness: 50 * units.Millimetre, Count: 30}}
	frame := arbor.Frame{Length: 1.1 * units.Metre, Room: 0.9 * units.Metre, Capacity: 500 * units.Kilogram}
	wanted := arbor.Wanted{Show: 460 * units.Kilogram}

	fits, err := frame.Fill(wanted, stock, arbor.EitherSide)
	if err != nil {
		fmt.Println(err)
		return
	}
	ideal, err := frame.Ideal(wanted, stock, arbor.EitherSide)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("fits: ", fits.Call(), "in", fits.Height, "off by", fits.Error)
	fmt.Println("takes:", ideal.Call(), "in", ideal.Height, "off by", ideal.Error)
	// Output:
	// fits:  18 of the 20 kg in 0.9 m off by -100 kg
	// takes: 23 of the 20 kg in 1.15 m off by 0 kg
}

// A double-purchase arbor above an elevated locking rail.
func ExampleRun_Travel() {
	run := arbor.Run{LowerStop: 18 * units.Foot, UpperStop: 52 * units.Foot}
	frame := arbor.Frame{Length: 6 * units.Foot}
	fmt.Println("the arbor flies", units.US.Format(run.Travel(frame)))
	lowest, highest := run.Tops(frame)
	fmt.Println("its top from", units.US.Format(lowest), "to", units.US.Format(highest))
	// Output:
	// the arbor flies 28' 0"
	// its top from 24' 0" to 52' 0"
}

// A bar of rolled steel, cut to length.
func ExampleBlock() {
	piece := arbor.Block("big", 13*units.Inch, 6*units.Inch, 2*units.Inch, 7850*units.KilogramPerCubicMetre, 20)
	fmt.Println(units.US.Format(piece.Mass), "or", units.Metric.Format(piece.Mass))
	// Output:
	// 44.24 lb or 20.07 kg
}

// Everything that is wrong comes at once, each with the path of its field.
func ExampleStock_Validate() {
	stock := arbor.Stock{
		{Name: "23.5", Mass: 23.5 * units.Pound, Thickness: 1 * units.Inch, Count: 40},
		{Name: "23.5", Mass: 11 * units.Pound, Thickness: 0.5 * units.Inch, Count: -4},
		{Mass: 5 * units.Pound, Thickness: 0.25 * units.Inch},
	}
	fmt.Println(stock.Validate())
	// Output:
	// [1].count ("23.5"): -4 is negative; want 0 or more
	// [1].name ("23.5"): "23.5" stands twice; want a name of its own for each kind
	// [2].name: is missing; want what the piece is called
}
