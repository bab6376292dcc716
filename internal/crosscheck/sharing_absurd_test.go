package crosscheck

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// absurd draws a batten that nobody would hang: lines from a centimetre to many metres apart and
// up to as many as there may be, on ropes whose stiffness differs by as much as 1e18 between
// one line and the next.
func absurd(number uint64) drawn {
	rng := rand.New(rand.NewPCG(2, number))
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	var d drawn
	b := &d.batten
	b.Pipe = tubes[rng.IntN(len(tubes))]
	n := 2 + rng.IntN(9)
	if rng.IntN(10) == 0 {
		n = load.MaxLines
	}
	// A quarter stands close, so that one batten has both.
	closest := []float64{0.0101, 0.1, 1}[rng.IntN(3)]
	at := between(0, 1)
	trimmed, stiff := rng.IntN(2) == 0, rng.IntN(3)
	for range n {
		l := load.Line{At: units.Metre.Scale(at)}
		if trimmed {
			l.Long = units.Metre.Scale(between(-0.005, 0.005))
		}
		b.Lines = append(b.Lines, l)
		if rng.IntN(4) == 0 {
			at += closest
		} else {
			at += between(1, 4)
		}
	}
	b.Length = b.Lines[n-1].At + units.Metre.Scale(between(0, 1))
	h := hangUp(*b, nil, 0)
	span := h.bending / math.Pow(h.span()/float64(n-1), 3) // how stiff a span of the pipe is
	for i := range b.Lines {
		decades := between(-5.9, 6) // below, package load refuses a line for giving too much
		switch stiff {
		case 0:
			continue
		case 2: // one extreme or the other, or none at all
			k := rng.IntN(3)
			if k == 2 {
				continue
			}
			decades = []float64{-5.9, 6}[k]
		}
		b.Lines[i].Path = 10 * units.Metre
		b.Lines[i].EA = units.Newton.Scale(min(1e12, 10*span*math.Pow(10, decades)))
	}
	for range rng.IntN(6) {
		from, to := b.Length.Scale(rng.Float64()), b.Length.Scale(rng.Float64())
		if rng.IntN(2) == 0 {
			to = from
		}
		d.hang = append(d.hang, load.Item{
			Mass: units.Kilogram.Scale(between(1, 200)), From: min(from, to), To: max(from, to), Taper: between(-1, 1),
		})
	}
	return d
}

// Problem:   the same where float64 runs short of digits.
// Source:    the displacement method in 300 bits, see mesh.
// Given:     battens by chance, see absurd, and the set of tight lines that package load found.
// Expected:  every tension and every gap of that set is of the right sign, which proves the set:
//            there is only one. The figures are those of package load.
// Tolerance: a billionth of the whole weight, and what float64's rounding of trim errors comes to in a
//            pipe that bent to follow them, for package load takes so small a pull for none. Gaps ten
//            billionths of the largest deflection or gap, for lines that hardly hold leave a place
//            no better known; or of what the slack line itself would stretch under the whole
//            weight, for that is how a pull that counts as none shows. A sign may be wrong by
//            as little, where a line just touches.

func TestSharingAgainstExact(t *testing.T) {
	const ofWeight, ofDeflection = 1e-9, 1e-8
	var shared, tipped, slack int
	var worstForce, worstGap float64
	for number := range uint64(400) {
		if t.Failed() {
			break // one is enough to read
		}
		d := absurd(number)
		h := hangUp(d.batten, d.hang, d.trim)
		got, err := d.batten.Share(d.hang, d.trim)
		if tip := new(load.TipError); errors.As(err, &tip) {
			if out := max(h.ropes[0].at-h.centre(), h.centre()-h.ropes[len(h.ropes)-1].at); out < -1e-9*h.span() {
				t.Errorf("batten %d: %v, but the centre of gravity is inside by %v m", number, err, -out)
			}
			tipped++
			continue
		} else if err != nil {
			t.Errorf("batten %d: %v", number, err)
			continue
		}
		tight := make([]bool, len(got.Lines))
		for i, l := range got.Lines {
			tight[i] = !l.Slack
			if l.Slack {
				slack++
			}
		}
		want, ok := exactShare(h, tight)
		if !ok {
			t.Errorf("batten %d: the lines %v do not hold it", number, tight)
			continue
		}
		shared++
		deflection := h.sag()
		for i, r := range h.ropes {
			deflection = max(deflection, want.tension[i]/r.spring, math.Abs(want.gap[i]))
		}
		none := 1e-14 * h.bent() / h.weight()
		for i, l := range got.Lines {
			force := max(math.Abs(l.Tension.In(units.Newton)-want.tension[i]), -want.tension[i]) / h.weight()
			gap := max(math.Abs(l.Gap.In(units.Metre)-want.gap[i]), -want.gap[i]) / max(deflection, h.weight()/h.ropes[i].spring)
			if !(force <= ofWeight+none) || !(gap <= ofDeflection+none) {
				t.Errorf("batten %d of %d lines, line %d: %+v, want tension %v N and gap %v m: off by %.2g of the weight, %.2g of the deflection",
					number, len(tight), i, l, want.tension[i], want.gap[i], force, gap)
			}
			worstForce, worstGap = max(worstForce, force), max(worstGap, gap)
		}
	}
	t.Logf("%d shared with %d slack lines, %d tip; tensions within %.1g of the whole weight, gaps within %.1g",
		shared, slack, tipped, worstForce, worstGap)
	if shared < 200 || slack < 100 {
		t.Error("what was drawn does not test much")
	}
}

// bent is the force that trim errors come to in a pipe that bent to follow them, over the shortest span.
func (d hung) bent() float64 {
	least, low, high := math.Inf(1), d.ropes[0].long, d.ropes[0].long
	for i, r := range d.ropes[1:] {
		least = min(least, r.at-d.ropes[i].at)
		low, high = min(low, r.long), max(high, r.long)
	}
	return 12 * d.bending * (high - low) / math.Pow(least, 3)
}
