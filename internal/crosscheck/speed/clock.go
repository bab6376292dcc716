package main

import (
	"math"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// effort is how long everything is looked at.
type effort struct {
	slice    time.Duration // of one contender, once
	rounds   int           // in which all contenders have a slice each, by turns
	house    int           // sets in the house
	houses   int           // how often it goes through
	streamed int           // sets that are rigged and dropped
	program  bool          // the house goes through the program too
}

// longer is for what leaves garbage behind: slices in which some of it is collected too.
func (e effort) longer() effort {
	e.slice, e.rounds = 100*e.slice, max(e.rounds/20, 1)
	return e
}

// race times contenders against each other: in every round each has one slice of time, and of all rounds its best
// counts, in nanoseconds for one turn. What else runs on the machine only ever makes a slice longer, and it hits
// all of them alike, so that the ratio of two minima holds where neither mean would.
func (e effort) race(contenders ...func(i int)) []float64 {
	best, turns := make([]float64, len(contenders)), make([]int, len(contenders))
	for k, once := range contenders {
		best[k] = math.Inf(1)
		for turns[k] = 1; ; turns[k] *= 2 {
			if took := clock(turns[k], once); took >= e.slice/2 {
				break
			}
		}
	}
	for range e.rounds {
		for k, once := range contenders {
			best[k] = min(best[k], float64(clock(turns[k], once).Nanoseconds())/float64(turns[k]))
		}
	}
	return best
}

func clock(turns int, once func(i int)) time.Duration {
	start := time.Now()
	for i := range turns {
		once(i)
	}
	return time.Since(start)
}

// allocations is how many there are in one turn.
func allocations(once func(i int)) float64 {
	i := 0
	return testing.AllocsPerRun(64, func() { once(i); i++ })
}

// scale is how many times as much work two cores do in the same time as one, with a goroutine for each: each has memory of its
// own. What collects the garbage has no more cores than that; it would else have the second one to itself while one works alone.
// The work of two is the sum of what each does in the time that it takes, while the other works.
// The best of many rounds counts, of the one and of the two. A slice must be long beside what it takes to wake a goroutine.
func (e effort) scale(one, other func(i int)) (alone, together, times float64) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	turns := 1
	for clock(turns, one) < e.slice {
		turns *= 2
	}
	alone, together = math.Inf(1), math.Inf(1)
	for range e.rounds {
		runtime.GOMAXPROCS(1)
		alone = min(alone, float64(clock(turns, one).Nanoseconds())/float64(turns))
		runtime.GOMAXPROCS(2)
		var done sync.WaitGroup
		var took [2]float64
		var busy atomic.Int32
		busy.Store(2)
		for k, once := range []func(int){one, other} {
			done.Go(func() {
				took[k] = float64(clock(turns, once).Nanoseconds()) / float64(turns)
				for busy.Add(-1); busy.Load() > 0; { // until the other has done its turns too
					once(0)
				}
			})
		}
		done.Wait()
		together = min(together, 1/(1/took[0]+1/took[1]))
	}
	return alone, together, alone / together
}

// alive is how many bytes of the heap are still in use after all that is not was swept, and how many the program holds
// from the system: that comes in large steps, and lags behind.
func alive() (heap, system float64) {
	runtime.GC()
	runtime.GC() // what the first left in pools
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return float64(m.HeapAlloc), float64(m.Sys)
}
