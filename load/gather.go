package load

import "example.com/steelyard/units"

// Gather says how the two halves of a drape are drawn open, alike to both sides. The
// zero value is closed.
//
// A traveller runs along its track to the sides: give the Width that each half then
// takes. A tab keeps its heading where it is and is drawn up from the middle towards the
// outer edges: give the Lift and the Lean.
type Gather struct {
	// Width is the length of batten that each half takes, at its own outer edge; 0 is half
	// the width of the drape, as it hangs closed.
	Width units.Length `json:"width,omitzero"`

	// Lean is how much of each half hangs towards its outer edge, from −1 to 1: its mass
	// per length goes in a straight line from (1 − Lean) times the mean at the inner edge
	// to (1 + Lean) times the mean at the outer. 0 is even. See Item.Taper.
	Lean float64 `json:"lean,omitzero"`

	// Lift is how far the foot is drawn up; 0 is not at all.
	Lift units.Length `json:"lift,omitzero"`
}

// Parted is the drape drawn open. It gives what [Drape.Hang] does, for each half: first
// the one nearer the arbor, cloth before hem. The drape is described as it hangs closed,
// its Width that of both halves together, and from is its nearer edge. All its mass stays
// on the batten.
//
// The foot of a half is taken as level, and the cloth as spread evenly over the height
// that is left. The foot of a tab runs up towards the middle, so that the deck takes it
// little by little: with the Lift of its inner edge the batten is said to carry no less
// than it does, with no Lift no more. Left out are the overlap of the halves, carriers, the
// draw line and its pull, and that no two halves are drawn quite alike. A traveller's
// track passes the load on where it hangs itself, and not evenly. A drape drawn to
// one side only is [Drape.Hang] with the From or the To of its items moved.
//
// What makes no sense (a width more than the drape's, a lift of the whole drop or more,
// one of them below zero or not finite, a lean beyond −1 to 1, the drape itself) gives
// items with no mass, which [Batten.Rig] refuses.
func (d Drape) Parted(name string, from units.Length, g Gather) Hang {
	width := g.Width
	if width == 0 {
		width = d.Width.Scale(0.5)
	}
	share := 0.5
	if !(width > 0 && width <= d.Width && g.Lift >= 0 && g.Lift < d.Drop && g.Lean >= -1 && g.Lean <= 1) {
		share = 0
	}
	var h Hang
	for _, half := range []struct {
		name     string
		from, to units.Length
		lean     float64
	}{
		{"near half", from, from + width, 0 - g.Lean},
		{"far half", from + (d.Width - width), from + d.Width, g.Lean},
	} {
		for _, item := range d.hung(part(name, half.name), d.Drop-g.Lift) {
			item.From, item.To, item.Taper = half.from, half.to, half.lean
			item.Mass = item.Mass.Scale(share)
			h = append(h, item)
		}
	}
	return h
}
