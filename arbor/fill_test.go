package arbor_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/units"
	"github.com/google/go-cmp/cmp"
)

func asNoStack(err error, to **arbor.NoStackError) bool { return errors.As(err, to) }

// house is an invented stock: the pieces of one footprint, called by their pounds.
var house = arbor.Stock{
	{Name: "11", Mass: 11 * units.Pound, Thickness: 0.5 * units.Inch, Count: 24},
	{Name: "23.5", Mass: 23.5 * units.Pound, Thickness: 1 * units.Inch, Count: 60},
}

// tall is an invented arbor that holds all of them, without spreader plates.
var tall = arbor.Frame{Tare: 90 * units.Pound, Length: 8 * units.Foot, Room: 84 * units.Inch, Capacity: 2000 * units.Pound}

func plated() arbor.Frame {
	f := tall
	f.Plate = arbor.Plate{Mass: 3 * units.Pound, Thickness: 0.125 * units.Inch, Every: 24 * units.Inch}
	return f
}

func TestFill(t *testing.T) {
	lb := units.Pound
	tests := []struct {
		name, reason string
		frame        arbor.Frame
		wanted       arbor.Wanted
		side         arbor.Side
		call         string
		error        units.Mass
	}{
		{"exact", "27 × 23.5 + 11 = 645.5", tall, arbor.Wanted{Show: 645.5 * lb}, arbor.EitherSide, "27 of the 23.5, 1 of the 11", 0},
		{"nearest above", "47 = 2 × 23.5 is 5 away, 55 = 5 × 11 is 3, 58 is 6", tall, arbor.Wanted{Show: 52 * lb}, arbor.EitherSide, "5 of the 11", exactPounds(12)},
		{"never arbor-heavy", "the nearest from below", tall, arbor.Wanted{Show: 52 * lb}, arbor.NeverArborHeavy, "2 of the 23.5", exactPounds(-20)},
		{"never batten-heavy", "46 = 23.5 + 22.5 does not exist: 47", tall, arbor.Wanted{Show: 46 * lb}, arbor.NeverBattenHeavy, "2 of the 23.5", exactPounds(4)},
		{
			"pipe first", "94 = 4 × 23.5 stays; 58 goes on it", tall,
			arbor.Wanted{Pipe: 94 * lb, Show: 58 * lb},
			arbor.EitherSide,
			"pipe weight 4 of the 23.5; show weight 2 of the 23.5, 1 of the 11", 0,
		},
		{
			"show makes up for pipe", "11 of pipe is 3 heavy; what is nearest to the 41 that are left is 44", tall,
			arbor.Wanted{Pipe: 8 * lb, Show: 44 * lb},
			arbor.EitherSide,
			"pipe weight 1 of the 11; show weight 4 of the 11", exactPounds(12),
		},
		{"pipe alone", "the bare batten", tall, arbor.Wanted{Pipe: 23 * lb}, arbor.EitherSide, "pipe weight 1 of the 23.5", exactPounds(2)},
		{"tare outweighs the pipe", "58 less the 11 of surplus is 47", tall, arbor.Wanted{Pipe: -11 * lb, Show: 58 * lb}, arbor.NeverArborHeavy, "2 of the 23.5", 0},
		{"nothing", "nothing is wanted", tall, arbor.Wanted{}, arbor.NeverBattenHeavy, "nothing", 0},
		{"a plate under the first", "23.5 + 3 of plate", plated(), arbor.Wanted{Show: 26.5 * lb}, arbor.EitherSide, "1 of the 23.5, with 1 spreader plate", 0},
		{"no plate in the pipe weight", "47 of pipe without a plate", plated(), arbor.Wanted{Pipe: 47 * lb}, arbor.EitherSide, "pipe weight 2 of the 23.5", 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, err := tt.frame.Fill(tt.wanted, house, tt.side)
			if err != nil {
				t.Fatal(err)
			}
			if s.Call() != tt.call || s.Error != tt.error || !s.Proven {
				t.Errorf("%s:\n got %q, error %v, proven %v\nwant %q, error %v", tt.reason, s.Call(), s.Error.In(lb), s.Proven, tt.call, tt.error.In(lb))
			}
		})
	}
}

func TestFillNoStack(t *testing.T) {
	tests := []struct {
		name, reason string
		wanted       arbor.Wanted
		side         arbor.Side
		pipe         bool
	}{
		{"too little for the pipe", "84 in hold less than 2500 lb", arbor.Wanted{Pipe: 2500 * units.Pound}, arbor.NeverBattenHeavy, true},
		{"too little for the show", "the pipe weight fits, the rest does not", arbor.Wanted{Pipe: 100 * units.Pound, Show: 2500 * units.Pound}, arbor.NeverBattenHeavy, false},
		{"tare too heavy", "the empty arbor outweighs all that hangs", arbor.Wanted{Pipe: -50 * units.Pound, Show: 20 * units.Pound}, arbor.NeverArborHeavy, false},
	}
	for _, tt := range tests {
		s, err := tall.Fill(tt.wanted, house, tt.side)
		var none *arbor.NoStackError
		if !errors.As(err, &none) || none.Pipe != tt.pipe || !none.Proven || none.Wanted != tt.wanted || none.Side != tt.side {
			t.Errorf("%s: %s: got %+v, %v", tt.name, tt.reason, s, err)
		}
		if s, err := tall.Fill(tt.wanted, house, arbor.EitherSide); err != nil {
			t.Errorf("%s: either side always has a stack: %+v, %v", tt.name, s, err)
		}
	}
	if s, err := tall.Fill(arbor.Wanted{Show: 10}, nil, arbor.EitherSide); err != nil || s.Pieces != 0 || s.Error != -10 || !s.Proven {
		t.Errorf("an empty stock fills nothing: %+v, %v", s, err)
	}
}

func TestIdealUsesKindsThatAreOut(t *testing.T) {
	stock := arbor.Stock{{Name: "23.5", Mass: 23.5 * units.Pound, Thickness: 1 * units.Inch}}
	s, err := tall.Ideal(arbor.Wanted{Show: 2350 * units.Pound}, stock, arbor.EitherSide)
	if err != nil || s.Call() != "100 of the 23.5" || s.Error != 0 || s.Height != 100*units.Inch {
		t.Errorf("got %q, %v, %v; want 100 of the 23.5 in 100 in, past room and capacity", s.Call(), s.Height, err)
	}
}

func TestStackKinds(t *testing.T) {
	s, err := plated().Fill(arbor.Wanted{Pipe: 94 * units.Pound, Show: 61 * units.Pound}, house, arbor.EitherSide)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]int{}
	for name, n := range s.Kinds() {
		if _, twice := got[name]; twice {
			t.Errorf("%s comes twice", name)
		}
		got[name] = n
	}
	if diff := cmp.Diff(map[string]int{"23.5": 6, "11": 1}, got); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
	for range s.Kinds() {
		break // a walk that is left early must not go on
	}
	if s.Used("23.5") != 6 || s.Used("none such") != 0 {
		t.Errorf("used %d, %d; want 6, 0", s.Used("23.5"), s.Used("none such"))
	}
	row := arbor.Row{Name: "23.5", Count: 27, Mass: 23.5 * units.Pound, Thickness: 1 * units.Inch}
	if row.Total() != 634.5*units.Pound || row.Height() != 27*units.Inch {
		t.Errorf("27 of the 23.5: %v, %v", row.Total(), row.Height())
	}
	if row.Count = math.MaxInt; row.Total() < 0 || row.Height() < 0 {
		t.Errorf("a row past the ledger overflows: %v, %v", row.Total(), row.Height())
	}
}

// fields lists the paths of all field errors, in order.
func fields(t *testing.T, err error) []string {
	t.Helper()
	if err == nil {
		return nil
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		var out []string
		for _, e := range many.Unwrap() {
			out = append(out, fields(t, e)...)
		}
		return out
	}
	var fe *units.FieldError
	if !errors.As(err, &fe) {
		t.Fatalf("%v is no field error", err)
	}
	if fe.Want == "" {
		t.Errorf("%v does not say what would be right", err)
	}
	return []string{fe.Field}
}

func TestFillReportsEverything(t *testing.T) {
	f := arbor.Frame{Tare: -1, Room: 2, Capacity: -5, Plate: arbor.Plate{Mass: 1}}
	stock := arbor.Stock{
		{Name: "a", Mass: 1, Thickness: 0.01},
		{},
		{Name: "a", Mass: units.Mass(math.NaN()), Thickness: -0.01, Count: -1},
		{Name: "b", Mass: 1, Thickness: 25.4, Count: 2_000_000},
	}
	_, err := f.Fill(arbor.Wanted{Pipe: units.Mass(math.Inf(-1)), Show: -1}, stock, arbor.Side(9))
	want := []string{
		"tare", "length", "capacity", "plate.thickness", "plate.every",
		"stock[1].name", "stock[1].mass", "stock[1].thickness",
		"stock[2].mass", "stock[2].thickness", "stock[2].count", "stock[2].name",
		"stock[3].thickness", "stock[3].count",
		"wanted.pipe", "wanted.show", "side",
	}
	if diff := cmp.Diff(want, fields(t, err)); diff != "" {
		t.Errorf("-want +got\n%s\n%v", diff, err)
	}
	for _, kind := range []error{units.ErrMissing, units.ErrNegative, units.ErrNotFinite, units.ErrOutOfRange, units.ErrDuplicate, units.ErrUnknown} {
		if !errors.Is(err, kind) {
			t.Errorf("no fault that %v", kind)
		}
	}
}

func TestValidate(t *testing.T) {
	change := func(do func(*arbor.Frame)) arbor.Frame { f := plated(); do(&f); return f }
	tests := []struct {
		name, reason string
		err          error
		field        string
		kind         error
	}{
		{"good frame", "all is given", plated().Validate(), "", nil},
		{"zero tare", "leaves the tare out", change(func(f *arbor.Frame) { f.Tare = 0 }).Validate(), "", nil},
		{"room just the length", "a rod may be as long as the arbor", change(func(f *arbor.Frame) { f.Room = f.Length }).Validate(), "", nil},
		{"room past the length", "the stack cannot be longer than the arbor", change(func(f *arbor.Frame) { f.Room = f.Length + 0.01 }).Validate(), "room", units.ErrOutOfRange},
		{"no capacity", "must be given", change(func(f *arbor.Frame) { f.Capacity = 0 }).Validate(), "capacity", units.ErrMissing},
		{"capacity in grams", "a slip of the unit", change(func(f *arbor.Frame) { f.Capacity = 900_000 }).Validate(), "capacity", units.ErrOutOfRange},
		{"plates without interval", "partly given", change(func(f *arbor.Frame) { f.Plate.Every = 0 }).Validate(), "plate.every", units.ErrMissing},
		{"good stock", "all is given", house.Validate(), "", nil},
		{"empty stock", "is allowed", arbor.Stock(nil).Validate(), "", nil},
		{"a name of spaces", "cannot be called", arbor.Stock{{Name: " ", Mass: 1, Thickness: 0.01}}.Validate(), "[0].name", units.ErrMissing},
		{"a light piece", "half a gram is a slip", arbor.Stock{{Name: "a", Mass: 0.0005, Thickness: 0.01}}.Validate(), "[0].mass", units.ErrOutOfRange},
		{"too many kinds", "the search takes 32", kinds(33).Validate(), "", units.ErrOutOfRange},
		{"many kinds", "the search takes 32", kinds(32).Validate(), "", nil},
		{"good run", "stops in order", arbor.Run{LowerStop: 8, UpperStop: 20}.Validate(), "", nil},
		{"lower stop in a pit", "heights may be negative", arbor.Run{LowerStop: -3, UpperStop: 20}.Validate(), "", nil},
		{"no upper stop", "must be given", arbor.Run{}.Validate(), "upper_stop", units.ErrMissing},
		{"stops crossed", "the upper must be above the lower", arbor.Run{LowerStop: 8, UpperStop: 7}.Validate(), "upper_stop", units.ErrOutOfRange},
		{"stop not a number", "no NaN goes in", arbor.Run{LowerStop: units.Length(math.NaN()), UpperStop: 7}.Validate(), "lower_stop", units.ErrNotFinite},
		{"lower stop not a number, and a low head block", "against no stops that are known nothing else is wrong", arbor.Run{LowerStop: units.Length(math.NaN()), UpperStop: 7, HeadBlock: 5}.Validate(), "lower_stop", units.ErrNotFinite},
		{"lower stop not a number, and a long arbor", "the same", arbor.Run{LowerStop: units.Length(math.NaN()), UpperStop: 7}.ValidateFor(arbor.Frame{Length: 9}), "lower_stop", units.ErrNotFinite},
		{"upper stop not a number", "no NaN goes in", arbor.Run{LowerStop: 9, UpperStop: units.Length(math.NaN()), HeadBlock: 5}.Validate(), "upper_stop", units.ErrNotFinite},
		{"arbor fits", "8 ft in 24 ft", arbor.Run{UpperStop: 24 * units.Foot}.ValidateFor(tall), "", nil},
		{"arbor just fits", "travel 0 is no fault", arbor.Run{UpperStop: 8 * units.Foot}.ValidateFor(tall), "", nil},
		{"stop too high", "a slip of the unit", arbor.Run{UpperStop: 24_000}.Validate(), "upper_stop", units.ErrOutOfRange},
		{"arbor too long", "8 ft in 7 ft", arbor.Run{UpperStop: 7 * units.Foot}.ValidateFor(tall), "upper_stop", units.ErrOutOfRange},
		{"arbor without end", "no infinity goes in", arbor.Run{UpperStop: 7}.ValidateFor(arbor.Frame{Length: units.Length(math.Inf(1))}), "length", units.ErrNotFinite},
	}
	for _, tt := range tests {
		got := fields(t, tt.err)
		if tt.kind == nil {
			if got != nil {
				t.Errorf("%s: %s: got %v", tt.name, tt.reason, tt.err)
			}
			continue
		}
		if diff := cmp.Diff([]string{tt.field}, got); diff != "" || !errors.Is(tt.err, tt.kind) {
			t.Errorf("%s: %s: got %v\n%s", tt.name, tt.reason, tt.err, diff)
		}
	}
	var fe *units.FieldError
	if err := kinds(2)[:1].Validate(); err != nil {
		t.Error(err)
	}
	if err := (arbor.Stock{{Name: "23.5", Thickness: 0.01}}).Validate(); !errors.As(err, &fe) || fe.Of != `"23.5"` {
		t.Errorf("the name belongs to the error: %+v", fe)
	}
}

func kinds(n int) arbor.Stock {
	var s arbor.Stock
	for i := range n {
		s = append(s, arbor.Piece{Name: string(rune('A' + i)), Mass: units.Mass(float64(i + 1)), Thickness: 0.01, Count: 3})
	}
	return s
}

func TestRun(t *testing.T) {
	// A locking rail at 10 ft 6 in, the upper stop at 50 ft.
	run := arbor.Run{LowerStop: 10.5 * units.Foot, UpperStop: 50 * units.Foot}
	if got := run.Travel(tall); got != exactEighths(3024) {
		t.Errorf("travel %v, want 31.5 ft", got.In(units.Foot))
	}
	if low, high := run.Tops(tall); low != exactEighths(1776) || high != exactEighths(4800) {
		t.Errorf("tops %v and %v, want 18.5 ft and 50 ft", low, high)
	}
	if got := (arbor.Run{UpperStop: 6 * units.Foot}).Travel(tall); got != exactEighths(-192) {
		t.Errorf("travel %v, want -2 ft: the arbor is longer than its run", got.In(units.Foot))
	}
}

// Where the pipe weight takes the only step, the show weight has one of its own: of one kind of piece that is enough to tell that
// three are nearer to 29 kg than two.
func TestFillWithinAStep(t *testing.T) {
	tens := arbor.Stock{{Name: "10", Mass: 10, Thickness: 0.02, Count: 9}}
	s, err := tall.FillWithin(1, arbor.Wanted{Pipe: 20, Show: 29}, tens, arbor.EitherSide)
	if err != nil || !s.Proven || s.Call() != "pipe weight 2 of the 10; show weight 3 of the 10" {
		t.Errorf("%q, proven %v, %v", s.Call(), s.Proven, err)
	}
}

// Where no pipe weight is wanted none is looked for: a batten that the tare just balances takes the steps of one that it outweighs,
// with the surplus wanted on top.
func TestNoPipeWeightTakesNoSteps(t *testing.T) {
	needs := func(w arbor.Wanted) int {
		for steps := 1; steps < 1000; steps++ {
			if s, err := tall.FillWithin(steps, w, house, arbor.EitherSide); err != nil || s.Proven {
				return steps
			}
		}
		return 0
	}
	over, just := needs(arbor.Wanted{Pipe: -11 * units.Pound, Show: 60 * units.Pound}), needs(arbor.Wanted{Show: 49 * units.Pound})
	if just != over || just < 2 {
		t.Errorf("%d steps, and %d with the same surplus", just, over)
	}
}

// Whether an arbor just fits is decided in exact numbers: as float64 the
// arbor's foot and length add up to more than the stop's height.
func TestRunJustFits(t *testing.T) {
	n := 0
	for tenths := 1; tenths < 100; tenths++ {
		inches := func(n int) units.Length { return units.Inch.Scale(float64(n) / 10) }
		run := arbor.Run{LowerStop: inches(70), UpperStop: inches(70 + tenths)}
		f := arbor.Frame{Length: inches(tenths)}
		if run.LowerStop+f.Length > run.UpperStop {
			n++
		}
		if err := run.ValidateFor(f); err != nil || run.Travel(f) != 0 {
			t.Errorf("%v in %+v: travel %v, %v", f.Length, run, run.Travel(f), err)
		}
	}
	if n == 0 {
		t.Error("no case in which float64 would have been wrong: the test shows nothing")
	}
}

func TestJSON(t *testing.T) {
	s, err := plated().Fill(arbor.Wanted{Pipe: 94 * units.Pound, Show: 61 * units.Pound}, house, arbor.NeverArborHeavy)
	if err != nil {
		t.Fatal(err)
	}
	type all struct {
		Frame  arbor.Frame
		Stock  arbor.Stock
		Run    arbor.Run
		Wanted arbor.Wanted
		Side   arbor.Side
		Stack  arbor.Stack
	}
	in := all{plated(), house, arbor.Run{UpperStop: 9}, arbor.Wanted{Pipe: -1, Show: 2}, arbor.NeverBattenHeavy, s}
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var out all
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(in, out); diff != "" {
		t.Errorf("-in +out\n%s\n%s", diff, text)
	}
	side := arbor.NeverArborHeavy
	var fe *units.FieldError
	if err := json.Unmarshal([]byte(`"heavy"`), &side); !errors.As(err, &fe) || !errors.Is(err, units.ErrUnknown) || side != arbor.NeverArborHeavy {
		t.Errorf("an unknown side: %v, %v", err, side)
	}
	if _, err := json.Marshal(arbor.Side(7)); !errors.Is(err, units.ErrUnknown) {
		t.Errorf("a side that is none: %v", err)
	}
	if err := side.UnmarshalText(nil); err != nil || side != arbor.EitherSide {
		t.Errorf("no text: %v, %v", side, err)
	}
	if got := arbor.Side(7).String(); got != "Side(7)" {
		t.Errorf("got %q", got)
	}
}
