package main

import (
	"encoding/json"
	"fmt"
	"go/ast"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// helper is the file that every broken package gets.
const helper = `package %s

import (
	"os"
	"strconv"
)

var mutantChosen = func() int { n, _ := strconv.Atoi(os.Getenv("` + chosen + `")); return n }()

var ` + never + ` bool

func ` + zero + `[T any](T) (z T) { return z }

func ` + none + `(error) error { return nil }
`

// stage builds the tests of a package in which the numbered mutants of functions can be chosen. Those that do not compile
// are named, and left out.
type stage struct {
	binary string
	broken map[int]bool
}

// span says on which lines of a built file a mutant stands.
type span struct{ number, from, to int }

func (w *workbench) build(name string, all []mutant, numbers []int) (stage, error) {
	s := stage{binary: filepath.Join(w.dir, name), broken: map[int]bool{}}
	dir := s.binary + ".src"
	if err := os.Mkdir(dir, 0o700); err != nil {
		return s, err
	}
	complaint := regexp.MustCompile(`(?m)^(?:.*/)?([^/\s:]+\.go):(\d+):\d+: `)
	for range 20 {
		replace := map[string]string{}
		put := func(name, text string) error {
			replace[filepath.Join(w.source.dir, name)] = filepath.Join(dir, name)
			return os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600)
		}
		if err := put("mutant_chosen.go", fmt.Sprintf(helper, w.name)); err != nil {
			return s, err
		}
		spans := map[string][]span{}
		for _, f := range w.files {
			text, at := w.rewrite(f, all, numbers, s.broken)
			spans[f.name] = at
			if err := put(f.name, text); err != nil {
				return s, err
			}
		}
		overlay, err := json.Marshal(map[string]any{"Replace": replace})
		if err != nil {
			return s, err
		}
		list := filepath.Join(dir, "overlay.json")
		if err := os.WriteFile(list, overlay, 0o600); err != nil {
			return s, err
		}
		out, err := w.goTool("test", "-c", "-vet=off", "-gcflags=-e", "-ldflags=-s -w", "-overlay", list, "-o", s.binary, ".")
		if err == nil {
			return s, os.RemoveAll(dir)
		}
		found := false
		for _, c := range complaint.FindAllStringSubmatch(out, -1) {
			line, _ := strconv.Atoi(c[2])
			for _, at := range spans[c[1]] {
				if at.from <= line && line <= at.to {
					found = found || !s.broken[at.number]
					s.broken[at.number] = true
				}
			}
		}
		if !found && len(numbers) == 1 {
			s.broken[numbers[0]] = true // it is the tests that do not compile with it
			return s, nil
		}
		if !found {
			return s, fmt.Errorf("the broken package does not build: %w\n%.4000s", err, out)
		}
	}
	return s, fmt.Errorf("%s: mutants that do not compile keep turning up", w.rel)
}

// rewrite gives a file in which each function begins with a switch to the copies of itself that are the mutants, which follow
// at the end. A mutant outside functions, of which there is one at most, is put in its place.
func (w *workbench) rewrite(f *file, all []mutant, numbers []int, broken map[int]bool) (string, []span) {
	var body, copies strings.Builder
	var spans []span
	done := 0
	keep := func(to int) { body.Write(f.text[done:to]); done = to }
	for _, n := range numbers {
		if m := all[n]; m.file == f && m.within == nil && !broken[n] {
			keep(m.from)
			line := 1 + strings.Count(body.String(), "\n")
			body.WriteString(m.text)
			spans = append(spans, span{n, line, line + strings.Count(m.text, "\n")})
			done = m.to
		}
	}
	for _, d := range f.ast.Decls {
		fd, ok := d.(*ast.FuncDecl)
		if !ok {
			continue
		}
		mine := slices.DeleteFunc(slices.Clone(numbers), func(n int) bool { return all[n].within != fd || broken[n] })
		if len(mine) == 0 {
			continue
		}
		head, call := w.head(f, fd)
		keep(w.offset(fd.Pos()))
		body.WriteString(fmt.Sprintf(head, fd.Name.Name))
		done = w.offset(fd.Body.Lbrace)
		keep(w.offset(fd.Body.Lbrace) + 1)
		fmt.Fprintf(&body, " if mutantChosen >= %d && mutantChosen <= %d { switch mutantChosen {", mine[0]+1, mine[len(mine)-1]+1)
		for _, n := range mine {
			m := all[n]
			name := fmt.Sprintf("mutant%d_%s", n+1, fd.Name.Name)
			if fd.Type.Results == nil {
				fmt.Fprintf(&body, " case %d: %s; return;", n+1, fmt.Sprintf(call, name))
			} else {
				fmt.Fprintf(&body, " case %d: return %s;", n+1, fmt.Sprintf(call, name))
			}
			copied := fmt.Sprintf(head, name) + string(f.text[w.offset(fd.Body.Lbrace):m.from]) + m.text + string(f.text[m.to:w.offset(fd.End())])
			line := strings.Count(copies.String(), "\n")
			spans = append(spans, span{n, line, line + strings.Count(copied, "\n")})
			copies.WriteString(copied + "\n")
		}
		body.WriteString(" } };")
	}
	keep(len(f.text))
	body.WriteString("\n")
	first := 1 + strings.Count(body.String(), "\n")
	for i := range spans {
		if all[spans[i].number].within != nil {
			spans[i].from += first
			spans[i].to += first
		}
	}
	return body.String() + copies.String(), spans
}

// head gives the line that begins a function with every parameter named, and how one copy of it is called; %s stands for the
// name in both.
func (w *workbench) head(f *file, fd *ast.FuncDecl) (head, call string) {
	given := 0
	list := func(fields *ast.FieldList) (params, args string) {
		var ps, as []string
		for _, field := range fields.List {
			names := field.Names
			if len(names) == 0 {
				names = []*ast.Ident{ast.NewIdent("_")}
			}
			for _, id := range names {
				name := id.Name
				if name == "_" {
					given++
					name = fmt.Sprintf("mutantArg%d", given)
				}
				ps = append(ps, name+" "+w.of(f, field.Type))
				if _, isRest := field.Type.(*ast.Ellipsis); isRest {
					name += "..."
				}
				as = append(as, name)
			}
		}
		return strings.Join(ps, ", "), strings.Join(as, ", ")
	}
	head, call = "func ", "%s"
	if fd.Recv != nil {
		recv, name := list(fd.Recv)
		head, call = "func ("+recv+") ", name+".%s"
	}
	head += "%s"
	if tp := fd.Type.TypeParams; tp != nil {
		head += strings.ReplaceAll(w.of(f, tp), "%", "%%")
		var names []string
		for _, field := range tp.List {
			for _, id := range field.Names {
				names = append(names, id.Name)
			}
		}
		call += "[" + strings.Join(names, ", ") + "]"
	}
	params, args := list(fd.Type.Params)
	head += "(" + params + ") "
	if r := fd.Type.Results; r != nil {
		from, to := r.Pos(), r.End()
		if r.Opening == token.NoPos {
			from, to = r.List[0].Pos(), r.List[len(r.List)-1].End()
		}
		head += w.between(f, from, to) + " "
	}
	return head, call + "(" + args + ")"
}
