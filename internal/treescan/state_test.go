package treescan

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strings"
	"testing"
)

// pointerTypes may have methods on a pointer, each with its reason. A type not
// listed here is small and plain, and a method on its pointer could change it.
var pointerTypes = []struct{ prefix, reason string }{
	{"Rigged", "made once, handed out as a pointer and never changed: a copy would be large"},
	{"Reeved", "made once, handed out as a pointer and never changed: a copy would be large"},
}

// printers write to standard output, which no public package does.
var printers = []string{"Print", "Printf", "Println"}

// scanState reports what makes an answer depend on more than the question:
// panics, init, package variables that can change, goroutines, output, and
// methods of public types that could change their receiver.
func scanState(t *tree) []finding {
	var out []finding
	for _, p := range t.packages {
		for _, f := range p.files {
			out = append(out, p.effectsIn(f)...)
			for _, d := range f.ast.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					out = append(out, p.funcState(f, d)...)
				case *ast.GenDecl:
					if d.Tok == token.VAR {
						out = append(out, p.varState(f, d)...)
					}
				}
			}
		}
	}
	return out
}

// effectsIn looks at the statements of a file.
func (p *pkg) effectsIn(f *file) []finding {
	var out []finding
	ast.Inspect(f.ast, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			switch fun := ast.Unparen(n.Fun).(type) {
			case *ast.Ident:
				b, ok := p.info.Uses[fun].(*types.Builtin)
				if ok && slices.Contains([]string{"panic", "print", "println"}, b.Name()) {
					out = append(out, f.at(n.Pos(), "%s: return an error instead", b.Name()))
				}
			case *ast.SelectorExpr:
				obj := p.info.Uses[fun.Sel]
				if isPublic(p.rel) && obj != nil && pathOf(obj) == "fmt" && slices.Contains(printers, obj.Name()) {
					out = append(out, f.at(n.Pos(), "fmt.%s: a public package writes nothing", obj.Name()))
				}
			}
		case *ast.GoStmt:
			if !isExample(p.rel) {
				out = append(out, f.at(n.Pos(), "a goroutine behind the caller's back"))
			}
		case *ast.AssignStmt:
			for _, left := range n.Lhs {
				out = append(out, p.writes(f, left)...)
			}
		case *ast.IncDecStmt:
			out = append(out, p.writes(f, n.X)...)
		case *ast.RangeStmt:
			if n.Tok == token.ASSIGN {
				out = append(out, p.writes(f, n.Key)...)
				out = append(out, p.writes(f, n.Value)...)
			}
		}
		return true
	})
	return out
}

// writes reports an assignment to a package variable, or to a part of one.
func (p *pkg) writes(f *file, left ast.Expr) []finding {
	root := left
	for {
		switch x := root.(type) {
		case *ast.ParenExpr:
			root = x.X
			continue
		case *ast.IndexExpr:
			root = x.X
			continue
		case *ast.SelectorExpr:
			if _, isField := p.info.Selections[x]; isField {
				root = x.X
			} else {
				root = x.Sel // a variable of another package
			}
			continue
		case *ast.StarExpr:
			root = x.X
			continue
		case *ast.Ident:
			v, ok := p.info.Uses[x].(*types.Var)
			if ok && !v.IsField() && v.Pkg() != nil && v.Parent() == v.Pkg().Scope() {
				return []finding{f.at(left.Pos(), "assignment to the package variable %s", x.Name)}
			}
		}
		return nil
	}
}

// funcState looks at the head of a function.
func (p *pkg) funcState(f *file, d *ast.FuncDecl) []finding {
	if d.Recv == nil {
		if d.Name.Name == "init" {
			return []finding{f.at(d.Pos(), "func init: nothing happens on import")}
		}
		return nil
	}
	name := receiver(d)
	if _, isPointer := d.Recv.List[0].Type.(*ast.StarExpr); !isPointer || !isPublic(p.rel) || !ast.IsExported(name) {
		return nil
	}
	if strings.HasPrefix(d.Name.Name, "Unmarshal") || d.Name.Name == "Scan" {
		return nil // decoding fills its receiver, and Scan is the word of database/sql for it
	}
	for _, t := range pointerTypes {
		if strings.HasPrefix(name, t.prefix) && t.reason != "" {
			return nil
		}
	}
	if obj, ok := p.info.Defs[d.Name].(*types.Func); ok && isErrorType(obj.Signature().Recv().Type()) {
		return nil // errors are handed on by pointer, so that errors.As finds one type
	}
	return []finding{f.at(d.Pos(), "method %s.%s on a pointer: use the value, or give the type a reason in pointerTypes", name, d.Name.Name)}
}

// varState looks at package variables.
func (p *pkg) varState(f *file, d *ast.GenDecl) []finding {
	var out []finding
	for _, s := range d.Specs {
		spec := s.(*ast.ValueSpec)
		if isExample(p.rel) && (embeds(spec.Doc) || embeds(d.Doc)) {
			continue // a file that is part of the program
		}
		if strings.HasPrefix(p.rel, "examples/") && strings.HasSuffix(p.rel, "test") {
			continue // a flag of the tests
		}
		for i, id := range spec.Names {
			if id.Name == "_" {
				continue
			}
			obj := p.info.Defs[id]
			switch {
			case obj == nil:
			case isErrorType(obj.Type()) && len(spec.Values) > 0:
			case id.IsExported():
				out = append(out, f.at(id.Pos(), "exported variable %s: anyone could change it", id.Name))
			case i >= len(spec.Values) || !isTable(spec.Values[i]):
				out = append(out, f.at(id.Pos(), "package variable %s: only errors, and tables written out, may stand here", id.Name))
			}
		}
	}
	return out
}

// isTable reports whether a value is written out in full. That it stays so is
// seen to by the rule on assignments.
func isTable(e ast.Expr) bool {
	_, ok := ast.Unparen(e).(*ast.CompositeLit)
	return ok
}

func embeds(doc *ast.CommentGroup) bool {
	return doc != nil && slices.ContainsFunc(doc.List, func(c *ast.Comment) bool { return strings.HasPrefix(c.Text, "//go:embed ") })
}

func isErrorType(t types.Type) bool {
	return types.Implements(orInvalid(t), types.Universe.Lookup("error").Type().Underlying().(*types.Interface))
}

func TestScanState(t *testing.T) {
	runSnippets(t, scanState, []snippet{
		{"statements", "the same question has the same answer, and no input stops the program", map[string]string{
			"load/a.go": `package load

import "fmt"

var table = [...]int{1, 2}

func f(panicking bool) (s string) {
	table := table
	table[0] = 3
	s = fmt.Sprint(table, panicking)
` + bad + `panic("no")
}

func g() {
` + bad + `fmt.Println("x")
` + bad + `print("x")
` + bad + `go f(true)
` + bad + `table[0] = 3
` + bad + `table[1]++
}

` + bad + `func init() {}
`,
			"examples/house/a.go": "package main\n\nimport \"fmt\"\n\nfunc main() {\n\tgo fmt.Println(1)\n" + bad + "panic(1)\n}\n",
			"internal/beam/a.go":  "package beam\n\nfunc panic(string) {}\n\nfunc F() { panic(\"a function of this name is no panic\") }\n",
		}},
		{"variables", "what anyone can change no one can rely on", map[string]string{
			"load/a.go": `package load

import (
	"errors"
	"fmt"
)

// ErrX is an error.
var ErrX = errors.New("x")

var errY error = fmt.Errorf("y: %w", ErrX)

var names = map[string]int{"a": 1}

var _ fmt.Stringer = kind(0)

type kind int

func (kind) String() string { return "" }

var _, _ = errY, names

` + bad + `var Default = [...]int{1}
` + bad + `var count int
` + bad + `var made = make([]int, 3)
` + bad + `var ErrNil error

func f() {
` + bad + `ErrX = nil
` + bad + `count, names["b"] = 1, 2
	_, _ = Default, made
}
`,
			"units/b.go":          "package units\n\ntype T struct{ A int }\n\nvar t = T{1}\n\nfunc f() {\n" + bad + "t.A = 2\n\tx := t\n\tx.A = 3\n}\n",
			"examples/house/a.go": "package main\n\nimport _ \"embed\"\n\n//go:embed a.go\nvar source string\n\n" + bad + "var n = 1\n\nfunc main() { _ = source }\n",
		}},
		{"receivers", "a method that could change its receiver does not belong on plain data", map[string]string{
			"load/a.go": `package load

type Item struct{}

func (Item) Mass() int { return 0 }
func (i *Item) UnmarshalText([]byte) error { return nil }

` + bad + `func (i *Item) Lift() {}

type RiggedItem struct{}

func (r *RiggedItem) Mass() int { return 0 }

type FaultError struct{}

func (f *FaultError) Error() string { return "" }
func (f *FaultError) Unwrap() error { return nil }

type parser struct{}

func (p *parser) next() {}
`,
			"internal/beam/a.go": "package beam\n\ntype Beam struct{}\n\nfunc (b *Beam) Add() {}\n",
		}},
	})
}
