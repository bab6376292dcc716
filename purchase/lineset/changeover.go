package lineset

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/order"
	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/units"
)

// ChangeOver is the work from one night's hang to the next.
type ChangeOver struct {
	Sets      []SetChange   `json:"sets"`       // in the order in which they are worked on; those that stay as they are come last
	Pieces    []PieceChange `json:"pieces"`     // every kind in the stock
	Changed   int           `json:"changed"`    // sets that change
	HandOvers int           `json:"hand_overs"` // of all sets
	Handled   units.Mass    `json:"handled"`    // by the bridge crew: every piece and plate, each time that it goes out or in

	// InTurn tells that it is not the order of the house: in that the stock would not have done, and sets that give
	// pieces back have their turn first.
	InTurn bool `json:"in_turn,omitempty"`
}

// SetChange is the work at one set: stripped first, then loaded.
type SetChange struct {
	Name    string     `json:"name"`
	Changed bool       `json:"changed"`         // there is anything to do
	Stays   []string   `json:"stays,omitempty"` // what hangs on both nights and is not touched
	Strip   Plan       `json:"strip,omitzero"`  // of the first night; nothing where it is not changed
	Load    Plan       `json:"load,omitzero"`   // of the next
	Out     []PiecesOf `json:"out,omitempty"`   // pieces, in the order in which they come out first
	In      []PiecesOf `json:"in,omitempty"`    // pieces, in the order in which they go in first
	Handled units.Mass `json:"handled"`         // pieces and plates, out and in

	HandOvers int `json:"hand_overs"` // of both, and the one between them where the side changes there
}

// PieceChange is what becomes of one kind of piece.
type PieceChange struct {
	Name  string `json:"name"`
	Out   int    `json:"out"`   // of all arbors
	In    int    `json:"in"`    // into all arbors
	Most  int    `json:"most"`  // in all arbors at once, where the sets are done one after the other as they stand here
	Stock int    `json:"stock"` // how many there are
}

// Short is how many pieces are missing at the worst moment.
func (p PieceChange) Short() int { return max(p.Most-p.Stock, 0) }

// ChangeOver plans the work from this house to the next, which must be the same house with another hang: sets of the
// same names on the same riggings over the same stock. Each set that changes is stripped, then loaded, each with the
// fewest hand-overs within the limits, as Rigged.Order does it. What hangs on both nights stays, and so does show weight
// from the bottom up, as many pieces as both nights want and as can stay within the limits; where that cannot be, the set is
// stripped whole. Pieces go in on top of those that stay, whatever they weigh: no piece comes out only to lie higher. What
// is in at first is taken to lie as Stack.Call says it, the heaviest lowest: where it does not, as after a change-over,
// pieces of the same mass in all come out, but not in the order that is read out.
//
// The sets are worked on one after the other, in the order of the house where the stock does for that. Where it does
// not, those that give pieces back go first, those that only want more go last, and those between are put so that the
// stock does, if such an order is found (all are tried, up to a bound); Short of the pieces tells where none was.
//
// Trims are those at which a set is worked on, by the set's name; a set without any is worked on at its lowest trim.
// The error joins a *units.FieldError for everything that is wrong in any set; for a set that has no order it wraps a
// *NoOrderError.
func (r *RiggedHouse) ChangeOver(next *RiggedHouse, limits OrderLimits, trims map[string][]WorkTrim) (ChangeOver, error) {
	var p check.Problems
	if next == nil {
		p.Add("next", "", "the house with the next hang", units.ErrMissing)
		return ChangeOver{}, p.Err()
	}
	if !slices.Equal(r.house.Stock, next.house.Stock) {
		p.Add("stock", "", "the same stock of counterweight in both houses", ErrDiffers)
	}
	for i, s := range next.sets {
		if _, ok := r.Set(s.set.Name); !ok {
			p.Add("sets["+strconv.Itoa(i)+"].name", strictjson.Name(s.set.Name), "a set of the first house", units.ErrUnknown)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(trims)) {
		if _, ok := r.Set(name); !ok {
			p.Add(strictjson.Member("trims", name), "", "the name of a set of the house", units.ErrUnknown)
		}
	}
	for i, s := range r.sets {
		field, name := "sets["+strconv.Itoa(i)+"]", strictjson.Name(s.set.Name)
		if to, ok := next.Set(s.set.Name); !ok {
			p.Add(field+".name", name, "a set of that name in the next house too; with no hang it is stripped", units.ErrMissing)
		} else if !reflect.DeepEqual(s.set.Rigging, to.set.Rigging) {
			p.Within(field, name, &units.FieldError{
				Field: "rigging", Err: ErrDiffers,
				Want: "the same rigging in both houses: a change-over alters the hang only",
			})
		}
	}
	if err := p.Err(); err != nil {
		return ChangeOver{}, err
	}
	var out ChangeOver
	for i, s := range r.sets {
		to, _ := next.Set(s.set.Name)
		change, err := s.change(to, limits, trims[s.set.Name])
		p.Within("sets["+strconv.Itoa(i)+"]", strictjson.Name(s.set.Name), err)
		out = out.with(change)
	}
	if err := p.Err(); err != nil {
		return ChangeOver{}, err
	}
	r.schedule(&out)
	return out, nil
}

// with is the change-over with one set more.
func (c ChangeOver) with(s SetChange) ChangeOver {
	c.Sets = append(c.Sets, s)
	if s.Changed {
		c.Changed++
	}
	c.HandOvers += s.HandOvers
	c.Handled = kilograms(nanograms(c.Handled) + nanograms(s.Handled))
	return c
}

// count follows the pieces through the house.
func (r *RiggedHouse) count(sets []SetChange) (out []PieceChange) {
	for _, piece := range r.house.Stock {
		change := PieceChange{Name: piece.Name, Stock: piece.Count}
		now := r.inUse(piece.Name)
		change.Most = now
		for _, s := range sets {
			in, taken := countOf(s.In, piece.Name), countOf(s.Out, piece.Name)
			change.In += in
			change.Out += taken
			now += in - taken
			change.Most = max(change.Most, now)
		}
		out = append(out, change)
	}
	return out
}

func countOf(pieces []PiecesOf, name string) (n int) {
	for _, p := range pieces {
		if p.Piece == name {
			n += p.Count
		}
	}
	return n
}

// change plans one set.
func (r *Rigged) change(to *Rigged, limits OrderLimits, at []WorkTrim) (SetChange, error) {
	out := SetChange{Name: r.set.Name}
	here, there := common(r, to)
	to = to.onto(r, here.pieces)
	sameHang := len(here.hung) == len(r.set.Hang) && len(there.hung) == len(to.set.Hang)
	if sameHang && here.pieces == r.pieces() && here.pieces == to.pieces() {
		return out, nil
	}
	strip, load, err := r.meet(to, limits, at, here, there)
	if err != nil {
		return SetChange{}, err
	}
	out.Changed = true
	for _, place := range strip.kept.hung {
		name := r.set.Hang[place].Name
		if name == "" {
			name = "item " + strconv.Itoa(place+1)
		}
		out.Stays = append(out.Stays, name)
	}
	if out.Strip, err = strip.find(Stripping); err != nil {
		return SetChange{}, err
	}
	if out.Load, err = load.find(Loading); err != nil {
		return SetChange{}, err
	}
	out.HandOvers = handOvers(slices.Concat(out.Strip.Order.Steps, out.Load.Order.Steps))
	out.Out, out.In = moved(out.Strip.Order), moved(out.Load.Order)
	var handled int64
	for _, c := range [...]OrderCheck{out.Strip.Check, out.Load.Check} {
		for i := 1; i < len(c.States); i++ {
			by := nanograms(c.States[i].Arbor) - nanograms(c.States[i-1].Arbor)
			handled += max(by, -by)
		}
	}
	out.Handled = kilograms(handled)
	return out, nil
}

// meet finds what can stay: all that is common with as many pieces as may be, or nothing.
func (r *Rigged) meet(to *Rigged, limits OrderLimits, at []WorkTrim, here, there kept) (strip, load *planning, err error) {
	both := func(here, there kept) (bool, error) {
		if strip, err = r.plan(Stripping, limits, at, here); err != nil {
			return false, err
		}
		if load, err = to.plan(Loading, limits, at, there); err != nil {
			return false, err
		}
		return order.Possible(&strip.problem) && order.Possible(&load.problem), nil
	}
	for n := here.pieces; n >= 0; n-- {
		here.pieces, there.pieces = n, n
		if ok, err := both(here, there); ok || err != nil {
			return strip, load, err // what is too large for the search with so much kept is so with less
		}
	}
	_, err = both(kept{}, kept{})
	return strip, load, err
}

// common finds what hangs on both nights, item by item, and how many pieces from the bottom of the show weight are wanted on
// both.
func common(a, b *Rigged) (here, there kept) {
	taken := make([]bool, len(b.set.Hang))
	for i, item := range a.set.Hang {
		for j, other := range b.set.Hang {
			if !taken[j] && item == other {
				taken[j] = true
				here.hung, there.hung = append(here.hung, i), append(there.hung, j)
				break
			}
		}
	}
	n := 0
	for _, row := range a.counter.Stack.Show {
		stays := min(row.Count, countOf(called(b.counter.Stack.Show), row.Name))
		n += stays
		if stays < row.Count {
			break // what lies above must come out
		}
	}
	here.pieces, there.pieces = n, n
	return here, there
}

// called is the rows as pieces that are called.
func called(rows []arbor.Row) (out []PiecesOf) {
	for _, row := range rows {
		out = append(out, PiecesOf{row.Name, row.Count})
	}
	return out
}

// onto is the set with its show weight in another order: so many pieces first as they lie in another arbor, then
// the rest as it was.
func (r *Rigged) onto(other *Rigged, n int) *Rigged {
	rest := slices.Clone(r.counter.Stack.Show)
	var show []arbor.Row
	for _, row := range other.counter.Stack.Show {
		if row.Count = min(row.Count, n); row.Count == 0 {
			break
		}
		n -= row.Count
		show = append(show, row)
		for i := range rest {
			if rest[i].Name == row.Name {
				rest[i].Count -= row.Count
			}
		}
	}
	for _, row := range rest {
		switch last := len(show) - 1; {
		case row.Count == 0:
		case last >= 0 && show[last].Name == row.Name:
			show[last].Count += row.Count
		default:
			show = append(show, row)
		}
	}
	out := &Rigged{computed: r.computed}
	out.counter.Stack.Show = show
	return out
}

// moved adds up the pieces of an order, by kind.
func moved(o Order) (out []PiecesOf) {
	for _, s := range o.Steps {
		if s.Act.crew() != bridge {
			continue
		}
		if i := slices.IndexFunc(out, func(p PiecesOf) bool { return p.Piece == s.Piece }); i >= 0 {
			out[i].Count += s.Count
		} else {
			out = append(out, PiecesOf{s.Piece, s.Count})
		}
	}
	return out
}

// Lines is the change-over as it is read out, set by set and step by step, and what all of it comes to.
func (c ChangeOver) Lines(sys units.System) []string {
	var out []string
	if c.InTurn {
		out = append(out, "not in the order of the house, in which the stock would not do: sets that give pieces back go first")
	}
	for _, p := range c.Pieces {
		if p.Short() > 0 {
			out = append(out, "short at the worst moment: "+callPieces(p.Short(), p.Name))
		}
	}
	for _, s := range c.Sets {
		if !s.Changed {
			out = append(out, strictjson.Line(s.Name)+": no change")
			continue
		}
		var line strings.Builder
		line.WriteString(strictjson.Line(s.Name) + ": bridge handles " + sys.Format(s.Handled))
		for i, item := range s.Stays {
			if i == 0 {
				line.WriteString("; stays: ")
			} else {
				line.WriteString(", ")
			}
			line.WriteString(strictjson.Line(item))
		}
		out = append(out, line.String())
		begun := false
		for _, job := range [...]Plan{s.Strip, s.Load} {
			if len(job.Order.Steps) == 0 {
				continue
			}
			for i, step := range job.Check.Lines(sys) {
				if i > 0 || !begun { // the one ends as the other begins
					out = append(out, "  "+step)
				}
			}
			begun = true
		}
	}
	for _, p := range c.Pieces {
		if p.Out > 0 || p.In > 0 {
			out = append(out, "in all "+callPieces(p.Out, p.Name)+" out, "+strconv.Itoa(p.In)+" in")
		}
	}
	hands := " hand-overs"
	if c.HandOvers == 1 {
		hands = " hand-over"
	}
	return append(out, fmt.Sprintf("%d of %d sets change; the bridge handles %s in all, with %d%s",
		c.Changed, len(c.Sets), sys.Format(c.Handled), c.HandOvers, hands))
}
