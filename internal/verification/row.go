package verification

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
)

// Attribute is the name under which a test records its rows, one [Record] as a line of JSON each.
const Attribute = "verification"

// prefix is what the tests are called that hold rows.
const prefix = "TestVerify"

// Row is one figure from outside that a test compares with ours. All but Place and Unit must be given.
type Row struct {
	Key    string  // of this row alone, as a path: "beam/two spans/pull 1"
	Source string  // a key of the table of sources
	Place  string  // table, page, example; empty where the source is one figure or one formula
	What   string  // what is compared, in words
	Unit   string  // of the figures; empty for a pure number
	Theirs float64 // as the source prints it
	Tol    float64 // how far ours may be from theirs; 0 for not at all
	Why    string  // why it may be so far and no further
}

// Record is a row as a test records it. Numbers are texts, so that one that is none can be told of.
type Record struct {
	Row

	Ours string // in all its digits
	Fail bool   // ours is further from theirs than it may be, or the row is not filled in
}

// Test is what a row needs of a *testing.T.
type Test interface {
	Helper()
	Name() string
	Attr(key, value string)
	Errorf(format string, args ...any)
}

// Of makes one row of a family, which shares source, place and reason: its key and its description go on with the name.
func (r Row) Of(name, unit string, theirs, tol float64) Row {
	r.Key, r.What = r.Key+"/"+name, r.What+", "+name
	r.Unit, r.Theirs, r.Tol = unit, theirs, tol
	return r
}

// Because gives the row a reason of its own.
func (r Row) Because(why string) Row {
	r.Why = why
	return r
}

// At gives the row a place of its own.
func (r Row) At(place string) Row {
	r.Place = place
	return r
}

// From gives the row a source and a place of its own.
func (r Row) From(source, place string) Row {
	r.Source, r.Place = source, place
	return r
}

// Check fails the test where ours is further from theirs than the row allows, or the row is not filled in, and records the
// row either way.
func (r Row) Check(t Test, ours float64) {
	t.Helper()
	fails := false
	for _, fault := range r.faults(t.Name()) {
		t.Errorf("row %q: %s", r.Key, fault)
		fails = true
	}
	if !(math.Abs(ours-r.Theirs) <= r.Tol) {
		t.Errorf("%s: %v, want %v ± %v %s (%s%s; %s)", r.Key, ours, r.Theirs, r.Tol, r.Unit, r.Source, at(r.Place), r.Why)
		fails = true
	}
	line, err := json.Marshal(Record{r, strconv.FormatFloat(ours, 'g', -1, 64), fails})
	if err != nil {
		t.Errorf("row %q cannot be recorded: %v", r.Key, err)
		return
	}
	t.Attr(Attribute, string(line))
}

func at(place string) string {
	if place == "" {
		return ""
	}
	return ", " + place
}

// faults lists what is missing or wrong in a row, in a test of the given name.
func (r Row) faults(test string) (faults []string) {
	if !strings.HasPrefix(test, prefix) {
		faults = append(faults, "rows stand in tests called "+prefix+" and something, not in "+test)
	}
	for _, text := range []struct{ name, value string }{
		{"Key", r.Key}, {"Source", r.Source}, {"What", r.What}, {"Why", r.Why},
	} {
		if strings.TrimSpace(text.value) == "" {
			faults = append(faults, text.name+" is empty")
		}
	}
	if _, known := Lookup(r.Source); !known && r.Source != "" {
		faults = append(faults, strconv.Quote(r.Source)+" is no key of the table of sources")
	}
	if !(math.Abs(r.Theirs) <= math.MaxFloat64) {
		faults = append(faults, "Theirs is not finite")
	}
	if !(r.Tol >= 0 && r.Tol <= math.MaxFloat64) {
		faults = append(faults, "Tol must be 0 or more, and finite")
	}
	return faults
}
