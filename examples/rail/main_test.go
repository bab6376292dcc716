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
		lessontest.Wrong{Args: []string{"-single", "double"}, Says: `-single "double": want a rigging of single purchase, one of "single"`},
		lessontest.Wrong{Args: []string{"-double", "triple"}, Says: `-double "triple": want a rigging of double purchase, one of "double"`},
		lessontest.Wrong{Args: []string{"-travel", "40"}, Says: `-travel "40": want a length with its unit`},
		lessontest.Wrong{Args: []string{"-travel", "0 ft"}, Says: "above zero and below 50' 0\""},
		lessontest.Wrong{Args: []string{"-travel", "-5 ft"}, Says: "above zero and below 50' 0\""},
		lessontest.Wrong{Args: []string{"-travel", "60 ft"}, Says: "takes the batten into the loft blocks"})
}

// By hand, for the first electric. Batten and hang are 123.1 + 420 = 543.1 lb. The loft blocks at 54 ft leave a batten that comes
// down to 4 ft less than 50 ft.
//
// Single: 447.1 lb beside the arbor of 96 lb, 27.1 of them for the batten: a 22 for that, then 9 of the 44, a 22 and a plate, 11
// pieces in 1 + 18 + 1 + 1/8 in. The arbor is 8 ft with 75 in of room, so 21 in and its stack, 3 ft 5 1/8 in; under the upper stop
// at 53 ft and over 42 ft of travel its stop is at 7 ft 6 7/8 in, and the rail a foot lower. As it is, at 8 ft: 53 − 8 − 42 − 1 ft.
//
// Double: 958.2 lb beside the arbor of 128 lb, 118.2 of them for the batten: 2 of the 44, a 22 and an 11 for that, then 19 of the
// 44 and two plates, 23 pieces in 5 1/2 + 38 + 1/4 in. The arbor, 10 ft with 99 in of room, is 5 ft 4 3/4 in, its travel 21 ft, its
// stop at 26 ft 7 1/4 in. As it is, at 10 ft: 53 − 10 − 21 − 1 ft.
//
// Over the stop at 22 ft and a travel of 25 ft single purchase has an arbor of 53 − 22 − 25 = 6 ft, 51 in of them for the stack: a 22
// under 24 of the 44, a 22, an 11 and three plates are 50 7/8 in and 1118.5 lb, with the arbor 1214.5, less the batten 1091.4 lb. At 15
// and 20 ft it is the 1400 lb of capacity that bind: 1372.9 lb and no more, nor less by as much as another 11. At 30 ft 1 ft of arbor
// holds nothing. Double at 45 ft: 53 − 22 − 22.5 = 8.5 ft, 81 in for the stack: the 5 1/2 in of pipe weight, 37 of the 44, an 11 and
// four plates are 80 1/2 in and 121 + 1628 + 11 + 10 lb, with the arbor 1898, half of it less the batten 825.9; or two 22 in place of
// one 44 no more; the room still left, 1/2 in, takes another 11: 5.5 lb more on the batten.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		args string
		want []string
	}{
		{"", []string{
			"travels 42' 0\" the highest rail for this hang is 6' 7\" in single purchase and 25' 7\" in double",
			"arbors of 3' 5\" and 5' 5\" for stacks of 11 and 23 pieces",
			"own arbors, 8' 0\" and 10' 0\" tall, it is 2' 0\" and 21' 0\".",
			"15' 0\" 33' 7\" 39' 1\" 1366 lb",
			"25' 0\" 23' 7\" 34' 1\" 1091 lb 4' 3\"",
			"30' 0\" 18' 7\" 31' 7\" nothing",
			"45' 0\" 3' 7\" 24' 1\" nothing 831 lb 6' 9\"",
		}},
		// Four feet less of travel leave single purchase a rail four feet higher, and double one two feet higher.
		{"-travel|38 ft", []string{"for this hang is 10' 7\" in single purchase and 27' 7\" in double", "it is 6' 0\" and 23' 0\"."}},
		// Nearly fifty feet are more than the wall leaves single purchase.
		{"-travel|49 ft 6 in", []string{"is none in single purchase and 21' 10\" in double"}},
		// The empty batten takes a single piece in single purchase.
		{"-set|9 empty", []string{"for stacks of 1 and 4 pieces"}},
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
