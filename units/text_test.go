package units_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/steelyard/units"
)

func TestString(t *testing.T) {
	for _, row := range []struct {
		name   string
		value  units.Value
		want   string
		reason string
	}{
		{"length", units.Length(7.4803), "7.4803 m", "as written"},
		{"area", 2 * units.SquareMetre, "2 m²", "whole numbers have no point"},
		{"mass", units.Pound, "0.45359237 kg", "shortest digits, not 17"},
		{"force", units.PoundForce, "4.4482216152605 N", "shortest digits"},
		{"acceleration", units.StandardGravity, "9.80665 m/s²", "symbol"},
		{"moment", -units.KilonewtonMetre, "-1000 N·m", "an ordinary minus sign"},
		{"stress", 200 * units.Gigapascal, "200000000000 Pa", "no exponent below 1e21"},
		{"mass per length", 0.5 * units.KilogramPerMetre, "0.5 kg/m", "symbol"},
		{"force per length", 440 * units.NewtonPerMetre, "440 N/m", "symbol"},
		{"mass per area", 0.509 * units.KilogramPerSquareMetre, "0.509 kg/m²", "symbol"},
		{"density", units.KilogramPerCubicMetre, "1 kg/m³", "symbol"},
		{"second moment", units.InchToTheFourth, "4.162314256e-07 m⁴", "an exponent below 1e-6"},
		{"section modulus", units.CubicInch, "0.000016387064 m³", "none above"},
		{"small", units.Length(5e-6), "0.000005 m", "written out down to 1e-6"},
		{"zero", units.Length(0), "0 m", "zero has its unit"},
		{"negative zero", units.Length(math.Copysign(0, -1)), "-0 m", "the bits come back"},
		{"huge", units.Length(1e21), "1e+21 m", "no long rows of zeros"},
		{"not yet huge", units.Length(1e20), "100000000000000000000 m", "written out below 1e21"},
		{"not a number", units.Length(math.NaN()), "NaN m", "shown, for the message that refuses it"},
		{"infinity", units.Force(math.Inf(1)), "+Inf N", "shown, for the message that refuses it"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.value.String(); got != row.want {
				t.Errorf("got %q, want %q: %s", got, row.want, row.reason)
			}
		})
	}
}

// Every quantity through every text method.
func TestMarshal(t *testing.T) {
	for _, k := range kinds {
		t.Run(k.name, func(t *testing.T) {
			v := k.of(0.1)
			text, err := k.marshal(v)
			if err != nil || string(text) != v.String() {
				t.Errorf("MarshalText: %q, %v; want %q", text, err, v)
			}
			text, err = k.append(v, []byte("kept "))
			if err != nil || string(text) != "kept "+v.String() {
				t.Errorf("AppendText: %q, %v", text, err)
			}
			back, err := k.unmarshal(k.of(9), v.String())
			if err != nil || back != v {
				t.Errorf("UnmarshalText: %v, %v; want %v", back, err, v)
			}
		})
	}
}

func TestMarshalRefusesNotFinite(t *testing.T) {
	for _, k := range kinds {
		for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			var field *units.FieldError
			text, err := k.marshal(k.of(f))
			if text != nil || !errors.Is(err, units.ErrNotFinite) || !errors.As(err, &field) {
				t.Errorf("%s %v: MarshalText gives %q, %v", k.name, f, text, err)
			}
			text, err = k.append(k.of(f), []byte("kept"))
			if string(text) != "kept" || !errors.Is(err, units.ErrNotFinite) {
				t.Errorf("%s %v: AppendText gives %q, %v", k.name, f, text, err)
			}
		}
	}
	_, err := units.Length(math.NaN()).MarshalText()
	if want := "NaN m is not a finite number; want a finite length"; err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func TestUnmarshalFailureKeepsReceiver(t *testing.T) {
	for _, k := range kinds {
		for _, text := range []string{"", "5", "NaN m", "5 parsec", "x", "5 m 5 m"} {
			q, err := k.unmarshal(k.of(42), text)
			if err == nil {
				t.Errorf("%s: %q was taken for %v", k.name, text, q)
			}
			if number(q) != 42 {
				t.Errorf("%s: %q changed the receiver to %v", k.name, text, q)
			}
		}
	}
	system := units.Metric
	if err := system.UnmarshalText([]byte("imperial")); !errors.Is(err, units.ErrUnknown) || system != units.Metric {
		t.Errorf("system %v, %v", system, err)
	}
}

func TestJSON(t *testing.T) {
	type item struct {
		Mass   units.Mass                   `json:"mass"`
		At     units.Length                 `json:"at,omitzero"`
		System units.System                 `json:"system,omitzero"`
		Marks  map[units.Length]units.Force `json:"marks,omitempty"`
	}
	var got item
	if err := json.Unmarshal([]byte(`{"mass":"12.5 lb","at":"24'-6\"","system":"us","marks":{"1 m":"1 kN"}}`), &got); err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(got)
	if want := `{"mass":"5.669904625 kg","at":"7.4676 m","system":"us","marks":{"1 m":"1000 N"}}`; err != nil || string(text) != want {
		t.Errorf("got %s, %v; want %s", text, err, want)
	}
	text, err = json.Marshal(item{})
	if want := `{"mass":"0 kg"}`; err != nil || string(text) != want {
		t.Errorf("zero: got %s, %v; want %s", text, err, want)
	}
	var parse *units.ParseError
	err = json.Unmarshal([]byte(`{"mass":"12.5"}`), &got)
	if !errors.As(err, &parse) || !errors.Is(err, units.ErrNoUnit) {
		t.Errorf("a bare number in quotes: %v", err)
	}
	if err := json.Unmarshal([]byte(`{"mass":12.5}`), &got); err == nil {
		t.Error("a bare number was taken")
	}
}

func TestSystemText(t *testing.T) {
	for _, s := range []units.System{units.US, units.Metric} {
		text, err := s.MarshalText()
		if err != nil || string(text) != s.String() {
			t.Errorf("%v: %q, %v", s, text, err)
		}
		var back units.System
		if err := back.UnmarshalText(text); err != nil || back != s {
			t.Errorf("%q: %v, %v", text, back, err)
		}
	}
	for _, s := range []units.System{0, 3} {
		if text, err := s.MarshalText(); text != nil || !errors.Is(err, units.ErrUnknown) || !strings.Contains(err.Error(), s.String()) {
			t.Errorf("%v: %q, %v", s, text, err)
		}
	}
}
