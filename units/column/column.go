package column

import (
	"database/sql/driver"
	"encoding"
	"fmt"
	"strconv"

	"example.com/steelyard/units"
)

// Of is a quantity as a column of a database holds it. Its zero value is none of
// the quantity, and is stored as that: "0 kg".
type Of[Q units.Quantity] struct {
	Q Q // the quantity
}

// Value gives the text to store, for database/sql. A quantity that is not finite is
// refused with a *[units.FieldError] of kind [units.ErrNotFinite].
func (c Of[Q]) Value() (driver.Value, error) {
	text, err := any(c.Q).(encoding.TextMarshaler).MarshalText()
	if err != nil {
		return nil, err
	}
	return string(text), nil
}

// Scan reads what a column holds, for database/sql. A text that is no such quantity
// is refused with a *[units.ParseError]; NULL, a number and any other value with a
// *[units.FieldError] of kind [units.ErrMissing], [units.ErrNoUnit] or
// [units.ErrWrongType]. On an error the receiver keeps its value.
func (c *Of[Q]) Scan(stored any) error {
	const want = "text with a unit"
	var text string
	switch stored := stored.(type) {
	case string:
		text = stored
	case []byte:
		text = string(stored)
	case nil:
		return &units.FieldError{Want: want + ", or a column that takes NULL", Err: units.ErrMissing}
	case float64:
		return &units.FieldError{Value: strconv.FormatFloat(stored, 'g', -1, 64), Want: want, Err: units.ErrNoUnit}
	case int64:
		return &units.FieldError{Value: strconv.FormatInt(stored, 10), Want: want, Err: units.ErrNoUnit}
	default:
		return &units.FieldError{Value: fmt.Sprintf("a value of type %T", stored), Want: want, Err: units.ErrWrongType}
	}
	read, err := units.Parse[Q](text)
	if err != nil {
		return err
	}
	c.Q = read
	return nil
}
