package lineset_test

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/near"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// faults lists what an error joins, one for each fault: its field, and what kind it is.
func faults(err error) []string {
	kinds := map[error]string{
		units.ErrMissing: "missing", units.ErrNegative: "negative", units.ErrNotFinite: "not finite", units.ErrOutOfRange: "out of range",
		units.ErrUnknown: "unknown", units.ErrDuplicate: "twice",
	}
	if err == nil {
		return nil
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		var out []string
		for _, e := range many.Unwrap() {
			out = append(out, faults(e)...)
		}
		return out
	}
	var fe *units.FieldError
	if !errors.As(err, &fe) {
		return []string{err.Error()}
	}
	if tip := (*load.TipError)(nil); errors.As(err, &tip) {
		return []string{fe.Field + " tips"}
	}
	return []string{fe.Field + " " + kinds[fe.Err]}
}

// A limit has two halves, how much and on whose word; either alone is a slip, and so is a limit of less than nothing.
func TestEveryLimitIsWhole(t *testing.T) {
	all := reflect.TypeFor[lineset.Limits]()
	for i := range all.NumField() {
		name, _, _ := strings.Cut(all.Field(i).Tag.Get("json"), ",")
		for _, c := range []struct {
			most  float64
			basis string
			want  []string
		}{
			{0, "", nil},
			{1, "given in the test", nil},
			{1, "", []string{".basis missing"}},
			{0, "given in the test", []string{".max missing"}},
			{-1, "given in the test", []string{".max negative"}},
			{-1, "", []string{".max negative", ".basis missing"}},
			{math.NaN(), "given in the test", []string{".max not finite"}},
		} {
			r := rigging(purchase.Double)
			limit := reflect.ValueOf(&r.Limits).Elem().Field(i)
			limit.FieldByName("Max").SetFloat(c.most)
			limit.FieldByName("Basis").SetString(c.basis)
			var want []string
			for _, fault := range c.want {
				want = append(want, "limits."+name+fault)
			}
			err := r.Validate()
			if diff := cmp.Diff(want, faults(err)); diff != "" {
				t.Errorf("%s of %v by %q (-want +got):\n%s", name, c.most, c.basis, diff)
			}
			var fe *units.FieldError
			if errors.As(err, &fe) && fe.Want == "" {
				t.Errorf("%v: nothing says what would be right", err)
			}
		}
	}
}

// names are those of all checks, in their order.
func names(checks []lineset.Check) []string {
	var out []string
	for _, c := range checks {
		out = append(out, c.Name)
	}
	return out
}

// Which checks there are depends on what is installed: no dead end in single purchase, a block in its place in triple, a held
// idler that cannot be lifted, mule blocks where there are any, and the stock where it falls short.
func TestChecksInTheirOrder(t *testing.T) {
	first := []string{"stack height", "counterweight mass", "out of balance", "travel to low trim", "travel to high trim", "lift line tension", "loft block load"}
	last := []string{"rope lock", "hand pull to fly out", "hand pull to fly in"}
	held := two(purchase.Double)
	held.Rigging.Idler.Base = 100 * units.PoundForce
	for _, c := range []struct {
		name   string
		set    lineset.Set
		pieces int
		want   []string
	}{
		{"single", two(purchase.Single), 40, slices.Concat(first, []string{"head block load", "pipe bending stress", "lift on the idler"}, last)},
		{"double", two(purchase.Double), 40, slices.Concat(first, []string{"head block load", "lift line dead end", "pipe bending stress", "lift on the idler"}, last)},
		{"triple", two(purchase.Triple), 40, slices.Concat(first, []string{"head block load", "lift line beam block", "pipe bending stress", "lift on the idler"}, last)},
		{"held idler", held, 40, slices.Concat(first, []string{"head block load", "lift line dead end", "pipe bending stress", "outer rope kept tight"}, last)},
		{"mule blocks", muled(), 40, slices.Concat(first, []string{"mule block load", "head block load", "pipe bending stress", "outer rope kept tight"}, last)},
		{"short of pieces", two(purchase.Single), 9, slices.Concat(first, []string{"head block load", "pipe bending stress", "lift on the idler"}, last, []string{"pieces in stock"})},
	} {
		r, err := c.set.Rig(fifties(c.pieces))
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(c.want, names(r.Checks())); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
	if checks := new(lineset.Rigged).Checks(); len(checks) != 0 {
		t.Errorf("%v of a Rigged that Rig did not make", checks)
	}
}

// limitOf is the limit of a set that a check is held against; nil where the check has its limit from elsewhere.
func limitOf(s *lineset.Set, check string) any {
	l := &s.Rigging.Limits
	switch check {
	case "lift line tension":
		return &l.LiftLine
	case "loft block load":
		return &l.LoftBlock
	case "mule block load":
		return &l.MuleBlock
	case "head block load":
		return &l.HeadBlock
	case "lift line dead end":
		return &l.DeadEnd
	case "lift line beam block":
		return &l.BeamBlock
	case "out of balance":
		return &l.OutOfBalance
	case "rope lock":
		return &l.RopeLock
	case "hand pull to fly out", "hand pull to fly in":
		return &l.HandPull
	case "pipe bending stress":
		return &l.Pipe
	}
	return nil
}

// A limit is inclusive: just what is asked is within it, with nothing left over; a billionth less exceeds, and the margin says by how
// much. Two sums of the same decimals that differ in their last place are one.
func TestEachLimitAtItsEdge(t *testing.T) {
	for _, set := range []lineset.Set{two(purchase.Double), two(purchase.Triple), muled()} {
		set.Rigging.Drag = 0.02
		for _, open := range mustRig(t, set).Checks() {
			given := limitOf(&set, open.Name)
			if given == nil || strings.HasPrefix(open.Name, "hand pull") && open.Name != "hand pull to fly out" {
				continue
			}
			asked := reflect.ValueOf(open.Demand).Float()
			for _, c := range []struct {
				share float64
				want  lineset.Verdict
			}{{1 + 1e-9, lineset.Within}, {1, lineset.Within}, {1 - 4e-16, lineset.Within}, {1 - 1e-9, lineset.Exceeds}, {0.5, lineset.Exceeds}} {
				limit := reflect.ValueOf(given).Elem()
				limit.FieldByName("Max").SetFloat(asked * c.share)
				limit.FieldByName("Basis").SetString("given in the test")
				got := named(t, mustRig(t, set), open.Name)
				limit.SetZero()
				margin, ratio := reflect.ValueOf(got.Margin).Float(), 1/c.share
				if got.Verdict != c.want || got.Basis != "given in the test" || got.Demand != open.Demand || got.Where != open.Where || got.Trim != open.Trim ||
					!near.Rel(got.Ratio, ratio, 1e-12) || !near.Abs(margin, asked*c.share-asked, 1e-12*asked) {
					t.Errorf("%v of the demand: %+v; want %v, ratio %v", c.share, got, c.want, ratio)
				}
			}
		}
	}
}

// What is the same at every trim is told for low trim, and of the two sides of a symmetrical load for the line nearest the arbor.
func TestWhatIsTheSameIsToldOnce(t *testing.T) {
	s := two(purchase.Double)
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	s.Rigging.Batten.Lines = load.Spaced(1*units.Foot, 10*units.Foot, 5)
	s.Hang = load.Hang{
		{Name: "left", Mass: 100 * units.Pound, From: 11 * units.Foot, To: 11 * units.Foot},
		{Name: "right", Mass: 100 * units.Pound, From: 31 * units.Foot, To: 31 * units.Foot},
	}
	r := mustRig(t, s)
	if b := r.Balance(); b.Most.Trim != s.Low || b.Least.Trim != s.Low {
		t.Errorf("the most is told at %v, the least at %v", b.Most.Trim, b.Least.Trim)
	}
	for _, c := range r.Checks() {
		switch c.Name {
		case "lift line tension", "lift line dead end":
			if c.Where != "line 2" {
				t.Errorf("%v; want line 2, as much as line 4", c)
			}
		case "loft block load": // it turns its line more steeply the further from the arbor, all being at one height: alike
			if c.Where != "line 2" {
				t.Errorf("%v; want line 2", c)
			}
		case "stack height", "counterweight mass":
			continue
		}
		if c.Trim != s.Low && c.Name != "travel to high trim" {
			t.Errorf("%v; want it at low trim", c)
		}
	}
}

// An arbor that is cut short is held against what it would take: the room against the height, the capacity against the mass, the
// stock against what is missing. By hand: 20 pieces of 50 lb, 2 in each, are wanted.
func TestCutShort(t *testing.T) {
	s := two(purchase.Double)
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	for _, c := range []struct {
		name           string
		room           units.Length
		capacity       units.Mass
		pieces         int
		height         float64 // in
		mass           float64 // lb
		exceeds, stock bool
	}{
		{"all fits", 40 * units.Inch, 1000 * units.Pound, 20, 40, 1000, false, false},
		{"room for 19", 39 * units.Inch, 1000 * units.Pound, 40, 40, 1000, true, false},
		{"capacity for 19", 40 * units.Inch, 999 * units.Pound, 40, 40, 1000, true, false},
		{"stock of 19", 40 * units.Inch, 1000 * units.Pound, 19, 40, 1000, true, true},
	} {
		s.Rigging.Arbor.Room, s.Rigging.Arbor.Capacity = c.room, c.capacity
		r, err := s.Rig(fifties(c.pieces))
		if err != nil {
			t.Fatal(err)
		}
		height, mass := named(t, r, "stack height"), named(t, r, "counterweight mass")
		if got := height.Demand.(units.Length).In(units.Inch); !near.Abs(got, c.height, 1e-9) || (height.Verdict == lineset.Exceeds) != (c.name == "room for 19") {
			t.Errorf("%s: %v, want %v in", c.name, height, c.height)
		}
		if got := mass.Demand.(units.Mass).In(units.Pound); !near.Abs(got, c.mass, 1e-9) || (mass.Verdict == lineset.Exceeds) != (c.name == "capacity for 19") {
			t.Errorf("%s: %v, want %v lb", c.name, mass, c.mass)
		}
		if r.Exceeds() != c.exceeds || slices.Contains(names(r.Checks()), "pieces in stock") != c.stock {
			t.Errorf("%s: exceeds %v, %q", c.name, r.Exceeds(), names(r.Checks()))
		}
		if c.stock {
			k := named(t, r, "pieces in stock")
			if !near.Abs(k.Demand.(units.Mass).In(units.Pound), 1000, 1e-9) || !near.Abs(k.Limit.(units.Mass).In(units.Pound), 950, 1e-9) || !near.Abs(k.Ratio, 1000.0/950, 1e-9) {
				t.Errorf("%v; want 1000 of 950 lb", k)
			}
		}
	}
}

// A stack of other pieces that comes as close is short of nothing, though one piece would do that the room does not take: it is held
// against its own height.
func TestAsCloseWithOtherPieces(t *testing.T) {
	s := two(purchase.Single)
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	s.Hang[0].Mass = 50 * units.Pound
	s.Rigging.Arbor.Room = 5 * units.Inch
	r, err := s.Rig(arbor.Stock{
		{Name: "50", Mass: 50 * units.Pound, Thickness: 10 * units.Inch, Count: 5},
		{Name: "25", Mass: 25 * units.Pound, Thickness: 1 * units.Inch, Count: 5},
	})
	if err != nil {
		t.Fatal(err)
	}
	c := named(t, r, "stack height")
	if height := c.Demand.(units.Length).In(units.Inch); !near.Abs(height, 2, 1e-9) || c.Verdict != lineset.Within || r.Counterweight().Short != nil {
		t.Errorf("%v, short of %q; want 2 in", c, r.Counterweight().Short)
	}
}

// Of several mule blocks the one that bears the most is told, and of those that bear the same the first: here two at the corners of a
// lead that goes up, level and down alike.
func TestMostLoadedMuleBlock(t *testing.T) {
	mule := func(name string, across, height float64) purchase.Mule {
		return purchase.Mule{Name: name, On: purchase.Grid, Across: units.Foot.Scale(across), Height: units.Foot.Scale(height)}
	}
	for _, c := range []struct {
		name  string
		mules []purchase.Mule // of the first line, 18 ft from the arbor
		want  string
	}{
		{"alike", []purchase.Mule{mule("first", 12, 55), mule("second", 6, 55)}, "first"},
		{"first sharper", []purchase.Mule{mule("first", 12, 57), mule("second", 6, 55)}, "first"},
		{"second sharper", []purchase.Mule{mule("first", 12, 55), mule("second", 6, 57)}, "second"},
		{"second a little sharper", []purchase.Mule{mule("first", 12, 56), mule("second", 6, 56.2)}, "second"},
	} {
		s := two(purchase.Single)
		s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
		s.Rigging.Loft = []lineset.Loft{{Mules: c.mules}, {}}
		r := mustRig(t, s)
		check := named(t, r, "mule block load")
		most := 0.0
		for _, m := range c.mules {
			most = max(most, r.Low().Ropes.Load(m.Name).Size().In(units.Newton))
		}
		if check.Where != c.want || !near.Rel(check.Demand.(units.Force).In(units.Newton), most, 1e-9) {
			t.Errorf("%s: %v; want %v N at the %s", c.name, check, most, c.want)
		}
	}
}

// A mule block whose line hangs slack bears nothing, and is named all the same.
func TestMuleBlockOfASlackLine(t *testing.T) {
	s := two(purchase.Single)
	s.Rigging.LiftLine, s.Rigging.Batten.Pipe.Density = 0, load.PipeSteelDensity
	s.Rigging.Batten.Lines = append(s.Rigging.Batten.Lines, load.Line{At: 41 * units.Foot, Long: 10 * units.Foot})
	s.Rigging.Loft = []lineset.Loft{{}, {}, {Mules: []purchase.Mule{{Name: "idle", On: purchase.Grid, Across: 20 * units.Foot, Height: 57 * units.Foot}}}}
	if c := named(t, mustRig(t, s), "mule block load"); c.Where != "idle" || c.Demand != units.Value(units.Force(0)) || c.Trim != s.Low {
		t.Errorf("%v; want nothing, at the idle block", c)
	}
}

// Of several lines that bear nothing at all it is the one nearest the arbor that is named, as of several that bear alike; of mule
// blocks the first that is given.
func TestWorstOfNothing(t *testing.T) {
	idle := lineset.State{Ropes: purchase.State{Lift: make([]purchase.RopeState, 3)}}
	if line, tension := idle.WorstLine(); line != 1 || tension != 0 {
		t.Errorf("line %d with %v, want the first with none", line, tension)
	}
	s := two(purchase.Single)
	s.Rigging.LiftLine, s.Rigging.Batten.Pipe.Density = 0, load.PipeSteelDensity
	s.Rigging.Batten.Lines = append(s.Rigging.Batten.Lines, load.Line{At: 41 * units.Foot, Long: 10 * units.Foot})
	s.Rigging.Loft = []lineset.Loft{{}, {}, {Mules: []purchase.Mule{
		{Name: "farther", On: purchase.Grid, Across: 30 * units.Foot, Height: 57 * units.Foot},
		{Name: "nearer", On: purchase.Grid, Across: 20 * units.Foot, Height: 55 * units.Foot},
	}}}
	if c := named(t, mustRig(t, s), "mule block load"); c.Where != "farther" || c.Demand != units.Value(units.Force(0)) || c.Trim != s.Low {
		t.Errorf("%v; want nothing, at the first block that the rope comes to", c)
	}
}

// Which way a set is out of balance is told of the least there is: a tenth of a pound either way, and none.
func TestWhichWayOutOfBalance(t *testing.T) {
	for lb, want := range map[float64]string{60.1: "batten-heavy", 59.9: "arbor-heavy", 50: "balanced"} {
		r := rigTens(t, plain(t, purchase.Single, pounds("lamps", lb)))
		if c := named(t, r, "out of balance"); c.Where != want || !near.Abs(c.Demand.(units.Force).In(units.PoundForce), math.Abs(math.Round(lb/10)*10-lb), 1e-9) {
			t.Errorf("%v lb on tens: %v, want %s", lb, c, want)
		}
	}
}

// With no piece in stock at all, the share of what there is has no number: it exceeds, and its ratio is left at nothing. An idler
// of next to no weight makes a ratio that is larger than any number, and is still one.
func TestRatiosAreNumbers(t *testing.T) {
	r, err := two(purchase.Double).Rig(arbor.Stock{{Name: "50", Mass: 50 * units.Pound, Thickness: 2 * units.Inch}})
	if err != nil {
		t.Fatal(err)
	}
	if c := named(t, r, "pieces in stock"); c.Ratio != 0 || c.Verdict != lineset.Exceeds {
		t.Errorf("%v; want it to exceed", c)
	}
	s := two(purchase.Single)
	s.Rigging.Limits.RopeLock = lineset.ForceLimit{Max: 0.5 * units.Newton, Basis: "given in the test"}
	if c := named(t, mustRig(t, s), "rope lock"); c.Ratio != c.Demand.(units.Force).In(units.Newton)/0.5 {
		t.Errorf("%v; want the ratio to half a newton", c)
	}
	s.Rigging.HandLine = 0
	s.Rigging.Idler.Mass = math.SmallestNonzeroFloat64
	if r, err = s.Rig(fifties(9)); err != nil {
		t.Fatal(err)
	}
	if c := named(t, r, "lift on the idler"); c.Ratio != math.MaxFloat64 || c.Verdict != lineset.Exceeds {
		t.Errorf("%v; want the largest number there is", c)
	}
}
