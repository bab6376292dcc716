package beam

import "math"

// Deflect fills Deflection with EI times how far the beam stands below each line's
// end, for the lines that the last Hold left out; at the others it is 0. It
// needs two tight lines or more.
func (w *Work) Deflect() {
	clear(w.Deflection)
	clear(w.terms)
	last := len(w.tight) - 1
	if last < 1 {
		return
	}
	x, at := w.layout.x, w.layout.lines
	for j := range last {
		a, b := at[w.tight[j]], at[w.tight[j+1]]
		length := x[b] - x[a]
		byMoment := float64(length * (2*w.moment[j] + w.moment[j+1]))
		slope := (byMoment + w.atLeft[j]) / 6
		steep := (math.Abs(byMoment) + w.atLeft[j]) / 6
		if j == 0 {
			w.outward(w.tight[0]-1, -1, -slope, steep)
		}
		c := curve{moment: w.moment[j], shear: w.leftEnd[j], slope: slope, steep: steep}
		for k, i := a, w.tight[j]+1; k < b; k++ {
			c.advance(w.spread[k], x[k+1]-x[k])
			if i < w.tight[j+1] && at[i] == k+1 {
				w.Deflection[i], w.terms[i] = c.drop, c.size
				i++
			}
			c.shear -= w.point[k+1]
		}
		if j+1 == last {
			byMoment := float64(length * (w.moment[j] + 2*w.moment[j+1]))
			slope := (byMoment + w.atRight[j]) / -6
			steep := (math.Abs(byMoment) + w.atRight[j]) / 6
			w.outward(w.tight[last]+1, 1, slope, steep)
		}
	}
}

// outward walks along an overhang from the outermost tight line, away from the
// beam's middle, and notes the deflection at the lines there, from the given one
// on. Seen outwards the slope is that of the beam leaving the tight line, and
// the shear is all the weight that lies beyond.
func (w *Work) outward(line, step int, slope, steep float64) {
	x, at := w.layout.x, w.layout.lines
	if line < 0 || line >= len(at) {
		return
	}
	k, end, j := at[line-step], len(x)-1, len(w.tight)-1
	if step < 0 {
		end, j = 0, 0
	}
	weight, _ := w.overhang(k, end)
	c := curve{moment: w.moment[j], shear: weight, slope: slope, steep: steep}
	for k != end && line >= 0 && line < len(at) {
		c.advance(w.spread[min(k, k+step)], math.Abs(x[k+step]-x[k]))
		k += step
		if at[line] == k {
			w.Deflection[line], w.terms[line] = c.drop, c.size
			line += step
		}
		c.shear -= w.point[k]
	}
}

// curve is the state of the beam at a place on a walk along it: moment, shear,
// and EI times slope and drop. Steep and size are the sums of the sizes of the
// terms that slope and drop are made of, for the sake of rounding.
type curve struct {
	moment, shear, slope, drop float64
	steep, size                float64
}

// advance walks a length s under a load of q per length. Shear falls by qs, moment
// is shear's integral, and EI·y″ = −M with y downwards and M sagging.
func (c *curve) advance(q, s float64) {
	fall := float64(q * s)
	bySlope := float64(c.slope * s)
	byMoment := float64(c.moment * s * s / 2)
	byShear := float64(c.shear * s * s * s / 6)
	byLoad := float64(fall * s * s * s / 24)
	c.drop += bySlope - byMoment - byShear + byLoad
	bySlope = float64(c.steep * s)
	c.size += bySlope + math.Abs(byMoment) + math.Abs(byShear) + byLoad

	byMoment = float64(c.moment * s)
	byShear = float64(c.shear * s * s / 2)
	byLoad = float64(fall * s * s / 6)
	c.slope += byLoad - byMoment - byShear
	c.steep += byLoad + math.Abs(byMoment) + math.Abs(byShear)

	c.moment += rise(c.shear, fall, s)
	c.shear -= fall
}

// rise is what the moment gains over a length s along which the shear goes down
// from v by fall.
func rise(v, fall, s float64) float64 { return float64((v - float64(fall/2)) * s) }
