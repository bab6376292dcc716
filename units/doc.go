// Package units holds the quantities of counterweight rigging as types, so that
// a pound of steel, a pull of a pound and a foot of batten cannot be taken for
// one another, and reads and prints them as riggers write them.
//
// It covers lengths, areas, masses, forces, times, speeds, accelerations, angles,
// moments, energies, powers, stresses, masses and forces per length, masses per
// area, densities, stiffnesses, the two properties of a cross-section that bending
// needs and the mass moment of inertia. It knows nothing of theatres and computes
// no mechanics beyond the named products of two quantities.
//
// # Units and signs
//
// Every quantity is a float64 of its coherent SI unit: metres, kilograms,
// newtons, pascals. A value is written as a number of a unit and read out as one:
//
//	trim := 24*units.Foot + 6*units.Inch
//	trim.In(units.Metre)
//
// Things have [Mass]; pulls, and the limits of pulls, are [Force]. [Pound] is a
// mass, [PoundForce] the pull of standard gravity on it, and only [Mass.Weight]
// and [Force.Mass] cross between them. A product or quotient is named for what
// comes out: [Force.Moment], [Force.Work], [Mass.Weight], [Ratio]; Per spreads one
// thing over another and Over takes so much of it again, as in [Mass.Per] and
// [LineMass.Over], or [Length.Per] and [Speed.Over]. Positive and negative are for
// the user of a quantity to define.
//
// # Text
//
// [Parse] reads 24'-6", 12.5 lb or 15 oz/yd² with one rounding. String writes SI
// so that Parse gives the same bits back; JSON holds that text. A [System]
// writes for people, rounded: 24' 6 1/2" and 1000 lb, or 7.48 m and 453.59 kg; how
// it rounds is a [Rounding] where that matters. [FormatIn] writes any unit without
// loss: what was typed with up to twelve digits comes back as it was typed. Each
// way of writing has a form that appends and makes no allocation.
//
// A text and the product of a number and a unit, which is rounded twice, may
// differ in the last bit: compare quantities with a tolerance, never with ==, as
// in [Length.Within], and tests with [Near].
//
// The verbs of fmt print a quantity with its SI unit, %.2f too. In JSON null
// changes nothing and a bare number is refused. [Unit] and [Symbols] serve tools
// in which a unit is chosen. Package column keeps quantities in a database, package
// ucum exchanges them with other programs.
//
// # Zero values
//
// The zero of each quantity is none of it, and useful. The zero [System] is no
// system: it cannot be stored, and it prints SI.
//
// # Errors
//
// A text that cannot be read gives a *[ParseError], a value that cannot be used
// a *[FieldError] with the path to it; both wrap one of the Err values. [At]
// puts the outer path in front when one description holds another. Arithmetic
// follows float64: a division by zero gives an infinity or NaN, which String
// shows and MarshalText refuses.
//
// # What the types cannot catch
//
// Adding a force to a length does not compile. Go does let a quantity be
// multiplied or divided by one of its own kind (f*f is still a Force), be
// converted to another (Force(m) turns kilograms into newtons), and be given a
// bare number (a Length of 3 is 3 metres). Use the named methods and the unit
// constants; 2*f, f+g, comparisons, min and max are right as they are.
//
// # Sources
//
// Conversions rest on the exact inch, pound and standard gravity of A. Thompson
// and B. N. Taylor, Guide for the Use of the International System of Units, NIST
// Special Publication 811, 2008 edition, Appendix B. A unit constant is the
// float64 nearest to its exact definition. The symbols of formulas, with unit and positive direction, are in
// internal/verification/NOTATION.md in the repository, where the formulas come from in DERIVATIONS.md beside it.
//
// # Caution
//
// Overhead lifting can kill. A figure printed here is as good as the one that
// was typed in: check units on paper, and leave decisions on site to local codes,
// manufacturers' ratings and a licensed engineer or qualified rigger.
//
// Everything here is a pure function of its arguments and may be called from
// many goroutines. Start with [Parse], [System.Format] and [Mass.Weight].
package units
