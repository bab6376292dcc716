// Command mutation breaks a package in one small way after another and says which breaks its own tests do not see.
//
//	go run ./internal/mutation ./internal/rope
//
// A mutant is one change to one place: an operator swapped, a comparison moved or turned round, a literal changed by one or
// set to nought, a minus dropped, a condition forced, an assignment or a call left out, a result replaced by its zero value,
// max for min. Only lines that the package's tests reach are changed. A mutant under which they all pass survives: either a
// test is missing, or the change is none, and then explained.txt says why. The foot is the share of the mutants reached that
// are killed or explained.
//
// The mutants of functions are built together: each is a copy of its function, of which an environment variable picks one at
// run time, so that a package is compiled a few times and not a thousand. Those of package constants and tables are built
// one by one. Both go to the compiler as an overlay; no file of the tree is written. A mutant meets only the tests that reach
// its place, the quick ones first, and counts as killed when they take many times as long as without it. Tests that fail on
// the copies without any change, such as those that count allocations, are left out and named. Draws of pgregory.net/rapid
// have a fixed seed: the same tree gives the same score.
package main
