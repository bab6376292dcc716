package verification_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/internal/verification"
)

// fake is a test that takes note of what is asked of it.
type fake struct {
	name    string
	errors  []string
	records []verification.Record
}

func (*fake) Helper()        {}
func (f *fake) Name() string { return f.name }

func (f *fake) Errorf(format string, args ...any) {
	f.errors = append(f.errors, fmt.Sprintf(format, args...))
}

func (f *fake) Attr(key, value string) {
	var r verification.Record
	if key != verification.Attribute || strings.Contains(value, "\n") || json.Unmarshal([]byte(value), &r) != nil {
		f.errors = append(f.errors, "recorded "+key+" "+value)
	}
	f.records = append(f.records, r)
}

func row() verification.Row {
	return verification.Row{
		Key: "half a turn", Source: "sheave multiplier table", Place: "row of 0°", What: "load over pull", Theirs: 2, Tol: 0.25, Why: "a quarter, exact in binary",
	}
}

func TestRowChecks(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*verification.Row)
		ours   float64
		fault  string // part of the only complaint; empty for none
	}{
		{"agrees", nil, 2, ""},
		{"just within", nil, 2.25, ""},
		{"just beyond", nil, math.Nextafter(2.25, 3), "want 2 ± 0.25"},
		{"below", nil, 1.5, "want 2 ± 0.25"},
		{"no number", nil, math.NaN(), "NaN"},
		{"no end", nil, math.Inf(1), "+Inf"},
		{"exact", func(r *verification.Row) { r.Tol = 0 }, 2, ""},
		{"not exact", func(r *verification.Row) { r.Tol = 0 }, math.Nextafter(2, 3), "± 0"},
		{"no key", func(r *verification.Row) { r.Key = "" }, 2, "Key is empty"},
		{"no description", func(r *verification.Row) { r.What = " " }, 2, "What is empty"},
		{"no reason", func(r *verification.Row) { r.Why = "" }, 2, "Why is empty"},
		{"no source", func(r *verification.Row) { r.Source = "" }, 2, "Source is empty"},
		{"hearsay", func(r *verification.Row) { r.Source = "hearsay" }, 2, `"hearsay" is no key`},
		{"part of a key", func(r *verification.Row) { r.Source = "sheave" }, 2, `"sheave" is no key`},
		{"negative tolerance", func(r *verification.Row) { r.Tol = -1 }, 2, "Tol must be"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, r := &fake{name: "TestVerifySheaves"}, row()
			if c.change != nil {
				c.change(&r)
			}
			r.Check(f, c.ours)
			if len(f.records) != 1 || f.records[0].Fail != (c.fault != "") || f.records[0].Row != r {
				t.Errorf("recorded %+v", f.records)
			}
			if c.fault == "" && len(f.errors) > 0 || c.fault != "" && !strings.Contains(strings.Join(f.errors, "\n"), c.fault) {
				t.Errorf("complaints %q, want %q", f.errors, c.fault)
			}
		})
	}
}

// The command runs the tests called TestVerify alone, and a row elsewhere would be missing from it.
func TestRowsStandInTheirTests(t *testing.T) {
	f := &fake{name: "TestSheaves/half"}
	row().Check(f, 2)
	if len(f.errors) != 1 || !strings.Contains(f.errors[0], "TestVerify") {
		t.Errorf("complaints %q", f.errors)
	}
}

func TestOf(t *testing.T) {
	got := row().Of("pull", "lb", 3, 1).Because("of it").At("p. 1")
	want := verification.Row{Key: "half a turn/pull", Source: row().Source, Place: "p. 1", What: "load over pull, pull", Unit: "lb", Theirs: 3, Tol: 1, Why: "of it"}
	if got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if got := row().From("equilibrium", ""); got.Source != "equilibrium" || got.Place != "" || got.Key != row().Key {
		t.Errorf("%+v", got)
	}
}

// Keys are found, differ, and say what stands behind them; none begins with another in such a way that a comment could mean either.
func TestSources(t *testing.T) {
	for i, s := range verification.Sources() {
		if s.Key == "" || s.Title == "" || strings.TrimSpace(s.Key) != s.Key || strings.ContainsAny(s.Key, ";\n|") || strings.HasPrefix(s.Standing.String(), "Standing") {
			t.Errorf("%+v", s)
		}
		if got, ok := verification.Lookup(s.Key); !ok || got != s {
			t.Errorf("%q stands twice, or is not found: %+v", s.Key, got)
		}
		if key, ok := verification.Resolve(s.Key + ", p. 1"); !ok || key != s.Key {
			t.Errorf("%q resolves to %q", s.Key, key)
		}
		if memory := strings.Contains(s.Key+s.Where, "memory") || strings.Contains(s.Where, "remembered"); memory != (s.Standing == verification.FromMemory) {
			t.Errorf("source %d, %q: whether it is from memory must show in its standing", i, s.Key)
		}
	}
	list := verification.Sources()
	list[0].Key = "changed"
	if verification.Sources()[0].Key == "changed" {
		t.Error("the table is not the package's own")
	}
}

func TestResolve(t *testing.T) {
	for text, want := range map[string]string{
		"NIST SP 811 (2008), B.9":          "NIST SP 811",
		"NIST SP 811 from memory, B.9":     "NIST SP 811 from memory",
		"NIST SP 8110":                     "",
		"nist SP 811":                      "",
		"equilibrium":                      "equilibrium",
		"equilibriums":                     "",
		"the NIST SP 811":                  "",
		"":                                 "",
		"Structural Analysis, Example D.3": "Structural Analysis",
	} {
		if got, ok := verification.Resolve(text); got != want || ok != (want != "") {
			t.Errorf("%q resolves to %q, %v; want %q", text, got, ok, want)
		}
	}
}

func TestCitations(t *testing.T) {
	list := verification.Citations("A pull. Source: UCUM,\nits file; equilibrium (a; b); hearsay.\n\nSource: NPTEL\nExpected: 12\nSource: NPTEL; UCUM")
	want := []verification.Citation{
		"UCUM, its file; equilibrium (a; b); hearsay.", "NPTEL", "NPTEL; UCUM",
	}
	if !slices.Equal(list, want) {
		t.Fatalf("%+v, want %+v", list, want)
	}
	parts, keys := list[0].Unresolved()
	if !slices.Equal(parts, []string{"hearsay."}) || !slices.Equal(keys, []string{"UCUM", "equilibrium"}) {
		t.Errorf("%q unresolved, %q found", parts, keys)
	}
	if got := verification.Citations("A resource: none"); got != nil {
		t.Errorf("%+v", got)
	}
}
