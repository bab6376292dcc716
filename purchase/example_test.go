package purchase_test

import (
	"errors"
	"fmt"
	"slices"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Two pounds at the arbor answer one on the batten, in half its travel.
func Example() {
	us := units.US
	fmt.Println("counterweight:", us.Format(purchase.Double.Counterweight(500*units.Pound)))
	fmt.Println("arbor travel: ", us.Format(purchase.Double.ArborTravel(60*units.Foot)))
	fmt.Println("out of balance:", us.Format(purchase.Double.Imbalance(512*units.Pound, 1000*units.Pound)), "batten-heavy")
	// Output:
	// counterweight: 1000 lb
	// arbor travel:  30' 0"
	// out of balance: 12 lbf batten-heavy
}

// wing is a double purchase set over a rail at 14 ft, with two lines.
var wing = purchase.Layout{
	Kind:      purchase.Double,
	Loft:      []purchase.Loft{{Across: 8 * units.Foot, Height: 60 * units.Foot}, {Across: 28 * units.Foot, Height: 60 * units.Foot}},
	HeadBlock: 60 * units.Foot, DeadEnd: 61 * units.Foot,
	Rail: 14 * units.Foot, Idler: 13 * units.Foot, ArborLength: 6 * units.Foot,
	LiftMass: 11 * units.PoundPerHundredFeet, HandMass: 16.7 * units.PoundPerHundredFeet,
	Trim: 4 * units.Foot, ArborTop: 58 * units.Foot,
}

// The set balances at 500 lb on the batten near the middle of its travel; the
// lift lines' own weight makes it batten-heavy below and arbor-heavy above.
func ExampleLayout_Rig() {
	r, err := wing.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("ratio:", r.Ratio(), "hand line:", r.HandRatio())
	for _, trim := range []units.Length{5 * units.Foot, 25 * units.Foot, 45 * units.Foot} {
		i, err := r.Imbalance(trim, 500*units.Pound, 1005*units.Pound)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(units.US.Format(trim), units.US.Format(i))
	}
	// Output:
	// ratio: 2 hand line: 1
	// 5' 0" 10.1 lbf
	// 25' 0" 3.5 lbf
	// 45' 0" -3.1 lbf
}

// Double lift lines with a single hand line, and a mule block that leads line 2
// round an obstruction. The hand line then runs half as fast as the batten.
func ExampleReeved_Geometry() {
	l := wing
	l.Hand = purchase.Single
	l.Loft = slices.Clone(l.Loft)
	l.Loft[1].Mules = []purchase.Mule{{Name: "mule block", Across: 16 * units.Foot, Height: 63 * units.Foot}}
	r, err := l.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	g, err := r.Geometry(25 * units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	for _, part := range g.Hand.Parts {
		fmt.Printf("%s to %s: %s at %v of the batten's speed\n", part.From, part.To, us.Format(part.Length), part.Speed)
	}
	for _, turn := range g.Lift[1].Turns {
		fmt.Printf("%s turns line 2 by %.1f°\n", turn.At, turn.Angle.In(units.Degree))
	}
	// Three feet to make off at the batten, two at the dead end.
	cut, err := g.Lift[1].Cut(3*units.Foot, 2*units.Foot)
	fmt.Println("line 2 along its path:", us.Format(g.Lift[1].Length), "to cut:", us.Format(cut), err)
	// Output:
	// arbor foot to idler: 28' 6" at 0.5 of the batten's speed
	// idler to head block: 47' 0" at 0.5 of the batten's speed
	// head block to arbor top: 12' 6" at 0.5 of the batten's speed
	// loft block 2 turns line 2 by 76.0°
	// mule block turns line 2 by 24.7°
	// head block turns line 2 by 79.4°
	// arbor top turns line 2 by 180.0°
	// line 2 along its path: 89' 7 3/4" to cut: 94' 7 3/4" <nil>
}

func ExampleReeved_At() {
	r, err := wing.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	st, err := r.At(25*units.Foot, purchase.Bodies{
		Pulls: []units.Force{300 * units.PoundForce, 200 * units.PoundForce},
		Arbor: 1005 * units.Pound, Idler: 60 * units.Pound,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	for _, part := range st.Lift[0].Parts {
		fmt.Printf("%s to %s: %s to %s\n", part.From, part.To, us.Format(part.TensionFrom), us.Format(part.TensionTo))
	}
	fmt.Println("loft block 1:", us.Format(st.Load(purchase.LoftBlock(1)).Size()))
	fmt.Println("head block:", us.Format(st.Load(purchase.HeadBlock).Size()))
	fmt.Println("dead end 1:", us.Format(-st.Load(purchase.DeadEnd(1)).Up), "down")
	fmt.Println("head beam:", us.Format(-st.On(purchase.HeadBeam).Up), "down")
	// Output:
	// batten at line 1 to loft block 1: 300 lbf to 303.8 lbf
	// loft block 1 to head block: 303.8 lbf to 303.8 lbf
	// head block to arbor top: 303.8 lbf to 302.5 lbf
	// arbor top to dead end 1: 302.5 lbf to 304 lbf
	// loft block 1: 429.7 lbf
	// head block: 768.2 lbf
	// dead end 1: 304 lbf down
	// head beam: 1119 lbf down
}

// Everything that is wrong is reported together, each with its field.
func ExampleLayout_Validate() {
	bad := wing
	bad.Kind, bad.LiftMass, bad.Idler = 0, -1, 55*units.Foot
	err := bad.Validate()
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrMissing), errors.Is(err, units.ErrNegative))
	// Output:
	// kind: is missing; want "single", "double" or "triple"
	// lift_line_mass: -0.672 lb/ft (-1 kg/m) is negative; want 0 or more
	// idler: 55' 0" (16.764 m) is out of range; want less than the height of the arbor's foot, 52' 0" (15.8496 m)
	// rail: 14' 0" (4.2672 m) is out of range; want more than the idler's height, 55' 0" (16.764 m)
	// true true
}

// Any reeving may be laid: here three parts at the arbor, the lift line's end on
// the arbor itself.
func ExampleReeving_Rig() {
	r, err := purchase.Reeving{
		Lift: []purchase.Rope{{Name: "lift line", Path: []purchase.Stop{
			{Name: "batten", On: purchase.Batten, Across: 4},
			{Name: "loft block", On: purchase.Grid, Across: 4, Height: 18},
			{Name: "head block", On: purchase.HeadBeam, Height: 18},
			{Name: "arbor sheave", On: purchase.Arbor},
			{Name: "upper sheave", On: purchase.HeadBeam, Height: 18.5},
			{Name: "arbor", On: purchase.Arbor, Height: -0.1},
		}}},
		Trim: 2, ArborTop: 17,
	}.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	wanted, err := r.Counterweight(5, 100*units.Kilogram)
	fmt.Println(r.Ratio(), units.Metric.Format(wanted), err)
	// Output: 3 300 kg <nil>
}

// Five lines of 0.11 lb/ft drift by 0.825 lb for each foot that a double purchase batten flies. A chain on the arbor has to be
// heavy, since the arbor goes half the way and answers half.
func ExampleReeved_Drift() {
	layout := wing
	layout.LiftMass = 27.5 * units.PoundPerHundredFeet // two lines as heavy as five
	r, err := layout.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	flight := purchase.Flight{Low: 5 * units.Foot, High: 50 * units.Foot, Carried: 500 * units.Pound, Arbor: 1000 * units.Pound}
	show := func() {
		d, err := r.Drift(flight)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s low, %s high; even with %s\n", us.Format(d.Low.Imbalance), us.Format(d.High.Imbalance), us.Format(d.Even))
		flight.Arbor = d.Even
		if d, err = r.Drift(flight); err != nil {
			fmt.Println(err)
			return
		}
		first, last, ok := d.Balanced()
		fmt.Printf("then %s and %s, balanced %v from %s to %s\n", us.Format(d.Low.Imbalance), us.Format(d.High.Imbalance), ok, us.Format(first), us.Format(last))
	}
	show()
	flight.Chain = purchase.Chain{On: purchase.Arbor, Below: 6 * units.Foot, Hung: purchase.Looped, To: 40 * units.Foot, Length: 20 * units.Foot, Floor: 14 * units.Foot}
	if flight.Chain.Mass, err = r.EvenChain(flight); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("chain of", us.Format(flight.Chain.Mass))
	show()
	// Output:
	// 29.9 lbf low, -7.2 lbf high; even with 1022.63 lb
	// then 18.6 lbf and -18.6 lbf, balanced true from 27' 6" to 27' 6"
	// chain of 6.6 lb/ft
	// -33.4 lbf low, -33.4 lbf high; even with 955.8 lb
	// then 0 lbf and 0 lbf, balanced true from 5' 0" to 50' 0"
}

// A spring scale on the hand line weighs the batten: 46 lbf to fly out and 22 lbf to fly in, each read to a pound, say what hangs there
// and what the sheaves take.
func ExampleReeved_Weigh() {
	r, err := wing.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := r.Weigh(purchase.Weighing{
		Trim:  25 * units.Foot,
		On:    purchase.Bodies{Pulls: []units.Force{3, 2}, Arbor: 1005 * units.Pound, Idler: 60 * units.Pound},
		Out:   purchase.Pulled{Pull: 46 * units.PoundForce},
		In:    purchase.Pulled{Pull: 22 * units.PoundForce},
		Scale: 1 * units.PoundForce,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	us := units.US
	fmt.Printf("on the batten: %s, from %s to %s\n", us.Format(w.Carried.Value), us.Format(w.Carried.Least), us.Format(w.Carried.Most))
	fmt.Printf("out of balance: %s, from %s to %s\n", us.Format(w.Imbalance.Value), us.Format(w.Imbalance.Least), us.Format(w.Imbalance.Most))
	fmt.Printf("drag: %.4f, from %.4f to %.4f\n", float64(w.Drag.Value), float64(w.Drag.Least), float64(w.Drag.Most))
	// Output:
	// on the batten: 507.71 lb, from 506.74 lb to 508.68 lb
	// out of balance: 11.2 lbf, from 10.2 lbf to 12.1 lbf
	// drag: 0.0152, from 0.0148 to 0.0157
}

// A double set 20 lb batten-heavy, on sheaves with rolling bearings: what the hands at the rail feel.
func ExampleReeved_Run() {
	layout := wing
	layout.Drag = purchase.AntiFrictionBearings
	reeved, err := layout.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	bodies := purchase.Bodies{Arbor: 1000 * units.Pound, Idler: 60 * units.Pound}
	for range layout.Loft {
		bodies.Pulls = append(bodies.Pulls, units.PoundForce.Scale(520/float64(len(layout.Loft))))
	}
	for _, rope := range reeved.RailRopes() {
		fmt.Printf("%v: pulled down, it flies the batten %v\n", rope.Role, rope.Moves)
	}
	for _, way := range []purchase.Way{purchase.Out, purchase.In} {
		run, err := reeved.Run(20*units.Foot, bodies, way)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %.1f lbf on the %v\n", way, run.Pull.In(units.PoundForce), run.Rope)
	}
	// Output:
	// dead end: pulled down, it flies the batten neither way
	// inner rope: pulled down, it flies the batten out
	// outer rope: pulled down, it flies the batten in
	// out: 74.5 lbf on the inner rope
	// in: 15.4 lbf on the outer rope
}

// At rest a stiff sheave hides what is beyond it: with 250 lbf on the nearer line at the batten, what the arbor feels of
// it, and what the blocks carry, can only be told to within the drag.
func ExampleReeved_Rest() {
	layout := wing
	layout.Drag = purchase.PlainBearings
	reeved, err := layout.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	rest, err := reeved.Rest(20*units.Foot, purchase.Bodies{
		Pulls: []units.Force{250 * units.PoundForce, 250 * units.PoundForce}, Arbor: 1000 * units.Pound, Idler: 60 * units.Pound,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	show := func(what string, b purchase.ForceBand) {
		fmt.Printf("%s: %.1f, %.1f to %.1f lbf\n", what, b.Value.In(units.PoundForce), b.Least.In(units.PoundForce), b.Most.In(units.PoundForce))
	}
	line := rest.Lift[0].Parts
	show("at the batten", line[0].TensionFrom)
	show("at the dead end", line[len(line)-1].TensionTo)
	show("head block, up", rest.Load(purchase.HeadBlock).Up)
	show("rope lock", rest.Lock)
	// Output:
	// at the batten: 250.0, 250.0 to 250.0 lbf
	// at the dead end: 254.5, 206.8 to 313.3 lbf
	// head block, up: -569.3, -690.2 to -465.1 lbf
	// rope lock: 7.6, -88.5 to 112.2 lbf
}

// A double set is left 60 lb batten-heavy by a load that was taken out of the arbor too soon, and the lock is opened at 40 ft.
func ExampleReeved_LetGo() {
	layout := wing
	layout.Drag = purchase.AntiFrictionBearings
	reeved, err := layout.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	on := purchase.Bodies{Pulls: []units.Force{280 * units.PoundForce, 280 * units.PoundForce}, Arbor: 1000 * units.Pound, Idler: 60 * units.Pound}
	run, err := reeved.LetGo(purchase.LetGo{Trim: 40 * units.Foot, Low: 5 * units.Foot, High: 45 * units.Foot, On: on})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("runs %v: %.1f s, %.1f ft/s, as from a fall of %.1f ft\n", run.Way, run.Time.In(units.Second), run.Speed.In(units.FootPerSecond), run.Drop.In(units.Foot))
	fmt.Printf("%.0f lbf on the %v would have held it\n", run.Held.Pull.In(units.PoundForce), run.Held.Rope)
	// Output:
	// runs in: 9.8 s, 7.8 ft/s, as from a fall of 1.0 ft
	// 16 lbf on the inner rope would have held it
}

// What moves in a single and a double set that balance 500 lb, and what a hand feels of it.
func ExampleReeved_Felt() {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
		layout := wing
		layout.Kind, layout.LiftMass, layout.HandMass = kind, 0, 0
		reeved, err := layout.Rig()
		if err != nil {
			fmt.Println(err)
			return
		}
		felt, err := reeved.Felt(20*units.Foot, 500*units.Pound, kind.Counterweight(500*units.Pound))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %s moves, %s is felt\n", kind, units.US.Format(felt.Moving), units.US.Format(felt.Batten))
	}
	// Output:
	// single: 1000 lb moves, 1000 lb is felt
	// double: 1500 lb moves, 750 lb is felt
}

// A double set flown out by 30 ft: up to 3 ft/s in two seconds, and stopped within 3 ft.
func ExampleReeved_Fly() {
	layout := wing
	layout.Drag = purchase.AntiFrictionBearings
	reeved, err := layout.Rig()
	if err != nil {
		fmt.Println(err)
		return
	}
	flown, err := reeved.Fly(purchase.Fly{
		From: 5 * units.Foot, To: 35 * units.Foot, Top: 3 * units.FootPerSecond, Start: 2 * units.Second, Stop: 3 * units.Foot,
		On: purchase.Bodies{Pulls: []units.Force{250 * units.PoundForce, 250 * units.PoundForce}, Arbor: 1000 * units.Pound, Idler: 60 * units.Pound},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, what := range []string{"start", "steady", "stop"} {
		phase := flown.Phases[i]
		fmt.Printf("%s: %.1f s, %.0f lbf on the %v, then %.0f lbf on the %v\n", what, phase.Time.In(units.Second),
			phase.First.Pull.In(units.PoundForce), phase.First.Rope, phase.Last.Pull.In(units.PoundForce), phase.Last.Rope)
	}
	// Output:
	// start: 2.0 s, 97 lbf on the inner rope, then 96 lbf on the inner rope
	// steady: 8.0 s, 57 lbf on the inner rope, then 48 lbf on the inner rope
	// stop: 2.0 s, 9 lbf on the inner rope, then 8 lbf on the inner rope
}
