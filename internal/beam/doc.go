// Package beam computes a straight elastic beam that hangs on rigid lines.
//
// Everything is plain float64 in SI units: metres, newtons, newton metres.
// Weights act downwards and are zero or more. A reaction is positive where the
// line pulls the beam up. A bending moment is positive where it sags (tension at
// the underside). Shear is positive where the part to the left is pushed up
// against the part to the right. A deflection is positive downwards and is
// given multiplied by EI, the beam's bending stiffness, which no reaction on
// rigid lines depends on.
//
// The beam is taken piece by piece in closed form, with the three-moment
// equation (Clapeyron) over the lines that are tight: there is no mesh. One
// solution costs time in proportion to the stations, the places where a load
// begins or ends or a line is made off.
//
// A [Layout] is what stays the same while the loads change; it may be shared
// among goroutines. A [Work] is the scratch of one of them. The order of use is
//
//	w := layout.Work()
//	w.Load(weights)
//	w.Hang()      // lines that pull or go slack: the real thing, or
//	w.Hold(mask)  // supports of a set that pull and push: the textbook's beam
//	w.Extremes()
//
// and [Work.Turns] tells where, while the weights change, lines go slack or come back.
//
// A product that is added to something is converted to float64 first: that keeps
// the compiler from fusing the two, so that every platform gives the same bits.
package beam
