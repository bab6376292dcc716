// Package lessontest is how every lesson is tested: its words and its picture against golden files, that the picture can be
// read, and that what is wrong is answered in one line.
package lessontest

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/steelyard/examples/lesson"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// Golden runs the lesson in both systems of units and compares what it writes and draws with testdata/us.txt, us.svg, metric.txt
// and metric.svg. Rewrite them with go test ./examples/... -update, and look at each.
func Golden(t *testing.T, l lesson.Lesson, args ...string) {
	for _, system := range []string{"us", "metric"} {
		t.Run(system, func(t *testing.T) {
			page, err := l.Lay(append([]string{"-units", system}, args...), strings.NewReader(""))
			if err != nil {
				t.Fatal(err)
			}
			text := page.Text()
			for i, line := range strings.Split(text, "\n") {
				if n := utf8.RuneCountInString(line); n > 100 {
					t.Errorf("line %d is %d characters wide: %s", i+1, n, line)
				}
			}
			Same(t, system+".txt", text)
			if page.Drawn == nil {
				return
			}
			for _, clash := range page.Drawn.Clashes() {
				t.Errorf("in the picture %s", clash)
			}
			Same(t, system+".svg", page.Drawn.String())
		})
	}
}

// Same compares a text with a file in testdata.
func Same(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("differs from %s; read the change, then run with -update:\n%s", path, firstDifference(got, string(want)))
	}
}

func firstDifference(got, want string) string {
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			const most = 300 // a line of a picture may be long
			return fmt.Sprintf("got:  %.*s\nwant: %.*s", most, g[i], most, strings.Join(w[min(i, len(w)):min(i+1, len(w))], ""))
		}
	}
	return "got fewer lines"
}

// Wrong is something wrong with the flags or the house, and what the answer must hold.
type Wrong struct {
	Args  []string
	Stdin string
	Says  string
}

// Answers checks that whatever is wrong is answered with status 2 and one line that says what would be right, that nothing else is
// written, and that -h explains every flag. What can be wrong with any lesson is always tried.
func Answers(t *testing.T, l lesson.Lesson, more ...Wrong) {
	all := append([]Wrong{
		{Args: []string{"-units", "yards"}, Says: `want "us" or "metric"`},
		{Args: []string{"-nonsense"}, Says: "-h explains the flags"},
		{Args: []string{"us"}, Says: `"us" is not a flag`},
		{Args: []string{"-file", "nowhere.json"}, Says: "want a file with a house as JSON"},
		{Args: []string{"-file", "-"}, Says: "standard input: "},
		{Args: []string{"-file", "-"}, Stdin: `{"name":"x"}`, Says: "want at least one kind of counterweight piece; and 1 more"},
	}, more...)
	if l.Draws {
		all = append(all, Wrong{Args: []string{"-picture", filepath.Join("nowhere", "x.svg")}, Says: "-picture wants a file"})
	}
	for _, wrong := range all {
		t.Run(strings.Join(wrong.Args, " "), func(t *testing.T) {
			var out, errs bytes.Buffer
			status := l.Run(wrong.Args, strings.NewReader(wrong.Stdin), &out, &errs)
			if status != 2 || out.Len() > 0 {
				t.Errorf("status %d, and written: %q", status, out.String())
			}
			if text := errs.String(); strings.Count(text, "\n") != 1 || !strings.HasPrefix(text, l.Name+": ") || !strings.Contains(text, wrong.Says) {
				t.Errorf("it says %q; want one line with %q", text, wrong.Says)
			}
		})
	}
	t.Run("-h", func(t *testing.T) {
		var out, errs bytes.Buffer
		if status := l.Run([]string{"-h"}, strings.NewReader(""), &out, &errs); status != 0 || errs.Len() > 0 {
			t.Errorf("status %d: %s", status, errs.String())
		}
		for _, want := range []string{"go run ./examples/" + l.Name, "-units", "-file", "Overhead lifting can kill."} {
			if !strings.Contains(out.String(), want) {
				t.Errorf("no %q in\n%s", want, out.String())
			}
		}
	})
}
