package purchase_test

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

// eachNumber calls f with every number in a description, the path of its field as JSON has it, and a way to set it.
func eachNumber(v reflect.Value, path string, f func(path string, number reflect.Value)) {
	switch v.Kind() {
	case reflect.Float64:
		f(path, v)
	case reflect.Slice:
		for i := range v.Len() {
			eachNumber(v.Index(i), path+"["+strconv.Itoa(i)+"]", f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Field(i)
			name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
			if name == "" {
				name = strings.ToLower(field.Name)
			}
			if path != "" {
				name = path + "." + name
			}
			eachNumber(v.Field(i), name, f)
		}
	}
}

// A number that is none, or of no possible size, is told of whatever field it stands in: by the path of that field, once, and
// nothing else is blamed for it. An answer there is none.
func TestNumbersThatAreNone(t *testing.T) {
	rigged := mustRig(t, roped(purchase.Single))
	lines := evenly(5, 100)
	on := purchase.Bodies{Pulls: lines, Arbor: 50, Idler: 20, Base: 30}
	layout, same := grooved(), grooved()
	for _, l := range []*purchase.Layout{&layout, &same} {
		l.Kind, l.LiftMass, l.HandMass, l.Drag, l.Rim = purchase.Triple, 0.1, 0.2, 0.02, 3
		l.Sheaves.Beam, l.Sheaves.HandBeam = 5*units.Inch, 6*units.Inch
	}
	reeving := layout.Reeving()
	for _, c := range []struct {
		name string
		of   any // a pointer to what is asked
		ask  func(any) (answer any, err error)
	}{
		{"layout", &layout, func(d any) (any, error) { l := *d.(*purchase.Layout); return nil, l.Validate() }},
		{"layout, rigged", &same, func(d any) (any, error) { return d.(*purchase.Layout).Rig() }},
		{"reeving", &reeving, func(d any) (any, error) { return d.(*purchase.Reeving).Rig() }},
		{"flight", &purchase.Flight{
			Low: 2, High: 15, Carried: 100, Arbor: 90,
			Chain: purchase.Chain{On: purchase.Arbor, Below: 2, Hung: purchase.Looped, To: 8, Length: 20, Mass: 1},
		}, func(d any) (any, error) { return rigged.Drift(*d.(*purchase.Flight)) }},
		{"weighing", &purchase.Weighing{Trim: 5, On: on, Out: purchase.Pulled{Pull: 40}, In: purchase.Pulled{Pull: 50}, Scale: 2}, func(d any) (any, error) { return rigged.Weigh(*d.(*purchase.Weighing)) }},
		{"let go", &purchase.LetGo{Trim: 5, Low: 2, High: 15, On: on}, func(d any) (any, error) { return rigged.LetGo(*d.(*purchase.LetGo)) }},
		{"flown", &purchase.Fly{From: 3, To: 15, Top: 1, Start: 2, Stop: 1, On: on}, func(d any) (any, error) { return rigged.Fly(*d.(*purchase.Fly)) }},
		{"bodies at rest", &on, func(d any) (any, error) { return rigged.At(5, *d.(*purchase.Bodies)) }},
		{"bodies at rest with drag", &on, func(d any) (any, error) { return rigged.Rest(5, *d.(*purchase.Bodies)) }},
		{"bodies felt", &on, func(d any) (any, error) { return rigged.Feel(5, *d.(*purchase.Bodies)) }},
		{"bodies that run", &on, func(d any) (any, error) { return rigged.Run(5, *d.(*purchase.Bodies), purchase.Out) }},
		{"bodies that stay", &on, func(d any) (any, error) { return rigged.Stays(5, *d.(*purchase.Bodies)) }},
	} {
		if _, err := c.ask(c.of); err != nil {
			t.Fatalf("%s, as it is: %v", c.name, err)
		}
		eachNumber(reflect.ValueOf(c.of).Elem(), "", func(path string, number reflect.Value) {
			was := number.Float()
			defer number.SetFloat(was)
			for _, bad := range []struct {
				x    float64
				kind error
			}{{math.NaN(), units.ErrNotFinite}, {math.Inf(1), units.ErrNotFinite}, {math.Inf(-1), units.ErrNotFinite}, {2e12, units.ErrOutOfRange}, {-2e12, nil}} {
				number.SetFloat(bad.x)
				answer, err := c.ask(c.of)
				all := faults(t, err)
				if len(all) != 1 || all[0].Field != path || bad.kind != nil && all[0].Err != bad.kind || all[0].Want == "" || all[0].Value == "" {
					t.Errorf("%s, %s of %v: %v", c.name, path, bad.x, err)
				}
				if answer != nil && !reflect.ValueOf(answer).IsZero() {
					t.Errorf("%s, %s of %v is refused, and yet answered: %+v", c.name, path, bad.x, answer)
				}
			}
		})
	}
}
