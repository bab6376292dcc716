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

// Tension is a tension that depends on two forces which are not known yet: the tension at the path's
// beginning and a hand's pull.
type Tension struct{ Plain, PerStart, PerPull float64 }

// At puts the two in.
func (t Tension) At(start, pull float64) float64 {
	return t.Plain + float64(t.PerStart*start) + float64(t.PerPull*pull)
}

func (t Tension) times(k float64) Tension {
	return Tension{float64(t.Plain * k), float64(t.PerStart * k), float64(t.PerPull * k)}
}

// Drive fills in the tension at both ends of each part, of a rope of weight w per length that runs slowly.
// Past stop i the tension is factor[i] times that up to it. A hand pulls down on part grip at a
// height; a grip of −1 is no hand. Along a part tension grows with height by the rope's own weight.
func (p Path) Drive(w float64, factor []float64, grip int, h *Heights, from, to []Tension) {
	t := Tension{PerStart: 1}
	for i := range len(p) - 1 {
		if i > 0 {
			t = t.times(factor[i])
		}
		from[i] = t
		rise := p.Height(i+1, h) - p.Height(i, h)
		t.Plain += float64(w * rise)
		if i == grip {
			// Above the hand the rope bears what it bears below and the pull.
			if rise > 0 {
				t.PerPull++
			} else {
				t.PerPull--
			}
		}
		to[i] = t
	}
}

// Lift is the upward force on a body of a rope with such tensions.
func (p Path) Lift(body int, h *Heights, from, to []Tension) Tension {
	var sum Tension
	add := func(t Tension, uz float64) {
		sum.Plain += float64(t.Plain * uz)
		sum.PerStart += float64(t.PerStart * uz)
		sum.PerPull += float64(t.PerPull * uz)
	}
	for i := range len(p) - 1 {
		_, uz, _ := p.Part(i, h)
		if p[i].Body == body {
			add(from[i], uz)
		}
		if p[i+1].Body == body {
			add(to[i], -uz)
		}
	}
	return sum
}
