package purchase_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

// faults lists what is wrong by an error, joined or not.
func faults(t *testing.T, err error) (all []*units.FieldError) {
	t.Helper()
	switch e := err.(type) {
	case nil:
	case *units.FieldError:
		all = append(all, e)
	case interface{ Unwrap() []error }:
		for _, inner := range e.Unwrap() {
			all = append(all, faults(t, inner)...)
		}
	default:
		t.Errorf("%v is no *units.FieldError", err)
	}
	return all
}

// one makes sure that a fault is told alone, of a field and a kind, with a remedy: what is right is not blamed beside what is
// wrong. Where one mistake makes several fields wrong they are given with commas between, and the kind is that of the first.
func one(t *testing.T, err error, field string, kind error, reason string) {
	t.Helper()
	all := faults(t, err)
	var fields []string
	for _, fault := range all {
		fields = append(fields, fault.Field)
		if fault.Want == "" {
			t.Errorf("%v names no remedy", fault)
		}
	}
	if !slices.Equal(fields, strings.Split(field, ", ")) || !errors.Is(all[0], kind) {
		t.Errorf("error %v; want one of %q: %v (%s)", err, field, kind, reason)
	}
}
