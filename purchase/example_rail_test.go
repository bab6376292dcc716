package purchase_test

import (
	"fmt"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// loaded is the set of the other examples with 500 lb on the batten and an arbor a little short of it, an idler of 60 lb below.
var loaded = purchase.Bodies{
	Pulls: []units.Force{300 * units.PoundForce, 200 * units.PoundForce},
	Arbor: 990 * units.Pound, Idler: 60 * units.Pound,
}

// Three ropes stand at the rail of a double purchase set, and two of them are live.
func ExampleReeved_RailRopes() {
	r, err := wing.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, rope := range r.RailRopes() {
		fmt.Printf("%v: %s to %s, pulled down the batten flies %v\n", rope.Role, rope.From, rope.To, rope.Moves)
	}
	// Output:
	// dead end: rail dead end to arbor foot, pulled down the batten flies neither way
	// inner rope: arbor foot to idler, pulled down the batten flies out
	// outer rope: idler to head block, pulled down the batten flies in
}

// Before the lock is opened the hands feel which rope is the tighter.
func ExampleReeved_Feel() {
	r, err := wing.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	feel, err := r.Feel(5*units.Foot, loaded)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Printf("the %v is the tighter, by %s; %s more and the lock alone does not hold it\n", feel.Tight, us.Format(feel.More), us.Format(feel.Spare))
	// Output:
	// the inner rope is the tighter, by 17.6 lbf; 12.6 lbf more and the lock alone does not hold it
}

// With drag at every sheave a set stays by itself within a band, which is not as wide to both sides.
func ExampleReeved_Stays() {
	l := wing
	l.Drag = 0.02
	r, err := l.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	band, err := r.Stays(5*units.Foot, loaded)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("runs out below", units.US.Format(band.ArborHeavy), "and in above", units.US.Format(band.BattenHeavy))
	// Output:
	// runs out below -45.1 lbf and in above 41.8 lbf
}

// What the hand must do to bring the batten from rest to 3 ft/s within two seconds, on its way out, and to hold that speed.
func ExampleReeved_HandFor() {
	l := wing
	l.Drag = 0.02
	r, err := l.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	start := purchase.Speeding{Way: purchase.Out, Gain: 1.5 * units.FootPerSecondSquared}
	keep := purchase.Speeding{Way: purchase.Out, Speed: 3 * units.FootPerSecond}
	for _, wish := range []purchase.Speeding{start, keep} {
		hand, err := r.HandFor(5*units.Foot, loaded, wish)
		if err != nil {
			fmt.Println(err)
			return
		}
		gain, err := r.Gain(5*units.Foot, loaded, purchase.Out, wish.Speed, hand)
		fmt.Printf("%s on the %v: it gains %s %v\n", units.US.Format(hand.Pull), hand.Rope, units.US.Format(gain), err)
	}
	// Output:
	// 102.9 lbf on the inner rope: it gains 1.5 ft/s² <nil>
	// 63.9 lbf on the inner rope: it gains 0 ft/s² <nil>
}

// To take off twice a length of rope, raise the idler by it, and bear its weight.
func ExampleReeved_RaiseIdler() {
	r, err := wing.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	raised, err := r.RaiseIdler(6*units.Inch, 60*units.Pound)
	fmt.Println(units.US.Format(raised.Slack), "of rope, with", units.US.Format(raised.Force), err)
	// Output:
	// 1' 0" of rope, with 60 lbf <nil>
}

// A batten at 10 ft/s on lines that its weight has stretched by 0.3 in hits them far harder than it hangs.
func ExampleJolt() {
	factor, err := purchase.Jolt(10*units.FootPerSecond, 0.3*units.Inch)
	fmt.Printf("%.1f times %v\n", factor, err)
	// Output:
	// 12.2 times <nil>
}
