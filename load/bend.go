package load

import "example.com/steelyard/units"

// Deflection is how far the pipe bends out of the level.
type Deflection struct {
	Trim    units.Length `json:"trim"`    // of the batten
	Lowest  DeflectionAt `json:"lowest"`  // the place furthest below level
	Highest DeflectionAt `json:"highest"` // the place furthest above it, or least below
}

// DeflectionAt is how far the pipe stands below level at a place, negative where it stands above. Level
// is where the ends of lines of the right length are before they stretch.
type DeflectionAt struct {
	Below units.Length `json:"below"`
	At    units.Length `json:"at"` // along the batten
}

// Deflection gives the lowest and the highest place of the pipe at a trim, the tips included, with what the
// lines stretch and are off. It follows from the pipe's stiffness and is only as good as the Modulus of its
// [Tube]. A batten on a single tight line is balanced there and may lean any way: it is taken as level
// over that line. The errors are those of [Rigged.Share].
func (r *Rigged) Deflection(trim units.Length) (Deflection, error) {
	w := r.layout.Borrow()
	defer w.Return()
	if _, _, err := r.solve(w, trim); err != nil {
		return Deflection{}, err
	}
	low, high := w.Bend()
	below := func(p float64) units.Length { return units.Length(p / r.bending) }
	return Deflection{
		Trim:    trim,
		Lowest:  DeflectionAt{below(low.Value), units.Length(low.At)},
		Highest: DeflectionAt{below(high.Value), units.Length(high.At)},
	}, nil
}
