// Package slab shares out memory that is asked for in one piece: each piece costs time when it is asked for, and again when it is
// collected.
package slab

// Take cuts the first n off.
func Take[S ~[]E, E any](from *S, n int) S {
	first := (*from)[:n:n]
	*from = (*from)[n:]
	return first
}

// Enough is room for n, all of it nought: the first of few, which must be, or memory of its own where they are too few.
func Enough[E any](few []E, n int) []E {
	if n <= len(few) {
		return few[:n:n]
	}
	return make([]E, n)
}
