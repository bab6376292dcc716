package lineset_test

import (
	"encoding/json"
	"testing"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// stock is what the tests fill arbors from.
var stock = arbor.Stock{
	{Name: "44", Mass: 44 * units.Pound, Thickness: 2 * units.Inch, Count: 60},
	{Name: "22", Mass: 22 * units.Pound, Thickness: 1 * units.Inch, Count: 20},
	{Name: "11", Mass: 11 * units.Pound, Thickness: 0.5 * units.Inch, Count: 20},
}

// electric is a double purchase set with an electric and its cable.
func electric() lineset.Set {
	return lineset.Set{
		Name:    "first electric",
		Rigging: rigging(purchase.Double),
		Low:     5 * units.Foot, High: 28 * units.Foot, Balance: lineset.Even,
		Hang: load.Hang{
			{Name: "12 fixtures", Mass: 312 * units.Pound, From: 6 * units.Foot, To: 36 * units.Foot},
			{Name: "cable tail", Mass: 24 * units.Pound, From: 1 * units.Foot, To: 1 * units.Foot},
		},
	}
}

// rigging is an installation under a 54 ft grid: the single one down to the
// deck, the double one over a rail at 21 ft.
func rigging(kind purchase.Kind) lineset.Rigging {
	r := lineset.Rigging{
		Purchase: kind,
		Batten: load.Batten{
			Length: 42 * units.Foot,
			Pipe: load.Tube{
				Outer: 1.9 * units.Inch, Wall: 0.145 * units.Inch,
				Density: load.PipeSteelDensity, Modulus: load.SteelModulusUS,
			},
			Lines: load.Spaced(1*units.Foot, 10*units.Foot, 5),
		},
		Offset: 7 * units.Foot, LoftBlocks: 54 * units.Foot, HeadBlock: 55 * units.Foot,
		Rail: 3.5 * units.Foot, Idler: lineset.Idler{Height: 0.75 * units.Foot, Mass: 60 * units.Pound},
		Run: arbor.Run{LowerStop: 1.5 * units.Foot, UpperStop: 53 * units.Foot},
		Arbor: arbor.Frame{
			Tare: 96 * units.Pound, Length: 8 * units.Foot, Room: 75 * units.Inch, Capacity: 1400 * units.Pound,
			Plate: arbor.Plate{Mass: 2.5 * units.Pound, Thickness: 0.125 * units.Inch, Every: 24 * units.Inch},
		},
		LiftLine: 11 * units.PoundPerHundredFeet, HandLine: 16.7 * units.PoundPerHundredFeet,
		MadeOff: 4 * units.Foot,
		Limits: lineset.Limits{
			LiftLine:     lineset.ForceLimit{Max: 700 * units.PoundForce, Basis: "given in the test"},
			OutOfBalance: lineset.ForceLimit{Max: 50 * units.PoundForce, Basis: "common practice"},
		},
	}
	if kind == purchase.Double {
		r.DeadEnds = 55.5 * units.Foot
		r.Rail, r.Idler.Height = 21*units.Foot, 19.5*units.Foot
		r.Run.LowerStop = 22 * units.Foot
	}
	return r
}

func mustRig(t testing.TB, s lineset.Set) *lineset.Rigged {
	t.Helper()
	r, err := s.Rig(stock)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func houseText(t testing.TB) []byte {
	t.Helper()
	text, err := json.Marshal(house())
	if err != nil {
		t.Fatal(err)
	}
	return text
}
