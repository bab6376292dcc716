package purchase

import (
	"reflect"
	"slices"

	"example.com/steelyard/units"
)

// memory is what a [State] or [Running] that is filled again and again keeps from one time to the next: its slices with
// the names in them, and whose names these are, so that only numbers need be written. A copy of the State is not its
// owner, and begins a memory of its own when it is filled.
type memory struct {
	of     *Reeved
	owner  any
	lift   []RopeState
	hand   []Part
	parts  []Part // of all lift lines
	blocks []Block
}

// ready gives its owner a memory with the names of a reeving.
func (m *memory) ready(r *Reeved, owner any) *memory {
	if m == nil || m.of != r || m.owner != owner {
		m = r.remember()
		m.owner = owner
	}
	return m
}

func (r *Reeved) remember() *memory {
	lifts := 0
	for i := range r.lift {
		lifts += len(r.lift[i].legs)
	}
	parts := make([]Part, lifts+len(r.hand.legs))
	m := &memory{of: r, lift: make([]RopeState, len(r.lift)), parts: parts[:lifts:lifts], hand: parts[lifts:], blocks: slices.Clone(r.blocks)}
	r.hand.parts(m.hand)
	for i := range r.lift {
		l := &r.lift[i]
		of := take(&parts, len(l.legs))
		l.parts(of)
		m.lift[i] = RopeState{Name: l.rope.Name, Parts: of}
	}
	return m
}

// noPlace is the fault of a nil State or Running to be filled.
func noPlace(field string) error {
	return &units.FieldError{Field: field, Want: "a place for the answer", Err: units.ErrMissing}
}

// Equal reports whether two states say the same, as go-cmp asks; what they remember for the next one does not count.
func (s State) Equal(t State) bool {
	s.memory, t.memory = nil, nil
	return reflect.DeepEqual(s, t)
}

// Equal reports whether two say the same, as for [State].
func (s Running) Equal(t Running) bool {
	s.memory, t.memory = nil, nil
	return reflect.DeepEqual(s, t)
}
