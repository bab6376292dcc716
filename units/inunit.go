package units

// FormatIn writes q in the unit of the given symbol, which may have any spelling
// that [Parse] reads, with the fewest digits that Parse reads back as the same
// value, bit for bit. So what was typed with up to twelve digits comes out as it
// was typed:
//
//	q, _ := units.Parse[units.Mass]("12.35 lb")
//	units.FormatIn(q, "lb")                     // 12.35 lb
//	units.FormatIn(q, "kg")                     // 5.6018657695 kg, as String
//
// The error is a *[FieldError] of kind ErrUnknown, ErrAmbiguousUnit or
// ErrWrongQuantity for the symbol, ErrNotFinite or ErrMissing for q.
func FormatIn(q Value, symbol string) (string, error) {
	var room [64]byte
	b, err := AppendIn(room[:0], q, symbol)
	return string(b), err
}

// AppendIn appends what FormatIn writes, and nothing beside an error. For what
// people write it makes no allocation, but for angles: π has no end, and to be
// certain of the last digit takes more than a few machine words.
func AppendIn(b []byte, q Value, symbol string) ([]byte, error) {
	x, d := valueOf(q)
	if d == nil {
		return b, &FieldError{Want: "a quantity", Err: ErrMissing}
	}
	u := d.quickUnit(symbol)
	if u == nil {
		var err error
		if u, err = d.named(symbol); err != nil {
			return b, err
		}
	}
	if !finite(x) {
		return b, notFinite(x, d)
	}
	return appendSymbol(appendShortest(b, x, u), u.symbol), nil
}
