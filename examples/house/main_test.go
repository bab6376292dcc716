package main

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// output runs the program and gives all that it did.
func output(stdin string, args ...string) (status int, out, errs string) {
	var stdout, stderr bytes.Buffer
	status = run(args, strings.NewReader(stdin), &stdout, &stderr)
	return status, stdout.String(), stderr.String()
}

// What a rigger reads, whole. Rewrite with: go test ./examples/house -update
func TestSheets(t *testing.T) {
	for _, c := range []struct {
		golden string
		args   []string
	}{
		{"us.txt", nil},
		{"metric.txt", []string{"-units", "metric"}},
		{"set_us.txt", []string{"-set", "4 first electric"}},
		{"set_metric.txt", []string{"-set", "12", "-units", "metric"}},
		{"help.txt", []string{"-h"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			status, got, errs := output("", c.args...)
			if status != 0 || errs != "" {
				t.Fatalf("status %d, %s", status, errs)
			}
			for i, line := range strings.Split(got, "\n") {
				if n := utf8.RuneCountInString(line); n > width {
					t.Errorf("line %d is %d characters wide: %s", i+1, n, line)
				}
			}
			if !strings.Contains(got, "Overhead lifting can kill.") {
				t.Error("the caution is missing")
			}
			lessontest.Same(t, c.golden, got)
		})
	}
}

// The demonstration house holds what it is meant to show.
func TestDemoHouse(t *testing.T) {
	house, _, err := rig("", nil)
	if err != nil {
		t.Fatal(err)
	}
	exceeding := map[string]string{}
	kinds := map[purchase.Kind]int{}
	empty := 0
	for set := range house.Sets() {
		d := set.Set()
		kinds[d.Rigging.Purchase]++
		if len(d.Hang) == 0 {
			empty++
		}
		if d.Rigging.Purchase == purchase.Double && d.Rigging.Rail < 10*units.Foot {
			t.Errorf("%s: a double purchase set without an elevated rail", d.Name)
		}
		for _, c := range set.Checks() {
			if c.Verdict == lineset.Exceeds && exceeding[d.Name] == "" {
				exceeding[d.Name] = c.Name
			}
		}
	}
	if n := house.Totals().Sets; n < 12 || kinds[purchase.Single] == 0 || kinds[purchase.Double] == 0 || empty == 0 {
		t.Errorf("%d sets, %v, %d empty", n, kinds, empty)
	}
	want := map[string]string{"10 ballroom wall": "stack height", "11 moon": "travel to high trim", "12 chandelier": "lift line tension"}
	if len(exceeding) != len(want) {
		t.Errorf("sets that exceed: %v, want %v", exceeding, want)
	}
	for name, check := range want {
		if exceeding[name] != check {
			t.Errorf("%s exceeds %q first, want %q", name, exceeding[name], check)
		}
	}
}

// One figure of the sheet by another road, from the inputs and plain arithmetic:
// what the first electric wants at its arbor.
func TestOneFigureByHand(t *testing.T) {
	house, _, err := rig("", nil)
	if err != nil {
		t.Fatal(err)
	}
	// Pounds and feet. 42 ft of pipe of 1.900 in and 0.145 in wall at 0.2833 lb/in³, and 9 lb of fittings.
	pipe := math.Pi * 0.145 * (1.900 - 0.145) * 0.2833 * 42 * 12
	carried := pipe + 9 + 312 + 84 + 24
	// Five lift lines of 0.11 lb/ft hang from batten and arbor: w·(y − x), with the
	// arbor's top at 53 ft when the batten is at 4 ft, coming down half as fast.
	// The hand line pulls the arbor's foot, 10 ft below its top, down less than the
	// top up: w_h·a·M/N with M = N = 2.
	ropes := func(x float64) float64 { return 5*0.11*(53-(x-4)/2-x) + 0.167*10 }
	// Even over the travel from 5 ft to 28 ft: the mean of both ends, and twice that.
	want := 2 * (carried + (ropes(5)+ropes(28))/2)
	set, ok := house.Set("4 first electric")
	if !ok {
		t.Fatal("the set is not there")
	}
	got := set.Counterweight().Loaded.Wanted.In(units.Pound)
	if math.Abs(got-want) > 1e-6 {
		t.Errorf("wanted %v lb, by hand %v lb", got, want)
	}
}

func TestExitStatus(t *testing.T) {
	quiet := house(t, func(h *lineset.House) { h.Sets = h.Sets[:9] })
	for _, c := range []struct {
		name   string
		stdin  string
		args   []string
		status int
		says   string // on standard error
		reason string
	}{
		{"plain", "", nil, 0, "", "the house was computed, though sets exceed"},
		{"strict", "", []string{"-strict"}, 1, "", "sets exceed"},
		{"strict, one set", "", []string{"-strict", "-set", "9"}, 0, "", "that set is within its limits"},
		{"strict, one that exceeds", "", []string{"-strict", "-set", "11 moon"}, 1, "", "that set exceeds"},
		{"strict, as JSON", "", []string{"-strict", "-json"}, 1, "", "however it is printed"},
		{"set by the beginning of its name", "", []string{"-set", "11 MOON"}, 0, "", "in any case"},
		{"set by part of a word", "", []string{"-set", "11 mo"}, 2, "no one set", "words are not cut"},
		{"two sets begin so", house(t, func(h *lineset.House) { h.Sets[1].Name = "1 house curtain, second" }), []string{"-file", "-", "-set", "1"}, 2, "no one set", "which of the two?"},
		{"strict, all within", quiet, []string{"-strict", "-file", "-"}, 0, "", "nothing exceeds"},
		{"strict, stock short", house(t, func(h *lineset.House) { h.Sets = h.Sets[:9]; h.Stock[0].Count = 30 }), []string{"-strict", "-file", "-"}, 1, "", "all sets together take more than there is"},
		{"no such file", "", []string{"-file", "nowhere.json"}, 2, "nowhere.json", "it names the file"},
		{"no such set", "", []string{"-set", "99"}, 2, `want one of "1 house curtain"`, "it lists the sets"},
		{"no such unit", "", []string{"-units", "cubits"}, 2, `want "us" or "metric"`, "it lists the choices"},
		{"no such flag", "", []string{"-colour"}, 2, "-h explains", "it points to the help"},
		{"a stray word", "", []string{"house.json"}, 2, "-file house.json", "it says how to write it"},
		{"empty", "", []string{"-file", "-"}, 2, "standard input", "nothing is not a house"},
		{"junk", strings.Repeat("junk ", 1000), []string{"-file", "-"}, 2, "line 1, column 1", "it says where JSON ends"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := output(c.stdin, c.args...)
			if status != c.status || !strings.Contains(errs, c.says) {
				t.Errorf("status %d, said %q; want %d and %q: %s", status, errs, c.status, c.says, c.reason)
			}
			if c.status == 2 && (out != "" || errs == "" || strings.Count(errs, "\n") != 1) {
				t.Errorf("printed %q, said %q; want nothing but one line of what would be right", out, errs)
			}
		})
	}
}

// Faults come together, each on a line that names file, field, set and value.
func TestBadHouse(t *testing.T) {
	text := strings.NewReplacer(`"mass": "312 lb"`, `"mass": "312"`, `"high_trim": "44 ft"`, `"high_trim": "44 lb"`).Replace(string(quillmoor.JSON()))
	path := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	status, out, errs := output("", "-file", path)
	if status != 2 || out != "" {
		t.Errorf("status %d, printed %q", status, out)
	}
	for _, want := range []string{path, `sets[3].hang[0].mass ("12 fixtures" of "4 first electric")`, `"312" has no unit`, `sets[1].high_trim ("2 first border")`, `"44 lb"`, "4 problems; nothing was computed"} {
		if !strings.Contains(errs, want) {
			t.Errorf("%q is missing in:\n%s", want, errs)
		}
	}
}

// Names come from a file: none of them reaches the terminal as a command, or makes
// a line of its own.
func TestNamesCannotSteerTheTerminal(t *testing.T) {
	text := house(t, func(h *lineset.House) {
		h.Name = "a\x1b[2Jb"
		h.Sets[0].Name = "c\nwithin the limit given"
		h.Sets[0].Hang[0].Name = "d\u202ee\u009bf"
		h.Stock[0].Name = "g\ah"
	})
	for _, args := range [][]string{{"-file", "-"}, {"-file", "-", "-set", "c\nwithin the limit given"}} {
		status, out, errs := output(text, args...)
		if status != 0 {
			t.Fatalf("status %d, %s", status, errs)
		}
		if i := strings.IndexFunc(out, func(r rune) bool { return r != '\n' && !unicode.IsPrint(r) }); i >= 0 {
			t.Errorf("%q reached the terminal", out[i:min(i+20, len(out))])
		}
		if strings.Contains(out, "\nwithin the limit") || strings.Contains(out, "\nWITHIN") {
			t.Error("a name made a line of its own")
		}
	}
}

// What is laid otherwise than usual, and what figures do not say, stands in words.
func TestSaidInWords(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*lineset.Rigging) // of the first electric
		want   []string
		reason string
	}{
		{
			"hand line of one part", func(r *lineset.Rigging) { r.HandPurchase = purchase.Single },
			[]string{"hand line                                         single purchase", "heaviest lift dead end"},
			"the head of the sheet tells of the lift lines",
		},
		{"hand line of three parts", func(r *lineset.Rigging) { r.HandPurchase = purchase.Triple }, []string{"hand line block, beam", "hand line block, rail"}, "its blocks bear loads"},
		{
			"idler too light", func(r *lineset.Rigging) { r.Idler.Mass = 10 * units.Pound },
			[]string{"not held", "at low trim: batten-heavy beyond what the idler's", "outer rope above the lock", "slack, the idler lifts"},
			"the lock alone does not hold it",
		},
		{
			"idler held too lightly", func(r *lineset.Rigging) { r.Idler.Base = 2 * units.PoundForce },
			[]string{"held, 2.0 lbf in each", "what holds the idler bears", "exceeds", "outer rope kept tight"},
			"it is held, but the rope above the lock is slack",
		},
		{"idler not given", func(r *lineset.Rigging) { r.Idler.Mass = 0 }, []string{"at either trim: the idler's weight is not given", "idler, not given,"}, "its tension is left out"},
		{"no drag", func(r *lineset.Rigging) { r.Drag = 0 }, []string{"runs in by itself", "runs out by itself", " back, "}, "nothing holds what is out of balance"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := house(t, func(h *lineset.House) {
				r := h.Riggings[h.Sets[3].Like]
				c.change(&r)
				h.Sets[3].Like, h.Sets[3].Rigging = "", r
			})
			status, out, errs := output(text, "-file", "-", "-set", "4 first electric")
			if status != 0 {
				t.Fatal(errs)
			}
			out = strings.Join(strings.Fields(out), " ")
			for _, want := range c.want {
				if !strings.Contains(out, strings.Join(strings.Fields(want), " ")) {
					t.Errorf("%q is not said: %s\n%s", want, c.reason, out)
				}
			}
		})
	}
}

// More is refused without being held in memory: the reader is asked for little
// more than the bound.
// Where the sets want more pieces than there are, the foot of the sheet says how far they go and what to hire.
func TestSharedOut(t *testing.T) {
	text := house(t, func(h *lineset.House) { h.Stock[0].Count, h.Stock[2].Count = 120, 9 })
	_, out, _ := output(text, "-file", "-")
	flat := strings.Join(strings.Fields(out), " ")
	for _, want := range []string{
		"exceeds the stock by 31", "shared out, the stock leaves the worst set ", "out of balance at the batten",
		"more of the 44 and ", "more of the 11 would bring every set as near balance as with its own stack",
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	if _, out, _ := output("", "-units", "us"); strings.Contains(out, "shared out") {
		t.Error("a stock that is enough is shared out")
	}
}

func TestHugeInput(t *testing.T) {
	var stderr bytes.Buffer
	junk := &endless{}
	if status := run([]string{"-file", "-"}, junk, io.Discard, &stderr); status != 2 || !strings.Contains(stderr.String(), "larger than") {
		t.Errorf("status %d, %s", status, stderr.String())
	}
	if junk.read > 2*maxFile {
		t.Errorf("%d bytes were read", junk.read)
	}
}

type endless struct{ read int }

func (e *endless) Read(p []byte) (int, error) {
	e.read += len(p)
	return len(p), nil
}

// The JSON output holds what the sheet says, in quantities that parse again.
func TestJSON(t *testing.T) {
	status, out, _ := output("", "-json")
	var got struct {
		Name string
		Sets []struct {
			Name          string
			Counterweight struct{ Arbor units.Mass }
			Checks        []struct {
				Name, Verdict, Basis string
				Ratio                float64
			}
			Exceeds bool
		}
		Caution string
	}
	if err := json.Unmarshal([]byte(out), &got); status != 0 || err != nil {
		t.Fatal(status, err)
	}
	house, _, err := rig("", nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Sets) != house.Totals().Sets || got.Caution == "" {
		t.Errorf("%d sets, caution %q", len(got.Sets), got.Caution)
	}
	for _, s := range got.Sets {
		want, ok := house.Set(s.Name)
		if !ok {
			t.Fatalf("%q is not in the house", s.Name)
		}
		if s.Counterweight.Arbor != want.Counterweight().Arbor || s.Exceeds != want.Exceeds() || len(s.Checks) != len(want.Checks()) {
			t.Errorf("%s: %+v", s.Name, s)
		}
	}
	if status, out, _ := output("", "-json", "-set", "4"); status != 0 || !strings.HasPrefix(out, "{\n  \"name\": \"4 first electric\"") {
		t.Errorf("status %d, %.60q", status, out)
	}
}

// house gives the demonstration house, changed, as JSON.
func house(t *testing.T, change func(*lineset.House)) string {
	t.Helper()
	var h lineset.House
	if err := h.UnmarshalJSON(quillmoor.JSON()); err != nil {
		t.Fatal(err)
	}
	change(&h)
	text, err := json.Marshal(h)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
