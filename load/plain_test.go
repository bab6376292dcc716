package load

import (
	"math"
	"testing"

	"example.com/steelyard/units"
)

// Where it is plain that nothing is wrong with an item, a closer look finds nothing either; and an item as they are needs none.
func TestPlainItemsHaveNoFault(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, length := range []units.Length{0, 10} {
		for _, mass := range []float64{-1, 0, 1, nan} {
			for _, from := range []float64{-1, 0, 5, 11, nan} {
				for _, to := range []float64{0, 5, 10, 11, inf} {
					for _, taper := range []float64{-1.1, -1, 0, 1, 1.1, nan} {
						for _, below := range []float64{-1, 0, 2, 1e13, nan} {
							for _, height := range []float64{-1, 0, 3, 1e13, inf, nan} {
								for deck := Hangs; deck <= Stands+1; deck++ {
									i := Item{
										Mass: units.Mass(mass), From: units.Length(from), To: units.Length(to), Taper: taper,
										Below: units.Length(below), Height: units.Length(height), OnDeck: deck,
									}
									if plain(&i, length) && i.faults(length) != nil {
										t.Fatalf("%+v on %v: %v", i, length, i.faults(length))
									}
								}
							}
						}
					}
				}
			}
		}
	}
}
