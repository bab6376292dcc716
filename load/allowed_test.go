package load_test

import (
	"math"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// allowed is the point allowed on a rig that is valid.
func allowed(t *testing.T, b load.Batten, h load.Hang, from, to units.Length, limits load.Limits) load.PointAllowed {
	t.Helper()
	r, err := b.Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	p, err := r.PointAllowed(5, from, to, limits)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// evenly is a batten of 300 kg, next to all of it spread evenly.
func evenly(length units.Length, at ...units.Length) load.Batten {
	b := load.Batten{Length: length, Pipe: pipe, Fittings: 300}
	b.Pipe.Density = 1e-6
	for _, x := range at {
		b.Lines = append(b.Lines, load.Line{At: x})
	}
	return b
}

// Over one of two lines at the ends a point hangs from that line alone, which carries half of the batten besides. From a share of a
// ten-millionth up to a million times what is carried it is found; beyond that nothing is said to bind.
func TestPointAllowedOverALine(t *testing.T) {
	b := evenly(6, 0, 6)
	carried := b.BareMass()
	weight := carried.Weight(units.StandardGravity)
	for line, at := range []units.Length{0, 6} {
		for _, times := range []float64{3e-8, 3e-6, 3e-4, 0.03, 3, 30, 3000, 0.4e6, 0.95e6, 1.05e6, 2e6, 1e7} {
			got := allowed(t, b, nil, at, at, load.Limits{Line: weight.Scale(0.5 + times)})
			if times > 1e6 {
				if got != (load.PointAllowed{}) {
					t.Errorf("%v times what is carried: %+v, want that nothing binds", times, got)
				}
				continue
			}
			if got.Bound != load.BoundByLine || got.Line != line || got.At != at || math.Abs(units.Ratio(got.Mass, carried)/times-1) > 1e-7 {
				t.Errorf("%v times what is carried: %+v, %v times, want line %d", times, got, units.Ratio(got.Mass, carried), line)
			}
		}
	}
}

// A point outside the lines brings the centre of gravity out to the outermost: by the lever, inside over outside times what is carried. So
// close outside that it takes more than a million times that, nothing is said to bind.
func TestPointAllowedOutsideTheLines(t *testing.T) {
	b := evenly(12, 3, 9)
	carried := b.BareMass()
	for _, outside := range []float64{2e-6, 4e-6, 1e-3, 0.1, 3} {
		for _, at := range []units.Length{units.Length(3 - outside), units.Length(9 + outside)} {
			got := allowed(t, b, nil, at, at, load.Limits{Line: 1e12})
			outside := float64(max(3-at, at-9))
			if want := 3 / outside; want > 1e6 {
				if got != (load.PointAllowed{}) {
					t.Errorf("%v outside: %+v, want that nothing binds", outside, got)
				}
			} else if got.Bound != load.BoundByTipping || got.At != at || math.Abs(units.Ratio(got.Mass, carried)/want-1) > 1e-6 {
				t.Errorf("%v outside: %+v, want %v times what is carried", outside, got, want)
			}
		}
	}
}

// Between two lines at the ends the moment is greatest with the point in the middle, PL/4 beside the pipe's own WL/8, whatever the stretch
// about it; and a light pipe may be limited to less than a pascal.
func TestPointAllowedOfThePipeAlone(t *testing.T) {
	b := load.Batten{Length: 6, Pipe: pipe, Lines: load.Spaced(0, 6, 2)}
	for _, stress := range []units.Stress{0.9, 100 * units.Megapascal} {
		b.Pipe.Density = load.SteelDensity
		if stress < 1 {
			b.Pipe.Density = 1e-6
		}
		got := allowed(t, b, nil, 1, 5.5, load.Limits{Stress: stress})
		want := 4*stress.In(units.Pascal)*float64(pipe.SectionModulus())/6/9.80665 - float64(b.BareMass())/2
		if got.Bound != load.BoundByPipe || math.Abs(float64(got.Mass)/want-1) > 0.01 || math.Abs(float64(got.At)-3) > 0.01 {
			t.Errorf("%+v, want %v kg in the middle", got, want)
		}
	}
}

// Of three lines the middle one is close to the first, where a weight keeps all of them tight. A point beyond it hangs from it with more
// than its weight, and most some way off: the places are gone through one by one. Limits of less than a newton bind as others do.
func TestPointAllowedOfALineAlone(t *testing.T) {
	b := load.Batten{Length: 6, Pipe: pipe, Lines: []load.Line{{At: 0}, {At: 1}, {At: 6}}}
	b.Pipe.Density = 1e-6
	for _, scale := range []float64{1, 1e-4} {
		h := load.Hang{{Mass: units.Mass(600 * scale)}}
		limits := load.Limits{Line: units.Force(6000 * scale)}
		b.Lines[1].Limit = units.Force(900 * scale)
		got := allowed(t, b, h, 1, 6, limits)
		worst, where := 0.0, units.Length(0)
		for k := range 501 {
			at := 1 + units.Length(5*float64(k)/500)
			s, err := b.Share(with(h, got.Mass, at), 5)
			if err != nil {
				t.Fatal(err)
			}
			if u := s.Use(limits); u.Line > worst {
				worst, where = u.Line, at
			}
		}
		if got.Bound != load.BoundByLine || got.Line != 1 || math.Abs(worst-1) > 1e-4 || math.Abs(float64(got.At-where)) > 0.05 || where < 1.1 || where > 5.9 {
			t.Errorf("%+v: with it at most %v is used, with it at %v", got, worst, where)
		}
	}
}

// A limit that is passed as it is, or used in full, allows nothing, though a point on the far tip would take weight off that line.
func TestPointAllowedWithNothingLeft(t *testing.T) {
	b := evenly(12, 3, 9)
	s, err := b.Share(nil, 5)
	if err != nil {
		t.Fatal(err)
	}
	for _, share := range []float64{0.5, 0.9, 1} {
		b.Lines[0].Limit = s.Lines[0].Tension.Scale(share)
		if got := allowed(t, b, nil, 12, 12, load.Limits{}); got != (load.PointAllowed{Bound: load.BoundByLine, At: 12}) {
			t.Errorf("a limit of %v of what is carried: %+v, want that nothing is allowed", share, got)
		}
	}
}

// A stretch from near the first of two lines 6 m apart to half a metre beyond the other: at the one end the pipe bears 6 times what is carried, at the
// other the batten tips with that, but in the middle of the span it bears less than half. By hand, with W evenly on 12 m: the moment of
// W there is 3W/2 − 6W/4 = 0, so P·6/4 is met with five times W at 10/3.
func TestPointAllowedBetweenWhatTipsAndWhatBends(t *testing.T) {
	b := evenly(12, 3, 9)
	weight := b.BareMass().Weight(units.StandardGravity).In(units.Newton)
	limit := units.Moment(5 * weight).Stress(pipe.SectionModulus())
	got := allowed(t, b, nil, 4, 9.5, load.Limits{Stress: limit})
	if times := units.Ratio(got.Mass, b.BareMass()); got.Bound != load.BoundByPipe || math.Abs(times-10./3) > 0.02 || math.Abs(float64(got.At)-6) > 0.1 {
		t.Errorf("%+v, %v times what is carried, want 3.33 in the middle of the span", got, times)
	}
}
