package load_test

import (
	"math"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// toleranceOf is how far a line may be off, for a rig that is valid.
func toleranceOf(t *testing.T, b load.Batten, h load.Hang, line int, limits load.Limits) load.TrimTolerance {
	t.Helper()
	r, err := b.Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	tol, err := r.TrimTolerance(1, line, limits)
	if err != nil {
		t.Fatal(err)
	}
	return tol
}

// Three lines at equal spans L on a pipe of stiffness EI: a line short by d takes, with no line slack, 6EI·d/L³ more in the middle and
// 1.5EI·d/L³ at an end (any text on the three-moment equation). One that has been left long by metres is slack, and must be made
// shorter by all of that first, whichever line the others' ends are measured from: on short spans far more than the pipe bends, on spans of 30 m
// far less.
func TestTrimToleranceOfASlackLine(t *testing.T) {
	for _, c := range []struct {
		name   string
		span   float64
		long   [3]units.Length
		line   int
		levels float64 // how far below the straight line of the other two its end hangs
		share  float64 // of EI·d/L³, what it gains by being short
	}{
		{"level, middle", 3, [3]units.Length{}, 1, 0, 6},
		{"level, middle, long spans", 30, [3]units.Length{}, 1, 0, 6},
		{"level, end, long spans", 30, [3]units.Length{}, 0, 0, 1.5},
		{"middle long", 0.5, [3]units.Length{0, 5, 0}, 1, 5, 6},
		{"others short", 0.5, [3]units.Length{-5, 0, -5}, 1, 5, 6},
		{"middle long, others short", 0.5, [3]units.Length{-5, 5, -5}, 1, 10, 6},
		{"others long, and it longer", 0.5, [3]units.Length{4, 9, 4}, 1, 5, 6},
		{"others short, and it less", 0.5, [3]units.Length{-9, -4, -9}, 1, 5, 6},
		{"middle long, long spans", 30, [3]units.Length{0, 5, 0}, 1, 5, 6},
	} {
		b := load.Batten{Length: units.Length(2 * c.span), Pipe: pipe, Lines: load.Spaced(0, units.Length(c.span), 3), Fittings: 300}
		b.Pipe.Density = 1e-6 // next to nothing beside the fittings, which are spread evenly
		for i, long := range c.long {
			b.Lines[i].Long = long
		}
		weight := (300 * units.Kilogram).Weight(units.StandardGravity).In(units.Newton)
		level := weight * 10 / 16 // of the middle one of two equal spans
		if c.line != 1 {
			level = weight * 3 / 16
		}
		more := 0.3 * weight
		ei := pipe.Modulus.In(units.Pascal) * pipe.SecondMoment().In(units.MetreToTheFourth)
		want := c.levels + more*c.span*c.span*c.span/(c.share*ei)
		b.Lines[c.line].Limit = units.Force(level + more)
		tol := toleranceOf(t, b, nil, c.line, load.Limits{})
		if tol.Short.Bound != load.BoundByLine || tol.Short.Line != c.line || math.Abs(float64(tol.Short.By)-want) > 1e-6*want {
			t.Errorf("%s: %+v, want %v m", c.name, tol.Short, want)
		}
		if tol.Long != (load.Off{}) {
			t.Errorf("%s: long %+v, want that nothing binds", c.name, tol.Long)
		}
	}
}

// A bar that does not bend, on ropes that do: its lines are springs of k = EA/Path, and one that is short by d adds k·d·(1 − h) to its own
// pull and takes k·d·h off another, with h = 1/n + (x − m)(y − m)/S, m the mean place and S the sum of the squares from it. With two
// of the three close together it takes metres at the far one to move what the near ones carry.
func TestTrimToleranceOnSprings(t *testing.T) {
	for _, size := range []struct {
		spans float64 // times 1 and 19 m
		bar   load.Tube
	}{
		{1, load.Tube{Outer: 2, Wall: 0.1, Density: 1e-6, Modulus: load.SteelModulusEN}},
		{0.1, load.Tube{Outer: 0.3, Wall: 0.02, Density: 1e-6, Modulus: load.SteelModulusEN}},
	} {
		places := []float64{10 * size.spans, 11 * size.spans, 30 * size.spans}
		mean, square := 17*size.spans, 254*size.spans*size.spans
		const k, mass = 2500.0, 100.0
		b := load.Batten{Length: units.Length(30 * size.spans), Pipe: size.bar}
		for _, x := range places {
			b.Lines = append(b.Lines, load.Line{At: units.Length(x), EA: k * 30, Path: 30})
		}
		weight := (mass * units.Kilogram).Weight(units.StandardGravity).In(units.Newton)
		h := func(x, y float64) float64 { return 1./3 + (x-mean)*(y-mean)/square }
		pull := func(x float64) float64 { return weight * h(x, 20*size.spans) }
		for _, c := range []struct {
			name       string
			line, that int // the one that is short, and the one that meets its limit
			limit      float64
		}{
			{"the far one, to 0.45 of the weight in the first", 2, 0, 0.45 * weight},
			{"the first, to a little more in it", 0, 0, pull(places[0]) + 0.05*weight},
			{"the second, to a little more in it", 1, 1, pull(places[1]) + 0.05*weight},
		} {
			b := b
			b.Lines = append([]load.Line{}, b.Lines...)
			b.Lines[c.that].Limit = units.Force(c.limit)
			gains := 0 - h(places[c.line], places[c.that])
			if c.line == c.that {
				gains++
			}
			want := (c.limit - pull(places[c.that])) / (k * gains)
			tol := toleranceOf(t, b, load.Hang{{Mass: mass, From: units.Length(10 * size.spans), To: b.Length}}, c.line, load.Limits{})
			if tol.Short.Bound != load.BoundByLine || tol.Short.Line != c.that || math.Abs(float64(tol.Short.By)-want) > 1e-2*want {
				t.Errorf("%s: %+v, want %v m of line %d", c.name, tol.Short, want, c.that)
			}
		}
	}
}

// A limit that is passed as it is, or used in full, leaves nothing to either side, though the line would carry less if it were longer. A
// batten on one line carries the same however long that is.
func TestTrimToleranceWithNothingLeft(t *testing.T) {
	b, h := fiveLines(), load.Hang{{Mass: 200, From: 2, To: 9}}
	s, err := b.Share(h, 1)
	if err != nil {
		t.Fatal(err)
	}
	worst, line := s.Worst()
	for _, share := range []float64{0.6, 0.9, 1} {
		tol := toleranceOf(t, b, h, worst, load.Limits{Line: line.Tension.Scale(share)})
		if want := (load.Off{Bound: load.BoundByLine, Line: worst}); tol.Short != want || tol.Long != want {
			t.Errorf("a limit of %v of what is carried: %+v, want %+v", share, tol, want)
		}
	}
	one := load.Batten{Length: 6, Pipe: pipe, Lines: []load.Line{{At: 3, Long: 1}}}
	if tol := toleranceOf(t, one, nil, 0, load.Limits{Line: 1e6}); tol != (load.TrimTolerance{}) {
		t.Errorf("one line: %+v", tol)
	}
}
