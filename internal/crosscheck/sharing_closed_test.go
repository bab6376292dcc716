package crosscheck

import (
	"math"
	"testing"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

// Problem:   a pipe's own weight on three lines, the middle one a spring that hangs too low by some.
// Source:    superposition of two textbook cases of the beam of one span L (Roark's Formulas
//            for Stress and Strain): it sags in the middle by 5wL⁴/384EI under its own weight and
//            by FL³/48EI under a force there.
// Expected:  middle tension (5wL⁴/384EI − low) / (L³/48EI + 1/k), or a gap of low − 5wL⁴/384EI.
// Tolerance: rounding.
//
// It is a test of the references as well as of package load.

func TestThreeLinesInClosedForm(t *testing.T) {
	b := load.Batten{Length: 8 * units.Metre, Pipe: tubes[1], Fittings: 10 * units.Kilogram, Lines: load.Spaced(0, 4*units.Metre, 3)}
	h := hangUp(b, nil, 0)
	w, length, ei := h.weight()/8, h.length, h.bending
	sag := 5 * w * math.Pow(length, 4) / (384 * ei)
	for _, row := range []struct {
		name string
		ea   units.Force
		low  float64 // in sags
	}{
		{"level and rigid: 5/8 of all", 0, 0},
		{"level spring", 1000 * units.Kilonewton, 0},
		{"soft spring", 1 * units.Kilonewton, 0},
		{"rigid, low by a fifth of the sag", 0, 0.2},
		{"spring, low by a fifth of the sag", 1000 * units.Kilonewton, 0.2},
		{"rigid, short: it takes more", 0, -0.2},
		{"rigid, slack", 0, 1.5},
		{"spring, slack", 1000 * units.Kilonewton, 1.5},
	} {
		d := b
		d.Lines = load.Spaced(0, 4*units.Metre, 3)
		middle := &d.Lines[1]
		middle.Long = units.Metre.Scale(row.low * sag)
		give := 0.0
		if row.ea > 0 {
			middle.EA, middle.Path = row.ea, 20*units.Metre
			give = 20 / row.ea.In(units.Newton)
		}
		tension := max(0, (sag-row.low*sag)/(math.Pow(length, 3)/(48*ei)+give))
		gap := max(0, row.low*sag-sag)
		slack := tension == 0

		h := hangUp(d, nil, 0)
		near := func(who string, gotTension, gotGap float64) {
			t.Helper()
			if math.Abs(gotTension-tension) > 1e-11*h.weight() || math.Abs(gotGap-gap) > 1e-11*sag {
				t.Errorf("%s: %s: %v N and gap %v m, want %v and %v", row.name, who, gotTension, gotGap, tension, gap)
			}
		}
		s := enumerate(h)
		near("enumerated", s.tension[1], s.gap[1])
		exact, ok := exactShare(h, []bool{true, !slack, true})
		if !ok {
			t.Errorf("%s: no exact solution", row.name)
			continue
		}
		near("exact", exact.tension[1], exact.gap[1])
		ours, err := d.Share(nil, 0)
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
			continue
		}
		near("ours", ours.Lines[1].Tension.In(units.Newton), ours.Lines[1].Gap.In(units.Metre))
	}
}

// Problem:   rigid lines as the limit of springs.
// Source:    the equations: with all springs k, the pulls differ from those of rigid lines by a series
//            in 1/k.
// Given:     battens by chance, without what is close to a change, each on springs that are 1e8,
//            1e9 and 1e14 without dimensions.
// Expected:  from the first to the second a tenth of the difference, and for the third none.
// Tolerance: what is allowed for the tensions themselves, and a tenth for the series' next term.

func TestRigidIsTheLimitOfSprings(t *testing.T) {
	var compared int
	for number := range uint64(1500) {
		d := draw(3, number)
		for i := range d.batten.Lines {
			d.batten.Lines[i].EA, d.batten.Lines[i].Path = 0, 0
		}
		h := hangUp(d.batten, d.hang, d.trim)
		if n := len(h.ropes); n == 1 || h.centre() < h.ropes[0].at || h.centre() > h.ropes[n-1].at {
			continue
		}
		rigid := enumerate(h)
		if rigid.margin < 1e-5 {
			continue // the springs' stretch would change the set
		}
		compared++
		var off [3]float64
		for k, stiff := range [3]float64{1e8, 1e9, 1e14} {
			for i := range d.batten.Lines {
				l := &d.batten.Lines[i]
				l.EA = 1e12 * units.Newton // only EA over Path counts, and both are bounded
				l.Path = units.Metre.Scale(1e12 / stiff / h.bending * math.Pow(h.span(), 3))
			}
			s, err := d.batten.Share(d.hang, d.trim)
			if err != nil {
				t.Errorf("batten %d: %v", number, err)
				continue
			}
			for i, l := range s.Lines {
				off[k] = max(off[k], math.Abs(l.Tension.In(units.Newton)-rigid.tension[i])/h.weight())
			}
		}
		if allowed := drawnAgree.force; math.Abs(off[1]-off[0]/10) > off[0]/100+allowed || off[2] > allowed {
			t.Errorf("batten %d: springs of 1e8, 1e9, 1e14 are off by %.3g of the weight", number, off)
		}
	}
	if compared < 200 {
		t.Errorf("%d battens compared", compared)
	}
}
