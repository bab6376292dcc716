package main

import (
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, freebody()) }

// The pictures of a set that is flown.
func TestFlown(t *testing.T) {
	for _, state := range []string{"out", "in"} {
		page, err := freebody().Lay([]string{"-state", state, "-trim", "16 ft"}, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, clash := range page.Drawn.Clashes() {
			t.Errorf("%s: in the picture %s", state, clash)
		}
		lessontest.Same(t, state+".txt", page.Text())
		lessontest.Same(t, state+".svg", page.Drawn.String())
	}
}

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, freebody(),
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `want one of "1 house curtain"`},
		lessontest.Wrong{Args: []string{"-single", "triple"}, Says: `-single "triple": want a rigging of single purchase, one of `},
		lessontest.Wrong{Args: []string{"-single", "double"}, Says: `-single "double": want a rigging of single purchase, one of `},
		lessontest.Wrong{Args: []string{"-double", "one"}, Says: `-double "one": want a rigging of double purchase, one of `},
		lessontest.Wrong{Args: []string{"-state", "up"}, Says: `-state "up": want still, out or in`},
		lessontest.Wrong{Args: []string{"-trim", "12"}, Says: "has no unit; want a length"},
		lessontest.Wrong{Args: []string{"-trim", "90 ft"}, Says: "in single purchase -trim: 90' 0\" (27.432 m) is out of range; want a trim that the set reaches"})
}

// By hand, at rest with the batten at 5 ft: batten and hang are 543.1 lb, and five lines weigh 0.55 lb/ft. Made off at 4 ft with the
// arbor's top at 53 ft, the arbor is at 52 ft in single purchase and at 52 ft 6 in in double; a line bears its own weight up to
// there more than at the batten: 543.1 + 0.55·47 = 569.0, and 569.2. The dead ends are at 55 ft 6 in: 543.1 + 0.55·50.5 = 570.9.
func TestByHand(t *testing.T) {
	page, err := freebody().Lay(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(page.Text()), " ")
	for _, want := range []string{
		"all lift lines, at the batten 543 lbf 543 lbf", "all lift lines, down to the arbor 569 lbf 569 lbf", "dead ends, together 0 lbf 571 lbf",
		"So the arbor weighs 2 times what it answers",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
}
