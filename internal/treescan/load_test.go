package treescan

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/build"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

const module = "example.com/steelyard"

// Sources outside of the module are read once for all trees: that costs seconds.
var (
	fset    = token.NewFileSet()
	outside = importer.ForCompiler(fset, "source", nil)
)

// tree is the source of a module, or of a snippet that plays one.
type tree struct {
	packages []*pkg            // by path
	texts    map[string]string // every text file by its path, Go or not
	outside  types.Importer    // of what is not in the module
}

// pkg is one package: what is compiled, and its tests, which are only parsed.
type pkg struct {
	rel    string // its path below the module's: "purchase/lineset"
	files  []*file
	tests  []*file
	types  *types.Package
	info   *types.Info
	broken []finding // why it does not compile
	state  int       // of the type check: 0 not begun, 1 under way, 2 done
}

type file struct {
	name string // "load/item.go"
	text string
	ast  *ast.File
}

// finding is one place that breaks a rule.
type finding struct {
	file string
	line int
	text string
}

func (f finding) String() string { return fmt.Sprintf("%s:%d: %s", f.file, f.line, f.text) }

// at makes a finding at a node of the file.
func (f *file) at(pos token.Pos, format string, args ...any) finding {
	return finding{f.name, fset.Position(pos).Line, fmt.Sprintf(format, args...)}
}

// inModule gives the path below the module's, for paths of the module.
func inModule(importPath string) (string, bool) {
	return strings.CutPrefix(importPath, module+"/")
}

// isInternal reports whether a package is one that callers cannot import.
func isInternal(rel string) bool { return rel == "internal" || strings.HasPrefix(rel, "internal/") }

// isExample reports whether a package is a program on the roof.
func isExample(rel string) bool { return rel == "examples" || strings.HasPrefix(rel, "examples/") }

// isPublic reports whether a package is one that callers import.
func isPublic(rel string) bool { return !isInternal(rel) && !isExample(rel) }

// readTree reads the files below root. Go files of a nested module, or for
// another platform, count as text only.
func readTree(root string) (*tree, error) {
	texts, compiled := map[string]string{}, map[string]string{}
	var nested []string
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		if d.IsDir() {
			if rel == ".git" || strings.HasSuffix(rel, "testdata/fuzz") {
				return filepath.SkipDir
			}
			if _, err := os.Stat(filepath.Join(name, "go.mod")); err == nil && rel != "." {
				nested = append(nested, rel+"/")
			}
			return nil
		}
		text, err := os.ReadFile(name)
		if err != nil || !isText(text) {
			return err
		}
		texts[rel] = string(text)
		if !strings.HasSuffix(rel, ".go") || strings.Contains("/"+rel, "/testdata/") || strings.HasPrefix(rel, ".") {
			return nil
		}
		if match, err := build.Default.MatchFile(filepath.Dir(name), d.Name()); err != nil || !match {
			return err
		}
		if !slices.ContainsFunc(nested, func(dir string) bool { return strings.HasPrefix(rel, dir) }) {
			compiled[rel] = string(text)
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	t := newTree(compiled, outside)
	t.texts = texts
	return t, nil
}

// isText leaves out binary files and data too long for anyone to read.
func isText(b []byte) bool {
	return len(b) < 1<<20 && !strings.Contains(string(b), "\x00")
}

// newTree parses and checks Go files, given by their path in the module. What is
// not of the module comes from the importer outside.
func newTree(sources map[string]string, outside types.Importer) *tree {
	t := &tree{texts: sources, outside: outside}
	byDir := map[string]*pkg{}
	for name, text := range sources {
		rel := path.Dir(name)
		p := byDir[rel]
		if p == nil {
			p = &pkg{rel: rel}
			byDir[rel] = p
			t.packages = append(t.packages, p)
		}
		parsed, err := parser.ParseFile(fset, name, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			p.broken = append(p.broken, finding{name, 1, err.Error()})
		}
		f := &file{name, text, parsed}
		switch {
		case parsed == nil:
		case strings.HasSuffix(name, "_test.go"):
			p.tests = append(p.tests, f)
		default:
			p.files = append(p.files, f)
		}
	}
	byName := func(a, b *file) int { return cmp.Compare(a.name, b.name) }
	slices.SortFunc(t.packages, func(a, b *pkg) int { return cmp.Compare(a.rel, b.rel) })
	for _, p := range t.packages {
		slices.SortFunc(p.files, byName)
		slices.SortFunc(p.tests, byName)
	}
	for _, p := range t.packages {
		t.check(p)
	}
	return t
}

// check runs the type checker over a package. It goes on after errors, so that
// the scans see what can be seen of a package that does not compile.
func (t *tree) check(p *pkg) {
	if p.state != 0 {
		return
	}
	p.state = 1
	p.info = &types.Info{
		Types:      map[ast.Expr]types.TypeAndValue{},
		Defs:       map[*ast.Ident]types.Object{},
		Uses:       map[*ast.Ident]types.Object{},
		Selections: map[*ast.SelectorExpr]*types.Selection{},
	}
	var files []*ast.File
	for _, f := range p.files {
		files = append(files, f.ast)
	}
	conf := types.Config{Importer: t, Error: func(err error) {
		at := err.(types.Error)
		where := fset.Position(at.Pos)
		p.broken = append(p.broken, finding{where.Filename, where.Line, at.Msg})
	}}
	p.types, _ = conf.Check(module+"/"+p.rel, fset, files, p.info) // errors have gone to p.broken
	p.state = 2
}

// Import gives the tree's own packages, and those outside of it.
func (t *tree) Import(importPath string) (*types.Package, error) {
	rel, ours := inModule(importPath)
	if !ours {
		return t.outside.Import(importPath)
	}
	for _, p := range t.packages {
		if p.rel != rel {
			continue
		}
		if p.state == 1 {
			return nil, fmt.Errorf("import cycle through %s", rel)
		}
		t.check(p)
		return p.types, nil
	}
	return nil, fmt.Errorf("there is no package %s", rel)
}

// stubs gives empty packages for other modules, so that a snippet may import one
// that this module does not require.
type stubs struct{}

func (stubs) Import(importPath string) (*types.Package, error) {
	if !isOutside(importPath) {
		return outside.Import(importPath)
	}
	p := types.NewPackage(importPath, path.Base(importPath))
	p.MarkComplete()
	return p, nil
}

// snippetUnits is the units package of the snippets: enough of the real one.
const snippetUnits = `package units

type (
	Length float64
	Mass   float64
	Force  float64
)

const (
	Metre Length = 1
	Foot  Length = 0.3048
	Pound Mass   = 0.45359237
)

type Quantity interface{ Length | Mass | Force }

func Ratio[Q Quantity](a, b Q) float64 { return float64(a) / float64(b) }
`
