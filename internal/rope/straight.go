package rope

// Straight is a number that goes straight with a way that something has moved.
type Straight struct{ Start, Rate float64 }

// At is the number there.
func (s Straight) At(moved float64) float64 { return s.Start + float64(s.Rate*moved) }

// Times is the number so many times.
func (s Straight) Times(k float64) Straight {
	return Straight{float64(s.Start * k), float64(s.Rate * k)}
}

// Plus is the sum of both.
func (s Straight) Plus(t Straight) Straight { return Straight{s.Start + t.Start, s.Rate + t.Rate} }

// Less is what the number is more than another.
func (s Straight) Less(t Straight) Straight { return Straight{s.Start - t.Start, s.Rate - t.Rate} }
