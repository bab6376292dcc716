// Package arbor answers the batten: which whole pieces of counterweight to put
// into an arbor, and how far the arbor can fly.
//
// # What it covers
//
// [Frame.Fill] chooses from a [Stock] of whole pieces the [Stack] that comes
// nearest to a wanted mass and still fits the arbor's room and capacity; it
// proves that no other stack is nearer, or with [Frame.FillWithin] how much nearer
// one could be. [Frame.Refill] changes today's stack with the fewest pieces moved.
// [Frame.Ideal] is what it would take if room, capacity and stock had no end;
// [Frame.Shortfall] says which of them is in the way and by how much, and
// [Frame.Heaviest] what fits at most. [Stack.Layers] lists the stack from the bottom up
// with heights, [Stack.Call] reads it out, [Stack.Referred] gives its error at the
// batten.
// [Block] describes a piece cut from bar.
// [Allot] fills many arbors from one stock.
//
// [Run] is the arbor's way between its stops, and what stands around it.
// [Run.Fly] lets an arbor fly there, and answers with a [Flight]: travel, trims
// and clearances. [Flight.Trims] holds them against what a show wants,
// [Flight.Reach], [Flight.Window] and [Flight.Access] say which pieces arms reach
// from a loading bridge and at which trims, [Flight.Hides] whether a drop goes out
// of sight of the seats of a [Section].
//
// The same asked backwards: [Run.HighestStop] and [Run.LongestArbor] for the trims
// wanted, each with the lines made off anew and as they are today;
// [Frame.Compact], how compact pieces must be for a mass to find room;
// [Venue.Compare], single purchase beside double.
//
// It knows nothing of battens and ropes: it is given a mass that is wanted at the
// arbor (in double purchase twice the mass at the batten), and for the run a [Ride]:
// the ratio as a plain number, and where the batten is made off.
//
// # Units and signs
//
// Heights are above the deck, up is positive; heights on the rods and in a stack
// are above the underside of the lowest piece. Overtravel and clearances are
// negative where something is short. [Stack].Error is what the stack
// holds less what is wanted: positive is too heavy, that is arbor-heavy;
// negative is too light, batten-heavy.
//
// Stacks add up. Masses enter at whole nanograms and lengths at whole
// nanometres, each by the shortest decimal text of its float64, so that
// 23.5*units.Pound and the text "23.5 lb" are the same piece; sums and
// differences are whole numbers, and each figure of a Stack or of a Run is
// rounded once, when it leaves. So a figure may differ in its last bit from the
// float64 sum of the others, and is the right one. A trim is the ratio times an
// arbor travel, to the nearest nanometre; the arbor travel that a trim needs is
// rounded up to one, so that it is enough. [Compact] alone is of float64.
//
// Each formula is derived in internal/verification/DERIVATIONS.md in the repository, in the symbols of NOTATION.md beside it.
//
// # Zero values
//
// A zero [Piece], [Frame], [Run], [Ride], [Section] or [Venue] is refused, field by
// field. An empty Stock, a zero [Wanted] and the zero [Side] (EitherSide) are
// usable. The zero [Plate] is: no spreader plates; the zero [Lock] leaves the lock plate out.
//
// # Errors
//
// What is wrong with a description comes as *units.FieldError, all of them
// joined, each with the path of its field. *[NoStackError] says that no stack
// keeps to the side that is allowed. A piece too heavy or too thick for an arbor,
// or a stock with nothing in it, is no error: it is not used, or fills nothing.
//
// # What it cannot catch
//
// A piece that does not weigh what its name says, a lock plate that is not
// tightened down, rods that bend, pieces of different footprint, a mass at the
// batten given where the mass at the arbor is wanted; arms that reach less far than
// was said, or not over a rail; seats off the centre line of a section.
//
// # Cautions
//
// Overhead lifting can kill. Figures are for planning and teaching. Local codes,
// the arbor maker's rating and instructions, and a licensed engineer or a
// qualified rigger on site decide what is put into an arbor, how it is locked,
// and who loads it. Where the batten is out of balance in between is a matter of
// the loading order, which this package does not look at.
package arbor
