package treescan

import (
	"go/ast"
	"go/token"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// forbidden words say that something is not done, or point to a tracker that the
// reader may not have. They are written in two halves here, so that this file does
// not break its own rule.
var forbidden = regexp.MustCompile(strings.Join([]string{
	`\b` + "TO" + "DO" + `\b`,
	`\b` + "FIX" + "ME" + `\b`,
	`\b` + "XX" + "X" + `\b`,
	`(?i:\bissue ` + `#?\d)`,
}, "|"))

// soothing words promise what no figure can.
var soothing = regexp.MustCompile(`(?i)\bsafe(?:ly)?\b`)

// scanWords reports words that must not stand in any text of the tree, and the
// word "safe" where a program could print it: the library says "within the limit
// given" or "exceeds".
func scanWords(t *tree) []finding {
	var out []finding
	for name, text := range t.texts {
		for i, line := range strings.Split(text, "\n") {
			if word := forbidden.FindString(line); word != "" {
				out = append(out, finding{name, i + 1, "the word " + strconv.Quote(word) + " must not stand here"})
			}
		}
	}
	for _, p := range t.packages {
		for _, f := range p.files {
			ast.Inspect(f.ast, func(n ast.Node) bool {
				lit, ok := n.(*ast.BasicLit)
				if !ok || lit.Kind != token.STRING {
					return true
				}
				if word := soothing.FindString(lit.Value); word != "" {
					out = append(out, f.at(lit.Pos(), "the word %q could be printed: say what was compared with what", word))
				}
				return true
			})
		}
	}
	for name, text := range t.texts {
		if !isExample(path.Dir(name)) || strings.HasSuffix(name, ".go") {
			continue
		}
		// What a program embeds, it prints.
		for i, line := range strings.Split(text, "\n") {
			if word := soothing.FindString(line); word != "" {
				out = append(out, finding{name, i + 1, "the word " + strconv.Quote(word) + " could be printed"})
			}
		}
	}
	slices.SortFunc(out, byPlace)
	return out
}

func TestScanWords(t *testing.T) {
	runSnippets(t, scanWords, []snippet{
		{"undone", "what is not done is not said to be", map[string]string{
			"load/a.go":      "package load\n\n" + bad + "// TO" + "DO: later\nvar later = 1 // a word inside another is no matter: FIX" + "MENT\n",
			"load/a_test.go": "package load\n\n" + bad + "// FIX" + "ME\n",
		}},
		{"tracker", "a comment gives the reason itself", map[string]string{
			"load/a.go": "package load\n\n" + bad + "// See iss" + "ue 12.\nconst note = 1 // an issue of 12 pages\n",
		}},
		{"soothing", "a figure is within a limit given, or exceeds it; what goroutines may do is another matter", map[string]string{
			"load/a.go":      "package load\n\n// It is safe for concurrent use.\nconst safe = \"unsafe, safety, vouchsafe\"\n\n" + bad + "const verdict = `It is Safe`\n",
			"load/a_test.go": "package load\n\nconst never = \"safe\"\n",
		}},
	})
	tr := &tree{texts: map[string]string{"examples/house/house.json": "{}\n{\"note\": \"safe\"}", "README.md": "Never says safe. TO" + "DO"}}
	if got := scanWords(tr); len(got) != 2 || got[0].file != "README.md" || got[1].line != 2 {
		t.Errorf("reported %v, should be one in README.md and one in house.json", got)
	}
}
