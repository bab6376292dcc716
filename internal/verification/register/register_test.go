package main

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"example.com/steelyard/internal/verification"
)

// line writes what go test -json prints for one row.
func attr(t *testing.T, room, key, ours string, fail bool) string {
	t.Helper()
	value, err := json.Marshal(verification.Record{Row: verification.Row{
		Key: key, Source: "NPTEL", Place: "Example 5.22", What: "a | b", Unit: "kN", Theirs: 1. / 3, Tol: 0.005, Why: "half the last digit",
	}, Ours: ours, Fail: fail})
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(event{Action: "attr", Package: module + "/" + room, Test: "TestVerifyA", Key: verification.Attribute, Value: string(value)})
	if err != nil {
		t.Fatal(err)
	}
	return string(text) + "\n"
}

func TestCollect(t *testing.T) {
	r, err := collect(strings.NewReader(attr(t, "units", "10 parts", "0.33334", false) + attr(t, "units", "2 parts", "1e-13", false) +
		`{"Action":"attr","Test":"TestVerifyA","Key":"another","Value":"x"}` + "\n" + attr(t, "load", "z", "1", false)))
	if err != nil {
		t.Fatal(err)
	}
	var keys []string
	for _, row := range r.records {
		keys = append(keys, row.room+" "+row.Key)
	}
	if want := []string{"load z", "units 2 parts", "units 10 parts"}; !slices.Equal(keys, want) {
		t.Errorf("%q, want %q", keys, want)
	}
	if faults := r.faults(); faults != nil {
		t.Errorf("%v", faults)
	}
	if sum := r.sum(); !strings.HasPrefix(sum, "3 rows on ") || !strings.Contains(sum, "; published 3; second hand 0; common practice 0; from memory 0; identity 0; 0 fail.") {
		t.Error(sum)
	}
	if text := r.markdown(); !strings.Contains(text, `| 10 parts | a \| b | 0.33334 | 0.333333333 | 0.005 | kN | agrees | published | NPTEL, Example 5.22 | half the last digit |`) ||
		strings.Index(text, "## load") > strings.Index(text, "## units") {
		t.Error(text)
	}
	var plain strings.Builder
	if err := r.plain(&plain); err != nil || !strings.Contains(plain.String(), "2 parts") || !strings.HasSuffix(plain.String(), "0 fail.\n") {
		t.Errorf("%v\n%s", err, plain.String())
	}
}

func TestFaults(t *testing.T) {
	for _, c := range []struct{ name, events, want string }{
		{"a row fails", attr(t, "units", "a", "2", true), `row "a" fails`},
		{"one key twice", attr(t, "units", "a", "0.33", false) + attr(t, "load", "a", "0.33", false), `two rows have the key "a"`},
		{"no row", "", "no row"},
		{
			"a test fails", attr(t, "units", "a", "0.33", false) + `{"Action":"output","Package":"p","Test":"T","Output":"why\n"}{"Action":"fail","Package":"p","Test":"T"}`,
			"p T fails:\nwhy",
		},
		{
			"a package that does not build", attr(t, "units", "a", "0.33", false) + `{"Action":"build-output","ImportPath":"p","Output":"undefined"}{"Action":"build-fail","ImportPath":"p"}`,
			"p fails:\nundefined",
		},
	} {
		r, err := collect(strings.NewReader(c.events))
		if err != nil {
			t.Fatal(err)
		}
		if got := r.faults(); len(got) != 1 || !strings.Contains(got[0].Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, got, c.want)
		}
	}
	for _, text := range []string{"PASS", `{"Action":"attr","Key":"verification","Value":"x"}`} {
		if _, err := collect(strings.NewReader(text)); err == nil {
			t.Errorf("%s is taken for a row", text)
		}
	}
}

func TestFigures(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{rounded("0.01367187500000003"), "0.01367188"},
		{rounded("0.01367187499999997"), "0.01367188"},
		{rounded("-3e-15"), "0"},
		{rounded("27679.904710200003"), "27679.9"},
		{rounded("6894.757293168361"), "6894.757"},
		{rounded("NaN"), "NaN"},
		{rounded("+Inf"), "+Inf"},
		{figure(4.4482216152605), "4.4482216152605"},
		{figure(11. / 28), "0.392857143"},
		{tolerance(0), "exact"},
		{tolerance(5e-4 + 4e-16), "0.0005"},
	} {
		if c.got != c.want {
			t.Errorf("%s, want %s", c.got, c.want)
		}
	}
}
