package diagram_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"

	"example.com/steelyard/examples/diagram"
	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/internal/svg"
	"example.com/steelyard/load"
	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// legible checks that a picture is a document in which all words can be read.
func legible(t *testing.T, pic *svg.Picture) {
	t.Helper()
	for _, clash := range pic.Clashes() {
		t.Error(clash)
	}
	doc := pic.String()
	d := xml.NewDecoder(strings.NewReader(doc))
	for {
		_, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if strings.Contains(doc, "NaN") || strings.Contains(doc, "1000000") {
		t.Error("something is drawn nowhere")
	}
	if dir := os.Getenv("PICTURES"); dir != "" {
		file := dir + "/" + strings.NewReplacer("/", "_", " ", "_", ",", "").Replace(t.Name()) + ".svg"
		if err := os.WriteFile(file, []byte(doc), 0o644); err != nil {
			t.Error(err)
		}
	}
}

var ways = map[purchase.Way]string{0: "still", purchase.Out: "out", purchase.In: "in"}

// each draws a set at its lowest, a middle and its highest trim, at rest and both ways, in both systems of units.
func each(t *testing.T, set *lineset.Rigged) {
	travel := set.Travel()
	wide, high := 0.0, 0.0
	for _, sys := range []units.System{units.US, units.Metric} {
		for k, trim := range []units.Length{travel.Lowest, travel.Lowest + 3*units.Inch, (travel.Lowest + travel.Highest) / 2, travel.Highest} {
			for way, does := range ways {
				t.Run(fmt.Sprintf("%v %d %s", sys, k, does), func(t *testing.T) {
					pic, err := diagram.FreeBody(sys, "What holds what", diagram.Cut{Set: set, Trim: trim, Way: way})
					if err != nil {
						t.Fatal(err)
					}
					legible(t, pic)
					if wide != 0 && (pic.Width != wide || pic.Height != high) {
						t.Errorf("%v by %v, was %v by %v", pic.Width, pic.Height, wide, high)
					}
					wide, high = pic.Width, pic.Height
				})
			}
		}
	}
}

// Every set of both nights can be drawn at any trim, whatever is done to it, and the picture stays as large as it was.
func TestWholeHouse(t *testing.T) {
	for night, house := range map[string]func() (lineset.House, error){"summer": quillmoor.SummerPlay, "winter": quillmoor.WinterRevue} {
		description, err := house()
		if err != nil {
			t.Fatal(err)
		}
		rigged, err := description.Rig()
		if err != nil {
			t.Fatal(err)
		}
		for set := range rigged.Sets() {
			t.Run(night+" "+set.Set().Name, func(t *testing.T) { each(t, set) })
		}
	}
}

// described is a set of the house with something done to it.
func described(t *testing.T, name string, change func(s *lineset.Set)) *lineset.Rigged {
	t.Helper()
	house, err := quillmoor.SummerPlay()
	if err != nil {
		t.Fatal(err)
	}
	rigged, err := house.Rig()
	if err != nil {
		t.Fatal(err)
	}
	found, ok := rigged.Set(name)
	if !ok {
		t.Fatalf("no %s", name)
	}
	set := found.Set()
	change(&set)
	out, err := set.Rig(house.Stock)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// lines puts so many lift lines on the batten, evenly.
func lines(n int) func(s *lineset.Set) {
	return func(s *lineset.Set) {
		s.Rigging.Batten.Lines = make([]load.Line, n)
		for i := range n {
			s.Rigging.Batten.Lines[i].At = (1 + 40*units.Length(i)/units.Length(max(1, n-1))) * units.Foot
		}
		if n == 1 {
			s.Rigging.Batten.Lines[0].At = 21 * units.Foot
			s.Hang = load.Hang{{Name: "sign", Mass: 700 * units.Pound, From: 21 * units.Foot, To: 21 * units.Foot}}
		}
	}
}

// Houses that are nothing like the demo house.
func TestAnyHouse(t *testing.T) {
	all := func(changes ...func(s *lineset.Set)) func(s *lineset.Set) {
		return func(s *lineset.Set) {
			for _, c := range changes {
				c(s)
			}
		}
	}
	kinds := func(lift, hand purchase.Kind) func(s *lineset.Set) {
		return func(s *lineset.Set) {
			s.Rigging.Purchase, s.Rigging.HandPurchase = lift, hand
			s.Low, s.High = 6*units.Foot, 10*units.Foot
			if lift == purchase.Triple { // or its batten would come up to the blocks
				s.Rigging.Run.LowerStop = 30 * units.Foot
			}
		}
	}
	pit := func(s *lineset.Set) {
		s.Rigging.Run.LowerStop, s.Rigging.Idler.Height = -9*units.Foot, -11*units.Foot
		s.Rigging.Run.UpperStop, s.High = 46*units.Foot, 40*units.Foot
	}
	for _, c := range []struct {
		name, set string
		change    func(s *lineset.Set)
	}{
		{"one line", "9 empty", lines(1)},
		{"one line, single", "1 house curtain", lines(1)},
		{"two lines", "9 empty", lines(2)},
		{"eight lines", "9 empty", lines(8)},
		{"twelve lines", "9 empty", lines(12)},
		{"twelve lines, triple", "9 empty", all(lines(12), kinds(purchase.Triple, 0))},
		{"forty lines", "9 empty", lines(40)},
		{"triple", "9 empty", kinds(purchase.Triple, purchase.Triple)},
		{"single hand line", "4 first electric", kinds(purchase.Double, purchase.Single)},
		{"double hand line", "9 empty", kinds(purchase.Triple, purchase.Double)},
		{"double hand line under single", "4 first electric", kinds(purchase.Single, purchase.Double)},
		{"pit", "1 house curtain", pit},
		{"low blocks", "1 house curtain", func(s *lineset.Set) { s.Rigging.LoftBlocks, s.High = 48*units.Foot, 42*units.Foot }},
		{"low head block", "1 house curtain", func(s *lineset.Set) { s.Rigging.LoftBlocks = 70 * units.Foot }},
		{"no idler", "4 first electric", func(s *lineset.Set) { s.Rigging.Idler.Mass = 0 }},
		{"held idler", "4 first electric", func(s *lineset.Set) { s.Rigging.Idler.Base = 60 * units.PoundForce }},
		{"short arbor", "9 empty", func(s *lineset.Set) {
			s.Rigging.Arbor.Length, s.Rigging.Arbor.Room, s.Rigging.Bed = 1*units.Foot, 6*units.Inch, 0
			s.Rigging.Run.LowerStop = 30 * units.Foot
		}},
		{"batten-heavy", "4 first electric", func(s *lineset.Set) { s.Rigging.Arbor.Capacity = 700 * units.Pound }},
		{"uneven", "9 empty", func(s *lineset.Set) {
			s.Hang = load.Hang{{Name: "wall", Mass: 500 * units.Pound, From: 40 * units.Foot, To: 42 * units.Foot}}
		}},
		{"heavy", "10 ballroom wall", func(s *lineset.Set) { s.Rigging.Arbor.Capacity *= 4; s.Hang[0].Mass *= 4 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			set := described(t, c.set, c.change)
			travel := set.Travel()
			for _, sys := range []units.System{units.US, units.Metric} {
				for k, trim := range []units.Length{travel.Lowest, (travel.Lowest + travel.Highest) / 2, travel.Highest} {
					for way, does := range ways {
						t.Run(fmt.Sprintf("%v %d %s", sys, k, does), func(t *testing.T) {
							pic, err := diagram.FreeBody(sys, "What holds what", diagram.Cut{Set: set, Trim: trim, Way: way})
							if errors.Is(err, purchase.ErrSlack) {
								return // the hand line would be slack: that is an answer too
							}
							if err != nil {
								t.Fatal(err)
							}
							legible(t, pic)
						})
					}
				}
			}
		})
	}
}

// What some sets ask to be said or drawn besides.
func TestBesides(t *testing.T) {
	for _, c := range []struct {
		name, set string
		change    func(s *lineset.Set)
		way       purchase.Way
		want      string
	}{
		{"mule blocks", "15 back border", func(*lineset.Set) {}, 0, ">on the mule block: "},
		{"too many to tell each", "9 empty", lines(40), 0, ">on loft blocks, up to "},
		{"not held", "4 first electric", func(s *lineset.Set) { s.Rigging.Arbor.Capacity = 700 * units.Pound }, 0, `font-weight="bold">the lock alone does<`},
		{"runs", "4 first electric", func(s *lineset.Set) { s.Rigging.Arbor.Capacity = 700 * units.Pound }, purchase.In, ">the hand holds back "},
		{"two parts at the rail block", "9 empty", func(s *lineset.Set) {
			s.Rigging.Purchase, s.Rigging.Run.LowerStop, s.High = purchase.Triple, 30*units.Foot, 20*units.Foot
		}, 0, `text-anchor="end">rail block<`},
		{"the batten of one line is drawn", "9 empty", lines(1), 0, `x2="484" y2="384.2" stroke="` + svg.Ink + `" stroke-width="4"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			pic, err := diagram.FreeBody(units.US, "t", diagram.Cut{Set: described(t, c.set, c.change), Trim: 20 * units.Foot, Way: c.way})
			if err != nil {
				t.Fatal(err)
			}
			legible(t, pic)
			if !strings.Contains(pic.String(), c.want) {
				t.Errorf("no %s", c.want)
			}
		})
	}
}

// Names of any length stay in their place.
func TestLongNames(t *testing.T) {
	long := strings.Repeat("<&> the longest name that anybody gave to a line set ", 9)
	set := described(t, "4 first electric", func(s *lineset.Set) { s.Name = long })
	pic, err := diagram.FreeBody(units.US, long, diagram.Cut{Set: set, Trim: 10 * units.Foot}, diagram.Cut{Set: set, Trim: 20 * units.Foot, Way: purchase.In}, diagram.Cut{Title: "short", Set: set, Trim: 20 * units.Foot})
	if err != nil {
		t.Fatal(err)
	}
	legible(t, pic)
}

// The picture of the textbook, by hand: frictionless, weightless ropes, 500 lb on a double purchase. Each of the two parts of the
// lines holds 500, the arbor weighs 1000, the dead ends bear 500. The head block turns 500 from level to plumb, and the hand line
// hangs over it with half of a 100 lb idler on either side: 500 across and 500 + 2·50 down, which is 781.
func TestTextbook(t *testing.T) {
	set := described(t, "9 empty", func(s *lineset.Set) {
		r := &s.Rigging
		r.Drag, r.LiftLine, r.HandLine, r.LoftBlocks = 0, 0, 0, r.HeadBlock
		r.Idler.Mass = 100 * units.Pound
		r.Batten.Fittings = 0
		bare := r.Batten.BareMass()
		s.Hang = load.Hang{{Name: "load", Mass: 500*units.Pound - bare, From: 1 * units.Foot, To: 41 * units.Foot}}
		r.Arbor.Plate.Mass, r.Arbor.Plate.Thickness, r.Arbor.Plate.Every = 0, 0, 0
		r.Arbor.Tare = 120 * units.Pound // and 880 lb are twenty pieces of 44 lb
	})
	pic, err := diagram.FreeBody(units.US, "500 lb", diagram.Cut{Set: set, Trim: 20 * units.Foot})
	if err != nil {
		t.Fatal(err)
	}
	legible(t, pic)
	for _, want := range []string{">carries 500 lbf<", ">weighs 1000 lbf<", ">781 lbf<", ">up 1100 lbf, down 1100 lbf<", ">the lock holds 0 lbf<"} {
		if !strings.Contains(pic.String(), want) {
			t.Errorf("no %s", want)
		}
	}
	if n := strings.Count(pic.String(), ">500 lbf<"); n != 3 { // the two parts at the arbor, and the dead ends
		t.Errorf("500 lbf stands %d times", n)
	}
}

func TestErrors(t *testing.T) {
	set := described(t, "4 first electric", func(*lineset.Set) {})
	for _, c := range []struct {
		name string
		cuts []diagram.Cut
		is   error
	}{
		{"nothing", nil, units.ErrMissing},
		{"no set", []diagram.Cut{{Trim: units.Foot}}, units.ErrMissing},
		{"out of reach", []diagram.Cut{{Set: set, Trim: 90 * units.Foot}}, units.ErrOutOfRange},
		{"which way", []diagram.Cut{{Set: set, Trim: 9 * units.Foot, Way: 7}}, nil},
	} {
		pic, err := diagram.FreeBody(units.US, "t", c.cuts...)
		var field *units.FieldError
		if pic != nil || !errors.As(err, &field) || c.is != nil && !errors.Is(err, c.is) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}
