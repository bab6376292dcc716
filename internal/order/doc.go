// Package order searches for the order in which things are hung on a batten and pieces are put in its arbor, so that
// every state on the way stays between two bounds, with the fewest changes between the crew on the deck and the crew
// on the loading bridge.
//
// It works on whole numbers only, so that every sum is exact; the caller chooses the unit (package lineset uses
// nanograms). What bounds the states is not known here: for each position of the batten and each number of pieces in
// the arbor the caller says between which sums of what is carried a state is allowed. These bounds do not fall as
// pieces are added, because a piece more asks for more on the batten.
//
// A state is the position, which items hang, and how many pieces are in: pieces go in one upon the other, so that
// their number tells which. The search goes back from the end, in layers of equal cost, over all states at once: for
// a position and a choice of items the numbers of pieces are the bits of a row. It visits every state from which the
// end can be reached, so that finding none is a proof.
package order
