package units

import (
	"fmt"
	"math"
	"math/big"
	"time"
)

// TimeSpan is how long something takes, in seconds. It is a span and not a point
// of time, and it is not [time.Duration], which counts whole nanoseconds:
// [TimeSpanOf] and [TimeSpan.Duration] cross between the two.
//
// Minute and Hour are exact, and whole numbers of seconds; Millisecond is the
// float64 nearest to its definition. The zero TimeSpan is no time.
//
// Source: NIST SP 811 (2008), Appendix B.9, time.
type TimeSpan float64

// Units of TimeSpan: write a value as a number of one of them, such as 3*Second.
const (
	Second      TimeSpan = 1
	Millisecond TimeSpan = 0.001
	Minute      TimeSpan = 60
	Hour        TimeSpan = 3600
)

// In gives t as a number of the given unit, as in t.In(units.Minute).
func (t TimeSpan) In(unit TimeSpan) float64 { return float64(t) / float64(unit) }

// Scale gives k times t.
func (t TimeSpan) Scale(k float64) TimeSpan { return TimeSpan(k * float64(t)) }

// TimeSpanOf gives the span of a Go duration, to the nearest float64.
func TimeSpanOf(d time.Duration) TimeSpan {
	const exact = 1 << 53 // a float64 holds every whole number up to here
	if -exact <= d && d <= exact {
		return TimeSpan(float64(d) / float64(time.Second))
	}
	f, _ := big.NewRat(int64(d), int64(time.Second)).Float64()
	return TimeSpan(f)
}

// Duration gives t as a Go duration, to the nearest nanosecond; so what
// [TimeSpanOf] made of up to 50 days comes back as it was. A t that is not finite,
// or beyond the 292 years that a Go duration can hold, is refused with a
// *[FieldError] of kind ErrNotFinite or ErrOutOfRange.
func (t TimeSpan) Duration() (time.Duration, error) {
	switch {
	case !finite(float64(t)):
		return 0, &FieldError{Value: t.String(), Want: "a finite time", Err: ErrNotFinite}
	case math.Abs(float64(t))*1e9 >= 1<<63:
		return 0, &FieldError{Value: t.String(), Want: "a time under 292 years", Err: ErrOutOfRange}
	}
	whole, part := math.Modf(float64(t)) // both exact
	return time.Duration(whole)*time.Second + time.Duration(math.RoundToEven(part*1e9)), nil
}

// Within reports whether t and other are at most tol apart. What is not finite is
// within no distance of anything.
func (t TimeSpan) Within(other, tol TimeSpan) bool { return near(t, other, tol) }

// String writes t in seconds with the fewest digits that [Parse] reads back as
// the same value, bit for bit.
func (t TimeSpan) String() string { return textSI(t) }

// Format writes t for fmt, never without its unit: as String under %v, %s and %q,
// and as a number of the SI unit under %f, %g, %e and the other verbs of floats.
func (t TimeSpan) Format(state fmt.State, verb rune) { format(state, verb, t) }

// AppendText appends what String writes. It refuses a value that is not finite,
// with a *[FieldError].
func (t TimeSpan) AppendText(b []byte) ([]byte, error) { return encode(b, t) }

// MarshalText writes what String writes, for JSON and the like. It refuses a
// value that is not finite, with a *[FieldError].
func (t TimeSpan) MarshalText() ([]byte, error) { return encode(nil, t) }

// UnmarshalText reads text as [Parse] does. On an error, a *[ParseError], the
// receiver keeps its value.
func (t *TimeSpan) UnmarshalText(text []byte) error { return decode(t, text) }

// UnmarshalJSON reads a JSON string as UnmarshalText reads its text, and leaves t
// alone under null. A bare number is refused: it has no unit.
func (t *TimeSpan) UnmarshalJSON(data []byte) error { return decodeJSON(t, data) }

func (t TimeSpan) si() float64           { return float64(t) }
func (t TimeSpan) dimension() *dimension { return &timeDimension }
