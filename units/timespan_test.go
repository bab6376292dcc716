package units_test

import (
	"errors"
	"math"
	"math/big"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/steelyard/units"
)

func TestTimeSpanOf(t *testing.T) {
	for _, row := range []struct {
		name   string
		d      time.Duration
		want   float64
		reason string
	}{
		{"nothing", 0, 0, "zero"},
		{"second and a half", 1500 * time.Millisecond, 1.5, "seconds"},
		{"backward", -time.Minute, -60, "the sign stays"},
		{"nanosecond", 1, 1e-9, "the smallest"},
		{"longest", math.MaxInt64, 9223372036.854775807, "292 years"},
		{"longest backward", math.MinInt64, -9223372036.854775808, "which has no positive twin"},
		// Rounded to a float64 of nanoseconds first, this one would come out one step off.
		{"rounded once", 9007215092788507, 9007215.092788507, "beyond 2^53 ns"},
		{"rounded once backward", -9007215092788507, -9007215.092788507, "the same below"},
	} {
		if got := units.TimeSpanOf(row.d).In(units.Second); got != row.want {
			t.Errorf("%s: got %v, want %v: %s", row.name, got, row.want, row.reason)
		}
	}
}

func TestTimeSpanDuration(t *testing.T) {
	for _, row := range []struct {
		name   string
		t      units.TimeSpan
		want   time.Duration
		kind   error
		reason string
	}{
		{"second and a half", 1.5 * units.Second, 1500 * time.Millisecond, nil, "plain"},
		{"backward", -0.25 * units.Minute, -15 * time.Second, nil, "the sign stays"},
		{"under half a nanosecond", 0.4e-9, 0, nil, "to the nearest"},
		{"over half a nanosecond", 0.6e-9, 1, nil, "to the nearest"},
		{"not cut short", 0.3 * units.Second, 300 * time.Millisecond, nil, "0.3 as a float64 is a little less"},
		{"a century", 36525 * 24 * units.Hour, 36525 * 24 * time.Hour, nil, "within the range"},
		{"too long", 9223372037, 0, units.ErrOutOfRange, "a fifth of a second past the range"},
		{"too long backward", -9223372037, 0, units.ErrOutOfRange, "the same below"},
		{"far too long", 1e300, 0, units.ErrOutOfRange, "no wrapping around"},
		{"no number", units.TimeSpan(math.NaN()), 0, units.ErrNotFinite, "no time"},
		{"for ever", units.TimeSpan(math.Inf(1)), 0, units.ErrNotFinite, "no time"},
	} {
		t.Run(row.name, func(t *testing.T) {
			got, err := row.t.Duration()
			var field *units.FieldError
			if got != row.want || !errors.Is(err, row.kind) || (err != nil) != errors.As(err, &field) {
				t.Errorf("got %v, %v; want %v, %v: %s", got, err, row.want, row.kind, row.reason)
			}
		})
	}
}

// The longest float64 time that fits, and the next one, which does not.
func TestTimeSpanDurationEdge(t *testing.T) {
	const edge = 1 << 63 // nanoseconds
	last := units.TimeSpan(math.Nextafter(edge/1e9, 0))
	got, err := last.Duration()
	if err != nil || got <= 0 || time.Duration(math.MaxInt64)-got > 3*time.Microsecond {
		t.Errorf("%v gives %d, %v", last, got, err)
	}
	if got, err := (-last).Duration(); err != nil || got >= 0 {
		t.Errorf("%v gives %d, %v", -last, got, err)
	}
	next := units.TimeSpan(math.Nextafter(float64(last), math.Inf(1)))
	if got, err := next.Duration(); !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("%v gives %d, %v", next, got, err)
	}
}

// To a float64 the exact quotient is rounded once; and up to 50 days the way there
// and back changes nothing.
func TestPropTimeSpan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := time.Duration(rapid.Int64().Draw(t, "d"))
		want, _ := big.NewRat(int64(d), 1e9).Float64()
		if got := units.TimeSpanOf(d).In(units.Second); got != want {
			t.Fatalf("%d is %v, want %v", d, got, want)
		}
		d = time.Duration(rapid.Int64Range(-int64(50*24*time.Hour), int64(50*24*time.Hour)).Draw(t, "short"))
		if back, err := units.TimeSpanOf(d).Duration(); err != nil || back != d {
			t.Fatalf("%d comes back as %d, %v", d, back, err)
		}
	})
}
