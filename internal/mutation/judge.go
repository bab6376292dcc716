package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"slices"
	"sync"
	"time"
)

// fate is what became of a mutant.
type fate int

const (
	survived fate = iota
	killed
	slow // killed by the clock
	uncompiled
)

// quick is how long the tests take together that a mutant meets first; most mutants meet no others.
const quick = 300 * time.Millisecond

// judge runs the mutants and says what became of each.
func (w *workbench) judge(all []mutant) ([]fate, error) {
	fates := make([]fate, len(all))
	var inside, outside []int
	for i, m := range all {
		if m.within != nil {
			inside = append(inside, i)
		} else {
			outside = append(outside, i)
		}
	}
	var first error
	var lock sync.Mutex
	fail := func(err error) {
		lock.Lock()
		defer lock.Unlock()
		first = errors.Join(first, err)
	}
	each := func(numbers []int, do func(int) error) {
		next := make(chan int)
		var wait sync.WaitGroup
		for range max(1, w.jobs) {
			wait.Go(func() {
				for n := range next {
					if err := do(n); err != nil {
						fail(err)
					}
				}
			})
		}
		for _, n := range numbers {
			next <- n
		}
		close(next)
		wait.Wait()
	}
	const together = 1500 // more in one build ask for too much memory
	for part := range slices.Chunk(inside, together) {
		s, err := w.build(fmt.Sprintf("inside%d", part[0]), all, part)
		if err != nil {
			return nil, err
		}
		w.leaveOut(s)
		each(part, func(n int) error {
			fates[n] = w.fate(s, n, all[n])
			return nil
		})
		if err := os.Remove(s.binary); err != nil {
			return nil, err
		}
	}
	each(outside, func(n int) error {
		s, err := w.build(fmt.Sprintf("outside%d", n), all, []int{n})
		if err != nil {
			return err
		}
		fates[n] = w.fate(s, n, all[n])
		if s.broken[n] {
			return nil
		}
		return os.Remove(s.binary)
	})
	return fates, first
}

// leaveOut finds the tests that fail on copies of functions none of which is chosen.
func (w *workbench) leaveOut(s stage) {
	w.tests = slices.DeleteFunc(w.tests, func(t test) bool {
		fails := w.start(s.binary, 0, []string{t.name}, limit(t.took)) != nil
		if fails {
			w.leftOut = append(w.leftOut, t.name)
		}
		return fails
	})
}

// limit is a time after which tests that take so long unbroken will not end, though the machine is busy.
func limit(took time.Duration) time.Duration { return 5*time.Second + 8*took }

func (w *workbench) fate(s stage, n int, m mutant) fate {
	if s.broken[n] {
		return uncompiled
	}
	var rounds [2][]string
	var times [2]time.Duration
	for _, t := range w.tests { // the quick ones come first
		if !t.meets(m) {
			continue
		}
		round := 0
		if times[0]+t.took > quick && len(rounds[0]) > 0 {
			round = 1
		}
		rounds[round] = append(rounds[round], t.name)
		times[round] += t.took
	}
	for i, names := range rounds {
		if len(names) == 0 {
			continue
		}
		switch err := w.start(s.binary, n+1, names, limit(times[i])); {
		case errors.Is(err, context.DeadlineExceeded):
			return slow
		case err != nil:
			return killed
		}
	}
	return survived
}
