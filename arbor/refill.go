package arbor

import (
	"strconv"
	"strings"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/stack"
	"example.com/steelyard/units"
)

// Refilled is a stack that was changed, and what is done for it.
type Refilled struct {
	Stack  Stack `json:"stack"`           // as it is then
	Out    []Row `json:"out,omitempty"`   // show weight to take out, heaviest first
	In     []Row `json:"in,omitempty"`    // show weight to put in, heaviest first
	Plates int   `json:"plates,omitzero"` // spreader plates to put in; negative: to take out
	Moved  int   `json:"moved"`           // pieces taken out and put in, together
}

// Call is the change as it is read out on the loading bridge: "take out 2 of the
// 44, add 1 of the 22". Where nothing changes it is "leave it as it is".
func (r Refilled) Call() string {
	side := func(verb string, rows []Row, plates int) string {
		if len(rows) == 0 && plates <= 0 {
			return ""
		}
		text := verb + callRows(rows)
		if plates > 0 {
			if len(rows) > 0 {
				text += ", "
			}
			text += strconv.Itoa(plates) + " spreader plate"
			if plates > 1 {
				text += "s"
			}
		}
		return text
	}
	out, in := side("take out ", r.Out, -r.Plates), side("add ", r.In, r.Plates)
	if out == "" && in == "" {
		return "leave it as it is"
	}
	return strings.Trim(out+", "+in, ", ")
}

// Refill changes today's stack for a new wish with the fewest pieces moved. The
// pipe weight of today stays as it is. Of all show weights that bring the whole
// within the allowance of what is wanted (or, where none does, as near as can
// be: an allowance of zero asks for that), it takes the one with the fewest
// pieces taken out and put in; of equals the one with the least error, then as Fill
// does: the fewest pieces, the lowest stack, the most of the heaviest.
//
// Only today's Pipe and Show rows count. Stock is what lies on the bridge: the
// pieces in the arbor are not in it, and what is taken out can go back in. Kinds
// are told apart by their names; a kind that is in both must be of one mass and
// thickness. Pieces are counted, not lifted: one that lies deep in the stack
// comes out only after those on top of it, and where a kind goes back is Stack's
// order. Spreader plates move as the new stack needs them and count as no piece.
//
// Refill returns a *NoStackError where no stack keeps to the side that is allowed, or
// where today's pipe weight alone is more than the frame takes, and every
// *units.FieldError of frame, today, stock, wanted, side and within, joined. Proven
// is about the pieces moved as well; Gap about the error alone.
func (f Frame) Refill(today Stack, w Wanted, stock Stock, side Side, within units.Mass) (Refilled, error) {
	var p check.Problems
	p.Within("", "", validate(f, w, stock, side))
	check.NotNegative(&p, "within", within)
	pipeMass, pipeHeight := checkRows(&p, "today.pipe", today.Pipe, nil)
	checkRows(&p, "today.show", today.Show, stock)
	all := append(Stock(nil), stock...)
	for _, r := range today.Show {
		if !stock.has(r.Name) {
			all = append(all, Piece{Name: r.Name, Mass: r.Mass, Thickness: r.Thickness})
		}
	}
	if len(all) > mostKinds && len(stock) <= mostKinds {
		p.Add("today.show", strconv.Itoa(len(all))+" kinds of piece with the stock", "at most "+strconv.Itoa(mostKinds), units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return Refilled{}, err
	}

	var few sorted
	pieces, kinds := few.fromHeaviest(all)
	in := make([]int64, len(kinds))
	var was int64 // thickness of today's show weight
	for i, piece := range pieces {
		for _, r := range today.Show {
			if r.Name == piece.Name {
				in[i] = int64(r.Count)
				was += in[i] * kinds[i].Thickness
			}
		}
		kinds[i].Count += in[i]
	}
	problem := f.problem(kinds, side)
	problem.MaxMass -= pipeMass
	problem.MaxHeight -= pipeHeight
	problem.Wanted = nanograms(w.Pipe) + nanograms(w.Show) - pipeMass - nanograms(f.Lock.Mass)
	problem.Plate = f.Plate.kernel()
	show := stack.Refill(problem, in, nanograms(within), steps)
	if !show.Found {
		return Refilled{}, &NoStackError{Wanted: w, Side: side, Proven: show.Proven}
	}

	r := Refilled{Stack: f.stacked(pipeMass, pipeHeight, show)}
	r.Stack.Wanted, r.Stack.Proven = w, show.Proven
	r.Stack.Pipe, r.Stack.Show = append([]Row(nil), today.Pipe...), rows(pieces, show.Count)
	for _, row := range today.Pipe {
		r.Stack.Pieces += row.Count
	}
	out := make([]int64, len(kinds))
	for i, n := range show.Count {
		out[i], in[i] = max(in[i]-n, 0), max(n-in[i], 0)
		r.Moved += int(out[i] + in[i])
	}
	r.Out, r.In = rows(pieces, out), rows(pieces, in)
	r.Plates = r.Stack.Plates - int(problem.Plate.Under(was))
	return r, nil
}

func (s Stock) has(name string) bool {
	for _, p := range s {
		if p.Name == name {
			return true
		}
	}
	return false
}

// checkRows notes what is wrong with the rows of a stack, among themselves and
// against the stock, and gives their mass and thickness.
func checkRows(p *check.Problems, path string, rows []Row, stock Stock) (mass, thickness int64) {
	heavy, high := false, false
	for i, r := range rows {
		var one check.Problems
		piece := Piece{r.Name, r.Mass, r.Thickness, r.Count}
		piece.check(&one)
		if standsIn(rows[:i], r.Name) {
			one.Add("name", strconv.Quote(r.Name), "one row for each kind", units.ErrDuplicate)
		}
		for _, known := range stock {
			if known.Name != r.Name {
				continue
			}
			if nanograms(known.Mass) != nanograms(r.Mass) {
				one.Add("mass", check.Show(r.Mass), check.Show(known.Mass)+", as in the stock", units.ErrOutOfRange)
			}
			if nanometres(known.Thickness) != nanometres(r.Thickness) {
				one.Add("thickness", check.Show(r.Thickness), check.Show(known.Thickness)+", as in the stock", units.ErrOutOfRange)
			}
		}
		if err := one.Err(); err != nil {
			p.Within(path+"["+strconv.Itoa(i)+"]", quoted(r.Name), err)
			continue
		}
		// A million pieces of a tonne would not be counted in nanograms.
		if heavy = heavy || r.Mass.Scale(float64(r.Count)) > heaviestFill; !heavy {
			mass += int64(r.Count) * nanograms(r.Mass)
			heavy = mass > nanograms(heaviestFill)
		}
		if !high {
			thickness += int64(r.Count) * nanometres(r.Thickness)
			high = thickness > nanometres(highestRoom)
		}
	}
	if heavy {
		p.Add(path, "more than "+check.Show(heaviestFill), "at most that", units.ErrOutOfRange)
	}
	if high {
		p.Add(path, "higher than "+check.Show(highestRoom), "at most that", units.ErrOutOfRange)
	}
	return mass, thickness
}
