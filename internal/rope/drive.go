package rope

// Speeds is how fast each body's datum rises.
type Speeds [Bodies]float64

// Tension is a tension that depends on what is not known yet: the tension at the path's beginning, a hand's pull, and how
// the bodies speed up and how fast they are; and on how far they have moved.
type Tension struct {
	Plain             Straight
	PerStart, PerPull float64
	PerAcceleration   Straight
	PerSquare         float64 // of the speed
}

// Times is the tension past a sheave at which it changes by a factor.
func (t Tension) Times(k float64) Tension {
	return Tension{
		t.Plain.Times(k), float64(t.PerStart * k), float64(t.PerPull * k), t.PerAcceleration.Times(k), float64(t.PerSquare * k),
	}
}

// Add adds to it what another tension does in a direction.
func (t *Tension) Add(u *Tension, along float64) {
	t.Plain.Start += float64(u.Plain.Start * along)
	t.Plain.Rate += float64(u.Plain.Rate * along)
	t.PerStart += float64(u.PerStart * along)
	t.PerPull += float64(u.PerPull * along)
	t.PerAcceleration.Start += float64(u.PerAcceleration.Start * along)
	t.PerAcceleration.Rate += float64(u.PerAcceleration.Rate * along)
	t.PerSquare += float64(u.PerSquare * along)
}

// Plus adds what another tension does in a direction.
func (t Tension) Plus(u Tension, along float64) Tension {
	t.Add(&u, along)
	return t
}
