// Package load says what hangs on a batten, what of it the batten carries at a given
// trim, how the lift lines share it, and what the pipe then suffers.
//
// Describe a [Batten] and its [Hang], a list of plain [Item] values, and ask:
//
//	share, err := batten.Share(hang, 20*units.Foot)
//	share.Lines[2].Tension // what the third line carries
//
// For many questions about one hang, [Batten.Rig] checks everything once and
// reports every fault together. The [Rigged] that it gives does not change and may be
// used from many goroutines. What can still go wrong depends on the trim: a batten
// whose centre of gravity lies outside its outermost lines would tip, perhaps only while
// something stands on the deck. [Rigged.Tips] tells it for a range of trims, and
// [Rigged.Share] refuses with the same *[TipError].
//
// A worst over a range of trims is among the values at its ends and at the trims of
// [Rigged.Turns] between them, or just above one of these.
//
// What may still be hung and how level is level enough are questions of their own:
// [Rigged.PointAllowed], [Rigged.Envelope] for a load that roves, [Rigged.TrimTolerance] for a line
// that is too short or too long, [Rigged.Deflection] for how far the pipe bends. They and
// [Share.Use] hold against [Limits] that the caller gives.
//
// Describing what hangs is easier from a [Drape], a [Cable] or a [StandardPipe].
//
// Positions are measured along the batten from the end nearer the arbor. Trim is the
// height of the batten above the deck. Masses hang; weight is mass at standard
// gravity. A bending moment is positive where the pipe sags.
//
// # The model
//
// The batten is a straight, evenly stiff pipe (an Euler-Bernoulli beam) on lift lines. A [Line] does not
// stretch and is of the right length, or is a spring of EA over its path with a trim error. The beam is
// solved exactly, with the three-moment equation and no mesh. A line pulls or is slack; it never
// pushes. Which lines are slack follows from the load, and need not be the ones
// that a beam on fixed supports would push on. There is one answer, found in a number of steps that
// has an end. What hangs below the batten is dead weight: it neither swings nor leans.
//
// Real lines are trimmed by hand and run over blocks with drag; a batten takes a set; loads bounce. The
// tension of a line on a real batten can differ much from the figure for lines of the
// right length, most of all where lines are close together: a line a few millimetres short takes
// load from both its neighbours. [Rigged.TrimTolerance] says how much.
//
// Each formula is derived in internal/verification/DERIVATIONS.md in the repository, in the symbols of NOTATION.md beside it.
//
// # Cautions
//
// Overhead lifting can kill. The figures are for planning and teaching. They are
// static, and leave out shock, dynamic and wind loads, wear, corrosion, dents, splices and
// the local effect of clamps on the pipe. Local codes, the manufacturer's ratings and
// a licensed engineer or a qualified rigger on site decide.
package load
