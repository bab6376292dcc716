package units

import (
	"math"
	"strconv"
)

// appendSI appends a value in its SI unit, with the fewest digits that give the
// same float64 back.
func appendSI[Q Quantity](b []byte, q Q) []byte {
	form := byte('f')
	if size := math.Abs(float64(q)); size != 0 && size < 1e-6 || size >= 1e21 {
		form = 'e' // as encoding/json does: no long rows of zeros
	}
	b = strconv.AppendFloat(b, float64(q), form, -1, 64)
	b = append(b, ' ')
	return append(b, q.dimension().si()...)
}

// encode appends a value for storage. What could not be read back is refused.
func encode[Q Quantity](b []byte, q Q) ([]byte, error) {
	if !finite(float64(q)) {
		return b, &FieldError{Value: q.String(), Want: "a finite " + q.dimension().name, Err: ErrNotFinite}
	}
	return appendSI(b, q), nil
}

// decode reads a text into q, and leaves q alone where it cannot.
func decode[Q Quantity](q *Q, text []byte) error {
	read, err := Parse[Q](string(text))
	if err != nil {
		return err
	}
	*q = read
	return nil
}

func finite(f float64) bool { return !math.IsNaN(f) && !math.IsInf(f, 0) }
