package purchase

import (
	"math"

	"example.com/steelyard/internal/rope"
	"example.com/steelyard/units"
)

// ends are those of a band, in newtons.
type ends struct{ least, most float64 }

func none() ends { return ends{math.Inf(1), math.Inf(-1)} }

func (e ends) with(x float64) ends    { return ends{min(e.least, x), max(e.most, x)} }
func (e ends) and(f ends) ends        { return ends{min(e.least, f.least), max(e.most, f.most)} }
func (e ends) plus(f ends) ends       { return ends{e.least + f.least, e.most + f.most} }
func (e ends) less(f ends) ends       { return ends{e.least - f.most, e.most - f.least} }
func (e ends) shifted(x float64) ends { return ends{e.least + x, e.most + x} }
func (e ends) borne() ends            { return ends{max(0, e.least), max(0, e.most)} }

// along is what goes straight with the ends.
func (e ends) along(s rope.Straight) ends { return none().with(s.At(e.least)).with(s.At(e.most)) }

func (e ends) band(value units.Force) ForceBand {
	return ForceBand{Value: value, Least: units.Force(e.least), Most: units.Force(e.most)}.about()
}
