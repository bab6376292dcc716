package lineset_test

import (
	"errors"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// A batten that is halted moves by up to half an inch, but for the stop: at the lowest trim it lies still, beyond the highest it cannot go. So
// a flat that leaves the deck within half an inch of a halt counts with it and without it there. From 4 ft the set reaches 47 1/2. The flat of
// 40 lb is answered by 2 pieces of 10: standing, it is 20 arbor-heavy, clear 20 batten-heavy.
func TestHaltedBattensSway(t *testing.T) {
	const low, high, in = 4 * units.Foot, 47.5 * units.Foot, units.Inch
	for _, c := range []struct {
		name          string
		leaves        units.Length // where the flat leaves the deck
		halt          units.Length
		stands, clear bool // which of the two counts
		is            float64
		where         units.Length // where it is told to be 20 batten-heavy: the lowest of those places
	}{
		{"well below", 20 * units.Foot, 20*units.Foot - in, true, false, -20, 0},
		{"just too far below", 20 * units.Foot, 20*units.Foot - 0.55*in, true, false, -20, 0},
		{"just near enough below", 20 * units.Foot, 20*units.Foot - 0.45*in, true, true, -20, 20 * units.Foot},
		{"where it leaves", 20 * units.Foot, 20 * units.Foot, true, true, -20, 20 * units.Foot},
		{"just near enough above", 20 * units.Foot, 20*units.Foot + 0.45*in, true, true, 20, 20 * units.Foot},
		{"just too far above", 20 * units.Foot, 20*units.Foot + 0.55*in, false, true, 20, 20*units.Foot + 0.55*in},
		{"well above", 20 * units.Foot, 20*units.Foot + in, false, true, 20, 20*units.Foot + in},
		{"on the stop, the flat just above it", low + 0.25*in, low, true, false, -20, 0},
		{"on the stop, where the flat leaves", low, low, true, false, -20, 0},
		{"on the stop, the flat just below it", low - 0.25*in, low, false, true, 20, low},
		{"off the stop, where the flat leaves on it", low, low + 0.25*in, false, true, 20, low + 0.25*in},
		{"off the stop, both just above it", low + 0.25*in, low + 0.5*in, true, true, 20, low + 0.25*in},
		{"as high as it goes, the flat just above", high + 0.25*in, high, true, false, -20, 0},
		{"as high as it goes, where the flat leaves", high, high, true, false, -20, 0},
		{"as high as it goes, the flat just below", high - 0.25*in, high, true, true, 20, high - 0.25*in},
		{"just below as high as it goes, where the flat leaves there", high, high - 0.25*in, true, false, -20, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			flat := standing(c.leaves.In(units.Foot))
			r := rigTens(t, plain(t, purchase.Single, flat))
			o := lineset.Order{From: lineset.FromBare, Trim: c.halt, Hung: []int{1}, Pieces: []lineset.PiecesOf{{Piece: "10", Count: 2}}}
			for _, limit := range []struct {
				name          string
				arbor, batten float64
				exceeds       bool
				at            units.Length
			}{
				{"no room for it standing", 19, 30, c.stands, 0},
				{"no room for it clear", 30, 19, c.clear, c.where},
				{"room for both", 20, 20, false, 0},
			} {
				check, err := r.CheckOrder(o, within(limit.arbor, limit.batten))
				if err != nil {
					t.Fatal(err)
				}
				s := check.States[0]
				if tidy(s.Imbalance) != c.is || s.Exceeds() != limit.exceeds || limit.exceeds && limit.at > 0 && !s.Balance.Trim.Within(limit.at, units.Millimetre) {
					t.Errorf("%s: %v, %+v", limit.name, tidy(s.Imbalance), s.Balance)
				}
				// Halted there on the way of an order it is the same.
				if c.halt == low {
					continue
				}
				o := o
				o.Trim = 10 * units.Foot
				o.Steps = []lineset.OrderStep{unlock, {Act: lineset.FlyTo, Trim: c.halt}, lock}
				if check, err = r.CheckOrder(o, within(limit.arbor, limit.batten)); err != nil {
					t.Fatal(err)
				}
				if s := check.States[3]; s.Exceeds() != limit.exceeds {
					t.Errorf("%s, flown there: %+v", limit.name, s.Balance)
				}
			}
		})
	}
}

// Whatever is planned to be done at a halt is within the limits with a flat that leaves the deck half an inch beside it, on the deck and off
// it: at such a halt the flat of 40 lb is answered by 2 pieces of 10 at the most within 20 either way, and by all 4 only clear of it.
func TestPlannedHaltsSway(t *testing.T) {
	const low = 4 * units.Foot
	r := rigTens(t, plain(t, purchase.Single, standing(20)))
	for _, c := range []struct {
		off units.Length
		can bool
	}{
		{-units.Inch, false}, {-0.45 * units.Inch, false}, {0, false}, {0.45 * units.Inch, false}, {0.55 * units.Inch, true}, {units.Inch, true},
	} {
		limits := within(20, 20)
		limits.RestsOnStop = true
		_, err := r.Order(lineset.Loading, limits,
			lineset.WorkTrim{Trim: low, Deck: true, Bridge: true}, lineset.WorkTrim{Trim: 20*units.Foot + c.off, Bridge: true, End: true})
		if none := (*lineset.NoOrderError)(nil); c.can != (err == nil) || !c.can && !errors.As(err, &none) {
			t.Errorf("%v off where the flat leaves the deck: %v", c.off, err)
		}
	}
}

// On its way between two halts a set may be more out of balance than at either: lift lines of 1 lb/ft, five of them, make it 10 lb lighter for each
// foot that it flies out, a cloth of 200 lb and 8 ft makes it 25 lb heavier up to 8 ft. Whatever is planned is within the limits there too.
func TestPlansLookBetweenHalts(t *testing.T) {
	cloth := pounds("cloth", 200)
	cloth.Height, cloth.OnDeck = 8*units.Foot, load.Piles
	s := plain(t, purchase.Single, cloth)
	s.Rigging.LiftLine, s.Balance = 100*units.PoundPerHundredFeet, lineset.AtLow
	r := rigTens(t, s)
	at := []lineset.WorkTrim{{Trim: 4 * units.Foot, Deck: true, Bridge: true}, {Trim: 12 * units.Foot, Bridge: true, End: true}, {Trim: 20 * units.Foot, Bridge: true}}
	flown, none := 0, 0
	for batten := 0.0; batten <= 100; batten += 10 {
		limits := within(200, batten)
		limits.RestsOnStop = true
		p, err := r.Order(lineset.Loading, limits, at...)
		if err != nil {
			none++
			continue
		}
		flown += p.Check.Flights
		if p.Check.Exceeds {
			t.Fatalf("within %v: %s", batten, calls(p.Order))
		}
	}
	if flown == 0 || none == 0 {
		t.Errorf("%d flights, %d without an order", flown, none)
	}
}
