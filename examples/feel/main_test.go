package main

import (
	"math"
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, feel()) }

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, feel(),
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `want one of "1 house curtain"`},
		lessontest.Wrong{Args: []string{"-single", "triple"}, Says: `-single "triple": want the name of a rigging of the house`},
		lessontest.Wrong{Args: []string{"-double", ""}, Says: `-double "": want the name of a rigging of the house`})
}

// The masses by hand. Batten and hang are 543.1 lb. Rope: the lift lines weigh 0.55 lb/ft together and every foot of them from batten to
// arbor moves: at 5 ft, made off at 4 ft with the arbor's top at 53 ft, the first line has 54 − 5 to its loft block, 8 ft to the head
// block 55 ft up, and 55 − 52 (single) or 55 − 52.5 (double) down to the arbor, others 10 ft more each. The hand line weighs 0.167 lb/ft.
func TestMassesByHand(t *testing.T) {
	level := func(x float64) float64 { return math.Hypot(x, 1) } // loft blocks stand a foot lower than the head block
	lift := func(down float64) (ft float64) {
		for _, x := range []float64{8, 18, 28, 38, 48} {
			ft += 49 + level(x) + down
		}
		return ft
	}
	// Single: the whole hand line moves as fast as the batten: foot of the arbor, 44 ft up, to the idler 9 in up, to the head
	// block, to the arbor's top.
	single := 543.1 + 561.0 + 0.11*lift(55-52) + 0.167*((44-0.75)+(55-0.75)+(55-52))
	// Double: the arbor at half the speed, its ropes to the dead ends stand still, the hand line runs with the batten from the
	// sheave at its foot, 42.5 ft up, to the idler at 19.5 ft, to the head block, to the arbor's top.
	rope := 0.11*lift(55-52.5) + 0.167*((42.5-19.5)+(55-19.5)+(55-52.5))
	moves, felt := 543.1+1123.0+rope, 543.1+1123.0/4+rope
	page, err := feel().Lay(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, want := range []struct {
		row   string
		mass  float64
		which int
	}{{"single", single, 2}, {"single", single, 4}, {"double", moves, 2}, {"double", felt, 4}} {
		for _, line := range strings.Split(page.Text(), "\n") {
			cells := strings.Fields(line)
			if len(cells) == 9 && cells[0] == want.row {
				seen++
				got := 0.0
				for _, digit := range cells[want.which+1] {
					got = got*10 + float64(digit-'0')
				}
				if math.Abs(got-want.mass) > 1 {
					t.Errorf("%s: %s lb, by hand %.1f", want.row, cells[want.which+1], want.mass)
				}
			}
		}
	}
	if seen != 4 {
		t.Errorf("%d figures seen, want 4", seen)
	}
}
