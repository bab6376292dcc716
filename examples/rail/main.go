// Command rail asks how high the locking rail can be: the further the batten is to travel, the lower the arbor must come, and the
// taller its stack the lower still. Double purchase needs half the way for it, and twice the stack.
package main

import (
	"flag"
	"fmt"
	"math"

	"example.com/steelyard/arbor"
	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func main() { rail().Main() }

// question is what the flags ask.
type question struct {
	name, set string
	travel    units.Length // zero: what the rigging gives
}

func rail() lesson.Lesson {
	var q question
	return lesson.Lesson{
		Name:  "rail",
		About: "how high can the locking rail be? The highest rail for each travel of the batten, single and double purchase, and what may hang over the rail as it is.",
		Draws: true,
		Flags: func(f *flag.FlagSet) {
			q = question{}
			f.StringVar(&q.name, "rigging", "double", "the house's `RIGGING` whose wall, stock, batten and rail are looked at")
			f.StringVar(&q.set, "set", "4 first electric", "the `SET` whose hang is to fly")
			f.Func("travel", "the `LENGTH` that the batten is to travel (if not given: what that rigging gives today)", func(text string) (err error) {
				q.travel, err = units.Parse[units.Length](text)
				return err
			})
		},
		Teach: func(p *lesson.Page) error { return teach(p, q) },
	}
}

func teach(p *lesson.Page, q question) error {
	set, err := p.Set(q.set)
	if err != nil {
		return err
	}
	house := p.House.House()
	rigging, ok := house.Riggings[q.name]
	if !ok {
		return fmt.Errorf("-rigging %q: want the name of a rigging of the house, as in its file under riggings", q.name)
	}
	ratio := rigging.Purchase.Ratio()
	today := rigging.Run.Travel(rigging.Arbor).Scale(ratio)
	if q.travel == 0 {
		q.travel = today
	}
	w := wall{Page: p, rigging: rigging, under: max(rigging.Run.LowerStop-rigging.Rail, 0), venue: arbor.Venue{
		Run: rigging.Run, Frame: rigging.Arbor, Stock: house.Stock,
		Bare: rigging.Batten.BareMass(), Load: set.Hung(), Low: rigging.MadeOff, MadeOff: rigging.MadeOff,
	}}
	single, double, err := w.ask(q.travel)
	if err != nil {
		return fmt.Errorf("-travel %s: %w", p.Units.Format(q.travel), err)
	}

	p.Title("HOW HIGH CAN THE LOCKING RAIL BE?")
	p.Say("An arbor that flies behind the rail must stay above it. The upper stop is at %s; under it the arbor, as tall as its stack, and under that "+
		"its travel; and the rail another %s lower. %s is to fly, %s, from %s up.", p.Units.Format(rigging.Run.UpperStop), p.Units.Format(w.under),
		q.set, p.Units.FormatPlaces(w.venue.Load, 0), p.Units.Format(w.venue.Low))
	p.Gap()
	curve, err := w.table()
	if err == nil && len(curve) < 2 {
		err = fmt.Errorf("-rigging %q: want an upper stop that leaves a batten some travel, and this one stands at %s", q.name, p.Units.Format(rigging.Run.UpperStop))
	}
	if err != nil {
		return err
	}
	p.Gap()
	p.Say("For a batten that travels %s the rail %s in single purchase, and %s in double: %s of wall that the wing gains, for an arbor of %s in place of %s, "+
		"with %d pieces in place of %d.", p.Units.Format(q.travel), w.stands(single), w.stands(double),
		inches(p, double.Anew.Stop.LowerStop-single.Anew.Stop.LowerStop), inches(p, double.Frame.Length), inches(p, single.Frame.Length), double.Stack.Pieces, single.Stack.Pieces)
	w.draw(curve)
	return nil
}

// wall is where the arbor flies, and what is to fly from it.
type wall struct {
	*lesson.Page
	rigging lineset.Rigging
	under   units.Length // from the lower stop down to the rail
	venue   arbor.Venue
}

// ask sets single beside double for a travel of the batten. The arbor is as tall as its stack asks, the lines are made off anew.
func (w *wall) ask(travel units.Length) (single, double arbor.Option, err error) {
	w.venue.High = w.venue.Low + travel
	options, err := w.venue.Compare(purchase.Single.Ratio(), purchase.Double.Ratio())
	if err != nil {
		return single, double, err
	}
	return options[0], options[1], nil
}

// height is the highest rail in words.
func (w *wall) height(o arbor.Option) string {
	if rail := o.Anew.Stop.LowerStop - w.under; rail > 0 {
		return inches(w.Page, rail)
	}
	return "none"
}

func (w *wall) stands(o arbor.Option) string {
	if h := w.height(o); h != "none" {
		return "may stand at " + h
	}
	return "has no place"
}

// point is one travel of the table.
type point struct {
	travel         units.Length
	single, double arbor.Option
}

func (w *wall) table() (curve []point, err error) {
	step := units.Foot
	if w.Units == units.Metric {
		step = 0.3 * units.Metre
	}
	hangs := func(o arbor.Option) string {
		if o.Anew.Hangs == 0 {
			return "nothing"
		}
		return w.Units.FormatPlaces(o.Anew.Hangs, 0)
	}
	var rows [][]string
	for k := 15; step.Scale(float64(k)) <= w.rigging.Run.UpperStop-w.venue.Low; k++ {
		travel := step.Scale(float64(k))
		one, two, err := w.ask(travel)
		if err != nil {
			return nil, err
		}
		curve = append(curve, point{travel, one, two})
		if k%5 == 0 { // every one of them in the picture
			rows = append(rows, []string{w.Units.FormatPlaces(travel, 1), w.height(one), w.height(two), hangs(one), hangs(two)})
		}
	}
	w.Table([]string{"batten travels", "highest rail, single", "double", "hangs at most, single", "double"}, rows)
	w.Say("Hangs at most: with the stop at %s, as it is, an arbor as tall as the travel leaves, full of what lies in stock within its capacity.", w.Units.Format(w.rigging.Run.LowerStop))
	return curve, nil
}

func (w *wall) draw(curve []point) {
	length, mass := w.Units.Symbol(w.under), w.Units.Symbol(w.venue.Load)
	rails := chart.Chart{Title: "The highest rail", Y: chart.Axis{Label: "rail above the deck, " + length, Zero: true}}
	hangs := chart.Chart{Title: "What may hang, over the stop as it is", Y: chart.Axis{Label: "hang, " + mass, Zero: true}, X: chart.Axis{Label: "the batten travels, " + length}}
	pens := []svg.Pen{{Width: 1.4, Dash: svg.Dashed, Colour: svg.Blue}, {Width: 2.2}}
	for i, name := range []string{"single", "double"} {
		high, most := chart.Series{Name: name, Pen: pens[i]}, chart.Series{Name: name, Pen: pens[i]}
		for _, c := range curve {
			o, x := []arbor.Option{c.single, c.double}[i], lesson.Number(w.Units, c.travel)
			if rail := o.Anew.Stop.LowerStop - w.under; rail >= 0 {
				high.Points = append(high.Points, svg.Point{X: x, Y: lesson.Number(w.Units, rail)})
			}
			most.Points = append(most.Points, svg.Point{X: x, Y: lesson.Number(w.Units, o.Anew.Hangs)})
		}
		rails.Series, hangs.Series = append(rails.Series, high), append(hangs.Series, most)
	}
	now := svg.Point{X: lesson.Number(w.Units, w.rigging.Run.Travel(w.rigging.Arbor).Scale(w.rigging.Purchase.Ratio())), Y: lesson.Number(w.Units, w.rigging.Rail)}
	rails.Notes = []chart.Note{{At: now, Text: "the rail today", Anchor: svg.End, Below: true}}
	pic := lesson.Picture(760, 660, "How high the locking rail can be", fmt.Sprintf("Two charts over the travel of the batten. Above: the highest rail, a falling line; "+
		"in double purchase it falls half as steeply as in single. Today the rail stands at %s. Below: what may hang with the stop as it is.", w.Units.Format(w.rigging.Rail)))
	for i, c := range []chart.Chart{rails, hangs} {
		c.Left, c.Right = 72, 60
		c.X.From, c.X.To = lesson.Number(w.Units, curve[0].travel), lesson.Number(w.Units, curve[len(curve)-1].travel)
		c.Draw(pic, svg.Box{X: 8, Y: 10 + 310*float64(i), W: 744, H: 310})
	}
	w.Draw(pic)
}

// inches is a height to the inch, or to the centimetre.
func inches(p *lesson.Page, l units.Length) string {
	if p.Units == units.US {
		return p.Units.Format(units.Inch.Scale(math.Round(l.In(units.Inch))))
	}
	return p.Units.FormatPlaces(l, 2)
}
