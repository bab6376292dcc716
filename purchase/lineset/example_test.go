package lineset_test

import (
	"encoding/json"
	"fmt"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// A set is described, rigged, and asked. The sets of these examples are written
// out in full in demo_test.go.
func Example() {
	set := electric()
	rigged, err := set.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	c := rigged.Counterweight()
	fmt.Println("wanted at the arbor:", us.Format(c.Loaded.Wanted))
	fmt.Println("call:", c.Stack.Call())
	worst := rigged.Balance().Worst()
	fmt.Println("worst out of balance:", us.Format(worst.Imbalance), "at", us.Format(worst.Trim))
	t := rigged.Travel()
	fmt.Println("reaches", us.Format(t.Lowest), "to", us.Format(t.Highest))
	line, tension := rigged.Low().WorstLine()
	fmt.Println("most loaded: line", line, "with", us.Format(tension))
	// Output:
	// wanted at the arbor: 936.24 lb
	// call: pipe weight 3 of the 44, 1 of the 22; show weight 15 of the 44, 1 of the 22, with 2 spreader plates
	// worst out of balance: -9.9 lbf at 28' 0"
	// reaches 4' 0" to 50' 0"
	// most loaded: line 3 with 137.2 lbf
}

// Every check says its demand, its limit, their ratio, and on whose word.
func ExampleRigged_Checks() {
	set := electric()
	set.High = 52 * units.Foot
	rigged, err := set.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	for _, c := range rigged.Checks() {
		if c.Verdict == lineset.Exceeds {
			fmt.Printf("%s: %s of %s, %.2f, %v (%s)\n", c.Name, us.Format(c.Demand), us.Format(c.Limit), c.Ratio, c.Verdict, c.Basis)
		}
	}
	// Output:
	// travel to high trim: 48' 0" of 46' 0", 1.04, exceeds (batten travel between the arbor's stops, counted up from the lowest trim reached)
}

// Working lists the lines that an engineer would write.
func ExampleTravel_Working() {
	rigged, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, step := range rigged.Travel().Working(units.US) {
		fmt.Printf("%s = %s = %s\n", step.Name, step.Formula, step.Result)
	}
	// Output:
	// batten travel = 2 × 23' 0" of the arbor = 46' 0"
	// highest trim reached = 4' 0" as made off + 46' 0" = 50' 0"
	// arbor travel wanted = (28' 0" − 5' 0") / 2 = 11' 6"
	// overtravel at low trim = 5' 0" wanted − 4' 0" reached = 1' 0"
	// overtravel at high trim = 50' 0" reached − 28' 0" wanted = 22' 0"
}

// A house is plain data; one Rig checks and computes all of it.
func ExampleHouse_Rig() {
	rigged, err := house().Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	for set := range rigged.Sets() {
		fmt.Println(set.Set().Name, set.Ratio(), set.Counterweight().Stack.Pieces, "pieces", "exceeds:", set.Exceeds())
	}
	for _, p := range rigged.Totals().Pieces {
		fmt.Println(p.Used, "of", p.Stock, "of the", p.Name)
	}
	// Output:
	// first electric 2 20 pieces exceeds: false
	// border 1 3 pieces exceeds: false
	// 19 of 60 of the 44
	// 4 of 20 of the 22
	// 0 of 20 of the 11
}

// Every fault of a text comes together, each with the path of its field, the
// names it stands under, and what would be right.
func ExampleHouse_UnmarshalJSON() {
	var house lineset.House
	err := json.Unmarshal([]byte(`{
		"name": "Quillmoor Playhouse",
		"sets": [{
			"name": "border",
			"low_trim": "20",
			"hight_trim": "44 ft",
			"hang": [{ "name": "cloth", "mass": "71 ft", "from": "1 ft", "to": "41 ft" }]
		}]
	}`), &house)
	fmt.Println(err)
	// Output:
	// sets[0].low_trim ("border"): "20" has no unit; want a length such as 24' 6 1/2" or 7.48 m
	// sets[0].hight_trim ("border"): "hight_trim" is not known; want perhaps "high_trim"; the fields here are "name", "rigging", "like", "low_trim", "high_trim", "balance", "hang"
	// sets[0].hang[0].mass ("cloth" of "border"): "71 ft" is a length, not a mass; want a mass such as 12.5 lb or 5.7 kg
}

// What stands on the deck is not carried until the batten lifts it: the balance
// jumps there.
func ExampleRigged_Balance() {
	set := electric()
	set.Low, set.High = 15*units.Foot, 40*units.Foot
	set.Hang = load.Hang{{Name: "flat", Mass: 40 * units.Pound, From: 10 * units.Foot, To: 30 * units.Foot, Height: 16 * units.Foot, OnDeck: load.Stands}}
	rigged, err := set.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range rigged.Balance().Curve {
		fmt.Println(units.US.Format(p.Trim), units.US.Format(p.Imbalance))
	}
	// Output:
	// 15' 0" -20.4 lbf
	// 16' 0" -21.2 lbf
	// 16' 0" 18.8 lbf
	// 40' 0" -1 lbf
}
