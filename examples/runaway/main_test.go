package main

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

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
	hung, _ := house.Set("4 first electric")
	free := hung.Set()
	free.Rigging.Run.Bridges = nil
	set, err := free.Rig(described.Stock)
	if err != nil {
		t.Fatal(err)
	}
	trim := set.High().Trim
	run, out, err := letGo(set, trim, tooFew, 10)
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
	// At the stop, 4 ft up: the same masses, the lift lines' 0.11 lb/ft from batten to arbor, 53 ft up, and the hand line's 0.167 lb/ft
	// from the arbor's foot round the idler at 19.5 ft to its top. ½·m·v² of that, and a fall of v²/2g.
	rope := 0.11*5*(54-4+55-53) + 0.167*((43-19.5)+(55-19.5)+(55-53))
	for _, x := range []float64{8, 18, 28, 38, 48} {
		rope += 0.11 * math.Hypot(x, 1)
	}
	v := run.Speed.In(units.FootPerSecond)
	if got, want := run.Energy.In(units.FootPoundForce), (felt+rope)/32.174*v*v/2; math.Abs(got-want) > 0.01*want {
		t.Errorf("%.0f ft·lbf at the stop, by hand %.0f", got, want)
	}
	if got, want := run.Drop.In(units.Foot), v*v/64.348; math.Abs(got-want) > 0.01 {
		t.Errorf("as a fall of %.2f ft, by hand %.2f", got, want)
	}
}

// Whatever set it is, the page keeps its width and the picture can be read; what has no room or is not counted is said.
func TestEverySet(t *testing.T) {
	first, err := runaway().Lay(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	const goods = "with goods that pile or stand on the deck it runs less hard"
	for set := range first.House.Sets() {
		name := set.Set().Name
		if name == "9 empty" {
			continue
		}
		page, err := runaway().Lay([]string{"-set", name}, nil)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for line := range strings.Lines(page.Text()) {
			if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > 100 {
				t.Errorf("%s: %d characters wide: %s", name, n, line)
			}
		}
		for _, clash := range page.Drawn.Clashes() {
			t.Errorf("%s: in the picture %s", name, clash)
		}
		text := strings.Join(strings.Fields(page.Text()), " ")
		soft := slices.Contains([]string{"4 first electric", "8 second electric", "10 ballroom wall", "11 moon", "12 chandelier"}, name)
		if strings.Contains(text, goods) == soft {
			t.Errorf("%s: goods on the deck: %s", name, text)
		}
		if want := "1 no room or pieces 2 no room"; strings.Contains(text, want) != (name == "10 ballroom wall") {
			t.Errorf("%s: %q: %s", name, want, text)
		}
	}
}
