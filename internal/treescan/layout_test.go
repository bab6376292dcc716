package treescan

import (
	"path"
	"slices"
	"strings"
	"testing"
)

// vague lists file names that say nothing of what is inside: one concept stands
// in one file, named after it.
var vague = []string{"util", "utils", "types", "common", "helpers", "helper", "misc"}

// maxLines is how long a file may be that is not a test: longer ones hold more
// than one concept.
const maxLines = 400

// scanLayout reports names and lengths of files, and a doc.go that holds more
// than the package comment.
func scanLayout(t *tree) []finding {
	var out []finding
	for name, text := range t.texts {
		base, isGo := strings.CutSuffix(path.Base(name), ".go")
		if !isGo {
			continue
		}
		stem, isTest := strings.CutSuffix(base, "_test")
		if slices.Contains(vague, stem) {
			out = append(out, finding{name, 1, "a name that says nothing: name the file after its concept"})
		}
		if n := strings.Count(text, "\n"); !isTest && n >= maxLines {
			out = append(out, finding{name, 1, "too long: split it by concept"})
		}
	}
	for _, p := range t.packages {
		for _, f := range p.files {
			if path.Base(f.name) == "doc.go" && len(f.ast.Decls) > 0 {
				out = append(out, f.at(f.ast.Decls[0].Pos(), "doc.go holds the package comment only"))
			}
		}
	}
	slices.SortFunc(out, byPlace)
	return out
}

func TestScanLayout(t *testing.T) {
	lines := strings.Repeat("\n", maxLines-2)
	runSnippets(t, scanLayout, []snippet{
		{"names", "a reader looks for a concept", map[string]string{
			"load/item.go":             "package load\n",
			"load/utils.go":            bad + "package load\n",
			"load/helpers_test.go":     bad + "package load\n",
			"internal/beam/types.go":   bad + "package beam\n",
			"internal/beam/typeset.go": "package beam\n",
		}},
		{"lengths", "one concept fits in one file; a table of tests may be long", map[string]string{
			"load/item.go":      "package load\n" + lines,
			"load/long.go":      bad + "package load\n" + lines + "\n",
			"load/long_test.go": "package load\n" + lines + "\n",
		}},
		{"doc", "the package comment is found at once", map[string]string{
			"load/doc.go": "// Package load is a snippet.\npackage load\n\n" + bad + "const x = 1\n",
		}},
	})
}
