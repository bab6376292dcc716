package load_test

import (
	"fmt"
	"testing"

	"example.com/steelyard/internal/verification"
	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// weightless is a batten whose pipe weighs next to nothing, on lines at the given places.
func weightless(length units.Length, at ...units.Length) load.Batten {
	tube := load.Tube{Outer: 48.3 * units.Millimetre, Wall: 4 * units.Millimetre, Density: 1e-9, Modulus: load.SteelModulusEN}
	b := load.Batten{Length: length, Pipe: tube}
	for _, x := range at {
		b.Lines = append(b.Lines, load.Line{At: x})
	}
	return b
}

// Published beams as battens, from what hangs to what the lines pull: the kernel's own tests have them in its numbers, these in
// quantities. The pipe weighs some 1e-12 of the load.
func TestVerifyBeamsAsBattens(t *testing.T) {
	kilonewtons := func(f float64) units.Mass { return units.Kilonewton.Scale(f).Mass(units.StandardGravity) }
	kips := func(f float64) units.Mass { return (1000 * units.Pound).Scale(f) }
	for _, c := range []struct {
		name, source, place string
		batten              load.Batten
		hang                load.Hang
		unit                units.Force
		pulls               []float64
		tol                 float64
		moment              units.Moment
		hogging, tolM       float64 // the largest; none to compare where 0
		why                 string
	}{
		{
			"two spans of 3 m", "NPTEL", "Example 5.22; kN and m", weightless(6, 0, 3, 6),
			load.Hang{{Mass: kilonewtons(120), From: 1.5, To: 1.5}, {Mass: kilonewtons(120), From: 3, To: 6}},
			units.Kilonewton,
			[]float64{41.25, 157.5, 41.25},
			1e-9, units.Kilonewton.Moment(units.Metre), -56.25, 1e-9, "exact, but for rounding and the pipe",
		},
		{
			"unequal spans", "Handbook of Civil Engineering Calculations", "p. 1.63, Fig. 43; kip and ft", weightless(25*units.Foot, 0, 10*units.Foot, 25*units.Foot),
			load.Hang{
				{Mass: kips(20), From: 0, To: 10 * units.Foot},
				{Mass: kips(6), From: 5 * units.Foot, To: 5 * units.Foot},
				{Mass: kips(45), From: 10 * units.Foot, To: 25 * units.Foot},
				{Mass: kips(10), From: 19 * units.Foot, To: 19 * units.Foot},
			},
			units.Kip,
			[]float64{4.98, 52.87, 23.15},
			0.006, units.Kip.Moment(units.Foot), -80.2, 0.05, "two decimals, worked from a moment rounded to 80.2",
		},
		{
			"three spans of 10 ft", "beam theory", "worked out beside strength of materials problems, problem 823; lb and ft", weightless(30*units.Foot, 0, 10*units.Foot, 20*units.Foot, 30*units.Foot),
			load.Hang{
				{Mass: 400 * units.Pound, From: 5 * units.Foot, To: 5 * units.Foot},
				{Mass: 800 * units.Pound, From: 10 * units.Foot, To: 20 * units.Foot},
				{Mass: 640 * units.Pound, From: 25 * units.Foot, To: 25 * units.Foot},
			},
			units.PoundForce,
			[]float64{136, 634, 844, 226},
			1e-6, units.PoundForceFoot, -940, 1e-6, "exact, but for rounding and the pipe",
		},
		{
			"four equal spans", "Civil Engineering Formulas", "Table 2.1, p. 50", weightless(40, 0, 10, 20, 30, 40),
			load.Hang{{Mass: kilonewtons(28), From: 0, To: 40}}, // 7 to a span
			units.Kilonewton,
			[]float64{11. / 4, 32. / 4, 26. / 4, 32. / 4, 11. / 4},
			1e-9, units.Kilonewton.Moment(units.Metre), -70 * 3. / 28, 1e-9, "exact fractions, but for rounding and the pipe",
		},
	} {
		s, err := c.batten.Share(c.hang, 0)
		if err != nil {
			t.Fatal(err)
		}
		row := verification.Row{Key: "batten/" + c.name, Source: c.source, Place: c.place, What: "beam as a batten, " + c.name, Why: c.why}
		for i, l := range s.Lines {
			row.Of(fmt.Sprint("pull ", i+1), "", c.pulls[i], c.tol).Check(t, l.Tension.In(c.unit))
		}
		row.Of("most hogging", "", c.hogging, c.tolM).Check(t, s.Hogging.Moment.In(c.moment))
	}
}

// A middle line too long by d under an even load: against the line of no error it loses 6EId/L³, and each of its neighbours
// gains half of that. Three-moment equation, two equal spans.
func TestVerifyLongMiddleLine(t *testing.T) {
	const span, long = 4 * units.Metre, 2 * units.Millimetre
	b := weightless(2*span, 0, span, 2*span)
	b.Pipe.Density = load.SteelDensity // what weighs nothing follows no line
	hang := load.Hang{{Mass: 200, From: 0, To: 2 * span}}
	even, err := b.Share(hang, 0)
	if err != nil {
		t.Fatal(err)
	}
	b.Lines[1].Long = long
	off, err := b.Share(hang, 0)
	if err != nil {
		t.Fatal(err)
	}
	l := span.In(units.Metre)
	ei := b.Pipe.Modulus.In(units.Pascal) * b.Pipe.SecondMoment().In(units.MetreToTheFourth)
	three := 3 * ei * long.In(units.Metre) / (l * l * l)
	row := verification.Row{Key: "batten/middle line too long", Source: "beam theory", Place: "3EId/L³ and −6EId/L³", What: "middle of three lines 2 mm too long, change of pull", Why: "a formula, but for rounding"}
	for i, want := range []float64{three, -2 * three, three} {
		row.Of(fmt.Sprint("line ", i+1), "N", want, 1e-8).Check(t, (off.Lines[i].Tension - even.Lines[i].Tension).In(units.Newton))
	}
}
