package purchase_test

import (
	"encoding/json"
	"errors"
	"testing"

	"pgregory.net/rapid"

	"example.com/steelyard/internal/near"
	"example.com/steelyard/purchase"
	"example.com/steelyard/units"
)

func TestPropKindInverses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom([]purchase.Kind{purchase.Single, purchase.Double, purchase.Triple}).Draw(t, "kind")
		l := units.Length(rapid.Float64Range(-50, 50).Draw(t, "length"))
		m := units.Mass(rapid.Float64Range(0, 5000).Draw(t, "mass"))
		if k == purchase.Triple { // a third rounds
			if got := k.ArborTravel(k.BattenTravel(l)); !near.Rel(got.In(units.Metre), l.In(units.Metre), 1e-15) {
				t.Fatalf("travel there and back %v, want %v", got, l)
			}
			if got := k.Load(k.Counterweight(m)); !near.Rel(got.In(units.Kilogram), m.In(units.Kilogram), 1e-15) {
				t.Fatalf("load there and back %v, want %v", got, m)
			}
			return
		}
		if got := k.ArborTravel(k.BattenTravel(l)); got != l {
			t.Fatalf("travel there and back %v, want %v", got, l)
		}
		if got := k.Load(k.Counterweight(m)); got != m {
			t.Fatalf("load there and back %v, want %v", got, m)
		}
		if got := k.Imbalance(m, k.Counterweight(m)); got != 0 {
			t.Fatalf("balanced set is out of balance by %v", got)
		}
	})
}

func TestUnknownKind(t *testing.T) {
	for _, k := range []purchase.Kind{0, 4, 255} {
		if k.Ratio() != 0 || k.Counterweight(1) != 0 || k.Load(1) != 0 || k.ArborTravel(1) != 0 || k.BattenTravel(1) != 0 || k.Imbalance(1, 1) != 0 {
			t.Errorf("%v answers something other than zero", k)
		}
		if _, err := json.Marshal(k); err == nil {
			t.Errorf("%v was written as JSON", k)
		}
	}
	k := purchase.Double
	if err := k.UnmarshalText([]byte("quadruple")); !errors.Is(err, units.ErrUnknown) || k != purchase.Double {
		t.Errorf("error %v, kind now %v", err, k)
	}
}

// Every kind reads back what it writes.
func TestKindText(t *testing.T) {
	for kind, want := range map[purchase.Kind]string{purchase.Single: "single", purchase.Double: "double", purchase.Triple: "triple"} {
		text, err := kind.MarshalText()
		var back purchase.Kind
		if err != nil || string(text) != want || kind.String() != want || back.UnmarshalText(text) != nil || back != kind {
			t.Errorf("%v written as %q, %v, read back as %v; want %q", kind, text, err, back, want)
		}
	}
}

// Three pounds at the arbor answer one on the batten, in a third of its travel.
func TestTripleOneLiners(t *testing.T) {
	k := purchase.Triple
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"counterweight", k.Counterweight(500 * units.Pound).In(units.Pound), 1500},
		{"load", k.Load(1500 * units.Pound).In(units.Pound), 500},
		{"batten travel", k.BattenTravel(20 * units.Foot).In(units.Foot), 60},
		{"arbor travel", k.ArborTravel(60 * units.Foot).In(units.Foot), 20},
		{"imbalance", k.Imbalance(512*units.Pound, 1500*units.Pound).In(units.PoundForce), 12},
	} {
		if !near.Rel(c.got, c.want, 1e-12) {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestImbalanceSign(t *testing.T) {
	// 512 lb against 1000 lb in the arbor of a double set: 12 lbf too much on the batten.
	if got := purchase.Double.Imbalance(512*units.Pound, 1000*units.Pound).In(units.PoundForce); !near.Abs(got, 12, 1e-9) {
		t.Errorf("%v lbf, want 12 batten-heavy", got)
	}
	if got := purchase.Double.Imbalance(488*units.Pound, 1000*units.Pound).In(units.PoundForce); !near.Abs(got, -12, 1e-9) {
		t.Errorf("%v lbf, want 12 arbor-heavy", got)
	}
}
