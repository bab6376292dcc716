package treescan

import (
	"go/ast"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rooms says which rooms a room may import, beside the standard library: never
// upward, and load, purchase and arbor never one another. Internal packages
// import units and one another; that none of those that units uses imports units
// is seen to by the compiler. Where a room is not listed here, that is reported.
var rooms = map[string][]string{
	"units":            {"internal"},
	"units/column":     {"units"},
	"units/ucum":       {"units"},
	"load":             {"units", "internal"},
	"arbor":            {"units", "internal"},
	"purchase":         {"units", "internal"},
	"purchase/lineset": {"units", "load", "arbor", "purchase", "internal"},
	"internal":         {"units", "internal"},
	// The programs show what a caller can do, and a caller has no internal: they have a pen and paper, and one another's house.
	"examples":                   {"units", "load", "arbor", "purchase", "purchase/lineset", "internal/svg", "internal/chart", "examples/lesson", "examples/lesson/lessontest", "examples/quillmoor", "examples/diagram"},
	"examples/diagram":           {"units", "load", "arbor", "purchase", "purchase/lineset", "internal/svg", "internal/chart", "examples/lesson", "examples/lesson/lessontest", "examples/quillmoor"},
	"examples/lesson":            {"units", "purchase/lineset", "internal/svg", "examples/quillmoor", "examples/lesson/lessontest"},
	"examples/lesson/lessontest": {"examples/lesson", "internal/svg"},
	"examples/quillmoor":         {"purchase", "purchase/lineset", "examples/lesson/lessontest"},
	"internal/svg":               {},
	"internal/chart":             {"internal/svg"},
	// The register of outside checks imports nothing of ours, so that the tests of every room can; its own tests reckon the
	// derivations anew beside the kernels.
	"internal/verification":          {"internal"},
	"internal/verification/register": {"internal/verification"},
}

// testRooms may be imported by the tests of any room, and by nothing else.
var testRooms = []string{"internal/verification"}

// modules says which rooms may use which modules: decimal stays at the edges,
// where text is read and ledgers are kept, and appears in no formula.
var modules = map[string][]string{
	"github.com/shopspring/decimal": {"units", "arbor", "internal"},
}

// testModules may be used by the tests of any room.
var testModules = []string{"github.com/google/go-cmp", "pgregory.net/rapid"}

// effects are packages of the standard library that public packages do without:
// the same question has the same answer, and nothing is read or written.
var effects = []string{"os", "net", "time", "log", "syscall", "unsafe", "math/rand", "crypto/rand", "io/fs", "io/ioutil", "sync", "testing", "flag"}

// typesOnly lists packages with effects of which a room may use some names, none
// of which has an effect.
var typesOnly = map[string]map[string][]string{
	"units": {"time": {"Duration", "Second"}}, // a time is converted to and from Go's own durations
}

// room gives the room that a package belongs to.
func room(rel string) string {
	if _, own := rooms[rel]; own {
		return rel
	}
	for _, r := range []string{"internal", "examples"} {
		if strings.HasPrefix(rel, r+"/") {
			return r
		}
	}
	return rel
}

// scanImports reports imports that run upward or sideways, and modules and
// effects out of their place. Tests keep the same direction.
func scanImports(t *tree) []finding {
	var out []finding
	for _, p := range t.packages {
		from := room(p.rel)
		allowed, known := rooms[from]
		for _, f := range slices.Concat(p.files, p.tests) {
			if !known {
				out = append(out, f.at(f.ast.Package, "package %s is in no room: give it a place in the table of rooms", p.rel))
				continue
			}
			isTest := strings.HasSuffix(f.name, "_test.go")
			for _, spec := range f.ast.Imports {
				to, err := strconv.Unquote(spec.Path.Value)
				if err != nil {
					continue // then it does not compile either
				}
				rel, ours := inModule(to)
				switch {
				case ours && rel == p.rel && isTest: // an external test imports what it tests
				case ours && isTest && slices.Contains(testRooms, rel):
				case ours && !slices.Contains(allowed, room(rel)):
					out = append(out, f.at(spec.Pos(), "%s must not import %s", p.rel, rel))
				case ours:
				case isOutside(to) && !mayUse(from, to, isTest):
					out = append(out, f.at(spec.Pos(), "%s must not use the module of %s", p.rel, to))
				case isPublic(p.rel) && !isTest && slices.ContainsFunc(effects, under(to)):
					if names := typesOnly[from][to]; names != nil && spec.Name == nil {
						out = append(out, otherNames(f, to, names)...)
						continue
					}
					out = append(out, f.at(spec.Pos(), "%s must not use %s: a public package has no side effects", p.rel, to))
				}
			}
		}
	}
	return out
}

// otherNames reports the uses of an imported package beyond the given names. The
// package is imported under its own name.
func otherNames(f *file, importPath string, names []string) []finding {
	var out []finding
	ast.Inspect(f.ast, func(n ast.Node) bool {
		if use, ok := n.(*ast.SelectorExpr); ok {
			if id, ok := use.X.(*ast.Ident); ok && id.Name == path.Base(importPath) && !slices.Contains(names, use.Sel.Name) {
				out = append(out, f.at(use.Pos(), "%s.%s is not one of %v, which alone may be used here", id.Name, use.Sel.Name, names))
			}
		}
		return true
	})
	return out
}

// isOutside reports whether a path is of another module: those begin with a host.
func isOutside(importPath string) bool {
	head, _, _ := strings.Cut(importPath, "/")
	return strings.Contains(head, ".")
}

func mayUse(from, importPath string, isTest bool) bool {
	for m, by := range modules {
		if under(importPath)(m) && slices.Contains(by, from) {
			return true
		}
	}
	return isTest && slices.ContainsFunc(testModules, under(importPath))
}

// under tests whether a path is that of a module or package, or lies in it.
func under(importPath string) func(string) bool {
	return func(m string) bool { return importPath == m || strings.HasPrefix(importPath, m+"/") }
}

func TestScanImports(t *testing.T) {
	const plain = "package %\n"
	pkg := func(name string) string { return strings.Replace(plain, "%", name, 1) }
	runSnippets(t, scanImports, []snippet{
		{"upward", "the floors carry one another from below", map[string]string{
			"load/a.go":  "package load\n\nimport (\n\t_ \"example.com/steelyard/units\"\n" + bad + "_ \"example.com/steelyard/arbor\"\n)\n",
			"arbor/a.go": pkg("arbor"),
		}},
		{"from the ground", "units knows nothing of theatres", map[string]string{
			"units/b.go": "package units\n\n" + bad + "import _ \"example.com/steelyard/load\"\n",
			"load/a.go":  pkg("load"),
		}},
		{"lineset", "it ties the three rooms, and only it", map[string]string{
			"load/a.go": pkg("load"), "arbor/a.go": pkg("arbor"), "internal/beam/a.go": pkg("beam"),
			"purchase/lineset/a.go": "package lineset\n\nimport (\n\t_ \"example.com/steelyard/arbor\"\n\t_ \"example.com/steelyard/internal/beam\"\n\t_ \"example.com/steelyard/load\"\n)\n",
			"purchase/a.go":         "package purchase\n\n" + bad + "import _ \"example.com/steelyard/purchase/lineset\"\n",
		}},
		{"internal", "a kernel serves the rooms and asks nothing of them", map[string]string{
			"load/a.go": pkg("load"), "internal/beam/b.go": pkg("beam"),
			"internal/check/a.go": "package check\n\nimport (\n\t_ \"example.com/steelyard/internal/beam\"\n\t_ \"example.com/steelyard/units\"\n" + bad + "_ \"example.com/steelyard/load\"\n)\n",
		}},
		{"examples", "a caller has no internal, and nothing stands on the roof", map[string]string{
			"internal/beam/a.go":  pkg("beam"),
			"examples/house/a.go": "package main\n\nimport (\n\t_ \"os\"\n\t_ \"example.com/steelyard/units\"\n" + bad + "_ \"example.com/steelyard/internal/beam\"\n)\n\nfunc main() {}\n",
			"examples/sheet/a.go": pkg("sheet"),
			"load/a.go":           "package load\n\n" + bad + "import _ \"example.com/steelyard/examples/sheet\"\n",
			"examples/other/a.go": "package other\n\n" + bad + "import _ \"example.com/steelyard/examples/sheet\"\n",
		}},
		{"tests", "a test imports what it tests, and keeps the direction", map[string]string{
			"load/a.go": pkg("load"), "arbor/a.go": pkg("arbor"),
			"load/a_test.go": "package load_test\n\nimport (\n\t_ \"example.com/steelyard/load\"\n\t_ \"pgregory.net/rapid\"\n\t_ \"github.com/google/go-cmp/cmp\"\n\t_ \"os\"\n" + bad + "_ \"example.com/steelyard/arbor\"\n)\n",
		}},
		{"register", "checks from outside are recorded by tests, and what they record is no part of an answer", map[string]string{
			"internal/verification/a.go": "package verification\n\n" + bad + "import _ \"example.com/steelyard/units\"\n",
			"units/column/a.go":          pkg("column"),
			"units/column/a_test.go":     "package column_test\n\nimport _ \"example.com/steelyard/internal/verification\"\n",
			"internal/beam/b.go":         "package beam\n\n" + bad + "import _ \"example.com/steelyard/internal/verification\"\n",
			"load/a.go":                  "package load\n\n" + bad + "import _ \"example.com/steelyard/internal/verification\"\n",
		}},
		{"modules", "decimal at the edges, nothing else at run time", map[string]string{
			"units/b.go": "package units\n\nimport _ \"github.com/shopspring/decimal\"\n",
			"load/a.go":  "package load\n\n" + bad + "import _ \"github.com/shopspring/decimal\"\n",
			"arbor/a.go": "package arbor\n\nimport (\n\t_ \"github.com/shopspring/decimal\"\n" + bad + "_ \"pgregory.net/rapid\"\n)\n",
		}},
		{"effects", "same question, same answer", map[string]string{
			"load/a.go":          "package load\n\nimport (\n\t_ \"math\"\n" + bad + "_ \"time\"\n" + bad + "_ \"math/rand/v2\"\n)\n",
			"internal/beam/a.go": "package beam\n\nimport _ \"sync\"\n",
		}},
		{"a type and no effect", "the length of a duration is no reading of the clock", map[string]string{
			"units/b.go": "package units\n\nimport \"time\"\n\nvar B time.Duration = 3 * time.Second\n",
			"units/c.go": "package units\n\nimport \"time\"\n\n" + bad + "var C = time.Now()\n",
			"units/d.go": "package units\n\n" + bad + "import clock \"time\"\n\nvar D clock.Duration\n",
			"load/a.go":  "package load\n\n" + bad + "import \"time\"\n\nvar A time.Duration\n",
		}},
		{"no room", "a new package is given a place on purpose", map[string]string{
			"truss/a.go": bad + "package truss\n",
		}},
	})
}
