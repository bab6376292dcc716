package lazy_test

import (
	"sync"
	"sync/atomic"
	"testing"

	"example.com/steelyard/internal/lazy"
)

func TestOnceForAll(t *testing.T) {
	var v lazy.Value[int]
	var found atomic.Int32
	var all sync.WaitGroup
	for range 64 {
		all.Go(func() {
			if got := v.Get(func() int { return 41 + int(found.Add(1)) }); got != 42 {
				t.Errorf("%d", got)
			}
		})
	}
	all.Wait()
	if n := found.Load(); n != 1 {
		t.Errorf("worked out %d times", n)
	}
}
