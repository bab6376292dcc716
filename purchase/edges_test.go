package purchase_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Bounds are inclusive: what lies just on them is rigged, whatever TestLayoutRefused says of a hair more.
func TestLayoutAtItsBounds(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*purchase.Layout)
	}{
		{"as it is", func(*purchase.Layout) {}},
		{"a batten on the deck", func(l *purchase.Layout) { l.Trim = 0 }},
		{"a pit under the deck", func(l *purchase.Layout) { l.Rail, l.Idler = -1, -2 }},
		{"rail at the deck", func(l *purchase.Layout) { l.Rail, l.Idler = 0, -1 }},
		{"rail at the arbor's foot, where no dead end of the hand line is at the rail", func(l *purchase.Layout) {
			l.Hand, l.Rail = purchase.Single, l.ArborTop-l.ArborLength
		}},
		{"loft block one metre off the plane", func(l *purchase.Layout) { l.Loft[1].Offsets.Loft = 1 }},
		{"and to the other side", func(l *purchase.Layout) { l.Loft[1].Offsets.Loft = -1 }},
		{"sheaves as large as their ropes", func(l *purchase.Layout) {
			l.LiftDiameter, l.HandDiameter = 0.006, 0.019
			l.Sheaves = purchase.Sheaves{Loft: 0.006, Mule: 0.006, Head: 0.006, Arbor: 0.006, Beam: 0.006, HandHead: 0.019, Idler: 0.019, HandArbor: 0.019, HandBeam: 0.019}
		}},
		{"lift line and hand line of a hair", func(l *purchase.Layout) { l.LiftDiameter, l.HandDiameter = 1e-9, 1e-9 }},
		{"drag of 0.9", func(l *purchase.Layout) { l.Drag = 0.9 }},
		{"one mule block, a metre between its sheaves", func(l *purchase.Layout) {
			l.Loft[1].Mules, l.Loft[2].Mules = mules(mule("m", 3, 19)), mules(mule("m", 3, 20))
		}},
		{"one mule block, a metre between its sheaves on a slant", func(l *purchase.Layout) {
			l.Loft[1].Mules, l.Loft[2].Mules = mules(mule("m", 3, 19)), mules(mule("m", units.Length(3.6), 19.8))
		}},
		{"mule block under the head block", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", 0, 18.1)) }},
		{"mule block at the head block's height", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", 3, 19), mule("n", 2, l.HeadBlock)) }},
		{"mule block under the loft block", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule("m", l.Loft[1].Across, 17)) }},
		{"mule block named as the dead end of a line that is not there", func(l *purchase.Layout) { l.Loft[1].Mules = mules(mule(purchase.DeadEnd(6), 3, 19)) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := weightless(purchase.Double)
			c.change(&l)
			if err := l.Validate(); err != nil {
				t.Error(err)
			}
			if _, err := l.Rig(); err != nil {
				t.Error(err)
			}
		})
	}
}

// Every name that the layout itself gives is taken, of each line that it has.
func TestNamesThatAreTaken(t *testing.T) {
	taken := []string{
		purchase.HeadBlock, purchase.ArborTop, purchase.ArborFoot, purchase.IdlerBlock, purchase.HandDeadEnd, purchase.RailDeadEnd,
		purchase.HandBlock, purchase.RailBlock, purchase.RopeLock,
	}
	for line := 1; line <= 5; line++ {
		taken = append(taken, purchase.LoftBlock(line), purchase.DeadEnd(line), purchase.BeamBlock(line))
	}
	for _, name := range taken {
		l := weightless(purchase.Double)
		l.Loft[1].Mules = mules(mule(name, 3, 19))
		one(t, l.Validate(), "loft[1].mules[0].name", units.ErrDuplicate, name)
	}
	for _, name := range []string{purchase.LoftBlock(0), purchase.LoftBlock(6), purchase.DeadEnd(0), purchase.BeamBlock(0), "batten"} {
		l := weightless(purchase.Double)
		l.Loft[1].Mules = mules(mule(name, 3, 19))
		if err := l.Validate(); err != nil {
			t.Errorf("%q is nobody's: %v", name, err)
		}
	}
}

// Thirty-two mule blocks on a line and no more; their line zigzags.
func TestManyMuleBlocks(t *testing.T) {
	l := weightless(purchase.Double)
	l.Loft = l.Loft[:1]
	for k := range 32 {
		l.Loft[0].Mules = append(l.Loft[0].Mules, mule(fmt.Sprint("mule ", k), units.Length(1.6-0.04*float64(k)), units.Length(19+k%2)))
	}
	r := mustRig(t, l)
	if got := len(geometry(t, r, 5).Lift[0].Turns); got != 32+3 {
		t.Errorf("the line turns %d times, want 35: loft block, 32 mule blocks, head block, arbor", got)
	}
	l.Loft[0].Mules = append(l.Loft[0].Mules, mule("one more", 0.2, 19))
	one(t, l.Validate(), "loft[0].mules", units.ErrOutOfRange, "33 mule blocks")
}

// Sixty-four lift lines and no more, each with the names of its own number; of sixty-five, nothing else is looked at.
func TestManyLines(t *testing.T) {
	for _, c := range []struct {
		kind purchase.Kind
		last func(line int) string
		turn func(line int) string
	}{
		{purchase.Single, func(int) string { return purchase.ArborTop }, nil},
		{purchase.Double, purchase.DeadEnd, nil},
		{purchase.Triple, func(int) string { return purchase.ArborTop }, purchase.BeamBlock},
	} {
		l := weightless(purchase.Double)
		l.Kind, l.Loft = c.kind, nil
		for i := range 64 {
			l.Loft = append(l.Loft, purchase.Loft{Across: units.Length(1 + i), Height: 60 * units.Foot})
		}
		g := geometry(t, mustRig(t, l), 20*units.Foot)
		for i, rope := range g.Lift {
			number := strconv.Itoa(i + 1)
			first, last := rope.Parts[0], rope.Parts[len(rope.Parts)-1]
			if rope.Name != "lift line "+number || first.From != "batten at line "+number || first.To != "loft block "+number || last.To != c.last(i+1) {
				t.Fatalf("%v, line %d: %q from %q over %q to %q", c.kind, i+1, rope.Name, first.From, first.To, last.To)
			}
			if c.turn != nil && last.From != c.turn(i+1) {
				t.Fatalf("%v, line %d comes down from %q", c.kind, i+1, last.From)
			}
		}
		l.Loft = append(l.Loft, purchase.Loft{})
		one(t, l.Validate(), "loft", units.ErrOutOfRange, "65 lines, and the last would have faults of its own")
	}
	for name, want := range map[string]string{purchase.LoftBlock(12): "loft block 12", purchase.DeadEnd(3): "dead end 3", purchase.BeamBlock(64): "beam block 64"} {
		if name != want {
			t.Errorf("%q, want %q", name, want)
		}
	}
}

// reeved is a single set of one line over a loft block and a head block, which other paths are made from.
func reeved(lift ...purchase.Stop) purchase.Reeving {
	return purchase.Reeving{Trim: 2, ArborTop: 10, Lift: []purchase.Rope{{Name: "line", Path: lift}}}
}

func stop(name string, on purchase.Body, across, height units.Length) purchase.Stop {
	return purchase.Stop{Name: name, On: on, Across: across, Height: height}
}

// Sixty-four stops on a rope and no more.
func TestManyStops(t *testing.T) {
	path := []purchase.Stop{stop("batten", purchase.Batten, 30, 0), stop("loft", purchase.Grid, 30, 20)}
	for k := range 60 {
		path = append(path, stop(fmt.Sprint("mule ", k), purchase.Building, units.Length(29.5-0.4*float64(k)), units.Length(19+k%2)))
	}
	path = append(path, stop("head", purchase.HeadBeam, 0, 20), stop("arbor", purchase.Arbor, 0, 0))
	r, err := reeved(path...).Rig()
	if err != nil || r.Ratio() != 1 {
		t.Fatalf("64 stops: ratio %v, %v", r.Ratio(), err)
	}
	// With drag in all 62 sheaves at rest: the arbor's end is between what all of them hold back one way and the other.
	for k := 1; k < len(path)-1; k++ {
		path[k].Drag = purchase.PlainBearings
	}
	if r, err = reeved(path...).Rig(); err != nil {
		t.Fatal(err)
	}
	g := geometry(t, r, 4)
	rest, err := r.Rest(4, purchase.Bodies{Pulls: evenly(1, 500), Arbor: 50})
	if err != nil {
		t.Fatal(err)
	}
	all := 1.0
	for _, turn := range g.Lift[0].Turns {
		k, err := purchase.PlainBearings.Factor(turn.Angle)
		if err != nil {
			t.Fatal(err)
		}
		all *= k
	}
	if got := rest.Lift[0].Parts[62].TensionTo; !near.Rel(got.Most.In(units.Newton), 500*all, 1e-9) || !near.Rel(got.Least.In(units.Newton), 500/all, 1e-9) {
		t.Errorf("at the arbor %v to %v, want %v to %v N", got.Least, got.Most, 500/all, 500*all)
	}
	longer := append(path[:2:2], append([]purchase.Stop{stop("one more", purchase.Building, 29.8, 18)}, path[2:]...)...)
	_, err = reeved(longer...).Rig()
	one(t, err, "lift[0].path", units.ErrOutOfRange, "65 stops")
}

// What lies just on a bound is taken by a reeving, too.
func TestReevingAtItsBounds(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*purchase.Reeving)
	}{
		{"a stop a metre off the plane", func(r *purchase.Reeving) { r.Lift[0].Path[1].Offset = -1 }},
		{"a tread as large as its rope", func(r *purchase.Reeving) { r.Hand.Diameter, r.Hand.Path[1].Tread = 0.02, 0.02 }},
		{"a tread of a rope that is not said", func(r *purchase.Reeving) { r.Hand.Path[1].Tread = 0.02 }},
		{"a rim on a sheave", func(r *purchase.Reeving) { r.Hand.Path[1].Rim = 3 }},
		{"a drag of 0.9", func(r *purchase.Reeving) { r.Hand.Path[1].Drag = 0.9 }},
		{"a lock just over the idler", func(r *purchase.Reeving) { r.Lock = r.Idler + 1e-6 }},
		{"a lock just under the head block", func(r *purchase.Reeving) { r.Lock = 60*units.Foot - 1e-6 }},
		{"a stop far off", func(r *purchase.Reeving) { r.Lift[0].Path[1].Height = 1e6 }},
		{"plumb but for a hair", func(r *purchase.Reeving) { r.Lift[0].Path[0].Across += 5e-10 }},
		{"blocks of one name on the batten", func(r *purchase.Reeving) { r.Lift[1].Path[0].Name = r.Lift[0].Path[0].Name }},
		{"no hand line", func(r *purchase.Reeving) { r.Hand = purchase.Rope{} }},
		{"no hand line, and no lock or idler that makes sense", func(r *purchase.Reeving) { r.Hand, r.Lock, r.Idler = purchase.Rope{}, -5, 500 }},
		{"a hand line that weighs nothing", func(r *purchase.Reeving) { r.Hand.Mass = 0 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := weightless(purchase.Double).Reeving()
			c.change(&r)
			if rigged, err := r.Rig(); err != nil || !near.Rel(rigged.Ratio(), 2, 1e-9) {
				t.Errorf("ratio %v, %v", rigged.Ratio(), err)
			}
		})
	}
}

// A hair beyond a bound is beyond it.
func TestReevingJustBeyondItsBounds(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*purchase.Reeving)
		field  string
		kind   error
	}{
		{"a lock at the idler", func(r *purchase.Reeving) { r.Lock = r.Idler }, "lock", units.ErrOutOfRange},
		{"a lock at the head block", func(r *purchase.Reeving) { r.Lock = 60 * units.Foot }, "lock", units.ErrOutOfRange},
		{"out of plumb", func(r *purchase.Reeving) { r.Lift[0].Path[0].Across += 5e-9 }, "lift[0].path[1].across", units.ErrOutOfRange},
		{"a hair apart", func(r *purchase.Reeving) { r.Trim = r.Lift[0].Path[1].Height - 5e-10; r.Lift = r.Lift[:1] }, "lift[0].path[1]", units.ErrDuplicate},
		{"a drag above 0.9", func(r *purchase.Reeving) { r.Hand.Path[1].Drag = 0.9000001 }, "hand.path[1].drag", units.ErrOutOfRange},
		{"a drag below nothing", func(r *purchase.Reeving) { r.Hand.Path[1].Drag = -1e-9 }, "hand.path[1].drag", units.ErrNegative},
		{"a drag at the last end", func(r *purchase.Reeving) { r.Lift[1].Path[4].Drag = 0.1 }, "lift[1].path[4].drag", units.ErrOutOfRange},
		{"a rim at the last end", func(r *purchase.Reeving) { r.Lift[1].Path[4].Rim = 0.1 }, "lift[1].path[4].rim", units.ErrOutOfRange},
		{"a tread at the last end", func(r *purchase.Reeving) { r.Lift[1].Path[4].Tread = 0.1 }, "lift[1].path[4].tread", units.ErrOutOfRange},
		{"a rim below nothing", func(r *purchase.Reeving) { r.Lift[1].Path[2].Rim = -0.1 }, "lift[1].path[2].rim", units.ErrNegative},
		{"a stop without a number across", func(r *purchase.Reeving) { r.Lift[1].Path[2].Across = units.Length(math.NaN()) }, "lift[1].path[2].across", units.ErrNotFinite},
		{"a stop without a number for its height", func(r *purchase.Reeving) { r.Lift[1].Path[1].Height = units.Length(math.Inf(1)) }, "lift[1].path[1].height", units.ErrNotFinite},
		{"a trim without a number", func(r *purchase.Reeving) { r.Trim = units.Length(math.NaN()) }, "trim", units.ErrNotFinite},
		{"an arbor without a number", func(r *purchase.Reeving) { r.ArborTop = units.Length(math.NaN()) }, "arbor_top", units.ErrNotFinite},
		{"an infinite diameter", func(r *purchase.Reeving) { r.Hand.Diameter = units.Length(math.Inf(1)) }, "hand.diameter", units.ErrNotFinite},
		{"a hand line in a knot", func(r *purchase.Reeving) { r.Hand.Path = r.Hand.Path[:1] }, "hand.path", units.ErrMissing},
		{"blocks a little over a metre apart", func(r *purchase.Reeving) {
			r.Lift[1].Path[1].Name, r.Lift[1].Path[1].Height = "b", 18
			r.Lift[2].Path[1].Name, r.Lift[2].Path[1].Height = "b", 18
		}, "lift[2].path[1]", units.ErrDuplicate},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := weightless(purchase.Double).Reeving()
			c.change(&r)
			_, err := r.Rig()
			one(t, err, c.field, c.kind, "a hair too much")
		})
	}
}

// What is asked of single ropes is answered at the bounds of what they take.
func TestRopeQuestionsAtTheirBounds(t *testing.T) {
	use := purchase.RopeUse{Rope: purchase.RopeStock{Diameter: 1e-9, Breaking: 1000}, Termination: 0.01, Bending: 1}
	number := func(got float64, err error) func() (float64, error) {
		return func() (float64, error) { return got, err }
	}
	newtons := func(f units.Force, err error) func() (float64, error) {
		return func() (float64, error) { return f.In(units.Newton), err }
	}
	for _, c := range []struct {
		name   string
		answer func() (float64, error)
		want   float64
	}{
		{"drag of 0.9 at half a turn", number(purchase.Drag(0.9).Factor(units.Turn / 2)), 19},
		{"drag at no turn", number(purchase.Drag(0.9).Factor(0)), 1},
		{"wraps of ten turns without friction", newtons(purchase.Wraps{Turns: 10}.Holds(7)), 7},
		{"wraps at a friction of one, no turn", newtons(purchase.Wraps{Friction: 1}.Hand(7)), 7},
		{"wraps of ten turns, no pull", newtons(purchase.Wraps{Turns: 10, Friction: 1}.Hand(0)), 0},
		{"a pull as large as the hand's, without friction", number(purchase.TurnsWanted(5, 5, 0)), 0},
		{"a pull of a hair more than the hand's", number(purchase.TurnsWanted(units.Force(math.Exp(2*math.Pi)), 1, 1)), 1},
		{"as many turns as lie on a rail", number(purchase.TurnsWanted(units.Force(math.Exp(2*math.Pi*0.1*9.999)), 1, 0.1)), 9.999},
		{"one part and no sheave", newtons(purchase.Tackle{Parts: 1}.Pull(8, 0.1)), 8},
		{"sixty-four parts", newtons(purchase.Tackle{Parts: 64, Sheaves: 63}.Pull(64, 0)), 1},
		{"sixty-four sheaves", newtons(purchase.Tackle{Parts: 64, Sheaves: 64}.PullByRule(64, 1)), 65},
		{"by a rule that adds nothing", newtons(purchase.Tackle{Parts: 4, Sheaves: 3}.PullByRule(8, 0)), 2},
		{"an end that keeps a hundredth", newtons(use.Limit(1)), 10},
		{"a factor of a hundred", newtons(use.Limit(100)), 0.1},
		{"a sheave as large as the rope", number(purchase.BendingKeeps(1)), 0.5},
		{"the last row of the table", number(purchase.BendingKeeps(40)), 0.95},
		{"beyond it", number(purchase.BendingKeeps(41)), 0.95},
	} {
		if got, err := c.answer(); err != nil || !near.Rel(got, c.want, 1e-9) {
			t.Errorf("%s: %v, %v; want %v", c.name, got, err, c.want)
		}
	}
	for factor, want := range map[float64]purchase.Drag{1: 0, 19: 0.9} {
		if got, err := purchase.DragPerHalfTurn(factor); err != nil || !near.Abs(float64(got), float64(want), 1e-15) {
			t.Errorf("factor %v: drag %v, %v; want %v", factor, got, err, want)
		}
	}
	if got, err := purchase.FleetOffset(3, 45*units.Degree); err != nil || !near.Rel(got.In(units.Metre), 3, 1e-12) {
		t.Errorf("45 degrees over 3 m: %v, %v", got, err)
	}
}
