package arbor

import (
	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Access is what a loading bridge is good for over the whole travel of an arbor
// with one stack: which pieces come into reach at some trim, and whether the
// arbor goes by with pieces above all reach.
type Access struct {
	Bridge string      `json:"bridge"`
	Rows   []RowAccess `json:"rows,omitempty"` // from the bottom up, rows without pieces left out

	Pieces  int `json:"pieces"`  // of pipe and show weight
	Reached int `json:"reached"` // of them, those that are wholly in reach at some trim

	// Over is how far the top of the stack stands above the highest that arms reach while the arbor is against its upper
	// stop; negative: it stays so much below. Where it is above, OverAt holds the trims at which pieces are above reach,
	// from the lowest trim up to the one at which the top of the stack has come down to reach.
	Over   units.Length `json:"over"`
	OverAt Window       `json:"over_at"`
}

// RowAccess is what comes into reach of one row of a stack.
type RowAccess struct {
	Row     Row    `json:"row"`
	Show    bool   `json:"show"`    // show weight; false: pipe weight
	Reached int    `json:"reached"` // of its pieces, those that are wholly in reach at some trim
	Lowest  Window `json:"lowest"`  // trims at which its lowest piece is in reach
	Highest Window `json:"highest"` // trims at which its highest piece is in reach
}

// Passes tells whether the arbor ever stands or goes by with pieces above the
// reach of arms, where they can be neither put in nor taken out.
func (a Access) Passes() bool { return a.OverAt.Ever }

// Access tells which pieces of a stack come into reach from the bridge of that
// name, and at which trims. Errors are those of Reach.
func (f Flight) Access(bridge string, s Stack) (Access, error) {
	var p check.Problems
	b, err := f.Run.bridge(bridge)
	p.Within("", "", err)
	pieces, err := pileOf(s, f.Frame)
	p.Within("", "", err)
	if err := p.Err(); err != nil {
		return Access{}, err
	}
	out := Access{Bridge: bridge, Pieces: pieces.pieces}
	from, to := b.band()
	lowest, highest := nanometres(f.LowestTop), nanometres(f.HighestTop)
	rods := nanometres(f.Ride.Bed) - nanometres(f.Frame.Length) // of the bed, from the arbor's top
	// At some trim a piece is in reach that fits into the band, is not too low when the arbor is highest, and not too
	// high when it is lowest.
	first, end := pieces.between(from-rods-highest, to-rods-lowest)
	for _, c := range pieces.courses {
		row := RowAccess{Row: c.row, Show: c.show}
		last := c.first + c.row.Count - 1
		if c.each <= to-from {
			row.Reached = max(0, min(end, last+1)-max(first, c.first))
		}
		row.Lowest = f.window(b, pieces.bottom(c.first), pieces.top(c.first))
		row.Highest = f.window(b, pieces.bottom(last), pieces.top(last))
		out.Reached += row.Reached
		out.Rows = append(out.Rows, row)
	}
	if pieces.pieces == 0 {
		out.Over = metres(highest + rods - to)
		return out, nil
	}
	tip := pieces.top(pieces.pieces - 1)
	out.Over = metres(highest + rods + tip - to)
	if highest+rods+tip > to {
		out.OverAt = Window{true, f.Lowest, metres(f.trim(max(to-tip-rods, lowest)))}
	}
	return out, nil
}
