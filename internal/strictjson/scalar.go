package strictjson

import (
	"encoding"
	"encoding/json"
	"reflect"
	"strconv"

	"example.com/steelyard/units"
)

// text reads text in quotes into a type that reads it itself.
func (w *walker) text(at spot, tok json.Token, v reflect.Value) error {
	switch tok := tok.(type) {
	case string:
		w.unmarshalText(at, tok, v)
		return nil
	case json.Number:
		w.noteBareNumber(at, tok.String(), v.Type())
		return nil
	}
	return w.wrongType(at, tok, v.Type())
}

// unmarshalText hands the text to the type and notes its refusal.
func (w *walker) unmarshalText(at spot, s string, v reflect.Value) bool {
	err := v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(s))
	if err != nil {
		w.noteRefused(at, err)
	}
	return err == nil
}

// number reads a number into an integer or a float. The grammar of integers is
// that of encoding/json: no point and no exponent, though the value be whole.
func (w *walker) number(at spot, s string, v reflect.Value) {
	switch {
	case v.CanFloat():
		f, err := strconv.ParseFloat(s, v.Type().Bits())
		if err != nil {
			w.note(at, w.raw(w.start), "a smaller number", units.ErrOutOfRange)
			return
		}
		v.SetFloat(f)
	case v.CanInt():
		n, err := strconv.ParseInt(s, 10, v.Type().Bits())
		if err != nil {
			w.noteNotInt(at, err, v.Type())
			return
		}
		v.SetInt(n)
	default:
		n, err := strconv.ParseUint(s, 10, v.Type().Bits())
		if err != nil {
			w.noteNotInt(at, err, v.Type())
			return
		}
		v.SetUint(n)
	}
}

// readsText reports whether a value of type t reads itself from text.
func readsText(t reflect.Type) bool {
	return reflect.PointerTo(t).Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
}
