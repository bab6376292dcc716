package purchase

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"example.com/steelyard/units"
)

// Ropes that a valid layout without mule blocks lays need no look at them: nothing is wrong with them by themselves, and each
// block is the one that its name says. A layout may be odd in one way, as long as it is valid.
func TestPropValidLayoutLaysValidRopes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		at := rapid.IntRange(0, len(l.Loft)-1).Draw(t, "at")
		odd := rapid.SampledFrom([]units.Length{-1e13, -1e12, -3, 0, 1e-300, 1e-9, 0.05, 1, 1e12, 1e13}).Draw(t, "odd")
		rapid.SampledFrom([]func(){
			func() {},
			func() { l.HeadBlock = odd },
			func() { l.DeadEnd = odd },
			func() { l.ArborTop = odd },
			func() { l.Rail = odd },
			func() { l.Idler = odd },
			func() { l.ArborLength = odd },
			func() { l.Trim = odd },
			func() { l.Loft[at].Across = odd },
			func() { l.Loft[at].Height = odd },
			func() { l.Loft[at].Offsets = LineOffsets{Loft: odd, Head: odd, Arbor: odd, Beam: odd} },
			func() { l.Loft[at] = l.Loft[0] },
			func() { l.Drag = Drag(odd) },
			func() { l.Rim = units.Mass(odd) },
			func() { l.LiftMass = units.LineMass(odd) },
			func() { l.HandMass = units.LineMass(odd) },
			func() { l.LiftDiameter, l.Sheaves.Loft, l.Sheaves.Beam = 0.01, odd, odd },
			func() { l.HandDiameter, l.Sheaves.Idler, l.Sheaves.HandBeam = odd, odd, 0.3 },
		}).Draw(t, "way")()
		if l.validate() != nil {
			return
		}
		r := l.Reeving()
		want, err := r.validate()
		if err != nil {
			t.Fatalf("%+v: %v", l, err)
		}
		if d := cmp.Diff(want, l.blocks(nil), cmp.AllowUnexported(blocks{}), cmpopts.EquateEmpty()); d != "" {
			t.Fatalf("%+v: %s", l, d)
		}
	})
}

// drawLayout draws a layout as they are.
func drawLayout(t *rapid.T) Layout {
	metres := func(name string, low, high int) units.Length {
		return units.Length(rapid.IntRange(10*low, 10*high).Draw(t, name)) / 10
	}
	kinds := []Kind{Single, Double, Triple}
	l := Layout{
		Kind: rapid.SampledFrom(kinds).Draw(t, "kind"), Hand: rapid.SampledFrom(append(kinds, 0)).Draw(t, "hand"),
		HeadBlock: metres("head block", 20, 21), DeadEnd: metres("dead end", 20, 22), ArborTop: metres("top", 12, 19),
		Rail: metres("rail", 2, 3), Idler: metres("idler", -1, 1), ArborLength: metres("arbor", 2, 4), Trim: metres("trim", -1, 3),
		Drag: 0.04, Rim: 2, LiftMass: 0.2, HandMass: 0.2,
	}
	for range rapid.IntRange(1, 12).Draw(t, "lines") {
		l.Loft = append(l.Loft, Loft{Across: metres("across", 1, 20), Height: metres("height", 18, 22)})
	}
	return l
}
