package load_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	closeTo "example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Two lines 8 m apart on a pipe of 12 m; 100 N at the near end, 2 m out, and 400 N in the middle. About the far line:
// the near one bears 10/8·100 + 200 = 325, the far one 175. From the near end on the shear is −100, then 225, then −175; the moment over the near line −200, in the
// middle −200 + 4·225 = 700.
func TestCutsByHand(t *testing.T) {
	weightless := pipe
	weightless.Density = 1e-6
	b := load.Batten{Length: 12, Pipe: weightless, Lines: []load.Line{{At: 2}, {At: 10}}}
	n := func(f float64) units.Mass { return units.Force(f).Mass(units.StandardGravity) }
	r, err := b.Rig(load.Hang{{Name: "end", Mass: n(100)}, {Name: "middle", Mass: n(400), From: 6, To: 6}})
	if err != nil {
		t.Fatal(err)
	}
	got, err := r.Cuts(5, 0, 1, 2, 4, 6, 10, 12)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct{ before, past, moment float64 }{
		{0, -100, 0}, {-100, -100, -100}, {-100, 225, -200}, {225, 225, 250}, {225, -175, 700}, {-175, 0, 0}, {0, 0, 0},
	} {
		c := got[i]
		if !closeTo.Abs(c.Before.In(units.Newton), want.before, 1e-4) || !closeTo.Abs(c.Past.In(units.Newton), want.past, 1e-4) || !closeTo.Abs(c.Moment.In(units.NewtonMetre), want.moment, 1e-4) {
			t.Errorf("%+v, want %v", c, want)
		}
	}
}

// The statics of a cut: what the lines before it pull less what hangs before it, and their moments about it, worked out from
// what Share and the description say. The most of all cuts is what Share says is the most.
func TestPropCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawRig(t)
		for i := range h {
			if h[i].To-h[i].From < units.Millimetre { // next to nothing counts as a point
				h[i].To = h[i].From
			} else {
				h[i].Taper = rapid.Float64Range(-1, 1).Draw(t, "taper")
			}
		}
		r, err := b.Rig(h)
		if err != nil {
			t.Fatal(err)
		}
		trim := units.Length(rapid.Float64Range(0, 13).Draw(t, "trim"))
		s, err := r.Share(trim)
		if err != nil {
			if _, cut := r.Cuts(trim, 1); cut == nil {
				t.Fatal("a batten that tips was cut")
			}
			return
		}
		var at []units.Length
		for i := range 25 {
			at = append(at, units.Length(float64(i)/2))
		}
		for _, l := range s.Lines {
			at = append(at, l.At)
		}
		at = append(at, s.Sagging.At, s.Hogging.At, s.Shear.At)
		cuts, err := r.Cuts(trim, at...)
		if err != nil {
			t.Fatal(err)
		}
		all := append(load.Hang{{Mass: r.Bare(), To: b.Length}}, h...)
		small := 1e-9 * (s.Weight.In(units.Newton) + 1)
		for _, c := range cuts {
			x := c.At.In(units.Metre)
			var before, past, moment float64
			for _, l := range s.Lines {
				pull, arm := l.Tension.In(units.Newton), x-l.At.In(units.Metre)
				if arm > 0 {
					before += pull
					moment += pull * arm
				}
				if arm >= 0 {
					past += pull
				}
			}
			for _, item := range all {
				w := item.Carried(trim).Weight(units.StandardGravity).In(units.Newton)
				from, to := item.From.In(units.Metre), item.To.In(units.Metre)
				switch {
				case to < x || to == x && from < to: // all of it, at its middle or, where it leans, beyond
					before, past = before-w, past-w
					moment -= w * (x - (from+to)/2 - item.Taper*(to-from)/6)
				case from == x && to == x:
					past -= w
				case from < x:
					// With u from 0 to 1 along it the weight per length is (1 + k(2u − 1)): it sums up to u + k(u² − u),
					// and once more to u²/2 + k(u³/3 − u²/2).
					u, k := (x-from)/(to-from), item.Taper
					before, past = before-w*(u+k*(u*u-u)), past-w*(u+k*(u*u-u))
					moment -= w * (to - from) * (u*u/2 + k*(u*u*u/3-u*u/2))
				}
			}
			if !closeTo.Abs(c.Before.In(units.Newton), before, small) || !closeTo.Abs(c.Past.In(units.Newton), past, small) || !closeTo.Abs(c.Moment.In(units.NewtonMetre), moment, 12*small) {
				t.Fatalf("%+v, want %v, %v, %v", c, before, past, moment)
			}
			if c.Moment.In(units.NewtonMetre) > s.Sagging.Moment.In(units.NewtonMetre)+12*small || c.Moment.In(units.NewtonMetre) < s.Hogging.Moment.In(units.NewtonMetre)-12*small ||
				max(math.Abs(float64(c.Before)), math.Abs(float64(c.Past))) > math.Abs(float64(s.Shear.Force))+small {
				t.Fatalf("%+v is more than the most, %+v", c, s)
			}
		}
		n := len(cuts)
		if sag, hog := cuts[n-3].Moment, cuts[n-2].Moment; s.Sagging.Moment > 0 && !closeTo.Abs(float64(sag), float64(s.Sagging.Moment), 12*small) || s.Hogging.Moment < 0 && !closeTo.Abs(float64(hog), float64(s.Hogging.Moment), 12*small) {
			t.Fatalf("%v and %v, want %v and %v", sag, hog, s.Sagging, s.Hogging)
		}
	})
}

func TestCutsRefuses(t *testing.T) {
	r, err := load.Batten{Length: 12, Pipe: pipe, Lines: load.Spaced(1, 5, 3)}.Rig(nil)
	if err != nil {
		t.Fatal(err)
	}
	var fe *units.FieldError
	if _, err := r.Cuts(5, 1, 12.5); !errors.As(err, &fe) || fe.Field != "at[1]" || !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("beyond the batten: %v", err)
	}
	if _, err := r.Cuts(units.Length(math.NaN())); !errors.Is(err, units.ErrNotFinite) {
		t.Errorf("no trim: %v", err)
	}
	if cuts, err := r.Cuts(5); err != nil || len(cuts) != 0 {
		t.Errorf("nowhere: %v, %v", cuts, err)
	}
}
