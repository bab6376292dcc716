package lineset

import "example.com/steelyard/load"

// overhangs tells whether anything in the hang has its centre of gravity outside the outermost lift lines. Where
// nothing has, no part of the hang can tip the batten, whose own centre lies between them.
func (r *Rigged) overhangs() bool {
	first, last := r.outermost()
	for _, item := range r.set.Hang {
		if c := centreOf(item); c < first || c > last {
			return true
		}
	}
	return false
}

// outermost gives where the outermost lift lines are, the first and the last, in metres.
func (r *Rigged) outermost() (first, last float64) {
	lines := r.set.Rigging.Batten.Lines
	return float64(lines[0].At), float64(lines[len(lines)-1].At)
}

// centreOf is where the mass of an item acts, in metres from the batten's end; an item that leans has it towards its
// heavier end by a sixth of its length for a whole taper.
func centreOf(item load.Item) float64 {
	return float64(item.From) + float64(float64(item.To-item.From)*(0.5+item.Taper/6))
}

// tipRounding is how far, as a part of the batten's length, the centre may lie outside the lines by rounding.
const tipRounding = 1e-9

// tips tells whether the batten tips with part of its hang: whether the centre of gravity of what is carried lies
// outside the outermost lift lines.
func (r *Rigged) tips(at spot, hangs func(place int) bool) bool {
	steady, rounds := r.steady(at, hangs)
	return steady[0] < -rounds || steady[1] < -rounds
}

// steady is what holds the batten down about each of its outermost lift lines, as mass times arm in kilogram metres: where
// one of the two is below zero, the batten tips over that line. Rounding may make it so much, rounds, of nothing.
func (r *Rigged) steady(at spot, hangs func(place int) bool) (about [2]float64, rounds float64) {
	length := float64(r.set.Rigging.Batten.Length)
	first, last := r.outermost()
	mass := float64(r.load.Bare())
	about[0], about[1] = float64(mass*(length/2-first)), float64(mass*(last-length/2))
	for i, item := range r.set.Hang {
		if hangs(i) {
			m, centre := float64(kilograms(carriedAt(item, at))), centreOf(item)
			mass += m
			about[0] += float64(m * (centre - first))
			about[1] += float64(m * (last - centre))
		}
	}
	return about, float64(mass * tipRounding * length)
}
