package treescan

import (
	"bytes"
	"go/ast"
	"go/printer"
	"os"
	"slices"
	"strings"
	"testing"
)

const catalogueFile = "testdata/errors.txt"

// Every fault that the library reports, as the source says it: the package, the field, the value, what would be right, and the kind.
// None may leave out what would be right, or the kind. Whoever changes a message rewrites the list with
// go test ./internal/treescan -run Catalogue -update, and reads it.
func TestCatalogue(t *testing.T) {
	tr, err := realTree()
	if err != nil {
		t.Fatal(err)
	}
	lines, gaps := catalogue(tr)
	for _, gap := range gaps {
		t.Error(gap)
	}
	got := strings.Join(lines, "\n") + "\n"
	if *update {
		if err := os.WriteFile(catalogueFile, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(catalogueFile)
	if err != nil {
		t.Fatal(err)
	}
	old := strings.Split(strings.TrimSuffix(string(want), "\n"), "\n")
	for _, line := range lines {
		if !slices.Contains(old, line) {
			t.Errorf("not in %s: %s", catalogueFile, line)
		}
	}
	for _, line := range old {
		if !slices.Contains(lines, line) {
			t.Errorf("gone, though in %s: %s", catalogueFile, line)
		}
	}
}

// catalogue lists the faults: those that are collected with check.Problems.Add, and those written out as a units.FieldError.
func catalogue(t *tree) (lines []string, gaps []finding) {
	for _, p := range t.packages {
		if !isPublic(p.rel) && p.rel != "internal/check" && p.rel != "internal/strictjson" {
			continue
		}
		for _, f := range p.files {
			if f.name == "units/fielderror.go" {
				continue // it hands on what others say
			}
			ast.Inspect(f.ast, func(n ast.Node) bool {
				var field, value, want, kind ast.Expr
				switch n := n.(type) {
				case *ast.CallExpr:
					s, ok := n.Fun.(*ast.SelectorExpr)
					if !ok || s.Sel.Name != "Add" || len(n.Args) != 4 || !strings.HasSuffix(typeName(p, s.X), "check.Problems") {
						return true
					}
					field, value, want, kind = n.Args[0], n.Args[1], n.Args[2], n.Args[3]
				case *ast.CompositeLit:
					if !strings.HasSuffix(typeName(p, n), "units.FieldError") {
						return true
					}
					for _, e := range n.Elts {
						kv, ok := e.(*ast.KeyValueExpr)
						if !ok {
							continue
						}
						switch kv.Key.(*ast.Ident).Name {
						case "Field":
							field = kv.Value
						case "Value":
							value = kv.Value
						case "Want":
							want = kv.Value
						case "Err":
							kind = kv.Value
						}
					}
				default:
					return true
				}
				if want == nil || source(want) == `""` || kind == nil {
					gaps = append(gaps, f.at(n.Pos(), "a fault that does not say what would be right, or of what kind it is"))
				}
				lines = append(lines, p.rel+": "+source(field)+" | "+source(value)+" | "+source(want)+" | "+source(kind))
				return true
			})
		}
	}
	slices.Sort(lines)
	return slices.Compact(lines), gaps
}

// typeName is the type of an expression, without a pointer to it.
func typeName(p *pkg, e ast.Expr) string {
	if t := p.info.TypeOf(e); t != nil {
		return strings.TrimPrefix(t.String(), "*")
	}
	return ""
}

// source is an expression as it is written, on one line.
func source(e ast.Expr) string {
	if e == nil {
		return "-"
	}
	var b bytes.Buffer
	if err := printer.Fprint(&b, fset, e); err != nil {
		return "?"
	}
	return strings.Join(strings.Fields(b.String()), " ")
}
