package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"

	"example.com/steelyard/units"
)

// errStop ends the walk early. What ended it has been noted among the faults.
var errStop = errors.New("strictjson: stopped")

// errEmpty is said of a text with nothing in it.
var errEmpty = fmt.Errorf("there is nothing in the text: the value %w", units.ErrMissing)

// walker goes once over the tokens and fills the target as it goes.
type walker struct {
	data    []byte
	dec     *json.Decoder
	start   int // where the token last read begins in data
	end     int // and where it ends
	depth   int
	layouts map[reflect.Type]layout
	faults  faults
}

// document reads the whole text into v.
func (w *walker) document(v reflect.Value) error {
	root := spot{}
	if len(bytes.Trim(w.data, " \t\r\n")) == 0 {
		w.note(root, "", wanted(v.Type()), errEmpty)
		return w.faults.err()
	}
	tok, err := w.next(root)
	if err == nil {
		err = w.value(root, tok, v)
	}
	switch {
	case err == errStop:
	case err != nil:
		return err
	case !json.Valid(w.data):
		// Past the value only white space may stand; and the tokens might be
		// more forgiving than the grammar.
		w.faults.broken = syntaxFault(w.data, root, w.end)
	}
	return w.faults.err()
}

// next reads one token. On text that is not JSON it notes where, and stops.
func (w *walker) next(at spot) (json.Token, error) {
	w.start = w.skipGap(w.end)
	tok, err := w.dec.Token()
	w.end = int(w.dec.InputOffset())
	if err != nil {
		w.faults.broken = syntaxFault(w.data, at, w.start)
		return nil, errStop
	}
	return tok, nil
}

// skipGap gives the place of the next byte that is more than white space or a
// separator: where the next token begins.
func (w *walker) skipGap(from int) int {
	for from < len(w.data) {
		switch w.data[from] {
		case ' ', '\t', '\r', '\n', ',', ':':
			from++
		default:
			return from
		}
	}
	return from
}

// value reads the value that begins with tok into v. It returns an error only
// when the walk cannot go on.
func (w *walker) value(at spot, tok json.Token, v reflect.Value) error {
	t := v.Type()
	switch {
	case tok == nil:
		w.noteNull(at)
		return nil
	case readsText(t):
		return w.text(at, tok, v)
	case t.Kind() == reflect.Pointer:
		v.Set(reflect.New(t.Elem()))
		return w.value(at, tok, v.Elem())
	}
	switch t.Kind() {
	case reflect.Struct:
		return w.object(at, tok, v)
	case reflect.Map:
		return w.mapping(at, tok, v)
	case reflect.Slice:
		if t.Elem().Kind() != reflect.Uint8 {
			return w.list(at, tok, v)
		}
	case reflect.String:
		if s, ok := tok.(string); ok {
			v.SetString(s)
			return nil
		}
		return w.wrongType(at, tok, t)
	case reflect.Bool:
		if b, ok := tok.(bool); ok {
			v.SetBool(b)
			return nil
		}
		return w.wrongType(at, tok, t)
	case reflect.Float32, reflect.Float64,
		reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64,
		reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		if n, ok := tok.(json.Number); ok {
			w.number(at, n.String(), v)
			return nil
		}
		return w.wrongType(at, tok, t)
	}
	return fmt.Errorf("strictjson: %s: Go type %v is not supported", at.path(), t)
}

// object reads an object into a struct.
func (w *walker) object(at spot, tok json.Token, v reflect.Value) error {
	if tok != json.Delim('{') {
		return w.wrongType(at, tok, v.Type())
	}
	known, ok := w.layouts[v.Type()]
	if !ok {
		var err error
		if known, err = layoutOf(v.Type()); err != nil {
			return err
		}
		w.layouts[v.Type()] = known
	}
	if err := w.deeper(at); err != nil {
		return err
	}
	self := &holder{at: at}
	seen := make([]bool, len(known.fields))
	for {
		tok, err := w.next(spot{in: self, whole: true})
		if err != nil {
			return err
		}
		key, ok := tok.(string)
		if !ok {
			w.depth--
			return nil
		}
		here := spot{in: self, key: key}
		i, ok := known.at[key]
		if !ok {
			w.noteUnknown(here, known)
		}
		if tok, err = w.next(here); err != nil {
			return err
		}
		if name, isText := tok.(string); isText && ok && key == "name" && !seen[i] {
			self.name = name
		}
		switch {
		case !ok:
			err = w.skip(here, tok)
		case seen[i]:
			err = w.refuse(here, tok, "the field once", units.ErrDuplicate)
		default:
			seen[i] = true
			err = w.value(here, tok, v.FieldByIndex(known.fields[i].index))
		}
		if err != nil {
			return err
		}
	}
}

// mapping reads an object into a map.
func (w *walker) mapping(at spot, tok json.Token, v reflect.Value) error {
	t := v.Type()
	if t.Key().Kind() != reflect.String && !readsText(t.Key()) {
		return fmt.Errorf("strictjson: %s: Go type %v is not supported", at.path(), t)
	}
	if tok != json.Delim('{') {
		return w.wrongType(at, tok, t)
	}
	if err := w.deeper(at); err != nil {
		return err
	}
	self := &holder{at: at}
	v.Set(reflect.MakeMap(t))
	for {
		tok, err := w.next(spot{in: self, whole: true})
		if err != nil {
			return err
		}
		word, ok := tok.(string)
		if !ok {
			w.depth--
			return nil
		}
		here := spot{in: self, key: word}
		key := reflect.New(t.Key()).Elem()
		usable := true
		if readsText(t.Key()) {
			usable = w.unmarshalText(here, word, key)
		} else {
			key.SetString(word)
		}
		if tok, err = w.next(here); err != nil {
			return err
		}
		entry := reflect.New(t.Elem()).Elem()
		switch {
		case !usable:
			err = w.skip(here, tok)
		case v.MapIndex(key).IsValid():
			err = w.refuse(here, tok, "the key once", units.ErrDuplicate)
		default:
			err = w.value(here, tok, entry)
			v.SetMapIndex(key, entry)
		}
		if err != nil {
			return err
		}
	}
}

// list reads a list into a slice.
func (w *walker) list(at spot, tok json.Token, v reflect.Value) error {
	if tok != json.Delim('[') {
		return w.wrongType(at, tok, v.Type())
	}
	if err := w.deeper(at); err != nil {
		return err
	}
	self := &holder{at: at}
	v.Set(reflect.MakeSlice(v.Type(), 0, 0))
	for i := 0; ; i++ {
		here := spot{in: self, index: i, entry: true}
		tok, err := w.next(here)
		if err != nil {
			return err
		}
		if tok == json.Delim(']') {
			w.depth--
			return nil
		}
		v.Grow(1)
		v.SetLen(i + 1)
		if err := w.value(here, tok, v.Index(i)); err != nil {
			return err
		}
	}
}
