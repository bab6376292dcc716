package load

import "example.com/steelyard/units"

// Share is how the lift lines share what the batten carries at one trim, and what the
// pipe suffers.
type Share struct {
	Trim    units.Length `json:"trim"`
	Carried units.Mass   `json:"carried"` // batten and hang, less what is on the deck
	Weight  units.Force  `json:"weight"`  // of what is carried: the sum of the tensions
	Centre  units.Length `json:"centre"`  // of gravity of what is carried, along the batten
	Lines   []LineShare  `json:"lines"`   // in the order of the batten's lines
	Sagging MomentAt     `json:"sagging"` // largest moment that bends the pipe downwards between lines: zero or more
	Hogging MomentAt     `json:"hogging"` // largest moment that bends the pipe over a line: zero or less
	Shear   ShearAt      `json:"shear"`   // largest shear by size
	Stress  units.Stress `json:"stress"`  // largest bending stress in the pipe: moment over section modulus
}

// LineShare is what one line does. A pull of less than 10⁻¹⁰ of the weight counts as none, and so does what float64's
// rounding of trim errors alone can bring about: up to 10⁻⁷ of it where they are great for the pipe.
type LineShare struct {
	At      units.Length `json:"at"`      // where it is made off, along the batten
	Tension units.Force  `json:"tension"` // where it is made off on the batten; zero or more
	Slack   bool         `json:"slack"`   // it carries nothing
	Gap     units.Length `json:"gap"`     // how far the pipe stands above the end of the slack line: zero or more
	Stretch units.Length `json:"stretch"` // how much longer the line is than with no pull

	Limit units.Force `json:"limit,omitzero"` // the line's own, as its [Line] gives it
}

// MomentAt is a bending moment, positive where the pipe sags, and where along the batten it
// stands.
type MomentAt struct {
	Moment units.Moment `json:"moment"`
	At     units.Length `json:"at"` // along the batten
}

// ShearAt is a shear force, and where along the batten it stands. It is positive where the
// part nearer the arbor is pushed up against the rest: beside a line, positive on
// the side away from the arbor and negative on the other.
type ShearAt struct {
	Force units.Force  `json:"force"`
	At    units.Length `json:"at"` // along the batten
}

// Slack gives the places in Lines of the lines that carry nothing: how far the pipe stands above the end of
// each is its Gap.
func (s Share) Slack() []int {
	var slack []int
	for i, l := range s.Lines {
		if l.Slack {
			slack = append(slack, i)
		}
	}
	return slack
}

// Worst gives the line that carries most, and its place in Lines; of several with
// the same tension to within rounding, the one nearest the arbor. A share without
// lines gives −1.
func (s Share) Worst() (int, LineShare) {
	worst := -1
	for i, l := range s.Lines {
		if worst < 0 || l.Tension > s.Lines[worst].Tension.Scale(1+1e-12) {
			worst = i
		}
	}
	if worst < 0 {
		return -1, LineShare{}
	}
	return worst, s.Lines[worst]
}
