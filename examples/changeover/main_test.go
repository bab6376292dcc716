package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/examples/quillmoor"
)

func TestGolden(t *testing.T) { lessontest.Golden(t, changeover()) }

func TestAnswers(t *testing.T) {
	house := string(quillmoor.JSON())
	sun := strings.Replace(house, `"11 moon"`, `"11 sun"`, 1)
	lighter := strings.Replace(house, `"22 lb"`, `"21 lb"`, 1)
	higher := strings.Replace(house, `"made_off": "4 ft"`, `"made_off": "5 ft"`, 1)
	if sun == house || lighter == house || higher == house {
		t.Fatal("the house is not as it was")
	}
	lessontest.Answers(t, changeover(),
		lessontest.Wrong{Args: []string{"-next", "-"}, Stdin: sun, Says: `-next wants the same house with another hang: sets[10].name`},
		lessontest.Wrong{Args: []string{"-next", "-"}, Stdin: lighter, Says: "want the same stock of counterweight in both houses"},
		lessontest.Wrong{Args: []string{"-next", "-"}, Stdin: higher, Says: "want the same rigging in both houses"},
		lessontest.Wrong{Args: []string{"-file", "-"}, Stdin: sun, Says: "-next wants the same house with another hang: sets[10].name"},
		lessontest.Wrong{
			Args: []string{"-next", "-"}, Stdin: `{"name":"n","sets":[{"name":"16 sun","like":"single","low_trim":"5 ft","high_trim":"20 ft","balance":"even"}]}`,
			Says: `-: no set is called "16 sun"; want one of "1 house curtain"`,
		},
		lessontest.Wrong{Args: []string{"-next", "-"}, Stdin: "[]", Says: "standard input: "},
		lessontest.Wrong{Args: []string{"-next", "nowhere.json"}, Says: "want a file with a house as JSON"},
		lessontest.Wrong{Args: []string{"-limit", "50"}, Says: "want a force such as"},
		lessontest.Wrong{Args: []string{"-limit", "-1 lbf"}, Says: "want a force that is not below zero"},
		lessontest.Wrong{Args: []string{"-limit", "5 lbf"}, Says: `-limit 5 lbf: sets[4] ("5 painted drop"): no order of stripping`})
}

func text(t *testing.T, stdin string, args ...string) string {
	t.Helper()
	page, err := changeover().Lay(args, strings.NewReader(stdin))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(page.Text()), " ")
}

// Step 5 by hand: the chandelier hangs, and in the arbor is only what answers the bare batten.
func TestChandelierByHand(t *testing.T) {
	batten := 42*10.68*(1.900-0.145)*0.145 + 9 // lb: pipe by the US weight tables, and fittings
	const lift, hand, tare = 0.11 * 5, 0.167, 96.0
	top, travel := 53.0, 53-1.5-8.0              // ft, of the arbor's top with the batten at 4 ft, and of the arbor
	halfway := (top - travel/2) - (4 + travel/2) // ft, from the batten up to the arbor's top
	wanted := batten + lift*halfway + hand*8 - tare
	pipe := 22.0 + 11 // pieces: nothing of 44, 22 and 11 lb comes closer
	if wanted < pipe-5.5 || wanted > pipe+5.5 {
		t.Fatalf("%.2f lb of pipe weight wanted", wanted)
	}
	heavy := batten + 720 + lift*(top-4) + hand*8 - tare - pipe
	if got, want := text(t, ""), fmt.Sprintf("5 take out 16 of the 44 and 2 plates %.0f lbf batten-heavy, rests 6 strip chandelier", heavy); !strings.Contains(got, want) {
		t.Errorf("no %q in %s", want, got)
	}
}

// What the bridge handles by hand, in pounds, set by set as it is read out; and that the order in which sets are done matters.
func TestPiecesByHand(t *testing.T) {
	chandelier := 11 + 16*44 + 2*2.5
	wall, drop := 11+22+2.5, 11.0+22
	electric, sign := 4*44.0, 8*44+2.5+11
	got := text(t, "")
	for _, want := range []string{
		fmt.Sprintf("the bridge handles %.0f lb.", chandelier+wall+drop+electric+sign),
		// Before the chandelier's 16 come out, 4 and 8 would go in: 151 + 12 of 160. So it goes first.
		"the counterweight that there is would not do",
		"of the 44 16 12 151 160 0",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
}

// The sets that change may stand in a file by themselves, and a night may be that of tonight.
func TestNextNights(t *testing.T) {
	revue := filepath.Join("..", "quillmoor", "revue.json")
	if got := text(t, "", "-next", revue); got != text(t, "") {
		t.Errorf("the file of the revue is not the revue: %s", got)
	}
	if got := text(t, string(quillmoor.JSON()), "-next", "-"); !strings.Contains(got, "Nothing changes: both nights hang alike.") {
		t.Error(got)
	}
	back, err := os.ReadFile(revue)
	if err != nil {
		t.Fatal(err)
	}
	if got := text(t, string(back), "-next", "-", "-limit", "60 lbf"); !strings.Contains(got, "the limit given is 60 lbf") {
		t.Error(got)
	}
	// With fewer of the 44 than the play takes, pieces are short whatever the order.
	few := strings.Replace(string(quillmoor.JSON()), `"count": 160`, `"count": 150`, 1)
	got := text(t, few, "-file", "-", "-next", revue)
	if !strings.Contains(got, "Short at the worst moment are") {
		t.Error(got)
	}
}
