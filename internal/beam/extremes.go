package beam

import "math"

// Peak is an extreme of moment or shear and where it stands.
type Peak struct{ Value, At float64 }

// tie is the relative difference below which two extremes are one and the same
// that rounding has told apart; the first from the left is then reported.
const tie = 1e-12

// Extremes gives, for the last Hold or Hang, the largest sagging moment, the
// largest hogging moment (zero or negative), and the largest shear by size. Loads
// act downwards, so the moment curve bends one way between lines: hogging is largest over a
// line, sagging within a span where the shear passes zero, shear beside a line.
// Where there is no sagging or hogging at all it is 0 at the left end.
func (w *Work) Extremes() (sag, hog, shear Peak) {
	x, at := w.layout.x, w.layout.lines
	start := Peak{0, x[0]}
	sag, hog, shear = start, start, start
	larger := func(p *Peak, v, at float64) {
		if math.Abs(v) > math.Abs(p.Value)*(1+tie) {
			*p = Peak{v, at}
		}
	}
	last := len(w.tight) - 1
	for j, i := range w.tight {
		place := x[at[i]]
		if m := w.moment[j]; m < 0 {
			larger(&hog, m, place)
		}
		switch {
		case j == 0:
			weight, _ := w.overhang(at[i], 0)
			larger(&shear, 0-weight, place)
		default:
			larger(&shear, 0-w.rightEnd[j-1], place)
		}
		switch {
		case j == last:
			weight, _ := w.overhang(at[i], len(x)-1)
			larger(&shear, weight, place)
		default:
			larger(&shear, w.leftEnd[j], place)
			if m, at := w.crest(j); m > 0 {
				larger(&sag, m, at)
			}
		}
	}
	return sag, hog, shear
}

// crest is the largest moment in the span from tight line j to the next.
func (w *Work) crest(j int) (moment, place float64) {
	x := w.layout.x
	a, b := w.layout.lines[w.tight[j]], w.layout.lines[w.tight[j+1]]
	m, v := w.moment[j], w.leftEnd[j]
	for k := a; k < b; k++ {
		if v <= 0 {
			return m, x[k]
		}
		s := x[k+1] - x[k]
		fall := float64(w.spread[k] * s)
		if fall >= v {
			s = v / w.spread[k]
			return m + rise(v, v, s), x[k] + s
		}
		m += rise(v, fall, s)
		v -= fall + w.point[k+1]
	}
	return m, x[b]
}
