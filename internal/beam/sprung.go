package beam

// link is what has been learnt of one tight line when the equations of it and of all before
// it have been used: moment and level of the line are
//
//	moment = h0 − t00·(moment of the next) − t01·(level of the next)
//	level  = h1 − t10·(moment of the next) − t11·(level of the next)
type link struct{ t00, t01, t10, t11, h0, h1 float64 }

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
func (w *Work) sprung() {
	l := w.layout
	last := len(w.tight) - 1
	moment, length := w.moment, w.length
	scale := 6 * l.cube
	for j, i := range w.tight {
		a, b := 1.0, l.give[i]/l.cube
		if b > 1 {
			a, b = 1/b, 1
		}
		low := w.low[i] / l.cube
		asked := w.point[i]
		if j == 0 {
			asked += w.over[0].weight
		} else {
			asked += w.held[j-1].right
		}
		if j == last {
			asked += w.over[1].weight
		} else {
			asked += w.held[j].left
		}
		k := &w.links[j]
		pull := float64(a*low) + float64(b*asked)
		switch j {
		case 0:
			perLength := b / length[0]
			*k = link{t10: -perLength / a, h0: moment[0], h1: (pull - float64(perLength*moment[0])) / a}
		case last:
			// The moment over it is known; its level follows from the link before.
			before := &w.links[j-1]
			perLength := b / length[j-1]
			// a·Y + (b/L)·M = pull + (b/L)·(moment before)
			left := a + float64(perLength*before.t01)
			right := pull - float64(perLength*moment[j]) + float64(perLength*(before.h0-float64(before.t00*moment[j])))
			*k = link{h0: moment[j], h1: right / left}
		default:
			before := &w.links[j-1]
			la, lb := length[j-1], length[j]
			ra, rb := 1/la, 1/lb
			both := ra + rb
			// Rows of this line's block after the one before is put in.
			sa := float64(scale * ra)
			s00 := 2*(la+lb) - float64(la*before.t00) - float64(sa*before.t10)
			s01 := 0 - float64(scale*both) - float64(la*before.t01) - float64(sa*before.t11)
			s10 := float64(b*both) + float64(b*ra*before.t00)
			s11 := a + float64(b*ra*before.t01)
			r0 := 0 - w.held[j-1].atRight - w.held[j].atLeft - float64(la*before.h0) - float64(sa*before.h1)
			r1 := pull + float64(b*ra*before.h0)
			det := 1 / (float64(s00*s11) - float64(s01*s10))
			u0, u1 := float64(s11*det), float64(s01*det)
			v0, v1 := float64(s10*det), float64(s00*det)
			sb, bb := float64(scale*rb), float64(b*rb)
			*k = link{
				t00: float64(u0*lb) + float64(u1*bb), t01: float64(u0 * sb),
				t10: 0 - float64(v0*lb) - float64(v1*bb), t11: 0 - float64(v0*sb),
				h0: float64(u0*r0) - float64(u1*r1), h1: float64(v1*r1) - float64(v0*r0),
			}
		}
	}
	level := w.links[last].h1
	w.level[last] = level * l.cube
	for j := last - 1; j >= 0; j-- {
		k := &w.links[j]
		m := moment[j+1]
		moment[j], level = k.h0-float64(k.t00*m)-float64(k.t01*level), k.h1-float64(k.t10*m)-float64(k.t11*level)
		w.level[j] = level * l.cube
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
