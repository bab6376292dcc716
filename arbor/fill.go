package arbor

import (
	"cmp"
	"math"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/slab"
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

// steps bounds the search for one stack: a fraction of a second. Six kinds and
// 120 pieces need a small part of it.
const steps = 4_000_000

// Fill chooses whole pieces from the stock for the wanted mass, within the
// frame's room and capacity: first the pipe weight, then on it the show weight
// with its spreader plates. The pipe weight is the stack nearest to what is
// wanted for the pipe (the lock plate, which is always there, counted in), from the
// whole stock and without plates; the show weight,
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
// The search ends within a fraction of a second: proven, which it is up to six
// kinds and 120 pieces and mostly far beyond; or with the best found and its Gap.
// FillWithin sets another end.
//
// Fill returns a *NoStackError where no stack keeps to the side that is allowed,
// and every *units.FieldError of frame, stock, wanted and side, joined.
func (f Frame) Fill(w Wanted, stock Stock, side Side) (Stack, error) {
	return f.FillWithin(steps, w, stock, side)
}

// FillWithin is Fill with a limit of steps in the search, 1 or more: a step is some
// tens of nanoseconds, Fill allows four million. The same limit gives the same
// stack on every machine. Where it ends the search, the Stack is the best found, not
// Proven, with its Gap; where nothing was found, the *NoStackError is not Proven.
func (f Frame) FillWithin(steps int, w Wanted, stock Stock, side Side) (Stack, error) {
	var p check.Problems
	p.Within("", "", validate(f, w, stock, side))
	if steps < 1 {
		p.Add("steps", strconv.Itoa(steps), "1 or more", units.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return Stack{}, err
	}
	return f.fill(filling{wanted: w, stock: stock, side: side, pipeSide: side, steps: steps})
}

// Ideal is Fill with the limits lifted: as many pieces as it takes of each kind
// in the stock, even of those with a Count of zero, whatever the room and the
// capacity. Beside a Fill that falls short it shows what is missing: pieces,
// height or capacity. Errors are those of Fill.
func (f Frame) Ideal(w Wanted, stock Stock, side Side) (Stack, error) {
	if err := validate(f, w, stock, side); err != nil {
		return Stack{}, err
	}
	return f.fill(filling{wanted: w, stock: stock, side: side, pipeSide: side, steps: steps, lifted: true})
}

// filling is what to fill an arbor with; all of it is valid.
type filling struct {
	wanted   Wanted
	stock    Stock
	side     Side
	pipeSide Side // of the pipe weight alone
	steps    int
	lifted   bool // no limits
	spent    *int // counts the steps that it took, where there is one
}

func (f Frame) fill(in filling) (Stack, error) {
	var few sorted
	pieces, kinds := few.fromHeaviest(in.stock)
	return f.fillFrom(in, pieces, kinds)
}

// fillFrom is fill from a stock in the order of fromHeaviest. It counts down what is left of the kinds.
func (f Frame) fillFrom(in filling, pieces Stock, kinds []stack.Kind) (Stack, error) {
	if in.lifted {
		for i := range kinds {
			kinds[i].Count = stack.Unlimited
		}
	}
	// The lock plate is always there: it takes from all three.
	lock := nanograms(f.Lock.Mass)
	problem := f.problem(kinds, in.pipeSide)
	problem.Wanted = nanograms(in.wanted.Pipe) - lock
	if in.lifted {
		problem.MaxMass, problem.MaxHeight = stack.Unlimited, stack.Unlimited
	}

	var few [2][fewKinds]int64
	pipe := stack.Choice{Found: true, Proven: true}
	problem.Room = few[0][:]
	if problem.Wanted > 0 {
		pipe = stack.Best(problem, in.steps)
	}
	if !pipe.Found {
		return Stack{}, &NoStackError{Wanted: in.wanted, Side: in.side, Pipe: true, Proven: pipe.Proven}
	}
	for i, n := range pipe.Count {
		kinds[i].Count -= n
	}
	problem.Wanted += nanograms(in.wanted.Show) - pipe.Mass
	problem.MaxMass -= pipe.Mass
	problem.MaxHeight -= pipe.Height
	problem.Room = few[1][:]
	problem.Plate = f.Plate.kernel()
	problem.Heavy, problem.Light = in.side != NeverArborHeavy, in.side != NeverBattenHeavy
	show := stack.Best(problem, max(in.steps-pipe.Nodes, 1))
	if in.spent != nil {
		*in.spent += pipe.Nodes + show.Nodes
	}
	proven := pipe.Proven && show.Proven
	if !show.Found {
		return Stack{}, &NoStackError{Wanted: in.wanted, Side: in.side, Proven: proven}
	}
	s := f.stacked(pipe.Mass, pipe.Height, show)
	s.Wanted, s.Proven = in.wanted, proven
	all := make([]Row, 0, taken(pipe.Count)+taken(show.Count))
	all = appendRows(all, pieces, pipe.Count)
	s.Pipe, s.Show = parted(appendRows(all, pieces, show.Count), len(all))
	s.Pieces += int(pipe.Pieces)
	return s, nil
}

// problem is the search for a stack of these kinds in an arbor with nothing but its
// lock plate, without spreader plates and with nothing wanted.
func (f Frame) problem(kinds []stack.Kind, side Side) stack.Problem {
	return stack.Problem{
		Kinds:     kinds,
		MaxMass:   nanograms(f.Capacity) - nanograms(f.Lock.Mass),
		MaxHeight: nanometres(f.Room) - nanometres(f.Lock.Thickness),
		Heavy:     side != NeverArborHeavy,
		Light:     side != NeverBattenHeavy,
	}
}

// kernel is the plate as the search takes it.
func (p Plate) kernel() stack.Plate {
	return stack.Plate{Mass: nanograms(p.Mass), Thickness: nanometres(p.Thickness), Every: nanometres(p.Every)}
}

// stacked adds up the show weight that was chosen, its plates, the pipe weight under
// it and the lock plate on top. Rows, wish and proof are left to the caller.
func (f Frame) stacked(pipe, height int64, show stack.Choice) Stack {
	plates, lock := show.Plates*nanograms(f.Plate.Mass), nanograms(f.Lock.Mass)
	return Stack{
		Pieces:    int(show.Pieces),
		Plates:    int(show.Plates),
		PipeMass:  kilograms(pipe),
		ShowMass:  kilograms(show.Mass - plates),
		PlateMass: kilograms(plates),
		LockMass:  kilograms(lock),
		Mass:      kilograms(pipe + show.Mass + lock),
		Height:    metres(height + show.Height + nanometres(f.Lock.Thickness)),
		Error:     kilograms(show.Error),
		Gap:       kilograms(show.Gap),
	}
}

// sorted is room for a stock of few kinds in the order in which pieces are stacked and preferred.
type sorted struct {
	pieces [fewKinds]Piece
	kinds  [fewKinds]stack.Kind
}

const fewKinds = 8

// fromHeaviest gives the stock in that order, and the same as the search takes it.
func (few *sorted) fromHeaviest(stock Stock) (pieces Stock, kinds []stack.Kind) {
	pieces, kinds = slab.Enough(few.pieces[:], len(stock)), slab.Enough(few.kinds[:], len(stock))
	for i := range stock {
		p := &stock[i]
		kind := stack.Kind{Mass: nanograms(p.Mass), Thickness: nanometres(p.Thickness), Count: int64(p.Count)}
		at := i
		for ; at > 0; at-- {
			last, name := &kinds[at-1], pieces[at-1].Name
			if cmp.Or(cmp.Compare(last.Mass, kind.Mass), cmp.Compare(last.Thickness, kind.Thickness), cmp.Compare(p.Name, name)) >= 0 {
				break
			}
			pieces[at], kinds[at] = pieces[at-1], *last
		}
		pieces[at], kinds[at] = *p, kind
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
	n := taken(count)
	if n == 0 {
		return nil
	}
	return appendRows(make([]Row, 0, n), pieces, count)
}

// parted cuts rows into those of the pipe weight, which come first, and those of the show weight; nil where there is none.
func parted(rows []Row, first int) (pipe, show []Row) {
	if first > 0 {
		pipe = rows[:first:first]
	}
	if first < len(rows) {
		show = rows[first:]
	}
	return pipe, show
}

// cloned is the stack with rows of its own.
func (s Stack) cloned() Stack {
	all := append(append(make([]Row, 0, len(s.Pipe)+len(s.Show)), s.Pipe...), s.Show...)
	s.Pipe, s.Show = parted(all, len(s.Pipe))
	return s
}

// taken is of how many kinds any are taken.
func taken(count []int64) (kinds int) {
	for _, c := range count {
		if c > 0 {
			kinds++
		}
	}
	return kinds
}

func appendRows(out []Row, pieces Stock, count []int64) []Row {
	for i, c := range count {
		if c > 0 {
			p := &pieces[i]
			out = append(out, Row{Name: p.Name, Count: int(min(c, math.MaxInt)), Mass: p.Mass, Thickness: p.Thickness})
		}
	}
	return out
}
