package main

import (
	"go/ast"
	"go/token"
	"strconv"
)

// mutants lists every change that is tried, in the order of the files and of their text.
func (p *source) mutants() []mutant {
	var out []mutant
	for _, f := range p.files {
		for _, d := range f.ast.Decls {
			b := breaker{source: p, file: f}
			if fd, ok := d.(*ast.FuncDecl); ok {
				if fd.Body == nil {
					continue
				}
				b.within, b.kinds = fd, []*ast.FuncType{fd.Type}
				ast.Walk(&b, fd.Body)
			} else {
				ast.Walk(&b, d)
			}
			out = append(out, b.out...)
		}
	}
	return out
}

// breaker walks one declaration.
type breaker struct {
	*source
	file   *file
	within *ast.FuncDecl
	kinds  []*ast.FuncType // of the functions around, the innermost last
	clause token.Pos       // of the switch around, while its cases' own expressions are walked
	out    []mutant
}

// Visit makes the changes at a node.
func (b *breaker) Visit(n ast.Node) ast.Visitor {
	switch n := n.(type) {
	case *ast.ImportSpec, *ast.Field, *ast.LabeledStmt:
		if l, ok := n.(*ast.LabeledStmt); ok {
			ast.Walk(b, l.Stmt)
		}
		return nil
	case *ast.FuncLit:
		inner := *b
		inner.out, inner.kinds = nil, append(b.kinds[:len(b.kinds):len(b.kinds)], n.Type)
		ast.Walk(&inner, n.Body)
		b.out = append(b.out, inner.out...)
		return nil
	case *ast.SwitchStmt:
		b.clauses(n)
		return nil
	case *ast.BinaryExpr:
		for _, op := range swaps[n.Op] {
			x, y := b.of(b.file, n.X), b.of(b.file, n.Y)
			// Operators bind differently, so the whole is put in brackets.
			b.add(n.OpPos, n.Pos(), n.End(), "("+x+" "+op.String()+" "+y+")", b.of(b.file, n), x+" "+op.String()+" "+y)
		}
	case *ast.UnaryExpr:
		if n.Op == token.SUB || n.Op == token.NOT || n.Op == token.XOR {
			b.replace(n, b.of(b.file, n.X))
		}
	case *ast.IncDecStmt:
		b.swapAt(n.TokPos, n.Tok, n)
	case *ast.AssignStmt:
		b.swapAt(n.TokPos, n.Tok, n)
		if n.Tok != token.DEFINE {
			b.leaveOut(n)
		}
	case *ast.ExprStmt:
		if _, isCall := n.X.(*ast.CallExpr); isCall {
			b.leaveOut(n)
		}
	case *ast.BasicLit:
		b.literal(n)
	case *ast.IfStmt:
		cond := b.of(b.file, n.Cond)
		b.add(n.Cond.Pos(), n.Cond.Pos(), n.Cond.End(), "("+cond+") || true", "if "+cond, "if true")
		b.add(n.Cond.Pos(), n.Cond.Pos(), n.Cond.End(), "("+cond+") && false", "if "+cond, "if false")
	case *ast.ReturnStmt:
		b.results(n)
	case *ast.CallExpr:
		b.extreme(n)
	}
	return b
}

// clauses walks a switch. What stands between case and colon belongs to no block of a coverage profile: whoever gets to the
// switch may meet it.
func (b *breaker) clauses(n *ast.SwitchStmt) {
	if n.Init != nil {
		ast.Walk(b, n.Init)
	}
	if n.Tag != nil {
		ast.Walk(b, n.Tag)
	}
	for _, s := range n.Body.List {
		c := s.(*ast.CaseClause)
		outer := b.clause
		if !outer.IsValid() {
			b.clause = n.Pos()
		}
		for _, e := range c.List {
			ast.Walk(b, e)
		}
		b.clause = outer
		for _, in := range c.Body {
			ast.Walk(b, in)
		}
	}
}

// add notes a change of the bytes between two places. What it reads like may be shorter than what is compiled.
func (b *breaker) add(at, from, to token.Pos, text, old, shown string) {
	p := b.fset.Position(at)
	reach := p
	if b.clause.IsValid() {
		reach = b.fset.Position(b.clause)
	}
	b.out = append(b.out, mutant{
		file: b.file, within: b.within, at: p, reach: reach, from: b.offset(from), to: b.offset(to), text: text,
		change: short(old) + " → " + short(shown), line: b.lineAt(b.file, at), dir: b.rel,
	})
}

func (b *breaker) replace(n ast.Node, text string) {
	b.add(n.Pos(), n.Pos(), n.End(), text, b.of(b.file, n), text)
}

// swapAt changes the operator of a statement.
func (b *breaker) swapAt(at token.Pos, old token.Token, n ast.Node) {
	for _, op := range swaps[old] {
		end := at + token.Pos(len(old.String()))
		shown := b.between(b.file, n.Pos(), at) + op.String() + b.between(b.file, end, n.End())
		b.add(at, at, end, op.String(), b.of(b.file, n), shown)
	}
}

// leaveOut drops a statement, and lets the compiler go on seeing what it uses.
func (b *breaker) leaveOut(n ast.Node) {
	if b.within == nil {
		return
	}
	b.add(n.Pos(), n.Pos(), n.End(), "if "+never+" { "+b.of(b.file, n)+" }", b.of(b.file, n), "left out")
}

func (b *breaker) literal(n *ast.BasicLit) {
	switch n.Kind {
	case token.INT:
		v, err := strconv.ParseInt(n.Value, 0, 64)
		if err != nil {
			return
		}
		b.replace(n, strconv.FormatInt(v+1, 10))
		if v != 0 {
			b.replace(n, "0")
		}
	case token.FLOAT:
		v, err := strconv.ParseFloat(n.Value, 64)
		if err != nil {
			return
		}
		b.replace(n, "("+n.Value+" + 1)")
		if v != 0 {
			b.replace(n, "0.0")
		}
	}
}

// results replaces what a function returns: an error by none, anything else by its zero value.
func (b *breaker) results(n *ast.ReturnStmt) {
	kind := b.kinds[len(b.kinds)-1]
	if kind.Results == nil || kind.Results.NumFields() != len(n.Results) {
		return
	}
	var types []ast.Expr
	for _, field := range kind.Results.List {
		for range max(1, len(field.Names)) {
			types = append(types, field.Type)
		}
	}
	for i, result := range n.Results {
		text := b.of(b.file, result)
		t, isName := types[i].(*ast.Ident)
		switch x := result.(type) {
		case *ast.BasicLit:
			continue // it is changed as a literal
		case *ast.Ident:
			if x.Name == "true" || x.Name == "false" {
				b.replace(result, map[string]string{"true": "false", "false": "true"}[x.Name])
				continue
			}
			if x.Name == "nil" {
				continue
			}
		case *ast.CompositeLit:
			if len(x.Elts) == 0 {
				continue // it is zero
			}
		}
		switch {
		case isName && t.Name == "error":
			b.add(result.Pos(), result.Pos(), result.End(), none+"("+text+")", "return "+text, "return nil")
		case isName && t.Name == "bool":
			b.add(result.Pos(), result.Pos(), result.End(), "!("+text+")", "return "+text, "return !("+text+")")
		default:
			b.add(result.Pos(), result.Pos(), result.End(), zero+"("+text+")", "return "+text, "return its zero value")
		}
	}
}

// extreme takes the smallest for the largest.
func (b *breaker) extreme(n *ast.CallExpr) {
	other := map[string]string{"min": "max", "max": "min", "Min": "Max", "Max": "Min", "MinFunc": "MaxFunc", "MaxFunc": "MinFunc"}
	var id *ast.Ident
	switch fun := n.Fun.(type) {
	case *ast.Ident:
		id = fun
	case *ast.SelectorExpr:
		if of, ok := fun.X.(*ast.Ident); ok && (of.Name == "math" || of.Name == "slices") {
			id = fun.Sel
		}
	}
	if id == nil || other[id.Name] == "" {
		return
	}
	b.add(id.Pos(), id.Pos(), id.End(), other[id.Name], b.of(b.file, n), b.between(b.file, n.Pos(), id.Pos())+other[id.Name]+b.between(b.file, id.End(), n.End()))
}
