package verification

import "strconv"

// Standing says what stands behind a figure.
type Standing int

// What can stand behind a figure.
const (
	Published      Standing = iota + 1 // read in the publication
	SecondHand                         // read where it is quoted or taught: a page, a reproduction, a book without a title to give
	CommonPractice                     // what the trade does or prints alike, without a publication to name
	FromMemory                         // remembered: nobody has looked it up
	Identity                           // a closed form or an arithmetic that follows from definitions, exact by derivation
)

// String names it: "published", "second hand" and so on.
func (s Standing) String() string {
	switch s {
	case Published:
		return "published"
	case SecondHand:
		return "second hand"
	case CommonPractice:
		return "common practice"
	case FromMemory:
		return "from memory"
	case Identity:
		return "identity"
	}
	return "Standing(" + strconv.Itoa(int(s)) + ")"
}

// Source is where a figure comes from.
type Source struct {
	Key      string // short, as rows and comments name it
	Title    string
	Where    string // edition, and where it was read if not in the publication itself
	Standing Standing
}

// sources is the table of all sources. One that neither a row nor a comment uses is reported, and leaves it.
var sources = [...]Source{
	// Units.
	{"NIST SP 811", "Guide for the Use of the International System of Units (SI), NIST Special Publication 811", "2008, Appendix B.8 with its footnotes, and B.9", Published},
	{"NIST factor table", "Conversion factors of NIST SP 811 as a public table reproduces them", "not seen in the publication itself", SecondHand},
	{"NIST SP 811 from memory", "Guide for the Use of the International System of Units (SI), NIST Special Publication 811", "2008, Appendix B.9, as remembered", FromMemory},
	{"chemical engineering textbook", "A chemical engineering textbook, table of conversion factors", "Appendix A", SecondHand},
	{"UCUM", "The Unified Code for Units of Measure", "file ucum-essence.xml", Published},
	{"definitions of the units", "Arithmetic on the exact inch, pound and standard gravity", "", Identity},

	// Beams.
	{"Civil Engineering Formulas", "Civil Engineering Formulas", "2nd ed.", Published},
	{"Handbook of Civil Engineering Calculations", "Handbook of Civil Engineering Calculations", "2nd ed.", Published},
	{"Civil Engineering Reference Manual", "Civil Engineering Reference Manual", "15th ed., by way of a page that calculates", SecondHand},
	{"beam diagrams", "Beam diagrams and formulas in the manner of the AISC manual", "several pages that print them", SecondHand},
	{"Structural Analysis", "Structural Analysis, a textbook", "Appendix D and Example 16.5", Published},
	{"Advanced Structural Analysis", "An advanced structural analysis text", "Example 11.4", SecondHand},
	{"NPTEL", "NPTEL course on structural analysis", "Example 5.22", Published},
	{"yielding supports lesson", "Lesson on beams with yielding supports, of a national course", "slope and deflection; read through its equations", SecondHand},
	{"strength of materials problems", "Textbook problems on continuous beams, three-moment equation", "by way of a reviewer's pages", SecondHand},
	{"beam formulas from memory", "Beam formulas of any handbook", "as remembered", FromMemory},
	{"beam theory", "Euler–Bernoulli beam, three-moment equation and joint equations", "worked out by hand or by an independent stiffness solution", Identity},

	// Tubes and materials.
	{"Table A16-6", "A machine-element textbook, properties of standard pipe", "4th ed., Table A16-6", SecondHand},
	{"pipe schedule charts", "Charts of pipe schedules", "diameters, walls and weights", SecondHand},
	{"pipe weight list", "A public list of pipe weights", "two decimals", SecondHand},
	{"schedule 80 from memory", "Properties of schedule 80 pipe", "as remembered", FromMemory},
	{"AISC Shapes Database", "AISC Shapes Database", "v16.0, the record of Pipe1-1/2STD as quoted", SecondHand},
	{"AISC design walls from memory", "AISC Shapes Database, other pipes", "as remembered", FromMemory},
	{"EN 39 mill page", "A mill's page that cites EN 39", "", SecondHand},
	{"scaffold tube data sheet", "A scaffold tube data sheet that cites BS EN 12811-2", "", SecondHand},
	{"hollow section table", "A table of cold-formed circular hollow sections", "", SecondHand},
	{"tube formulas", "Section of a tube: area, moduli and second moment by its diameters", "", Identity},
	{"ASTM A53", "ASTM A53, steel pipe", "two pages that reproduce the tensile requirements", SecondHand},
	{"US steel practice from memory", "Modulus of elasticity of steel in US structural practice", "as remembered", FromMemory},
	{"density tables", "Density tables of engineering handbooks", "two tables", SecondHand},

	// Impact and motion.
	{"Mechanics of Materials", "Mechanics of Materials", "7th ed.", Published},
	{"machine design textbook", "A machine design textbook", "Example 7.1", SecondHand},
	{"mechanics of structures", "Mechanics of structures", "chapter 3", SecondHand},
	{"impact example", "A worked example of a weight that falls on a simple beam", "", SecondHand},
	{"Engineering Mechanics", "Engineering Mechanics, a textbook", "by way of a public companion notebook", SecondHand},
	{"Atwood problems", "Textbook problems on Atwood's machine", "as several teaching pages print them", SecondHand},
	{"conservation of energy", "Conservation of energy", "", Identity},
	{"equilibrium", "Statics: what is at rest is in equilibrium", "", Identity},

	// Ropes.
	{"FAA AC 43.13-1B", "FAA Advisory Circular 43.13-1B, Acceptable Methods, Techniques, and Practices", "9/8/98", Published},
	{"MIL-W-83420 from memory", "MIL-W-83420, wire rope for aircraft control", "as remembered", FromMemory},
	{"US Army TM 5-3810-305-10", "US Army Technical Manual 5-3810-305-10", "Table 4, p. 4-36", Published},
	{"bending efficiency table", "What wire rope keeps of its strength over a sheave, by the ratio of diameters", "printed alike on three suppliers' pages", CommonPractice},
	{"stretch rule", "Stretch of wire rope, G·W/D² per cent", "a maker's page, and another with the same constants", CommonPractice},
	{"OSHA 29 CFR 1910.184", "OSHA 29 CFR 1910.184, Slings", "Table N-184-16", Published},
	{"supplier's rope table", "A supplier's table of fibre rope", "", CommonPractice},
	{"engineering reference page", "A general engineering reference page", "", CommonPractice},
	{"US Navy Builder 3 & 2", "US Navy Builder 3 & 2", "vol. 1", Published},
	{"licence study page", "A study page for a mariner's licence", "", SecondHand},

	// Sheaves, tackle, wraps.
	{"sheave multiplier table", "Load on a sheave over the pull, by the angle between its parts", "printed alike on two suppliers' pages", CommonPractice},
	{"fleet angle primer", "A primer of the trade on fleet angles", "", CommonPractice},
	{"Wire Rope Users Manual", "Wire Rope Users Manual", "4th ed.", Published},
	{"Pipeline Rules of Thumb Handbook", "Pipeline Rules of Thumb Handbook", "p. 6", Published},
	{"tackle ratio table", "Load over pull by parts of line", "a rigging handbook, printed alike by suppliers", CommonPractice},
	{"US Navy Steelworker", "US Navy Steelworker", "vol. 2", Published},
	{"US Army TB 9-2350-292-10", "US Army TB 9-2350-292-10, recovery", "", Published},
	{"US Army TB 43-0142", "US Army TB 43-0142, lifting devices", "Table A-1", Published},
	{"Workshop Receipts", "Workshop Receipts", "5th series", Published},
	{"geometric series", "Lead line of a tackle by one ratio per sheave, K^N(K−1)/(K^N−1)", "worked out independently", Identity},
	{"belt friction formula", "Belt friction, e^(μβ)", "", Identity},
	{"capstan exercise", "A lowering exercise with a rope round a post", "", SecondHand},
	{"capstan study pages", "Study pages on belt friction", "", SecondHand},
	{"teaching text on friction", "A teaching text on belt friction", "", SecondHand},
	{"textbook of mechanical engineering", "An old textbook of mechanical engineering", "p. 579", SecondHand},

	// The trade and people.
	{"counterweight practice", "Common practice with counterweight sets", "", CommonPractice},
	{"drapery page", "A drapery calculation page", "", SecondHand},
	{"soft goods pages", "Pages of soft goods suppliers", "three of them", CommonPractice},
	{"HSE L23", "HSE L23, Manual handling", "push and pull assessment", Published},
	{"Ergonomic Design for People at Work", "Ergonomic Design for People at Work", "vol. 2, 1986, as quoted on a page of tables", SecondHand},
	{"car industry guidelines", "Guidelines of the car industry", "on a page for learning ergonomics", SecondHand},
	{"Int. J. Occupational Safety and Ergonomics", "International Journal of Occupational Safety and Ergonomics", "10(1), 2004, abstract", Published},
}
