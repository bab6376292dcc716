package main

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/examples/quillmoor"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, working()) }

// The parts that are not written unless asked for.
func TestGoldenParts(t *testing.T) {
	for _, system := range []string{"us", "metric"} {
		lessontest.Same(t, "all_"+system+".txt", text(t, "-units", system, "-part", "all"))
	}
}

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, working(),
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `no set is called "moon"; want one of "1 house curtain"`},
		lessontest.Wrong{Args: []string{"-part", "ropes"}, Says: `invalid value "ropes" for flag -part: want counterweight, lines, hand or all`},
		lessontest.Wrong{Args: []string{"-part", "lines|hand"}, Says: "want counterweight"},
		lessontest.Wrong{Args: []string{"-part", ""}, Says: "want counterweight"})
}

func text(t *testing.T, args ...string) string {
	t.Helper()
	page, err := working().Lay(args, strings.NewReader(""))
	if err != nil {
		t.Fatal(err)
	}
	return page.Text()
}

// The first electric with pencil and paper, in pounds and feet, from the description of the house.
func TestElectricByHand(t *testing.T) {
	batten := 42*10.68*(1.900-0.145)*0.145 + 9 // pipe by the US weight tables, and fittings
	carried := batten + 312 + 84 + 24
	lift, hand := 5*0.11, 0.167*10                               // five lines; and the hand line between its fastenings at an arbor of 10 ft
	top := func(trim float64) float64 { return 53 - (trim-4)/2 } // with the batten at 4 ft the arbor stands against its stop at 53 ft
	imbalance := func(load, trim float64) float64 { return load + lift*(top(trim)-trim) + hand }
	loaded := 2 * (imbalance(carried, 5) + imbalance(carried, 28)) / 2
	bare := 2 * (imbalance(batten, 4) + imbalance(batten, 46)) / 2
	arbor := 128 + (3*44 + 11) + (19*44 + 11) + 2*2.5
	got := text(t)
	for _, want := range []string{
		fmt.Sprintf("%.1f lb at standard gravity", carried),
		fmt.Sprintf("lift lines %.2f lb/ft × (52' 6\" − 5' 0\")", lift),
		fmt.Sprintf("2 × the mean of %.1f lbf and %.1f lbf", imbalance(carried, 5), imbalance(carried, 28)),
		fmt.Sprintf("2 × the mean of %.1f lbf and %.1f lbf", imbalance(batten, 4), imbalance(batten, 46)),
		fmt.Sprintf("%.1f lb for the bare batten − 128.0 lb", bare),
		fmt.Sprintf("%.1f lb − %.1f lb", loaded, bare),
		fmt.Sprintf("The arbor is to weigh %.0f lb", arbor),
		fmt.Sprintf("out of balance by no more than\n%.1f lbf", arbor/2-imbalance(carried, 28)),
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// Every set of the house has its sheet, and no line is too wide.
func TestEverySet(t *testing.T) {
	house, err := quillmoor.SummerPlay()
	if err != nil {
		t.Fatal(err)
	}
	for _, set := range house.Sets {
		for _, system := range []string{"us", "metric"} {
			page := text(t, "-set", set.Name, "-part", "all", "-units", system)
			for line := range strings.SplitSeq(page, "\n") {
				if utf8.RuneCountInString(line) > 100 {
					t.Errorf("%s: too wide: %s", set.Name, line)
				}
			}
			if strings.Contains(page, "NaN") || !strings.Contains(page, "THE ARBOR\n") {
				t.Errorf("%s: %s", set.Name, page)
			}
		}
	}
}
