package arbor

import (
	"cmp"
	"math"
	"slices"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/stack"
	"example.com/steelyard/units"
)

// Wanted is the mass that the arbor must hold beside its own tare, at the
// arbor: in double purchase twice what hangs on the batten.
//
// Pipe is what balances the bare batten. It may be negative, where the arbor's
// tare alone outweighs the bare batten: there is then no pipe weight, and the
// surplus counts against the show weight. Show is what balances all that hangs,
// zero or more.
type Wanted struct {
	Pipe units.Mass `json:"pipe,omitzero"`
	Show units.Mass `json:"show,omitzero"`
}

// nodes bounds the search for one stack: a fraction of a second. A search that
// is cut there has its best so far, not Proven.
const nodes = 4_000_000

// Fill chooses whole pieces from the stock for the wanted mass, within the
// frame's room and capacity: first the pipe weight, then on it the show weight
// with its spreader plates. The pipe weight is the stack nearest to what is
// wanted for the pipe, from the whole stock and without plates; the show weight,
// from the pieces that remain, is what brings the whole nearest to the sum
// wanted, so it makes up for the error of the pipe weight. A side that is
// forbidden is forbidden to both, to the pipe weight alone and to the whole
// (but a negative Wanted.Pipe has an empty pipe weight, whatever the side).
//
// Nearest is the least error; of equals, the fewest pieces; then the lowest
// stack; then the most of the heaviest kind, of the next heaviest, and so on,
// equally heavy ones in the order thicker first, then by name. The order of the stock makes no difference. The empty stack is one of
// the choices. All of it is exact: masses enter at whole nanograms and lengths
// at whole nanometres.
//
// Fill returns a *NoStackError where no stack keeps to the side that is allowed,
// and every *units.FieldError of frame, stock, wanted and side, joined.
func (f Frame) Fill(w Wanted, stock Stock, side Side) (Stack, error) {
	return f.fill(w, stock, side, false)
}

// Ideal is Fill with the limits lifted: as many pieces as it takes of each kind
// in the stock, even of those with a Count of zero, whatever the room and the
// capacity. Beside a Fill that falls short it shows what is missing: pieces,
// height or capacity. Errors are those of Fill.
func (f Frame) Ideal(w Wanted, stock Stock, side Side) (Stack, error) {
	return f.fill(w, stock, side, true)
}

func (f Frame) fill(w Wanted, stock Stock, side Side, lifted bool) (Stack, error) {
	if err := validate(f, w, stock, side); err != nil {
		return Stack{}, err
	}
	pieces, kinds := fromHeaviest(stock)
	if lifted {
		for i := range kinds {
			kinds[i].Count = stack.Unlimited
		}
	}
	problem := stack.Problem{
		Kinds:     kinds,
		Wanted:    nanograms(w.Pipe),
		MaxMass:   nanograms(f.Capacity),
		MaxHeight: nanometres(f.Room),
		Heavy:     side != NeverArborHeavy,
		Light:     side != NeverBattenHeavy,
	}
	if lifted {
		problem.MaxMass, problem.MaxHeight = stack.Unlimited, stack.Unlimited
	}

	pipe := stack.Choice{Found: true, Proven: true}
	if problem.Wanted > 0 {
		pipe = stack.Best(problem, nodes)
	}
	if !pipe.Found {
		return Stack{}, &NoStackError{Wanted: w, Side: side, Pipe: true, Proven: pipe.Proven}
	}
	for i, n := range pipe.Count {
		kinds[i].Count -= n
	}
	problem.Wanted += nanograms(w.Show) - pipe.Mass
	problem.MaxMass -= pipe.Mass
	problem.MaxHeight -= pipe.Height
	problem.Plate = stack.Plate{
		Mass:      nanograms(f.Plate.Mass),
		Thickness: nanometres(f.Plate.Thickness),
		Every:     nanometres(f.Plate.Every),
	}
	show := stack.Best(problem, nodes)
	if !show.Found {
		return Stack{}, &NoStackError{Wanted: w, Side: side, Proven: pipe.Proven && show.Proven}
	}
	plates := show.Plates * problem.Plate.Mass
	return Stack{
		Wanted:    w,
		Pipe:      rows(pieces, pipe.Count),
		Show:      rows(pieces, show.Count),
		Pieces:    int(pipe.Pieces + show.Pieces),
		Plates:    int(show.Plates),
		PipeMass:  kilograms(pipe.Mass),
		ShowMass:  kilograms(show.Mass - plates),
		PlateMass: kilograms(plates),
		Mass:      kilograms(pipe.Mass + show.Mass),
		Height:    metres(pipe.Height + show.Height),
		Error:     kilograms(show.Error),
		Proven:    pipe.Proven && show.Proven,
	}, nil
}

// fromHeaviest gives the stock in the order in which pieces are stacked and
// preferred, and the same as the search takes it.
func fromHeaviest(stock Stock) (Stock, []stack.Kind) {
	type both struct {
		piece Piece
		kind  stack.Kind
	}
	all := make([]both, len(stock))
	for i, p := range stock {
		all[i] = both{p, stack.Kind{Mass: nanograms(p.Mass), Thickness: nanometres(p.Thickness), Count: int64(p.Count)}}
	}
	slices.SortFunc(all, func(a, b both) int {
		return cmp.Or(
			cmp.Compare(b.kind.Mass, a.kind.Mass),
			cmp.Compare(b.kind.Thickness, a.kind.Thickness),
			cmp.Compare(a.piece.Name, b.piece.Name))
	})
	pieces, kinds := make(Stock, len(all)), make([]stack.Kind, len(all))
	for i, b := range all {
		pieces[i], kinds[i] = b.piece, b.kind
	}
	return pieces, kinds
}

// validate notes every fault of what Fill is given, each under its own name.
func validate(f Frame, w Wanted, stock Stock, side Side) error {
	var p check.Problems
	p.Within("", "", f.Validate())
	p.Within("stock", "", stock.Validate())
	if check.Finite(&p, "wanted.pipe", w.Pipe) && (w.Pipe > heaviestFill || w.Pipe < -heaviestFill) {
		p.Add("wanted.pipe", check.Show(w.Pipe), "from "+check.Show(-heaviestFill)+" to "+check.Show(heaviestFill), units.ErrOutOfRange)
	}
	if check.Finite(&p, "wanted.show", w.Show) {
		switch {
		// Less than half a nanogram is no mass at all: the rounding of a difference.
		case nanograms(w.Show) < 0:
			p.Add("wanted.show", check.Show(w.Show), "0 or more", units.ErrNegative)
		case w.Show > heaviestFill:
			p.Add("wanted.show", check.Show(w.Show), "at most "+check.Show(heaviestFill), units.ErrOutOfRange)
		}
	}
	p.Within("", "", side.fault())
	return p.Err()
}

// rows lists the kinds of which any are taken.
func rows(pieces Stock, count []int64) []Row {
	n := 0
	for _, c := range count {
		if c > 0 {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	out := make([]Row, 0, n)
	for i, c := range count {
		if c > 0 {
			p := pieces[i]
			out = append(out, Row{Name: p.Name, Count: int(min(c, math.MaxInt)), Mass: p.Mass, Thickness: p.Thickness})
		}
	}
	return out
}
