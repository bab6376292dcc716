package lineset

import (
	"strconv"
	"strings"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// walk follows the tension along a rope and writes down how.
type walk struct {
	w     worker
	text  string
	sum   bool // text is a sum, which a factor must put in brackets
	force units.Force
}

func (w worker) walk(text string, force units.Force) *walk {
	return &walk{w: w, text: text, force: force}
}

// toArbor walks from a stop, along the path or against it, to the first that is on the arbor, and gives that one. Factors
// count at the stops between. A path that does not go to the arbor, which none of a layout's is, ends at its end.
func (x *walk) toArbor(rope RopeTerms, from, step int, way purchase.Way) int {
	at := from
	for at+step >= 0 && at+step < len(rope.Stops) {
		x.add(rope.gains(at, at+step))
		at += step
		if rope.Stops[at].On == purchase.Arbor {
			break
		}
		x.times(rope.past(at, step, way))
	}
	return at
}

func (x *walk) add(own units.Force) {
	x.force += own
	switch {
	case own == 0:
	case x.text == "":
		x.text = x.w.plain(own)
	default:
		x.text, x.sum = x.text+" "+x.w.signed(own), true
	}
}

func (x *walk) times(k float64) {
	if k == 1 {
		return
	}
	if x.sum {
		x.text, x.sum = "("+x.text+")", false
	}
	x.text += factor(k)
	x.force = x.force.Scale(k)
}

func (x *walk) step(name string) Step {
	return Step{name, x.text, x.w.plain(x.force), basisWalk}
}

// parts is what the parts of a rope on the arbor pull together: with a tension t of the first of them it is
// t times count, and own more.
type parts struct {
	count float64
	own   units.Force
	terms []string // "1", "1.0408"; one for each part
	plain bool     // there is no drag in it: every part counts alike
	text  string   // how own was found
}

// beyond follows the rope on from its first stop on the arbor.
func (w worker) beyond(rope RopeTerms, at, step int, way purchase.Way) parts {
	p := parts{count: 1, terms: []string{"1"}, plain: true}
	k, text := 1.0, ""
	own := w.walk("", 0) // as if the first part bore nothing
	add := func() {
		p.count, p.own = p.count+k, p.own+own.force
		p.text = " + (" + own.text + ")"
		term := strings.TrimPrefix(text, " × ")
		if strings.HasPrefix(term, " / ") || term == "" {
			term = "1" + term
		}
		p.terms = append(p.terms, term)
	}
	for at+step >= 0 && at+step < len(rope.Stops) {
		f := rope.past(at, step, way)
		k, text = float64(k*f), text+factor(f)
		p.plain = p.plain && f == 1
		if own.text != "" {
			own.times(f)
		}
		if rope.Stops[at].On == purchase.Arbor {
			add()
		}
		own.add(rope.gains(at, at+step))
		at += step
	}
	if len(p.terms) > 1 && rope.Stops[at].On == purchase.Arbor {
		add()
	}
	return p
}

// on is what all of them pull with.
func (p parts) on(first units.Force) units.Force { return first.Scale(p.count) + p.own }

// share writes the brackets with one term for each part, or how many they are.
func (p parts) share() string {
	if p.plain {
		return number(p.count)
	}
	return "(" + strings.Join(p.terms, " + ") + ")"
}

// times writes it, for so many ropes that are alike, behind the tension of the first part.
func (p parts) times(ropes int) string {
	if len(p.terms) == 1 {
		return ""
	}
	text := " × " + p.share()
	if p.own == 0 {
		return text
	}
	if ropes > 1 {
		return text + strings.Replace(p.text, "(", strconv.Itoa(ropes)+" × (", 1)
	}
	return text + p.text
}

// over writes that a force at the arbor is shared among them.
func (p parts) over() string {
	if len(p.terms) == 1 {
		return ""
	}
	return " / " + p.share()
}

// over writes a division, but by 1.
func over(n float64) string {
	if n == 1 {
		return ""
	}
	return " / " + number(n)
}

// times writes a multiplication in front, but by 1.
func times(n float64) string {
	if n == 1 {
		return ""
	}
	return number(n) + " × "
}

// factor writes a factor as it is read on a calculator: × 1.0408, or / 1.0408 where it is less than 1.
func factor(k float64) string {
	switch {
	case k > 1:
		return " × " + factorText(k)
	case k < 1:
		return " / " + factorText(1/k)
	}
	return ""
}

func factorText(k float64) string { return strconv.FormatFloat(k, 'f', 4, 64) }

func degrees(a units.Angle) string {
	return strings.TrimSuffix(strconv.FormatFloat(a.In(units.Degree), 'f', 1, 64), ".0") + "°"
}
