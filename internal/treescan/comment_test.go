package treescan

import (
	"go/ast"
	"go/types"
	"path"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// scanComments reports exported symbols of the public packages that do not say
// what they are. A const or var may lean on the comment of its group. A field, or
// a method of an interface, counts as explained where
//
//   - it has a comment above or beside it, or the first of its group has one above
//     (a group ends at an empty line);
//   - the comment of its type names it;
//   - its type is one of our own and no quantity, which explains itself;
//   - it is the Name of the thing.
//
// What is left is mostly quantities that do not say from where they are measured
// and which way is positive. A comment that only repeats the name is not wanted.
//
// Every package, internal ones too, has one package comment, in doc.go where the
// package has one.
func scanComments(t *tree) []finding {
	var out []finding
	for _, p := range t.packages {
		out = append(out, packageComments(p)...)
		if !isPublic(p.rel) {
			continue
		}
		for _, f := range p.files {
			for _, d := range f.ast.Decls {
				out = append(out, p.declComments(f, d)...)
			}
		}
	}
	return out
}

func packageComments(p *pkg) []finding {
	if len(p.files) == 0 {
		return nil
	}
	var with []*file
	for _, f := range p.files {
		if f.ast.Doc != nil {
			with = append(with, f)
		}
	}
	if len(with) == 0 {
		return []finding{p.files[0].at(p.files[0].ast.Package, "package %s has no package comment", p.rel)}
	}
	var out []finding
	home := with[0]
	if i := slices.IndexFunc(p.files, func(f *file) bool { return path.Base(f.name) == "doc.go" }); i >= 0 {
		home = p.files[i]
	}
	for _, f := range with {
		if f != home {
			out = append(out, f.at(f.ast.Doc.Pos(), "a second package comment: the first is in %s", home.name))
		}
	}
	return out
}

func (p *pkg) declComments(f *file, d ast.Decl) []finding {
	var out []finding
	missing := func(id *ast.Ident, what string) {
		out = append(out, f.at(id.Pos(), "%s %s has no comment", what, id.Name))
	}
	switch d := d.(type) {
	case *ast.FuncDecl:
		switch {
		case !d.Name.IsExported() || d.Doc != nil:
		case d.Recv == nil:
			missing(d.Name, "func")
		case ast.IsExported(receiver(d)):
			missing(d.Name, "method "+receiver(d)+".")
		}
	case *ast.GenDecl:
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.TypeSpec:
				if !s.Name.IsExported() {
					continue
				}
				if s.Doc == nil && (d.Lparen.IsValid() || d.Doc == nil) {
					missing(s.Name, "type")
				}
				doc := s.Doc.Text() + d.Doc.Text()
				for _, id := range bareFields(s.Type) {
					if names(doc, id.Name) || id.Name == "Name" || p.explained(id) {
						continue
					}
					missing(id, "field or method "+s.Name.Name+".")
				}
			case *ast.ValueSpec:
				for _, id := range s.Names {
					if id.IsExported() && s.Doc == nil && s.Comment == nil && d.Doc == nil {
						missing(id, d.Tok.String())
					}
				}
			}
		}
	}
	return out
}

// bareFields lists the exported fields of a struct, or methods of an interface,
// that have no comment and no group to lean on. Embedded ones are explained
// where they are defined.
func bareFields(t ast.Expr) []*ast.Ident {
	var list *ast.FieldList
	switch t := t.(type) {
	case *ast.StructType:
		list = t.Fields
	case *ast.InterfaceType:
		list = t.Methods
	default:
		return nil
	}
	var out []*ast.Ident
	grouped, lastLine := false, -1
	for _, field := range list.List {
		first := fset.Position(field.Pos()).Line
		switch {
		case field.Doc != nil:
			grouped = true
		case first > lastLine+1:
			grouped = false
		}
		lastLine = fset.Position(field.End()).Line
		for _, id := range field.Names {
			if id.IsExported() && field.Comment == nil && !grouped {
				out = append(out, id)
			}
		}
	}
	return out
}

// names reports whether a comment speaks of a field: by its name as it is
// written in Go, or in prose where the name is a word of some weight.
func names(doc, field string) bool {
	for word := range strings.FieldsFuncSeq(doc, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if word == field || len(field) > 3 && field != "From" && strings.EqualFold(word, field) {
			return true
		}
	}
	return false
}

// explained reports whether a field is of a type of ours that is no quantity, or
// a list of such: its own comment says what it is.
func (p *pkg) explained(id *ast.Ident) bool {
	obj := p.info.Defs[id]
	if obj == nil {
		return false
	}
	t := obj.Type()
	for {
		switch u := types.Unalias(t).(type) {
		case *types.Slice:
			t = u.Elem()
		case *types.Pointer:
			t = u.Elem()
		case *types.Named:
			rel, ours := inModule(pathOf(u.Obj()))
			return ours && isPublic(rel) && !isQuantity(u)
		default:
			return false
		}
	}
}

// receiver names the type that a method belongs to.
func receiver(d *ast.FuncDecl) string {
	t := d.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	switch x := t.(type) {
	case *ast.IndexExpr:
		t = x.X
	case *ast.IndexListExpr:
		t = x.X
	}
	if id, ok := t.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}

func TestScanComments(t *testing.T) {
	runSnippets(t, scanComments, []snippet{
		{"symbols", "a symbol without a comment leaves unit and sign to guess", map[string]string{"load/a.go": `// Package load is a snippet.
package load

// Item hangs.
type Item struct{}

// Weigh weighs.
func (Item) Weigh() {}

func (Item) weigh() {}

type inner struct{ Field int }

func (inner) Weigh() {}

// Kinds of things.
const (
	A = iota
	B
)

const (
	C = 1 // a line will do
	// D has its own.
	D = 2
` + bad + `E = 3
)

var _, _ = Item{}.weigh, inner{}

` + bad + `type Batten struct{}

` + bad + `func (*Batten) Lift() {}

` + bad + `func Lift() {}

` + bad + `const F = 3

// A group of types is no comment on each.
type (
	// G is one.
	G struct{}
` + bad + `H struct{}
)
`}},
		{"fields", "a field states its unit, its sign and what zero means", map[string]string{"load/a.go": `// Package load is a snippet.
package load

import "example.com/steelyard/units"

// Kind is a choice.
type Kind int

// Item hangs from its loop, whose Weight is left out.
type Item struct {
	Name   string
	Loop   int
	Weight units.Mass
	Kind   Kind
	Kinds  []*Kind
	Drop   int // how far it reaches
	// where it begins and ends
	From int
	To   int

` + bad + `Mass units.Mass
` + bad + `From2 int
	hidden int
	inner

	Low, High int // a line for two
}

var _ = Item{}.hidden

type inner struct{ Deep int }

// Weigher weighs.
type Weigher interface {
	// Weigh weighs.
	Weigh()

` + bad + `Lift()
}
`}},
		{"package", "one package comment, in one place", map[string]string{
			"load/doc.go":         "// Package load is a snippet.\npackage load\n",
			"load/a.go":           bad + "\n// Package load says it again.\npackage load\n",
			"internal/beam/a.go":  bad + "package beam\n",
			"examples/house/a.go": "// House is a program.\npackage main\n\nfunc main() { Run() }\n\nfunc Run() {}\n",
		}},
	})
}
