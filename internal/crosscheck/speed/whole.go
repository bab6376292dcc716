package main

import (
	"fmt"

	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// whole asks the library for all that the floor works out, over and over at trims that change.
type whole struct {
	rigged *lineset.Rigged
	arbor  units.Mass
	trims  [trims]units.Length // of the curve

	state    lineset.State // the last answer, in memory that is used again
	curve    [trims]units.Force
	exceeded int // counted here, so that no two goroutines count in one line of the cache
	limits   limits
}

// limits are the set's own, those of the blocks in the order in which a state gives them; 0: none.
type limits struct {
	line, balance, lock units.Force
	pipe                units.Stress
	blocks              []units.Force
}

func newWhole(s lineset.Set) (*whole, error) {
	rigged, err := s.Rig(stock())
	if err != nil {
		return nil, err
	}
	r := s.Rigging
	w := &whole{rigged: rigged, arbor: rigged.Counterweight().Arbor}
	for i := range w.trims {
		w.trims[i] = s.Low + (s.High - s.Low).Scale(float64(i)/(trims-1))
	}
	if err := w.statics(s.Low); err != nil {
		return nil, err
	}
	w.limits = limits{line: r.Limits.LiftLine.Max, balance: r.Limits.OutOfBalance.Max, lock: r.Limits.RopeLock.Max, pipe: r.Limits.Pipe.Max}
	w.limits.blocks = make([]units.Force, len(w.state.Ropes.Blocks))
	limit := func(name string, most units.Force) {
		for i, b := range w.state.Ropes.Blocks {
			if b.Name == name {
				w.limits.blocks[i] = most
			}
		}
	}
	limit(purchase.HeadBlock, r.Limits.HeadBlock.Max)
	for n := 1; n <= lines; n++ {
		limit(purchase.LoftBlock(n), r.Limits.LoftBlock.Max)
		limit(purchase.DeadEnd(n), r.Limits.DeadEnd.Max)
	}
	return w, nil
}

// statics asks for everything at a trim, and for the balance curve, into the same memory as before.
func (w *whole) statics(trim units.Length) error {
	if err := w.rigged.AtInto(&w.state, trim); err != nil {
		return err
	}
	return w.balance()
}

// balance asks for the balance curve.
func (w *whole) balance() (err error) {
	for i, trim := range w.trims {
		if w.curve[i], err = w.rigged.Imbalance(trim); err != nil {
			return err
		}
	}
	return nil
}

// fresh asks for the same in an answer that is the caller's to keep.
func (w *whole) fresh(trim units.Length) (err error) {
	if w.state, err = w.rigged.At(trim); err != nil {
		return err
	}
	return w.balance()
}

// exceeds holds the last answer against every limit that the set has at rest: each part of each lift line, each block
// and dead end, the pipe, the lock, and the whole curve. It gives how many are exceeded.
func (w *whole) exceeds() (n int) {
	ropes, l := &w.state.Ropes, &w.limits
	over := func(is bool) {
		if is {
			n++
		}
	}
	for i := range ropes.Lift {
		over(ropes.Lift[i].Greatest() > l.line)
	}
	for i, most := range l.blocks {
		over(most > 0 && ropes.Blocks[i].Load.Size() > most)
	}
	for _, f := range w.curve {
		over(units.Abs(f) > l.balance)
	}
	over(w.state.Share.Stress > l.pipe)
	over(units.Abs(ropes.Lock) > l.lock)
	over(!ropes.Held())
	return n
}

// rounds are trims all over the travel, a power of two of them, so that to go round them costs next to nothing.
func rounds(s lineset.Set) (at [64]units.Length) {
	for i := range at {
		at[i] = s.Low + (s.High - s.Low).Scale(float64(i*37%len(at))/float64(len(at)-1))
	}
	return at
}

// fault tells whose turn it was when something failed.
func fault(what string, err error) error { return fmt.Errorf("%s: %w", what, err) }
