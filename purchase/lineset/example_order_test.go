package lineset_test

import (
	"errors"
	"fmt"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// At the lowest trim the stop holds a batten-heavy set, so that only arbor-heavy is
// limited there: the batten is loaded first, then the arbor.
func ExampleRigged_Order() {
	rigged, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	limits := lineset.OrderLimits{
		ArborHeavy:  lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: "house rule"},
		RestsOnStop: true,
	}
	plan, err := rigged.Order(lineset.Loading, limits)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range plan.Check.Lines(units.US) {
		fmt.Println(line)
	}
	fmt.Println("hand-overs:", plan.Check.HandOvers)
	// Output:
	// begin at 4' 0" 17.4 lbf batten-heavy: rests on the stop
	// deck: hang 12 fixtures, then 329.4 lbf batten-heavy: rests on the stop
	// deck: hang cable tail, then 353.4 lbf batten-heavy: rests on the stop
	// bridge: add 15 of the 44 with 2 spreader plates, then 20.9 lbf batten-heavy: rests on the stop
	// bridge: add 1 of the 22, then 9.9 lbf batten-heavy: rests on the stop
	// hand-overs: 1
}

// Where no order keeps within the limits, that is proved, and the error says what
// would allow one.
func ExampleNoOrderError() {
	rigged, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	house := "house rule"
	_, err = rigged.Order(lineset.Loading, lineset.OrderLimits{
		ArborHeavy:  lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: house},
		BattenHeavy: lineset.ForceLimit{Max: 200 * units.PoundForce, Basis: house},
	})
	var none *lineset.NoOrderError
	if errors.As(err, &none) {
		us := units.US
		fmt.Println("either way:", us.Format(none.Either))
		fmt.Println("arbor-heavy:", us.Format(none.ArborHeavy))
		fmt.Println("batten-heavy:", us.Format(none.BattenHeavy))
	}
	// Output:
	// either way: 157.8 lbf
	// arbor-heavy: 113.8 lbf
	// batten-heavy: 262.2 lbf
}

// A cloth that piles weighs little at the deck: it is weighted in stages, as it leaves the
// deck, at the trims at which the bridge reaches the arbor.
func ExampleRigged_WorkTrims() {
	set := electric()
	set.Balance = lineset.AtHigh
	set.Hang = load.Hang{{Name: "cloth", Mass: 300 * units.Pound, From: 1 * units.Foot, To: 41 * units.Foot, Height: 12 * units.Foot, OnDeck: load.Piles}}
	rigged, err := set.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	limits := lineset.OrderLimits{
		ArborHeavy:  lineset.ForceLimit{Max: 60 * units.PoundForce, Basis: "house rule"},
		BattenHeavy: lineset.ForceLimit{Max: 150 * units.PoundForce, Basis: "house rule"},
	}
	deck, bridge := 6*units.Foot, 12*units.Foot
	plan, err := rigged.Order(lineset.Loading, limits, rigged.WorkTrims(deck, bridge)...)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range plan.Check.Lines(units.US) {
		fmt.Println(line)
	}
	// Output:
	// begin at 4' 0" 17.4 lbf batten-heavy: rests on the stop
	// deck: hang cloth, then 117.4 lbf batten-heavy: rests on the stop
	// bridge: add 8 of the 44 with 1 spreader plate, then 59.8 lbf arbor-heavy: would run out
	// rail: open the rope lock, then 59.8 lbf arbor-heavy: would run out
	// rail: fly to 12' 0", then 133.6 lbf batten-heavy: would run in
	// rail: shut the rope lock, then 133.6 lbf batten-heavy: would run in
	// bridge: add 5 of the 44 with 1 spreader plate, then 22.3 lbf batten-heavy: would run in
	// bridge: add 1 of the 22, then 11.3 lbf batten-heavy: would run in
}

// An order of the crew's own is gone through step by step; a bad order is no error.
func ExampleRigged_CheckOrder() {
	rigged, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	order := lineset.Order{From: lineset.FromLoaded, Steps: []lineset.OrderStep{
		{Act: lineset.StripItem, Item: "12 fixtures"},
		{Act: lineset.TakePieces, Piece: "22", Count: 1},
	}}
	check, err := rigged.CheckOrder(order, lineset.OrderLimits{
		ArborHeavy: lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: "house rule"}, RestsOnStop: true,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range check.Lines(units.US) {
		fmt.Println(line)
	}
	order.Steps = append(order.Steps, lineset.OrderStep{Act: lineset.StripItem, Item: "12 fixtures"})
	_, err = rigged.CheckOrder(order, lineset.OrderLimits{})
	fmt.Println(err)
	// Output:
	// begin at 4' 0" 9.9 lbf batten-heavy: rests on the stop
	// deck: strip 12 fixtures, then 302.1 lbf arbor-heavy: would run out; exceeds the limit given
	// bridge: take out 1 of the 22, then 291.1 lbf arbor-heavy: would run out; exceeds the limit given
	// steps[2].item (step 3, strip 12 fixtures): "12 fixtures" does not hang; want an item that hangs
}

// How wrong may what is written be? The stack was chosen for the masses as they are
// written; the limits say how far the hang may be off them.
func ExampleRigged_Estimates() {
	rigged, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	limit := lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: "house rule"}
	limits := lineset.OrderLimits{ArborHeavy: limit, BattenHeavy: limit, RestsOnStop: true}
	plan, err := rigged.Order(lineset.Loading, limits)
	if err != nil {
		fmt.Println(err)
		return
	}
	// Loaded, it is flown over the show's travel.
	order := plan.Order
	order.Steps = append(order.Steps,
		lineset.OrderStep{Act: lineset.UnlockRope}, lineset.OrderStep{Act: lineset.FlyTo, Trim: 28 * units.Foot})
	e, err := rigged.Estimates(order, limits)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Printf("all: %.0f%% heavier at %s, %.0f%% lighter at %s\n", 100*e.All.Heavier.Share, us.Format(e.All.Heavier.Trim),
		100*e.All.Lighter.Share, us.Format(e.All.Lighter.Trim))
	most := e.Items[e.Matters-1]
	fmt.Printf("matters most: %s, %s heavier or %s lighter\n", most.Name, us.Format(most.Heavier.Mass), us.Format(most.Lighter.Mass))
	// Output:
	// all: 12% heavier at 4' 0", 12% lighter at 28' 0"
	// matters most: 12 fixtures, 40.07 lb heavier or 40.13 lb lighter
}

// From one night's hang to the next: what is on both nights stays.
func ExampleRiggedHouse_ChangeOver() {
	tonight, err := house().Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	next := house()
	next.Sets[0].Hang = load.Hang{next.Sets[0].Hang[0], {Name: "projector", Mass: 60 * units.Pound, From: 20 * units.Foot, To: 22 * units.Foot}}
	tomorrow, err := next.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	change, err := tonight.ChangeOver(tomorrow, lineset.OrderLimits{
		ArborHeavy: lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: "house rule"}, RestsOnStop: true,
	}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range change.Lines(units.US) {
		fmt.Println(line)
	}
	// Output:
	// first electric: bridge handles 110 lb; stays: 12 fixtures
	//   begin at 4' 0" 9.9 lbf batten-heavy: rests on the stop
	//   bridge: take out 1 of the 22, then 20.9 lbf batten-heavy: rests on the stop
	//   deck: strip cable tail, then 3.1 lbf arbor-heavy: would run out
	//   deck: hang projector, then 56.9 lbf batten-heavy: rests on the stop
	//   bridge: add 2 of the 44, then 12.9 lbf batten-heavy: rests on the stop
	// border: no change
	// in all 0 of the 44 out, 2 in
	// in all 1 of the 22 out, 0 in
	// 1 of 2 sets change; the bridge handles 110 lb in all, with 2 hand-overs
}
