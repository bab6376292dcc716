package svg

// Anchor is which part of a line of words stands at its place.
type Anchor uint8

// The zero Anchor is Start.
const (
	Start Anchor = iota
	Middle
	End
)

// Letter is how words are written. The zero Letter is small plain type in ink that begins at its place.
type Letter struct {
	Size   float64 // zero: 12
	Anchor Anchor
	Bold   bool
	Italic bool
	Colour string // empty: Ink
	Up     bool   // written upwards, turned by a quarter
}

// Text writes one line of words, the foot of its letters at a place. It stands on a rim of paper, so that it can be read over
// a grid.
func (p *Picture) Text(at Point, text string, l Letter) {
	if text == "" {
		return
	}
	size, colour := l.size(), l.Colour
	if colour == "" {
		colour = Ink
	}
	out := `<text x="` + num(at.X) + `" y="` + num(at.Y) + `" font-size="` + num(size) + `" fill="` + escape(colour) + `"`
	out += ` stroke="` + Paper + `" stroke-width="3" paint-order="stroke" stroke-linejoin="round"`
	switch l.Anchor {
	case Middle:
		out += ` text-anchor="middle"`
	case End:
		out += ` text-anchor="end"`
	}
	if l.Bold {
		out += ` font-weight="bold"`
	}
	if l.Italic {
		out += ` font-style="italic"`
	}
	if l.Up {
		out += ` transform="rotate(-90 ` + num(at.X) + ` ` + num(at.Y) + `)"`
	}
	p.element(out + `>` + escape(text) + `</text>`)
	p.words = append(p.words, word{text, l.box(at, text)})
}

func (l Letter) size() float64 {
	if l.Size == 0 {
		return 12
	}
	return l.Size
}

// Width is how wide a line of words is at the most, whichever of the picture's typefaces a reader has.
func (l Letter) Width(text string) float64 {
	var sum float64
	for _, r := range text {
		sum += advance(r)
	}
	if l.Bold {
		sum *= 1.12
	}
	return sum * l.size() / 1000
}

// box is the room that a line of words takes up.
func (l Letter) box(at Point, text string) Box {
	w, up, down := l.Width(text), 0.76*l.size(), 0.22*l.size()
	before := 0.0
	switch l.Anchor {
	case Middle:
		before = w / 2
	case End:
		before = w
	}
	if l.Up {
		return Box{at.X - up, at.Y - w + before, up + down, w}
	}
	return Box{at.X - before, at.Y - up, w, up + down}
}

// advance is how far a letter moves on, in thousandths of the size: as measured in DejaVu Sans, the widest of the
// typefaces asked for. A letter that is not listed counts as a wide one.
func advance(r rune) float64 {
	if r >= ' ' && int(r-' ') < len(advances) {
		return float64(advances[r-' '])
	}
	switch r {
	case '·':
		return 318
	case '²', '³':
		return 401
	case '°', '–':
		return 500
	case 'µ':
		return 636
	}
	return 1000
}

var advances = [...]uint16{
	318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636, 636, 636,
	636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787,
	603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352, 635,
	634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
}
