package units

import (
	"math/big"
	"strconv"
)

// Bounds on what is read, all checked before any number is built, so that no
// text can make Parse slow: the exact value of a short text such as 1e999999999
// is a gigabyte long. They leave room for every float64 written out in full.
const (
	maxText     = 400 // bytes
	maxDigits   = 350 // of one number
	maxExponent = 400 // of ten, either way
)

// number is an unsigned number as it is written: whole digits, a decimal point
// and more of them, an exponent of ten; or whole digits and a fraction.
type number struct {
	digits   string // whole digits and decimals in one
	decimals int    // how many of them stand behind the point
	exponent int
	over     string // of the fraction: over/under
	under    string
	next     int // where the text goes on
}

// whole reports whether n is written as whole digits and nothing else.
func (n *number) whole() bool { return n.decimals == 0 && n.exponent == 0 && n.under == "" }

// digitsAt gives the end of the run of digits that starts at i.
func digitsAt(s string, i int) int {
	for i < len(s) && '0' <= s[i] && s[i] <= '9' {
		i++
	}
	return i
}

// readNumber reads the number at the start of s. Its faults are the reason and
// the kind for a ParseError.
func readNumber(s string) (n number, reason string, kind error) {
	end := digitsAt(s, 0)
	n.digits, n.next = s[:end], end
	if end < len(s) && s[end] == '.' {
		last := digitsAt(s, end+1)
		n.decimals = last - (end + 1)
		n.digits += s[end+1 : last]
		n.next = last
	}
	if n.digits == "" {
		return n, "does not begin with a number", ErrSyntax
	}
	if n.next == end {
		n.readFraction(s)
	}
	if n.under == "" {
		if !n.readExponent(s) {
			return n, "has an exponent beyond " + strconv.Itoa(maxExponent), ErrOutOfRange
		}
	}
	if len(n.digits) > maxDigits || len(n.over) > maxDigits || len(n.under) > maxDigits {
		return n, "has more than " + strconv.Itoa(maxDigits) + " digits", ErrOutOfRange
	}
	if n.under != "" && allZero(n.under) {
		return n, "has a fraction over zero", ErrSyntax
	}
	return n, "", nil
}

// readFraction reads on behind whole digits: "/2" makes them a numerator, and
// " 1/2" or "-1/2" adds a fraction. Anything else is left alone.
func (n *number) readFraction(s string) {
	start, i := 0, n.next
	if i < len(s) && (s[i] == ' ' || s[i] == '-') {
		start = i + 1
		for s[i] == ' ' && start < len(s) && s[start] == ' ' {
			start++
		}
		i = digitsAt(s, start)
	}
	if i == start || i >= len(s) || s[i] != '/' {
		return
	}
	last := digitsAt(s, i+1)
	if last == i+1 {
		return
	}
	if start == 0 {
		n.digits = "0"
	}
	n.over, n.under, n.next = s[start:i], s[i+1:last], last
}

// readExponent reads on behind the digits where an e and a whole number follow.
// It reports whether the exponent is within bounds.
func (n *number) readExponent(s string) bool {
	i := n.next
	if i >= len(s) || s[i] != 'e' && s[i] != 'E' {
		return true
	}
	i++
	negative := i < len(s) && s[i] == '-'
	if negative || i < len(s) && s[i] == '+' {
		i++
	}
	last := digitsAt(s, i)
	if last == i {
		return true
	}
	exponent, err := strconv.Atoi(s[i:last])
	if err != nil || exponent > maxExponent {
		return false
	}
	if negative {
		exponent = -exponent
	}
	n.exponent, n.next = exponent, last
	return true
}

// rat gives the exact value.
func (n *number) rat() *big.Rat {
	value := shift(new(big.Rat).SetInt(integer(n.digits)), n.exponent-n.decimals)
	if n.under != "" {
		value.Add(value, new(big.Rat).SetFrac(integer(n.over), integer(n.under)))
	}
	return value
}

// shift gives r times 10 to the n, in place of r.
func shift(r *big.Rat, n int) *big.Rat {
	if n < 0 {
		return r.Quo(r, new(big.Rat).SetInt(powerOfTen(-n)))
	}
	return r.Mul(r, new(big.Rat).SetInt(powerOfTen(n)))
}

// integer gives the value of a run of digits.
func integer(digits string) *big.Int {
	i, _ := new(big.Int).SetString(digits, 10)
	return i
}

// powerOfTen gives 10 to the n, n ≥ 0.
func powerOfTen(n int) *big.Int {
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil)
}

func allZero(digits string) bool {
	for i := range len(digits) {
		if digits[i] != '0' {
			return false
		}
	}
	return true
}
