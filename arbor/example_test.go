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

// A unit comes off the batten: the arbor is to lose 66 lb. The stock is what lies
// on the bridge; what is in the arbor is told by today's stack.
func ExampleFrame_Refill() {
	bridge := arbor.Stock{
		{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 10},
		{Name: "22", Mass: 22 * units.Pound, Thickness: 1 * units.Inch, Count: 6},
	}
	frame := arbor.Frame{Length: 8 * units.Foot, Room: 84 * units.Inch, Capacity: 2000 * units.Pound}
	today, err := frame.Fill(arbor.Wanted{Show: 440 * units.Pound}, bridge, arbor.EitherSide)
	if err != nil {
		fmt.Println(err)
		return
	}
	bridge[0].Count -= today.Used("44")
	bridge[1].Count -= today.Used("22")

	then, err := frame.Refill(today, arbor.Wanted{Show: 374 * units.Pound}, bridge, arbor.EitherSide, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("today:", today.Call())
	fmt.Println("do:   ", then.Call())
	fmt.Println("then: ", then.Stack.Call())
	// Output:
	// today: 10 of the 44
	// do:    take out 2 of the 44, add 1 of the 22
	// then:  8 of the 44, 1 of the 22
}

// Twice the weight in an arbor with half the height.
func ExampleFrame_Shortfall() {
	stock := arbor.Stock{{Name: "23.5", Mass: 23.5 * units.Pound, Thickness: 1 * units.Inch, Count: 40}}
	frame := arbor.Frame{Length: 4 * units.Foot, Room: 36 * units.Inch, Capacity: 1200 * units.Pound}
	short, err := frame.Shortfall(arbor.Wanted{Pipe: 94 * units.Pound, Show: 987 * units.Pound}, stock, arbor.NeverArborHeavy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("short of", short.Binds())
	fmt.Println("room:", units.US.Format(short.Room), "more")
	for _, row := range short.Missing {
		fmt.Println("hire:", row.Count, "of the", row.Name)
	}
	fmt.Println("fits:", short.Heaviest.Call())
	// Output:
	// short of [room stock]
	// room: 0' 10" more
	// hire: 6 of the 23.5
	// fits: pipe weight 4 of the 23.5; show weight 32 of the 23.5
}

// The stack from the bed of the arbor up, with its plates.
func ExampleStack_Layers() {
	stock := arbor.Stock{{Name: "23.5", Mass: 23.5 * units.Pound, Thickness: 1 * units.Inch, Count: 40}}
	frame := arbor.Frame{
		Length: 6 * units.Foot, Room: 60 * units.Inch, Capacity: 1200 * units.Pound,
		Plate: arbor.Plate{Mass: 3 * units.Pound, Thickness: 0.125 * units.Inch, Every: 24 * units.Inch},
		Lock:  arbor.Lock{Mass: 4 * units.Pound, Thickness: 0.5 * units.Inch},
	}
	stack, err := frame.Fill(arbor.Wanted{Pipe: 98 * units.Pound, Show: 711 * units.Pound}, stock, arbor.EitherSide)
	if err != nil {
		fmt.Println(err)
		return
	}
	layers, err := stack.Layers(frame)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range layers {
		fmt.Printf("%-10s %2d × %s %s\n", units.US.Format(l.Top), l.Count, l.Name, l.Of)
	}
	// Output:
	// 0' 4"       4 × 23.5 pipe weight
	// 0' 4 1/8"   1 ×  spreader plate
	// 2' 4 1/8"  24 × 23.5 show weight
	// 2' 4 1/4"   1 ×  spreader plate
	// 2' 10 1/4"  6 × 23.5 show weight
	// 2' 10 3/4"  1 ×  lock plate
}

// A bound on the work, the same on every machine: the best that was found and how
// much nearer another stack could be at most.
func ExampleFrame_FillWithin() {
	var stock arbor.Stock
	for i, grams := range []float64{19_874, 17_203, 15_551, 13_907, 11_321, 9_743, 7_219, 5_623, 3_167, 1_789} {
		stock = append(stock, arbor.Piece{Name: string(rune('A' + i)), Mass: units.Gram.Scale(grams + 0.000_123), Thickness: 25 * units.Millimetre, Count: 50})
	}
	frame := arbor.Frame{Length: 3 * units.Metre, Room: 2.9 * units.Metre, Capacity: 900 * units.Kilogram}
	stack, err := frame.FillWithin(1000, arbor.Wanted{Show: 801.5 * units.Kilogram}, stock, arbor.EitherSide)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("off by", stack.Error, "proven", stack.Proven, "another may be nearer by", stack.Gap)
	// Output:
	// off by 0.000005781 kg proven false another may be nearer by 0.000005781 kg
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
	piece := arbor.Block("big", 13*units.Inch, 6*units.Inch, 2*units.Inch, arbor.SteelDensity, 20)
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

// Two sets want the one small piece that there is: it goes where it leaves the worse off of the two the least off.
func ExampleAllot() {
	frame := arbor.Frame{Length: 8 * units.Foot, Room: 6 * units.Foot, Capacity: 1400 * units.Pound}
	stock := arbor.Stock{
		{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 20},
		{Name: "11", Mass: 11 * units.Pound, Thickness: 0.5 * units.Inch, Count: 1},
	}
	allotment, err := arbor.Allot([]arbor.Job{
		{Name: "border", Frame: frame, Wanted: arbor.Wanted{Show: 226 * units.Pound}, Ratio: 1},
		{Name: "electric", Frame: frame, Wanted: arbor.Wanted{Show: 451 * units.Pound}, Ratio: 2},
	}, stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, stack := range allotment.Stacks {
		fmt.Println(stack.Call())
	}
	fmt.Println("worst off by", units.US.Format(allotment.Worst), "at the batten, proved:", allotment.Proven)
	for _, hire := range allotment.Hire {
		fmt.Println(hire.Count, "more of the", hire.Name, "would bring both as near as they can be")
	}
	// Output:
	// 5 of the 44, 1 of the 11
	// 10 of the 44
	// worst off by 5.5 lb at the batten, proved: true
	// 1 more of the 11 would bring both as near as they can be
}

// The heaviest that an arbor takes of what lies in stock, on top of its pipe weight.
func ExampleFrame_Heaviest() {
	stock := arbor.Stock{
		{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 30},
		{Name: "22", Mass: 22 * units.Pound, Thickness: 1 * units.Inch, Count: 4},
	}
	frame := arbor.Frame{Length: 6 * units.Foot, Room: 55 * units.Inch, Capacity: 1400 * units.Pound}
	stack, err := frame.Heaviest(150*units.Pound, stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(stack.Call())
	fmt.Println(units.US.Format(stack.Mass), "in", units.US.Format(stack.Height))
	// Output:
	// pipe weight 3 of the 44, 1 of the 22; show weight 24 of the 44
	// 1210 lb in 4' 7"
}
