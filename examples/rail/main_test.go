package main

import (
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, rail()) }

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, rail(),
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `want one of "1 house curtain"`},
		lessontest.Wrong{Args: []string{"-rigging", "triple"}, Says: `-rigging "triple": want the name of a rigging of the house`},
		lessontest.Wrong{Args: []string{"-travel", "40"}, Says: "has no unit; want a length"},
		lessontest.Wrong{Args: []string{"-travel", "-5 ft"}, Says: "want at most the high trim"})
}

// By hand, for the first electric: batten and hang are 123.1 + 420 = 543.1 lb, the empty arbor 128 lb. Single: 415 lb are ten
// pieces of 44 lb and 2 in or nearly, 9 of the 44 with an 11 and a 5 lb of plates besides, some 19 in on an arbor that is 10 ft
// with 99 in of room, so 21 in and the stack, 3 ft 4 in. Under the upper stop at 53 ft and over 42 ft of travel the stop is at
// 7 ft 8 in and the rail a foot lower. Double: 958 lb are 21 of the 44, a 22 and an 11, 43 to 44 in with two plates, so the arbor is 5 ft 5 in, and
// its travel 21 ft: the stop is at 26 ft 7 in.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		args string
		want []string
	}{
		{"", []string{"travels 42' 0\" the rail may stand at 6' 8\" in single purchase, and may stand at 25' 7\" in double", "arbor of 5' 5\" in place of 3' 4\""}},
		// Four feet less of travel leave single purchase a rail four feet higher, and double one two feet higher.
		{"-travel|38 ft", []string{"may stand at 10' 8\" in single purchase, and may stand at 27' 7\" in double"}},
		// Sixty feet of travel are more than the wall is high in single purchase.
		{"-travel|60 ft", []string{"the rail has no place in single purchase, and may stand at"}},
	} {
		page, err := rail().Lay(strings.FieldsFunc(c.args, func(r rune) bool { return r == '|' }), nil)
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(page.Text()), " ")
		for _, want := range c.want {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in %s", c.args, want, text)
			}
		}
	}
}
