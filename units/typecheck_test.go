package units_test

import (
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"runtime"
	"testing"
)

// What the compiler stops, and what it lets through. The second kind is as
// important: the package comment warns of it, and a test over the module looks
// for it.
func TestTypeChecks(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("there is no go command to find the source with")
	}
	fset := token.NewFileSet()
	imports := importer.ForCompiler(fset, "source", nil)
	for _, row := range []struct {
		name     string
		src      string
		compiles bool
		reason   string
	}{
		{name: "force plus length", src: "_ = f + l", reason: "different dimensions"},
		{name: "mass plus force", src: "_ = m + f", reason: "a pound is not a pound-force"},
		{name: "force minus mass", src: "_ = f - m", reason: "a pound is not a pound-force"},
		{name: "force times length", src: "_ = f * l", reason: "Moment is the way"},
		{name: "mass times acceleration", src: "_ = m * g", reason: "Weight is the way"},
		{name: "mass per length times length", src: "_ = w * l", reason: "Over is the way"},
		{name: "force less than mass", src: "_ = f < m", reason: "cannot be compared"},
		{name: "length equals area", src: "_ = l == l.By(l)", reason: "cannot be compared"},
		{name: "mass given as force", src: "f = m", reason: "assignment"},
		{name: "moment of a mass", src: "_ = m.Moment(l)", reason: "a mass has no moment"},
		{name: "length given to Weight", src: "_ = m.Weight(l)", reason: "argument"},
		{name: "plain number variable as length", src: "l = n", reason: "n has no unit"},
		{name: "plain number variable times a unit", src: "l = n * units.Foot", reason: "n is a float64: write Foot.Scale(n)"},
		{name: "length in pounds", src: "_ = l.In(units.Pound)", reason: "no such reading"},
		{name: "ratio of unlike", src: "_ = units.Ratio(f, m)", reason: "no pure number"},
		{name: "sum of unlike", src: "_ = units.Sum(f, units.Force(m.Weight(g)), l)", reason: "no sum"},
		{name: "largest of unlike", src: "_ = max(f, m)", reason: "cannot be compared"},
		{name: "text as a strange type", src: `type money float64; _, _ = units.Parse[money]("5")`, reason: "the set is closed"},
		{name: "text as a type made from a quantity", src: `type height units.Length; _, _ = units.Parse[height]("5")`, reason: "the set is closed"},
		{name: "format a plain number", src: "_ = units.US.Format(n)", reason: "no unit"},
		{name: "text as a quantity", src: `l = "5 m"`, reason: "Parse is the way"},

		{name: "moment plus energy", src: "_ = f.Moment(l) + f.Work(l)", reason: "the same dimension, and not the same thing"},
		{name: "load along a batten as stiffness", src: "k = f.Per(l)", reason: "the same dimension, and not the same thing"},
		{name: "second moment as inertia", src: "_ = i + units.InchToTheFourth", reason: "of a section, and of a thing that turns"},
		{name: "Go duration as time", src: "t = 5 * time.Second", reason: "nanoseconds are not seconds: TimeSpanOf is the way"},
		{name: "time as Go duration", src: "time.Sleep(t)", reason: "Duration is the way, and can fail"},
		{name: "length over time", src: "_ = l / t", reason: "Per is the way"},
		{name: "force times speed", src: "_ = f * v", reason: "Power is the way"},
		{name: "energy over time", src: "_ = e / t", reason: "Per is the way"},
		{name: "work of a mass", src: "_ = m.Work(l)", reason: "its weight does work"},
		{name: "angle as a plain number", src: "_ = math.Sin(a)", reason: "In(Radian) says which"},
		{name: "tolerance of another quantity", src: "_ = l.Within(l, f)", reason: "a millimetre is no newton"},
		{name: "compare with another quantity", src: "_ = l.Within(m, l)", reason: "no distance between them"},
		{name: "unit of a plain number", src: `_, _ = units.Unit[float64]("m")`, reason: "the set is closed"},
		{name: "comparer of unlike", src: "_ = units.Near(l)(m, m)", reason: "a tolerance is of one quantity"},
		{name: "stress times area", src: "_ = s * l.By(l)", reason: "Over is the way"},

		{name: "number times a unit", src: "l = 24*units.Foot + 6*units.Inch", compiles: true, reason: "the usual way"},
		{name: "sums, multiples, halves, comparisons", src: "_ = f + f; _ = 2*f; _ = f/2; _ = f < f; _ = min(f, f); _ = -f", compiles: true, reason: "sound"},
		{name: "named products", src: "_ = m.Weight(g).Moment(l); _ = units.Ratio(f, f)", compiles: true, reason: "sound"},
		{name: "any quantity is a value", src: "for _, v := range []units.Value{l, m, f, g, w} { _ = units.US.Format(v) }", compiles: true, reason: "sound"},
		{name: "generic code over quantities", src: "_ = show[units.Mass]", compiles: true, reason: "a Quantity is a Value"},

		{name: "the motion of a set", src: "_ = l.Per(t).Per(t).Over(t).Over(t); _ = l.Time(v); _ = m.Force(g); _ = f.Acceleration(m)", compiles: true, reason: "sound"},
		{name: "work and power", src: "_ = f.Work(l).Per(t).Over(t) + e; _ = f.Power(v)", compiles: true, reason: "sound"},
		{name: "stretch and stress", src: "_ = f.Stiffness(l).Force(l) + k.Force(k.Stretch(f)); _ = s.Over(l.By(l)).Stress(l.By(l))", compiles: true, reason: "sound"},
		{name: "what turns", src: "_ = m.Inertia(l) + i; _ = i.Mass(l); _ = a.Arc(l)", compiles: true, reason: "sound"},
		{name: "tolerances", src: "_ = l.Within(l, units.Millimetre); _ = units.Near(units.Millimetre)(l, l)", compiles: true, reason: "sound"},
		{name: "Go durations", src: "t = units.TimeSpanOf(5 * time.Second); _, _ = t.Duration()", compiles: true, reason: "the two ways across"},

		{name: "hole: weight for a net force", src: "_ = m.Weight(g) + m.Force(g)", compiles: true, reason: "both are forces: the name says which is meant"},
		{name: "hole: Go duration converted", src: "_ = units.TimeSpan(5 * time.Second)", compiles: true, reason: "five thousand million seconds"},
		{name: "hole: force squared", src: "_ = f * f", compiles: true, reason: "Go lets a defined float multiply itself"},
		{name: "hole: force over force", src: "_ = f / f", compiles: true, reason: "the result is still called a Force"},
		{name: "hole: mass converted to force", src: "_ = units.Force(m)", compiles: true, reason: "kilograms become newtons"},
		{name: "hole: bare number", src: "l = 3", compiles: true, reason: "an untyped constant takes any type"},
		{name: "hole: bare number added", src: "_ = l + 3", compiles: true, reason: "an untyped constant takes any type"},
		{name: "hole: length times a unit", src: "_ = l * units.Foot", compiles: true, reason: "square metres called a Length"},
	} {
		t.Run(row.name, func(t *testing.T) {
			src := fmt.Sprintf(`package p
import (
	"math"
	"time"

	"example.com/steelyard/units"
)
var _, _ = math.Pi, time.Second
func show[Q units.Quantity](q Q) string { return units.US.Format(q) + q.String() }
func _(l units.Length, m units.Mass, f units.Force, g units.Acceleration, w units.LineMass, n float64,
	t units.TimeSpan, v units.Speed, a units.Angle, e units.Energy, k units.Stiffness, i units.Inertia, s units.Stress) {
	%s
}`, row.src)
			file, err := parser.ParseFile(fset, "snippet.go", src, 0)
			if err != nil {
				t.Fatal(err)
			}
			_, err = (&types.Config{Importer: imports}).Check("p", fset, []*ast.File{file}, nil)
			if compiles := err == nil; compiles != row.compiles {
				t.Errorf("%s: compiles %v, want %v (%s): %v", row.src, compiles, row.compiles, row.reason, err)
			}
			if err != nil {
				t.Log(err)
			}
		})
	}
}
