package main

import (
	"runtime"
	"time"
)

// bounds are how much a request may take of what others need too.
type bounds struct {
	headers int   // bytes of a request's headers, more or less
	body    int64 // bytes of a house
	sets    int   // of a house
	items   int   // that hang on all sets of a house
	lines   int   // that all sets of a house hang on
	atOnce  int   // houses that are computed at the same time; others wait for their turn

	header  time.Duration // until the headers are here
	read    time.Duration // until the house is here too
	compute time.Duration // for the turn to come and the answer to be worked out
	write   time.Duration // for the answer to be taken
	idle    time.Duration // that a connection is kept between two requests
	stop    time.Duration // that requests under way are waited for in the end
}

// usual are the bounds that the program has. A house as large as they let in is worked out in a few seconds and answered with some
// thirty megabytes; one of fifteen sets in a few milliseconds.
func usual() bounds {
	return bounds{
		headers: 16 << 10, body: 8 << 20, sets: 500, items: 5000, lines: 4000, atOnce: runtime.GOMAXPROCS(0),
		header: 5 * time.Second, read: 15 * time.Second, compute: 10 * time.Second, write: 15 * time.Second,
		idle: time.Minute, stop: 15 * time.Second,
	}
}
