package units_test

import (
	"fmt"
	"slices"

	"example.com/steelyard/units"
)

// kind lets a test treat all quantities alike.
type kind struct {
	name          string
	of            func(float64) units.Value
	parse         func(string) (units.Value, error)
	append        func(units.Value, []byte) ([]byte, error)
	marshal       func(units.Value) ([]byte, error)
	unmarshal     func(units.Value, string) (units.Value, error)
	unmarshalJSON func(units.Value, string) (units.Value, error)
	within        func(q, other, tol units.Value) bool
	in            func(q, unit units.Value) float64
	scale         func(q units.Value, k float64) units.Value
	unit          func(string) (units.Value, error)
	symbols       func() []string
}

// quantity is what every quantity can do beyond units.Value.
type quantity[Q any] interface {
	units.Quantity
	AppendText([]byte) ([]byte, error)
	MarshalText() ([]byte, error)
	Within(other, tol Q) bool
	In(unit Q) float64
	Scale(k float64) Q
}

func kindOf[Q quantity[Q], P interface {
	*Q
	UnmarshalText([]byte) error
	UnmarshalJSON([]byte) error
}](name string) kind {
	return kind{
		name:    name,
		of:      func(f float64) units.Value { return Q(f) },
		parse:   func(s string) (units.Value, error) { q, err := units.Parse[Q](s); return q, err },
		append:  func(v units.Value, b []byte) ([]byte, error) { return v.(Q).AppendText(b) },
		marshal: func(v units.Value) ([]byte, error) { return v.(Q).MarshalText() },
		unmarshal: func(v units.Value, s string) (units.Value, error) {
			q := v.(Q)
			err := P(&q).UnmarshalText([]byte(s))
			return q, err
		},
		unmarshalJSON: func(v units.Value, s string) (units.Value, error) {
			q := v.(Q)
			err := P(&q).UnmarshalJSON([]byte(s))
			return q, err
		},
		within:  func(q, other, tol units.Value) bool { return q.(Q).Within(other.(Q), tol.(Q)) },
		in:      func(q, unit units.Value) float64 { return q.(Q).In(unit.(Q)) },
		scale:   func(q units.Value, k float64) units.Value { return q.(Q).Scale(k) },
		unit:    func(s string) (units.Value, error) { q, err := units.Unit[Q](s); return q, err },
		symbols: func() []string { return slices.Collect(units.Symbols[Q]()) },
	}
}

var kinds = []kind{
	kindOf[units.Length]("length"),
	kindOf[units.Area]("area"),
	kindOf[units.Mass]("mass"),
	kindOf[units.Force]("force"),
	kindOf[units.Acceleration]("acceleration"),
	kindOf[units.Moment]("moment"),
	kindOf[units.Stress]("stress"),
	kindOf[units.LineMass]("mass per length"),
	kindOf[units.LineLoad]("force per length"),
	kindOf[units.AreaMass]("mass per area"),
	kindOf[units.Density]("density"),
	kindOf[units.SecondMoment]("second moment of area"),
	kindOf[units.SectionModulus]("section modulus"),
	kindOf[units.TimeSpan]("time"),
	kindOf[units.Speed]("speed"),
	kindOf[units.Angle]("angle"),
	kindOf[units.Energy]("energy"),
	kindOf[units.Power]("power"),
	kindOf[units.Stiffness]("stiffness"),
	kindOf[units.Inertia]("mass moment of inertia"),
}

// number gives the SI number of a quantity.
func number(v units.Value) float64 {
	switch q := v.(type) {
	case units.Length:
		return float64(q)
	case units.Area:
		return float64(q)
	case units.Mass:
		return float64(q)
	case units.Force:
		return float64(q)
	case units.Acceleration:
		return float64(q)
	case units.Moment:
		return float64(q)
	case units.Stress:
		return float64(q)
	case units.LineMass:
		return float64(q)
	case units.LineLoad:
		return float64(q)
	case units.AreaMass:
		return float64(q)
	case units.Density:
		return float64(q)
	case units.SecondMoment:
		return float64(q)
	case units.SectionModulus:
		return float64(q)
	case units.TimeSpan:
		return float64(q)
	case units.Speed:
		return float64(q)
	case units.Angle:
		return float64(q)
	case units.Energy:
		return float64(q)
	case units.Power:
		return float64(q)
	case units.Stiffness:
		return float64(q)
	case units.Inertia:
		return float64(q)
	}
	panic(fmt.Sprintf("%T is not in this switch", v))
}

// kindLike gives the kind of a value.
func kindLike(v units.Value) kind {
	for _, k := range kinds {
		if fmt.Sprintf("%T", k.of(0)) == fmt.Sprintf("%T", v) {
			return k
		}
	}
	panic(fmt.Sprintf("%T is not in the list", v))
}

// parseLike reads a text as a quantity of v's type.
func parseLike(v units.Value, text string) (units.Value, error) { return kindLike(v).parse(text) }
