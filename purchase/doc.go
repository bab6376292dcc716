// Package purchase joins batten and arbor: ropes over sheaves, the ratio that
// follows from their paths, tensions, and the loads on blocks and dead ends.
//
// One number needs no more than the ideal ratio, a [Kind]:
//
//	purchase.Double.Counterweight(500 * units.Pound) // 1000 lb at the arbor
//	purchase.Double.ArborTravel(60 * units.Foot)     // 30 ft
//
// For the rest, describe where blocks and rail are in a [Layout] (or lay any
// ropes of your own as a [Reeving]), rig it, and ask:
//
//	r, err := layout.Rig()
//	r.Ratio()                                 // from the paths
//	r.Imbalance(trim, carried, arbor)         // with the ropes' own weight
//	r.At(trim, bodies)                        // at rest, lock shut: every tension, every block load
//	r.Rest(trim, bodies)                      // the same with drag: between which ends each of them lies
//	r.Feel(trim, bodies)                      // which rope is tight before the lock is opened
//	r.Run(trim, bodies, purchase.Out)         // running slowly, with drag: the hand's pull, and on which rope
//	r.Stays(trim, bodies)                     // how far out of balance it may be and stay by itself
//	r.Felt(trim, carried, arbor)              // the mass that a hand feels, and the mass that moves
//	r.HandFor(trim, bodies, speeding)         // the pull that speeds it up or slows it down
//	r.Fly(fly)                                // the pulls that fly it from one trim to another
//	r.LetGo(letGo)                            // how it runs away when nobody holds it
//	r.Drift(flight)                           // how the balance of a fixed load drifts over the travel
//	r.Weigh(weighing)                         // load and drag from the pulls out and in
//	r.Geometry(trim)                          // lengths, turns, fleet angles and speeds of every rope
//	r.GeometryUse(low, high, limits)          // the worst lead and the worst sheave of a travel
//
// [Reeved.AtInto], [Reeved.RunInto] and [Reeved.Curve] fill what they are given and allocate nothing.
//
// Nothing about single, double or triple purchase is written anywhere but in the paths
// that a Layout lays. A rope keeps its length: that gives the travel. Without
// drag its tension does not change at a sheave, and along a part it grows with
// height by the rope's own weight: that gives the forces. With a [Drag] at a sheave the side
// that the rope runs to is the tighter by a factor: that gives what the hands feel.
//
// Beside the whole reeving there are questions about one rope, which need no layout:
//
//	drag.Factor(turn)                         // tight side over slack side of a sheave
//	tackle.Pull(load, drag)                   // on the lead line of a block and fall
//	purchase.TurnsWanted(pull, hand, 0.2)     // wraps round a rail, to be tended
//	purchase.StandardRope("1/4 in 7x19 galvanised")
//	use.Check(pull, 8)                        // strength over ends and sheaves, design factor
//	purchase.FleetAngle(offset, lead)
//	purchase.Jolt(speed, stretch)             // what the lines bear when the arbor runs into its stop
//
// The package knows neither pipes nor pieces of counterweight: what hangs and what
// answers it reach it as masses and pulls.
//
// # Signs and units
//
// Heights are above the deck, up is positive. Across is counted from the arbor's
// centre line and positive towards the far end of the batten. An imbalance is
// positive when batten-heavy and is referred to the batten; at the arbor it is
// Ratio times as much. The zero values of Layout and Reeving are refused by Rig,
// with a *units.FieldError for each field that is wanted.
//
// # Limits of the model
//
// A set is at rest without drag (At, Imbalance, Feel) or runs so slowly that nothing is wanted to speed it up
// (Run, Stays, Weigh); in motion (Gain, HandFor, Fly, LetGo) nothing swings. Sheaves are points, at each of which the rope turns; how far they stand off the plane of the
// set makes fleet angles and nothing else; bodies move up and down only; parts that change their
// length hang plumb; ropes do not stretch; the sag of level runs is left out. The idler is free in its guides, or
// held with a base tension that is given.
//
// Each formula is derived in internal/verification/DERIVATIONS.md in the repository, in the symbols of NOTATION.md beside it.
//
// # Cautions
//
// Overhead lifting can kill. The figures are for planning and teaching. Local
// codes, the manufacturers' ratings and a licensed engineer or qualified rigger on
// site decide.
package purchase
