package main

import (
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// source is a package as it stands, without its tests.
type source struct {
	root, rel, dir string // the module's folder, the package's below it, and both together
	name           string
	usesRapid      bool
	fset           *token.FileSet
	files          []*file
}

type file struct {
	name string // without a folder
	text []byte
	ast  *ast.File
}

func readSource(dir string) (*source, error) {
	cmd := exec.Command("go", "list", "-json", ".")
	cmd.Dir, cmd.Stderr = dir, os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list in %s: %w", dir, err)
	}
	var listed struct {
		Dir, Name                          string
		Module                             struct{ Dir string }
		GoFiles, TestImports, XTestImports []string
	}
	if err := json.Unmarshal(out, &listed); err != nil {
		return nil, err
	}
	rel, err := filepath.Rel(listed.Module.Dir, listed.Dir)
	if err != nil {
		return nil, err
	}
	p := &source{root: listed.Module.Dir, rel: filepath.ToSlash(rel), dir: listed.Dir, name: listed.Name}
	for _, path := range append(listed.TestImports, listed.XTestImports...) {
		p.usesRapid = p.usesRapid || path == "pgregory.net/rapid"
	}
	return p, p.parse(p.dir, listed.GoFiles...)
}

func (p *source) parse(dir string, names ...string) error {
	p.fset = token.NewFileSet()
	for _, name := range names {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return err
		}
		parsed, err := parser.ParseFile(p.fset, name, text, parser.ParseComments)
		if err != nil {
			return err
		}
		p.files = append(p.files, &file{name, text, parsed})
	}
	return nil
}

// between gives the text from one place to another.
func (p *source) between(f *file, from, to token.Pos) string {
	return string(f.text[p.offset(from):p.offset(to)])
}

func (p *source) of(f *file, n ast.Node) string { return p.between(f, n.Pos(), n.End()) }

func (p *source) offset(at token.Pos) int { return p.fset.Position(at).Offset }

// lineAt gives the text of the line on which a place stands.
func (p *source) lineAt(f *file, at token.Pos) string {
	line := p.fset.Position(at).Line
	return strings.TrimSpace(strings.Split(string(f.text), "\n")[line-1])
}

// functionName says how a reader calls a function: Type.Method, or the name alone.
func functionName(d *ast.FuncDecl) string {
	if d == nil {
		return "-"
	}
	if d.Recv == nil {
		return d.Name.Name
	}
	t := d.Recv.List[0].Type
	for {
		switch x := t.(type) {
		case *ast.StarExpr:
			t = x.X
		case *ast.IndexExpr:
			t = x.X
		case *ast.IndexListExpr:
			t = x.X
		case *ast.Ident:
			return x.Name + "." + d.Name.Name
		default:
			return d.Name.Name
		}
	}
}
