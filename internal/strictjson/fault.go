package strictjson

import (
	"cmp"
	"encoding"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"example.com/steelyard/units"
)

// faults gathers what is wrong, in the order of the text.
type faults struct {
	listed []listedFault
	more   int   // how many came after the list was full
	broken error // what ended the text early, if anything did
}

// listedFault keeps the place beside the fault, because the name of a thing may
// stand after the field that is wrong.
type listedFault struct {
	at    spot
	fault *units.FieldError
}

// full reports whether the list takes no more, and counts one that was left
// out. It is asked before a message is made, so that a hundred megabytes of
// faults cost no more than reading them.
func (f *faults) full() bool {
	if len(f.listed) < maxFaults {
		return false
	}
	f.more++
	return true
}

// err joins the faults, or is nil where there are none.
func (f *faults) err() error {
	var errs []error
	for _, l := range f.listed {
		l.fault.Of = l.at.of()
		errs = append(errs, l.fault)
	}
	if f.broken != nil {
		errs = append(errs, f.broken)
	}
	if f.more > 0 {
		errs = append(errs, fmt.Errorf("and %d more", f.more))
	}
	return errors.Join(errs...)
}

func (w *walker) note(at spot, value, want string, kind error) {
	if !w.faults.full() {
		w.add(at, value, want, kind)
	}
}

func (w *walker) add(at spot, value, want string, kind error) {
	w.faults.listed = append(w.faults.listed, listedFault{
		at,
		&units.FieldError{Field: at.path(), Value: value, Want: want, Err: kind},
	})
}

func (w *walker) noteNull(at spot) {
	want := "the field left out"
	switch {
	case at.in == nil:
		want = "a value"
	case at.entry:
		want = "the entry left out"
	}
	w.note(at, "null", want, units.ErrWrongType)
}

func (w *walker) noteUnknown(at spot, known layout) {
	if w.faults.full() {
		return
	}
	want := "no fields here"
	if len(known.fields) > 0 {
		want = "one of " + known.names()
	}
	if name, ok := nearest(at.key, known); ok {
		want = fmt.Sprintf("perhaps %q; the fields here are %s", name, known.names())
	}
	w.add(at, strconv.Quote(shorten(at.key)), want, units.ErrUnknown)
}

// noteRefused notes an error of UnmarshalText. One that already says what would
// be right keeps its words and only learns where it stands.
func (w *walker) noteRefused(at spot, err error) {
	if w.faults.full() {
		return
	}
	value, want := w.raw(w.start), ""
	if e, ok := err.(*units.FieldError); ok && e.Field == "" && e.Err != nil {
		value, want, err = cmp.Or(e.Value, value), e.Want, e.Err
	}
	w.add(at, value, want, err)
}

// bareNumber is a number where text with a unit is wanted. It is a wrong type,
// and it is whatever the type says of the bare digits.
type bareNumber struct{ cause error }

func (b *bareNumber) Error() string {
	if b.cause == nil {
		return "is a bare number"
	}
	return "is a bare number, not text in quotes: " + b.cause.Error()
}

func (b *bareNumber) Unwrap() []error {
	if b.cause == nil {
		return []error{units.ErrWrongType}
	}
	return []error{units.ErrWrongType, b.cause}
}

// noteBareNumber asks the type itself what is wrong with the bare digits, so that
// the message names the quantity and gives an example that fits it.
func (w *walker) noteBareNumber(at spot, digits string, t reflect.Type) {
	if w.faults.full() {
		return
	}
	cause := reflect.New(t).Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(digits))
	want := ""
	if cause == nil {
		want = "the same in quotes: " + strconv.Quote(shorten(digits))
	}
	w.add(at, w.raw(w.start), want, &bareNumber{cause})
}

func (w *walker) noteNotInt(at spot, err error, t reflect.Type) {
	if w.faults.full() {
		return
	}
	bits := t.Bits()
	low, high := strconv.FormatInt(math.MinInt64>>(64-bits), 10), strconv.FormatInt(math.MaxInt64>>(64-bits), 10)
	if t.Kind() >= reflect.Uint && t.Kind() <= reflect.Uintptr {
		low, high = "0", strconv.FormatUint(math.MaxUint64>>(64-bits), 10)
	}
	raw := w.raw(w.start)
	switch {
	case errors.Is(err, strconv.ErrRange):
		w.add(at, raw, "a whole number from "+low+" to "+high, units.ErrOutOfRange)
	case raw[0] == '-' && !strings.ContainsAny(raw, ".eE"):
		// Only the unsigned refuse a sign.
		w.add(at, raw, "a whole number from "+low+" to "+high, units.ErrNegative)
	default:
		w.add(at, raw, "a whole number, written without point and exponent", units.ErrWrongType)
	}
}
