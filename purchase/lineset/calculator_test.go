package lineset_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"pgregory.net/rapid"
)

// calculator works a printed formula out as a reader with a pocket calculator does: numbers, + − × / and brackets. Words and
// units between them are passed over.
type calculator struct {
	tokens []string
	at     int
	nudged int // the number, counted from 0, that is off by half its last place; none: −1
	seen   int
	slips  bool // the formula did not read as one
}

var calculated = regexp.MustCompile(`\d+(?:\.\d+)?|[+−×/()]`)

func (c *calculator) next() string {
	if c.at < len(c.tokens) {
		return c.tokens[c.at]
	}
	return ""
}

func (c *calculator) sum() float64 {
	x := c.product()
	for c.next() == "+" || c.next() == "−" {
		op := c.next()
		c.at++
		if y := c.product(); op == "+" {
			x += y
		} else {
			x -= y
		}
	}
	return x
}

func (c *calculator) product() float64 {
	x := c.one()
	for c.next() == "×" || c.next() == "/" {
		op := c.next()
		c.at++
		if y := c.one(); op == "×" {
			x *= y
		} else {
			x /= y
		}
	}
	return x
}

func (c *calculator) one() float64 {
	token := c.next()
	c.at++
	switch token {
	case "−":
		return -c.one()
	case "(":
		x := c.sum()
		c.slips = c.slips || c.next() != ")"
		c.at++
		return x
	}
	x, err := strconv.ParseFloat(token, 64)
	c.slips = c.slips || err != nil
	if c.seen == c.nudged {
		x += lastPlace(token) / 2
	}
	c.seen++
	return x
}

// lastPlace is what the last digit of a number stands for; a whole number is a count, and exact.
func lastPlace(number string) float64 {
	_, decimals, found := strings.Cut(number, ".")
	if !found {
		return 0
	}
	return math.Pow(10, -float64(len(decimals)))
}

// calculate gives a formula's value, and how far it may be off since its numbers were rounded to be printed.
func calculate(t rapid.TB, formula string) (value, off float64) {
	t.Helper()
	of := func(nudged int) float64 {
		c := &calculator{tokens: calculated.FindAllString(formula, -1), nudged: nudged}
		x := c.sum()
		if c.slips || c.at != len(c.tokens) {
			t.Fatalf("no formula: %s", formula)
		}
		return x
	}
	value = of(-1)
	for i := range calculated.FindAllString(formula, -1) {
		off += math.Abs(of(i) - value)
	}
	return value, off
}
