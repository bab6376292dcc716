package units

import "testing"

// The table of symbols is not exported, so this test stands inside. A spelling
// that stood twice would be read one way or the other by the luck of the order; a
// spelling that unitKey changes could never be found.
//
// Two pairs of quantities share their units, and there the type that is asked for
// decides: a moment and an energy, a load along a batten and a stiffness.
func TestSymbols(t *testing.T) {
	shared := map[[2]*dimension]bool{
		{&momentDimension, &energyDimension}:      true,
		{&lineLoadDimension, &stiffnessDimension}: true,
	}
	dimensionOf := map[string]*dimension{}
	owner := map[string]string{}
	for _, d := range dimensions {
		if u := &d.units[0]; u.num != 1 || u.den != 0 || u.tens != 0 || u.long != "" {
			t.Errorf("%s: the first unit, %s, is not the SI unit", d.name, d.si())
		}
		for i := range d.units {
			u := &d.units[i]
			if u.factor().Sign() <= 0 {
				t.Errorf("%s: factor of %s", d.name, u.symbol)
			}
			if d.spelled(unitKey(u.symbol)) != u {
				t.Errorf("%s: the symbol %s cannot be read", d.name, u.symbol)
			}
			for _, spelling := range append([]string{u.symbol}, u.aliases...) {
				if spelling != u.symbol && unitKey(spelling) != spelling {
					t.Errorf("%s: the spelling %q is read as %q and never found", d.name, spelling, unitKey(spelling))
				}
				if other, twice := owner[spelling]; twice && !shared[[2]*dimension{dimensionOf[spelling], d}] {
					t.Errorf("%q is %s and %s", spelling, other, d.name+" "+u.symbol)
				}
				owner[spelling] = d.name + " " + u.symbol
				dimensionOf[spelling] = d
				if ambiguous(spelling) != "" {
					t.Errorf("%q is in the table and ambiguous", spelling)
				}
			}
		}
		for _, read := range []reading{d.us, d.metric, d.fineUS, d.fineMet} {
			if read.symbol != "" && d.unit(read.symbol).symbol != read.symbol {
				t.Errorf("%s: no unit %s to print in", d.name, read.symbol)
			}
		}
	}
}
