package arbor

import (
	"sort"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Compact is how compact pieces must be for a mass to find room in an arbor. It
// takes the pieces as if they could be cut to any thickness, so it is the least:
// whole pieces may need to be a little more compact.
type Compact struct {
	Wanted    units.Mass     `json:"wanted"`     // what the arbor must hold beside its lock plate, plates among it; zero where its tare alone is enough
	Plates    int            `json:"plates"`     // spreader plates that the stack then has
	PlateMass units.Mass     `json:"plate_mass"` // of all plates
	Pieces    units.Mass     `json:"pieces"`     // what is left for the pieces
	Height    units.Length   `json:"height"`     // of the pieces alone, in the room that the plates leave
	PerHeight units.LineMass `json:"per_height"` // least mass for each unit of stack height

	// Over is the mass wanted less the arbor's capacity: where it is positive, no piece is compact enough.
	Over units.Mass `json:"over"`
}

// Thickness is how thick a piece of the given mass may be at most. Where no pieces
// are wanted, or the mass is not a positive number, it is zero.
func (c Compact) Thickness(piece units.Mass) units.Length {
	if !(piece > 0) || !(c.Pieces > 0) || piece > heaviestPiece {
		return 0
	}
	return c.Height.Scale(units.Ratio(piece, c.Pieces))
}

// Density is the least that pieces of a given length and width must have, taken as
// full rectangles as in Block: to be held against that of steel or lead. A length
// or a width that is no piece's is a *units.FieldError.
func (c Compact) Density(length, width units.Length) (units.Density, error) {
	var p check.Problems
	within(&p, "length", length, units.Millimetre, highestRoom, "the length of a piece")
	within(&p, "width", width, units.Millimetre, highestRoom, "the width of a piece")
	if err := p.Err(); err != nil {
		return 0, err
	}
	const one = units.KilogramPerCubicMetre
	return one.Scale(units.Ratio(c.PerHeight, one.Over(length.By(width)))), nil
}

// Compact tells how compact the pieces must be for the mass wanted to fit in the
// room on the rods, with the spreader plates that go with it. Errors are those of
// Fill.
func (f Frame) Compact(w Wanted) (Compact, error) {
	var p check.Problems
	p.Within("", "", validate(f, w, nil, EitherSide))
	if p.Err() == nil && nanometres(f.Plate.Thickness)+nanometres(f.Lock.Thickness) >= nanometres(f.Room) {
		p.Add("plate.thickness", check.Show(f.Plate.Thickness), "with the lock plate less than the room on the rods, "+check.Show(f.Room), units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return Compact{}, err
	}
	// Where the tare outweighs the bare batten, the surplus is show weight that need not be stacked.
	pipe := max(nanograms(w.Pipe), 0)
	// The lock plate is there whatever is stacked under it.
	lock := nanograms(f.Lock.Mass)
	show := max(nanograms(w.Show)+min(nanograms(w.Pipe), 0)-lock, 0)
	c := cram{
		pipe: float64(pipe), show: float64(show), plate: float64(nanograms(f.Plate.Mass)),
		room: float64(nanometres(f.Room) - nanometres(f.Lock.Thickness)), thick: float64(nanometres(f.Plate.Thickness)), every: float64(nanometres(f.Plate.Every)),
	}
	plates, height := c.solve()
	out := Compact{
		Wanted: kilograms(pipe + show), Plates: plates,
		PlateMass: kilograms(int64(plates) * nanograms(f.Plate.Mass)),
		Pieces:    kilograms(pipe + show - int64(plates)*nanograms(f.Plate.Mass)),
		Height:    metres(int64(height)),
		Over:      kilograms(pipe + show + lock - nanograms(f.Capacity)),
	}
	out.PerHeight = out.Pieces.Per(out.Height) // some room is left in any case
	return out, nil
}

// cram is the sum behind Compact, in nanograms and nanometres.
type cram struct{ pipe, show, plate, room, thick, every float64 }

// shown is the height of show pieces with n plates, all pieces being equally
// compact and filling what room the plates leave. It falls as n rises.
func (c cram) shown(n int) float64 {
	show := max(c.show-float64(float64(n)*c.plate), 0)
	if show == 0 {
		return 0
	}
	return max(c.left(n), 0) * show / (c.pipe + show)
}

// left is the room that n plates leave. The product is rounded by itself, so that
// no platform fuses it with the difference.
func (c cram) left(n int) float64 { return c.room - float64(float64(n)*c.thick) }

// solve gives the number of plates and the height of all pieces, so that as many
// plates are there as the show pieces call for: one, and one more after each full
// interval. It is the first number that is enough: with one more, no more than it
// would be called for. The pieces then fill what room the plates leave, or the show
// pieces stop just short of the interval that would call for the next.
func (c cram) solve() (plates int, height float64) {
	if c.every == 0 || c.show <= c.plate {
		return 0, c.room
	}
	calls := func(n int) int { return 1 + int(c.shown(n)/c.every) }
	n := sort.Search(calls(0), func(n int) bool { return calls(n+1) <= n })
	show := c.show - float64(float64(n)*c.plate)
	return n, min(c.left(n), float64(n)*c.every*(c.pipe+show)/show)
}
