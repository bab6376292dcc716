package beam

// link is a tight line that gives, in the equations of moments and levels: see [Work.sprung].
type link struct {
	a, b float64 // the two sides of the line's own equation
	// The coefficients of the line before: a level's in this moment's equation, a moment's in this level's.
	level, moment float64
	// When all equations up to this line's have been used, its moment and level are
	//
	//	moment = h0 − t00·(moment of the next) − t01·(level of the next)
	//	level  = h1 − t10·(moment of the next) − t11·(level of the next)
	t00, t01, t10, t11 float64
	// The inverse of this line's two equations once the line before is put in: what each right-hand side
	// adds to h0 and h1.
	u00, u01, u10, u11 float64
}

// link finds the links of a set of tight lines.
func (f *factors) link(l *Layout, tight []int, length []float64) {
	last := len(tight) - 1
	scale := 6 * l.cube
	for j, i := range tight {
		k := &f.links[j]
		*k = link{a: 1, b: l.give[i] / l.cube}
		if k.b > 1 {
			k.a, k.b = 1/k.b, 1
		}
		if j == 0 {
			k.u11 = 1 / k.a
			k.t10 = 0 - float64(k.b*f.inverse[0]*k.u11)
			continue
		}
		before := &f.links[j-1]
		k.level, k.moment = float64(scale*f.inverse[j-1]), float64(k.b*f.inverse[j-1])
		if j == last {
			k.u11 = 1 / (k.a + float64(k.moment*before.t01))
			continue
		}
		la, lb := length[j-1], length[j]
		both := f.inverse[j-1] + f.inverse[j]
		s00 := 2*(la+lb) - float64(la*before.t00) - float64(k.level*before.t10)
		s01 := 0 - float64(scale*both) - float64(la*before.t01) - float64(k.level*before.t11)
		s10 := float64(k.b*both) + float64(k.moment*before.t00)
		s11 := k.a + float64(k.moment*before.t01)
		det := 1 / (float64(s00*s11) - float64(s01*s10))
		k.u00, k.u01, k.u10, k.u11 = float64(s11*det), 0-float64(s01*det), 0-float64(s10*det), float64(s00*det)
		level, moment := float64(scale*f.inverse[j]), float64(k.b*f.inverse[j])
		k.t00, k.t01 = float64(k.u00*lb)-float64(k.u01*moment), float64(k.u00*level)
		k.t10, k.t11 = float64(k.u10*lb)-float64(k.u11*moment), float64(k.u10*level)
	}
}

// sprung fills in the moments over lines that give, and their levels. To the three-moment equations
// with the levels unknown comes one for each line, its level being Low + Give·Reaction:
//
//	a·(Y1 − Low) − b·[ (M0−M1)/La + (M2−M1)/Lb ] = b·(pulls that the simple spans ask for)
//
// with b/a = Give. It is scaled so that neither a nor b is above 1, which takes a line that does
// not give at all and one that hardly holds. Unknowns go in pairs of a moment and a level,
// from one line to the next (block elimination of a tridiagonal system with blocks of two). The system
// is quasidefinite, positive in the moments and negative in the levels, but for the
// scaling of rows: the determinants are sums of two terms of one sign, and no order of
// elimination meets a zero (Vanderbei, Symmetric quasidefinite matrices, 1995; from memory).
// Levels are measured in the mean span cubed.
func (w *Work) sprung(f *factors) {
	l := w.layout
	last := len(w.tight) - 1
	moment, level, length := w.moment, w.level, w.length
	perCube := 1 / l.cube
	asked := w.over[0].weight
	for j, i := range w.tight {
		k := &f.links[j]
		asked += w.point[i]
		if j == last {
			asked += w.over[1].weight
		} else {
			asked += w.held[j].left
		}
		pull := float64(k.a*w.low[i]*perCube) + float64(k.b*asked)
		switch j {
		case 0:
			level[0] = float64((pull - float64(k.b*f.inverse[0]*moment[0])) * k.u11)
		case last:
			before := &f.links[j-1]
			known := moment[j-1] - moment[j] - float64(before.t00*moment[j])
			level[j] = float64((pull + float64(k.moment*known)) * k.u11)
		default:
			r0 := 0 - w.held[j-1].atRight - w.held[j].atLeft - float64(length[j-1]*moment[j-1]) - float64(k.level*level[j-1])
			r1 := pull + float64(k.moment*moment[j-1])
			moment[j] = float64(k.u00*r0) + float64(k.u01*r1)
			level[j] = float64(k.u10*r0) + float64(k.u11*r1)
		}
		if j < last {
			asked = w.held[j].right
		}
	}
	y := level[last]
	level[last] = float64(y * l.cube)
	for j := last - 1; j >= 0; j-- {
		k := &f.links[j]
		m := moment[j+1]
		moment[j] -= float64(k.t00*m) + float64(k.t01*y)
		y = level[j] - float64(k.t10*m) - float64(k.t11*y)
		level[j] = float64(y * l.cube)
	}
}

// ends mends the level of an outermost tight line that hardly holds: there it is the difference of two that
// are far greater, and the slope at its neighbour tells it better.
func (w *Work) ends() {
	l := w.layout
	last := len(w.tight) - 1
	if last < 2 {
		for j, i := range w.tight {
			w.level[j] = w.low[i] + float64(l.give[i]*w.Reaction[i])
		}
		return
	}
	if l.give[w.tight[0]] > l.cube {
		slope, _ := w.slope(1)
		bends := (float64(w.length[0]*(w.moment[0]+2*w.moment[1])) + w.held[0].atRight) / 6
		w.level[0] = w.level[1] - float64(w.length[0]*(slope+bends))
	}
	if l.give[w.tight[last]] > l.cube {
		slope, _ := w.slopeAtEnd(last - 2)
		bends := (float64(w.length[last-1]*(2*w.moment[last-1]+w.moment[last])) + w.held[last-1].atLeft) / 6
		w.level[last] = w.level[last-1] + float64(w.length[last-1]*(slope-bends))
	}
}
