package lineset_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// A check is one line of text: what is asked of what, the verdict, where, at which trim, and on whose word. What is not known is
// not written.
func TestCheckReads(t *testing.T) {
	for _, c := range []struct {
		check lineset.Check
		want  string
	}{
		{
			lineset.Check{
				Name: "lift line tension", Where: "line 3", Trim: 5, Demand: 1500 * units.Newton, Limit: 2000 * units.Newton,
				Margin: 500 * units.Newton, Ratio: 0.75, Verdict: lineset.Within, Basis: "the maker's rating",
			},
			"lift line tension: 1.5 kN of 2 kN, ratio 0.75, within the limit given, line 3 at trim 5 m (the maker's rating)",
		},
		{
			lineset.Check{Name: "stack height", Demand: 3 * units.Metre, Limit: 2 * units.Metre, Ratio: 1.5, Verdict: lineset.Exceeds, Basis: "as given"},
			"stack height: 3 m of 2 m, ratio 1.50, exceeds (as given)",
		},
		{
			lineset.Check{Name: "head block load", Trim: 2, Demand: 4000 * units.Newton, Limit: units.Force(0)},
			"head block load: 4 kN, no limit given at trim 2 m",
		},
		{
			lineset.Check{Name: "head block load", Trim: 1, Demand: 4000 * units.Newton, Limit: units.Force(0)},
			"head block load: 4 kN, no limit given at trim 1 m",
		},
		{lineset.Check{Name: "rope lock", Where: "outer rope", Demand: units.Force(0), Limit: units.Force(0)}, "rope lock: 0 kN, no limit given, outer rope"},
	} {
		if got := c.check.String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// What was stored of a check comes back as it was, whatever is checked; what cannot be read leaves the check as it was.
func TestCheckJSON(t *testing.T) {
	for _, dimension := range []struct{ demand, limit, margin units.Value }{
		{1500 * units.Newton, 2000 * units.Newton, 500 * units.Newton},
		{3 * units.Metre, 2 * units.Metre, -1 * units.Metre},
		{30 * units.Kilogram, 40 * units.Kilogram, 10 * units.Kilogram},
		{units.Stress(1e6), units.Stress(2e6), units.Stress(1e6)},
		{units.Moment(100), units.Moment(300), units.Moment(200)},
	} {
		for _, verdict := range []lineset.Verdict{lineset.NoLimit, lineset.Within, lineset.Exceeds} {
			want := lineset.Check{
				Name: "any", Where: "line 3", Trim: 5, Demand: dimension.demand, Limit: dimension.limit, Margin: dimension.margin,
				Ratio: 0.75, Verdict: verdict, Basis: "given in the test",
			}
			text, err := json.Marshal(want)
			if err != nil {
				t.Fatal(err)
			}
			var got lineset.Check
			if err := json.Unmarshal(text, &got); err != nil {
				t.Fatalf("%s: %v", text, err)
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%s (-want +got):\n%s", text, diff)
			}
		}
	}
	was := lineset.Check{Name: "any", Demand: units.Force(1), Verdict: lineset.Within}
	for _, text := range []string{
		`{"name":"other","verdict":"passes"}`, `{"name":"other","demand":"5 parsec"}`, `{"name":"other","limit":"5"}`,
		`{"name":"other","margin":5}`, `{"name":5}`, `{"name":`,
	} {
		got := was
		if err := json.Unmarshal([]byte(text), &got); err == nil || !cmp.Equal(got, was) {
			t.Errorf("%s was read as %v, %v", text, got, err)
		}
	}
}

// A word that is none of a choice is refused with what was written and what would be right, and leaves the choice as it was; a choice
// that there is not is told by its number and cannot be stored.
func TestWordsOfChoices(t *testing.T) {
	refused := func(err error, value, want string) {
		t.Helper()
		var fe *units.FieldError
		if !errors.As(err, &fe) || !errors.Is(err, units.ErrUnknown) || fe.Value != value || !strings.Contains(fe.Want, want) {
			t.Errorf("%v; want %s refused, and %s to be right", err, value, want)
		}
	}
	for verdict, word := range map[lineset.Verdict]string{
		lineset.NoLimit: "no limit given", lineset.Within: "within the limit given", lineset.Exceeds: "exceeds", 9: "no limit given",
	} {
		if text, err := verdict.MarshalText(); err != nil || string(text) != word || verdict.String() != word {
			t.Errorf("%d is %q, stored as %q, %v; want %q", verdict, verdict, text, err, word)
		}
	}
	verdict := lineset.Within
	refused(verdict.UnmarshalText([]byte("passes")), `"passes"`, `"no limit given", "within the limit given" or "exceeds"`)
	if verdict != lineset.Within {
		t.Errorf("the verdict is now %v", verdict)
	}
	for at, word := range map[lineset.BalanceAt]string{lineset.AtLow: "low", lineset.AtHigh: "high", lineset.Even: "even"} {
		var back lineset.BalanceAt
		text, err := at.MarshalText()
		if err != nil || string(text) != word || at.String() != word || back.UnmarshalText(text) != nil || back != at {
			t.Errorf("%d is %q, stored as %q, %v, read as %v; want %q", at, at, text, err, back, word)
		}
	}
	at := lineset.AtHigh
	for _, word := range []string{"middle", "", "Low", "BalanceAt(0)"} {
		refused(at.UnmarshalText([]byte(word)), `"`+word+`"`, `"low", "high" or "even"`)
	}
	if at != lineset.AtHigh {
		t.Errorf("the balance is now %v", at)
	}
	for at, word := range map[lineset.BalanceAt]string{0: "BalanceAt(0)", 4: "BalanceAt(4)", 255: "BalanceAt(255)"} {
		if _, err := at.MarshalText(); at.String() != word || !errors.Is(err, units.ErrUnknown) || !strings.Contains(err.Error(), word) || !strings.Contains(err.Error(), `"low", "high" or "even"`) {
			t.Errorf("%v was stored: %v", at, err)
		}
	}
}

// The whole report of a set with every kind of check can be read back check by check, and says what it said.
func TestChecksOfAReportComeBack(t *testing.T) {
	for _, kind := range []purchase.Kind{purchase.Single, purchase.Double, purchase.Triple} {
		want := mustRig(t, two(kind)).Report()
		text, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		var back struct {
			Checks  []lineset.Check
			Exceeds bool
		}
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		for i, c := range back.Checks {
			if want := want.Checks[i]; c.Verdict != want.Verdict || c.Name != want.Name || c.Where != want.Where || reflect.TypeOf(c.Demand) != reflect.TypeOf(want.Demand) {
				t.Errorf("%v came back as %v", want, c)
			}
		}
		if len(back.Checks) != len(want.Checks) || back.Exceeds != want.Exceeds {
			t.Errorf("%d checks of %d, exceeds %v", len(back.Checks), len(want.Checks), back.Exceeds)
		}
	}
}
