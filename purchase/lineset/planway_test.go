package lineset_test

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// keepsAHairOff goes through a plan with every halt a millimetre higher and lower: it passes its limits by no more than what
// ropes weigh and cloths pile on that way.
func keepsAHairOff(t *rapid.T, r *lineset.Rigged, p lineset.Plan, limits lineset.OrderLimits) {
	more := 5 * units.Newton
	for _, item := range r.Set().Hang {
		if item.OnDeck == load.Piles {
			more += item.Mass.Weight(units.StandardGravity).Scale(units.Ratio(units.Millimetre, item.Height))
		}
	}
	for _, item := range r.Set().Hang {
		// One that leaves the deck just beyond half an inch from a halt comes within it.
		foot := item.Height + item.Below
		beside := func(s lineset.OrderStep) bool {
			return s.Act == lineset.FlyTo && units.Abs(s.Trim-foot).Within(units.Inch/2, 2*units.Millimetre)
		}
		if item.OnDeck == load.Stands && slices.ContainsFunc(p.Order.Steps, beside) {
			more += item.Mass.Weight(units.StandardGravity)
		}
	}
	limits.ArborHeavy.Max += more
	limits.BattenHeavy.Max += more
	for _, off := range []units.Length{-units.Millimetre, units.Millimetre} {
		o := p.Order
		o.Steps = slices.Clone(o.Steps)
		for i, s := range o.Steps {
			if trim := s.Trim + off; s.Act == lineset.FlyTo && s.Trim > r.Travel().Lowest && trim >= r.Travel().Lowest && trim <= r.Travel().Highest {
				o.Steps[i].Trim = trim
			}
		}
		c, err := r.CheckOrder(o, limits)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range c.States {
			if s.Balance.Verdict == lineset.Exceeds {
				t.Fatalf("%v off its halts it is %v: %s", off, s.Balance, calls(p.Order))
			}
		}
	}
}

// On any set, with ropes that weigh, plates, and things that pile and stand, a plan over several
// trims keeps within its limits when it is gone through.
func TestPropPlanOverTrims(t *testing.T) {
	found := 0
	rapid.Check(t, func(rt *rapid.T) {
		s := drawSet(rt)
		if rapid.Bool().Draw(rt, "lock plate") {
			s.Rigging.Arbor.Lock = arbor.Lock{Mass: 3.5 * units.Pound, Thickness: 0.25 * units.Inch}
		}
		r, err := s.Rig(stock)
		if err != nil {
			rt.Skip(err)
		}
		limits := within(rapid.Float64Range(0, 200).Draw(rt, "arbor-heavy"), rapid.Float64Range(0, 300).Draw(rt, "batten-heavy"))
		limits.RestsOnStop = rapid.Bool().Draw(rt, "rests")
		at := r.WorkTrims(units.Length(rapid.Float64Range(0, 5).Draw(rt, "deck")), units.Length(rapid.Float64Range(0, 9).Draw(rt, "bridge")))
		for _, item := range s.Hang {
			// Just where a standing piece leaves the deck, or right beside it, too.
			off := rapid.SampledFrom([]units.Length{0, 0, 3 * units.Millimetre, -5 * units.Millimetre, 11 * units.Millimetre}).Draw(rt, "beside")
			t := lineset.WorkTrim{Trim: item.Height + item.Below + off, Deck: true, Bridge: true}
			same := func(other lineset.WorkTrim) bool { return other.Trim == t.Trim }
			if item.OnDeck == load.Stands && t.Trim > r.Travel().Lowest && t.Trim <= r.Travel().Highest && !slices.ContainsFunc(at, same) {
				at = append(at, t)
			}
		}
		for _, job := range []lineset.Job{lineset.Loading, lineset.Stripping} {
			p, err := r.Order(job, limits, at...)
			var none *lineset.NoOrderError
			if errors.As(err, &none) {
				limits.ArborHeavy.Max, limits.BattenHeavy.Max = none.Either, none.Either
				if p, err = r.Order(job, limits, at...); err != nil {
					rt.Fatalf("no order with the smallest limit: %v", err)
				}
			}
			if err != nil {
				rt.Fatal(err)
			}
			found++
			if p.Check.Exceeds && p.Check.States[p.Check.Worst].Balance.Verdict == lineset.Exceeds {
				rt.Fatalf("a plan exceeds its limits: %s", calls(p.Order))
			}
			keepsAHairOff(rt, r, p, limits)
			full := p.Check.States[0]
			if job == lineset.Loading {
				full = p.Check.States[len(p.Check.States)-1]
			}
			c := r.Counterweight()
			if full.Arbor != c.Arbor || full.Plates != c.Stack.Plates || full.Room.Demand != units.Value(c.Stack.Height) || full.Capacity.Demand != units.Value(c.Stack.Mass) {
				rt.Fatalf("%+v\nis not the set's own stack %+v", full, c)
			}
			if job == lineset.Loading && p.Check.ToHang+p.Check.ToAdd != 0 || job == lineset.Stripping && p.Check.ToStrip+p.Check.ToTake != 0 {
				rt.Fatalf("%+v", p.Check)
			}
		}
	})
	if found == 0 {
		t.Error("no plan was looked at")
	}
}
