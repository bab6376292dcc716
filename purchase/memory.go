package purchase

import (
	"reflect"

	"example.com/steelyard/internal/slab"
	"example.com/steelyard/units"
)

// memory is what a [State] or [Running] that is filled again and again keeps from one time to the next: its slices with
// the names in them, and whose names these are, so that only numbers need be written. A copy of the State is not its
// owner, and begins a memory of its own when it is filled.
type memory struct {
	of      *Reeved
	state   *State // its owner
	running *Running
	ropes   []RopeState // of each of Reeved.rests
	bear    [][]Part    // its parts
	parts   []Part      // of all lift lines, and then of the hand line
	blocks  []Block

	// Known is what pulls on each of Reeved.rests: a lift line at the batten, the hand line at height 0. It stands here and not in a
	// slice of its own, which two goroutines' memories might have side by side.
	known [maxLines + 2]float64
}

// knows tells whether it holds the names of a reeving.
func (m *memory) knows(r *Reeved) bool { return m != nil && m.of == r }

// remember makes a memory with the names of the reeving.
func (r *Reeved) remember() *memory {
	parts := 0
	for _, l := range r.all() {
		parts += l.last()
	}
	m := &memory{of: r, ropes: make([]RopeState, len(r.rests)), bear: make([][]Part, len(r.rests)), parts: make([]Part, parts), blocks: r.newBlocks()}
	left := m.parts
	for i, l := range r.all() {
		of := slab.Take(&left, l.last())
		l.parts(of)
		m.ropes[i] = RopeState{Name: l.rope.Name, Parts: of}
	}
	for i := range r.rests {
		l := &r.rests[i]
		m.bear[i] = m.parts[l.first:][:len(l.stops):len(l.stops)]
	}
	return m
}

// lift and hand are what belongs to the lift lines and to the hand line.
func (m *memory) lift() []RopeState { n := len(m.of.lift); return m.ropes[:n:n] }
func (m *memory) hand() []Part      { return m.parts[len(m.parts)-m.of.hand.last():] }

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
