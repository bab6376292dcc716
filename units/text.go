package units

import (
	"math"
	"strconv"
)

// textSI gives what String writes.
func textSI[Q Quantity](q Q) string { return plainText(float64(q), q.dimension()) }

// plainText does the work of textSI. It is not generic because the compiler puts
// the buffer of a generic function on the heap in other packages.
func plainText(x float64, d *dimension) string {
	var room [64]byte
	return string(appendPlain(room[:0], x, d))
}

// appendSI appends a value in its SI unit, with the fewest digits that give the
// same float64 back.
func appendSI[Q Quantity](b []byte, q Q) []byte { return appendPlain(b, float64(q), q.dimension()) }

// appendPlain does the work of appendSI for a quantity that was taken apart.
// Nothing comes of no quantity.
func appendPlain(b []byte, x float64, d *dimension) []byte {
	if d == nil {
		return b
	}
	form := byte('f')
	if size := math.Abs(x); size < 1e-6 && size != 0 || size >= 1e21 {
		form = 'e' // as encoding/json does: no long rows of zeros
	}
	return appendSymbol(strconv.AppendFloat(b, x, form, -1, 64), d.si())
}

// appendSymbol appends a unit behind its number.
func appendSymbol(b []byte, symbol string) []byte {
	return append(append(b, ' '), symbol...)
}

// encode appends a value for storage. What could not be read back is refused.
func encode[Q Quantity](b []byte, q Q) ([]byte, error) {
	if !finite(float64(q)) {
		return b, notFinite(float64(q), q.dimension())
	}
	if b == nil {
		b = make([]byte, 0, 32) // one allocation, where growing takes three
	}
	return appendSI(b, q), nil
}

// notFinite refuses a value that could not be read back.
func notFinite(x float64, d *dimension) error {
	return &FieldError{Value: string(appendPlain(nil, x, d)), Want: "a finite " + d.name, Err: ErrNotFinite}
}

// decode reads a text into q, and leaves q alone where it cannot.
func decode[Q Quantity](q *Q, text []byte) error {
	d := (*q).dimension()
	f, ok := quick(string(text), d) // a string that goes nowhere needs no allocation
	if !ok {
		var err error
		if f, err = read(string(text), d); err != nil {
			return err
		}
	}
	*q = Q(f)
	return nil
}

func finite(f float64) bool { return !math.IsNaN(f) && !math.IsInf(f, 0) }
