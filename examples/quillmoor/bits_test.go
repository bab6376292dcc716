package quillmoor_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/examples/quillmoor"
	"example.com/steelyard/purchase"
)

// The same question has the same answer to the last bit on every machine: what the sets answer, in hexadecimal. Whoever
// changes a figure on purpose rewrites the file with go test ./examples/quillmoor -update, and says so under Numbers in the changelog.
func TestSameBits(t *testing.T) {
	house, err := quillmoor.SummerPlay()
	if err != nil {
		t.Fatal(err)
	}
	rigged, err := house.Rig()
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for set := range rigged.Sets() {
		name := set.Set().Name
		low, high := set.Low().Trim, set.High().Trim
		c := set.Counterweight()
		hexadecimal(&b, name+" counterweight", reflect.ValueOf([]any{c.Loaded, c.Bare, c.Pieces, c.Arbor, c.Stack.Error}))
		hexadecimal(&b, name+" worst", reflect.ValueOf(set.Balance().Worst()))
		for _, at := range []struct {
			name string
			any
		}{{"low", set.Low()}, {"high", set.High()}} {
			hexadecimal(&b, name+" "+at.name, reflect.ValueOf(at.any))
		}
		for _, trim := range []struct {
			name string
			ask  func() (any, error)
		}{
			{"pulls", func() (any, error) {
				h, err := set.Hand(high)
				return []any{h.Out, h.In, h.Stays, h.Feel}, err
			}},
			{"flown out", func() (any, error) { return set.Run(low, purchase.Out) }},
			{"felt", func() (any, error) { return set.Felt(low) }},
			{"let go", func() (any, error) { return set.LetGo(high) }},
			{"bent", func() (any, error) { return set.Load().Deflection(high) }},
		} {
			answer, err := trim.ask()
			if err != nil {
				fmt.Fprintf(&b, "%s %s: none\n", name, trim.name)
				continue
			}
			hexadecimal(&b, name+" "+trim.name, reflect.ValueOf(answer))
		}
	}
	lessontest.Same(t, "bits.txt", b.String())
}

// hexadecimal writes every number in a value, a line for each.
func hexadecimal(b *strings.Builder, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		fmt.Fprintf(b, "%s %x\n", path, v.Float())
	case reflect.Interface, reflect.Pointer:
		if !v.IsNil() {
			hexadecimal(b, path, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			hexadecimal(b, fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				hexadecimal(b, path+"."+f.Name, v.Field(i))
			}
		}
	}
}
