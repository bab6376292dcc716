package main

import (
	"math"
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/units"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, sharing()) }

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, sharing(),
		lessontest.Wrong{Args: []string{"-line", "six"}, Says: `invalid value "six" for flag -line`},
		lessontest.Wrong{Args: []string{"-line", "6"}, Says: "-line 6: want the number of a lift line of this batten, 1 to 5"},
		lessontest.Wrong{Args: []string{"-line", "0"}, Says: "1 to 5"},
		lessontest.Wrong{Args: []string{"-long", "10"}, Says: "has no unit; want a length"},
		lessontest.Wrong{Args: []string{"-long", "-2 ft"}, Says: "want no more than 1 ft"},
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `want one of "1 house curtain"`})
}

// What hangs adds up to the pound: the pipe with its fittings, fixtures and strip, three cables of 11 ft and of 16 ft, and two legs.
// Pipe by the US weight tables: 10.68·(1.900 − 0.145)·0.145 = 2.7177 lb/ft.
func TestWeightByHand(t *testing.T) {
	pipe := 42*10.68*(1.900-0.145)*0.145 + 9
	cable := 3 * 0.4 * (10*1.1 + 16)
	legs := 2 * 16.0 / 16 * (8 * 1.5 * 18) / 9
	want := pipe + 260 + 62 + cable + legs
	batten, hang := ours()
	share, err := batten.Share(hang, 20*units.Foot)
	if err != nil {
		t.Fatal(err)
	}
	if got := share.Weight.In(units.PoundForce); math.Abs(got-want) > 0.05 { // 0.2833 lb/in³ is rounded to 2 in 10 000
		t.Errorf("all weighs %.3f lbf, by hand %.3f", got, want)
	}
}

// The words stay true for other battens and other errors.
func TestWords(t *testing.T) {
	for _, c := range []struct {
		name string
		args string
		want []string
	}{
		{"in the middle, both neighbours", "-line|3|-long|3/8 in", []string{"line 3 goes from 211 lbf to 191 lbf"}},
		{"short", "-line|3|-long|-1 in", []string{"Made off 1\" too short, line 3 goes from"}},
		{"slack", "-line|5|-long|6 in", []string{"Line 5 hangs slack."}},
		{"a set", "-set|13 black traveller", []string{"Set 13 black traveller", "trim 24' 0\""}},
	} {
		page, err := sharing().Lay(strings.Split(c.args, "|"), nil)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		text := strings.Join(strings.Fields(page.Text()), " ")
		for _, want := range c.want {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in %s", c.name, want, text)
			}
		}
	}
}
