package lineset

import (
	"fmt"
	"iter"
	"maps"
	"reflect"
	"slices"
	"strconv"

	"example.com/steelyard/arbor"
	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/strictjson"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// House is the line sets of one venue over one stock of counterweight.
type House struct {
	Name  string      `json:"name"`
	Stock arbor.Stock `json:"stock,omitempty"`

	// Riggings are installations that several sets share, by name: a set that is
	// hung on one says so with Like.
	Riggings map[string]Rigging `json:"riggings,omitempty"`

	Sets []Set `json:"sets,omitempty"`
}

// UnmarshalJSON decodes a house and reports everything in the text that is wrong,
// not only the first fault: *units.FieldError joined, each with the path of its
// field, the value as it stands in the text, and what would be right. Field names
// are matched exactly, unknown and repeated fields are refused, and a quantity is
// text with its unit. Where it fails the house is left as it was.
func (h *House) UnmarshalJSON(text []byte) error {
	type plain House // without this method, so that the decoder looks at the fields
	var p plain
	if err := strictjson.Decode(text, &p); err != nil {
		return err
	}
	*h = House(p)
	return nil
}

// Rig checks the whole house and computes every set of it. The error joins a
// *units.FieldError for everything that is wrong in any set; nothing is computed
// from half of a house. Each set is filled as if the whole stock were there for
// it; whether the stock is enough for all of them together is told by Totals.
func (h House) Rig() (*RiggedHouse, error) {
	var p check.Problems
	p.Within("stock", "", validateStock(h.Stock))
	shared := map[string]*installed{} // nil: a rigging that something is wrong with
	for _, name := range slices.Sorted(maps.Keys(h.Riggings)) {
		on, err := newInstalled(h.Riggings[name], nil)
		p.Within(strictjson.Member("riggings", name), "", err)
		shared[name] = on
	}
	if len(h.Sets) == 0 {
		p.Add("sets", "", "at least one set", units.ErrMissing)
	}
	sets, on, found := make([]Set, len(h.Sets)), make([]*installed, len(h.Sets)), make([]flown, len(h.Sets))
	first := map[string]int{}
	for i, s := range h.Sets {
		field := "sets[" + strconv.Itoa(i) + "]"
		of := strictjson.Name(s.Name)
		if s.Name != "" {
			if at, taken := first[s.Name]; taken {
				p.Within(field, of, &units.FieldError{
					Field: "name", Value: of, Err: units.ErrDuplicate,
					Want: fmt.Sprintf("a name of its own: sets[%d] has it already", at),
				})
			} else {
				first[s.Name] = i
			}
		}
		var err error
		on[i], err = h.resolve(&s, shared)
		p.Within(field, of, err)
		found[i], err = s.validate(on[i])
		p.Within(field, of, err)
		sets[i] = s
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	// What is kept must not change with the caller's slices and maps.
	h.Stock, h.Riggings, h.Sets = slices.Clone(h.Stock), maps.Clone(h.Riggings), slices.Clone(h.Sets)
	for i := range h.Sets {
		h.Sets[i].Hang = slices.Clone(h.Sets[i].Hang)
	}
	out := &RiggedHouse{house: h}
	for i, s := range sets {
		r, err := s.compute(h.Stock, on[i], found[i])
		p.Within("sets["+strconv.Itoa(i)+"]", strictjson.Name(s.Name), err)
		out.sets = append(out.sets, r)
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	return out, nil
}

// resolve gives the set the rigging that it is hung on, and what is installed there where nothing is wrong with it.
func (h House) resolve(s *Set, shared map[string]*installed) (*installed, error) {
	given := !reflect.ValueOf(s.Rigging).IsZero()
	switch {
	case s.Like == "" && !given:
		return nil, &units.FieldError{
			Field: "rigging", Err: units.ErrMissing,
			Want: "what is installed at the set, or like with the name of one of the house's riggings",
		}
	case s.Like != "" && given:
		return nil, &units.FieldError{
			Field: "like", Value: strictjson.Name(s.Like), Err: units.ErrDuplicate,
			Want: "either like or rigging, not both",
		}
	case given:
		on, err := newInstalled(s.Rigging, s.Hang)
		return on, units.At("rigging", "", err)
	}
	rigging, ok := h.Riggings[s.Like]
	if !ok {
		return nil, &units.FieldError{
			Field: "like", Value: strictjson.Name(s.Like), Err: units.ErrUnknown,
			Want: "one of the house's riggings: " + names(h.Riggings),
		}
	}
	s.Rigging = rigging
	return shared[s.Like], nil
}

// newInstalled is a rigging that nothing is wrong with; nil with an error.
func newInstalled(r Rigging, h load.Hang) (*installed, error) {
	on := new(installed)
	if err := r.install(on, h); err != nil {
		return nil, err
	}
	return on, nil
}

// names lists the first few riggings of a house.
func names(riggings map[string]Rigging) string {
	if len(riggings) == 0 {
		return "it has none"
	}
	const most = 8
	list := ""
	for i, name := range slices.Sorted(maps.Keys(riggings)) {
		switch {
		case i == most:
			return list + fmt.Sprintf(" and %d more", len(riggings)-most)
		case i > 0:
			list += ", "
		}
		list += strictjson.Name(name)
	}
	return list
}

// RiggedHouse is a house that was checked and computed. It does not change and
// may be asked from many goroutines at once.
type RiggedHouse struct {
	house House
	sets  []*Rigged
}

// House is the description that was rigged.
func (r *RiggedHouse) House() House { return r.house }

// Sets gives the sets in the order of the house.
func (r *RiggedHouse) Sets() iter.Seq[*Rigged] { return slices.Values(r.sets) }

// Set finds a set by its name, and tells whether there is one.
func (r *RiggedHouse) Set(name string) (set *Rigged, ok bool) {
	for _, s := range r.sets {
		if s.set.Name == name {
			return s, true
		}
	}
	return nil, false
}

// PieceCount is how many pieces of one kind all stacks take together, and how
// many are in stock.
type PieceCount struct {
	Name   string `json:"name"`
	Used   int    `json:"used"`   // in all stacks together
	Wanted int    `json:"wanted"` // the same, were there enough pieces for every set
	Stock  int    `json:"stock"`  // how many there are
}

// Short is how many pieces are missing.
func (c PieceCount) Short() int { return max(c.Wanted-c.Stock, 0) }

// Totals adds up a house. Loads on the building are those with every set at high
// trim, at rest.
type Totals struct {
	Sets      int             `json:"sets"`      // how many
	Exceeding int             `json:"exceeding"` // sets with a check that exceeds its limit
	Carried   units.Mass      `json:"carried"`   // battens and what they carry at high trim
	Arbors    units.Mass      `json:"arbors"`    // arbors with their stacks
	Pieces    []PieceCount    `json:"pieces"`
	Grid      purchase.Vector `json:"grid"`      // on all loft blocks
	HeadBeam  purchase.Vector `json:"head_beam"` // on all head blocks and the dead ends beside them
}

// Totals adds up the house.
func (r *RiggedHouse) Totals() Totals {
	return r.totals(func(set int) *State {
		high := r.sets[set].High()
		return &high
	})
}

// totals sums up a house, of which it is given each set's state at high trim.
func (r *RiggedHouse) totals(at func(set int) *State) Totals {
	t := Totals{Sets: len(r.sets)}
	for i, s := range r.sets {
		high := at(i)
		if s.Exceeds() {
			t.Exceeding++
		}
		t.Carried += high.Carried
		t.Arbors += s.counter.Arbor
		t.Grid = t.Grid.Add(high.Ropes.On(purchase.Grid))
		t.HeadBeam = t.HeadBeam.Add(high.Ropes.On(purchase.HeadBeam))
	}
	for _, piece := range r.house.Stock {
		c := PieceCount{Name: piece.Name, Stock: piece.Count}
		for _, s := range r.sets {
			c.Used += s.counter.Stack.Used(piece.Name)
			ample := &s.counter.Stack
			if s.ample != nil {
				ample = s.ample
			}
			c.Wanted += ample.Used(piece.Name)
		}
		t.Pieces = append(t.Pieces, c)
	}
	return t
}
