package beam

// All is the set of the first n lines.
func All(n int) uint64 { return 1<<n - 1 }

// Hold solves the continuous beam on the lines of the set, as supports that pull
// and push, with the rest taken away. The set holds two lines or more, or one
// that the whole beam balances on.
//
// Three-moment equation for the spans a and b on the two sides of a support
// (Clapeyron 1857; any text on statically indeterminate beams):
//
//	La·M0 + 2(La+Lb)·M1 + Lb·M2 = −(6A·a/L)left − (6A·b/L)right
func (w *Work) Hold(set uint64) {
	w.tight = w.tight[:0]
	for i := range w.layout.lines {
		w.Reaction[i] = 0
		if set&(1<<i) != 0 {
			w.tight = append(w.tight, i)
		}
	}
	n := len(w.tight)
	if n == 0 {
		return
	}
	last := n - 1
	x, at := w.layout.x, w.layout.lines

	leftWeight, leftMoment := w.overhang(at[w.tight[0]], 0)
	rightWeight, rightMoment := w.overhang(at[w.tight[last]], len(x)-1)
	w.moment[0] = 0 - leftMoment
	w.moment[last] = 0 - rightMoment
	if n == 1 {
		w.Reaction[w.tight[0]] = leftWeight + w.point[at[w.tight[0]]] + rightWeight
		return
	}

	// Right-hand sides gather in moment and are then replaced by the unknowns.
	for j := range last {
		w.span(j)
		if j > 0 {
			w.moment[j] -= w.atLeft[j]
		}
		if j+1 < last {
			w.moment[j+1] = 0 - w.atRight[j]
		}
	}
	length := func(j int) float64 { return x[at[w.tight[j+1]]] - x[at[w.tight[j]]] }
	if n > 2 {
		w.moment[1] -= float64(length(0) * w.moment[0])
		w.moment[last-1] -= float64(length(last-1) * w.moment[last])
	}
	for j := 1; j < last; j++ {
		w.diag[j] = 2 * (length(j-1) + length(j))
		if j > 1 {
			f := length(j-1) / w.diag[j-1]
			w.diag[j] -= float64(f * length(j-1))
			w.moment[j] -= float64(f * w.moment[j-1])
		}
	}
	for j := last - 1; j > 0; j-- {
		if j+1 < last {
			w.moment[j] -= float64(length(j) * w.moment[j+1])
		}
		w.moment[j] /= w.diag[j]
	}

	for j := range last {
		turn := (w.moment[j+1] - w.moment[j]) / length(j)
		w.leftEnd[j] += turn
		w.rightEnd[j] -= turn
	}
	for j, i := range w.tight {
		r := w.point[at[i]]
		if j == 0 {
			r += leftWeight
		} else {
			r += w.rightEnd[j-1]
		}
		if j == last {
			r += rightWeight
		} else {
			r += w.leftEnd[j]
		}
		w.Reaction[i] = r
	}
}

// overhang gives the weight beyond a station as far as the end, itself left out,
// and its moment about the station.
func (w *Work) overhang(station, end int) (weight, moment float64) {
	x := w.layout.x
	for k := 0; k < station && end < station; k++ {
		q := float64(w.spread[k] * (x[k+1] - x[k]))
		weight += w.point[k] + q
		moment += float64(w.point[k] * (x[station] - x[k]))
		moment += float64(q * (x[station] - x[k] + x[station] - x[k+1]) / 2)
	}
	for k := station; k < end; k++ {
		q := float64(w.spread[k] * (x[k+1] - x[k]))
		weight += w.point[k+1] + q
		moment += float64(w.point[k+1] * (x[k+1] - x[station]))
		moment += float64(q * (x[k+1] - x[station] + x[k] - x[station]) / 2)
	}
	return weight, moment
}

// span takes the span from tight line j to the next as a simple beam. It notes
// the shears at its two ends, and the load's term in the three-moment equation of each
// end: at the left 6A·b/L, with b the distance of the moment area's centroid
// from the right end, and at the right 6A·a/L.
//
// A weight W spread evenly over c−h to c+h adds to the latter
// W·c·(L²−c²−h²)/L: the mean over that stretch of the point load's W·c(L²−c²)/L.
// The form has no difference of nearly equal powers, however short the stretch.
func (w *Work) span(j int) {
	x := w.layout.x
	a, b := w.layout.lines[w.tight[j]], w.layout.lines[w.tight[j+1]]
	length := x[b] - x[a]
	var atLeft, atRight, leftEnd, rightEnd float64
	add := func(q, c, h float64) {
		d := length - c
		left, right := float64(q*d/length), float64(q*c/length)
		leftEnd += left
		rightEnd += right
		hh := float64(h * h)
		cc := float64(d * (length + c)) // L²−c²
		dd := float64(c * (length + d)) // L²−d²
		atLeft += float64(left * (dd - hh))
		atRight += float64(right * (cc - hh))
	}
	for k := a; k < b; k++ {
		if k > a && w.point[k] != 0 {
			add(w.point[k], x[k]-x[a], 0)
		}
		if w.spread[k] != 0 {
			l := x[k+1] - x[k]
			add(float64(w.spread[k]*l), x[k]-x[a]+float64(l/2), l/2)
		}
	}
	w.atLeft[j], w.atRight[j], w.leftEnd[j], w.rightEnd[j] = atLeft, atRight, leftEnd, rightEnd
}
