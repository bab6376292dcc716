package lineset

import (
	"slices"

	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// stretched is the batten with the path of every line that stretches. Where the
// rigging gives a line's EA and no Path, it is the length of the lift line from end to
// end, as the ropes lie. It is the same at every trim.
//
// Where the ropes cannot be laid, some other field is at fault and is reported; so
// that the missing path is not, a metre stands in for it, which is less than any.
func (r Rigging) stretched(ropes *purchase.Reeved) load.Batten {
	b := r.Batten
	wanting := func(l load.Line) bool { return l.EA != 0 && l.Path == 0 }
	if !slices.ContainsFunc(b.Lines, wanting) {
		return b
	}
	b.Lines = slices.Clone(b.Lines)
	paths := r.paths(ropes)
	for i, l := range b.Lines {
		if !wanting(l) {
			continue
		}
		b.Lines[i].Path = units.Metre
		if paths != nil {
			b.Lines[i].Path = paths[i]
		}
	}
	return b
}

// paths gives the length of each lift line, or nil where the ropes cannot be laid.
func (r Rigging) paths(ropes *purchase.Reeved) []units.Length {
	g, err := ropes.Geometry(r.MadeOff)
	if err != nil {
		return nil
	}
	out := make([]units.Length, len(g.Lift))
	for i, line := range g.Lift {
		out[i] = line.Length
	}
	return out
}
