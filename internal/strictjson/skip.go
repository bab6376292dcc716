package strictjson

import (
	"encoding/json"
	"fmt"
	"reflect"

	"example.com/steelyard/units"
)

// wrongType notes a value of another type and passes over it.
func (w *walker) wrongType(at spot, tok json.Token, t reflect.Type) error {
	return w.refuse(at, tok, wanted(t), units.ErrWrongType)
}

// refuse notes a value that cannot be used, and passes over it.
func (w *walker) refuse(at spot, tok json.Token, want string, kind error) error {
	from := w.start
	err := w.skip(at, tok) // first, so that the end of the value is known
	if err == nil {
		w.note(at, w.raw(from), want, kind)
	}
	return err
}

// skip passes over the value that begins with tok.
func (w *walker) skip(at spot, tok json.Token) error {
	before := w.depth
	for {
		switch tok {
		case json.Delim('{'), json.Delim('['):
			if err := w.deeper(at); err != nil {
				return err
			}
		case json.Delim('}'), json.Delim(']'):
			w.depth--
		}
		if w.depth == before {
			return nil
		}
		var err error
		if tok, err = w.next(at); err != nil {
			return err
		}
	}
}

// deeper counts one level in, and stops where there are too many.
func (w *walker) deeper(at spot) error {
	w.depth++
	if w.depth > maxDepth {
		w.note(at, "", fmt.Sprintf("at most %d objects and lists in one another", maxDepth), units.ErrOutOfRange)
		return errStop
	}
	return nil
}
