package purchase_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

var hundreds = []units.Force{100 * units.PoundForce, 100 * units.PoundForce, 100 * units.PoundForce, 100 * units.PoundForce, 100 * units.PoundForce}

type want struct {
	name string
	got  units.Force
	want float64 // lbf
}

func compare(t *testing.T, rows []want) {
	t.Helper()
	for _, c := range rows {
		if !near.Abs(c.got.In(units.PoundForce), c.want, 1e-9) {
			t.Errorf("%s: %v lbf, want %v", c.name, c.got.In(units.PoundForce), c.want)
		}
	}
}

// The free body of triple purchase (arithmetic): three parts of 500 lb in all hold the
// arbor, so 500 lb on the batten answers 1500 lb; each beam block bears two parts.
func TestTripleFreeBody(t *testing.T) {
	l := weightless(purchase.Triple)
	l.DeadEnd, l.Rail, l.Idler = 61*units.Foot, 14*units.Foot, 13*units.Foot
	r := mustRig(t, l)
	if r.HandRatio() != 1 || !near.Rel(r.Ratio(), 3, 1e-15) {
		t.Errorf("ratio %v, hand line %v; want 3 and 1", r.Ratio(), r.HandRatio())
	}
	st, err := r.At(20*units.Foot, purchase.Bodies{Pulls: hundreds, Arbor: 1500 * units.Pound, Idler: 60 * units.Pound})
	if err != nil {
		t.Fatal(err)
	}
	wanted, err := r.Counterweight(20*units.Foot, 500*units.Pound)
	if err != nil || !near.Rel(wanted.In(units.Pound), 1500, 1e-12) {
		t.Errorf("counterweight %v lb, %v; want 1500", wanted.In(units.Pound), err)
	}
	compare(t, []want{
		{"out of balance", st.Imbalance, 0},
		{"in a lift line where it ends", st.Lift[3].Parts[4].TensionTo, 100},
		// Three parts of the hand line at 30 lbf pull up on the top, three down on the foot.
		{"up on the arbor's top", st.Load(purchase.ArborTop).Up, 1500 + 90},
		{"down on the arbor's foot", -st.Load(purchase.ArborFoot).Up, 90},
		{"down on a beam block", -st.Load(purchase.BeamBlock(2)).Up, 200},
		{"down on the hand line's block", -st.Load(purchase.HandBlock).Up, 60},
		{"up on the rail block", st.Load(purchase.RailBlock).Up, 60},
		{"down on the head block", -st.Load(purchase.HeadBlock).Up, 500 + 60},
		{"down on the head beam", -st.On(purchase.HeadBeam).Up, 500 + 60 + 5*200 + 60},
	})
}

// The free body of double lift lines with a single hand line: the hand line runs as
// fast as the arbor, half as fast as the batten, and what is out of balance stands
// in it as it is at the arbor: twice what it is at the batten.
func TestMixedFreeBody(t *testing.T) {
	l := weightless(purchase.Double)
	l.Hand = purchase.Single
	r := mustRig(t, l)
	if r.Ratio() != 2 || r.HandRatio() != 0.5 {
		t.Errorf("ratio %v, hand line %v; want 2 and 0.5", r.Ratio(), r.HandRatio())
	}
	st, err := r.At(20*units.Foot, purchase.Bodies{Pulls: hundreds, Arbor: 980 * units.Pound, Idler: 60 * units.Pound})
	if err != nil {
		t.Fatal(err)
	}
	compare(t, []want{
		{"out of balance", st.Imbalance, 10},
		{"asked of the lock", st.Lock, 20},
		{"hand line at the arbor's foot", st.Hand.Parts[0].TensionFrom, 30},
		{"hand line at the arbor's top", st.Hand.Parts[2].TensionTo, 10},
		{"up on the arbor's top", st.Load(purchase.ArborTop).Up, 1000 + 10},
		{"down on the head beam", -st.On(purchase.HeadBeam).Up, 500 + 10 + 10 + 500}, // lines, hand line above the lock, dead ends
		{"nothing at a dead end of the hand line", st.Load(purchase.HandDeadEnd).Size(), 0},
	})
	// The other mixture: it runs twice as fast as the batten.
	l = weightless(purchase.Single)
	l.Hand, l.DeadEnd = purchase.Double, 61*units.Foot
	if r := mustRig(t, l); r.Ratio() != 1 || r.HandRatio() != 2 {
		t.Errorf("ratio %v, hand line %v; want 1 and 2", r.Ratio(), r.HandRatio())
	}
}

// What is out of balance at the arbor is the same work whatever the hand line, so
// a kind of hand line named is the kind that the zero value stands for.
func TestHandKindZeroIsAsTheLift(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		l := weightless(purchase.Double)
		l.Kind = kind
		plain := l.Reeving()
		l.Hand = kind
		if diff := cmp.Diff(plain, l.Reeving()); diff != "" {
			t.Errorf("%v: %s", kind, diff)
		}
	}
}

// One mule block that turns two lines on their way to the head block: the tension
// goes through, the load is the sum of both, and loft block and head block feel
// the new directions.
func TestMuleBlock(t *testing.T) {
	l := weightless(purchase.Single)
	// 60 ft high at 6 ft across and then level with the head block; the mule stands
	// straight over 3 ft across, 4 ft up: a slope of 3 in 5 on both sides.
	shared := purchase.Mule{Name: "mule block", On: purchase.Grid, Across: 3 * units.Foot, Height: 64 * units.Foot}
	l.Loft = l.Loft[:2]
	l.Loft[0].Mules = []purchase.Mule{shared}
	l.Loft[1].Across = 6.5 * units.Foot
	l.Loft[1].Mules = []purchase.Mule{{Name: "turn", Across: 6 * units.Foot, Height: 60 * units.Foot}, shared}
	l.Loft[1].Height = 58 * units.Foot // lower than the head block
	st, err := mustRig(t, l).At(20*units.Foot, purchase.Bodies{Pulls: hundreds[:2], Arbor: 200 * units.Pound})
	if err != nil {
		t.Fatal(err)
	}
	compare(t, []want{
		{"at the arbor", st.Lift[0].Parts[3].TensionTo, 100},
		{"down on the mule block, two lines", -st.Load("mule block").Up, 2 * 2 * 80},
		{"across on the mule block", st.Load("mule block").Across, 0},
		// The lines' whole pull on what carries loft blocks and mule block; "turn" hangs elsewhere.
		{"down on the grid", -st.On(purchase.Grid).Up, (100 - 80) + 4*80 + (100 - 100*2/math.Sqrt(4.25))},
		{"across on loft block 1", st.Load(purchase.LoftBlock(1)).Across, -60},
		{"up on loft block 1", st.Load(purchase.LoftBlock(1)).Up, -100 + 80},
		{"across on the head block", st.Load(purchase.HeadBlock).Across, 2 * 60},
		{"down on the head block", -st.Load(purchase.HeadBlock).Up, 200 - 2*80},
		{"out of balance", st.Imbalance, 0},
	})
}

// A layout with everything in it is read back as it was written.
func TestLayoutText(t *testing.T) {
	l := wing
	l.Hand = purchase.Single
	l.Loft = []purchase.Loft{{Across: 3, Height: 18, Mules: []purchase.Mule{{Name: "mule block", On: purchase.Grid, Across: 2, Height: 19}}}}
	text, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	var back purchase.Layout
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(l, back); diff != "" {
		t.Error(diff)
	}
}

// drawLayout draws a layout of any kind with loft blocks at any height and mule
// blocks anywhere.
func drawLayout(t *rapid.T) purchase.Layout {
	kinds := []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple}
	l := purchase.Layout{
		Kind: rapid.SampledFrom(kinds).Draw(t, "kind"), Hand: rapid.SampledFrom(append(kinds, 0)).Draw(t, "hand line"),
		HeadBlock: 20, DeadEnd: units.Length(rapid.Float64Range(19.1, 22).Draw(t, "dead end")), Rail: 2, Idler: 1, ArborLength: 2,
		LiftMass: units.LineMass(rapid.Float64Range(0, 1).Draw(t, "lift line")), HandMass: units.LineMass(rapid.Float64Range(0, 1).Draw(t, "hand line")),
		Trim: 1, ArborTop: 19,
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "lines") {
		b := purchase.Loft{Across: units.Length(3 + 2*i), Height: units.Length(rapid.Float64Range(17, 23).Draw(t, "loft block"))}
		for k := range rapid.IntRange(0, 2).Draw(t, "mule blocks") {
			b.Mules = append(b.Mules, mule(fmt.Sprintf("mule %d.%d", i+1, k+1), units.Length(2-k)+0.5, units.Length(rapid.Float64Range(17, 23).Draw(t, "mule block"))))
		}
		l.Loft = append(l.Loft, b)
	}
	return l
}

// Whatever the layout: the ratio is that of its kind, the hand line runs with the
// ratio of the two, no rope changes its length, mule blocks and the heights of
// loft blocks change no tension that has no rope weight in it, and a set seen
// from behind bears the same.
func TestPropLayouts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		r, err := l.Rig()
		if errors.Is(err, purchase.ErrNoTurn) {
			t.Skip("a level run past a mule block")
		}
		if err != nil {
			t.Fatal(err)
		}
		hand := l.Hand
		if hand == 0 {
			hand = l.Kind
		}
		if !near.Rel(r.Ratio(), l.Kind.Ratio(), 1e-12) || !near.Rel(r.HandRatio(), hand.Ratio()/l.Kind.Ratio(), 1e-12) {
			t.Fatalf("%v with %v: ratio %v, hand line %v", l.Kind, hand, r.Ratio(), r.HandRatio())
		}
		lowest, highest := r.Reach()
		trim := lowest + (highest - lowest).Scale(rapid.Float64Range(0.01, 0.99).Draw(t, "trim"))
		a, errA := r.Geometry(l.Trim)
		b, errB := r.Geometry(trim)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		for i, rope := range append(a.Lift, a.Hand) {
			if now := append(b.Lift, b.Hand)[i]; !near.Rel(now.Length.In(units.Metre), rope.Length.In(units.Metre), 1e-12) {
				t.Fatalf("%s is %v m long, was made off at %v", rope.Name, now.Length, rope.Length)
			}
		}
		on := purchase.Bodies{Arbor: 400, Idler: 1000}
		for range l.Loft {
			on.Pulls = append(on.Pulls, units.Force(rapid.Float64Range(300, 900).Draw(t, "pull")))
		}
		st, err := r.At(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		plain := l
		plain.Loft = nil
		for _, b := range l.Loft {
			plain.Loft = append(plain.Loft, purchase.Loft{Across: b.Across, Height: 24})
		}
		if rp, err := plain.Rig(); err != nil {
			t.Fatal(err)
		} else if other, err := rp.At(trim, on); err != nil {
			t.Fatal(err)
		} else {
			for i := range st.Lift {
				// Along T = T₀ + w·z it does not matter what lies between two heights.
				p, q := st.Lift[i].Parts, other.Lift[i].Parts
				if x, y := p[len(p)-1].TensionTo, q[len(q)-1].TensionTo; !near.Rel(x.In(units.Newton), y.In(units.Newton), 1e-9) {
					t.Fatalf("line %d ends with %v, without mule blocks with %v", i+1, x, y)
				}
			}
			if !near.Abs(st.Imbalance.In(units.Newton), other.Imbalance.In(units.Newton), 1e-6) {
				t.Fatalf("imbalance %v, without mule blocks %v", st.Imbalance, other.Imbalance)
			}
		}
		mirrored := l.Reeving()
		for _, rope := range append(mirrored.Lift, mirrored.Hand) {
			for k := range rope.Path {
				rope.Path[k].Across *= -1
			}
		}
		rm, err := mirrored.Rig()
		if err != nil {
			t.Fatal(err)
		}
		sm, err := rm.At(trim, on)
		if err != nil {
			t.Fatal(err)
		}
		for i := range sm.Blocks {
			sm.Blocks[i].Load.Across = 0 - sm.Blocks[i].Load.Across
		}
		if diff := cmp.Diff(st, sm); diff != "" {
			t.Fatalf("seen from behind: %s", diff)
		}
	})
}
