package arbor

import (
	"errors"

	"example.com/steelyard/internal/stack"
	"example.com/steelyard/units"
)

// Shortfall says how a stack that fits falls short of what is wanted: which of the
// three limits it is, room, capacity or stock, by how much, and what would fit at
// most. The amounts are those by which Ideal passes the limits. Where Fits comes as
// near as Ideal does, nothing falls short, and all but these two is zero.
type Shortfall struct {
	Fits     Stack        `json:"fits"`              // the best that fits, as by Fill
	Nothing  bool         `json:"nothing,omitempty"` // no stack that fits keeps to the side: Fits is empty
	Ideal    Stack        `json:"ideal"`             // what it would take if room, capacity and stock were no limit
	Room     units.Length `json:"room,omitzero"`     // height that Ideal takes beyond the room
	Capacity units.Mass   `json:"capacity,omitzero"` // mass that Ideal has beyond the capacity
	Missing  []Row        `json:"missing,omitempty"` // pieces that Ideal takes beyond the stock, heaviest first
	Heaviest Stack        `json:"heaviest,omitzero"` // the heaviest that fits: see Frame.Heaviest
}

// Binds names the limits that keep the stack from what is wanted, any of "room",
// "capacity" and "stock", in that order; none where it does not fall short.
func (s Shortfall) Binds() []string {
	var out []string
	if s.Room > 0 {
		out = append(out, "room")
	}
	if s.Capacity > 0 {
		out = append(out, "capacity")
	}
	if len(s.Missing) > 0 {
		out = append(out, "stock")
	}
	return out
}

// Shortfall holds the best stack that fits against the one that it would take.
// Ideal has the fewest pieces of the stock's kinds that come nearest to the wish:
// where the room binds, more of a denser kind may need less of it. Where nothing fits
// that keeps to the side, it says so and is no error; where nothing would even
// without limits, it returns the *NoStackError of Ideal. Every *units.FieldError is
// one of Fill.
func (f Frame) Shortfall(w Wanted, stock Stock, side Side) (Shortfall, error) {
	if err := validate(f, w, stock, side); err != nil {
		return Shortfall{}, err
	}
	var s Shortfall
	var err error
	var few sorted
	pieces, kinds := few.fromHeaviest(stock)
	in := filling{wanted: w, stock: stock, side: side, pipeSide: side, steps: steps, lifted: true}
	if s.Ideal, err = f.fillFrom(in, pieces, kinds); err != nil {
		return Shortfall{}, err
	}
	for i := range kinds { // that was counted down from as many as one likes
		kinds[i].Count = int64(pieces[i].Count)
	}
	if s.Ideal.Proven && f.holds(s.Ideal, pieces) && f.soonDone(kinds) {
		// The best without limits that keeps to them all the same is the best within them.
		s.Fits = s.Ideal.cloned()
		return s, nil
	}
	var none *NoStackError
	in.lifted = false
	s.Fits, err = f.fillFrom(in, pieces, kinds)
	switch {
	case errors.As(err, &none):
		s.Nothing, s.Fits = true, Stack{}
	case err != nil:
		return Shortfall{}, err
	case units.Abs(s.Fits.Error) <= units.Abs(s.Ideal.Error):
		return s, nil
	}
	s.Room = max(metres(nanometres(s.Ideal.Height)-nanometres(f.Room)), 0)
	s.Capacity = max(kilograms(nanograms(s.Ideal.Mass)-nanograms(f.Capacity)), 0)
	for _, p := range pieces {
		if n := s.Ideal.Used(p.Name) - p.Count; n > 0 {
			s.Missing = append(s.Missing, Row{Name: p.Name, Count: n, Mass: p.Mass, Thickness: p.Thickness})
		}
	}
	s.Heaviest, err = f.heaviest(w.Pipe, stock, side)
	return s, err
}

// holds tells whether a stack keeps to room, capacity and stock.
func (f Frame) holds(s Stack, stock Stock) bool {
	for _, p := range stock {
		if s.Used(p.Name) > p.Count {
			return false
		}
	}
	return nanometres(s.Height) <= nanometres(f.Room) && nanograms(s.Mass) <= nanograms(f.Capacity)
}

// soonDone tells of a stock with so few choices within room and capacity that no search among them is cut short, whatever is
// wanted. For each number of plates the walk has no more places than there are choices, or twice as many for each kind of
// which there is none, and the two lists are no longer together than twice that; pipe weight and show weight take the same steps.
func (f Frame) soonDone(kinds []stack.Kind) bool {
	room, capacity := nanometres(f.Room), nanograms(f.Capacity)
	choices := int64(8)
	if every := nanometres(f.Plate.Every); every > 0 {
		choices *= 2 + room/every
	}
	for _, k := range kinds {
		if choices *= 1 + max(1, min(k.Count, room/k.Thickness, capacity/k.Mass)); choices > steps {
			return false
		}
	}
	return true
}

// Heaviest is the heaviest stack that room, capacity and stock allow on the pipe
// weight that Fill would choose for pipe. Its Mass and the arbor's tare, divided by
// the ratio of the purchase, are the heaviest load that it answers, the batten
// counted in. Its Error is what it stays below the capacity, zero or negative; of
// equally heavy ones it is the one that Fill would take. Errors are those of Fill.
func (f Frame) Heaviest(pipe units.Mass, stock Stock) (Stack, error) {
	if err := validate(f, Wanted{Pipe: pipe}, stock, EitherSide); err != nil {
		return Stack{}, err
	}
	return f.heaviest(pipe, stock, EitherSide)
}

// heaviest is Heaviest with the pipe weight held to a side; where that has none, to
// either.
func (f Frame) heaviest(pipe units.Mass, stock Stock, side Side) (Stack, error) {
	show := kilograms(nanograms(f.Capacity) - nanograms(pipe))
	in := filling{wanted: Wanted{Pipe: pipe, Show: show}, stock: stock, side: NeverArborHeavy, pipeSide: side, steps: steps}
	s, err := f.fill(in)
	var none *NoStackError
	if errors.As(err, &none) && none.Pipe {
		in.pipeSide = EitherSide
		s, err = f.fill(in)
	}
	return s, err
}
