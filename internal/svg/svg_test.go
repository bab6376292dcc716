package svg

import (
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// wellFormed reads the whole document and gives its letters.
func wellFormed(t interface{ Fatalf(string, ...any) }, doc string) (text []string) {
	d := xml.NewDecoder(strings.NewReader(doc))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return text
		}
		if err != nil {
			t.Fatalf("not well formed: %v\n%s", err, doc)
			return nil
		}
		if c, ok := token.(xml.CharData); ok && strings.TrimSpace(string(c)) != "" {
			text = append(text, string(c))
		}
	}
}

// A picture is a document whatever is drawn and whatever things are called, with its title and description first.
func TestAnyPictureIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name, desc, label := rapid.String().Draw(t, "title"), rapid.String().Draw(t, "desc"), string(rapid.SliceOf(rapid.Byte()).Draw(t, "label"))
		v := func() float64 {
			return rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1e-9})).Draw(t, "v")
		}
		at := func() Point { return Point{v(), v()} }
		pen := Pen{Width: v(), Dash: label, Colour: label}
		p := New(v(), v(), name, desc)
		p.Line(at(), at(), pen)
		p.Path([]Point{at(), at(), at()}, pen)
		p.Path([]Point{at()}, pen)
		p.Area([]Point{at(), at(), at()}, label)
		p.Rect(Box{v(), v(), v(), v()}, "", pen)
		p.Circle(at(), v(), label, pen)
		p.Arrow(at(), at(), pen)
		p.Text(at(), "a"+label, Letter{Size: v(), Anchor: Anchor(rapid.IntRange(0, 3).Draw(t, "anchor")), Up: true, Bold: true, Italic: true})
		doc := p.String()
		p.Clashes()
		wellFormed(t, doc)
		if strings.Contains(doc, "NaN") || strings.Contains(doc, "Inf") && !strings.Contains(name+desc+label, "Inf") {
			t.Fatalf("a number that is none:\n%s", doc)
		}
	})
}

func TestNamesStayText(t *testing.T) {
	p := New(100, 50, `a <b> & "c"`, "one\x00two")
	p.Text(Point{5, 20}, "</text><script>alert(1)</script>", Letter{})
	text := wellFormed(t, p.String())
	want := []string{`a <b> & "c"`, "one\uFFFDtwo", "</text><script>alert(1)</script>"}
	if len(text) != len(want) {
		t.Fatalf("got %q, want %q", text, want)
	}
	for i := range want {
		if text[i] != want[i] {
			t.Errorf("got %q, want %q", text[i], want[i])
		}
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{{0, "0"}, {-0.001, "0"}, {1.005, "1"}, {2.346, "2.35"}, {-7.5, "-7.5"}, {math.NaN(), "-1000000"}, {math.Inf(1), "1000000"}, {math.Inf(-1), "-1000000"}} {
		if got := num(c.v); got != c.want {
			t.Errorf("num(%v) = %s, want %s", c.v, got, c.want)
		}
	}
}

// Widths as a browser lays them out at 100 pixels in DejaVu Sans: 63.6 for a digit, 31.8 for a space.
func TestWidth(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{{"", 0}, {"0", 63.6}, {"10 ft", 63.6*2 + 31.8 + 35.2 + 39.2}, {"m²", 97.4 + 40.1}, {"字", 100}} {
		if got := (Letter{Size: 100}).Width(c.text); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%q is %v wide, want %v", c.text, got, c.want)
		}
	}
}

func TestClashes(t *testing.T) {
	letters := Letter{Size: 10} // "00" is 12.72 wide, from 7.6 over its foot to 2.2 under it
	draw := func(more func(p *Picture)) []string {
		p := New(100, 100, "t", "d")
		p.Text(Point{40, 50}, "00", letters)
		more(p)
		return p.Clashes()
	}
	for _, c := range []struct {
		name string
		more func(p *Picture)
		want int
	}{
		{"alone", func(p *Picture) {}, 0},
		{"beside", func(p *Picture) { p.Text(Point{53, 50}, "1", letters) }, 0},
		{"into", func(p *Picture) { p.Text(Point{52, 50}, "1", letters) }, 1},
		{"above", func(p *Picture) { p.Text(Point{40, 40}, "1", letters) }, 0},
		{"just above", func(p *Picture) { p.Text(Point{40, 41}, "1", letters) }, 1},
		{"off to the right", func(p *Picture) { p.Text(Point{95, 90}, "1", letters) }, 1},
		{"ends at the edge", func(p *Picture) { p.Text(Point{100, 90}, "1", Letter{Size: 10, Anchor: End}) }, 0},
		{"off at the top", func(p *Picture) { p.Text(Point{10, 7}, "1", letters) }, 1},
		{"upwards and off", func(p *Picture) { p.Text(Point{10, 10}, "00", Letter{Size: 10, Up: true}) }, 1},
		{"upwards", func(p *Picture) { p.Text(Point{10, 20}, "00", Letter{Size: 10, Up: true}) }, 0},
		{"crossed", func(p *Picture) { p.Line(Point{0, 0}, Point{90, 100}, Pen{}) }, 1},
		{"passed by", func(p *Picture) { p.Line(Point{0, 60}, Point{90, 60}, Pen{}) }, 0},
		{"underlined from afar", func(p *Picture) { p.Line(Point{0, 48}, Point{30, 48}, Pen{}) }, 0},
		{"over a grid", func(p *Picture) { p.Line(Point{0, 48}, Point{90, 48}, Pen{Colour: Faint}) }, 0},
		{"in a frame", func(p *Picture) { p.Rect(Box{30, 40, 40, 20}, Sand, Pen{}) }, 0},
		{"on a frame", func(p *Picture) { p.Rect(Box{45, 40, 40, 20}, "", Pen{}) }, 1},
		{"in a circle", func(p *Picture) { p.Circle(Point{46, 47}, 20, "", Pen{}) }, 0},
		{"pierced", func(p *Picture) { p.Arrow(Point{46, 90}, Point{46, 46}, Pen{}) }, 1},
	} {
		if got := draw(c.more); len(got) != c.want {
			t.Errorf("%s: %q, want %d", c.name, got, c.want)
		}
		before := New(100, 100, "t", "d")
		c.more(before)
		if alone := len(before.Clashes()); before.Fits(Point{40, 50}, "00", letters) != (c.want == alone) {
			t.Errorf("%s: it fits, or not, as it should not", c.name)
		}
	}
}

// The head of an arrow is at its end, and no arrow is longer than it should be.
func TestArrow(t *testing.T) {
	p := New(100, 100, "t", "d")
	p.Arrow(Point{10, 90}, Point{10, 20}, Pen{})
	if doc := p.String(); !strings.Contains(doc, `points="10,20 `) || !strings.Contains(doc, `y1="90"`) {
		t.Error(doc)
	}
	p = New(100, 100, "t", "d")
	p.Arrow(Point{10, 90}, Point{10, 90}, Pen{})
	if doc := p.String(); strings.Contains(doc, "polygon") {
		t.Error("an arrow without length has no direction:\n" + doc)
	}
}
