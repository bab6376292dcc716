package strictjson

import (
	"fmt"
	"reflect"
	"strings"
)

// field is one field of a struct as it is named in JSON.
type field struct {
	name  string
	index []int // as in reflect.Value.FieldByIndex: through embedded structs
	depth int   // how many structs it is embedded in
}

// layout is what a struct looks like in JSON: its fields in order.
type layout struct {
	fields []field
	at     map[string]int
}

// layoutOf lists the fields of a struct type, those of embedded structs
// included: of two with one name the shallower counts.
func layoutOf(t reflect.Type) (layout, error) {
	all, err := collect(t, nil)
	if err != nil {
		return layout{}, err
	}
	l := layout{at: make(map[string]int, len(all))}
	for _, f := range all {
		i, known := l.at[f.name]
		switch {
		case !known:
			l.at[f.name] = len(l.fields)
			l.fields = append(l.fields, f)
		case f.depth < l.fields[i].depth:
			l.fields[i] = f
		case f.depth == l.fields[i].depth:
			return layout{}, fmt.Errorf("strictjson: %v has two fields %q", t, f.name)
		}
	}
	return l, nil
}

// collect lists the fields of t and of the structs embedded in it, in order.
func collect(t reflect.Type, above []int) ([]field, error) {
	var out []field
	for i := range t.NumField() {
		f := t.Field(i)
		tag := f.Tag.Get("json")
		name, options, _ := strings.Cut(tag, ",")
		index := append(append([]int(nil), above...), i)
		switch {
		case tag == "-":
			continue
		case f.Anonymous && name == "" && f.Type.Kind() == reflect.Struct && !readsText(f.Type):
			inner, err := collect(f.Type, index)
			if err != nil {
				return nil, err
			}
			out = append(out, inner...)
			continue
		case f.Anonymous && name == "" && f.Type.Kind() == reflect.Pointer:
			return nil, fmt.Errorf("strictjson: %v.%s: an embedded pointer is not supported", t, f.Name)
		case !f.IsExported():
			continue
		case strings.Contains(options, "string"):
			return nil, fmt.Errorf("strictjson: %v.%s: the option %q is not supported", t, f.Name, options)
		case name == "":
			name = f.Name
		}
		out = append(out, field{name: name, index: index, depth: len(above)})
	}
	return out, nil
}

// names lists the fields for a message.
func (l layout) names() string {
	quoted := make([]string, len(l.fields))
	for i, f := range l.fields {
		quoted[i] = fmt.Sprintf("%q", f.name)
	}
	return strings.Join(quoted, ", ")
}
