package arbor

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Trims is what a show wants of a set's travel, and what the set leaves beyond
// it. Trims are heights of the batten above the deck.
type Trims struct {
	Low         units.Length `json:"low_trim"`     // wanted
	High        units.Length `json:"high_trim"`    // wanted
	Wanted      units.Length `json:"wanted"`       // high trim less low trim
	ArborWanted units.Length `json:"arbor_wanted"` // the arbor travel which that needs, up to the next nanometre
	Below       units.Length `json:"below"`        // overtravel below low trim, at the batten; negative: so much short
	Above       units.Length `json:"above"`        // overtravel above high trim, at the batten; negative: so much short
}

// Reached tells whether the set reaches both trims. One that it just reaches,
// with no overtravel, is reached.
func (t Trims) Reached() bool { return t.Below >= 0 && t.Above >= 0 }

// Trims holds the trims that a show wants against those that the set reaches.
// Trims that are crossed, or no heights, are *units.FieldError under "low_trim"
// and "high_trim". One that is not reached is no error: see Trims.Below and Above.
func (f Flight) Trims(low, high units.Length) (Trims, error) {
	var p check.Problems
	if checkTrims(&p, low, high); p.Err() != nil {
		return Trims{}, p.Err()
	}
	wanted := nanometres(high) - nanometres(low)
	return Trims{
		Low: low, High: high,
		Wanted:      metres(wanted),
		ArborWanted: metres(fractionOf(f.Ride.Ratio).byUp(wanted)),
		Below:       metres(nanometres(low) - nanometres(f.Lowest)),
		Above:       metres(nanometres(f.Highest) - nanometres(high)),
	}, nil
}

// checkTrims notes trims that are no heights, or crossed.
func checkTrims(p *check.Problems, low, high units.Length) {
	lower := height(p, "low_trim", low)
	if height(p, "high_trim", high) && lower && low > high {
		p.Add("low_trim", check.Show(low), "at most the high trim, "+check.Show(high), units.ErrOutOfRange)
	}
}
