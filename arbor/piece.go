package arbor

import (
	"math"
	"strconv"
	"strings"

	"example.com/steelyard/internal/check"
	"example.com/steelyard/internal/stack"
	"example.com/steelyard/units"
)

// Piece is a kind of counterweight piece, and how many of it there are. Pieces
// are called by their Name ("23.5"), which must not be empty. Mass and Thickness
// are of one piece and must be given; a Count of zero is a kind that is known
// but not in stock. A piece that is heavier than an arbor's capacity or thicker than
// its room is no fault, since a stock serves many arbors: it is not used there.
type Piece struct {
	Name      string       `json:"name"`      // as it is called on the loading bridge
	Mass      units.Mass   `json:"mass"`      // of one piece
	Thickness units.Length `json:"thickness"` // how much height of the stack one piece takes
	Count     int          `json:"count"`     // how many there are
}

// Stock is what there is to fill arbors with, in any order: at most 32 kinds,
// each name once. An empty Stock is allowed, and fills nothing.
type Stock []Piece

const (
	lightestPiece = units.Gram
	heaviestPiece = units.Tonne
	thinnestPiece = 0.1 * units.Millimetre
	thickestPiece = units.Metre
	mostPieces    = 1_000_000
	mostKinds     = stack.MaxKinds
)

// Densities for Block, as common density tables of engineering handbooks give
// them. Cast iron runs from 6800 to 7800 kg/m³: weigh a piece.
const (
	SteelDensity units.Density = 7850 * units.KilogramPerCubicMetre  // rolled steel
	LeadDensity  units.Density = 11340 * units.KilogramPerCubicMetre // lead
)

// Block describes a piece cut as a full rectangle: length, width and thickness
// at a density. Slots for the rods and cut corners are not taken off, so a real
// piece is lighter: weigh one. A product that is not a finite number gives a
// Piece without mass, which Validate refuses.
func Block(name string, length, width, thickness units.Length, density units.Density, count int) Piece {
	mass := density.Over(length.By(width)).Over(thickness)
	if f := float64(mass); math.IsNaN(f) || math.IsInf(f, 0) {
		mass = 0
	}
	return Piece{Name: name, Mass: mass, Thickness: thickness, Count: count}
}

// Validate reports all that is wrong with the stock, joined: *units.FieldError
// with paths from the stock itself, such as "[2].mass".
func (s Stock) Validate() error {
	var p check.Problems
	if len(s) > mostKinds {
		p.Add("", strconv.Itoa(len(s))+" kinds of piece", "at most "+strconv.Itoa(mostKinds), units.ErrOutOfRange)
	}
	for i, piece := range s {
		var one check.Problems
		piece.check(&one)
		for _, other := range s[:i] {
			if piece.Name == other.Name && piece.Name != "" {
				one.Add("name", strconv.Quote(piece.Name), "a name of its own for each kind", units.ErrDuplicate)
				break
			}
		}
		if err := one.Err(); err != nil { // most are right, and Fill asks each time
			p.Within("["+strconv.Itoa(i)+"]", quoted(piece.Name), err)
		}
	}
	return p.Err()
}

// check notes what is wrong with one piece.
func (p Piece) check(to *check.Problems) {
	if strings.TrimSpace(p.Name) == "" {
		to.Add("name", "", "what the piece is called", units.ErrMissing)
	}
	within(to, "mass", p.Mass, lightestPiece, heaviestPiece, "the mass of one piece")
	within(to, "thickness", p.Thickness, thinnestPiece, thickestPiece, "the thickness of one piece")
	switch {
	case p.Count < 0:
		to.Add("count", strconv.Itoa(p.Count), "0 or more", units.ErrNegative)
	case p.Count > mostPieces:
		to.Add("count", strconv.Itoa(p.Count), "at most "+strconv.Itoa(mostPieces), units.ErrOutOfRange)
	}
}

// within notes a fault where q is not given, not a positive finite number, or
// so far out that it must be a slip of the unit.
func within[Q units.Quantity](p *check.Problems, field string, q, least, most Q, what string) bool {
	if !check.Positive(p, field, q, what) {
		return false
	}
	if q < least || q > most {
		p.Add(field, check.Show(q), what+", from "+check.Show(least)+" to "+check.Show(most), units.ErrOutOfRange)
		return false
	}
	return true
}

// quoted gives a name for an error message, nothing for none.
func quoted(name string) string {
	if name == "" {
		return ""
	}
	return strconv.Quote(name)
}
