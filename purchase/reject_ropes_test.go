package purchase_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Questions about drag, wraps and ropes that cannot be answered name the argument.
func TestRopeQuestionsRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	cable := stock(t, "1/4 in 7x19 galvanised")
	good := purchase.RopeUse{Rope: cable, Termination: 0.8, Bending: 0.9}
	luff := purchase.Tackle{Parts: 3, Sheaves: 3}
	wraps := purchase.Wraps{Turns: 2, Friction: 0.2}
	factor := func(d purchase.Drag, turn units.Angle) error { _, err := d.Factor(turn); return err }
	half := func(k float64) error { _, err := purchase.DragPerHalfTurn(k); return err }
	pull := func(tackle purchase.Tackle, load units.Force, d purchase.Drag) error {
		_, err := tackle.Pull(load, d)
		return err
	}
	rule := func(tackle purchase.Tackle, load units.Force, share float64) error {
		_, err := tackle.PullByRule(load, share)
		return err
	}
	holds := func(w purchase.Wraps, f units.Force) error { _, err := w.Holds(f); return err }
	hand := func(w purchase.Wraps, f units.Force) error { _, err := w.Hand(f); return err }
	turns := func(pull, hand units.Force, mu float64) error {
		_, err := purchase.TurnsWanted(pull, hand, mu)
		return err
	}
	stretch := func(r purchase.RopeStock, f units.Force, l units.Length) error { _, err := r.Stretch(f, l); return err }
	check := func(u purchase.RopeUse, f units.Force, wanted float64) error {
		_, err := u.Check(f, wanted)
		return err
	}
	limit := func(u purchase.RopeUse, wanted float64) error { _, err := u.Limit(wanted); return err }
	ratio := func(tread, rope units.Length) error { _, err := purchase.SheaveRatio(tread, rope); return err }
	keeps := func(r float64) error { _, err := purchase.BendingKeeps(r); return err }
	ea := func(d units.Length, m units.Stress) error { _, err := purchase.RopeEA(d, m); return err }
	breaking := func(d units.Length, m units.Stress) error { _, err := purchase.BreakingByRule(d, m); return err }
	angle := func(o, l units.Length) error { _, err := purchase.FleetAngle(o, l); return err }
	offset := func(l units.Length, a units.Angle) error { _, err := purchase.FleetOffset(l, a); return err }
	with := func(change func(*purchase.RopeUse)) purchase.RopeUse { u := good; change(&u); return u }

	for _, c := range []struct {
		name   string
		err    error
		field  string
		kind   error
		reason string
	}{
		{"factor as drag", purchase.Drag(1.04).Validate(), "", units.ErrOutOfRange, "the two must not be mistaken"},
		{"negative drag", factor(-0.01, 1), "drag", units.ErrNegative, "a sheave does not push"},
		{"NaN drag", factor(purchase.Drag(nan), 1), "drag", units.ErrNotFinite, "no NaN goes in"},
		{"turn beyond half", factor(0.1, 181*units.Degree), "turn", units.ErrOutOfRange, "that is a wrap"},
		{"turn the other way", factor(0.1, -units.Degree), "turn", units.ErrNegative, "the turn has no side"},
		{"infinite turn", factor(0.1, units.Angle(inf)), "turn", units.ErrNotFinite, "no infinity goes in"},
		{"no factor", half(0), "factor", units.ErrMissing, "frictionless is 1"},
		{"an efficiency", half(0.96), "factor", units.ErrOutOfRange, "it must be turned over"},
		{"percent", half(104), "factor", units.ErrOutOfRange, "a slip of the unit"},
		{"infinite factor", half(inf), "factor", units.ErrNotFinite, "no infinity goes in"},
		{"no parts", pull(purchase.Tackle{}, 1, 0), "parts", units.ErrMissing, "the zero value is refused"},
		{"parts below zero", pull(purchase.Tackle{Parts: -1}, 1, 0), "parts", units.ErrOutOfRange, "a count"},
		{"too many parts", rule(purchase.Tackle{Parts: 65, Sheaves: 64}, 1, 0.1), "parts", units.ErrOutOfRange, "work is bounded"},
		{"too few sheaves", pull(purchase.Tackle{Parts: 4, Sheaves: 2}, 1, 0), "sheaves", units.ErrOutOfRange, "three join four parts"},
		{"too many sheaves", rule(purchase.Tackle{Parts: 4, Sheaves: 65}, 1, 0), "sheaves", units.ErrOutOfRange, "work is bounded"},
		{"sheaves below zero", rule(purchase.Tackle{Parts: 1, Sheaves: -1}, 1, 0), "sheaves", units.ErrOutOfRange, "a count"},
		{"negative load", pull(luff, -1, 0), "load", units.ErrNegative, "a rope does not push"},
		{"NaN load", rule(luff, units.Force(nan), 0.1), "load", units.ErrNotFinite, "no NaN goes in"},
		{"drag of a tackle", pull(luff, 1, 2), "drag", units.ErrOutOfRange, "below 1"},
		{"ten, not ten per cent", rule(luff, 1, 10), "share", units.ErrOutOfRange, "a share"},
		{"negative share", rule(luff, 1, -0.1), "share", units.ErrNegative, "friction only costs"},
		{"negative turns", holds(purchase.Wraps{Turns: -1}, 1), "turns", units.ErrNegative, "turns have no side"},
		{"eleven turns", holds(purchase.Wraps{Turns: 11}, 1), "turns", units.ErrOutOfRange, "they lie on no rail"},
		{"NaN turns", hand(purchase.Wraps{Turns: nan}, 1), "turns", units.ErrNotFinite, "no NaN goes in"},
		{"friction above one", hand(purchase.Wraps{Turns: 1, Friction: 1.1}, 1), "friction", units.ErrOutOfRange, "a slip"},
		{"negative friction", holds(purchase.Wraps{Friction: -0.1}, 1), "friction", units.ErrNegative, "it would pull"},
		{"negative hand", holds(wraps, -1), "hand", units.ErrNegative, "a rope does not push"},
		{"infinite pull", hand(wraps, units.Force(inf)), "pull", units.ErrNotFinite, "no infinity goes in"},
		{"no hand", turns(500, 0, 0.2), "hand", units.ErrMissing, "turns alone hold nothing"},
		{"no friction", turns(500, 100, 0), "friction", units.ErrMissing, "turns alone hold nothing"},
		{"NaN friction", turns(500, 100, nan), "friction", units.ErrNotFinite, "no NaN goes in"},
		{"slippery", turns(5000, 1, 0.01), "turns", units.ErrOutOfRange, "136 turns lie on no rail"},
		{"hardly any friction", turns(5000, 1, 5e-324), "turns", units.ErrOutOfRange, "an infinity of turns"},
		{"negative pull", turns(-1, 1, 0.2), "pull", units.ErrNegative, "a rope does not push"},
		{"no EA", stretch(stock(t, "3/4 in manila"), 1, 1), "ea", units.ErrMissing, "no source gives one"},
		{"stretch of NaN", stretch(cable, units.Force(nan), 1), "pull", units.ErrNotFinite, "no NaN goes in"},
		{"stretch of less than nothing", stretch(cable, 1, -1), "length", units.ErrNegative, "a length"},
		{"no diameter", purchase.RopeStock{Breaking: 1}.Validate(), "diameter", units.ErrMissing, "it must be known"},
		{"no strength", purchase.RopeStock{Diameter: 1}.Validate(), "breaking", units.ErrMissing, "it must be known"},
		{"negative mass", purchase.RopeStock{Diameter: 1, Breaking: 1, Mass: -1}.Validate(), "mass", units.ErrNegative, "ropes weigh something"},
		{"negative EA", purchase.RopeStock{Diameter: 1, Breaking: 1, EA: -1}.Validate(), "ea", units.ErrNegative, "ropes grow longer"},
		{"no such rope", func() error { _, err := purchase.StandardRope("1/4 in"); return err }(), "", units.ErrUnknown, "it lists the names"},
		{"no pull", check(good, 0, 8), "pull", units.ErrMissing, "it would reach any factor"},
		{"infinite pull on a rope", check(good, units.Force(inf), 8), "pull", units.ErrNotFinite, "no infinity goes in"},
		{"nothing said of ends", limit(with(func(u *purchase.RopeUse) { u.Termination = 0 }), 8), "termination", units.ErrMissing, "no silent default"},
		{"nothing said of bends", check(with(func(u *purchase.RopeUse) { u.Bending = 0 }), 1, 8), "bending", units.ErrMissing, "no silent default"},
		{"per cent of strength", limit(with(func(u *purchase.RopeUse) { u.Termination = 80 }), 8), "termination", units.ErrOutOfRange, "a share"},
		{"stronger by bending", limit(with(func(u *purchase.RopeUse) { u.Bending = 1.01 }), 8), "bending", units.ErrOutOfRange, "a share"},
		{"rope of a use", limit(with(func(u *purchase.RopeUse) { u.Rope.Breaking = -1 }), 8), "rope.breaking", units.ErrNegative, "with its path"},
		{"no factor wanted", limit(good, 0), "wanted", units.ErrMissing, "the caller sets it"},
		{"factor below one", check(good, 1, 0.9), "wanted", units.ErrOutOfRange, "that is no margin"},
		{"NaN wanted", limit(good, nan), "wanted", units.ErrNotFinite, "no NaN goes in"},
		{"no sheave", ratio(0, 1), "tread", units.ErrMissing, "a divisor of nothing"},
		{"no rope", ratio(1, 0), "rope", units.ErrMissing, "no divisor"},
		{"sharper than the rope", keeps(0.9), "sheave_ratio", units.ErrOutOfRange, "the table ends at 1"},
		{"no ratio", keeps(0), "sheave_ratio", units.ErrMissing, "the table ends at 1"},
		{"infinite ratio", keeps(inf), "sheave_ratio", units.ErrNotFinite, "no infinity goes in"},
		{"EA of nothing", ea(0, 1), "diameter", units.ErrMissing, "it must be known"},
		{"EA by nothing", ea(1, 0), "modulus", units.ErrMissing, "it must be known"},
		{"strength round nothing", breaking(-1, purchase.ManilaRule), "round", units.ErrNegative, "a length"},
		{"strength by no rule", breaking(1, units.Stress(nan)), "rule", units.ErrNotFinite, "no NaN goes in"},
		{"no lead", angle(1, 0), "lead", units.ErrMissing, "no divisor"},
		{"NaN offset", angle(units.Length(nan), 1), "offset", units.ErrNotFinite, "no NaN goes in"},
		{"no limit", offset(1, 0), "limit", units.ErrMissing, "the caller sets it"},
		{"limit of 46 degrees", offset(1, 46*units.Degree), "limit", units.ErrOutOfRange, "no fleet angle"},
		{"negative lead", offset(-1, 0.02), "lead", units.ErrNegative, "a length"},
	} {
		t.Run(c.name, func(t *testing.T) {
			one(t, c.err, c.field, c.kind, c.reason)
		})
	}
}

// Everything that is wrong is told at once, the named rope's faults with its name.
func TestRopeFaultsTogether(t *testing.T) {
	_, err := purchase.RopeUse{Rope: purchase.RopeStock{Name: "old line"}}.Check(-1, 0)
	var faults []*units.FieldError
	var walk func(error)
	walk = func(err error) {
		switch err := err.(type) {
		case *units.FieldError:
			faults = append(faults, err)
		case interface{ Unwrap() []error }:
			for _, e := range err.Unwrap() {
				walk(e)
			}
		}
	}
	walk(err)
	want := []string{"pull", "rope.diameter", "rope.breaking", "termination", "bending", "wanted"}
	if len(faults) != len(want) {
		t.Fatalf("%d faults, want %v: %v", len(faults), want, err)
	}
	for i, f := range faults {
		if f.Field != want[i] || (f.Of == `"old line"`) != strings.HasPrefix(f.Field, "rope.") {
			t.Errorf("fault %v of %q, want %s", f, f.Of, want[i])
		}
	}
}

// A rope of no name lends none to its faults.
func TestNamelessRopeFaults(t *testing.T) {
	_, err := purchase.RopeUse{}.Limit(8)
	for _, fault := range faults(t, err) {
		if fault.Of != "" {
			t.Errorf("%v is of %q", fault, fault.Of)
		}
	}
	one(t, err, "rope.diameter, rope.breaking, termination, bending", units.ErrMissing, "the zero value is refused")
}

// Whatever goes in, an answer is a finite number, or there is an error and no answer.
func TestPropRopeAnswersFinite(t *testing.T) {
	wild := rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 2), rapid.Float64Range(0, 1e13),
		rapid.SampledFrom([]float64{0, 1, -1, 0.9, 10, 1e12, 1e-9, 5e-324, math.MaxFloat64, math.Inf(1), math.Inf(-1), math.NaN(), math.Pi}))
	rapid.Check(t, func(t *rapid.T) {
		a, b, c, d := wild.Draw(t, "a"), wild.Draw(t, "b"), wild.Draw(t, "c"), wild.Draw(t, "d")
		say := func(name string, got float64, err error) {
			if math.IsNaN(got) || math.IsInf(got, 0) || err != nil && got != 0 {
				t.Fatalf("%s: %v, %v", name, got, err)
			}
		}
		force := func(name string, f units.Force, err error) { say(name, f.In(units.Newton), err) }
		tackle := purchase.Tackle{Parts: rapid.IntRange(-1, 70).Draw(t, "parts"), Sheaves: rapid.IntRange(-1, 70).Draw(t, "sheaves")}
		made, err := purchase.DragPerHalfTurn(a)
		say("drag", float64(made), err)
		k, err := purchase.Drag(a).Factor(units.Angle(b))
		say("factor", k, err)
		f, err := tackle.Pull(units.Force(a), purchase.Drag(b))
		force("pull", f, err)
		f, err = tackle.PullByRule(units.Force(a), b)
		force("rule", f, err)
		f, err = purchase.Wraps{Turns: a, Friction: b}.Holds(units.Force(c))
		force("holds", f, err)
		f, err = purchase.Wraps{Turns: a, Friction: b}.Hand(units.Force(c))
		force("hand", f, err)
		k, err = purchase.TurnsWanted(units.Force(a), units.Force(b), c)
		say("turns", k, err)
		f, err = purchase.RopeEA(units.Length(a), units.Stress(b))
		force("EA", f, err)
		f, err = purchase.BreakingByRule(units.Length(a), units.Stress(b))
		force("breaking", f, err)
		l, err := purchase.RopeStock{EA: units.Force(a)}.Stretch(units.Force(b), units.Length(c))
		say("stretch", l.In(units.Metre), err)
		k, err = purchase.SheaveRatio(units.Length(a), units.Length(b))
		say("sheave ratio", k, err)
		k, err = purchase.BendingKeeps(a)
		say("bending", k, err)
		use := purchase.RopeUse{Rope: purchase.RopeStock{Diameter: 1, Breaking: units.Force(a)}, Termination: b, Bending: 1}
		f, err = use.Limit(c)
		force("limit", f, err)
		check, err := use.Check(units.Force(d), c)
		say("factor reached", check.Factor, err)
		say("use", check.Use, err)
		at, err := purchase.FleetAngle(units.Length(a), units.Length(b))
		say("fleet angle", at.In(units.Radian), err)
		l, err = purchase.FleetOffset(units.Length(a), units.Angle(b))
		say("fleet offset", l.In(units.Metre), err)
	})
}
