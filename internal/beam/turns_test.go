package beam

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// between is the problem with the weights a share of the way to others.
func (p problem) between(to []float64, share float64) problem {
	weights := make([]float64, len(to))
	for i, a := range p.weights {
		weights[i] = a + share*(to[i]-a)
	}
	p.weights = weights
	return p
}

// sets gives the lines that pull in the middle of each stretch between two turns, t for a
// tight one and s for a slack one, by the oracle.
func (p problem) sets(t *testing.T, to, turns []float64) (sets []string) {
	places := append(append([]float64{0}, turns...), 1)
	for i := 1; i < len(places); i++ {
		pulls, _, miss := p.between(to, (places[i-1]+places[i])/2).oracle().hang()
		if miss > 1e-9 {
			t.Fatalf("the oracle found nothing: %v", miss)
		}
		var set strings.Builder
		for _, r := range pulls {
			if r > 1e-9 {
				set.WriteString("t")
			} else {
				set.WriteString("s")
			}
		}
		sets = append(sets, set.String())
	}
	return sets
}

// Which lines are tight on each stretch is by the oracle. The weights of the first four were
// searched for such that lines come back and let go again.
func TestTurns(t *testing.T) {
	five := []float64{1, 3, 5, 7, 9}
	for _, c := range []struct {
		name     string
		lines    []float64
		points   []float64
		from, to []float64 // the last is the beam's own, spread evenly over 0 to 10
		sets     []string
	}{
		{
			"the second lets go and comes back", five,
			[]float64{7, 5, 10},
			[]float64{1, 7, 6, 1},
			[]float64{7, 9, 2, 1},
			[]string{"tttst", "tstst", "tsttt", "ttttt"},
		},
		{
			"the second lets go and comes back while all grows", five,
			[]float64{10, 9, 7},
			[]float64{76, 28, 78, 40},
			[]float64{251, 125, 172, 40},
			[]string{"ttttt", "tsttt", "tstst", "tttst"},
		},
		{
			"the fourth takes load for a while", five,
			[]float64{4, 0, 1},
			[]float64{1, 4, 2, 1},
			[]float64{4, 4, 3, 1},
			[]string{"tssst", "tsstt", "tsttt", "tstst"},
		},
		{
			"the fifth lets go twice", five,
			[]float64{6, 0, 2},
			[]float64{2, 8, 1, 1},
			[]float64{3, 0, 2, 1},
			[]string{"tsstt", "tssts", "tstts", "tsttt", "ttttt", "tttts"},
		},
		{
			"two pairs let go, each together", five,
			[]float64{0, 10, 5},
			[]float64{0, 0, 0, 1},
			[]float64{2, 2, 0, 1},
			[]string{"ttttt", "tstst", "tssst"},
		},
		{
			"a pair lets go in the middle of the way", five,
			[]float64{0, 10, 5},
			[]float64{0, 0, 0, 1},
			[]float64{13. / 30, 13. / 30, 0, 1},
			[]string{"ttttt", "tstst"},
		},
		{"nothing changes", five, []float64{4, 10, 6}, []float64{2, 8, 8, 1}, []float64{2, 8, 8, 1}, []string{"tttst"}},
		{"all grows alike", five, []float64{4, 10, 6}, []float64{2, 8, 8, 1}, []float64{6, 24, 24, 3}, []string{"tttst"}},
		{"two lines never let go", []float64{1, 9}, []float64{0, 5, 10}, []float64{2, 8, 3, 1}, []float64{3, 2, 2, 1}, []string{"tt"}},
		{"each load on its line: no pull from bending", []float64{0, 5, 10}, []float64{0, 5, 10}, []float64{1, 2, 3, 0}, []float64{3, 1, 1, 0}, []string{"ttt"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := problem{lines: c.lines, weights: c.from, length: 10}
			for _, x := range c.points {
				p.loads = append(p.loads, Stretch{x, x})
			}
			p.loads = append(p.loads, Stretch{0, 10})
			turns := p.workTo(c.to).Turns(p.weights, c.to, 1e-9)
			if got := p.sets(t, c.to, turns); !slices.Equal(got, c.sets) {
				t.Errorf("sets %v with turns at %v, want %v", got, turns, c.sets)
			}
			p.straight(t, c.to, turns)
			back := p.between(c.to, 1).workTo(p.weights).Turns(c.to, p.weights, 1e-9)
			slices.Reverse(back)
			for i, b := range back {
				if len(back) != len(turns) || math.Abs(1-b-turns[i]) > 1e-9 {
					t.Errorf("there %v, back %v from the end", turns, back)
				}
			}
		})
	}
}

// straight checks by the oracle that every pull and drop goes straight from each turn to
// the next. Where the beam is not held it checks nothing.
func (p problem) straight(t interface{ Fatalf(string, ...any) }, to, turns []float64) {
	places := append(append([]float64{0}, turns...), 1)
	for i := 1; i < len(places); i++ {
		lo, hi := places[i-1], places[i]
		pullsA, dropsA, missA := p.between(to, lo).oracle().hang()
		pullsB, dropsB, missB := p.between(to, hi).oracle().hang()
		if missA > 1e-9 || missB > 1e-9 {
			continue
		}
		// Where one line alone pulls, the beam balances at any slope, and gaps are what they will.
		tips := balanced(pullsA) || balanced(pullsB)
		for _, share := range []float64{0.1, 0.37, 0.5, 0.8} {
			q := p.between(to, lo+share*(hi-lo))
			weight, _ := q.total()
			pulls, drops, miss := q.oracle().hang()
			if miss > 1e-9 {
				t.Fatalf("not held between %v and %v", lo, hi)
			}
			for j := range pulls {
				pull, drop := pullsA[j]+share*(pullsB[j]-pullsA[j]), dropsA[j]+share*(dropsB[j]-dropsA[j])
				gapOff := !tips && math.Abs(drops[j]-drop) > 1e-8*q.size()
				if gapOff || math.Abs(pulls[j]-pull) > 1e-6*weight+p.rounding() {
					t.Fatalf("line %d between %v and %v: pull %v, straight %v; drop %v, straight %v; turns %v of %+v to %v",
						j, lo, hi, pulls[j], pull, drops[j], drop, turns, p, to)
				}
			}
		}
	}
}

// TestPropTurns: between two turns all is straight, and where the beam ceases to be held is a turn.
func TestPropTurns(t *testing.T) {
	changes := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6)
		to := make([]float64, len(p.weights))
		for i := range to {
			to[i] = float64(rapid.IntRange(0, 1000).Draw(t, "to"))
		}
		to[0]++ // something is carried
		w := p.workTo(to)
		turns := w.Turns(p.weights, to, 1e-9)
		if !slices.IsSorted(turns) || len(turns) > 0 && !(turns[0] > 0 && turns[len(turns)-1] < 1) {
			t.Fatalf("turns %v", turns)
		}
		changes += len(turns)
		p.straight(t, to, turns)
		held := func(share float64) bool {
			q := p.between(to, share)
			w.Load(q.weights)
			return w.Hang(1e-9)
		}
		places := append(append([]float64{0}, turns...), 1)
		for i := 1; i < len(places); i++ {
			lo, hi := places[i-1], places[i]
			if hi-lo > 1e-6 && held(lo+0.05*(hi-lo)) != held(hi-0.05*(hi-lo)) {
				t.Fatalf("it tips somewhere between %v and %v", lo, hi)
			}
		}
	})
	if changes == 0 {
		t.Error("no turn ever: the draw does not test what it should")
	}
}

// Where the beam begins or ceases to be held follows from the moment about a line.
func TestTurnsWhereItTips(t *testing.T) {
	for _, c := range []struct {
		name     string
		lines    []float64
		points   []float64
		from, to []float64 // the last is the beam's own, spread evenly over 0 to 10
		want     []float64
	}{
		{"tips from half the way on", []float64{2, 8}, []float64{0}, []float64{0, 1}, []float64{3, 1}, []float64{0.5}},
		{"held in the middle only", []float64{4, 6}, []float64{0, 10}, []float64{1, 0, 1}, []float64{0, 1, 1}, []float64{0.3, 0.7}},
		{"tips all the way", []float64{2, 8}, []float64{0}, []float64{2, 1}, []float64{3, 1}, nil},
		{"balances on one line at one place", []float64{5}, []float64{4, 6}, []float64{1, 2, 1}, []float64{2, 1, 1}, []float64{0.5 - 2e-9, 0.5 + 2e-9}},
		{"balances on one line", []float64{5}, []float64{4, 6}, []float64{1, 1, 1}, []float64{2, 2, 1}, nil},
		{"no line", nil, []float64{4}, []float64{1, 1}, []float64{2, 1}, nil},
		{"nothing at all to carry", []float64{2, 5, 8}, []float64{4}, []float64{0, 0}, []float64{0, 0}, nil},
	} {
		p := problem{lines: c.lines, weights: c.from, length: 10}
		for _, x := range c.points {
			p.loads = append(p.loads, Stretch{x, x})
		}
		p.loads = append(p.loads, Stretch{0, 10})
		got := p.workTo(c.to).Turns(c.from, c.to, 1e-9)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i, want := range c.want {
			if math.Abs(got[i]-want) > 1e-11 {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}

// TestPropTurnsOfManyLines: under wild loads too each stretch is of one set. Along dozens of spans
// Hang itself tells a gap from none only to some 1e-5 of the weight in a pull.
func TestPropTurnsOfManyLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(9, 24).Draw(t, "lines")
		p := problem{length: float64(n + 1)}
		for i := range n {
			p.lines = append(p.lines, float64(i+1))
		}
		p.loads, p.weights = []Stretch{{0, p.length}}, []float64{100}
		to := []float64{100}
		for range rapid.IntRange(1, 12).Draw(t, "points") {
			at := rapid.Float64Range(0, p.length).Draw(t, "at")
			p.loads, p.weights = append(p.loads, Stretch{at, at}), append(p.weights, rapid.Float64Range(0, 1000).Draw(t, "from"))
			to = append(to, rapid.Float64Range(0, 1000).Draw(t, "to"))
		}
		w := p.workTo(to)
		turns := w.Turns(p.weights, to, 1e-9)
		pulls := func(share float64) ([]float64, bool) {
			w.Load(p.between(to, share).weights)
			held := w.Hang(1e-9)
			return slices.Clone(w.Reaction), held
		}
		places := append(append([]float64{0}, turns...), 1)
		for i := 1; i < len(places); i++ {
			lo, hi := places[i-1], places[i]
			a, heldA := pulls(lo)
			b, heldB := pulls(hi)
			if !heldA || !heldB {
				continue
			}
			for _, share := range []float64{0.01, 0.3, 0.5, 0.77, 0.99} {
				q := p.between(to, lo+share*(hi-lo))
				weight, _ := q.total()
				got, held := pulls(lo + share*(hi-lo))
				if !held {
					t.Fatalf("not held between %v and %v", lo, hi)
				}
				for j := range got {
					if straight := a[j] + share*(b[j]-a[j]); math.Abs(got[j]-straight) > 1e-4*weight {
						t.Fatalf("line %d between %v and %v: %v, straight %v", j, lo, hi, got[j], straight)
					}
				}
			}
		}
	})
}

// The search ends where rounding spoils the proofs: most of these lines hold next to nothing.
func TestTurnsEnd(t *testing.T) {
	var p problem
	p.length = MaxLines + 1
	for i := range MaxLines {
		p.lines = append(p.lines, float64(i+1))
	}
	p.loads, p.weights = []Stretch{{0, p.length}}, []float64{1e-8}
	to := []float64{1e-8}
	for i := range 12 {
		at := float64(7*i*i%65) + 0.3
		p.loads = append(p.loads, Stretch{at, at})
		p.weights = append(p.weights, float64(100*i%701))
		to = append(to, float64(300*i%997))
	}
	turns := p.workTo(to).Turns(p.weights, to, 1e-9)
	if len(turns) > 2*mostLooks || !slices.IsSorted(turns) || slices.ContainsFunc(turns, func(x float64) bool { return !(x > 0 && x < 1) }) {
		t.Errorf("%d turns: %v", len(turns), turns)
	}
}
