package lineset

import (
	"math"
	"strconv"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/units"
)

// inArbor is what is in an arbor, from the bottom up. The first pieces, as many as the pipe weight has, are pipe
// weight; spreader plates lie among the others by the rule of arbor.Plate.
type inArbor struct {
	frame arbor.Frame
	stock arbor.Stock
	pipe  int // how many pieces are pipe weight
	rows  []arbor.Row
}

// count is how many pieces are in.
func (a *inArbor) count() (n int) {
	for _, row := range a.rows {
		n += row.Count
	}
	return n
}

// show walks over the rows that are show weight.
func (a *inArbor) show(yield func(arbor.Row)) {
	pipe := a.pipe
	for _, row := range a.rows {
		under := min(row.Count, pipe)
		pipe -= under
		if row.Count -= under; row.Count > 0 {
			yield(row)
		}
	}
}

// nanometres is a length as thicknesses are summed, so that a full interval of plates is just that.
func nanometres(l units.Length) int64 { return int64(math.Round(l.In(units.Metre) * 1e9)) }

// plates is how many spreader plates lie among the pieces: one under the first piece of show weight and one more
// after each full interval.
func (a *inArbor) plates() int {
	if a.frame.Plate == (arbor.Plate{}) {
		return 0
	}
	height, any := int64(0), false
	a.show(func(row arbor.Row) {
		any = true
		height += int64(row.Count) * nanometres(row.Thickness)
	})
	if !any {
		return 0
	}
	return 1 + int(height/nanometres(a.frame.Plate.Every))
}

// nanograms is the mass of pieces and plates, and of the lock plate, which stays on the rods of an empty arbor too.
func (a *inArbor) nanograms() int64 {
	sum := nanograms(a.frame.Lock.Mass) + int64(a.plates())*nanograms(a.frame.Plate.Mass)
	for _, row := range a.rows {
		sum += int64(row.Count) * nanograms(row.Mass)
	}
	return sum
}

// height is that of pieces, plates and lock plate.
func (a *inArbor) height() units.Length {
	sum := nanometres(a.frame.Lock.Thickness) + int64(a.plates())*nanometres(a.frame.Plate.Thickness)
	for _, row := range a.rows {
		sum += int64(row.Count) * nanometres(row.Thickness)
	}
	return units.Length(float64(sum) / 1e9)
}

// used is how many pieces of a kind are in.
func (a *inArbor) used(piece string) (n int) {
	for _, row := range a.rows {
		if row.Name == piece {
			n += row.Count
		}
	}
	return n
}

// add puts pieces on top. Faults are of the fields piece and count.
func (a *inArbor) add(p PiecesOf) error {
	for _, kind := range a.stock {
		if kind.Name != p.Piece {
			continue
		}
		if left := kind.Count - a.used(p.Piece); p.Count > left {
			return miscounted(p, units.ErrOutOfRange, "at most "+strconv.Itoa(left)+", which the stock has left")
		}
		if most := a.fits(kind); p.Count > most {
			return miscounted(p, units.ErrOutOfRange, "no more than the room on the rods takes, "+check.Show(a.frame.Room))
		}
		if kilograms(a.nanograms())+kind.Mass.Scale(float64(p.Count)) > heaviestOrder {
			return miscounted(p, units.ErrOutOfRange, "less than "+check.Show(heaviestOrder)+" in all")
		}
		a.put(arbor.Row{Name: kind.Name, Count: p.Count, Mass: kind.Mass, Thickness: kind.Thickness})
		return nil
	}
	return mistaken(p, units.ErrUnknown, "a kind of piece in the stock")
}

// fits is how many pieces of a kind at most can still have room, plates left out: what they take is told by height
// afterwards.
func (a *inArbor) fits(kind arbor.Piece) int {
	left := nanometres(a.frame.Room) - nanometres(a.frame.Lock.Thickness)
	for _, row := range a.rows {
		left -= int64(row.Count) * nanometres(row.Thickness)
	}
	return int(left / nanometres(kind.Thickness))
}

// put is add without a question.
func (a *inArbor) put(row arbor.Row) {
	if n := len(a.rows); n > 0 && a.rows[n-1].Name == row.Name {
		a.rows[n-1].Count += row.Count
		return
	}
	a.rows = append(a.rows, row)
}

// take takes pieces from the top. Faults are of the fields piece and count.
func (a *inArbor) take(p PiecesOf) error {
	n := len(a.rows)
	switch {
	case a.used(p.Piece) == 0:
		return mistaken(p, ErrNotIn, "a kind that is in the arbor")
	case a.rows[n-1].Name != p.Piece:
		return mistaken(p, ErrNotOnTop, "first to take out the "+strictjson.Line(a.rows[n-1].Name)+" on top of it")
	case a.used(p.Piece) < p.Count:
		return miscounted(p, ErrNotIn, "at most "+strconv.Itoa(a.used(p.Piece))+", which are in")
	case a.rows[n-1].Count < p.Count:
		return miscounted(p, ErrNotOnTop, "at most "+strconv.Itoa(a.rows[n-1].Count)+", which lie on top: the rest lies under the "+strictjson.Line(a.rows[n-2].Name))
	}
	if a.rows[n-1].Count -= p.Count; a.rows[n-1].Count == 0 {
		a.rows = a.rows[:n-1]
	}
	return nil
}

// miscounted and mistaken are faults of how many pieces, and of which.
func miscounted(p PiecesOf, kind error, want string) error {
	return &units.FieldError{Field: "count", Value: strconv.Itoa(p.Count), Want: want, Err: kind}
}

func mistaken(p PiecesOf, kind error, want string) error {
	return &units.FieldError{Field: "piece", Value: strictjson.Name(p.Piece), Want: want, Err: kind}
}
