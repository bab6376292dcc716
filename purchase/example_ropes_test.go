package purchase_test

import (
	"fmt"
	"slices"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A handbook's factor for half a turn, and what it makes of a quarter turn.
func ExampleDrag() {
	drag, err := purchase.DragPerHalfTurn(1.04)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, turn := range []units.Angle{180 * units.Degree, 90 * units.Degree, 0} {
		k, err := drag.Factor(turn)
		fmt.Printf("%3.0f degrees: %.3f %v\n", turn.In(units.Degree), k, err)
	}
	// Output:
	// 180 degrees: 1.040 <nil>
	//  90 degrees: 1.028 <nil>
	//   0 degrees: 1.000 <nil>
}

// Two models of one tackle.
func ExampleTackle() {
	tackle := purchase.Tackle{Parts: 4, Sheaves: 4}
	load := 1000 * units.PoundForce
	series, err := tackle.Pull(load, purchase.PlainBearings)
	if err != nil {
		fmt.Println(err)
		return
	}
	rule, err := tackle.PullByRule(load, purchase.TenPerCentRule)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("by the bearings:", units.US.Format(series))
	fmt.Println("by the rule:    ", units.US.Format(rule))
	// Output:
	// by the bearings: 308.7 lbf
	// by the rule:     350 lbf
}

// A hand of 40 lbf is to hold 250 lbf with a fibre rope on a steel rail.
func ExampleTurnsWanted() {
	turns, err := purchase.TurnsWanted(250*units.PoundForce, 40*units.PoundForce, purchase.FrictionNylonOnTube)
	if err != nil {
		fmt.Println(err)
		return
	}
	held, err := purchase.Wraps{Turns: 3, Friction: purchase.FrictionNylonOnTube}.Holds(40 * units.PoundForce)
	fmt.Printf("%.2f turns; 3 hold %s, tended, %v\n", turns, units.US.Format(held), err)
	// Output: 1.46 turns; 3 hold 1735 lbf, tended, <nil>
}

// The rope lock was found to slip, and without a hand nothing holds.
func ExampleTurnsWanted_nobody() {
	_, err := purchase.TurnsWanted(250*units.PoundForce, 0, purchase.FrictionNylonOnTube)
	fmt.Println(err)
	// Output: hand: is missing; want the pull of the hand that tends the rope (turns alone hold nothing)
}

// A lift line held against a design factor that the house asks for.
func ExampleRopeUse_Check() {
	rope, err := purchase.StandardRope("1/4 in 7x19 galvanised")
	if err != nil {
		fmt.Println(err)
		return
	}
	ratio, err := purchase.SheaveRatio(8*units.Inch, rope.Diameter)
	if err != nil {
		fmt.Println(err)
		return
	}
	bend, err := purchase.BendingKeeps(ratio)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := purchase.RopeUse{Rope: rope, Termination: purchase.ClipsKeep, Bending: bend}.Check(320*units.PoundForce, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Printf("over a sheave of %.0f times the rope %s, at the clips %s\n", ratio, us.Format(c.OverSheave), us.Format(c.AtEnd))
	fmt.Printf("limit %s, pull %s: factor %.1f of %.0f wanted, within %v\n", us.Format(c.Limit), us.Format(c.Pull), c.Factor, c.Wanted, c.Within())
	// Output:
	// over a sheave of 32 times the rope 6538 lbf, at the clips 5600 lbf
	// limit 700 lbf, pull 320 lbf: factor 17.5 of 8 wanted, within true
}

func ExampleRopeStock_Stretch() {
	rope, err := purchase.StandardRope("1/4 in 7x19 galvanised")
	if err != nil {
		fmt.Println(err)
		return
	}
	longer, err := rope.Stretch(300*units.PoundForce, 90*units.Foot)
	fmt.Println(units.US.Format(longer), err)
	fmt.Println(rope.Basis)
	// Output:
	// 0' 0 3/4" <nil>
	// FAA AC 43.13-1B (1998), Table 7-3; MIL-W-83420 from memory (mass); stretch rule (common practice)
}

// A mule block that stands 9 inches off the plane of the head block, 25 feet away.
func ExampleFleetAngle() {
	angle, err := purchase.FleetAngle(9*units.Inch, 25*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	allowed, err := purchase.FleetOffset(25*units.Foot, purchase.FleetLimit)
	fmt.Printf("%.2f degrees; %.1f keeps %.1f mm off, %v\n", angle.In(units.Degree), purchase.FleetLimit.In(units.Degree), allowed.In(units.Millimetre), err)
	// Output: 1.72 degrees; 1.5 keeps 199.5 mm off, <nil>
}

// Line 1 is an inch off its groove in the head block where it comes up from the arbor. With the arbor at the top of its
// run that is a short lead: too short for this offset, and of all leads over the travel the worst.
func ExampleReeved_GeometryUse() {
	l := wing
	l.Loft = slices.Clone(l.Loft)
	l.Loft[0].Offsets = purchase.LineOffsets{Loft: 2 * units.Inch, Head: 1 * units.Inch}
	l.LiftDiameter, l.HandDiameter = units.Inch.Scale(0.25), units.Inch.Scale(0.75)
	l.Sheaves = purchase.Sheaves{
		Loft: 8 * units.Inch, Head: 12 * units.Inch, Arbor: 8 * units.Inch,
		HandHead: 12 * units.Inch, Idler: 10 * units.Inch, HandArbor: 6 * units.Inch,
	}
	r, err := l.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	// The limits are the caller's: here a fleet angle that is commonly kept, and what the makers of two ropes might ask.
	limits := purchase.GeometryLimits{Fleet: purchase.FleetLimit, LiftRatio: 30, HandRatio: 8}
	use, err := r.GeometryUse(4*units.Foot, 50*units.Foot, limits)
	if err != nil {
		fmt.Println(err)
		return
	}
	lead, sheave := use.Lead, use.Sheave
	fmt.Printf("%s, %s to %s at a trim of %s: %.2f°, %.0f%% of the limit\n",
		lead.Rope, lead.From, lead.To, units.US.Format(lead.Trim), lead.Angle.In(units.Degree), 100*lead.Use)
	fmt.Printf("%s, %s: %.0f to 1 where %.0f is wanted, %.0f%% of the limit\n", sheave.Rope, sheave.At, sheave.Ratio, sheave.Limit, 100*sheave.Use)
	// Output:
	// lift line 1, head block to arbor top at a trim of 4' 0": 2.39°, 159% of the limit
	// hand line, arbor foot: 8 to 1 where 8 is wanted, 100% of the limit
}
