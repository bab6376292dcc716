package lineset

import (
	"slices"
	"strconv"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// Loft is what one lift line has of its own between batten and head block. The zero value is nothing: its loft
// block is as high as all are, and it runs straight from there to the head block.
type Loft struct {
	Height units.Length    `json:"height,omitzero"` // of its loft block; zero: that of LoftBlocks
	Mules  []purchase.Mule `json:"mules,omitempty"` // the mule blocks that it runs over from its loft block to the head block
}

// loft is what line i has of its own.
func (r Rigging) loft(i int) Loft {
	if i >= len(r.Loft) {
		return Loft{}
	}
	return r.Loft[i]
}

// loftField is the field that says how high the loft block of line i is.
func (r Rigging) loftField(i int) string {
	if r.loft(i).Height != 0 {
		return "loft[" + strconv.Itoa(i) + "].height"
	}
	return "loft_blocks"
}

// lowestLoft gives the line whose loft block is the lowest; without lines, the height that all would have.
func (r Rigging) lowestLoft() (line int, height units.Length) {
	height = r.LoftBlocks
	for i := range r.Batten.Lines {
		h := r.LoftBlocks
		if i < len(r.Loft) && r.Loft[i].Height != 0 {
			h = r.Loft[i].Height
		}
		if i == 0 || h < height {
			line, height = i, h
		}
	}
	return line, height
}

// mules are the names of all mule blocks, each once, in the order of the lines.
func (r Rigging) mules() []string {
	var names []string
	for _, l := range r.Loft {
		for _, m := range l.Mules {
			if !slices.Contains(names, m.Name) {
				names = append(names, m.Name)
			}
		}
	}
	return names
}

// checkLoft looks at what the layout cannot: whether each line's own can be told apart. LoftBlocks may be left out where no
// line asks for it, but must not be nonsense.
func (r Rigging) checkLoft(p *check.Problems) {
	check.NotNegative(p, "loft_blocks", r.LoftBlocks)
	if n, lines := len(r.Loft), len(r.Batten.Lines); n != 0 && n != lines {
		p.Add("loft", strconv.Itoa(n)+" of them", "one for each of the "+strconv.Itoa(lines)+" lift lines, empty where a line has nothing of its own; or none at all", units.ErrOutOfRange)
	}
}

// cloneLoft copies it, so that what is kept does not change with the caller's.
func cloneLoft(loft []Loft) []Loft {
	loft = slices.Clone(loft)
	for i := range loft {
		loft[i].Mules = slices.Clone(loft[i].Mules)
	}
	return loft
}
