// Package lineset is the whole line set, and the house of them: it ties the
// batten and what hangs on it (package load), the ropes (package purchase) and
// the arbor with its counterweight (package arbor) together and answers what a
// rigger must know before the rope lock is opened.
//
// Describe, rig, ask:
//
//	rigged, err := set.Rig(stock)      // or house.Rig() for all sets of a house
//	rigged.Counterweight().Stack.Call() // the pieces, as read out on the bridge
//	rigged.Balance().Worst()            // the worst out of balance over the travel
//	rigged.Travel()                     // the trims reached against those wanted
//	rigged.Low(), rigged.High()         // what lines, blocks and dead ends carry; rigged.At(trim) anywhere, AtInto without allocating
//	rigged.Hand(trim)                   // what the hands feel: pulls out and in, which rope is tight, and its working
//	rigged.Run(trim, purchase.Out)      // what everything carries while it is flown slowly out
//	rigged.Felt(trim), rigged.Fly(…)    // the mass that is felt, and what it takes to fly it
//	rigged.LetGo(trim)                  // what becomes of it if nobody holds it; LetGoAfter(order): where an order has led
//	rigged.Flight().Access(…)           // what a loading bridge reaches, and the other questions of the run
//	rigged.Load().PointAllowed(…)       // and every other question of package load
//	rigged.Checks()                     // each demand against its limit
//	rigged.Order(lineset.Loading, …)    // in which order deck and bridge hang and weight it, or the proof that there is none
//	rigged.CheckOrder(order, limits)    // the state after each step of an order of your own
//	rigged.Estimates(order, limits)     // how wrong the masses may be before a limit is passed
//	house.ChangeOver(next, …)           // from one night's hang to the next
//
// A [Set] and a [House] are plain data: exported fields, JSON with quantities as
// text ("312 lb", "24'-6\""). Rig validates everything once and reports all
// problems together, each with the path of its field; nothing is computed from
// half of a house. What it returns does not change and may be asked from many
// goroutines. What every answer rests on, ropes, load, travel, counterweight and balance, is worked out by Rig; states, pulls and
// checks each time that they are asked for.
//
// # Signs and units
//
// Heights and trims are above the deck, up is positive. Positions along a batten
// are from its end nearer the arbor. An imbalance is positive when batten-heavy
// and is always given referred to the batten; at the arbor it is the ratio times
// as much. Things have mass, pulls are forces; weight is mass at standard
// gravity.
//
// # The model
//
// The set is at rest, the rope lock shut, no drag in the blocks; only the pulls of Hand, and Run, are those of a set that
// runs slowly against the drag of its sheaves, and Felt, Fly, LetGo and Jolt those of one that has its mass to move. Ropes weigh what they weigh where they hang, so the
// balance shifts as the batten flies. Lift lines share the load as supports of a continuous beam that pull or are
// slack, stretch and are off as they are described. What piles or stands on the deck is carried
// only as far as it is off it. Left out: sag of level runs, fleet angles, wear.
//
// Each formula is derived in internal/verification/DERIVATIONS.md in the repository, in the symbols of NOTATION.md beside it.
//
// # Loading order
//
// A state is what hangs, what is in the arbor, and the batten's trim. At the lowest trim a batten-heavy set rests on the
// stop and arbor-heavy is the hazard; away from it both are. Every state of an order counts, the first and the last and those
// on the way of a flight too. A hand-over is a change of side between deck and bridge; the first
// step costs none. Stripping is the mirror image of loading. The rope lock is not counted on: what an
// imbalance would do is told whether the lock is shut or not, and only a line that is set holds it.
//
// # Limits
//
// The caller sets the limits and says where each comes from; a limit that is not
// given is not checked, and the check says so. A verdict is "within the limit
// given" or "exceeds", nothing more.
//
// # Cautions
//
// Overhead lifting can kill. The figures are for planning and teaching. Local
// codes, the manufacturers' ratings and a licensed engineer or qualified rigger on
// site decide.
package lineset
