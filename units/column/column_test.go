package column_test

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/steelyard/units"
	"example.com/steelyard/units/column"
)

var (
	_ sql.Scanner   = (*column.Of[units.Mass])(nil)
	_ driver.Valuer = column.Of[units.Mass]{}
)

func TestScan(t *testing.T) {
	for _, row := range []struct {
		name   string
		stored any
		want   units.Mass
		kind   error
		says   string
		reason string
	}{
		{"text", "12.5 kg", 12.5, nil, "", "as stored"},
		{"bytes", []byte("1 lb"), units.Pound, nil, "", "some drivers give these"},
		{"number", 12.5, 0, units.ErrNoUnit, "12.5 has no unit; want text with a unit", "500 what?"},
		{"whole number", int64(30), 0, units.ErrNoUnit, "30 has no unit", "500 what?"},
		{"text of a number", "12.5", 0, units.ErrNoUnit, `"12.5" has no unit; want a mass`, "500 what?"},
		{"NULL", nil, 0, units.ErrMissing, "is missing", "no value"},
		{"another quantity", "12.5 N", 0, units.ErrWrongQuantity, "is a force", "a column of the wrong kind"},
		{"boolean", true, 0, units.ErrWrongType, "a value of type bool is of the wrong type", "no quantity"},
		{"time", time.Time{}, 0, units.ErrWrongType, "time.Time", "no quantity"},
		{"empty", "", 0, units.ErrSyntax, "is empty", "no text"},
	} {
		t.Run(row.name, func(t *testing.T) {
			c := column.Of[units.Mass]{Q: 42}
			err := c.Scan(row.stored)
			if row.kind == nil {
				if err != nil || c.Q != row.want {
					t.Errorf("got %v, %v; want %v: %s", c.Q, err, row.want, row.reason)
				}
				return
			}
			if !errors.Is(err, row.kind) || !strings.Contains(err.Error(), row.says) {
				t.Errorf("got %v; want %v with %q: %s", err, row.kind, row.says, row.reason)
			}
			if c.Q != 42 {
				t.Errorf("the receiver is %v", c.Q)
			}
		})
	}
}

func TestValue(t *testing.T) {
	got, err := column.Of[units.Length]{Q: 24.5 * units.Foot}.Value()
	if want := "7.4676 m"; err != nil || fmt.Sprintf("%T %v", got, got) != "string "+want {
		t.Errorf("got %T %v, %v; want the string %s", got, got, err, want)
	}
	for _, f := range []float64{math.NaN(), math.Inf(1)} {
		if got, err := (column.Of[units.Force]{Q: units.Force(f)}).Value(); got != nil || !errors.Is(err, units.ErrNotFinite) {
			t.Errorf("%v: got %v, %v", f, got, err)
		}
	}
}

// Through database/sql itself, with a driver that gives back what it was given. A
// quantity without its column goes in as a bare number, which is the reason for
// this package: the last row shows it, and that it is refused on the way out.
func TestDatabase(t *testing.T) {
	db := sql.OpenDB(echo{})
	defer db.Close()
	length := 0.1 * units.Inch

	var back column.Of[units.Length]
	if err := db.QueryRow("echo", column.Of[units.Length]{Q: length}).Scan(&back); err != nil || back.Q != length {
		t.Errorf("got %v, %v; want %v", back.Q, err, length)
	}

	var maybe sql.Null[column.Of[units.Length]]
	if err := db.QueryRow("echo", sql.Null[column.Of[units.Length]]{V: back, Valid: true}).Scan(&maybe); err != nil || !maybe.Valid || maybe.V != back {
		t.Errorf("a value that may be missing: %+v, %v", maybe, err)
	}
	if err := db.QueryRow("echo", sql.Null[column.Of[units.Length]]{}).Scan(&maybe); err != nil || maybe.Valid {
		t.Errorf("a value that is missing: %+v, %v", maybe, err)
	}
	if err := db.QueryRow("echo", nil).Scan(&back); !errors.Is(err, units.ErrMissing) {
		t.Errorf("NULL: %v", err)
	}
	if err := db.QueryRow("echo", length).Scan(&back); !errors.Is(err, units.ErrNoUnit) {
		t.Errorf("a quantity stored without its column: %v", err)
	}
}

// echo is a database of one row of one column: the argument of the query.
type echo struct{}

func (echo) Connect(context.Context) (driver.Conn, error)   { return echo{}, nil }
func (echo) Driver() driver.Driver                          { return nil }
func (echo) Prepare(string) (driver.Stmt, error)            { return echo{}, nil }
func (echo) Close() error                                   { return nil }
func (echo) Begin() (driver.Tx, error)                      { return nil, errors.ErrUnsupported }
func (echo) NumInput() int                                  { return 1 }
func (echo) Exec([]driver.Value) (driver.Result, error)     { return nil, errors.ErrUnsupported }
func (echo) Query(args []driver.Value) (driver.Rows, error) { return &once{value: args[0]}, nil }

type once struct {
	value driver.Value
	done  bool
}

func (*once) Columns() []string { return []string{"value"} }
func (*once) Close() error      { return nil }
func (o *once) Next(row []driver.Value) error {
	if o.done {
		return io.EOF
	}
	row[0], o.done = o.value, true
	return nil
}

func Example() {
	brick := column.Of[units.Mass]{Q: 23.5 * units.Pound}
	stored, err := brick.Value()
	fmt.Println(stored, err)

	var back column.Of[units.Mass]
	fmt.Println(back.Scan(stored), units.US.Format(back.Q))
	fmt.Println(back.Scan(23.5))
	// Output:
	// 10.659420695 kg <nil>
	// <nil> 23.5 lb
	// 23.5 has no unit; want text with a unit
}
