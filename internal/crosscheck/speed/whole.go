package main

import (
	"fmt"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// whole asks the library for all that the floor works out, over and over at trims that change.
type whole struct {
	rigged *lineset.Rigged
	load   *load.Rigged
	ropes  *purchase.Reeved
	arbor  units.Mass
	idler  units.Mass
	curve  [trims]units.Length

	answer   answer
	exceeded int // counted here, so that no two goroutines count in one line of the cache
	limits   limits
}

// answer is one, in memory that is used again.
type answer struct {
	share load.Share
	pulls [lines]units.Force
	state purchase.State
	curve [trims]units.Force
}

// limits are the set's own, those of the blocks in the order in which a state gives them; 0: none.
type limits struct {
	line, balance, lock units.Force
	pipe                units.Stress
	blocks              []units.Force
}

// newWhole rigs the set, and once more its rooms, which answer into memory that is used again.
func newWhole(s lineset.Set) (*whole, error) {
	rigged, err := s.Rig(stock())
	if err != nil {
		return nil, err
	}
	r := s.Rigging
	layout := purchase.Layout{
		Kind: r.Purchase, HeadBlock: r.HeadBlock, DeadEnd: r.DeadEnds, Rail: r.Rail, Idler: r.Idler.Height,
		ArborLength: r.Arbor.Length, LiftMass: r.LiftLine, HandMass: r.HandLine, Drag: r.Drag,
		Trim: r.MadeOff, ArborTop: r.Run.UpperStop,
	}
	for _, line := range r.Batten.Lines {
		layout.Loft = append(layout.Loft, purchase.Loft{Across: r.Offset + line.At, Height: r.LoftBlocks})
	}
	ropes, err := layout.Rig()
	if err != nil {
		return nil, err
	}
	w := &whole{rigged: rigged, load: rigged.Load(), ropes: ropes, arbor: rigged.Counterweight().Arbor, idler: r.Idler.Mass}
	for i := range w.curve {
		w.curve[i] = s.Low + (s.High - s.Low).Scale(float64(i)/(trims-1))
	}
	if err := w.statics(s.Low); err != nil {
		return nil, err
	}
	w.limits = limits{line: r.Limits.LiftLine.Max, balance: r.Limits.OutOfBalance.Max, lock: r.Limits.RopeLock.Max, pipe: r.Limits.Pipe.Max}
	w.limits.blocks = make([]units.Force, len(w.answer.state.Blocks))
	limit := func(name string, most units.Force) {
		for i, b := range w.answer.state.Blocks {
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

// statics asks the rooms for everything at a trim, and for the balance curve, into the same memory as before.
func (w *whole) statics(trim units.Length) error {
	a := &w.answer
	if err := w.load.ShareInto(&a.share, trim); err != nil {
		return err
	}
	for i := range a.share.Lines {
		a.pulls[i] = a.share.Lines[i].Tension
	}
	if err := w.ropes.AtInto(&a.state, trim, purchase.Bodies{Pulls: a.pulls[:], Arbor: w.arbor, Idler: w.idler}); err != nil {
		return err
	}
	return w.balance()
}

// balance asks the rigged set for its balance curve.
func (w *whole) balance() (err error) {
	for i, trim := range w.curve {
		if w.answer.curve[i], err = w.rigged.Imbalance(trim); err != nil {
			return err
		}
	}
	return nil
}

// fresh asks the rigged set itself for the same, which gives answers that are the caller's to keep.
func (w *whole) fresh(trim units.Length) error {
	s, err := w.rigged.At(trim)
	if err != nil {
		return err
	}
	w.answer.share, w.answer.state = s.Share, s.Ropes
	return w.balance()
}

// exceeds holds the last answer against every limit that the set has at rest: each part of each lift line, each block
// and dead end, the pipe, the lock, and the whole curve. It gives how many are exceeded.
func (w *whole) exceeds() (n int) {
	a, l := &w.answer, &w.limits
	over := func(is bool) {
		if is {
			n++
		}
	}
	for i := range a.state.Lift {
		over(a.state.Lift[i].Greatest() > l.line)
	}
	for i, most := range l.blocks {
		over(most > 0 && a.state.Blocks[i].Load.Size() > most)
	}
	for _, f := range a.curve {
		over(units.Abs(f) > l.balance)
	}
	over(a.share.Stress > l.pipe)
	over(units.Abs(a.state.Lock) > l.lock)
	over(!a.state.Held())
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
