package load_test

import (
	"errors"
	"math"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

func drawItem(t *rapid.T, length float64) load.Item {
	a, b := rapid.Float64Range(0, length).Draw(t, "a"), rapid.Float64Range(0, length).Draw(t, "b")
	return load.Item{
		Mass:   units.Mass(rapid.Float64Range(0.1, 500).Draw(t, "mass")),
		From:   units.Length(min(a, b)),
		To:     units.Length(max(a, b)),
		Below:  units.Length(rapid.IntRange(0, 3).Draw(t, "below")),
		Height: units.Length(rapid.IntRange(1, 8).Draw(t, "height")),
		OnDeck: load.OnDeck(rapid.IntRange(0, 2).Draw(t, "on deck")),
	}
}

func drawRig(t *rapid.T) (load.Batten, load.Hang) {
	n := rapid.IntRange(1, 8).Draw(t, "lines")
	b := load.Batten{Length: 12, Pipe: pipe, Lines: load.Spaced(units.Length(rapid.Float64Range(0, 2).Draw(t, "first")), units.Length(10/float64(n)), n)}
	var h load.Hang
	for range rapid.IntRange(0, 6).Draw(t, "items") {
		h = append(h, drawItem(t, 12))
	}
	return b, h
}

func TestCarriedNeverFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		i := drawItem(t, 12)
		a, b := rapid.Float64Range(-1, 13).Draw(t, "low"), rapid.Float64Range(-1, 13).Draw(t, "high")
		low, high := units.Length(min(a, b)), units.Length(max(a, b))
		if x, y := i.Carried(low), i.Carried(high); x > y || x < 0 || y > i.Mass {
			t.Fatalf("%v at %v, %v at %v", x, low, y, high)
		}
		if x, y := i.Carried(low), i.CarriedAbove(low); x > y {
			t.Fatalf("%v, and above %v", x, y)
		}
		// The limit from above, by stepping up by next to nothing.
		step := i.Carried(units.Length(math.Nextafter(float64(low), 99)))
		if d := units.Abs(step - i.CarriedAbove(low)); d > 1e-9 {
			t.Fatalf("above %v: %v by stepping, %v", low, step, i.CarriedAbove(low))
		}
	})
}

// TestShareHolds: the lines hold what is carried, in force and in moment, and none pushes. The
// error can only be that the batten tips, and then it tips.
func TestShareHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawRig(t)
		r, err := b.Rig(h)
		if err != nil {
			t.Fatal(err)
		}
		trim := units.Length(rapid.Float64Range(-1, 13).Draw(t, "trim"))
		if breaks := r.Breaks(); len(breaks) > 0 && rapid.Bool().Draw(t, "at a break") {
			trim = rapid.SampledFrom(breaks).Draw(t, "break")
		}
		s, err := r.Share(trim)
		var tip *load.TipError
		if errors.As(err, &tip) {
			if tip.Centre >= tip.First && tip.Centre <= tip.Last || tip.Trim != trim || tip.Above {
				t.Fatalf("%+v", tip)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if s.Carried != r.Carried(trim) || s.Centre != r.Centre(trim) || s.Trim != trim {
			t.Fatalf("%+v", s)
		}
		weight := s.Weight.In(units.Newton)
		var sum, about float64
		for i, l := range s.Lines {
			if l.Tension < 0 || l.Gap < 0 || l.Slack != (l.Tension == 0) || !l.Slack && l.Gap != 0 {
				t.Fatalf("line %d: %+v", i, l)
			}
			sum += l.Tension.In(units.Newton)
			about += l.Tension.Moment(l.At).In(units.NewtonMetre)
		}
		if math.Abs(sum-weight) > 1e-9*weight || math.Abs(about-weight*s.Centre.In(units.Metre)) > 1e-5*weight {
			t.Fatalf("sum %v of %v, moment %v of %v", sum, weight, about, weight*s.Centre.In(units.Metre))
		}
		if s.Sagging.Moment < 0 || s.Hogging.Moment > 0 || s.Stress < 0 {
			t.Fatalf("%+v", s)
		}
		if _, worst := s.Worst(); float64(worst.Tension)*float64(len(s.Lines)) < weight*(1-1e-9) {
			t.Fatalf("the worst line carries less than the mean: %+v", s)
		}
	})
}

// TestScale: while all else stays, every tension and moment is in proportion to the masses.
func TestScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawRig(t)
		k := rapid.SampledFrom([]float64{0.5, 2, 4}).Draw(t, "factor")
		s, err := b.Share(h, 6)
		if err != nil {
			return
		}
		b.Pipe.Density = b.Pipe.Density.Scale(k)
		for i := range h {
			h[i].Mass = h[i].Mass.Scale(k)
		}
		more, err := b.Share(h, 6)
		if err != nil {
			t.Fatal(err)
		}
		for i, l := range s.Lines {
			if more.Lines[i].Tension != l.Tension.Scale(k) {
				t.Fatalf("line %d: %v and %v", i, l, more.Lines[i])
			}
		}
		if more.Stress != s.Stress.Scale(k) {
			t.Fatalf("stress %v and %v", s.Stress, more.Stress)
		}
	})
}

// TestRiggedIsShared asks one Rigged from many goroutines; run with -race.
func TestRiggedIsShared(t *testing.T) {
	r, err := fiveLines().Rig(load.Hang{{Mass: 50, From: 2, To: 5, Height: 6, OnDeck: load.Piles}})
	if err != nil {
		t.Fatal(err)
	}
	want, _ := r.Share(4)
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for range 50 {
				if s, err := r.Share(4); err != nil || s.Lines[1] != want.Lines[1] {
					t.Error(s, err)
				}
			}
		})
	}
	all.Wait()
}
