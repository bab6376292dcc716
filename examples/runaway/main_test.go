package main

import (
	"math"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, runaway()) }

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, runaway(),
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `want one of "1 house curtain"`},
		lessontest.Wrong{Args: []string{"-set", "9 empty"}, Says: "want a set with show weight that can be forgotten"})
}

// Ten pieces of 44 lb too few in double purchase are 220 lb at the batten. Without drag and with ropes that weigh nothing the
// first gain is (220 − e)·g over what is felt, 543.1 on the batten and a quarter of 1123 − 440 − 2.5 in the arbor, e what the
// whole stack is too heavy or light; with drag and ropes it is less, and the energy at the stop is no more than the work of 220 lb
// over the way.
func TestTenByHand(t *testing.T) {
	described, err := quillmoor.SummerPlay()
	if err != nil {
		t.Fatal(err)
	}
	house, err := described.Rig()
	if err != nil {
		t.Fatal(err)
	}
	set, _ := house.Set("4 first electric")
	trim := set.High().Trim
	run, out, err := letGo(set, trim, tooFew(set.Counterweight().Stack.Show, 10))
	if err != nil || run.Way != purchase.In || !run.AtStop {
		t.Fatalf("%+v, %v", run, err)
	}
	// One spreader plate of 2.5 lb comes out with them; 9.5 lbf arbor-heavy before, as the sheet prints it.
	if got, want := out.In(units.PoundForce), 220+1.25-9.5; math.Abs(got-want) > 0.05 {
		t.Errorf("%.2f lbf out of balance, by hand %.2f", got, want)
	}
	felt := 543.1 + (1123.0-440-2.5)/4
	most := 32.174 * (220 + 1.25 - 9.5) / felt
	if gain := run.Gain.In(units.FootPerSecondSquared); gain > most || gain < 0.6*most {
		t.Errorf("gains %.2f ft/s², without drag and ropes %.2f", gain, most)
	}
	if work := 230.0 * 24; run.Energy.In(units.FootPoundForce) > work {
		t.Errorf("%v at the stop, and 230 lbf over 24 ft is %.0f ft·lbf", run.Energy, work)
	}
}
