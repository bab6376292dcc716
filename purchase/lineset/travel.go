package lineset

import (
	"errors"
	"strings"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Travel is what the arbor's run gives the batten, against what the show wants.
// Trims and heights are above the deck.
type Travel struct {
	Ratio       float64      `json:"ratio"`        // batten travel for each unit of arbor travel
	Arbor       units.Length `json:"arbor"`        // the arbor's travel between its stops
	Batten      units.Length `json:"batten"`       // the batten's: the ratio times the arbor's
	Wanted      units.Length `json:"wanted"`       // high trim less low trim
	ArborWanted units.Length `json:"arbor_wanted"` // the arbor travel that needs

	Low     units.Length `json:"low_trim"`  // wanted
	High    units.Length `json:"high_trim"` // wanted
	Lowest  units.Length `json:"lowest"`    // reached, with the arbor against its upper stop
	Highest units.Length `json:"highest"`   // reached, with the arbor on its lower stop

	Below units.Length `json:"below"` // overtravel below low trim, at the batten; negative: so much short
	Above units.Length `json:"above"` // overtravel above high trim, at the batten; negative: so much short

	UnderLoft units.Length `json:"under_loft_blocks"` // from the batten at its highest up to the loft blocks, the lowest of them
	UnderHead units.Length `json:"under_head_block"`  // from the arbor's top at its highest up to the head block
	UnderFoot units.Length `json:"under_arbor"`       // clear height between the deck and the arbor's foot at its lowest
}

// flight is how the arbor flies, and the batten with it, under a ratio that the ropes make. What stands around the
// run is the rigging's, of which the run may say no other.
func (r Rigging) flight(ratio float64) (arbor.Flight, error) {
	run := r.Run
	run.HeadBlock = r.HeadBlock
	_, run.LoftBlocks = r.lowestLoft()
	return run.Fly(r.Arbor, arbor.Ride{Ratio: ratio, MadeOff: r.MadeOff, Bed: r.Bed})
}

// checkRun notes a height that the run tells otherwise than the rigging does.
func (r Rigging) checkRun(p *check.Problems) {
	_, loft := r.lowestLoft()
	for _, h := range []struct {
		field     string
		own, ours units.Length
		want      string
	}{
		{"run.head_block", r.Run.HeadBlock, r.HeadBlock, "left out, or the rigging's own head block, at "},
		{"run.loft_blocks", r.Run.LoftBlocks, loft, "left out, or the lowest of the rigging's own loft blocks, at "},
	} {
		if h.own != 0 && !h.own.Within(h.ours, units.Millimetre) {
			p.Add(h.field, check.Show(h.own), h.want+check.Show(h.ours), units.ErrOutOfRange)
		}
	}
}

// renameFlight gives the faults of a flight under the names that the reader wrote. Run and arbor were found right by
// themselves.
func (r Rigging) renameFlight(err error) error {
	var p check.Problems
	for _, e := range flatten(err) {
		var fe *units.FieldError
		if !errors.As(e, &fe) {
			p.Within("", "", e)
			continue
		}
		c := *fe
		c.Field = strings.TrimPrefix(c.Field, "ride.")
		if c.Field == "loft_blocks" {
			line, _ := r.lowestLoft()
			c.Field = r.loftField(line)
		}
		p.Within("", "", &c)
	}
	return p.Err()
}

// travel holds what the show wants against a flight.
func (s Set) travel(f *arbor.Flight) (Travel, error) {
	t, err := f.Trims(s.Low, s.High)
	return Travel{
		Ratio: f.Ride.Ratio, Arbor: f.Arbor, Batten: f.Batten, Wanted: t.Wanted, ArborWanted: t.ArborWanted,
		Low: t.Low, High: t.High, Lowest: f.Lowest, Highest: f.Highest, Below: t.Below, Above: t.Above,
		UnderLoft: f.UnderLoft.Clear, UnderHead: f.UnderHead.Clear, UnderFoot: f.UnderArbor,
	}, err
}

// reached gives the trims between which the set is computed: those wanted, as
// far as the set reaches them.
func (t Travel) reached() (low, high units.Length) {
	within := func(x units.Length) units.Length { return min(max(x, t.Lowest), t.Highest) }
	return within(t.Low), within(t.High)
}
