package lineset_test

import (
	"errors"
	"fmt"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// The limits that would allow an order are printed rounded up, in tenths, so that what is read off is enough and no more than a tenth
// too much. 1 lbf is 4.4482216152605 N.
func TestWhatNoOrderSays(t *testing.T) {
	lbf := units.PoundForce.Scale
	for _, c := range []struct {
		err  lineset.NoOrderError
		want string
	}{
		{
			lineset.NoOrderError{Job: lineset.Loading, Either: lbf(30), ArborHeavy: lbf(30), BattenHeavy: lbf(40)},
			"no order of loading keeps within the limits given; there is one with a limit of 30 lbf (133.5 N) both ways, " +
				"or of 30 lbf (133.5 N) arbor-heavy with the other as it is, or of 40 lbf (178.0 N) batten-heavy with the other as it is",
		},
		{
			lineset.NoOrderError{Job: lineset.Stripping, Either: lbf(30.01), BattenHeavy: 100 * units.Newton}, // 133.491 N; 22.48 lbf
			"no order of stripping keeps within the limits given; there is one with a limit of 30.1 lbf (133.5 N) both ways, " +
				"or of 22.5 lbf (100.0 N) batten-heavy with the other as it is",
		},
		{
			lineset.NoOrderError{Job: lineset.Loading, Either: lbf(0.3), ArborHeavy: lbf(1000.1)}, // 1.334 N; 4448.67 N
			"no order of loading keeps within the limits given; there is one with a limit of 0.3 lbf (1.4 N) both ways, " +
				"or of 1000.1 lbf (4448.7 N) arbor-heavy with the other as it is",
		},
		{
			lineset.NoOrderError{Job: lineset.Loading, Either: lbf(0.1), ArborHeavy: 0.1 * units.Newton, BattenHeavy: 0.2 * units.Newton}, // 0.445 N; 0.022 and 0.045 lbf
			"no order of loading keeps within the limits given; there is one with a limit of 0.1 lbf (0.5 N) both ways, " +
				"or of 0.1 lbf (0.1 N) arbor-heavy with the other as it is, or of 0.1 lbf (0.2 N) batten-heavy with the other as it is",
		},
		{lineset.NoOrderError{Job: lineset.Stripping, Tips: true}, "no order of stripping keeps the batten from tipping, whatever the limits"},
	} {
		if got := c.err.Error(); got != c.want {
			t.Errorf("%s\nwant %s", got, c.want)
		}
	}
	// Each tenth is printed as itself, whatever its float64.
	for tenths := range 400 {
		pounds, newtons := lbf(0.1).Scale(float64(tenths)), (0.1 * units.Newton).Scale(float64(tenths))
		for limit, want := range map[units.Force]string{
			pounds:  fmt.Sprintf("a limit of %s (", units.US.Format(pounds)),
			newtons: fmt.Sprintf(" (%d.%d N) both ways", tenths/10, tenths%10),
		} {
			err := lineset.NoOrderError{Job: lineset.Loading, Either: limit}
			if got := err.Error(); !contains([]string{got}, want) {
				t.Errorf("%v: %s", limit, got)
			}
		}
	}
}

// What the error tells of the job that was asked.
func TestNoOrderTellsWhatWasAsked(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	for _, job := range []lineset.Job{lineset.Loading, lineset.Stripping} {
		limits := within(20, 39)
		_, err := r.Order(job, limits)
		var none *lineset.NoOrderError
		if !errors.As(err, &none) || none.Job != job || none.Limits != limits || none.Tips {
			t.Errorf("%v: %+v", job, none)
		}
		// Where the batten rests on the stop it needs no limit, and none is told for it: 66 lb are answered by 7 pieces of 10.
		limits = lineset.OrderLimits{ArborHeavy: within(3, 0).ArborHeavy, RestsOnStop: true}
		_, err = rigTens(t, plain(t, purchase.Single, pounds("lamps", 66))).Order(job, limits)
		if !errors.As(err, &none) || none.Limits != limits || none.BattenHeavy != 0 || tidy(none.ArborHeavy) != 4 || tidy(none.Either) != 4 {
			t.Errorf("%v: %+v", job, none)
		}
	}
}

// A plan that cannot be asked for is refused with the field, what stands there, and what would be right.
func TestPlansAreRefusedInFull(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("lamps", 60)))
	low := r.Travel().Lowest
	both := lineset.WorkTrim{Trim: low, Deck: true, Bridge: true}
	resting := lineset.OrderLimits{ArborHeavy: within(10, 10).ArborHeavy, RestsOnStop: true}
	standing := resting
	standing.RestsOnStop = false
	const arborWord, battenWord = "the most that the set may be arbor-heavy on the way, and where that comes from", "the most that the set may be batten-heavy on the way, and where that comes from"
	for _, c := range []struct {
		name   string
		job    lineset.Job
		limits lineset.OrderLimits
		at     []lineset.WorkTrim
		want   units.FieldError // of no kind: it is taken
	}{
		{"no job", 0, within(10, 10), nil, units.FieldError{Field: "job", Value: "Job(0)", Want: "loading or stripping", Err: units.ErrUnknown}},
		{"another job", 3, within(10, 10), nil, units.FieldError{Field: "job", Value: "Job(3)", Want: "loading or stripping", Err: units.ErrUnknown}},
		{"no limit for the arbor", 1, lineset.OrderLimits{BattenHeavy: within(0, 9).BattenHeavy}, nil, units.FieldError{Field: "limits.arbor_heavy", Want: arborWord, Err: units.ErrMissing}},
		{"no limit for the batten, nor rests it", 1, standing, nil, units.FieldError{Field: "limits.batten_heavy", Want: battenWord, Err: units.ErrMissing}},
		{"no limit for the batten, which rests", 1, resting, nil, units.FieldError{}},
		{"no limit for the batten, which rests at the one trim", 2, resting, []lineset.WorkTrim{both}, units.FieldError{}},
		{"no limit for the batten off the stop", 1, resting, []lineset.WorkTrim{{Trim: low + units.Inch, Deck: true, Bridge: true}}, units.FieldError{Field: "limits.batten_heavy", Want: battenWord, Err: units.ErrMissing}},
		{"no limit for the batten that flies", 1, resting, []lineset.WorkTrim{both, {Trim: low + units.Foot}}, units.FieldError{Field: "limits.batten_heavy", Want: battenWord, Err: units.ErrMissing}},
		{"a limit below nothing", 1, within(-1, 10), nil, units.FieldError{Field: "limits.arbor_heavy.max", Value: "-1 lbf (-4.44822162 N)", Want: "0 or more", Err: units.ErrNegative}},
		{"nobody to hang", 1, within(10, 50), []lineset.WorkTrim{{Trim: low, Bridge: true}}, units.FieldError{Field: "trims", Want: "one at which the deck can hang and strip", Err: units.ErrMissing}},
		{"no bridge", 2, within(10, 50), []lineset.WorkTrim{{Trim: low, Deck: true}}, units.FieldError{Field: "trims", Want: "one at which the bridge reaches the arbor", Err: units.ErrMissing}},
		{"deck and bridge at two trims", 1, within(60, 60), []lineset.WorkTrim{{Trim: low, Deck: true}, {Trim: 20 * units.Foot, Bridge: true}}, units.FieldError{}},
		{"one trim twice", 1, within(10, 50), []lineset.WorkTrim{both, {Trim: 8 * units.Foot}, {Trim: low}}, units.FieldError{Field: "trims[2].trim", Value: "4' 0\" (1.2192 m)", Want: "each trim once", Err: units.ErrDuplicate}},
		{"32 trims", 1, within(60, 60), halts(32), units.FieldError{}},
		{"33 trims", 1, within(60, 60), halts(33), units.FieldError{Field: "trims", Value: "33", Want: "at most 32", Err: units.ErrOutOfRange}},
	} {
		t.Run(c.name, func(t *testing.T) {
			limits := c.limits
			if c.want.Err == nil && limits.RestsOnStop {
				limits.ArborHeavy.Max = 60 * units.PoundForce
			}
			_, err := r.Order(c.job, limits, c.at...)
			if c.want.Err != nil {
				checkFault(t, err, c.want)
			} else if err != nil {
				t.Error(err)
			}
		})
	}
	if _, err := r.Order(1, within(10, 10), lineset.WorkTrim{Trim: 1000 * units.Foot, Deck: true, Bridge: true}); !errors.Is(err, units.ErrOutOfRange) || fields(err)[0] != "trims[0].trim" {
		t.Errorf("out of reach: %v", err)
	}
	// The caller's list stays as it was.
	at := []lineset.WorkTrim{{Trim: 20 * units.Foot, Bridge: true}, both}
	if _, err := r.Order(lineset.Loading, within(60, 60), at...); err != nil || at[1] != both {
		t.Errorf("%+v, %v", at, err)
	}
}

// However little is out of balance, it is within a limit of nothing at all only if it is nothing: a tag of a tenth of a pound, which no piece answers.
func TestNothingAtAll(t *testing.T) {
	r := rigTens(t, plain(t, purchase.Single, pounds("tag", 0.1)))
	_, err := r.Order(lineset.Loading, within(10, 0))
	var none *lineset.NoOrderError
	if !errors.As(err, &none) || none.ArborHeavy != 0 || whole(none.BattenHeavy.Scale(10), units.PoundForce) != 1 || whole(none.Either.Scale(10), units.PoundForce) != 1 {
		t.Errorf("%v", err)
	}
	check, err := r.CheckOrder(lineset.Order{From: lineset.FromLoaded}, within(10, 0))
	if err != nil || !check.Exceeds {
		t.Errorf("%+v, %v", check, err)
	}
}

// halts is so many trims an inch apart, at all of which all can be done.
func halts(n int) (out []lineset.WorkTrim) {
	for i := range n {
		out = append(out, lineset.WorkTrim{Trim: 4*units.Foot + units.Inch.Scale(float64(i)), Deck: true, Bridge: true})
	}
	return out
}

// Where there is nothing to hang nobody must hang, and where no piece goes in nobody must reach the arbor.
func TestNobodyIsAskedForNothing(t *testing.T) {
	empty := rigTens(t, plain(t, purchase.Single))
	light := rigTens(t, plain(t, purchase.Single, pounds("tag", 4)))
	low := empty.Travel().Lowest
	for _, c := range []struct {
		name         string
		r            *lineset.Rigged
		deck, bridge bool
		ok           bool
	}{
		{"nothing at all", empty, false, false, true},
		{"a tag that no piece answers", light, true, false, true},
		{"a tag, and nobody to hang it", light, false, true, false},
	} {
		p, err := c.r.Order(lineset.Loading, within(10, 10), lineset.WorkTrim{Trim: low, Deck: c.deck, Bridge: c.bridge})
		if (err == nil) != c.ok {
			t.Errorf("%s: %v", c.name, err)
		}
		if steps := len(p.Order.Steps); c.ok && steps != len(c.r.Set().Hang) {
			t.Errorf("%s: %s", c.name, calls(p.Order))
		}
	}
}

// What is too large to be planned or gone through, by a slip of the unit, is told with how large it is. Batten, hang and empty arbor all
// count: here a batten of 490 t, which such an arbor balances, with 20 t on it, a kilogram more or less.
func TestTooLargeForAnOrder(t *testing.T) {
	heavy := func(more units.Mass) *lineset.Rigged {
		s := plain(t, purchase.Single, load.Item{Name: "wall", Mass: 20*units.Tonne + more, From: 10 * units.Foot, To: 30 * units.Foot})
		b := &s.Rigging.Batten
		b.Pipe.Density = b.Pipe.Density.Scale(units.Ratio(490*units.Tonne, b.BareMass()))
		s.Rigging.Arbor.Tare = 490 * units.Tonne
		return rigTens(t, s)
	}
	limits := within(1e7, 1e7)
	bare := lineset.Order{From: lineset.FromBare}
	just := heavy(-1 * units.Kilogram)
	if _, err := just.CheckOrder(bare, limits); err != nil {
		t.Errorf("just under 1000 t: %v", err)
	}
	if _, err := just.Order(lineset.Loading, limits); err != nil {
		t.Errorf("just under 1000 t: %v", err)
	}
	over := heavy(1 * units.Kilogram)
	const value, want = "2204624.83 lb (1000001 kg)", "less than 2204622.62 lb (1000000 kg) of batten, hang and empty arbor"
	_, err := over.CheckOrder(bare, limits)
	checkFault(t, err, units.FieldError{Value: value, Want: want, Err: units.ErrOutOfRange})
	_, err = over.Order(lineset.Loading, limits)
	checkFault(t, err, units.FieldError{Field: "hang", Value: value, Want: want, Err: units.ErrOutOfRange})

	// 20 items of which no two are alike fill the room there is with up to 63 pieces; with 64 the same do not.
	hangs := func(items int) (hang []load.Item) {
		for i := range items {
			hang = append(hang, pounds("item", 20+float64(i)))
		}
		return hang
	}
	s := plain(t, purchase.Single, hangs(21)...)
	_, err = rigTens(t, s).Order(lineset.Loading, limits)
	checkFault(t, err, units.FieldError{
		Field: "hang", Value: "21 items of 21 sorts with 60 pieces, over 1 trims and breaks",
		Want: "at most 1048576 rows of states, of which this has 2097152, and at most 64 trims and breaks: fewer items that differ, or fewer trims",
		Err:  units.ErrOutOfRange,
	})

	// Two that are alike are one sort.
	s.Hang = append(s.Hang, s.Hang[0])
	_, err = rigTens(t, s).Order(lineset.Loading, limits)
	checkFault(t, err, units.FieldError{
		Field: "hang", Value: "22 items of 21 sorts with 60 pieces, over 1 trims and breaks",
		Want: "at most 1048576 rows of states, of which this has 3145728, and at most 64 trims and breaks: fewer items that differ, or fewer trims",
		Err:  units.ErrOutOfRange,
	})

	// Leaves of a hundredth of a pound.
	leaves := func(count int) *lineset.Rigged {
		s := plain(t, purchase.Single, pounds("lamps", float64(count)/100))
		r, err := s.Rig(arbor.Stock{{Name: "leaf", Mass: 0.01 * units.Pound, Thickness: 0.1 * units.Millimetre, Count: 20000}})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	if _, err := leaves(10000).Order(lineset.Loading, limits); err != nil {
		t.Errorf("10000 pieces: %v", err)
	}
	_, err = leaves(10001).Order(lineset.Loading, limits)
	checkFault(t, err, units.FieldError{Field: "hang", Value: "10001 pieces of counterweight", Want: "at most 10000", Err: units.ErrOutOfRange})
}
