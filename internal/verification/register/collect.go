package main

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/steelyard/internal/verification"
)

// register is what the tests have recorded.
type register struct {
	records []record // by package, then in the order of their tests
	failed  []string // tests and packages that fail, with what they print
}

type record struct {
	verification.Record

	room string // the package whose test holds the row, below the module's path
	test string
}

// event is a line of go test -json, as far as it is wanted.
type event struct {
	Action, Package, Test, Key, Value, Output, ImportPath string
}

// collect reads the rows out of what go test -json prints.
func collect(events io.Reader) (register, error) {
	var r register
	said := map[string]string{} // by package and test, in case it fails
	for d := json.NewDecoder(events); ; {
		var e event
		if err := d.Decode(&e); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return r, fmt.Errorf("go test -json printed something else: %w", err)
		}
		name := strings.TrimSuffix(cmp.Or(e.Package, e.ImportPath)+" "+e.Test, " ")
		switch e.Action {
		case "output", "build-output":
			said[name] += e.Output
		case "fail", "build-fail":
			r.failed = append(r.failed, name+" fails:\n"+said[name])
		case "attr":
			if e.Key != verification.Attribute {
				continue
			}
			row := record{room: strings.TrimPrefix(e.Package, module+"/"), test: e.Test}
			if err := json.Unmarshal([]byte(e.Value), &row.Record); err != nil {
				return r, fmt.Errorf("%s recorded no row: %w", name, err)
			}
			r.records = append(r.records, row)
		}
	}
	// Packages run beside one another, and so do parallel tests; keys are all different, or that is a fault.
	slices.SortStableFunc(r.records, func(a, b record) int {
		return cmp.Or(cmp.Compare(a.room, b.room), natural(a.Key, b.Key))
	})
	return r, nil
}

// natural compares two keys so that "2 parts" comes before "10 parts": runs of digits count as numbers.
func natural(a, b string) int {
	for a != "" && b != "" {
		na, nb := digits(a), digits(b)
		if na > 0 && nb > 0 {
			x, y := strings.TrimLeft(a[:na], "0"), strings.TrimLeft(b[:nb], "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y)); c != 0 {
				return c
			}
			a, b = a[na:], b[nb:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

func digits(s string) int {
	return len(s) - len(strings.TrimLeft(s, "0123456789"))
}

// faults lists what must not be: rows and tests that fail, and keys that stand twice.
func (r register) faults() (list []error) {
	if len(r.records) == 0 {
		list = append(list, errors.New("no row was recorded"))
	}
	seen := map[string]record{}
	for _, row := range r.records {
		if first, twice := seen[row.Key]; twice {
			list = append(list, fmt.Errorf("two rows have the key %q: in %s %s and %s %s", row.Key, first.room, first.test, row.room, row.test))
		}
		seen[row.Key] = row
		if row.Fail {
			list = append(list, fmt.Errorf("row %q fails", row.Key))
		}
	}
	for _, text := range r.failed {
		list = append(list, errors.New(text))
	}
	return list
}
