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
// up to as many as there may be, on ropes whose stiffness differs by as much as 1e12 between
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
		switch stiff {
		case 1: // each of any stiffness
			l.EA, l.Path = units.Newton.Scale(math.Pow(10, between(0, 12))), 10*units.Metre
		case 2: // one extreme or the other, or none at all
			if k := rng.IntN(3); k < 2 {
				l.EA, l.Path = units.Newton.Scale([]float64{1, 1e12}[k]), 10*units.Metre
			}
		}
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
//
//	there is only one. The figures are those of package load.
//
// Tolerance: a billionth of the whole weight; gaps a billionth of the deflection of a beam of one
//
//	span, or of the largest deflection or gap where soft ropes let the batten down by more.
//	A sign may be wrong by as little, where a line just touches.
func TestSharingAgainstExact(t *testing.T) {
	const tolerance = 1e-9
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
		for i, l := range got.Lines {
			force := max(math.Abs(l.Tension.In(units.Newton)-want.tension[i]), -want.tension[i]) / h.weight()
			gap := max(math.Abs(l.Gap.In(units.Metre)-want.gap[i]), -want.gap[i]) / deflection
			if !(force <= tolerance) || !(gap <= tolerance) {
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
