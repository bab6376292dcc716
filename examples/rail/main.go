// Command rail asks how high the locking rail can be: the further the batten is to travel, the lower the arbor must come, and the
// taller its stack the lower still. Double purchase needs half the way for it, and twice the stack.
package main

import (
	"flag"
	"fmt"
	"math"
	"strings"

	"example.com/steelyard/arbor"
	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/internal/chart"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

func main() { rail().Main() }

func rail() lesson.Lesson {
	var name, single, double, travel string
	return lesson.Lesson{
		Name:  "rail",
		About: "how high can the locking rail be? The highest rail for each travel of the batten, single and double purchase, and the stack that fits over the rail as it is.",
		Draws: true,
		Flags: func(f *flag.FlagSet) {
			f.StringVar(&name, "set", "4 first electric", "the `SET` whose hang is to fly")
			f.StringVar(&single, "single", "single", "the house's `RIGGING` of single purchase, for its arbor and upper stop")
			f.StringVar(&double, "double", "double", "that of double purchase, for the same and for the rail as it is")
			f.StringVar(&travel, "travel", "", "the `LENGTH` that the batten is to travel, that of the double rigging if not given")
		},
		Teach: func(p *lesson.Page) error { return teach(p, name, single, double, travel) },
	}
}

// wall is where the arbors fly: over a rail that leaves the wing floor free, so that they must stop above it.
type wall struct {
	*lesson.Page
	ratios [2]float64     // single and double
	venues [2]arbor.Venue // for them
	under  units.Length   // from the lower stop down to the rail
	most   units.Length   // travel that brings the batten up to the loft blocks
}

func teach(p *lesson.Page, name, one, two, wanted string) error {
	set, err := p.Set(name)
	if err != nil {
		return err
	}
	single, err := p.Rigging("single", one)
	if err != nil {
		return err
	}
	double, err := p.Rigging("double", two)
	if err != nil {
		return err
	}
	low := double.MadeOff
	w := wall{Page: p, under: max(double.Run.LowerStop-double.Rail, 0), most: set.Travel().Highest + set.Travel().UnderLoft - low}
	for i, r := range []lineset.Rigging{single, double} {
		r.Run.LowerStop, w.ratios[i] = double.Run.LowerStop, r.Purchase.Ratio() // both over the same rail
		w.venues[i] = arbor.Venue{Run: r.Run, Frame: r.Arbor, Stock: p.House.House().Stock, Bare: r.Batten.BareMass(), Load: set.Hung(), Low: low, MadeOff: low}
	}
	today := double.Purchase.BattenTravel(double.Run.Travel(double.Arbor))
	travel := today
	if wanted != "" {
		if travel, err = units.Parse[units.Length](wanted); err != nil || travel <= 0 || travel >= w.most {
			return fmt.Errorf("-travel %q: want a length with its unit, above zero and below %s, which takes the batten into the loft blocks", wanted, p.Units.Format(w.most))
		}
	}

	p.Title("HOW HIGH CAN THE LOCKING RAIL BE?")
	p.Say("A rail up the wall leaves the wing floor under it free, but the arbor must then stop above it: %s above, in this house. From the upper stop down it takes the arbor, as tall "+
		"as its stack, and the arbor's travel. %s is to fly, %s, from %s up.", p.Units.Format(w.under), name, p.Units.FormatPlaces(set.Hung(), 0), p.Units.Format(low))
	p.Gap()
	curve, err := w.table()
	if err != nil {
		return err
	}
	p.Gap()
	w.draw(curve, svg.Point{X: lesson.Number(p.Units, today), Y: lesson.Number(p.Units, double.Rail)})
	return w.answer(travel)
}

// ask sets single beside double for a travel of the batten: arbors just as tall as their stacks, lines made off anew.
func (w *wall) ask(travel units.Length) (at [2]arbor.Option, err error) {
	for i, venue := range w.venues {
		venue.High = venue.Low + travel
		options, err := venue.Compare(w.ratios[i])
		if err != nil {
			return at, err
		}
		at[i] = options[0]
	}
	return at, nil
}

func (w *wall) table() (curve [][2]arbor.Option, err error) {
	step := units.Foot
	if w.Units == units.Metric {
		step = 0.3 * units.Metre
	}
	var rows [][]string
	for k := 15; step.Scale(float64(k)) < w.most; k++ {
		at, err := w.ask(step.Scale(float64(k)))
		if err != nil {
			return nil, err
		}
		curve = append(curve, at)
		row := []string{w.Units.Format(step.Scale(float64(k))), w.height(at[0].Anew.Stop.LowerStop), w.height(at[1].Anew.Stop.LowerStop)}
		for _, o := range at {
			cells := []string{"nothing", ""}
			if o.Anew.Hangs > 0 {
				cells = []string{w.Units.FormatPlaces(o.Anew.Hangs, 0), w.inches(o.Anew.Most.Height)}
			}
			row = append(row, cells...)
		}
		if k%5 == 0 { // every one of them in the picture
			rows = append(rows, row)
		}
	}
	if len(curve) < 2 {
		return nil, fmt.Errorf("the loft blocks leave the batten %s of travel; want more than %s", w.Units.Format(w.most), w.Units.Format(step.Scale(16)))
	}
	w.Table([]string{"batten travels", "highest rail, single", "double", "hangs, single", "stack", "hangs, double", "stack"}, rows)
	w.Say("Hangs, and its stack: the most that there is room, stock and arbor capacity for over the stop as it is, at %s, the arbor as tall as the travel leaves it.",
		w.Units.Format(w.venues[1].Run.LowerStop))
	return curve, nil
}

// answer is the answer in one sentence: for arbors just as tall as this hang needs them, and for those that the house has.
func (w *wall) answer(travel units.Length) error {
	at, err := w.ask(travel)
	if err != nil {
		return err
	}
	has := [2]string{}
	for i, v := range w.venues {
		stops, err := v.Run.HighestStop(v.Frame, arbor.Ride{Ratio: w.ratios[i], MadeOff: v.MadeOff}, v.Low, v.Low+travel)
		if err != nil {
			return err
		}
		has[i] = w.height(stops.Anew.LowerStop)
	}
	w.Say("For a batten that travels %s the highest rail for this hang is %s in single purchase and %s in double, with arbors of %s and %s for stacks of %d and %d pieces; "+
		"with the house's own arbors, %s and %s tall, it is %s and %s.", w.Units.Format(travel), w.height(at[0].Anew.Stop.LowerStop), w.height(at[1].Anew.Stop.LowerStop),
		w.inches(at[0].Frame.Length), w.inches(at[1].Frame.Length), at[0].Stack.Pieces, at[1].Stack.Pieces,
		w.inches(w.venues[0].Frame.Length), w.inches(w.venues[1].Frame.Length), has[0], has[1])
	return nil
}

// height is that of the rail under a lower stop.
func (w *wall) height(stop units.Length) string {
	if stop < w.under {
		return "none"
	}
	return w.inches(stop - w.under)
}

// inches is a height to the inch, or to the centimetre.
func (w *wall) inches(l units.Length) string {
	if w.Units == units.US {
		return w.Units.Format(units.Inch.Scale(math.Round(l.In(units.Inch))))
	}
	return w.Units.FormatPlaces(l, 2)
}

func (w *wall) draw(curve [][2]arbor.Option, now svg.Point) {
	rails := chart.Chart{Title: "The highest rail for this hang", Y: chart.Axis{Label: "rail above the deck, " + w.Units.Symbol(w.under), Zero: true}}
	rails.Notes = []chart.Note{{At: now, Text: "the rail of the double sets today", Anchor: svg.End, Below: true}}
	hangs := chart.Chart{Title: "What may hang, over the stop as it is", Y: chart.Axis{Label: "hang, " + w.Units.Symbol(w.venues[0].Load), Zero: true}, X: chart.Axis{Label: "the batten travels, " + w.Units.Symbol(w.under)}}
	pens := []svg.Pen{{Width: 1.4, Dash: svg.Dashed, Colour: svg.Blue}, {Width: 2.2}}
	travel := func(o arbor.Option) units.Length { return o.Travel.Scale(o.Ratio) }
	var desc strings.Builder
	desc.WriteString("Two charts over the travel of the batten. The highest rail comes down as the travel grows, in double purchase half as steeply.")
	for i, name := range []string{"single", "double"} {
		high, most := chart.Series{Name: name, Pen: pens[i]}, chart.Series{Name: name, Pen: pens[i]}
		for _, at := range curve {
			x := lesson.Number(w.Units, travel(at[i]))
			if rail := at[i].Anew.Stop.LowerStop - w.under; rail >= 0 {
				high.Points = append(high.Points, svg.Point{X: x, Y: lesson.Number(w.Units, rail)})
			}
			most.Points = append(most.Points, svg.Point{X: x, Y: lesson.Number(w.Units, at[i].Anew.Hangs)})
		}
		rails.Series, hangs.Series = append(rails.Series, high), append(hangs.Series, most)
		for _, o := range []arbor.Option{curve[0][i], curve[len(curve)-1][i]} {
			desc.WriteString(fmt.Sprintf(" For a travel of %s, %s purchase: highest rail %s; what may hang over the stop as it is, %s.", w.Units.Format(travel(o)), name,
				w.height(o.Anew.Stop.LowerStop), w.Units.FormatPlaces(o.Anew.Hangs, 0)))
		}
	}
	pic := lesson.Picture(760, 660, "How high the locking rail can be", desc.String())
	for i, c := range []chart.Chart{rails, hangs} {
		c.Left, c.Right, c.X.From, c.X.To = 72, 60, lesson.Number(w.Units, travel(curve[0][0])), lesson.Number(w.Units, travel(curve[len(curve)-1][0]))
		c.Draw(pic, svg.Box{X: 8, Y: 10 + 310*float64(i), W: 744, H: 310})
	}
	w.Draw(pic)
}
