package lineset_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/arbor"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// standing and piling are things of 40 lb that reach so many feet down to the deck.
func standing(feet float64) load.Item {
	flat := pounds("flat", 40)
	flat.Height, flat.OnDeck = units.Foot.Scale(feet), load.Stands
	return flat
}

func piling(feet float64) load.Item {
	cloth := pounds("cloth", 40)
	cloth.Height, cloth.OnDeck = units.Foot.Scale(feet), load.Piles
	return cloth
}

// halt is a suggestion as it is written here: in inches above 4 ft, the lowest trim.
type halt struct {
	Above             float64
	Deck, Bridge, End bool
}

func tellHalts(at []lineset.WorkTrim) (out []halt) {
	for _, t := range at {
		// Those at which a piece comes into reach are to the millimetre.
		above := units.Ratio(t.Trim-4*units.Foot, units.Inch)
		if near := math.Round(above*4) / 4; math.Abs(above-near) < 0.04 {
			above = near
		}
		out = append(out, halt{above, t.Deck, t.Bridge, t.End})
	}
	return out
}

// Where to halt: at the lowest trim, where cloths hang clear, an inch above where a flat leaves the deck, and where the bridge reaches no
// further. From 4 ft the set reaches 47 1/2.
func TestWhereToHalt(t *testing.T) {
	low, nan := 4*units.Foot, units.Length(math.NaN())
	inches := func(n float64) units.Length { return low + units.Inch.Scale(n) }
	const highest = 522 // inches above
	below := standing(7)
	below.Below = 1 * units.Foot
	light := standing(9)
	light.Mass = 2 * units.Pound
	for _, c := range []struct {
		name         string
		hang         load.Hang
		deck, bridge units.Length
		want         []halt
	}{
		{"nothing hangs", nil, low, low, []halt{{0, true, true, false}}},
		{"lower than it goes", nil, 0, -1, []halt{{0, true, true, false}}},
		{"no numbers", nil, nan, nan, []halt{{0, true, true, false}}},
		{"a bridge further up", nil, low, inches(12), []halt{{0, true, true, false}, {12, false, true, false}}},
		{"deck and bridge as high", nil, inches(12), inches(12), []halt{{0, true, true, false}, {12, true, true, false}}},
		{"the deck a hair lower", nil, inches(11.99), inches(12), []halt{{0, true, true, false}, {12, false, true, false}}},
		{"higher than it goes", nil, inches(999), inches(999), []halt{{0, true, true, false}, {highest, true, true, false}}},
		{"as high as it goes", nil, inches(highest), inches(highest), []halt{{0, true, true, false}, {highest, true, true, false}}},
		{"all that hangs is clear", load.Hang{pounds("lamps", 60), piling(3), standing(3)}, low, low, []halt{{0, true, true, false}}},
		{"a cloth", load.Hang{piling(6)}, low, low, []halt{{0, true, true, false}, {24, false, false, true}}},
		{"a cloth within the bridge's reach", load.Hang{piling(6)}, inches(24), inches(24), []halt{{0, true, true, false}, {24, true, true, true}}},
		{"a flat", load.Hang{standing(6)}, low, inches(23.5), []halt{{0, true, true, false}, {23.5, false, true, false}, {25, false, false, true}}},
		{"a flat that is off the deck where the bridge reaches no further", load.Hang{standing(6)}, low, inches(24.75), []halt{
			{0, true, true, false}, {24.75, false, true, true}, {25, false, false, false},
		}},
		{"a flat that hangs below the batten", load.Hang{below}, low, low, []halt{{0, true, true, false}, {49, false, false, true}}},
		{"a flat of 2 lb", load.Hang{light}, low, low, []halt{{0, true, true, false}, {61, false, false, true}}},
		{"two flats and a cloth", load.Hang{standing(6), piling(8), standing(7)}, low, inches(40), []halt{
			{0, true, true, false}, {25, false, true, false}, {37, false, true, false}, {40, false, true, false}, {48, false, false, true},
		}},
		{"a flat that is off the deck by half an inch at the lowest trim", load.Hang{standing(4 - 1.0/24)}, low, low, []halt{{0, true, true, false}}},
		{"a cloth that touches at the lowest trim", load.Hang{piling(4)}, low, low, []halt{{0, true, true, false}}},
		{"a flat that stands at the lowest trim", load.Hang{standing(4)}, low, low, []halt{{0, true, true, false}, {1, false, false, true}}},
		{"a flat less than an inch below the highest trim", load.Hang{standing(47.5 - 1.0/24)}, low, low, []halt{{0, true, true, false}, {highest, false, false, true}}},
		{"a flat that leaves the deck at the highest trim", load.Hang{standing(47.5)}, low, low, []halt{{0, true, true, false}, {highest, false, false, false}}},
		{"a cloth that is clear at the highest trim", load.Hang{piling(47.5)}, low, low, []halt{{0, true, true, false}, {highest, false, false, true}}},
		{"a flat that never leaves it", load.Hang{standing(48)}, low, low, []halt{{0, true, true, false}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := rigTens(t, plain(t, purchase.Single, c.hang...))
			if travel := r.Travel(); travel.Lowest != low || !travel.Highest.Within(inches(highest), units.Millimetre) {
				t.Fatalf("%+v", travel)
			}
			if diff := cmp.Diff(c.want, tellHalts(r.WorkTrims(c.deck, c.bridge))); diff != "" {
				t.Error(diff)
			}
		})
	}
	if at := new(lineset.Rigged).WorkTrims(low, low); at != nil {
		t.Errorf("of a Rigged that Rig did not make: %v", at)
	}
}

// Where the run has bridges there is a halt for every arm's reach of pieces: with the batten at 4 ft the arbor's foot is at 45 ft, and it
// sinks as the batten rises. Pieces are an inch thick, and arms have half an inch
// to spare over 12 of them.
func TestHaltsAtWhichArmsReach(t *testing.T) {
	const foot = 45 * units.Foot // the arbor's, at the lowest trim
	floor := func(name string, from, low, high units.Length) arbor.Bridge {
		return arbor.Bridge{Name: name, Floor: from, Low: low, High: high}
	}
	in := units.Inch
	for _, c := range []struct {
		name    string
		pieces  float64
		pipe    float64 // pieces of pipe weight below them
		bridges []arbor.Bridge
		want    []halt
	}{
		{"all in reach", 12, 0, []arbor.Bridge{floor("bridge", foot, 0, 12.5*in)}, []halt{{0, true, true, false}}},
		{"one beyond", 13, 0, []arbor.Bridge{floor("bridge", foot, 0, 12.5*in)}, []halt{{0, true, true, false}, {12, false, true, false}}},
		{"three reaches", 36, 0, []arbor.Bridge{floor("bridge", foot, 0, 12.5*in)}, []halt{{0, true, true, false}, {12, false, true, false}, {24, false, true, false}}},
		{"and one more", 37, 0, []arbor.Bridge{floor("bridge", foot, 0, 12.5*in)}, []halt{{0, true, true, false}, {12, false, true, false}, {24, false, true, false}, {36, false, true, false}}},
		{"one piece at a time", 4, 0, []arbor.Bridge{floor("bridge", foot, 0, 1.5*in)}, []halt{{0, true, true, false}, {1, false, true, false}, {2, false, true, false}, {3, false, true, false}}},
		{"one piece in all", 1, 0, []arbor.Bridge{floor("bridge", foot, 0, 1.5*in)}, []halt{{0, true, true, false}}},
		{"pipe weight takes some of the reach", 9, 4, []arbor.Bridge{floor("bridge", foot, 0, 12.5*in)}, []halt{{0, true, true, false}, {12, false, true, false}}},
		{"and is not itself wanted", 8, 4, []arbor.Bridge{floor("bridge", foot, 0, 12.5*in)}, []halt{{0, true, true, false}}},
		{"a whole reach of pipe weight", 4, 9, []arbor.Bridge{floor("bridge", foot, 0, 9.5*in)}, []halt{{0, true, true, false}, {9, false, true, false}}},
		{"the lowest never in reach", 30, 0, []arbor.Bridge{floor("bridge", foot, 6*in, 18.5*in)}, []halt{{0, true, true, false}, {12, false, true, false}}}, // 7 to 18, 19 to 30
		{"none at the lowest trim", 12, 0, []arbor.Bridge{floor("bridge", foot-36*in, 0, 12.5*in)}, []halt{{0, true, true, false}, {36, false, true, false}}},
		{"none at the lowest trim, over pipe weight", 8, 4, []arbor.Bridge{floor("bridge", foot-36*in, 0, 12.5*in)}, []halt{{0, true, true, false}, {40, false, true, false}}},
		{"never any", 12, 0, []arbor.Bridge{floor("bridge", foot+80*in, 0, 12.5*in)}, []halt{{0, true, true, false}}},
		{"arms as low as the arbor's foot never comes", 12, 0, []arbor.Bridge{floor("bridge", 0, 0, 12.5*in)}, []halt{{0, true, true, false}}},
		{"all of them too low", 6, 0, []arbor.Bridge{floor("bridge", foot, 6*in, 18.5*in)}, []halt{{0, true, true, false}}},
		{"all but one too low", 7, 0, []arbor.Bridge{floor("bridge", foot, 6*in, 18.5*in)}, []halt{{0, true, true, false}}},
		{"two bridges", 18, 0, []arbor.Bridge{floor("upper", foot, 0, 12.5*in), floor("lower", foot-60*in, 0, 12.5*in)}, []halt{
			{0, true, true, false}, {12, false, true, false}, {60, false, true, false}, {72, false, true, false},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain(t, purchase.Single, pounds("lamps", 10*c.pieces))
			s.Rigging.Arbor.Tare -= units.Pound.Scale(10 * c.pipe)
			s.Rigging.Run.Bridges = c.bridges
			r := rigTens(t, s)
			if got := r.Counterweight().Stack.Pieces; got != int(c.pieces+c.pipe) {
				t.Fatalf("%d pieces", got)
			}
			at := r.WorkTrims(4*units.Foot, 20*units.Foot) // where there are bridges, the other trim is of no account
			if diff := cmp.Diff(c.want, tellHalts(at)); diff != "" {
				t.Error(diff)
			}
		})
	}
}
