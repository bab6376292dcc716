package units

import (
	"math/big"
	"strconv"
)

// feetInches writes a length in feet, inches and sixteenths in lowest terms.
func feetInches(metres float64) string {
	sixteenths := steps(metres, lengthDimension.unit("in"), big.NewInt(16))
	zero := sixteenths.Sign() == 0
	rest := new(big.Int)
	feet, rest := sixteenths.QuoRem(sixteenths, big.NewInt(12*16), rest)
	inches, over, under := rest.Int64()/16, rest.Int64()%16, int64(16)
	for over != 0 && over%2 == 0 {
		over, under = over/2, under/2
	}
	text := feet.String() + "' " + strconv.FormatInt(inches, 10)
	if over != 0 {
		text += " " + strconv.FormatInt(over, 10) + "/" + strconv.FormatInt(under, 10)
	}
	if metres < 0 && !zero {
		text = "-" + text
	}
	return text + `"`
}
