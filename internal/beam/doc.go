// Package beam computes a straight elastic beam that hangs on lines.
//
// Everything is plain float64 in SI units: metres, newtons, newton metres.
// Weights act downwards and are zero or more. A reaction is positive where the
// line pulls the beam up. A bending moment is positive where it sags (tension at
// the underside). Shear is positive where the part to the left is pushed up
// against the part to the right. A deflection is positive downwards. The beam's bending
// stiffness EI is not known here: deflections, and how far a line stretches for a unit of
// pull or hangs low, are given and taken multiplied by it. On lines that do neither no
// pull depends on it.
//
// The beam is solved in closed form, with the three-moment equation (Clapeyron) over
// the lines that are tight: there is no mesh. Lines that are slack are joined over: the spans
// on their two sides become one. One solution costs time in proportion to the lines,
// laying on the loads in proportion to the lines and the loads.
//
// A [Layout] is what stays the same while the loads change; it may be shared
// among goroutines. A [Work] is the scratch of one of them. The order of use is
//
//	w := layout.Work()
//	w.Load(weights)
//	w.Hang(reach) // lines that pull or go slack: the real thing, or
//	w.Hold(mask)  // supports of a set that pull and push: the textbook's beam
//	w.Extremes()
//
// and [Work.Turns] tells where, while the weights change, lines go slack or come back,
// [Work.TurnsOfLow] the same while lines are made longer or shorter, [Work.Rove] how far
// everything goes while one more point moves along.
//
// A product that is added to something is converted to float64 first: that keeps
// the compiler from fusing the two, so that every platform gives the same bits.
package beam
