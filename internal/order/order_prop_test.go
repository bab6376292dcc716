package order_test

import (
	"math/bits"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/order"
)

// drawProblem is a random problem with up to 7 things and 12 pieces. Half of them have an order that is known, the rest few.
func drawProblem(t *rapid.T, positions int) *order.Problem {
	return drawSized(t, positions, rapid.IntRange(0, 12).Draw(t, "pieces"), rapid.IntRange(0, 7).Draw(t, "things"))
}

func drawSized(t *rapid.T, positions, pieces, things int) *order.Problem {
	p := &order.Problem{Pieces: pieces}
	for things > 0 {
		item := order.Item{Count: rapid.IntRange(1, min(things, 3)).Draw(t, "alike")}
		whole := rapid.Int64Range(1, 40).Draw(t, "mass")
		for at := range positions {
			share := int64(positions - 1 - at)
			item.Carried = append(item.Carried, max(0, whole-share*rapid.Int64Range(0, 9).Draw(t, "on deck")))
		}
		things -= item.Count
		p.Items = append(p.Items, item)
	}
	wide := rapid.SampledFrom([]int64{40, 100, 300}).Draw(t, "the widest limit")
	for at := range positions {
		halt := at == 0 || rapid.Bool().Draw(t, "halt")
		position := order.Position{Halt: halt, Deck: halt && (at == 0 || rapid.Bool().Draw(t, "deck"))}
		few := rapid.Bool().Draw(t, "few in reach")
		for range p.Pieces {
			position.Reach = append(position.Reach, !few && at == 0 || rapid.Bool().Draw(t, "in reach"))
		}
		position.End = rapid.IntRange(0, 4).Draw(t, "end") > 0
		if halt && rapid.IntRange(0, 3).Draw(t, "judged with others") == 0 {
			position.Also = rapid.SliceOfN(rapid.IntRange(0, positions-1), 1, 2).Draw(t, "others")
		}
		p.Positions = append(p.Positions, position)
		light, heavy := rapid.Int64Range(0, wide).Draw(t, "arbor-heavy limit"), rapid.Int64Range(0, wide).Draw(t, "batten-heavy limit")
		var low, high, even []int64
		sum := rapid.Int64Range(-20, 20).Draw(t, "at first")
		for range p.Pieces + 1 {
			low, high, even = append(low, sum-light), append(high, sum+heavy), append(even, sum)
			sum += rapid.Int64Range(0, 25).Draw(t, "piece")
		}
		p.Low, p.High, p.Even = append(p.Low, low), append(p.High, high), append(p.Even, even)
	}
	if len(p.Items) > 1 && rapid.IntRange(0, 3).Draw(t, "barred") == 0 {
		// As on a batten that tips: the first thing weighs to one side, the last to the other.
		most := rapid.IntRange(0, 2).Draw(t, "lean")
		p.Barred = func(at int, hung []int) bool { return hung[0]-hung[len(hung)-1] > most+at }
	}
	if rapid.Bool().Draw(t, "led") {
		lead(t, p)
	}
	return p
}

// lead goes through a random order and makes the bounds as narrow as let it through, so that there is one, mostly with more
// than one hand-over.
func lead(t *rapid.T, p *order.Problem) {
	const never = 1 << 40
	for at := range p.Positions {
		for n := range p.Pieces + 1 {
			p.Low[at][n], p.High[at][n] = never, -never
		}
	}
	p.Barred = nil
	left, things := make([]int, len(p.Items)), 0
	for i, item := range p.Items {
		left[i] = item.Count
		things += item.Count
	}
	at, pieces := p.Start, 0
	seeOne := func(at int) {
		var sum int64
		for i, item := range p.Items {
			sum += int64(item.Count-left[i]) * item.Carried[at]
		}
		p.Low[at][pieces] = min(p.Low[at][pieces], sum)
		p.High[at][pieces] = max(p.High[at][pieces], sum)
	}
	see := func(at int) {
		seeOne(at)
		for _, other := range p.Positions[at].Also {
			seeOne(other)
		}
	}
	see(at)
	for things > 0 || pieces < p.Pieces {
		here := &p.Positions[at]
		switch what := rapid.IntRange(0, 8).Draw(t, "done"); {
		case what < 4 && things > 0:
			here.Deck = true
			i := rapid.IntRange(0, len(left)-1).Draw(t, "thing")
			for left[i] == 0 {
				i = (i + 1) % len(left)
			}
			left[i]--
			things--
			see(at)
		case what < 8:
			for range rapid.IntRange(1, 4).Draw(t, "so many") {
				if pieces < p.Pieces {
					here.Reach[pieces] = true
					pieces++
					see(at)
				}
			}
		default:
			to := rapid.IntRange(0, len(p.Positions)-1).Draw(t, "to")
			for at != to {
				if at < to {
					at++
				} else {
					at--
				}
				see(at)
			}
			p.Positions[at].Halt = true
		}
	}
	p.Positions[at].End = true
	for at := range p.Positions {
		low, high, even := p.Low[at], p.High[at], p.Even[at]
		for n := 1; n < len(high); n++ {
			high[n] = max(high[n], high[n-1])
			low[len(low)-1-n] = min(low[len(low)-1-n], low[len(low)-n])
		}
		for n := range even {
			even[n] = low[n] + (high[n]-low[n])/2
			if n > 0 {
				even[n] = max(even[n], even[n-1])
			}
		}
	}
}

// situation is a state of the exhaustive search: which of the things hang (each by itself, however alike), how many
// pieces are in, where, and who worked last.
type situation struct {
	hung           uint
	pieces, at     int
	side           int // -1: nobody yet
	hands, flights int
}

// exhaustive goes through everything that could be done, without a thought, and gives the least cost, hand-overs
// first.
func exhaustive(p *order.Problem) (hands, flights int, found bool) {
	var kinds []int
	for i, item := range p.Items {
		for range item.Count {
			kinds = append(kinds, i)
		}
	}
	carried := func(s situation) (sum int64) {
		for k, i := range kinds {
			if s.hung>>k&1 != 0 {
				sum += p.Items[i].Carried[s.at]
			}
		}
		return sum
	}
	alone := func(s situation) bool {
		if p.Barred != nil {
			hung := make([]int, len(p.Items))
			for k, i := range kinds {
				hung[i] += int(s.hung >> k & 1)
			}
			if p.Barred(s.at, hung) {
				return false
			}
		}
		c := carried(s)
		return p.Low[s.at][s.pieces] <= c && c <= p.High[s.at][s.pieces]
	}
	allowed := func(s situation) bool {
		if !alone(s) {
			return false
		}
		for _, s.at = range p.Positions[s.at].Also {
			if !alone(s) {
				return false
			}
		}
		return true
	}
	type place struct {
		hung             uint
		pieces, at, side int
	}
	start := situation{at: p.Start, side: -1}
	if !allowed(start) {
		return 0, 0, false
	}
	best := map[place][2]int{{side: -1, at: p.Start}: {0, 0}}
	queue := []situation{start}
	for len(queue) > 0 {
		s := queue[0]
		queue = queue[1:]
		if best[place{s.hung, s.pieces, s.at, s.side}] != [2]int{s.hands, s.flights} {
			continue // a better way was found since
		}
		if bits.OnesCount(s.hung) == len(kinds) && s.pieces == p.Pieces && p.Positions[s.at].Halt && p.Positions[s.at].End {
			if !found || s.hands < hands || s.hands == hands && s.flights < flights {
				hands, flights, found = s.hands, s.flights, true
			}
		}
		try := func(n situation) {
			if !allowed(n) {
				return
			}
			key, now := place{n.hung, n.pieces, n.at, n.side}, [2]int{n.hands, n.flights}
			if old, ok := best[key]; ok && (old[0] < now[0] || old[0] == now[0] && old[1] <= now[1]) {
				return
			}
			best[key] = now
			queue = append(queue, n)
		}
		work := func(n situation, side int) {
			if s.side >= 0 && s.side != side {
				n.hands++
			}
			n.side = side
			try(n)
		}
		for k := range kinds {
			if s.hung>>k&1 == 0 && p.Positions[s.at].Deck {
				n := s
				n.hung |= 1 << k
				work(n, 0)
			}
		}
		if s.pieces < p.Pieces && p.Positions[s.at].Halt && p.Positions[s.at].Reach[s.pieces] {
			n := s
			n.pieces++
			work(n, 1)
		}
		for _, step := range []int{1, -1} {
			n := s
			n.flights++
			for n.at += step; n.at >= 0 && n.at < len(p.Positions) && allowed(n); n.at += step {
				if p.Positions[n.at].Halt {
					try(n)
				}
			}
		}
	}
	return hands, flights, found
}

// agrees holds the search against the exhaustive one, and what it found against the rules.
func agrees(t *rapid.T, p *order.Problem) {
	hands, flights, found := exhaustive(p)
	o, ok := order.Best(p)
	if ok != found || order.Possible(p) != found {
		t.Fatalf("found %v, possible %v, by exhaustive search %v", ok, order.Possible(p), found)
	}
	if !ok {
		return
	}
	if o.HandOvers != hands || o.Flights != flights {
		t.Fatalf("%d hand-overs and %d flights, by exhaustive search %d and %d", o.HandOvers, o.Flights, hands, flights)
	}
	left := make([]int, len(p.Items))
	for i, item := range p.Items {
		left[i] = item.Count
	}
	at, pieces, side := p.Start, 0, -1
	var holds func(at int)
	check := func() {
		holds(at)
		for _, other := range p.Positions[at].Also {
			holds(other)
		}
	}
	holds = func(at int) {
		var sum int64
		for i, item := range p.Items {
			sum += int64(item.Count-left[i]) * item.Carried[at]
		}
		hung := make([]int, len(left))
		for i, item := range p.Items {
			hung[i] = item.Count - left[i]
		}
		if p.Barred != nil && p.Barred(at, hung) {
			t.Fatalf("%v leads through a choice that is barred", o.Moves)
		}
		if sum < p.Low[at][pieces] || sum > p.High[at][pieces] {
			t.Fatalf("%v leads through a state that is not allowed", o.Moves)
		}
	}
	work := func(by int) {
		if side >= 0 && side != by {
			hands--
		}
		side = by
	}
	check()
	for _, m := range o.Moves {
		switch m.Kind {
		case order.Hang:
			if left[m.Item]--; left[m.Item] < 0 || !p.Positions[at].Deck {
				t.Fatalf("%v cannot be hung", m)
			}
			work(0)
		case order.Add:
			if !p.Positions[at].Reach[pieces] {
				t.Fatalf("%v cannot be put in", m)
			}
			pieces++
			work(1)
		case order.Fly:
			flights--
			for at != m.Position {
				if at < m.Position {
					at++
				} else {
					at--
				}
				check()
			}
			if !p.Positions[at].Halt {
				t.Fatalf("%v halts where nobody can", m)
			}
		}
		check()
	}
	for i, n := range left {
		if n != 0 {
			t.Fatalf("%d of item %d left", n, i)
		}
	}
	if !p.Positions[at].End {
		t.Fatalf("%v ends where it must not", o.Moves)
	}
	if pieces != p.Pieces || hands != 0 || flights != 0 {
		t.Fatalf("%d of %d pieces in; %d hand-overs and %d flights told of and not made", pieces, p.Pieces, hands, flights)
	}
}

// At one trim: up to 7 things and 12 pieces, against every order that there is.
func TestPropAgainstExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { agrees(t, drawProblem(t, 1)) })
}

// The same with flights between up to five positions, some of which are only flown through.
func TestPropFlyingAgainstExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { agrees(t, drawProblem(t, rapid.IntRange(2, 5).Draw(t, "positions"))) })
}

// More pieces than a word has bits.
func TestPropManyPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawSized(t, rapid.IntRange(1, 2).Draw(t, "positions"), rapid.IntRange(60, 140).Draw(t, "pieces"), rapid.IntRange(0, 3).Draw(t, "things"))
		for at := range p.Positions {
			// So many of them are heavier than the things: the last of them are made weightless, in reach or not.
			for n := 4; n <= p.Pieces; n++ {
				p.Low[at][n], p.High[at][n], p.Even[at][n] = p.Low[at][3], p.High[at][3], p.Even[at][3]
			}
			for n := range p.Pieces {
				p.Positions[at].Reach[n] = p.Positions[at].Reach[n] || n%64 > 4 && n%64 < 60
			}
		}
		agrees(t, p)
	})
}

// An order that keeps within bounds keeps within wider ones, and needs no more hand-overs there.
func TestPropWiderIsNoHarder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, rapid.IntRange(1, 3).Draw(t, "positions"))
		widen := func(by int64) {
			for at := range p.Positions {
				for n := range p.Low[at] {
					p.Low[at][n] -= by
					p.High[at][n] += by
				}
			}
		}
		narrow, found := order.Best(p)
		for by := int64(1); !found && by <= 512; by *= 2 { // most have an order once the bounds are wide enough
			widen(by)
			narrow, found = order.Best(p)
		}
		widen(rapid.Int64Range(0, 30).Draw(t, "wider by"))
		wide, still := order.Best(p)
		if found && (!still || wide.HandOvers > narrow.HandOvers) {
			t.Fatalf("%d hand-overs, within narrower bounds %d", wide.HandOvers, narrow.HandOvers)
		}
	})
}
