package arbor

import (
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/units"
)

// Layer is a stretch of a stack in which equal things lie one upon the other:
// pieces of one kind with no plate between them, or plates. Bottom and Top are
// heights above the bed of the arbor, on which the lowest piece lies; so the n-th
// of its pieces, from 0, has its bottom n thicknesses above Bottom.
type Layer struct {
	Of        LayerOf      `json:"of"`             // what it is
	Name      string       `json:"name,omitempty"` // of the pieces; none of plates
	Count     int          `json:"count"`          // how many
	Mass      units.Mass   `json:"mass"`           // of each
	Thickness units.Length `json:"thickness"`      // of each
	Bottom    units.Length `json:"bottom"`         // above the bed of the arbor
	Top       units.Length `json:"top"`            // above the bed of the arbor
}

// LayerOf says what a layer is of.
type LayerOf uint8

const (
	OfPipeWeight    LayerOf = iota // pieces that balance the bare batten and stay
	OfShowWeight                   // pieces for what hangs
	OfSpreaderPlate                // spreader plates
	OfLockPlate                    // the lock plate on top
)

var layerNames = [...]string{"pipe weight", "show weight", "spreader plate", "lock plate"}

const layersWanted = `"pipe weight", "show weight", "spreader plate" or "lock plate"`

// String is "pipe weight", "show weight", "spreader plate" or "lock plate".
func (l LayerOf) String() string {
	if int(l) < len(layerNames) {
		return layerNames[l]
	}
	return "LayerOf(" + strconv.Itoa(int(l)) + ")"
}

// MarshalText gives the same text as String. One that is none of the constants is a
// *units.FieldError.
func (l LayerOf) MarshalText() ([]byte, error) {
	if int(l) >= len(layerNames) {
		return nil, &units.FieldError{Field: "of", Value: l.String(), Want: layersWanted, Err: units.ErrUnknown}
	}
	return []byte(l.String()), nil
}

// UnmarshalText reads what MarshalText wrote. Any other text is a
// *units.FieldError and leaves l as it was.
func (l *LayerOf) UnmarshalText(text []byte) error {
	for i, name := range layerNames {
		if string(text) == name {
			*l = LayerOf(i)
			return nil
		}
	}
	return &units.FieldError{Field: "of", Value: strconv.Quote(string(text)), Want: layersWanted, Err: units.ErrUnknown}
}

// Layers lists the stack from the bottom up, with the frame's spreader plates in
// their places and its lock plate on top: each plate lies on the piece that fills
// its interval. Only the rows of the stack count. Heights are exact sums, rounded
// once. It returns every *units.FieldError of frame and rows, joined.
func (s Stack) Layers(f Frame) ([]Layer, error) {
	var p check.Problems
	p.Within("", "", f.Validate())
	checkRows(&p, "pipe", s.Pipe, nil)
	checkRows(&p, "show", s.Show, nil)
	if err := p.Err(); err != nil {
		return nil, err
	}
	var out []Layer
	var top int64
	add := func(of LayerOf, name string, n int64, mass units.Mass, thickness units.Length) {
		if n <= 0 {
			return
		}
		bottom := top
		top += n * nanometres(thickness)
		out = append(out, Layer{of, name, int(n), mass, thickness, metres(bottom), metres(top)})
	}
	plate := func(n int64) { add(OfSpreaderPlate, "", n, f.Plate.Mass, f.Plate.Thickness) }
	for _, r := range s.Pipe {
		add(OfPipeWeight, r.Name, int64(r.Count), r.Mass, r.Thickness)
	}
	every, stacked, plates := nanometres(f.Plate.Every), int64(0), int64(0)
	for _, r := range s.Show {
		each := nanometres(r.Thickness)
		for left := int64(r.Count); left > 0; {
			n := left
			if every > 0 {
				if plates == 0 {
					plate(1)
					plates = 1
				}
				// Up to the piece that fills the interval, and the plates on it.
				n = min(left, (plates*every-stacked+each-1)/each)
			}
			add(OfShowWeight, r.Name, n, r.Mass, r.Thickness)
			left -= n
			stacked += n * each
			under := f.Plate.kernel().Under(stacked)
			plate(under - plates)
			plates = under
		}
	}
	if f.Lock != (Lock{}) {
		add(OfLockPlate, "", 1, f.Lock.Mass, f.Lock.Thickness)
	}
	return out, nil
}
