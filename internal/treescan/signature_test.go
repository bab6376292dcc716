package treescan

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"testing"
)

// plainNumbers lists what is a number without a unit by its nature, each with
// the reason: a field "load.Drape.Fullness", a parameter "purchase.Ratio.Lift(c)",
// a result "purchase.Ratio.Value()", a type "arbor.Share".
var plainNumbers = map[string]string{
	"arbor.Stack.Referred(ratio)":        "batten travel over arbor travel",
	"arbor.Option.Ratio":                 "batten travel over arbor travel",
	"arbor.Ride.Ratio":                   "batten travel over arbor travel",
	"arbor.Venue.Compare(ratios)":        "batten travel over arbor travel",
	"arbor.Job.Ratio":                    "batten travel over arbor travel",
	"load.Cable.Slack":                   "extra length of cable over the run",
	"load.Drape.Fullness":                "extra width of cloth over finished width",
	"load.Gather.Lean":                   "extra mass per length at the edge over its mean",
	"purchase.FeltMass.Speed":            "speed for each unit of the batten's",
	"purchase.Phase.Lines":               "tension over what it is at rest",
	"purchase.Jolt()":                    "greatest pull over what hangs on the lines at rest",
	"lineset.Rigged.Jolt()":              "greatest pull over what hangs on the lines at rest",
	"purchase.Runaway.Error":             "error of a time over it",
	"load.ImpactFactor()":                "greatest load over its weight at rest",
	"load.Item.Taper":                    "extra mass per length at To over its mean",
	"load.Use.Line":                      "demand over limit",
	"load.Use.Pipe":                      "demand over limit",
	"load.Tube.Thinned(share)":           "wall reckoned with over wall",
	"purchase.BendingKeeps()":            "share of strength",
	"purchase.BendingKeeps(sheaveRatio)": "sheave diameter over rope diameter",
	"purchase.Drag":                      "difference of two tensions over their resultant",
	"purchase.Drag.Factor()":             "tension on one side of a sheave over the other's",
	"purchase.DragPerHalfTurn(factor)":   "tension on one side of a sheave over the other's",
	"purchase.RailRope.Speed":            "rope's speed over the batten's",
	"purchase.GeometryLimits.HandRatio":  "sheave diameter over rope diameter",
	"purchase.GeometryLimits.LiftRatio":  "sheave diameter over rope diameter",
	"purchase.Kind.Ratio()":              "batten travel over arbor travel",
	"purchase.LeadUse.Use":               "demand over limit",
	"purchase.Reeved.Ratio()":            "batten travel over arbor travel, from the paths",
	"purchase.Reeved.HandRatio()":        "hand line travel over batten travel",
	"purchase.RopeCheck.Factor":          "strength over pull",
	"purchase.RopeCheck.Use":             "demand over limit",
	"purchase.RopeCheck.Wanted":          "strength over pull that is wanted",
	"purchase.RopeUse.Bending":           "share of strength kept",
	"purchase.RopeUse.Check(wanted)":     "strength over pull that is wanted",
	"purchase.RopeUse.Limit(wanted)":     "strength over pull that is wanted",
	"purchase.RopeUse.Termination":       "share of strength kept",
	"purchase.SheaveRatio()":             "sheave diameter over rope diameter",
	"purchase.SheaveUse.Limit":           "sheave diameter over rope diameter",
	"purchase.SheaveUse.Ratio":           "sheave diameter over rope diameter",
	"purchase.SheaveUse.Use":             "demand over limit",
	"purchase.Tackle.PullByRule(share)":  "extra pull per sheave over the load",
	"purchase.TurnsWanted()":             "a count of turns, with parts of one",
	"purchase.TurnsWanted(friction)":     "a coefficient of friction",
	"purchase.Wraps.Friction":            "a coefficient of friction",
	"purchase.Wraps.Turns":               "a count of turns, with parts of one",
	"lineset.Balance.Ratio":              "batten travel over arbor travel",
	"lineset.Counterweight.Ratio":        "batten travel over arbor travel",
	"lineset.Travel.Ratio":               "batten travel over arbor travel",
	"lineset.Rigged.Ratio()":             "batten travel over arbor travel",
	"lineset.Check.Ratio":                "demand over limit",
	"lineset.Ropes.HandRatio":            "hand line travel over batten travel",
	"lineset.HandTerms.Ratio":            "batten travel over arbor travel",
	"lineset.HandTerms.Parts":            "a count of parts",
	"lineset.Tolerance.Share":            "part of the mass as written",
	"lineset.StopTerms.Factor":           "tension past a sheave over that up to it",
	"purchase.PartGeometry.Speed":        "speed of the rope over the batten's",
	"purchase.RopeGeometry.AtBatten":     "parts at the batten, a count on standard paths",
	"purchase.Turn.SheaveRatio":          "sheave diameter over rope diameter",
	"purchase.Turn.Speed":                "speed of the sheave's rim over the batten's",
}

// scanSignatures reports bare floats in what the clients of units export. A
// caller must not have to guess whether a 12 is pounds, feet or newtons.
func scanSignatures(t *tree) []finding { return scanSignaturesBut(t, plainNumbers) }

func scanSignaturesBut(t *tree, excepted map[string]string) []finding {
	var out []finding
	used := map[string]bool{}
	for _, p := range t.packages {
		if !isPublic(p.rel) || p.rel == "units" || p.types == nil {
			continue
		}
		name := p.types.Name()
		report := func(pos token.Pos, symbol string) {
			if used[symbol] = true; excepted[symbol] == "" {
				f := p.fileOf(pos)
				out = append(out, f.at(pos, "%s is a bare float: give it a quantity of units, or a line in plainNumbers", symbol))
			}
		}
		for _, id := range p.types.Scope().Names() {
			obj := p.types.Scope().Lookup(id)
			if !obj.Exported() {
				continue
			}
			switch obj := obj.(type) {
			case *types.TypeName:
				typeFloats(name+"."+id, obj, report)
			case *types.Func:
				signatureFloats(name+"."+id, obj.Signature(), report)
			default:
				// An untyped constant is a number of no unit until it is used.
				if b, ok := obj.Type().(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
					continue
				}
				if holdsFloat(obj.Type()) {
					report(obj.Pos(), name+"."+id)
				}
			}
		}
	}
	for symbol, reason := range excepted {
		if !used[symbol] || reason == "" {
			out = append(out, finding{"internal/treescan/signature_test.go", 1, "plainNumbers: " + symbol + " is no bare float now, or has no reason"})
		}
	}
	slices.SortFunc(out, byPlace)
	return out
}

// typeFloats looks through an exported type: itself, its fields, its methods.
func typeFloats(name string, obj *types.TypeName, report func(token.Pos, string)) {
	switch u := obj.Type().Underlying().(type) {
	case *types.Struct:
		for f := range u.Fields() {
			if f.Exported() && holdsFloat(f.Type()) {
				report(f.Pos(), name+"."+f.Name())
			}
		}
	case *types.Interface:
		for m := range u.ExplicitMethods() {
			signatureFloats(name+"."+m.Name(), m.Signature(), report)
		}
	default:
		if holdsFloat(u) {
			report(obj.Pos(), name)
		}
	}
	named, ok := obj.Type().(*types.Named)
	if !ok {
		return
	}
	for m := range named.Methods() {
		if m.Exported() {
			signatureFloats(name+"."+m.Name(), m.Signature(), report)
		}
	}
}

// signatureFloats looks through parameters and results.
func signatureFloats(name string, s *types.Signature, report func(token.Pos, string)) {
	for v := range s.Params().Variables() {
		if holdsFloat(v.Type()) {
			report(v.Pos(), name+"("+v.Name()+")")
		}
	}
	for v := range s.Results().Variables() {
		if holdsFloat(v.Type()) {
			report(v.Pos(), name+"()")
		}
	}
}

// holdsFloat reports whether a type is a bare float or complex number, or holds
// one in a type without a name: a defined type is looked at where it is defined.
func holdsFloat(t types.Type) bool {
	switch t := t.(type) {
	case *types.Basic:
		return t.Info()&(types.IsFloat|types.IsComplex) != 0
	case *types.Alias:
		return holdsFloat(types.Unalias(t))
	case *types.Named:
		for a := range t.TypeArgs().Types() {
			if holdsFloat(a) {
				return true
			}
		}
		return false
	case *types.Pointer:
		return holdsFloat(t.Elem())
	case *types.Slice:
		return holdsFloat(t.Elem())
	case *types.Array:
		return holdsFloat(t.Elem())
	case *types.Chan:
		return holdsFloat(t.Elem())
	case *types.Map:
		return holdsFloat(t.Key()) || holdsFloat(t.Elem())
	case *types.Signature:
		found := false
		signatureFloats("", t, func(token.Pos, string) { found = true })
		return found
	case *types.Struct:
		for field := range t.Fields() {
			if holdsFloat(field.Type()) {
				return true
			}
		}
	}
	return false
}

// fileOf finds the file that a position lies in.
func (p *pkg) fileOf(pos token.Pos) *file {
	for _, f := range slices.Concat(p.files, p.tests) {
		if f.ast.FileStart <= pos && pos <= f.ast.FileEnd {
			return f
		}
	}
	return &file{name: p.rel, ast: &ast.File{}}
}

func byPlace(a, b finding) int {
	if a.file != b.file {
		return slices.Compare([]string{a.file}, []string{b.file})
	}
	return a.line - b.line
}

func TestScanSignatures(t *testing.T) {
	excepted := map[string]string{
		"load.Drape.Fullness":   "a ratio of widths",
		"load.Turns":            "a count of turns",
		"load.Drape.Spread(by)": "a factor",
		"load.Drape.Share()":    "a ratio of loads",
	}
	scan := func(t *tree) []finding {
		var out []finding
		for _, f := range scanSignaturesBut(t, excepted) {
			if f.file != "internal/treescan/signature_test.go" {
				out = append(out, f)
			}
		}
		return out
	}
	const head = "package load\n\nimport (\n\t\"iter\"\n\n\t\"example.com/steelyard/units\"\n)\n\nvar _ iter.Seq[units.Mass]\n\n"
	runSnippets(t, scan, []snippet{
		{"fields", "a number in a description has a unit", map[string]string{"load/a.go": head + `
type Drape struct {
	Width    units.Length
	Fullness float64
	Pieces   int
	hidden   float64
` + bad + `Height float64
` + bad + `Heights []float64
` + bad + `ByName map[string]float32
` + bad + `Each func(x float64) int
` + bad + `Pair struct{ A, B float64 }
` + bad + `Wave complex128
}

var _ = Drape{}.hidden

type inner struct{ Height float64 }

var _ inner
`}},
		{"signatures", "a number in a question or an answer has a unit", map[string]string{"load/a.go": head + `
type Drape struct{}

func (Drape) Spread(by float64) {}
func (Drape) Share() float64    { return 0 }
func (*Drape) mass() float64    { return 0 }
func helper(x float64)          {}

` + bad + `func (Drape) Height() float64 { return 0 }
` + bad + `func (d *Drape) Lift(by float64) {}
` + bad + `func Each() iter.Seq2[int, float64] { return nil }
` + bad + `func Rest(all ...float64) {}

var _, _ = (*Drape).mass, helper
`}},
		{"types", "a type of our own on a float hides a unit from units", map[string]string{"load/a.go": head + `
type Turns float64

` + bad + `type Height float64
` + bad + `type Curve []float64

type Shape interface {
` + bad + `Area() float64
}

` + bad + `const Limit float64 = 3

const Half = 0.5
`}},
		{"out of reach", "kernels count in plain SI, units defines the quantities, programs are not imported", map[string]string{
			"internal/beam/a.go":  "package beam\n\nfunc Moment(f, arm float64) float64 { return f * arm }\n",
			"units/b.go":          "package units\n\nfunc (l Length) In(unit Length) float64 { return float64(l) / float64(unit) }\n",
			"examples/house/a.go": "package main\n\ntype Row struct{ Width float64 }\n\nfunc main() {}\n",
		}},
	})
	stale := scanSignaturesBut(newTree(map[string]string{"units/quantity.go": snippetUnits}, stubs{}), excepted)
	if len(stale) != len(excepted) {
		t.Errorf("%d stale exceptions reported of %d", len(stale), len(excepted))
	}
}
