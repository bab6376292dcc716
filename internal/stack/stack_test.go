package stack_test

import (
	"math"
	"slices"
	"testing"

	"example.com/steelyard/internal/stack"
)

func TestBest(t *testing.T) {
	const all = 1 << 30
	plate := stack.Plate{Mass: 3, Thickness: 1, Every: 10}
	tests := []struct {
		name, reason string
		p            stack.Problem
		count        []int64
		plates       int64
		error        int64
		found        bool
	}{
		{
			name: "not greedy", reason: "one of the 6 leaves 3 short; two of the 5 leave nothing",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 1, 9}, {5, 1, 9}}, Wanted: 10, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{0, 2}, found: true,
		},
		{
			name: "too heavy by less", reason: "errors on both sides count alike: 12 is nearer to 11 than 6 is",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 1, 9}}, Wanted: 11, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{2}, error: 1, found: true,
		},
		{
			name: "never heavy", reason: "the side above is forbidden",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 1, 9}}, Wanted: 11, MaxMass: 99, MaxHeight: 99, Light: true},
			count: []int64{1}, error: -5, found: true,
		},
		{
			name: "never light, too little", reason: "all there is stays below the wish",
			p: stack.Problem{Kinds: []stack.Kind{{6, 1, 1}}, Wanted: 11, MaxMass: 99, MaxHeight: 99, Heavy: true},
		},
		{
			name: "equal on both sides", reason: "3 above and 3 below: the fewer pieces",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 1, 9}}, Wanted: 9, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{1}, error: -3, found: true,
		},
		{
			name: "fewest before lowest", reason: "one thick piece before two thin ones",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 9, 9}, {3, 1, 9}}, Wanted: 6, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{1, 0}, found: true,
		},
		{
			name: "lowest of as many", reason: "5+1 and 4+2 are two pieces each; 4+2 is lower",
			p:     stack.Problem{Kinds: []stack.Kind{{5, 3, 1}, {4, 2, 1}, {2, 2, 1}, {1, 3, 1}}, Wanted: 6, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{0, 1, 1, 0}, found: true,
		},
		{
			name: "order of the kinds last", reason: "twins: the first stands for both",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 1, 2}, {6, 1, 2}}, Wanted: 18, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{2, 1}, found: true,
		},
		{
			name: "order of the kinds, filling up from below first", reason: "one of the 4 is 3 short, one of the 10 is 3 over: equal, and the 10 stands first",
			p:     stack.Problem{Kinds: []stack.Kind{{10, 1, 1}, {4, 1, 1}}, Wanted: 7, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{1, 0}, error: 3, found: true,
		},
		{
			name: "the same with a plate that weighs nothing", reason: "what is met first with no plates is no reason to leave out the 10 with one",
			p: stack.Problem{
				Kinds: []stack.Kind{{10, 1, 1}, {4, 1, 1}}, Wanted: 7, MaxMass: 99, MaxHeight: 99,
				Plate: stack.Plate{0, 0, 50}, Heavy: true, Light: true,
			},
			count: []int64{1, 0}, plates: 1, error: 3, found: true,
		},
		{
			name: "the plate counts", reason: "one piece and its plate are the wish; two pieces without would be",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 2, 9}}, Wanted: 9, MaxMass: 99, MaxHeight: 99, Plate: plate, Heavy: true, Light: true},
			count: []int64{1}, plates: 1, found: true,
		},
		{
			name: "a full interval brings a plate", reason: "five pieces of 2 fill 10: the second plate lies on top",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 2, 9}}, Wanted: 36, MaxMass: 99, MaxHeight: 99, Plate: plate, Heavy: true, Light: true},
			count: []int64{5}, plates: 2, found: true,
		},
		{
			name: "the plate takes room", reason: "four pieces and a plate are 9 high; a fifth would need its plate as well",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 2, 9}}, Wanted: 99, MaxMass: 99, MaxHeight: 11, Plate: plate, Heavy: true, Light: true},
			count: []int64{4}, plates: 1, error: 27 - 99, found: true,
		},
		{
			name: "the plate takes capacity", reason: "two pieces and a plate are 15; three and a plate 21",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 2, 9}}, Wanted: 99, MaxMass: 20, MaxHeight: 99, Plate: plate, Heavy: true, Light: true},
			count: []int64{2}, plates: 1, error: 15 - 99, found: true,
		},
		{
			name: "nothing wanted", reason: "the empty stack is one of the choices, and has no plate",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 2, 9}}, MaxMass: 99, MaxHeight: 99, Plate: plate, Heavy: true, Light: true},
			count: []int64{0}, found: true,
		},
		{
			name: "less than nothing wanted", reason: "the empty stack is too heavy already, and the best there is",
			p:     stack.Problem{Kinds: []stack.Kind{{6, 2, 9}}, Wanted: -7, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			count: []int64{0}, error: 7, found: true,
		},
		{
			name: "less than nothing, never heavy", reason: "even the empty stack is too heavy",
			p: stack.Problem{Kinds: []stack.Kind{{6, 2, 9}}, Wanted: -7, MaxMass: 99, MaxHeight: 99, Light: true},
		},
		{
			name: "no kinds", reason: "only the empty stack",
			p:     stack.Problem{Wanted: 7, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true},
			error: -7, found: true,
		},
		{
			name: "plates past any capacity", reason: "one piece brings plates without number: only the empty stack is left",
			p: stack.Problem{
				Kinds: []stack.Kind{{1, 1 << 50, 9}}, Wanted: 10, MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited,
				Plate: stack.Plate{1 << 50, 0, 1}, Heavy: true, Light: true,
			},
			count: []int64{0}, error: -10, found: true,
		},
		{
			name: "plates near any capacity", reason: "the thin piece brings a plate for its own thickness and the one under it",
			p: stack.Problem{
				Kinds: []stack.Kind{{1, 1 << 50, 9}, {1, 1, 9}}, Wanted: 2*(1<<50-12345) + 1, MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited,
				Plate: stack.Plate{1<<50 - 12345, 0, 1}, Heavy: true, Light: true,
			},
			count: []int64{0, 1}, plates: 2, found: true,
		},
		{
			name: "no end of pieces", reason: "without limits the wish alone bounds the stack",
			p: stack.Problem{
				Kinds: []stack.Kind{{7, 2, stack.Unlimited}, {3, 1, stack.Unlimited}}, Wanted: 100,
				MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited, Heavy: true, Light: true,
			},
			count: []int64{13, 3}, found: true,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c := stack.Best(tt.p, all)
			if c.Found != tt.found || !c.Proven || !slices.Equal(c.Count, tt.count) || c.Plates != tt.plates || c.Error != tt.error {
				t.Errorf("%s:\n got %+v\nwant count %v, plates %d, error %d, found %v", tt.reason, c, tt.count, tt.plates, tt.error, tt.found)
			}
		})
	}
}

// A search that is cut short says so, keeps to its limit, and has what it found
// up to there.
func TestBestCut(t *testing.T) {
	p := stack.Problem{Kinds: weighed(10, 50), Wanted: 2_345_678_901_234_567, MaxMass: stack.Unlimited, MaxHeight: stack.Unlimited, Heavy: true, Light: true}
	const limit = 20_000
	c := stack.Best(p, limit)
	if c.Proven || !c.Found || c.Nodes > limit+1 {
		t.Fatalf("got proven %v, found %v after %d nodes; want a choice that is not proven within %d", c.Proven, c.Found, c.Nodes, limit)
	}
	// The first descent alone misses by less than the lightest piece.
	if lightest := p.Kinds[9].Mass; c.Error > lightest || c.Error < -lightest {
		t.Errorf("error %d is worse than plain filling up would give, %d", c.Error, lightest)
	}
}

// Numbers that could overflow are refused, not computed.
func TestBestOutOfRange(t *testing.T) {
	ok := stack.Problem{Kinds: []stack.Kind{{1, 1, 1}}, Wanted: 1, MaxMass: 9, MaxHeight: 9, Heavy: true, Light: true}
	for name, change := range map[string]func(*stack.Problem){
		"wanted":          func(p *stack.Problem) { p.Wanted = math.MaxInt64 },
		"wanted below":    func(p *stack.Problem) { p.Wanted = math.MinInt64 },
		"no mass":         func(p *stack.Problem) { p.Kinds[0].Mass = 0 },
		"mass":            func(p *stack.Problem) { p.Kinds[0].Mass = math.MaxInt64 },
		"no thickness":    func(p *stack.Problem) { p.Kinds[0].Thickness = 0 },
		"thickness":       func(p *stack.Problem) { p.Kinds[0].Thickness = math.MaxInt64 },
		"count":           func(p *stack.Problem) { p.Kinds[0].Count = -1 },
		"kinds":           func(p *stack.Problem) { p.Kinds = slices.Repeat(p.Kinds, stack.MaxKinds+1) },
		"plate mass":      func(p *stack.Problem) { p.Plate = stack.Plate{-1, 1, 1} },
		"plate thickness": func(p *stack.Problem) { p.Plate = stack.Plate{1, -1, 1} },
		"every":           func(p *stack.Problem) { p.Plate = stack.Plate{1, 1, 0} },
		// Just past the bounds.
		"wanted by one":          func(p *stack.Problem) { p.Wanted = 1<<57 + 1 },
		"wanted below by one":    func(p *stack.Problem) { p.Wanted = -1<<57 - 1 },
		"mass by one":            func(p *stack.Problem) { p.Kinds[0].Mass = 1<<50 + 1 },
		"thickness by one":       func(p *stack.Problem) { p.Kinds[0].Thickness = 1<<50 + 1 },
		"plate mass by one":      func(p *stack.Problem) { p.Plate = stack.Plate{1<<50 + 1, 1, 1} },
		"plate thickness by one": func(p *stack.Problem) { p.Plate = stack.Plate{1, 1<<50 + 1, 1} },
		"every by one":           func(p *stack.Problem) { p.Plate = stack.Plate{1, 1, 1<<60 + 1} },
	} {
		p := ok
		p.Kinds = slices.Clone(ok.Kinds)
		change(&p)
		if c := stack.Best(p, 99); c.Found || c.Proven {
			t.Errorf("%s: got %+v, want neither found nor proven", name, c)
		}
	}
	if c := stack.Best(ok, 99); !c.Found || !c.Proven {
		t.Errorf("the problem that all of these spoil: %+v", c)
	}
	for name, change := range map[string]func(*stack.Problem){
		"wanted":          func(p *stack.Problem) { p.Wanted = 1 << 57 },
		"wanted below":    func(p *stack.Problem) { p.Wanted = -1 << 57 },
		"mass":            func(p *stack.Problem) { p.Kinds[0].Mass = 1 << 50 },
		"thickness":       func(p *stack.Problem) { p.Kinds[0].Thickness = 1 << 50 },
		"no count":        func(p *stack.Problem) { p.Kinds[0].Count = 0 },
		"kinds":           func(p *stack.Problem) { p.Kinds = slices.Repeat(p.Kinds, stack.MaxKinds) },
		"plate mass":      func(p *stack.Problem) { p.Plate = stack.Plate{1 << 50, 1, 1} },
		"plate thickness": func(p *stack.Problem) { p.Plate = stack.Plate{1, 1 << 50, 1} },
		"weightless":      func(p *stack.Problem) { p.Plate = stack.Plate{0, 0, 1} },
		"every":           func(p *stack.Problem) { p.Plate = stack.Plate{1, 1, stack.Unlimited} },
	} {
		p := ok
		p.Kinds = slices.Clone(ok.Kinds)
		change(&p)
		if c := stack.Best(p, 999); !c.Found || !c.Proven {
			t.Errorf("%s just within bounds: got %+v, want found and proven", name, c)
		}
	}
}

func TestRefill(t *testing.T) {
	const all = 1 << 30
	base := stack.Problem{Kinds: []stack.Kind{{44, 4, 20}, {22, 2, 20}, {11, 1, 20}}, MaxMass: 2000, MaxHeight: 200, Heavy: true, Light: true}
	for _, tt := range []struct {
		name, reason   string
		wanted, within int64
		today          []int64
		count          []int64
	}{
		{"nothing to do", "what is in is what is wanted", 110, 0, []int64{0, 5, 0}, []int64{0, 5, 0}},
		{"near enough", "11 off are allowed", 121, 11, []int64{0, 5, 0}, []int64{0, 5, 0}},
		{"one in", "not near enough: one piece makes it exact", 121, 10, []int64{0, 5, 0}, []int64{0, 5, 1}},
		{"as near as can be", "5 off is the least there is, on both sides: nothing is changed", 115, 0, []int64{0, 5, 0}, []int64{0, 5, 0}},
		{"out rather than round", "two of the 22 out, not one of them for one of the 44", 66, 0, []int64{0, 5, 0}, []int64{0, 3, 0}},
		{"more in than there may be", "of 25 in, 20 may stay: 5 out and 2 of the 11, or 6 out and the 44 with fewer pieces", 460, 0, []int64{0, 25, 0}, []int64{1, 19, 0}},
	} {
		p := base
		p.Wanted = tt.wanted
		c := stack.Refill(p, tt.today, tt.within, all)
		if !c.Found || !c.Proven || c.Gap != 0 || !slices.Equal(c.Count, tt.count) {
			t.Errorf("%s: %s: got %+v, want %v", tt.name, tt.reason, c, tt.count)
		}
	}
	nothing := stack.Problem{Wanted: 7, MaxMass: 9, MaxHeight: 9, Heavy: true, Light: true}
	if c := stack.Refill(nothing, []int64{}, 0, all); !c.Found || !c.Proven || c.Error != -7 {
		t.Errorf("no kinds: got %+v, want the empty stack, proven", c)
	}
	for name, c := range map[string]stack.Choice{
		"today too short":   stack.Refill(base, []int64{1}, 0, all),
		"less than none in": stack.Refill(base, []int64{1, -1, 0}, 0, all),
		"more than can be":  stack.Refill(base, []int64{1, 1 << 60, 0}, 0, all),
		"within":            stack.Refill(base, []int64{1, 1, 0}, -1, all),
	} {
		if c.Found || c.Proven {
			t.Errorf("%s: got %+v, want neither found nor proven", name, c)
		}
	}
}

// So many may be in today and no more.
func TestRefillOfTheMostToday(t *testing.T) {
	p := stack.Problem{Kinds: []stack.Kind{{22, 2, 20}}, Wanted: 110, MaxMass: 2000, MaxHeight: 200, Heavy: true, Light: true}
	if c := stack.Refill(p, []int64{1 << 24}, 0, 1000); !c.Found || !c.Proven || !slices.Equal(c.Count, []int64{5}) {
		t.Errorf("all but five are to come out: %+v", c)
	}
	if c := stack.Refill(p, []int64{1<<24 + 1}, 0, 1000); c.Found || c.Proven {
		t.Errorf("more than can be in: %+v", c)
	}
}

// What is in today may weigh more than 64 bits hold: all but one of the heaviest pieces that there can be must come out.
func TestRefillOfMoreThanCanBeWeighed(t *testing.T) {
	p := stack.Problem{Kinds: []stack.Kind{{1 << 50, 1, 1}}, Wanted: 1 << 50, MaxMass: stack.Unlimited, MaxHeight: 99, Heavy: true, Light: true}
	if c := stack.Refill(p, []int64{1 << 15}, 0, 1<<30); !c.Found || !c.Proven || !slices.Equal(c.Count, []int64{1}) {
		t.Errorf("one is to stay: %+v", c)
	}
}

// A piece as high as the interval brings two plates at once. It is never to be too light, and there is nothing else: ten and two of a
// hundred for the one that is wanted.
func TestPlatesHeavierThanAllElse(t *testing.T) {
	p := stack.Problem{Kinds: []stack.Kind{{10, 10, 1}}, Wanted: 1, MaxMass: stack.Unlimited, MaxHeight: 99, Plate: stack.Plate{100, 0, 10}, Heavy: true}
	want := stack.Choice{Count: []int64{1}, Pieces: 1, Plates: 2, Mass: 210, Height: 10, Error: 209, Found: true, Proven: true}
	for name, best := range bests {
		if d := diff(want, best(p, 1000)); d != "" {
			t.Errorf("%s: -want +got\n%s", name, d)
		}
	}
}

// Where there are no pieces one step shows it, whatever plates there might be.
func TestNoPiecesInOneStep(t *testing.T) {
	p := stack.Problem{Wanted: 7, MaxMass: 99, MaxHeight: 99, Plate: stack.Plate{1, 1, 1}, Heavy: true, Light: true}
	if c := stack.Best(p, 1); !c.Found || !c.Proven || c.Error != -7 {
		t.Errorf("%+v: want the empty stack, proven", c)
	}
}

// Two that are alike, one in either half: the first stands for both, though the other is met before it. Filling up with the 10 finds
// neither.
func TestTwinsOfTwoHalves(t *testing.T) {
	p := stack.Problem{Kinds: []stack.Kind{{10, 1, 1}, {5, 1, 1}, {6, 1, 1}, {6, 1, 1}}, Wanted: 11, MaxMass: 99, MaxHeight: 99, Heavy: true, Light: true}
	for name, best := range bests {
		if c := best(p, 1000); !c.Proven || !slices.Equal(c.Count, []int64{0, 1, 1, 0}) {
			t.Errorf("%s: %+v, want the first", name, c)
		}
	}
}
