package beam

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// with is the problem with one figure of a list of one per line changed.
func with(list []float64, n, i int, v float64) []float64 {
	changed := make([]float64, n)
	copy(changed, list)
	changed[i] = v
	return changed
}

// TestStifferCarriesMore: a line made stiffer never carries less. Its pull is R in y(R) = low + give·R, where y is
// how far the beam sinks there when the line is a given pull R, and that falls as R grows, whether
// the other lines are supports or may go slack. So trim errors make no difference, its own too: one that is
// long and pulls has been reached. A support that pushes pushes the more.
func TestStifferCarriesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		n := len(p.lines)
		i := rapid.IntRange(0, n-1).Draw(t, "line")
		soft := math.Pow10(rapid.IntRange(-2, 3).Draw(t, "give in tens"))
		stiff := soft * float64(rapid.IntRange(0, 9).Draw(t, "tenths")) / 10
		a, b := p, p
		a.give, b.give = with(p.give, n, i, soft), with(p.give, n, i, stiff)
		wa, wb := a.work(), b.work()
		weight, _ := p.total()
		wa.Hold(All(n))
		wb.Hold(All(n))
		ra, rb := wa.Reaction[i], wb.Reaction[i]
		size := math.Max(weight, math.Abs(rb))
		if tol := 1e-7*size + p.rounding(); math.Abs(rb) < math.Abs(ra)-tol || ra*rb < -tol*size {
			t.Fatalf("as a support: %v, stiffer %v", ra, rb)
		}
		heldA, heldB := wa.Hang(1e-9), wb.Hang(1e-9)
		if heldA && heldB && wb.Reaction[i] < wa.Reaction[i]-1e-7*weight-p.rounding() {
			t.Fatalf("hung: %v, stiffer %v", wa.Reaction[i], wb.Reaction[i])
		}
	})
}

// TestShorterCarriesMore: a line made shorter never carries less, for the same reason.
func TestShorterCarriesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		n := len(p.lines)
		i := rapid.IntRange(0, n-1).Draw(t, "line")
		weight, _ := p.total()
		b := p
		b.low = with(p.low, n, i, at(p.low, i)-weight*math.Pow10(rapid.IntRange(-4, 1).Draw(t, "shorter by")))
		wa, wb := p.work(), b.work()
		wa.Hold(All(n))
		wb.Hold(All(n))
		if tol := 1e-7*math.Max(weight, math.Abs(wb.Reaction[i])) + b.rounding(); wb.Reaction[i] < wa.Reaction[i]-tol {
			t.Fatalf("as a support: %v, shorter %v", wa.Reaction[i], wb.Reaction[i])
		}
		heldA, heldB := wa.Hang(1e-9), wb.Hang(1e-9)
		if heldA != heldB {
			t.Skip("balanced on the edge")
		}
		if heldA && wb.Reaction[i] < wa.Reaction[i]-1e-7*weight-b.rounding() {
			t.Fatalf("hung: %v, shorter %v", wa.Reaction[i], wb.Reaction[i])
		}
	})
}

// TestNearlyRigid: as the lines' give goes to nothing, pulls go to those of rigid lines, and what they
// still differ by goes in proportion to it.
func TestNearlyRigid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		n := len(p.lines)
		least := math.Inf(1)
		for i := 1; i < n; i++ {
			least = min(least, p.lines[i]-p.lines[i-1])
		}
		p.give = nil
		kinds := make([]float64, n)
		for i := range kinds {
			kinds[i] = float64(rapid.IntRange(0, 9).Draw(t, "give"))
		}
		pulls := func(share float64) []float64 {
			q := p
			q.give = make([]float64, n)
			for i, g := range kinds {
				q.give[i] = g * share * least * least * least
			}
			w := q.work()
			w.Hold(All(n))
			return w.Reaction
		}
		rigid, once, twice := pulls(0), pulls(1e-6), pulls(2e-6)
		most, size := 0.0, 0.0
		for i := range rigid {
			most = max(most, math.Abs(once[i]-rigid[i]))
			size = max(size, math.Abs(rigid[i]))
		}
		if most > 1e-2*size {
			t.Fatalf("pulls %v, rigid %v", once, rigid)
		}
		for i, r := range rigid {
			if math.Abs(twice[i]-r-2*(once[i]-r)) > 2e-3*most+1e-9*size+p.rounding() {
				t.Fatalf("line %d: rigid %v, %v with a little give, %v with twice that", i, r, once[i], twice[i])
			}
		}
	})
}

// TestVerySoft: on lines that all give alike and far more than the beam bends, it is a rigid bar: its level
// a + b·x is at each line low + give·R, with the sum of R and of R·x given.
func TestVerySoft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		n := len(p.lines)
		weight, moment := p.total()
		const give = 1e9
		var middle, square float64
		p.low, p.give = make([]float64, n), make([]float64, n)
		for i, x := range p.lines {
			p.give[i] = give
			p.low[i] = weight * give * float64(rapid.IntRange(-10, 10).Draw(t, "low")) / 100
			middle += x / float64(n)
		}
		var lean, mean float64 // the straight line that fits the lows best
		for i, x := range p.lines {
			square += (x - middle) * (x - middle)
			lean += p.low[i] * (x - middle)
			mean += p.low[i] / float64(n)
		}
		lean /= square
		w := p.work()
		w.Hold(All(n))
		size := weight * max(1, 144/square)
		for i, x := range p.lines {
			want := weight/float64(n) + (moment-weight*middle)*(x-middle)/square + (mean+lean*(x-middle)-p.low[i])/give
			if math.Abs(w.Reaction[i]-want) > 1e-4*size {
				t.Fatalf("line %d: %v, want %v", i, w.Reaction[i], want)
			}
		}
	})
}

// TestScaling: all weights and trim errors four times as great, or in a unit that is a power of two far off, all pulls and gaps are, to the
// last bit; three times, to rounding.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		times := func(c float64) *Work {
			q := p
			q.weights, q.low = slices.Clone(p.weights), slices.Clone(p.low)
			for i := range q.weights {
				q.weights[i] *= c
			}
			for i := range q.low {
				q.low[i] *= c
			}
			return q.work()
		}
		once, thrice := times(1), times(3)
		held := once.Hang(1e-9)
		for _, c := range []float64{4, 0x1p-60, 0x1p60} {
			more := times(c)
			if more.Hang(1e-9) != held {
				t.Fatalf("held once and not with %v times the weight, or the other way round", c)
			}
			sag, hog, shear := once.Extremes()
			sagMore, hogMore, shearMore := more.Extremes()
			for i, m := range []Peak{sag, hog, shear} {
				if m.Value *= c; m != []Peak{sagMore, hogMore, shearMore}[i] {
					t.Fatalf("extremes %v %v %v, then %v %v %v", sag, hog, shear, sagMore, hogMore, shearMore)
				}
			}
			for i := range p.lines {
				if more.Reaction[i] != c*once.Reaction[i] || more.Deflection[i] != c*once.Deflection[i] {
					t.Fatalf("pulls %v and %v, drops %v and %v", once.Reaction, more.Reaction, once.Deflection, more.Deflection)
				}
			}
		}
		once.Hold(All(len(p.lines)))
		thrice.Hold(All(len(p.lines)))
		size := 0.0
		for _, r := range once.Reaction {
			size = max(size, math.Abs(r))
		}
		for i, r := range once.Reaction {
			if math.Abs(thrice.Reaction[i]-3*r) > 1e-11*size+3*p.rounding() {
				t.Fatalf("pull %d: %v, then %v", i, r, thrice.Reaction[i])
			}
		}
	})
}

// TestTradeAgainstSettle: the quick search and the one that always ends come to the same.
func TestTradeAgainstSettle(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 10)
		n := len(p.lines)
		weight, _ := p.total()
		a, b := p.work(), p.work()
		none := float64(roundoff*weight) + a.slight
		a.Hold(All(n))
		if a.pull(none) {
			return
		}
		byTrade, bySettle := a.trade(none), b.settle(none)
		if byTrade && !bySettle {
			t.Fatal("trade holds what settle does not")
		}
		if !byTrade || !bySettle {
			return
		}
		compared++
		for i := range p.lines {
			gapOff := math.Abs(min(0, a.Deflection[i])-min(0, b.Deflection[i])) > 1e-8*p.size() && !balanced(a.Reaction)
			if gapOff || math.Abs(a.Reaction[i]-b.Reaction[i]) > 1e-7*weight+p.rounding() {
				t.Fatalf("line %d: trade %v %v, settle %v %v", i, a.Reaction, a.Deflection, b.Reaction, b.Deflection)
			}
		}
	})
	if compared == 0 {
		t.Error("trade never had anything to do: the draw does not test what it should")
	}
}

// TestSetLow: trim errors given to a Work are those of a Beam, and nothing of earlier ones stays.
func TestSetLow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		q := p
		q.low = make([]float64, len(p.lines))
		for i := range q.low {
			q.low[i] = float64(rapid.IntRange(-100, 100).Draw(t, "low"))
		}
		set := rapid.Uint64Range(1, All(len(p.lines))).Draw(t, "set")
		if set&(set-1) == 0 {
			set = All(len(p.lines))
		}
		given, fresh := p.work(), q.work()
		given.Hold(set)
		given.SetLow(q.low)
		for _, w := range []*Work{given, fresh} {
			w.Hold(set)
			w.Deflect()
		}
		if !slices.Equal(given.Reaction, fresh.Reaction) || !slices.Equal(given.Deflection, fresh.Deflection) {
			t.Fatalf("%v %v, want %v %v", given.Reaction, given.Deflection, fresh.Reaction, fresh.Deflection)
		}
	})
}
