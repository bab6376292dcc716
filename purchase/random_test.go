package purchase_test

import (
	"fmt"
	"math"
	"strings"

	"pgregory.net/rapid"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// drawn is a random reeving with any number of parts at batten and arbor, and
// what hangs on it.
type drawn struct {
	purchase.Reeving
	atBatten, atArbor int // parts of each lift line
	hand              int // parts of the hand line at each end of the arbor
	lines             int
	arborLength       float64
}

const (
	sheaveHeight = 20.0 // of every fixed block, about, in metres
	footing      = 0.5
)

// drawReeving lays plain vertical paths with level runs between fixed blocks.
func drawReeving(t *rapid.T) drawn {
	d := drawn{
		atBatten: rapid.IntRange(1, 3).Draw(t, "parts at the batten"),
		atArbor:  rapid.IntRange(1, 4).Draw(t, "parts at the arbor"),
		hand:     rapid.IntRange(1, 2).Draw(t, "hand line parts"),
		lines:    rapid.IntRange(1, 5).Draw(t, "lines"),
	}
	d.arborLength = rapid.Float64Range(0.5, 3).Draw(t, "arbor length")
	extra := rapid.IntRange(0, 2).Draw(t, "extra fixed sheaves")
	mass := units.LineMass(rapid.Float64Range(0, 1).Draw(t, "lift line mass"))
	level := rapid.Bool().Draw(t, "all runs level") // from the grid to the head block
	fixed := func(name string, on purchase.Body, across float64) purchase.Stop {
		if level && (name == "head" || strings.HasSuffix(name, ".0")) {
			return purchase.Stop{Name: name, On: on, Across: units.Length(across), Height: sheaveHeight}
		}
		height := sheaveHeight + rapid.Float64Range(0, 1).Draw(t, name+" height")
		return purchase.Stop{Name: name, On: on, Across: units.Length(across), Height: units.Length(height)}
	}
	for i := range d.lines {
		across := float64(2 + 3*i)
		var path []purchase.Stop
		batten := purchase.Stop{Name: fmt.Sprintf("batten %d", i+1), On: purchase.Batten, Across: units.Length(across)}
		for k := d.atBatten; k >= 0; k-- {
			if k%2 == 0 {
				path = append(path, fixed(fmt.Sprintf("grid %d.%d", i+1, k), purchase.Grid, across))
			} else {
				path = append(path, batten)
			}
		}
		path = append(path, mulesFrom(t, i+1, extra, level, across-0.5)...)
		path = append(path, fixed("head", purchase.HeadBeam, 0))
		for k := range d.atArbor {
			if k%2 == 0 {
				path = append(path, purchase.Stop{Name: "arbor top", On: purchase.Arbor})
			} else {
				path = append(path, fixed(fmt.Sprintf("beam %d.%d", i+1, k), purchase.HeadBeam, 0))
			}
		}
		d.Lift = append(d.Lift, purchase.Rope{Name: fmt.Sprintf("lift %d", i+1), Mass: mass, Path: path})
	}
	foot := purchase.Stop{Name: "foot", On: purchase.Arbor, Height: units.Length(-d.arborLength)}
	hand := []purchase.Stop{foot, {Name: "idler", On: purchase.Idler}, fixed("head", purchase.HeadBeam, 0), {Name: "arbor top", On: purchase.Arbor}}
	if d.hand == 2 {
		hand = append([]purchase.Stop{{Name: "rail end", On: purchase.Rail, Height: footing + 0.4}}, hand...)
		hand = append(hand, fixed("hand end", purchase.HeadBeam, 0))
	}
	d.Hand = purchase.Rope{Name: "hand", Mass: units.LineMass(rapid.Float64Range(0, 1).Draw(t, "hand line mass")), Path: hand}
	d.Trim, d.ArborTop, d.Idler, d.Lock = 9, 11, footing, footing+0.3
	return d
}

// mulesFrom lays extra sheaves on the way to the head block, at each of which the line turns. In a run that is to be level
// two turns lead it up and two down again, so that every part is level or plumb. Otherwise the first stands
// over all blocks and the second below.
func mulesFrom(t *rapid.T, line, extra int, level bool, across float64) (path []purchase.Stop) {
	add := func(across, height float64) {
		name := fmt.Sprintf("mule %d.%d", line, len(path)+1)
		path = append(path, purchase.Stop{Name: name, Across: units.Length(across), Height: units.Length(height)})
	}
	for k := range extra {
		off := rapid.Float64Range(0.1, 1).Draw(t, fmt.Sprintf("mule %d.%d off", line, k+1))
		at := across - 0.2*float64(k)
		switch {
		case level:
			add(at, sheaveHeight)
			add(at, sheaveHeight+off)
			add(at-0.1, sheaveHeight+off)
			add(at-0.1, sheaveHeight)
		case k == 0:
			add(at, sheaveHeight+1+off)
		default:
			add(at, sheaveHeight-off)
		}
	}
	return path
}

// ratio is what the parts say: those at the arbor over those at the batten.
func (d drawn) ratio() float64 { return float64(d.atArbor) / float64(d.atBatten) }

// height gives a stop's height above the deck, for batten and arbor where they are.
func (d drawn) height(s purchase.Stop, trim, top float64) float64 {
	z := s.Height.In(units.Metre)
	switch s.On {
	case purchase.Batten:
		return z + trim
	case purchase.Arbor:
		return z + top
	case purchase.Idler:
		return z + d.Idler.In(units.Metre)
	}
	return z
}

// parts calls f for each part of a rope with its length and the heights of its ends.
func (d drawn) parts(r purchase.Rope, trim, top float64, f func(a, b purchase.Stop, za, zb, length float64)) {
	for i := range len(r.Path) - 1 {
		a, b := r.Path[i], r.Path[i+1]
		za, zb := d.height(a, trim, top), d.height(b, trim, top)
		f(a, b, za, zb, math.Hypot((b.Across-a.Across).In(units.Metre), zb-za))
	}
}

func (d drawn) ropes() []purchase.Rope { return append(append([]purchase.Rope{}, d.Lift...), d.Hand) }
