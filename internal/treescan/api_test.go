package treescan

import (
	"flag"
	"go/types"
	"os"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the list of exported names")

const apiFile = "testdata/api.txt"

// What callers can name stands in a list, so that a change to it is made on purpose: who renames, removes or adds something
// rewrites the list with go test ./internal/treescan -run API -update, reads the difference, and says it in the changelog.
func TestAPI(t *testing.T) {
	tr, err := realTree()
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, p := range tr.packages {
		if isPublic(p.rel) {
			lines = append(lines, exported(p.rel, p.types)...)
		}
	}
	got := strings.Join(lines, "\n") + "\n"
	if *update {
		if err := os.WriteFile(apiFile, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(apiFile)
	if err != nil {
		t.Fatal(err)
	}
	old := strings.Split(strings.TrimSuffix(string(want), "\n"), "\n")
	for _, line := range lines {
		if !slices.Contains(old, line) {
			t.Errorf("not in %s: %s", apiFile, line)
		}
	}
	for _, line := range old {
		if !slices.Contains(lines, line) {
			t.Errorf("gone, though in %s: %s", apiFile, line)
		}
	}
}

// exported lists what a package lets callers name, a line for each: constants, variables, functions, types, the exported
// fields of structs, methods.
func exported(rel string, p *types.Package) (lines []string) {
	qualify := func(other *types.Package) string {
		if other == p {
			return ""
		}
		return other.Name()
	}
	add := func(parts ...string) { lines = append(lines, rel+": "+strings.Join(parts, "")) }
	for _, name := range p.Scope().Names() {
		obj := p.Scope().Lookup(name)
		if !obj.Exported() {
			continue
		}
		switch obj := obj.(type) {
		case *types.Const:
			add("const ", name, " ", types.TypeString(obj.Type(), qualify))
		case *types.Var:
			add("var ", name, " ", types.TypeString(obj.Type(), qualify))
		case *types.Func:
			add("func ", name, strings.TrimPrefix(types.TypeString(obj.Type(), qualify), "func"))
		case *types.TypeName:
			under := obj.Type().Underlying()
			s, isStruct := under.(*types.Struct)
			if !isStruct {
				add("type ", name, " ", types.TypeString(under, qualify))
			} else {
				add("type ", name, " struct")
				for i := range s.NumFields() {
					if f := s.Field(i); f.Exported() {
						add("field ", name, ".", f.Name(), " ", types.TypeString(f.Type(), qualify), " `", s.Tag(i), "`")
					}
				}
			}
			methods := types.NewMethodSet(types.NewPointer(obj.Type()))
			for m := range methods.Methods() {
				f := m.Obj().(*types.Func)
				if !f.Exported() || types.IsInterface(obj.Type()) || f.Pkg() != p {
					continue
				}
				recv := types.TypeString(f.Signature().Recv().Type(), qualify)
				add("method (", recv, ") ", f.Name(), strings.TrimPrefix(types.TypeString(f.Type(), qualify), "func"))
			}
		}
	}
	return lines
}

// A list that left something out would freeze nothing.
func TestExported(t *testing.T) {
	tr := newTree(map[string]string{"load/a.go": `package load

const Two Size = 2

type Size float64

func (s Size) Twice() Size { return 2 * s }

type Item struct {
	Name string ` + "`json:\"name\"`" + `
	own  int
}

func (i *Item) Set(name string, more ...int) error { return nil }

func (Item) hidden() {}

func Make() (Item, error) { return Item{}, nil }

func unseen() {}

var Known = 3
`}, outside)
	got := exported("load", tr.packages[0].types)
	want := []string{
		"load: type Item struct", "load: field Item.Name string `json:\"name\"`", "load: method (*Item) Set(name string, more ...int) error",
		"load: var Known int", "load: func Make() (Item, error)", "load: type Size float64", "load: method (Size) Twice() Size", "load: const Two Size",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
