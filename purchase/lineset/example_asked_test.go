package lineset_test

import (
	"fmt"

	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// At one trim: what is carried, how the lines share it, what blocks and dead ends bear.
func ExampleRigged_At() {
	set, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	state, err := set.At(20 * units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Println("carried:", us.Format(state.Carried))
	for i, line := range state.Share.Lines {
		fmt.Printf("line %d: %s\n", i+1, us.Format(line.Tension))
	}
	fmt.Println("head block:", us.Format(state.Ropes.Load(purchase.HeadBlock).Size()))
	fmt.Println("head beam:", us.Format(-state.Ropes.On(purchase.HeadBeam).Up), "down")
	// Output:
	// carried: 450.15 lb
	// line 1: 42.7 lbf
	// line 2: 128.6 lbf
	// line 3: 131.7 lbf
	// line 4: 128.6 lbf
	// line 5: 18.7 lbf
	// head block: 737.7 lbf
	// head beam: 1078.6 lbf down
}

// What answers the hang: pieces to call, and how each figure comes about.
func ExampleRigged_Counterweight() {
	set, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := set.Counterweight()
	fmt.Println(c.Stack.Call())
	for _, step := range c.Working(units.US) {
		fmt.Printf("%s = %s = %s (%s)\n", step.Name, step.Formula, step.Result, step.Basis)
	}
	// Output:
	// pipe weight 3 of the 44, 1 of the 22; show weight 15 of the 44, 1 of the 22, with 2 spreader plates
	// carried, with what hangs at 5' 0" = 450.1 lb at standard gravity = 450.1 lbf (clear: all of it; piled: by the height off the deck; standing: nothing until it lifts)
	// rope weight at 5' 0" = lift lines 0.55 lb/ft × (52' 6" − 5' 0") + hand line 0.167 lb/ft × 8' 0" = 27.5 lbf batten-heavy (T = T₀ + w·(z − z₀) along each path; w·(y − x) + w_hand·a·(hand line per batten travel) where parts hang plumb)
	// carried, with what hangs at 28' 0" = 450.1 lb at standard gravity = 450.1 lbf (clear: all of it; piled: by the height off the deck; standing: nothing until it lifts)
	// rope weight at 28' 0" = lift lines 0.55 lb/ft × (41' 0" − 28' 0") + hand line 0.167 lb/ft × 8' 0" = 8.5 lbf batten-heavy (T = T₀ + w·(z − z₀) along each path; w·(y − x) + w_hand·a·(hand line per batten travel) where parts hang plumb)
	// wanted at the arbor, with what hangs = 2 × the mean of 477.6 lbf and 458.6 lbf, as mass = 936.2 lb (constant length of each rope along its path: ratio −dx/dy; virtual work, no drag)
	// carried, bare batten at 4' 0" = 114.1 lb at standard gravity = 114.1 lbf (clear: all of it; piled: by the height off the deck; standing: nothing until it lifts)
	// rope weight at 4' 0" = lift lines 0.55 lb/ft × (53' 0" − 4' 0") + hand line 0.167 lb/ft × 8' 0" = 28.3 lbf batten-heavy (T = T₀ + w·(z − z₀) along each path; w·(y − x) + w_hand·a·(hand line per batten travel) where parts hang plumb)
	// carried, bare batten at 50' 0" = 114.1 lb at standard gravity = 114.1 lbf (clear: all of it; piled: by the height off the deck; standing: nothing until it lifts)
	// rope weight at 50' 0" = lift lines 0.55 lb/ft × (30' 0" − 50' 0") + hand line 0.167 lb/ft × 8' 0" = 9.7 lbf arbor-heavy (T = T₀ + w·(z − z₀) along each path; w·(y − x) + w_hand·a·(hand line per batten travel) where parts hang plumb)
	// wanted at the arbor, bare batten = 2 × the mean of 142.4 lbf and 104.5 lbf, as mass = 246.9 lb (constant length of each rope along its path: ratio −dx/dy; virtual work, no drag)
	// pipe weight wanted = 246.9 lb for the bare batten − 96.0 lb arbor = 150.9 lb (common practice: it stays when the batten is stripped)
	// show weight wanted = 936.2 lb − 246.9 lb = 689.3 lb (constant length of each rope along its path: ratio −dx/dy; virtual work, no drag)
	// pipe weight = 3 × 44.0 lb + 1 × 22.0 lb = 154.0 lb (whole pieces, added up exactly)
	// show weight = 15 × 44.0 lb + 1 × 22.0 lb = 682.0 lb (whole pieces, added up exactly; closest to what is wanted, then fewest)
	// spreader plates = 2 under and between the show weight = 5.0 lb (common practice: under the first show piece and after each full interval)
	// left over = 841.0 lb stacked − 840.2 lb wanted = 0.8 lb (positive: too heavy at the arbor)
	// arbor with stack = 96.0 lb + 841.0 lb = 937.0 lb (whole pieces, added up exactly)
}

// The set flown slowly out by hand, with drag: what the head block bears then.
func ExampleRigged_Run() {
	described := electric()
	described.Rigging.Drag = 0.02
	set, err := described.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, way := range []purchase.Way{purchase.Out, purchase.In} {
		run, err := set.Run(20*units.Foot, way)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: pull %s on the %v, head block %s\n", way, units.US.Format(run.Pull), run.Rope, units.US.Format(run.Load(purchase.HeadBlock).Size()))
	}
	// Output:
	// out: pull 38.9 lbf on the inner rope, head block 764.6 lbf
	// in: pull 44.1 lbf on the outer rope, head block 770.2 lbf
}

// Half as much again moves in a double set, and a quarter less is felt.
func ExampleRigged_Felt() {
	set, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	felt, err := set.Felt(20 * units.Foot)
	fmt.Println("moves:", units.US.Format(felt.Moving), "felt at the batten:", units.US.Format(felt.Batten), err)
	// Output:
	// moves: 1437.28 lb felt at the batten: 734.53 lb <nil>
}

// One forgotten piece, and ten, let go at high trim.
func ExampleRigged_LetGoAfter() {
	described := electric()
	described.Rigging.Drag = 0.02
	set, err := described.Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	for _, forgotten := range []int{1, 10} {
		run, err := set.LetGoAfter(lineset.Order{From: lineset.FromLoaded, Trim: 28 * units.Foot, Steps: []lineset.OrderStep{
			{Act: lineset.TakePieces, Piece: "22", Count: 1},
			{Act: lineset.TakePieces, Piece: "44", Count: forgotten},
			{Act: lineset.AddPieces, Piece: "22", Count: 1},
		}})
		if err != nil {
			fmt.Println(err)
			return
		}
		if run.Way == 0 {
			fmt.Printf("%d: drag holds it\n", forgotten)
			continue
		}
		fmt.Printf("%d: %v to %s in %s, %s at the stop, as after a fall of %s\n", forgotten, run.Way, us.Format(run.Ends), us.Format(run.Time), us.Format(run.Speed), us.Format(run.Drop))
	}
	// Output:
	// 1: drag holds it
	// 10: in to 4' 0" in 2.23 s, 21.84 ft/s at the stop, as after a fall of 7' 4 15/16"
}

// What it takes to fly the batten out by hand: up to 3 ft/s in two seconds, and to rest over the last four feet.
func ExampleRigged_Fly() {
	set, err := electric().Rig(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	flown, err := set.Fly(5*units.Foot, 28*units.Foot, 3*units.FootPerSecond, 2*units.Second, 4*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Println("time:", us.Format(flown.Time))
	for _, phase := range flown.Phases {
		fmt.Printf("to %s in %s: %s on the %v, then %s on the %v, lines at %.2f\n", us.Format(phase.To), us.Format(phase.Time),
			us.Format(phase.First.Pull), phase.First.Rope, us.Format(phase.Last.Pull), phase.Last.Rope, phase.Lines)
	}
	// Output:
	// time: 10 s
	// to 8' 0" in 2 s: 43.5 lbf on the inner rope, then 41 lbf on the inner rope, lines at 1.05
	// to 24' 0" in 5.33 s: 6.6 lbf on the inner rope, then 6.6 lbf on the outer rope, lines at 1.00
	// to 28' 0" in 2.67 s: 32.2 lbf on the outer rope, then 35.5 lbf on the outer rope, lines at 0.97
}

// One stock for every set of the house.
func ExampleRiggedHouse_Allot() {
	rigged, err := house().Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	allotted, err := rigged.Allot()
	if err != nil {
		fmt.Println(err)
		return
	}
	i := 0
	for set := range rigged.Sets() {
		fmt.Println(set.Set().Name+":", allotted.Stacks[i].Call())
		i++
	}
	// Output:
	// first electric: pipe weight 3 of the 44, 1 of the 22; show weight 15 of the 44, 1 of the 22, with 2 spreader plates
	// border: pipe weight 1 of the 22; show weight 1 of the 44, 1 of the 22, with 1 spreader plate
}
