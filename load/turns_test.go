package load_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// A pile at the far end lets the middle one of three lines go. By hand, with q the pipe's weight per
// length, spans of 16 ft, overhangs of 3 and 7 ft and a pull P at 6.5 ft beyond the last line, the
// three-moment equation gives the middle line 1.25·16q − 1.5·(4.5q + 24.5q + 6.5P)/16. That is nothing
// at P = 28.359q, 77.1 lb of 330. The first line then carries 625 lb and, by moments about the
// last, (42·14q − 6.5P)/32 = 12.615q; both less just below and just above.
func TestWorstBetweenBreaks(t *testing.T) {
	at := func(feet float64) units.Length { return units.Foot.Scale(feet) }
	b := load.Batten{Length: at(42), Pipe: pipe, Lines: load.Spaced(at(3), at(16), 3)}
	r, err := b.Rig(load.Hang{
		{Name: "chain motor", Mass: 625 * units.Pound, From: at(3), To: at(3)},
		{Name: "leg", Mass: 330 * units.Pound, From: at(41), To: at(42), Height: at(20), OnDeck: load.Piles},
	})
	if err != nil {
		t.Fatal(err)
	}
	q := pipe.LineMass().In(units.PoundPerFoot)
	turn := 28.359 * q / 330 * 20
	turns := r.Turns(at(0), at(30))
	if len(turns) != 2 || turns[1] != at(20) {
		t.Fatalf("turns %v, want one between the breaks and the upper break", turns)
	}
	near(t, "turn, ft", turns[0].In(units.Foot), turn, 1e-3)
	for _, feet := range []float64{0, turn, 20} {
		s, err := r.Share(at(feet))
		if err != nil {
			t.Fatal(err)
		}
		first := s.Lines[0].Tension.In(units.PoundForce)
		if want := 625 + 12.615*q; feet == turn {
			near(t, "first line at the turn, lbf", first, want, 0.01)
		} else if first > want-1 {
			t.Errorf("first line at %v ft: %v lbf, not below %v", feet, first, want)
		}
	}
	if got := r.Turns(at(5), at(20)); len(got) != 0 {
		t.Errorf("above the turn: %v", got)
	}
	if got := r.Turns(at(30), at(-1)); !slices.Equal(got, append([]units.Length{0}, turns...)) {
		t.Errorf("asked from above: %v, want the lower break too", got)
	}
}

// The second line lets go and comes back between two breaks, while three pieces lift off together.
// Which it does is by trying every set of lines, in the tests of the beam.
func TestTurnsComeBack(t *testing.T) {
	light := load.Tube{Outer: 50 * units.Millimetre, Wall: 5 * units.Millimetre, Density: load.SteelDensity, Modulus: load.SteelModulusEN}
	b := load.Batten{Length: 10, Pipe: light, Lines: load.Spaced(1, 2, 5)}
	b.Fittings = 100 - light.LineMass().Over(10)
	var h load.Hang
	for _, p := range []struct {
		at       units.Length
		low, all units.Mass
	}{{10, 190, 627.5}, {9, 70, 312.5}, {7, 195, 430}} { // 2.5 times the beam's 76 to 251 and so on
		h = append(h, load.Item{Mass: p.low, From: p.at, To: p.at},
			load.Item{Mass: p.all - p.low, From: p.at, To: p.at, Below: 1, Height: 1, OnDeck: load.Piles})
	}
	r, err := b.Rig(h)
	if err != nil {
		t.Fatal(err)
	}
	turns := r.Turns(1, 2)
	places := append(append([]units.Length{1}, turns...), 2)
	var second []bool
	if len(places) != 5 {
		t.Fatalf("turns %v, want three", turns)
	}
	for i := 1; i < len(places); i++ {
		s, err := r.Share(places[i-1] + (places[i] - places[i-1]).Scale(0.5))
		if err != nil {
			t.Fatal(err)
		}
		second = append(second, s.Lines[1].Slack)
	}
	if want := []bool{false, true, true, false}; !slices.Equal(second, want) {
		t.Errorf("second line slack: %v with turns %v, want %v", second, turns, want)
	}
	for _, i := range []int{1, 3} { // where it lets go and comes back
		if s, err := r.Share(places[i]); err != nil || s.Lines[1].Tension > s.Weight.Scale(1e-9) || s.Lines[1].Gap > 1e-9 {
			t.Errorf("second line at %v: %+v, %v; want neither tension nor gap", places[i], s.Lines[1], err)
		}
	}
}

func TestTurnsOfOddTrims(t *testing.T) {
	r, err := fiveLines().Rig(load.Hang{{Mass: 300, From: 1, To: 1, Below: 1, Height: 4, OnDeck: load.Piles}})
	if err != nil {
		t.Fatal(err)
	}
	all := r.Turns(-1, 99)
	if len(all) < 3 || all[0] != 1 || all[len(all)-1] != 5 {
		t.Fatalf("turns %v, want some between the breaks", all)
	}
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	for _, c := range []struct {
		name     string
		from, to units.Length
		want     []units.Length
	}{
		{"all trims there are", -inf, inf, all},
		{"of no possible size", 1e300, -1e300, all},
		{"no number", nan, 3, nil},
		{"no number either", 3, nan, nil},
		{"no way at all", 3, 3, nil},
		{"between the breaks", 1, 5, all[1 : len(all)-1]},
		{"below", -3, 1, nil},
		{"above", 5, inf, nil},
	} {
		if got := r.Turns(c.from, c.to); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	bare, err := fiveLines().Rig(nil)
	if err != nil || len(bare.Turns(0, 99)) != 0 {
		t.Errorf("bare batten: %v, %v", bare.Turns(0, 99), err)
	}
}

// drawTurning draws a batten on which lines let go: heavy pieces that pile or stand, most at one point.
func drawTurning(t *rapid.T) (load.Batten, load.Hang) {
	n := rapid.IntRange(3, 8).Draw(t, "lines")
	b := load.Batten{Length: 12, Pipe: pipe}
	for i := range n {
		b.Lines = append(b.Lines, load.Line{At: units.Length(0.4 + 11.2*(float64(i)+rapid.Float64Range(-0.3, 0.3).Draw(t, "off"))/float64(n-1))})
	}
	b.Lines[0].At, b.Lines[n-1].At = 0.5, 11.5
	var h load.Hang
	for range rapid.IntRange(1, 6).Draw(t, "items") {
		item := drawItem(t, 12)
		if rapid.IntRange(0, 3).Draw(t, "at one point") > 0 {
			item.To = item.From
		}
		h = append(h, item)
	}
	return b, h
}

// TestPropTurns: from one turn to the next every tension and gap is straight, and no trim in a fine
// raster shows a tension, moment, shear or stress above the worst at turns and ends.
func TestPropTurns(t *testing.T) {
	kinks := 0
	rapid.Check(t, func(t *rapid.T) {
		b, h := drawTurning(t)
		r, err := b.Rig(h)
		if err != nil {
			t.Fatal(err)
		}
		from, to := units.Length(rapid.Float64Range(-1, 4).Draw(t, "from")), units.Length(rapid.Float64Range(5, 13).Draw(t, "to"))
		turns := r.Turns(from, to)
		places := append(append([]units.Length{from}, turns...), to)
		for i := 1; i < len(places); i++ {
			if !(places[i-1] < places[i]) {
				t.Fatalf("turns %v between %v and %v", turns, from, to)
			}
		}
		for _, at := range r.Breaks() {
			if at > from && at < to && !slices.Contains(turns, at) {
				t.Fatalf("break %v is not among %v", at, turns)
			}
		}
		for _, at := range turns {
			if !slices.Contains(r.Breaks(), at) {
				kinks++
			}
		}
		if r.Tips(from, to) != nil {
			return
		}
		share := func(trim units.Length) load.Share {
			s, err := r.Share(trim)
			if err != nil {
				t.Fatal(err)
			}
			return s
		}
		above := func(trim units.Length) units.Length { return units.Length(math.Nextafter(float64(trim), 99)) }
		var tension, sagging, hogging, shear, stress float64
		worst := func(s load.Share) {
			_, l := s.Worst()
			tension, stress = max(tension, float64(l.Tension)), max(stress, float64(s.Stress))
			sagging, hogging = max(sagging, float64(s.Sagging.Moment)), min(hogging, float64(s.Hogging.Moment))
			shear = max(shear, float64(units.Abs(s.Shear.Force)))
		}
		for i, p := range places {
			worst(share(p))
			if i+1 < len(places) {
				worst(share(above(p)))
			}
		}
		weight := float64(r.Hung()+r.Bare()) * 9.80665
		for i := 1; i < len(places); i++ {
			lo, hi := share(above(places[i-1])), share(places[i])
			for _, part := range []float64{0.05, 0.3, 0.5, 0.71, 0.95} {
				s := share(places[i-1] + (places[i] - places[i-1]).Scale(part))
				for j, l := range s.Lines {
					pull := lo.Lines[j].Tension + (hi.Lines[j].Tension - lo.Lines[j].Tension).Scale(part)
					gap := lo.Lines[j].Gap + (hi.Lines[j].Gap - lo.Lines[j].Gap).Scale(part)
					if d := math.Abs(float64(l.Tension - pull)); d > 1e-6*weight || units.Abs(l.Gap-gap) > 1e-6 {
						t.Fatalf("line %d between %v and %v: %v and %v, straight %v and %v", j, places[i-1], places[i], l.Tension, l.Gap, pull, gap)
					}
				}
			}
		}
		for k := range 301 {
			s := share(from + (to - from).Scale(float64(k)/300))
			_, l := s.Worst()
			if float64(l.Tension) > tension+1e-6*weight || float64(s.Stress) > stress*(1+1e-6) ||
				float64(s.Sagging.Moment) > sagging+1e-5*weight || float64(s.Hogging.Moment) < hogging-1e-5*weight ||
				float64(units.Abs(s.Shear.Force)) > shear+1e-6*weight {
				t.Fatalf("worse at %v than at the turns %v: %+v", s.Trim, turns, s)
			}
		}
	})
	if kinks == 0 {
		t.Error("no turn between two breaks ever: the draw does not test what it should")
	}
}
