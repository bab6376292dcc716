package main

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/examples/quillmoor"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, feel()) }

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, feel(),
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `want one of "1 house curtain"`},
		lessontest.Wrong{Args: []string{"-single", "triple"}, Says: `-single "triple": want a rigging of single purchase`},
		lessontest.Wrong{Args: []string{"-single", "double"}, Says: `-single "double": want a rigging of single purchase, one of "single"`},
		lessontest.Wrong{Args: []string{"-double", ""}, Says: `-double "": want a rigging of double purchase, one of "double"`})
}

// The masses by hand, at 16.5 ft. Batten and hang are 543.1 lb. Rope: the lift lines weigh 0.11 lb/ft each and every foot of them from
// batten to arbor moves. Made off at 4 ft with the arbor's top at 53 ft, that is at 40.5 ft in single purchase and at 46.75 ft in
// double. The loft blocks are at 54 ft, 8 to 48 ft off the head block at 55 ft. The hand line weighs 0.167 lb/ft.
func TestMassesByHand(t *testing.T) {
	lift := func(down float64) (ft float64) {
		for _, x := range []float64{8, 18, 28, 38, 48} {
			ft += 54 - 16.5 + math.Hypot(x, 1) + down // loft blocks stand a foot lower than the head block
		}
		return ft
	}
	// Single: the whole hand line moves as fast as the batten: from the foot of the arbor, 8 ft under its top, to the idler 9 in up, to
	// the head block, to the arbor's top.
	single := 543.1 + 561.0 + 0.11*lift(55-40.5) + 0.167*((32.5-0.75)+(55-0.75)+(55-40.5))
	// Double: the arbor at half the speed, its ropes to the dead ends stand still, the hand line runs with the batten from the
	// sheave at its foot, 10 ft under its top, to the idler at 19.5 ft, to the head block, to the arbor's top.
	rope := 0.11*lift(55-46.75) + 0.167*((36.75-19.5)+(55-19.5)+(55-46.75))
	moves, felt := 543.1+1123.0+rope, 543.1+1123.0/4+rope
	for _, want := range []struct {
		row    string
		column int
		figure float64
	}{{"single", 0, single}, {"single", 1, single}, {"double", 0, moves}, {"double", 1, felt}} {
		if got := figure(t, want.row, want.column); math.Abs(got-want.figure) > 1 {
			t.Errorf("%s: %.0f lb, by hand %.1f", want.row, got, want.figure)
		}
	}
}

// How batten-heavy the single set may be and yet rest, by hand at 16.5 ft. A sheave with a drag of 0.02 holds back 1.02/0.98 = 1.0408
// over half a turn and 1.0287 over a quarter. A batten that would run in pulls its ropes over two quarters or nearly, on the tight
// side 543.1 lbf and 37.5 ft of five lines. The hand line then runs from the arbor's top over the head block and round the idler, on
// the tight side of each, to the arbor's foot: each is a half turn.
func TestStaysByHand(t *testing.T) {
	const quarter, half = 1.0287, 1.0408
	tight := 543.1 + 37.5*5*0.11
	lift := tight * (1 - 1/(quarter*quarter))
	// At the idler of 60 lb the inner rope has 60·K/(1+K) and the outer one 60/(1+K) where each had 30, and up at the head block, 54.25 ft
	// higher, the outer one is divided by K on the arbor's side.
	idler := 60*half/(1+half) - 30
	outer := 60/(1+half) + 54.25*0.167
	hand := idler + (30 + 54.25*0.167) - outer/half
	if got, want := figure(t, "single", 4), lift+hand; math.Abs(got-want) > 0.75 {
		t.Errorf("%.0f lbf, by hand %.2f", got, want)
	}
}

// figure is one of the figures in a row that begins with the name, in the second table.
func figure(t *testing.T, name string, column int) float64 {
	t.Helper()
	page, err := feel().Lay(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(page.Text()) {
		cells := strings.Fields(line)
		if len(cells) != 11 || cells[0] != name { // five figures with their units
			continue
		}
		got, err := strconv.ParseFloat(cells[1+2*column], 64)
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	t.Fatalf("no row of %s in %s", name, page.Text())
	return 0
}

// A hand line that goes slack has no figures, and none are made up.
func TestSlackHandLine(t *testing.T) {
	// Next to no idler, and sheaves that let through a third.
	text := strings.NewReplacer(`"height": "9 in", "mass": "60 lb"`, `"height": "9 in", "mass": "1 lb"`, `"drag": 0.02`, `"drag": 0.5`).Replace(string(quillmoor.JSON()))
	_, err := feel().Lay([]string{"-file", "-"}, strings.NewReader(text))
	if err == nil || !strings.Contains(err.Error(), "in single purchase the hand line would go slack; want an idler that keeps it tight") {
		t.Error(err)
	}
}
