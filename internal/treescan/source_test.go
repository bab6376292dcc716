package treescan

import (
	"go/ast"
	"go/token"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/internal/verification"
)

const sourceTable = "internal/verification/sources.go"

// withoutSources are packages that write of such comments and keys, and cite nothing.
var withoutSources = []struct{ rel, reason string }{
	{"internal/verification", "its table holds every key, and its comments show how one is used"},
	{"internal/verification/register", "its tests play with a row"},
	{"internal/treescan", "the snippets of this test have sources that are none"},
}

// sourceScan reports every "Source:" of a comment that does not begin with a key of the table of sources, and every
// source of a table that neither a comment nor the test of any package names. That the keys of rows are in the table, rows see to
// themselves.
func sourceScan(table []verification.Source) func(*tree) []finding {
	return func(t *tree) []finding {
		var out []finding
		used := map[string]bool{}
		for _, p := range t.packages {
			if slices.ContainsFunc(withoutSources, func(w struct{ rel, reason string }) bool { return w.rel == p.rel }) {
				continue
			}
			for _, f := range slices.Concat(p.files, p.tests) {
				for _, group := range f.ast.Comments {
					lines := labelled(group)
					for i, c := range verification.Citations(group.Text()) {
						parts, keys := c.Unresolved()
						for _, key := range keys {
							used[key] = true
						}
						for _, part := range parts {
							at := f.at(group.Pos(), "the source %q begins with no key of the table in %s", part, sourceTable)
							at.line = lines[i]
							out = append(out, at)
						}
					}
				}
			}
			for _, f := range p.tests {
				ast.Inspect(f.ast, func(n ast.Node) bool {
					if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
						if text, err := strconv.Unquote(lit.Value); err == nil {
							used[text] = true
						}
					}
					return true
				})
			}
		}
		for _, s := range table {
			if !used[s.Key] {
				before, _, _ := strings.Cut(t.texts[sourceTable], strconv.Quote(s.Key))
				out = append(out, finding{sourceTable, 1 + strings.Count(before, "\n"), "nothing uses the source " + strconv.Quote(s.Key)})
			}
		}
		return out
	}
}

// labelled gives the line of each "Source:" of a comment.
func labelled(group *ast.CommentGroup) (lines []int) {
	for _, c := range group.List {
		for i, line := range strings.Split(c.Text, "\n") {
			for range strings.Count(line, verification.Label) {
				lines = append(lines, fset.Position(c.Pos()).Line+i)
			}
		}
	}
	return lines
}

func TestScanSources(t *testing.T) {
	table := []verification.Source{{Key: "NIST SP 811"}, {Key: "equilibrium"}, {Key: "tables"}, {Key: "nobody's book"}}
	runSnippets(t, sourceScan(table), []snippet{
		{"comments", "a figure can be traced, or it is not one", map[string]string{
			sourceTable: "package verification\n\nvar keys = []string{\n\"NIST SP 811\",\n\"equilibrium\",\n\"tables\",\n" + bad + "\"nobody's book\",\n}\n",
			"load/a.go": "package load\n\n// A is 1.\n//\n// Source: NIST SP 811 (2008), B.9; equilibrium (of a line; and its end).\nconst A = 1\n\n" +
				"// B is 2.\n//\n" + bad + "// Source: hearsay.\nconst B = 2\n\n" +
				bad + "// C is 3. Source: NIST SP 8110.\nconst C = 3\n\n" +
				bad + "// D is 4. Source: NIST SP 811; a friend\n// of ours.\nconst D = 4\n",
			"load/a_test.go": "package load\n\n// Problem: none.\n" + bad + "// Source:    no book\n// Expected:  nothing\nconst source = \"tables\"\n",
		}},
	})
}
