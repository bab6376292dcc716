package lineset_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// eighths is an installation whose heights are all whole eighths of a metre, so that sums of them are what they are by head: the arbor,
// 2.5 m, goes from a foot at 0.5 m, or 7 m in double purchase, to a top at 16 m, and the batten from 1 m to 14 m in both.
func eighths(kind purchase.Kind) lineset.Set {
	s := electric()
	s.Rigging = rigging(kind)
	r := &s.Rigging
	r.Rail, r.Idler.Height, r.Run.LowerStop = 1, 0.25, 0.5
	if kind == purchase.Double {
		r.DeadEnds, r.Rail, r.Idler.Height, r.Run.LowerStop = 17.25, 6.5, 6, 7
	}
	r.LoftBlocks, r.HeadBlock, r.Run.UpperStop, r.Arbor.Length, r.MadeOff = 16.5, 17, 16, 2.5, 1
	s.Low, s.High = 2, 8
	return s
}

// Where two things would just touch the set is refused, and a millimetre clear of it they do not: what is wrong, what it is and what
// would be right.
func TestRoomToTheMillimetre(t *testing.T) {
	for _, c := range []struct {
		name   string
		kind   purchase.Kind
		set    func(*lineset.Set, units.Length)
		at     units.Length // just touching
		clear  units.Length // which way it clears
		field  string
		value  string
		remedy []string
	}{
		{
			"loft blocks", purchase.Single, func(s *lineset.Set, h units.Length) { s.Rigging.LoftBlocks = h },
			14, units.Millimetre, "rigging.loft_blocks", "(14 m)",
			[]string{"more than ", "(14 m), the trim that the batten reaches, made off as it is, before the arbor lands on its lower stop"},
		},
		{
			"the third line's own loft block", purchase.Double, func(s *lineset.Set, h units.Length) {
				s.Rigging.Loft = make([]lineset.Loft, 5)
				s.Rigging.Loft[2].Height = h
			},
			14, units.Millimetre, "rigging.loft[2].height", "(14 m)",
			[]string{"more than ", "(14 m), the trim that the batten reaches, made off as it is, before the arbor lands on its lower stop"},
		},
		{
			"idler", purchase.Single, func(s *lineset.Set, h units.Length) { s.Rigging.Idler.Height = h },
			0.5, -units.Millimetre, "rigging.idler.height", "(0.5 m)",
			[]string{"less than ", "(0.5 m), the height of the arbor's foot on its lower stop"},
		},
		{
			"rail with the dead end", purchase.Double, func(s *lineset.Set, h units.Length) { s.Rigging.Rail = h },
			7, -units.Millimetre, "rigging.rail", "(7 m)",
			[]string{"less than ", "(7 m), the height of the arbor's foot on its lower stop: the hand line's end or block is at the rail"},
		},
		{
			"rail with nothing on it", purchase.Single, func(s *lineset.Set, h units.Length) { s.Rigging.Rail = h },
			13.5, -units.Millimetre, "rigging.rail", "(13.5 m)",
			[]string{"less than ", "(13.5 m), the height of the arbor's foot at its upper stop: the rope from the foot to the idler is to pass the rail"},
		},
		{
			"low trim", purchase.Single, func(s *lineset.Set, h units.Length) { s.Low = h },
			8 + units.Millimetre, -units.Millimetre, "low_trim", "(8.001 m)",
			[]string{"at most the high trim, ", "(8 m)"},
		},
		{
			"head block told twice, higher", purchase.Single, func(s *lineset.Set, h units.Length) { s.Rigging.Run.HeadBlock = h },
			17 + 1.5*units.Millimetre, -units.Millimetre, "rigging.run.head_block", "(17.0015 m)",
			[]string{"left out, or the rigging's own head block, at ", "(17 m)"},
		},
		{
			"loft blocks told twice, lower", purchase.Double, func(s *lineset.Set, h units.Length) { s.Rigging.Run.LoftBlocks = h },
			16.5 - 1.5*units.Millimetre, units.Millimetre, "rigging.run.loft_blocks", "(16.4985 m)",
			[]string{"left out, or the lowest of the rigging's own loft blocks, at ", "(16.5 m)"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := eighths(c.kind)
			c.set(&s, c.at)
			_, err := s.Rig(stock)
			var fe *units.FieldError
			if !errors.As(err, &fe) || !errors.Is(err, units.ErrOutOfRange) || fe.Field != c.field || !strings.HasSuffix(fe.Value, c.value) ||
				!strings.HasPrefix(fe.Want, c.remedy[0]) || !strings.HasSuffix(fe.Want, c.remedy[len(c.remedy)-1]) {
				t.Errorf("just touching: %v", err)
			}
			if len(faults(err)) != 1 {
				t.Errorf("%d faults for one: %v", len(faults(err)), err)
			}
			c.set(&s, c.at+c.clear)
			if _, err := s.Rig(stock); err != nil {
				t.Errorf("a millimetre clear: %v", err)
			}
		})
	}
}

// A hand line of one part ends on the arbor: the rail then may stand higher than the arbor's foot comes down, under double lift lines too.
func TestRailUnderEachHandLine(t *testing.T) {
	for _, c := range []struct {
		lift, hand purchase.Kind
		ok         bool
	}{
		{purchase.Double, 0, false},
		{purchase.Double, purchase.Double, false},
		{purchase.Double, purchase.Triple, false},
		{purchase.Double, purchase.Single, true},
		{purchase.Single, 0, true},
		{purchase.Single, purchase.Single, true},
		{purchase.Single, purchase.Double, false},
	} {
		s := electric()
		s.Rigging = rigging(purchase.Double)
		s.Rigging.Purchase, s.Rigging.HandPurchase, s.Rigging.Rail = c.lift, c.hand, 23*units.Foot
		_, err := s.Rig(stock)
		var want []string
		if !c.ok {
			want = []string{"rigging.rail out of range"}
		}
		if diff := cmp.Diff(want, faults(err)); diff != "" {
			t.Errorf("%v lift lines and %v hand line: %v", c.lift, c.hand, err)
		}
	}
}

// What several fields have in common is told of the one that the reader wrote, and once: ropes that cannot be laid, and runs that
// cannot be flown, under the names of the rigging.
func TestFaultsByTheReadersNames(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*lineset.Rigging)
		want   []string
	}{
		{"nothing at all", func(r *lineset.Rigging) { *r = lineset.Rigging{} }, []string{
			"batten.length missing", "batten.pipe.outer missing", "batten.pipe.wall missing", "batten.pipe.density missing", "batten.pipe.modulus missing",
			"batten.lines missing", "made_off missing", "arbor.length missing", "arbor.room missing", "arbor.capacity missing",
			"run.upper_stop missing", "purchase missing", "head_block missing", "rail out of range", // not over an idler on the deck
		}},
		{"no lift lines, and the loft blocks told twice", func(r *lineset.Rigging) { r.Batten.Lines, r.Run.LoftBlocks = nil, r.LoftBlocks }, []string{"batten.lines missing"}},
		{"no lift lines, and the loft blocks told otherwise", func(r *lineset.Rigging) { r.Batten.Lines, r.Run.LoftBlocks = nil, r.LoftBlocks-1 }, []string{
			"batten.lines missing", "run.loft_blocks out of range",
		}},
		{"three negative", func(r *lineset.Rigging) { r.Idler.Mass, r.Idler.Base, r.Bed = -1, -1, -1 }, []string{"idler.mass negative", "idler.base negative", "bed negative"}},
		{"a drag of all the load", func(r *lineset.Rigging) { r.Drag = 1 }, []string{"drag out of range"}},
		{"a dead end under the arbor's top", func(r *lineset.Rigging) { r.DeadEnds = 50 * units.Foot }, []string{"dead_ends out of range"}},
		{"loft blocks left out and one line's given", func(r *lineset.Rigging) {
			r.LoftBlocks, r.Loft = 0, []lineset.Loft{{}, {Height: 54 * units.Foot}, {}, {}, {}}
		}, []string{"loft_blocks out of range"}},
		{"made off over the loft blocks", func(r *lineset.Rigging) { r.MadeOff = 60 * units.Foot }, []string{"loft_blocks out of range"}},
		{"all lines on one side of the middle", func(r *lineset.Rigging) { r.Batten.Lines = load.Spaced(1*units.Foot, 3*units.Foot, 5) }, []string{"batten.lines tips"}},
		{"all lines from the end to short of the middle", func(r *lineset.Rigging) { r.Batten.Lines = load.Spaced(0, 5*units.Foot, 5) }, []string{"batten.lines tips"}},
		{"all lines on the other side", func(r *lineset.Rigging) { r.Batten.Lines = load.Spaced(22*units.Foot, 4*units.Foot, 5) }, []string{"batten.lines tips"}},
		{"the arbor's top half a nanometre under the head block", func(r *lineset.Rigging) {
			r.HeadBlock, r.DeadEnds, r.LoftBlocks, r.Run.UpperStop = 17, 17.5, 18, 17-0.5e-9
		}, []string{"lift[0].path[3] twice", "lift[1].path[3] twice", "lift[2].path[3] twice", "lift[3].path[3] twice", "lift[4].path[3] twice", "hand.path[4] twice"}},
		{"the last line just in the middle", func(r *lineset.Rigging) { r.Batten.Lines = load.Spaced(1*units.Foot, 5*units.Foot, 5) }, nil},
		{"the first line just in the middle", func(r *lineset.Rigging) { r.Batten.Lines = load.Spaced(21*units.Foot, 5*units.Foot, 5) }, nil},
	} {
		r := rigging(purchase.Double)
		c.change(&r)
		got := faults(r.Validate())
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s\n%v", c.name, diff, r.Validate())
		}
	}
}

// Every line's loft block follows from the one offset, so a fault of any of them is one of the offset, with what was written.
func TestOffsetFaults(t *testing.T) {
	for _, c := range []struct {
		offset units.Length
		value  string
		kind   error
		want   string
	}{
		{1e12, "1000000000000 m)", units.ErrOutOfRange, "so much that every line's loft block is clear of the arbor, and no more than a stage is wide"},
		{-1, "(-1 m)", units.ErrNegative, "0 or more"},
	} {
		r := rigging(purchase.Double)
		r.Offset = c.offset
		err := r.Validate()
		var fe *units.FieldError
		if !errors.As(err, &fe) || !errors.Is(err, c.kind) || fe.Field != "offset" || !strings.HasSuffix(fe.Value, c.value) || fe.Want != c.want || len(faults(err)) != 1 {
			t.Errorf("%v: %v", c.offset, err)
		}
	}
	r := rigging(purchase.Double)
	r.Offset, r.Batten.Lines[0].At = 0, 0
	err := r.Validate()
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "offset" || fe.Value != "" || len(faults(err)) != 1 {
		t.Errorf("no offset, and the first line at the end: %v", err)
	}
	r = rigging(purchase.Double)
	r.Rail = 60 * units.Foot
	if err = r.Validate(); !errors.As(err, &fe) || fe.Field != "rail" || fe.Value != "60' 0\" (18.288 m)" {
		t.Errorf("a rail over the head block: %v", err)
	}
	r = rigging(purchase.Double)
	r.Loft = make([]lineset.Loft, 3)
	if err = r.Validate(); !errors.As(err, &fe) || fe.Field != "loft" || fe.Value != "3 of them" || !strings.HasPrefix(fe.Want, "one for each of the 5 lift lines") {
		t.Errorf("blocks of three lines: %v", err)
	}
}

// Whichever line's loft block hangs the lowest, the batten's way ends under it, and a batten that would come into it is told of that one.
func TestLowestLoftBlock(t *testing.T) {
	for i := range 5 {
		s := eighths(purchase.Single)
		s.Rigging.Loft = make([]lineset.Loft, 5)
		s.Rigging.Loft[i].Height = 15
		r := mustRig(t, s)
		if got := r.Travel().UnderLoft; got != 1 || r.Flight().UnderLoft.Clear != 1 {
			t.Errorf("line %d at 15 m over 14 m: %v", i+1, got)
		}
		s.Rigging.Loft[i].Height = 13
		if diff := cmp.Diff([]string{"rigging.loft[" + string(rune('0'+i)) + "].height out of range"}, faults(second(s.Rig(stock)))); diff != "" {
			t.Errorf("line %d at 13 m:\n%s", i+1, diff)
		}
		for k := range s.Rigging.Loft { // no line asks for the height that all would have
			s.Rigging.Loft[k].Height = 17
		}
		s.Rigging.LoftBlocks, s.Rigging.Loft[i].Height = 0, 16
		if got := mustRig(t, s).Travel().UnderLoft; got != 2 {
			t.Errorf("line %d at 16 m, all others at 17 m: %v", i+1, got)
		}
	}
}

// A list of names that is asked for in vain says what there would be: none, all of few, the first eight of many.
func TestNoSuchRigging(t *testing.T) {
	for _, c := range []struct {
		riggings int
		want     string
	}{
		{0, "one of the house's riggings: it has none"},
		{1, `one of the house's riggings: "a"`},
		{2, `one of the house's riggings: "a", "b"`},
		{8, `one of the house's riggings: "a", "b", "c", "d", "e", "f", "g", "h"`},
		{9, `one of the house's riggings: "a", "b", "c", "d", "e", "f", "g", "h" and 1 more`},
		{12, `one of the house's riggings: "a", "b", "c", "d", "e", "f", "g", "h" and 4 more`},
	} {
		h := house()
		h.Riggings = map[string]lineset.Rigging{}
		for i := range c.riggings {
			h.Riggings[string(rune('a'+i))] = rigging(purchase.Single)
		}
		_, err := h.Rig()
		var fe *units.FieldError
		if !errors.As(err, &fe) || fe.Field != "sets[1].like" || fe.Value != `"single"` || fe.Want != c.want {
			t.Errorf("%d riggings: %v", c.riggings, err)
		}
	}
}

// Each set's fault has the set's own number, and a name that stands twice says where it stands first.
func TestWhichSetIsWrong(t *testing.T) {
	h := house()
	third := h.Sets[1]
	h.Sets = append(h.Sets, third)
	_, err := h.Rig()
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "sets[2].name" || fe.Value != `"border"` || fe.Want != "a name of its own: sets[1] has it already" {
		t.Errorf("%v", err)
	}
	h.Sets[0].Name, h.Sets[2].Name = "", ""
	if diff := cmp.Diff([]string{"sets[0].name missing", "sets[2].name missing"}, faults(second(h.Rig()))); diff != "" {
		t.Errorf("two without a name are no two of one: %s", diff)
	}
	h.Sets[0].Name, h.Sets[2].Name, h.Sets[2].Like, h.Sets[2].Low = "first electric", "third", "none", 0
	if diff := cmp.Diff([]string{"sets[2].like unknown", "sets[2].low_trim missing"}, faults(second(h.Rig()))); diff != "" {
		t.Error(diff)
	}
}

// What no arbor could take is told of what asks for it, the hang or what is installed, with how much it would be.
func TestWhatNoArborTakes(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*lineset.Set)
		field  string
		value  string
	}{
		{"hang", func(s *lineset.Set) { s.Hang[0].Mass = 100 * units.Tonne }, "sets[0].hang", "(200029.631 kg) of counterweight for it"},
		{"batten", func(s *lineset.Set) { s.Rigging.Batten.Fittings = 100 * units.Tonne }, "sets[0].rigging", "(200068.456 kg) of counterweight for it"},
		{"arbor", func(s *lineset.Set) { s.Rigging.Arbor.Tare = 100 * units.Tonne }, "sets[0].rigging", "of counterweight for it"},
	} {
		h := house()
		c.change(&h.Sets[0])
		_, err := h.Rig()
		var fe *units.FieldError
		if !errors.As(err, &fe) || !errors.Is(err, units.ErrOutOfRange) || fe.Field != c.field || fe.Of != `"first electric"` ||
			!strings.HasSuffix(fe.Value, c.value) || !strings.Contains(fe.Want, "50000 kg") || len(faults(err)) != 1 {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// Sets on one rigging may hang nothing, one thing or many: each carries its own.
func TestSetsOnOneRigging(t *testing.T) {
	h := house()
	border := h.Sets[1]
	h.Sets = nil
	for n := range 4 {
		s := border
		s.Name, s.Hang = string(rune('a'+n)), nil
		for i := range n {
			s.Hang = append(s.Hang, load.Item{Name: "item", Mass: units.Pound.Scale(float64(10 * (n + i))), From: 11 * units.Foot, To: 31 * units.Foot})
		}
		h.Sets = append(h.Sets, s)
	}
	r, err := h.Rig()
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]float64{"a": 0, "b": 10, "c": 20 + 30, "d": 30 + 40 + 50} {
		s, _ := r.Set(name)
		if got := (s.High().Carried - s.Bare()).In(units.Pound); math.Abs(got-want) > 1e-9 || math.Abs(s.Hung().In(units.Pound)-want) > 1e-9 {
			t.Errorf("%s carries %v lb, want %v", name, got, want)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// Without pieces, or with pieces that cannot be, no set is rigged.
func TestStockRefused(t *testing.T) {
	for _, c := range []struct {
		stock arbor.Stock
		want  string
	}{
		{nil, "stock missing"},
		{arbor.Stock{{Name: "50", Mass: -1, Thickness: 1, Count: 1}}, "stock[0].mass negative"},
	} {
		if diff := cmp.Diff([]string{c.want}, faults(second(electric().Rig(c.stock)))); diff != "" {
			t.Error(diff)
		}
	}
	s := electric()
	s.Like = "single"
	if diff := cmp.Diff([]string{"stock missing", "like unknown"}, faults(second(s.Rig(nil)))); diff != "" {
		t.Error(diff)
	}
}

// What a hang does to the batten is told when the rigging is right, and not before: a fault of the rigging stands alone.
func TestTipOnlyOnceTheRiggingIsRight(t *testing.T) {
	s := two(purchase.Double)
	s.Hang = load.Hang{{Name: "far out", Mass: 500 * units.Pound, From: 1 * units.Foot, To: 1 * units.Foot}}
	var tip *load.TipError
	if _, err := s.Rig(fifties(40)); !errors.As(err, &tip) {
		t.Fatalf("%v: it does not tip", err)
	}
	s.Rigging.Bed = -1
	_, err := s.Rig(fifties(40))
	var fe *units.FieldError
	if !errors.As(err, &fe) || fe.Field != "rigging.bed" || errors.As(err, &tip) {
		t.Errorf("%v", err)
	}
}
