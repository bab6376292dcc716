package strictjson

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
)

const (
	// maxDepth bounds how deep objects and lists may lie in one another: far
	// more than any description needs, and few enough for the call stack.
	maxDepth = 64

	// maxFaults bounds how many faults are listed: a file of another kind would
	// otherwise be answered with a list as long as itself.
	maxFaults = 50
)

// Decode reads one JSON value into the value that into points to, which is
// replaced whole when the text has no fault and left as it was otherwise. The
// error joins every fault found, in the order of the text. It takes time in
// proportion to the length of the text.
func Decode(data []byte, into any) error {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		return fmt.Errorf("strictjson: cannot decode into %T, only through a pointer that is not nil", into)
	}
	// Some editors put a byte order mark in front of UTF-8; it carries nothing.
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if err := readable(data); err != nil {
		return err
	}
	w := walker{data: data, dec: json.NewDecoder(bytes.NewReader(data)), layouts: map[reflect.Type]layout{}}
	w.dec.UseNumber()
	fresh := reflect.New(target.Type().Elem())
	if err := w.document(fresh.Elem()); err != nil {
		return err
	}
	target.Elem().Set(fresh.Elem())
	return nil
}
