package purchase_test

import (
	"errors"
	"reflect"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// A Reeved that Rig has not made answers every question with nothing, and with an error where there is one to give. The
// methods are found by reflection, so that none is forgotten.
func TestUnriggedAnswersNothing(t *testing.T) {
	for name, r := range map[string]*purchase.Reeved{"nil": nil, "zero": {}} {
		v := reflect.ValueOf(r)
		for i := range v.NumMethod() {
			method := v.Type().Method(i)
			var args []reflect.Value
			for k := range v.Method(i).Type().NumIn() {
				args = append(args, reflect.Zero(v.Method(i).Type().In(k)))
			}
			results := v.Method(i).Call(args)
			for _, result := range results {
				if err, ok := result.Interface().(error); ok {
					var fe *units.FieldError
					if !errors.Is(err, units.ErrMissing) || !errors.As(err, &fe) || fe.Want == "" {
						t.Errorf("%s, %s: error %v, want a *units.FieldError of what is missing", name, method.Name, err)
					}
					continue
				}
				if result.Kind() == reflect.Interface {
					t.Errorf("%s, %s: no error", name, method.Name)
				} else if !result.IsZero() && !(result.Kind() == reflect.Slice && result.Len() == 0) {
					t.Errorf("%s, %s: %v, want nothing", name, method.Name, result)
				}
			}
		}
	}
}
