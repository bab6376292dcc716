package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The mutants of a small package, their fates told by reading it: whatever breaks Twice is seen but at nought, which no test
// asks for; nobody looks at the sum; Unseen is not reached.
func TestTiny(t *testing.T) {
	if testing.Short() {
		t.Skip("builds a package some times")
	}
	for _, c := range []struct {
		name, only string
		want       []string
	}{
		{"all", "", []string{
			"tiny.go:12:7: Twice: n < 0 → n <= 0",
			"tiny.go:12:9: Twice: 0 → 1",  // nor at 0 and 1
			"tiny.go:13:10: Twice: 0 → 1", // the number beside an error
			"tiny.go:29:3: Sum: sum += n → left out",
			"tiny.go:29:7: Sum: sum += n → sum -= n",
			"tiny.go:31:9: Sum: return sum → return its zero value",
			"explained.txt:8: explains what is killed: doubles * n → doubles / n",
			"explained.txt:12: explains what is no mutant: internal/mutation/testdata/tiny/tiny.go Gone: return 1: 1 → 2",
			"internal/mutation/testdata/tiny: 24 mutants, 4 not reached by a test, 0 did not compile; of 20 run 13 killed (0 of them too slow), 1 explained, 6 survived: 70.0 %",
		}},
		{"some", "Larger: if", []string{
			"explained.txt:12: explains what is no mutant: internal/mutation/testdata/tiny/tiny.go Gone: return 1: 1 → 2",
			"internal/mutation/testdata/tiny: 24 mutants, 4 not reached by a test, 0 did not compile; of 2 run 2 killed (0 of them too slow), 0 explained, 0 survived: 100.0 %",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var said strings.Builder
			o := options{dir: "testdata/tiny", explained: "testdata/explained.txt", jobs: 2, checks: 30, only: regexp.MustCompile(c.only)}
			if _, err := run(o, &said); err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(strings.TrimSpace(said.String()), "\n")
			for i := range lines {
				if at := strings.Index(lines[i], "/tiny.go:"); at >= 0 {
					lines[i] = lines[i][at+1:]
				}
				lines[i] = strings.TrimPrefix(lines[i], "testdata/")
			}
			slices.Sort(lines)
			slices.Sort(c.want)
			if !slices.Equal(lines, c.want) {
				t.Errorf("said\n%s\nshould say\n%s", strings.Join(lines, "\n"), strings.Join(c.want, "\n"))
			}
		})
	}
}

// Each kind of change, on lines that have it.
func TestMutants(t *testing.T) {
	for _, c := range []struct {
		name, line string
		want       []string
	}{
		{"sum", "x = a + b", []string{"x = a + b → left out", "a + b → a - b"}},
		{"product of sums", "x = a * (b - a)", []string{"x = a * (b - a) → left out", "a * (b - a) → a / (b - a)", "b - a → b + a"}},
		{"comparison", "y := a <= b", []string{"a <= b → a < b", "a <= b → a > b"}},
		{"and, not", "y := ok && !ok", []string{"ok && !ok → ok || !ok", "!ok → ok"}},
		{"minus", "y := -a", []string{"-a → a"}},
		{"whole literal", "y := 7", []string{"7 → 8", "7 → 0"}},
		{"nought", "y := 0", []string{"0 → 1"}},
		{"literal", "y := 2.5", []string{"2.5 → (2.5 + 1)", "2.5 → 0.0"}},
		{"step", "x--", []string{"x-- → x++"}},
		{"add to", "x += a", []string{"x += a → x -= a", "x += a → left out"}},
		{"call", "f()", []string{"f() → left out"}},
		{"condition", "if ok {\n}", []string{"if ok → if true", "if ok → if false"}},
		{"largest", "y := max(a, b)", []string{"max(a, b) → min(a, b)"}},
		{"smallest", "y := math.Min(a, b)", []string{"math.Min(a, b) → math.Max(a, b)"}},
		{"results", "return a, ok, err", []string{"return a → return its zero value", "return ok → return !(ok)", "return err → return nil"}},
		{"results that are zero", "return 0, false, nil", []string{"0 → 1", "false → true"}},
		{"results of a function inside", "y := func() error { return err }", []string{"return err → return nil"}},
		{"case", "switch {\ncase a < b:\n}", []string{"a < b → a <= b", "a < b → a >= b"}},
		{"text", `y := "a"`, nil},
	} {
		p := &source{rel: "p", name: "p"}
		dir := t.TempDir()
		text := "package p\n\nfunc g() (float64, bool, error) {\n" + c.line + "\n}\n"
		if err := os.WriteFile(filepath.Join(dir, "p.go"), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := p.parse(dir, "p.go"); err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, m := range p.mutants() {
			got = append(got, m.change)
		}
		slices.Sort(got)
		slices.Sort(c.want)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A list that cannot be read says where and why.
func TestExplanations(t *testing.T) {
	const head = "a/b.go f: x = 1\n"
	for _, c := range []struct{ name, text, want string }{
		{"no function", "a/b.go: x = 1\n", `:1: "a/b.go: x = 1": should be a file, a function`},
		{"no change", head + "\tbecause: so\n", ":2: "},
		{"no reason", head + "\t1 → 2\n\tbecause: \n", ":3: "},
		{"no reason, and the next", head + "\t1 → 2\n\n" + head, ":3: "},
		{"no reason at the end", head + "\t1 → 2\n", ":3: "},
		{"no reason and no end of the line", head + "\t1 → 2", "no reason"},
		{"no head after a blank line", head + "\t1 → 2\n\tbecause: so\n\n\t2 → 3\n", ":5: "},
		{"no arrow", head + "\tnonsense\n", `:2: "\tnonsense": should be old → new`},
		{"no head", "\t1 → 2\n", ":1: "},
	} {
		name := filepath.Join(t.TempDir(), "list.txt")
		if err := os.WriteFile(name, []byte(c.text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := readExplanations(name, "a"); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, should say %q", c.name, err, c.want)
		}
	}
	name := filepath.Join(t.TempDir(), "list.txt")
	const shared = head + "\t1 → 2\n\t1 → 0\na/c.go g: y = 3\n\t3 → 4\nother/d.go h: z = 5\n\t5 → 6\n\tbecause: so\n"
	if err := os.WriteFile(name, []byte(shared), 0o600); err != nil {
		t.Fatal(err)
	}
	list, err := readExplanations(name, "a")
	if err != nil || len(list) != 3 || list[0].line != "x = 1" || list[1].change != "1 → 0" || list[2].function != "g" {
		t.Errorf("lines that share a reason: %v, %v", list, err)
	}
	if list, err := readExplanations("testdata/none.txt", "a"); err != nil || list != nil {
		t.Errorf("a list that is not there: %v, %v", list, err)
	}
}

// The same seed draws the same sample, in the order of the source.
func TestDraw(t *testing.T) {
	var all []mutant
	for i := range 50 {
		all = append(all, mutant{from: i})
	}
	a, b, other := draw(all, 10, 3), draw(all, 10, 3), draw(all, 10, 4)
	at := func(list []mutant) (out []int) {
		for _, m := range list {
			out = append(out, m.from)
		}
		return out
	}
	if len(a) != 10 || !slices.IsSorted(at(a)) || !slices.Equal(at(a), at(b)) || slices.Equal(at(a), at(other)) {
		t.Errorf("%v, %v, with another seed %v", at(a), at(b), at(other))
	}
}
