package crosscheck

import (
	"math"

	"example.com/steelyard/load"
	"example.com/steelyard/units"
)

var (
	benchLines = [...]int{3, 5, 7, 12, 24, 50}
	benchItems = [...]int{10, 100}
)

var tubes = []load.Tube{
	{Outer: 1.9 * units.Inch, Wall: 0.145 * units.Inch, Density: load.PipeSteelDensity, Modulus: load.SteelModulusUS},
	{Outer: 48.3 * units.Millimetre, Wall: 4 * units.Millimetre, Density: load.SteelDensity, Modulus: load.SteelModulusEN},
	{Outer: 60.3 * units.Millimetre, Wall: 2.9 * units.Millimetre, Density: load.SteelDensity, Modulus: load.SteelModulusEN},
}

// kind is what makes the work harder or easier.
type kind int

const (
	level      kind = iota // rigid lines, none slack
	springs                // the same on ropes that stretch
	slack                  // rigid, heavy loads in every third span
	mistrimmed             // springs, made off wrong by up to a centimetre, every third far too long
)

func (k kind) String() string { return [...]string{"level", "springs", "slack", "mistrimmed"}[k] }

// benchBatten is a batten of lines ten feet apart. Half of what hangs is points and half is spread
// over several feet, much of it across a line. All of it piles, and at no trim of benchTrims is
// any of it all on the deck or all off it.
func benchBatten(k kind, lines, items int) (load.Batten, load.Hang) {
	b := load.Batten{
		Length: units.Foot.Scale(10*float64(lines-1) + 4),
		Pipe:   tubes[0],
		Lines:  load.Spaced(2*units.Foot, 10*units.Foot, lines),
	}
	for i := range b.Lines {
		l := &b.Lines[i]
		if k == springs || k == mistrimmed {
			l.EA, l.Path = 1500*units.Kilonewton, units.Foot.Scale(60+10*float64(i))
		}
		if k == mistrimmed {
			l.Long = units.Millimetre.Scale(10 * math.Sin(2.3*float64(i)))
			if i%3 == 1 {
				l.Long += 100 * units.Millimetre
			}
		}
	}
	var h load.Hang
	for i := range items {
		at := b.Length.Scale((float64(i) + 0.5) / float64(items))
		mass := units.Pound.Scale(min(15, 150*float64(lines)/float64(items)))
		if k == slack {
			span := 3 * (i % ((lines + 1) / 3))
			at = b.Lines[span].At + units.Foot.Scale(3+math.Mod(1.7*float64(i), 4))
			mass = units.Pound.Scale(10_000 / float64(items))
		}
		half := units.Foot.Scale(float64(i % 2 * (2 + i%5)))
		h = append(h, load.Item{
			Mass: mass, From: max(0, at-half), To: min(b.Length, at+half),
			Below: units.Metre.Scale(0.1 * float64(i%7)), Height: units.Metre.Scale(8 + 0.3*float64(i%5)),
			OnDeck: load.Piles,
		})
	}
	return b, h
}

// benchTrims are so many, and a power of two, that to go round them costs next to nothing.
func benchTrims() (trims [64]units.Length) {
	for i := range trims {
		trims[i] = units.Metre.Scale(2 + 5*math.Mod(0.618*float64(i), 1))
	}
	return trims
}
