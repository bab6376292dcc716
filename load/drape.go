package load

import (
	"math"

	"example.com/steelyard/units"
)

// Drape is a piece of soft goods: a border, leg, traveller half, scrim or backdrop.
type Drape struct {
	Width units.Length `json:"width"` // finished: as it hangs
	Drop  units.Length `json:"drop"`  // from the batten to the hem

	// Cloth is the mass per area of one layer; add the lining's. See [Running] for
	// cloth sold by the running yard.
	Cloth units.AreaMass `json:"cloth"`

	// Fullness is what the cloth is wider than the finished width, as a share of it: 0
	// is flat, 0.5 is 50 %, one and a half times the width in cloth.
	Fullness float64 `json:"fullness,omitzero"`

	// Hem is chain or pipe in the hem, per length of finished width.
	Hem units.LineMass `json:"hem,omitzero"`
}

// Mass is that of the cloth and of what is in the hem:
//
//	cloth · width · (1 + fullness) · drop + hem · width
//
// Seams, webbing and ties are left out. Chain sewn into full cloth follows the
// pleats: give 1 + fullness times its own mass per length as the Hem. A drape
// that makes no sense (a size or a mass below zero or not finite, no width or no drop) has no
// mass, and [Batten.Rig] refuses its item.
func (d Drape) Mass() units.Mass {
	if !(d.Width > 0 && d.Drop > 0 && d.Cloth >= 0 && d.Fullness >= 0 && d.Hem >= 0) {
		return 0
	}
	m := d.Cloth.Over(d.Width.Scale(1+d.Fullness).By(d.Drop)) + d.Hem.Over(d.Width)
	if math.IsNaN(float64(m)) || math.IsInf(float64(m), 0) {
		return 0
	}
	return m
}

// Item is the drape as it hangs on a batten, its nearer edge at from. It piles on the deck.
// If it hangs under something, set the item's Below.
//
// The item's mass is spread evenly over the drop, the hem's with it: while a part lies
// on the deck, the batten is said to carry that part of the hem too, which really is
// on the deck as soon as the hem touches. Where that matters, leave the Hem
// out and hang it as an item of its own that stands, with Below the drop less the height
// of the hem.
func (d Drape) Item(name string, from units.Length) Item {
	return Item{Name: name, Mass: d.Mass(), From: from, To: from + d.Width, Height: d.Drop, OnDeck: Piles}
}

// Running turns the mass of cloth as it is sold, by length at the width of the bolt,
// into mass per area: 16 oz per yard at 54 in is
//
//	load.Running(16*units.Ounce, 1*units.Yard, 54*units.Inch)
//
// A whole roll's mass and length do as well. A length or bolt that is not more than
// zero gives no mass.
func Running(mass units.Mass, length, bolt units.Length) units.AreaMass {
	if !(length > 0 && bolt > 0) {
		return 0
	}
	return units.KilogramPerSquareMetre.Scale(mass.In(units.Kilogram) / length.By(bolt).In(units.SquareMetre))
}
