package verification_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// goNames is every name that the packages of the repository declare, as a reader writes it: purchase.State.Imbalance,
// purchase.Reeved.At, rope.DragRatio, beam.TestRing; and an argument as load.ImpactFactor(drop).
type goNames struct {
	root string
	of   map[string]goName
}

// goName is where a name is declared and what it holds or answers with.
type goName struct {
	file string   // from the root, with slashes
	pkg  string   // of the type
	typ  ast.Expr // of a field, a constant or a variable, of the first result of a func, what a type is made of; may be nil
	fn   *ast.FuncType
}

// readGoNames parses all packages but programs, which have no names to cite. Their tests are read for the names of tests.
func readGoNames(root string) (*goNames, error) {
	g := &goNames{root: root, of: map[string]goName{}}
	files := token.NewFileSet()
	home := map[string]string{}
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		if entry.IsDir() {
			if rel == "examples" || entry.Name() == "testdata" || rel != "." && strings.HasPrefix(entry.Name(), ".") {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(rel, ".go") {
			return nil
		}
		f, err := parser.ParseFile(files, name, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		if f.Name.Name == "main" {
			return nil
		}
		pkg := strings.TrimSuffix(f.Name.Name, "_test")
		if dir := path.Dir(rel); home[pkg] == "" {
			home[pkg] = dir
		} else if home[pkg] != dir {
			return fmt.Errorf("two packages %s, in %s and %s: a name does not tell which", pkg, home[pkg], dir)
		}
		for _, d := range f.Decls {
			g.declare(rel, pkg, d)
		}
		return nil
	})
	return g, err
}

func (g *goNames) declare(file, pkg string, d ast.Decl) {
	test := strings.HasSuffix(file, "_test.go")
	switch d := d.(type) {
	case *ast.FuncDecl:
		name := pkg + "."
		if d.Recv != nil {
			_, base := baseOfType(pkg, d.Recv.List[0].Type)
			name += base + "."
		}
		if test && (d.Recv != nil || !isTestFunc(d.Name.Name)) {
			return
		}
		one := goName{file: file, pkg: pkg, fn: d.Type}
		if d.Type.Results != nil {
			one.typ = d.Type.Results.List[0].Type
		}
		g.of[name+d.Name.Name] = one
	case *ast.GenDecl:
		if test {
			return
		}
		var before ast.Expr
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.ValueSpec:
				if s.Type != nil || len(s.Values) > 0 {
					before = s.Type
				}
				for _, id := range s.Names {
					g.of[pkg+"."+id.Name] = goName{file: file, pkg: pkg, typ: before}
				}
			case *ast.TypeSpec:
				g.of[pkg+"."+s.Name.Name] = goName{file: file, pkg: pkg, typ: s.Type}
				if fields, ok := s.Type.(*ast.StructType); ok {
					for _, field := range fields.Fields.List {
						for _, id := range field.Names {
							g.of[pkg+"."+s.Name.Name+"."+id.Name] = goName{file: file, pkg: pkg, typ: field.Type}
						}
					}
				}
			}
		}
	}
}

func isTestFunc(name string) bool {
	return slices.ContainsFunc([]string{"Test", "Fuzz", "Example", "Benchmark"}, func(kind string) bool { return strings.HasPrefix(name, kind) })
}

// baseOfType gives the package and the name of a type, taken out of pointers, lists and brackets.
func baseOfType(pkg string, t ast.Expr) (of, name string) {
	switch t := t.(type) {
	case *ast.StarExpr:
		return baseOfType(pkg, t.X)
	case *ast.ArrayType:
		return baseOfType(pkg, t.Elt)
	case *ast.IndexExpr:
		return baseOfType(pkg, t.X)
	case *ast.SelectorExpr:
		if id, ok := t.X.(*ast.Ident); ok {
			return id.Name, t.Sel.Name
		}
	case *ast.Ident:
		return pkg, t.Name
	}
	return pkg, ""
}

// find gives what a name stands for.
func (g *goNames) find(name string) (goName, error) {
	short, argument, called := strings.Cut(strings.TrimSuffix(name, ")"), "(")
	one, ok := g.member(short)
	if !ok {
		if verified := strings.Replace(short, ".Test", ".TestVerify", 1); verified != short && g.has(verified) {
			return goName{}, fmt.Errorf("there is no %s, but %s", short, verified)
		}
		return goName{}, fmt.Errorf("there is no %s", short)
	}
	if !called {
		return one, nil
	}
	if one.fn != nil {
		for _, field := range one.fn.Params.List {
			for _, id := range field.Names {
				if id.Name == argument {
					return goName{file: one.file, pkg: one.pkg, typ: field.Type}, nil
				}
			}
		}
	}
	return goName{}, fmt.Errorf("%s takes no %s", short, argument)
}

func (g *goNames) has(name string) bool {
	_, ok := g.of[name]
	return ok
}

// member finds a name as declared, or a field or method of what a name holds: purchase.Reeved.hand.weight.
func (g *goNames) member(name string) (goName, bool) {
	if one, ok := g.of[name]; ok {
		return one, true
	}
	i := strings.LastIndex(name, ".")
	if i < 0 {
		return goName{}, false
	}
	holder, ok := g.member(name[:i])
	if !ok || holder.typ == nil {
		return goName{}, false
	}
	pkg, base := baseOfType(holder.pkg, holder.typ)
	one, ok := g.of[pkg+"."+base+name[i:]]
	return one, ok
}

// unitOfType is the coherent unit of each quantity of package units.
var unitOfType = map[string]string{
	"Length": "m", "Mass": "kg", "Force": "N", "LineMass": "kg/m", "LineLoad": "N/m", "AreaMass": "kg/m²", "Density": "kg/m³",
	"Area": "m²", "Moment": "N·m", "Stress": "Pa", "SecondMoment": "m⁴", "SectionModulus": "m³", "Energy": "J", "Power": "W",
	"Speed": "m/s", "Acceleration": "m/s²", "TimeSpan": "s", "Angle": "rad", "Stiffness": "N/m", "Inertia": "kg·m²",
}

// unit is the SI unit that a type tells; "" where it tells none, as that of a kernel, which is on plain numbers.
func (g *goNames) unit(name string, one goName) string {
	if strings.HasPrefix(one.file, "internal/") {
		return ""
	}
	for part := range strings.SplitSeq(name, ".") {
		if part != strings.Split(name, ".")[0] && !ast.IsExported(part) {
			return ""
		}
	}
	pkg, base := baseOfType(one.pkg, one.typ)
	if u, ok := unitOfType[strings.TrimPrefix(name, "units.")]; ok && strings.HasPrefix(name, "units.") {
		return u
	}
	if pkg == "units" {
		return unitOfType[base]
	}
	if base == "float64" || base == "int" {
		return "1"
	}
	if made, ok := g.of[pkg+"."+base]; ok {
		if id, ok := made.typ.(*ast.Ident); ok && id.Name == "float64" {
			return "1"
		}
	}
	return ""
}

var inBackticks = regexp.MustCompile("`([^`]+)`")

// isFilePath tells a file of the repository from a Go name.
func isFilePath(s string) bool { return strings.Contains(s, "/") || strings.HasSuffix(s, ".md") }

// unresolved tells of everything in backticks that is neither a name nor a file of the repository.
func (g *goNames) unresolved(text string) (faults []string) {
	for i, line := range strings.Split(text, "\n") {
		for _, m := range inBackticks.FindAllStringSubmatch(line, -1) {
			if isFilePath(m[1]) {
				if _, err := os.Stat(filepath.Join(g.root, filepath.FromSlash(m[1]))); err != nil {
					faults = append(faults, fmt.Sprintf("line %d: there is no file %s", i+1, m[1]))
				}
			} else if _, err := g.find(m[1]); err != nil {
				faults = append(faults, fmt.Sprintf("line %d: %v", i+1, err))
			}
		}
	}
	return faults
}

// notationHead is the head of every table.
var notationHead = []string{"Quantity", "Symbol", "Go name", "SI unit", "Positive direction"}

// wrongRows tells what is wrong with the tables of a page of notation, one for each room.
func (g *goNames) wrongRows(text string) (faults []string) {
	room, symbols, rows := "", map[string]string{}, map[string]int{}
	for i, line := range strings.Split(text, "\n") {
		fault := func(format string, args ...any) {
			faults = append(faults, fmt.Sprintf("line %d: ", i+1)+fmt.Sprintf(format, args...))
		}
		if title, ok := strings.CutPrefix(line, "## "); ok {
			room, symbols = title, map[string]string{}
			rows[room] = 0
		}
		if !strings.HasPrefix(line, "|") {
			continue
		}
		cells := strings.Split(strings.Trim(line, "|"), "|")
		for k := range cells {
			cells[k] = strings.TrimSpace(cells[k])
		}
		if len(cells) != len(notationHead) || slices.Contains(cells, "") {
			fault("a row has %d cells, none of them empty: %s", len(notationHead), line)
			continue
		}
		if slices.Equal(cells, notationHead) || strings.Trim(cells[0], "-") == "" {
			continue
		}
		rows[room]++
		quantity, symbol := cells[0], cells[1]
		for one := range strings.SplitSeq(symbol, ", ") {
			if other, taken := symbols[one]; taken {
				fault("%s stands for %q already, and for %q", one, other, quantity)
			}
			symbols[one] = quantity
		}
		names := inBackticks.FindAllStringSubmatch(cells[2], -1)
		if len(names) == 0 {
			fault("%q has no Go name", quantity)
		}
		for _, m := range names {
			one, err := g.find(m[1])
			if err != nil {
				continue // told of by unresolved
			}
			if u := g.unit(m[1], one); u != "" && u != cells[3] {
				fault("%s is in %s, not in %s", m[1], u, cells[3])
			}
		}
	}
	for _, title := range slices.Sorted(maps.Keys(rows)) {
		if rows[title] == 0 {
			faults = append(faults, "no table for "+title)
		}
	}
	return faults
}

// theGoNames reads them for a test.
func theGoNames(t *testing.T) *goNames {
	t.Helper()
	g, err := readGoNames("../..")
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// Every Go name of the tables is there and holds the unit that is said, every cell is filled, and within a room no symbol stands
// for two things.
func TestNotation(t *testing.T) {
	g := theGoNames(t)
	text, err := os.ReadFile("NOTATION.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, fault := range append(g.unresolved(string(text)), g.wrongRows(string(text))...) {
		t.Errorf("NOTATION.md: %s", fault)
	}
	for _, room := range []string{"units", "load", "purchase", "arbor", "purchase/lineset"} {
		if !strings.Contains(string(text), "\n## "+room+"\n") {
			t.Errorf("NOTATION.md: no table for the room %s", room)
		}
	}
}

// What the pages are held against finds what it is there to find.
func TestNotationIsHeldAgainstTheCode(t *testing.T) {
	g := theGoNames(t)
	head := "## load\n| Quantity | Symbol | Go name | SI unit | Positive direction |\n|---|---|---|---|---|\n"
	for _, c := range []struct {
		name, text, want string
	}{
		{"right", head + "| trim | x | `load.Share.Trim` | m | up |\n", ""},
		{"a method and an argument", head + "| factor | n | `load.ImpactFactor` | 1 | more |\n| drop | H | `load.ImpactFactor(drop)` | m | down |\n", ""},
		{"a kernel tells no unit", head + "| level | Y | `beam.Work.level` | N·m³ | down |\n", ""},
		{"a field of what is held", head + "| weight | w | `purchase.Reeved.hand.weight` | N/m | down |\n", ""},
		{"no such field of what is held", head + "| weight | w | `purchase.Reeved.hand.heaviness` | N/m | down |\n", "there is no purchase.Reeved.hand.heaviness"},
		{"no such field", head + "| trim | x | `load.Share.Height` | m | up |\n", "there is no load.Share.Height"},
		{"no such argument", head + "| drop | H | `load.ImpactFactor(fall)` | m | down |\n", "load.ImpactFactor takes no fall"},
		{"no such test", "Checked by `load.TestNothing`.", "there is no load.TestNothing"},
		{"a test of another name", "Checked by `purchase.TestAtwoods`, `purchase.TestWraps`.", "there is no purchase.TestWraps, but purchase.TestVerifyWraps"},
		{"no such file", "In `load/nothing.go`.", "there is no file load/nothing.go"},
		{"another unit", head + "| trim | x | `load.Share.Trim` | ft | up |\n", "load.Share.Trim is in m, not in ft"},
		{"a defined number", head + "| drag | c | `purchase.Drag` | N | more |\n", "purchase.Drag is in 1, not in N"},
		{"a cell too few", head + "| trim | x | `load.Share.Trim` | m |\n", "a row has 5 cells"},
		{"an empty cell", head + "| trim | x | `load.Share.Trim` | | up |\n", "a row has 5 cells"},
		{"no name", head + "| trim | x | the trim | m | up |\n", `"trim" has no Go name`},
		{"a symbol twice", head + "| trim | x | `load.Share.Trim` | m | up |\n| place | x | `load.Line.At` | m | off the arbor |\n", `x stands for "trim" already`},
		{"in two rooms", head + "| trim | x | `load.Share.Trim` | m | up |\n## other\n| place | x | `load.Line.At` | m | off the arbor |\n", ""},
		{"no table", "## load\n", "no table for load"},
	} {
		got := strings.Join(append(g.unresolved(c.text), g.wrongRows(c.text)...), "; ")
		if (c.want == "") != (got == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: reported %q, should be %q", c.name, got, c.want)
		}
	}
}
