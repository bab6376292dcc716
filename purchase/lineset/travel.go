package lineset

import "example.com/steelyard/units"

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

func (s Set) travel(ratio float64) Travel {
	r := s.Rigging
	t := Travel{
		Ratio: ratio, Arbor: r.Run.Travel(r.Arbor), Wanted: s.High - s.Low,
		Low: s.Low, High: s.High, Lowest: r.MadeOff,
		UnderHead: r.HeadBlock - r.Run.UpperStop, UnderFoot: r.Run.LowerStop,
	}
	t.Batten = t.Arbor.Scale(ratio)
	t.ArborWanted = t.Wanted.Scale(1 / ratio)
	t.Highest = t.Lowest + t.Batten
	t.Below = t.Low - t.Lowest
	t.Above = t.Highest - t.High
	_, lowest := r.lowestLoft()
	t.UnderLoft = lowest - t.Highest
	return t
}

// reached gives the trims between which the set is computed: those wanted, as
// far as the set reaches them.
func (t Travel) reached() (low, high units.Length) {
	within := func(x units.Length) units.Length { return min(max(x, t.Lowest), t.Highest) }
	return within(t.Low), within(t.High)
}
