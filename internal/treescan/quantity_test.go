package treescan

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"testing"
)

// scanQuantities reports what the compiler lets pass between quantities and
// physics does not:
//
//   - Q*Q, unless a factor is a plain number: 24*units.Foot and
//     units.Length(n)*units.Foot are, l*units.Foot with a Length l is not;
//   - Q/Q, unless the divisor is a plain number or the quotient is made a
//     float64 at once (units.Ratio says it better);
//   - Q1(q2), also by way of float64;
//   - a number that is not zero in the place of a quantity, other than as a
//     factor or divisor: which unit would it be in?
//
// Package units is exempt, because the named products are made there. Tests are
// exempt, because an oracle counts in plain numbers on purpose.
func scanQuantities(t *tree) []finding {
	var out []finding
	for _, p := range t.packages {
		if p.rel == "units" || p.types == nil {
			continue
		}
		for _, f := range p.files {
			w := &quantityWalk{info: p.info, file: f}
			w.visit(f.ast)
			out = append(out, w.found...)
		}
	}
	return out
}

// quantityWalk goes through a file and knows what is above each node.
type quantityWalk struct {
	info  *types.Info
	file  *file
	above []ast.Node
	found []finding
}

func (w *quantityWalk) visit(root ast.Node) {
	ast.Inspect(root, func(n ast.Node) bool {
		if n == nil {
			w.above = w.above[:len(w.above)-1]
			return true
		}
		switch n := n.(type) {
		case *ast.BinaryExpr:
			w.product(n, n.Op, n.X, n.Y)
		case *ast.AssignStmt:
			if len(n.Lhs) == 1 {
				w.product(n, n.Tok, n.Lhs[0], n.Rhs[0])
			}
		case *ast.CallExpr:
			w.conversion(n)
		}
		if e, ok := n.(ast.Expr); ok {
			w.literal(e)
		}
		w.above = append(w.above, n)
		return true
	})
}

func (w *quantityWalk) report(n ast.Node, format string, args ...any) {
	w.found = append(w.found, w.file.at(n.Pos(), format, args...))
}

// product looks at a product or a quotient.
func (w *quantityWalk) product(n ast.Node, op token.Token, x, y ast.Expr) {
	q := w.info.TypeOf(x)
	if w.plain(x) {
		q = w.info.TypeOf(y)
	}
	if !isQuantity(q) {
		return
	}
	switch op {
	case token.MUL, token.MUL_ASSIGN:
		if !w.plain(x) && !w.plain(y) {
			w.report(n, "product of two quantities (%s): use the method of units that names what comes out", short(q))
		}
	case token.QUO, token.QUO_ASSIGN:
		if !w.plain(y) && !w.toFloat() {
			w.report(n, "quotient of two quantities (%s): use units.Ratio, or In for a count of units", short(q))
		}
	}
}

// toFloat reports whether the expression is made a plain number at once.
func (w *quantityWalk) toFloat() bool {
	for i := len(w.above) - 1; i >= 0; i-- {
		switch n := w.above[i].(type) {
		case *ast.ParenExpr:
			continue
		case *ast.CallExpr:
			tv := w.info.Types[n.Fun]
			b, ok := types.Unalias(orInvalid(tv.Type)).(*types.Basic)
			return tv.IsType() && ok && b.Info()&types.IsNumeric != 0
		}
		return false
	}
	return false
}

// conversion looks for one quantity made another.
func (w *quantityWalk) conversion(call *ast.CallExpr) {
	to, arg, ok := w.converts(call)
	if !ok || !isQuantity(to) {
		return
	}
	from := w.info.TypeOf(arg)
	if inner, ok := ast.Unparen(arg).(*ast.CallExpr); ok {
		// Mass(float64(force)) is the same thing by a detour.
		if _, innerArg, ok := w.converts(inner); ok {
			from = w.info.TypeOf(innerArg)
		}
	}
	if isQuantity(from) && !types.Identical(from, to) {
		w.report(call, "conversion of %s to %s: use the method of units that names the step", short(from), short(to))
	}
}

// converts takes a conversion apart.
func (w *quantityWalk) converts(call *ast.CallExpr) (to types.Type, arg ast.Expr, ok bool) {
	tv := w.info.Types[call.Fun]
	if !tv.IsType() || len(call.Args) != 1 {
		return nil, nil, false
	}
	return tv.Type, call.Args[0], true
}

// literal looks for a number in the place of a quantity.
func (w *quantityWalk) literal(e ast.Expr) {
	tv := w.info.Types[e]
	if tv.Value == nil || !isQuantity(tv.Type) || !w.plain(e) {
		return
	}
	if _, generic := types.Unalias(tv.Type).(*types.TypeParam); generic {
		return // what is said of every quantity at once cannot be said in a unit
	}
	if v := constant.ToFloat(tv.Value); v.Kind() != constant.Float || constant.Sign(v) == 0 {
		return
	}
	if len(w.above) > 0 {
		switch n := w.above[len(w.above)-1].(type) {
		case *ast.BinaryExpr:
			if n.Op == token.MUL || n.Op == token.QUO || w.plain(n) {
				return
			}
		case *ast.AssignStmt:
			if n.Tok == token.MUL_ASSIGN || n.Tok == token.QUO_ASSIGN {
				return
			}
		case ast.Expr:
			if w.plain(n) { // it is looked at whole
				return
			}
		}
	}
	w.report(e, "the bare number %s as a %s: say in which unit, as in 24*units.Foot", tv.Value, short(tv.Type))
}

// plain reports whether an expression is a number without a unit: made of
// literals and untyped constants, or a conversion of a number to a quantity.
func (w *quantityWalk) plain(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return true
	case *ast.ParenExpr:
		return w.plain(e.X)
	case *ast.UnaryExpr:
		return w.plain(e.X)
	case *ast.BinaryExpr:
		return w.plain(e.X) && w.plain(e.Y)
	case *ast.Ident:
		return untyped(w.info.Uses[e])
	case *ast.SelectorExpr:
		return untyped(w.info.Uses[e.Sel])
	case *ast.CallExpr:
		to, arg, ok := w.converts(e)
		if !ok || !isQuantity(to) {
			return false
		}
		if w.plain(arg) {
			return true
		}
		b, ok := types.Unalias(orInvalid(w.info.TypeOf(arg))).(*types.Basic)
		return ok && b.Info()&types.IsNumeric != 0
	}
	return false
}

// untyped reports whether an object is an untyped numeric constant.
func untyped(obj types.Object) bool {
	c, ok := obj.(*types.Const)
	if !ok {
		return false
	}
	b, ok := c.Type().(*types.Basic)
	return ok && b.Info()&types.IsUntyped != 0 && b.Info()&types.IsNumeric != 0
}

// isQuantity reports whether a type is a quantity of units, or a type parameter
// that stands for one.
func isQuantity(t types.Type) bool {
	switch t := types.Unalias(orInvalid(t)).(type) {
	case *types.Named:
		rel, _ := inModule(pathOf(t.Obj()))
		b, ok := t.Underlying().(*types.Basic)
		return rel == "units" && ok && b.Kind() == types.Float64
	case *types.TypeParam:
		return constrainsQuantity(t.Constraint())
	}
	return false
}

func constrainsQuantity(t types.Type) bool {
	switch t := t.(type) {
	case *types.Interface:
		for e := range t.EmbeddedTypes() {
			if constrainsQuantity(e) {
				return true
			}
		}
	case *types.Union:
		for term := range t.Terms() {
			if isQuantity(term.Type()) {
				return true
			}
		}
	case *types.Named:
		if _, ok := t.Underlying().(*types.Interface); ok {
			return constrainsQuantity(t.Underlying())
		}
		return isQuantity(t)
	}
	return false
}

func pathOf(obj types.Object) string {
	if obj.Pkg() == nil {
		return ""
	}
	return obj.Pkg().Path()
}

// orInvalid stands in where the checker has no type, as in code that does not compile.
func orInvalid(t types.Type) types.Type {
	if t == nil {
		return types.Typ[types.Invalid]
	}
	return t
}

func short(t types.Type) string {
	return types.TypeString(t, func(p *types.Package) string { return p.Name() })
}

func TestScanQuantities(t *testing.T) {
	in := func(body string) map[string]string {
		return map[string]string{"load/a.go": `package load

import "example.com/steelyard/units"

const half = 0.5
const typed units.Length = 3 * units.Foot

type item struct{ at units.Length }

func take(units.Length) {}

func f(l, k units.Length, m units.Mass, n int, x float64) (out units.Length) {
	_, _, _, _, _, _ = half, typed, item{}, m, n, x
	_, _ = l, k
	take(0)
` + body + `
	return 0
}
`}
	}
	runSnippets(t, scanQuantities, []snippet{
		{"factors", "a number times a unit is how a quantity is written", in(`
	out = 24*units.Foot + 6*3*units.Metre
	out = 2 * l
	out = l * 2
	out = l * half
	out = -2 * (half + 1) * l
	out = units.Length(n) * units.Foot
	out = units.Length(x) * l
	out *= 2
	out /= half
	out = l / 2
	out = l / units.Length(n)
	out = l + k - max(l, k)
`)},
		{"products", "a length times a length is no length", in(`
` + bad + `out = l * units.Foot
` + bad + `out = l * k
` + bad + `out = (l) * (-k)
` + bad + `out = typed * l
` + bad + `out = units.Foot * units.Foot
` + bad + `out = 2 * l * k
` + bad + `out *= k
` + bad + `out = units.Length(l) * k
`)},
		{"quotients", "a ratio has no unit", in(`
	_ = units.Ratio(l, k)
	_ = float64(l / k)
	_ = float64((l / k))
	_ = int(l / units.Foot)
` + bad + `_ = l / k
` + bad + `_ = l / units.Foot
` + bad + `_ = 1 / l
` + bad + `out /= k
` + bad + `_ = float64(2 + l/k)
`)},
		{"conversions", "a force is not a mass", in(`
	_ = units.Length(x)
	_ = units.Length(l)
	_ = float64(l)
` + bad + `_ = units.Length(m)
` + bad + `_ = units.Mass(float64(l))
` + bad + `_ = units.Mass((float64)(l)) * units.Pound
`)},
		{"literals", "a bare 3 could be feet or metres", in(`
	out = 0
	_ = l > 0
	_ = item{at: 3 * units.Foot}
` + bad + `out = 3
` + bad + `out = half
` + bad + `out = l + 1
` + bad + `_ = l > 1e-9
` + bad + `take(3)
` + bad + `take(-(2 + half))
` + bad + `_ = item{at: 3}
` + bad + `_ = []units.Length{units.Foot, 3}
` + bad + `take(units.Length(3))
` + bad + `const gap units.Length = 0.3
` + bad + `return 4
`)},
		{"generic", "a type parameter may stand for a quantity", map[string]string{"internal/check/a.go": `package check

import "example.com/steelyard/units"

const limit = 1e12

func Within[Q units.Quantity](q Q) bool { return q < limit && q > Q(-limit) }

func Square[Q units.Quantity](q Q) Q {
` + bad + `return q * q
}

func Same[Q, P units.Quantity](q Q) P {
` + bad + `return P(q)
}
`}},
		{"exempt", "units makes the products, and a test counts in plain numbers", map[string]string{
			"units/b.go":     "package units\n\nfunc Square(l Length) Length { return l * l }\n",
			"load/a.go":      "package load\n",
			"load/a_test.go": "package load\n\nimport \"example.com/steelyard/units\"\n\nvar _ = units.Foot * units.Foot\n",
		}},
	})
}
