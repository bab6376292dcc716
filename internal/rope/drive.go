package rope

// Speeds is how fast each body's datum rises.
type Speeds [Bodies]float64

// Run fills in how fast the rope of each part runs towards the path's end while bodies move: that of
// the first part as its end's body takes it along, and past each sheave as fast as up to it, seen
// from the sheave. It fills in past too: how fast the rope runs past each stop.
func (p Path) Run(v *Speeds, h *Heights, part, past []float64) {
	last := len(p) - 1
	for i := range last {
		_, uz, _ := p.Part(i, h)
		by := v[p[i].Body]
		if i == 0 {
			past[0] = 0
			part[0] = float64(by * uz)
			continue
		}
		_, before, _ := p.Part(i-1, h)
		past[i] = part[i-1] - float64(by*before)
		part[i] = past[i] + float64(by*uz)
	}
	past[last] = 0
}

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
