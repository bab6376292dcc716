package lineset_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// A load that no house has is answered where the ropes can tell it. What they cannot is refused when the set is rigged, and told of
// the field that it follows from: the lines are reckoned with up to 1e12 N each, what they carry up to 1e12 kg.
func TestLoadsThatNoHouseHas(t *testing.T) {
	// Of a heap that lies on the deck at low trim nothing is to be balanced.
	heap := func(m units.Mass) load.Item {
		return load.Item{Name: "heap", Mass: m, To: 42 * units.Foot, Below: 6 * units.Foot, Height: 10 * units.Foot, OnDeck: load.Piles}
	}
	hung := func(items ...load.Item) func(*lineset.Set) {
		return func(s *lineset.Set) { s.Hang, s.Balance = items, lineset.AtLow }
	}
	// The arbor weighs the batten out, so that hardly a piece is wanted.
	batten := func(m units.Mass) func(*lineset.Set) {
		return func(s *lineset.Set) {
			*s = plain(t, purchase.Single)
			s.Rigging.Batten.Fittings, s.Rigging.Arbor.Tare = m, m
		}
	}
	for _, c := range []struct {
		name   string
		change func(*lineset.Set)
		field  string // that is out of range; none: it is answered
		value  string
	}{
		{"a heap of 1 t", hung(heap(1e3)), "", ""},
		{"of two million", hung(heap(2e9)), "", ""},
		{"of so much that one line cannot be told", hung(heap(9e11)), "hang", " N on a lift line"},
		{"so much under a batten of 2 t", func(s *lineset.Set) {
			hung(heap(9e11))(s)
			s.Rigging.Batten.Fittings = 2e3
		}, "hang", " N on a lift line"},
		{"two of so much that they cannot be added", hung(heap(9e11), heap(9e11)), "hang", " kg to be carried"},
		{"a batten of two million tonnes", batten(2e9), "", ""},
		{"of so much that one line cannot be told", batten(9e11), "rigging", " N on a lift line"},
		{"of so much that it cannot be told", batten(1e12), "rigging", " kg to be carried with nothing hung"},
	} {
		s := electric()
		c.change(&s)
		r, err := s.Rig(stock)
		if c.field != "" {
			var fe *units.FieldError
			if !errors.As(err, &fe) || fe.Field != c.field || !strings.HasSuffix(fe.Value, c.value) || !errors.Is(err, units.ErrOutOfRange) ||
				!strings.Contains(fe.Want, "1000000000000") || r != nil || len(faults(err)) != 1 {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		answersAll(t, c.name, r)
	}
}

// answersAll makes sure that no check of a set is left out for a state that it does not have.
func answersAll(t *testing.T, name string, r *lineset.Rigged) {
	t.Helper()
	for _, check := range r.Checks() {
		if check.Name == "state" {
			t.Errorf("%s: %v", name, check)
		}
	}
	if low := r.Low(); len(low.Share.Lines) == 0 || len(low.Ropes.Lift) == 0 {
		t.Errorf("%s: %+v", name, low)
	}
}

// However hard the sheaves turn, up to the drag of 0.9 that a rigging may have, there is a pull on the hand line that moves the set, of
// whatever purchase: the harder the larger.
func TestSheavesThatHardlyTurn(t *testing.T) {
	kinds := []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple}
	for _, lift := range kinds {
		for _, hand := range kinds {
			before := units.Force(0)
			for _, drag := range []purchase.Drag{0, 0.02, 0.1, 0.3, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9} {
				s := electric()
				s.Rigging.Purchase, s.Rigging.HandPurchase, s.Rigging.Drag = lift, hand, drag
				s.Rigging.Run.LowerStop = 40 * units.Foot // five feet of travel, which is fifteen in triple purchase
				s.Low, s.High = 4.5*units.Foot, 8*units.Foot
				r := mustRig(t, s)
				answersAll(t, "hard sheaves", r)
				h, err := r.Hand(6 * units.Foot)
				if err != nil || h.Out.Runs && drag > 0.1 || h.Out.Loose || !(h.Out.Pull > before || drag <= 0.1) || math.IsInf(float64(h.Out.Pull), 0) {
					t.Errorf("%v on a hand line of %v, drag %v: %+v, %v; less than a drag below takes, %v", lift, hand, drag, h.Out, err, before)
				}
				before = h.Out.Pull
			}
		}
	}
}

// A flat that would tip the batten stands on the deck up to the highest trim and half a hair, and with it every question is answered.
// Nobody can say how the lines share it once it hangs.
func TestTipsAHairBeyondTheHighestTrim(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double} {
		s := eighths(kind)
		s.Hang = load.Hang{{
			Name: "flat", Mass: 20_000 * units.Pound, From: 41.9 * units.Foot, To: 41.9 * units.Foot, Height: 14 + 0.5e-6, OnDeck: load.Stands,
		}}
		r := mustRig(t, s)
		if _, err := r.At(14 + 0.4e-6); err != nil {
			t.Errorf("while it stands: %v", err)
		}
		tipping := 14 + units.Length(0.6e-6)
		_, err := r.At(tipping)
		_, hand := r.Hand(tipping)
		for _, err := range []error{err, r.AtInto(new(lineset.State), tipping), hand} {
			if tip := (*load.TipError)(nil); !errors.As(err, &tip) || tip.Trim != tipping {
				t.Errorf("%v purchase: %v", kind, err)
			}
		}
	}
}

// Heights are told apart to the nanometre where the arbor flies, and to the last bit where the ropes are laid. An idler less than that
// under the foot of the arbor on its stop is met by it, and the set is refused.
func TestIdlerLessThanANanometreUnderTheArbor(t *testing.T) {
	for _, c := range []struct {
		name    string
		madeOff units.Length
		idler   units.Length
		ok      bool
	}{
		{"a nanometre under it", 1, 0.5 - 1e-9, true},
		{"half a nanometre under it", 1, 0.5 - 0.5e-9, true},
		{"as near under it as can be written", 1, units.Length(math.Nextafter(0.5, 0)), false},
		{"nearer than the trim is rounded up", 1 + 0.6e-9, 0.5 - 0.1e-9, false},
		{"further than the trim is rounded up", 1 + 0.6e-9, 0.5 - 0.5e-9, true},
	} {
		s := eighths(purchase.Single)
		s.Rigging.MadeOff, s.Rigging.Idler.Height = c.madeOff, c.idler
		r, err := s.Rig(stock)
		if c.ok {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			} else if _, err := r.At(r.Travel().Highest); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		checkFault(t, err, units.FieldError{Field: "rigging.run", Want: "stops that halt the arbor before two blocks meet", Err: units.ErrOutOfRange})
	}
}
