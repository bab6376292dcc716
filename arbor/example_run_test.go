package arbor_test

import (
	"fmt"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
)

// The run of the examples: a double purchase wall over a rail, with two floors to
// load from, and an arbor of 8 ft.
var (
	exampleRun = arbor.Run{
		LowerStop: 22 * units.Foot, UpperStop: 53 * units.Foot,
		HeadBlock: 55 * units.Foot, LoftBlocks: 54 * units.Foot, Rail: 20 * units.Foot,
		Bridges: []arbor.Bridge{
			{Name: "loading bridge", Floor: 40 * units.Foot, Low: 1 * units.Foot, High: 6 * units.Foot},
			{Name: "rail", Floor: 21 * units.Foot, High: 6 * units.Foot},
		},
	}
	exampleFrame = arbor.Frame{Length: 8 * units.Foot, Room: 6 * units.Foot, Capacity: 1400 * units.Pound}
	exampleRide  = arbor.Ride{Ratio: 2, MadeOff: 4 * units.Foot, Bed: 6 * units.Inch}
)

// What the run gives the batten, and whether a show's trims are in it.
func ExampleRun_Fly() {
	flight, err := exampleRun.Fly(exampleFrame, exampleRide)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Println("arbor flies", us.Format(flight.Arbor), "and the batten", us.Format(flight.Batten))
	fmt.Println("trims from", us.Format(flight.Lowest), "to", us.Format(flight.Highest))
	fmt.Println("to the loft blocks", us.Format(flight.UnderLoft.Clear))
	trims, err := flight.Trims(5*units.Foot, 52*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("reached:", trims.Reached(), "- over at low trim", us.Format(trims.Below), "and at high trim", us.Format(trims.Above))
	// Output:
	// arbor flies 23' 0" and the batten 46' 0"
	// trims from 4' 0" to 50' 0"
	// to the loft blocks 4' 0"
	// reached: false - over at low trim 1' 0" and at high trim -2' 0"
}

// With the batten in, the arbor is high: from the loading bridge arms come to the
// lowest pieces alone.
func ExampleFlight_Reach() {
	flight, err := exampleRun.Fly(exampleFrame, exampleRide)
	if err != nil {
		fmt.Println(err)
		return
	}
	stack := arbor.Stack{Show: []arbor.Row{{Name: "44", Count: 30, Mass: 44 * units.Pound, Thickness: 2 * units.Inch}}}
	for _, trim := range []units.Length{4 * units.Foot, 14 * units.Foot} {
		r, err := flight.Reach("loading bridge", trim, stack)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("batten at %s: pieces %d to %d, on the rods %s to %s\n",
			units.US.Format(trim), r.First, r.Last, units.US.Format(r.From), units.US.Format(r.To))
	}
	// Output:
	// batten at 4' 0": pieces 1 to 3, on the rods 0' 0" to 0' 6"
	// batten at 14' 0": pieces 4 to 30, on the rods 0' 6" to 5' 6"
}

// A piece is in reach while the batten is between two trims.
func ExampleFlight_Window() {
	flight, err := exampleRun.Fly(exampleFrame, exampleRide)
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := flight.Window("loading bridge", 58*units.Inch, 60*units.Inch)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("the piece at 58 in: batten from", units.US.Format(w.Low), "to", units.US.Format(w.High))
	// Output:
	// the piece at 58 in: batten from 13' 0" to 22' 8"
}

// Pieces that no floor comes to, and an arbor that stands over the loaders.
func ExampleFlight_Access() {
	flight, err := exampleRun.Fly(exampleFrame, exampleRide)
	if err != nil {
		fmt.Println(err)
		return
	}
	stack := arbor.Stack{Show: []arbor.Row{{Name: "44", Count: 30, Mass: 44 * units.Pound, Thickness: 2 * units.Inch}}}
	for _, b := range exampleRun.Bridges {
		a, err := flight.Access(b.Name, stack)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %d of %d pieces; above reach: %v, up to a trim of %s\n", b.Name, a.Reached, a.Pieces, a.Passes(), units.US.Format(a.OverAt.High))
	}
	// Output:
	// loading bridge: 30 of 30 pieces; above reach: true, up to a trim of 13' 0"
	// rail: 27 of 30 pieces; above reach: true, up to a trim of 50' 0"
}

// How high may the rail be for trims from 5 to 45 ft?
func ExampleRun_HighestStop() {
	stops, err := exampleRun.HighestStop(exampleFrame, exampleRide, 5*units.Foot, 45*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Println("as made off today:", us.Format(stops.Today.LowerStop))
	fmt.Println("made off anew:", us.Format(stops.Anew.LowerStop), "with", us.Format(stops.Anew.Freed), "freed")
	// Output:
	// as made off today: 24' 6"
	// made off anew: 25' 0" with 3' 0" freed
}

// How tall may the arbor be over the rail as it is, and what does that hold?
func ExampleRun_LongestArbor() {
	lengths, err := exampleRun.LongestArbor(exampleFrame, exampleRide, 5*units.Foot, 45*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	longest := lengths.Anew
	fmt.Println(units.US.Format(longest.Length), "long, with room for", units.US.Format(longest.Room))
	frame := longest.Of(exampleFrame)
	stock := arbor.Stock{{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 90}}
	most, err := frame.Fill(arbor.Wanted{Show: frame.Capacity}, stock, arbor.NeverArborHeavy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("at most", most.Call(), "in", units.US.Format(most.Height))
	// Output:
	// 11' 0" long, with room for 9' 0"
	// at most 31 of the 44 in 5' 2"
}

// The load calls for more than fits: how much more compact must the pieces be?
func ExampleFrame_Compact() {
	c, err := exampleFrame.Compact(arbor.Wanted{Show: 1350 * units.Pound})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("at least", units.US.Format(c.PerHeight), "of stack")
	fmt.Println("a piece of 44 lb at most", units.US.Format(c.Thickness(44*units.Pound)), "thick")
	density, err := c.Density(13*units.Inch, 6*units.Inch)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("cut 13 by 6 in:", units.Metric.Format(density), "where steel has 7850 kg/m³")
	// Output:
	// at least 225 lb/ft of stack
	// a piece of 44 lb at most 0' 2 3/8" thick
	// cut 13 by 6 in: 6653.8 kg/m³ where steel has 7850 kg/m³
}

// Single against double purchase on one wall.
func ExampleVenue_Compare() {
	venue := arbor.Venue{
		Run:   arbor.Run{LowerStop: 2 * units.Foot, UpperStop: 60 * units.Foot},
		Frame: arbor.Frame{Tare: 100 * units.Pound, Length: 7.5 * units.Foot, Room: 6 * units.Foot, Capacity: 1600 * units.Pound},
		Stock: arbor.Stock{{Name: "20", Mass: 20 * units.Pound, Thickness: 1 * units.Inch, Count: 200}},
		Bare:  100 * units.Pound, Load: 600 * units.Pound,
		Low: 4 * units.Foot, High: 52 * units.Foot, MadeOff: 4 * units.Foot,
	}
	options, err := venue.Compare(1, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	for i, name := range []string{"single", "double"} {
		o := options[i]
		fmt.Printf("%s: arbor of %s flies %s, lower stop at %s, %s freed; %d pieces; hangs at most %s\n", name,
			us.Format(o.Frame.Length), us.Format(o.Travel), us.Format(o.Anew.Stop.LowerStop), us.Format(o.Anew.Stop.Freed),
			o.Stack.Pieces, us.Format(o.Anew.Hangs))
	}
	// Output:
	// single: arbor of 4' 0" flies 48' 0", lower stop at 8' 0", 6' 0" freed; 30 pieces; hangs at most 1600 lb
	// double: arbor of 6' 11" flies 24' 0", lower stop at 29' 1", 27' 1" freed; 65 pieces; hangs at most 750 lb
}

// Does the border at 20 ft go out of sight of the front row?
func ExampleFlight_Hides() {
	section := arbor.Section{
		Seats: []arbor.Seat{{Name: "row A", Distance: 20 * units.Foot, Eye: 1 * units.Foot}},
		Edges: []arbor.Edge{
			{Name: "proscenium", Height: 20 * units.Foot},
			{Name: "first border", Upstage: 10 * units.Foot, Height: 22 * units.Foot},
		},
	}
	flight, err := exampleRun.Fly(exampleFrame, exampleRide)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, drop := range []units.Length{10 * units.Foot, 24 * units.Foot} {
		h, err := flight.Hides(section, 20*units.Foot, drop)
		if err != nil {
			fmt.Println(err)
			return
		}
		us := units.US
		fmt.Printf("a drop of %s is out of sight at %s; %s looks under the %s; reached: %v, %s to spare\n",
			us.Format(drop), us.Format(h.Trim), h.Hidden.Seat, h.Hidden.Edge, h.Out(), us.Format(h.Spare))
	}
	// Output:
	// a drop of 10' 0" is out of sight at 39' 0"; row A looks under the first border; reached: true, 11' 0" to spare
	// a drop of 24' 0" is out of sight at 53' 0"; row A looks under the first border; reached: false, -3' 0" to spare
}
