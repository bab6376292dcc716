// Package stack chooses counterweight pieces: from kinds of piece with a mass,
// a thickness and a count each, it finds the whole pieces whose mass comes
// closest to a wish and which still fit a height and a total mass.
//
// It works on int64 numbers only, so that every sum is exact; the caller
// chooses the units (package arbor uses nanograms and nanometres). Best walks a
// tree of choices with bounds, and where that does not soon end it lists the choices
// of two halves of the kinds and meets in the middle. It says whether the search ran
// to its end, which proves that no other choice is better, or was cut short at its
// limit of steps, and then how much better another could be. Refill does the same for
// the fewest pieces put in and taken out.
//
// The choice is a bounded subset-sum problem with an order of preference, which
// is NP-hard in general (Kellerer, Pferschy and Pisinger, Knapsack Problems,
// Springer 2004, chapters 4 and 7). What a theatre keeps is easy: few kinds, and
// masses with a large common divisor.
package stack
