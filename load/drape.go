package load

import (
	"math"

	"example.com/steelyard/units"
)

// Drape is a piece of soft goods: a border, leg, traveller half, scrim or backdrop.
type Drape struct {
	Width units.Length `json:"width"`          // finished: as it hangs
	Drop  units.Length `json:"drop"`           // from its top to the hem
	Below units.Length `json:"below,omitzero"` // how far under the batten its top hangs, as from a track

	// Cloth is the mass per area of one layer; add the lining's. See [Running] for
	// cloth sold by the running yard.
	Cloth units.AreaMass `json:"cloth"`

	// Fullness is what the cloth is wider than the finished width, as a share of it: 0
	// is flat, 0.5 is 50 %, one and a half times the width in cloth.
	Fullness float64 `json:"fullness,omitzero"`

	// Hem is chain or pipe in the hem, per length of finished width.
	Hem units.LineMass `json:"hem,omitzero"`
}

// hemHeight is what pipe or chain in the hem is taken to stand high, where the drape is long
// enough. It only says where the hem's item begins: what counts is its foot.
const hemHeight units.Length = 25 * units.Millimetre

// Mass is that of the cloth and of what is in the hem:
//
//	cloth · width · (1 + fullness) · drop + hem · width
//
// Seams, webbing and ties are left out. Chain sewn into full cloth follows the
// pleats: give 1 + fullness times its own mass per length as the Hem. A drape
// that makes no sense (a size or a mass below zero or not finite, no width or no drop) has no
// mass, and [Batten.Rig] refuses its item.
func (d Drape) Mass() units.Mass {
	cloth, hem := d.masses()
	return cloth + hem
}

// masses gives that of the cloth and that of the hem, both of them 0 where the drape makes
// no sense.
func (d Drape) masses() (cloth, hem units.Mass) {
	if !(d.Width > 0 && d.Drop > 0 && d.Below >= 0 && d.Cloth >= 0 && d.Fullness >= 0 && d.Hem >= 0) {
		return 0, 0
	}
	cloth = d.Cloth.Over(d.Width.Scale(1 + d.Fullness).By(d.Drop))
	hem = d.Hem.Over(d.Width)
	if sound(cloth+hem) != cloth+hem {
		return 0, 0
	}
	return cloth, hem
}

// sound gives a mass that can be one, and none in the place of any other.
func sound(m units.Mass) units.Mass {
	if m > 0 && !math.IsInf(float64(m), 0) {
		return m
	}
	return 0
}

// Item is the drape as it hangs on a batten in one piece, its nearer edge at from. It piles on
// the deck.
//
// The item's mass is spread evenly over the drop, the hem's with it: while a part lies
// on the deck, the batten is said to carry that part of the hem too, which really is
// on the deck as soon as the hem touches. Where that matters, use [Drape.Hang].
func (d Drape) Item(name string, from units.Length) Item {
	return Item{Name: name, Mass: d.Mass(), From: from, To: from + d.Width, Below: d.Below, Height: d.Drop, OnDeck: Piles}
}

// Hang is the drape as it hangs on a batten, its nearer edge at from: the cloth, which
// piles on the deck, and what is in the hem, which the batten carries while it hangs
// clear and the deck as soon as it touches. They join what else hangs with
// append(hang, drape.Hang("leg", from)...).
//
// The hem is an item of its own, named for the drape with ", hem" added; without a Hem
// there is none. It touches all at once, as if batten and deck were level. See
// [Drape.Parted] for a drape drawn open.
func (d Drape) Hang(name string, from units.Length) Hang {
	h := d.hung(name, d.Drop)
	for i := range h {
		h[i].From, h[i].To = from, from+d.Width
	}
	return h
}

// hung gives cloth and hem with the foot at the given drop; where they hang along the
// batten is for the caller to say. What has no mass is left out, but for the cloth of a
// drape that makes no sense.
func (d Drape) hung(name string, drop units.Length) Hang {
	cloth, hem := d.masses()
	h := make(Hang, 0, 2)
	if cloth > 0 || hem == 0 {
		h = append(h, Item{Name: name, Mass: cloth, Below: d.Below, Height: drop, OnDeck: Piles})
	}
	if hem > 0 {
		// The height is an exact difference, so that both feet are at one trim to the last bit.
		foot := d.Below + drop
		below := foot - min(hemHeight, drop.Scale(0.5))
		h = append(h, Item{Name: part(name, "hem"), Mass: hem, Below: below, Height: foot - below, OnDeck: Stands})
	}
	return h
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
