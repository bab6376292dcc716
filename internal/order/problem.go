package order

import "math"

const (
	// MaxRows bounds the rows of bits that hold one layer of the search: positions times choices of items times words
	// of 64 numbers of pieces. 20 items of which no two are alike and 63 pieces at one position just fill it.
	MaxRows = 1 << 20
	// MaxPositions and MaxPieces bound the other two sides of a Problem.
	MaxPositions = 64
	MaxPieces    = 10_000
)

// Item is so many things that are alike: which of them hang makes no difference.
type Item struct {
	Count   int     // how many, 1 or more
	Carried []int64 // what the batten carries of one of them, for each position; 0 or more
}

// Position is a place of the batten on its way, from the lowest up. A state counts at every position that the batten
// flies through, whether it halts there or not.
type Position struct {
	Halt  bool   // the batten may be halted here
	End   bool   // and the order may end here
	Deck  bool   // and things can be hung here
	Reach []bool // and which pieces can be put in here, from the lowest: those that are not listed cannot
	Also  []int  // other positions at which a state must be allowed to be allowed here: a batten that is halted sways to them
}

// Problem asks for an order from nothing hung and no pieces in, at the Start, to all hung and all in, at a halt that is an End.
//
// A state is allowed where the sum of what is carried lies from Low to High, for its position and the number of
// pieces in; Even is the sum that balances. None of them may fall with the number of pieces.
type Problem struct {
	Items     []Item
	Pieces    int
	Positions []Position
	Start     int // a position that is a halt
	Low, High [][]int64
	Even      [][]int64

	// Barred tells whether so many of each item must not hang at a position, however many pieces are in. Nil: nothing
	// is barred.
	Barred func(position int, hung []int) bool
}

// Fits tells whether the problem is within the bounds of this package, and how many rows it takes, or math.MaxInt64
// for more than can be counted.
func (p *Problem) Fits() (rows int64, ok bool) {
	const tooMany = math.MaxInt32
	rows = int64(len(p.Positions)) * int64(words(p.Pieces))
	for _, item := range p.Items {
		if rows > tooMany || item.Count >= tooMany {
			return math.MaxInt64, false
		}
		rows *= int64(item.Count) + 1
	}
	return rows, rows <= MaxRows && len(p.Positions) <= MaxPositions && p.Pieces <= MaxPieces
}

// words is how many words hold a bit for each number of pieces from none to all.
func words(pieces int) int { return pieces/64 + 1 }
