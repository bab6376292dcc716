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
		k := rapid.SampledFrom([]purchase.Kind{purchase.Single, purchase.Double}).Draw(t, "kind")
		l := units.Length(rapid.Float64Range(-50, 50).Draw(t, "length"))
		m := units.Mass(rapid.Float64Range(0, 5000).Draw(t, "mass"))
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
	for _, k := range []purchase.Kind{0, 3, 255} {
		if k.Ratio() != 0 || k.Counterweight(1) != 0 || k.Load(1) != 0 || k.ArborTravel(1) != 0 || k.BattenTravel(1) != 0 || k.Imbalance(1, 1) != 0 {
			t.Errorf("%v answers something other than zero", k)
		}
		if _, err := json.Marshal(k); err == nil {
			t.Errorf("%v was written as JSON", k)
		}
	}
	k := purchase.Double
	if err := k.UnmarshalText([]byte("triple")); !errors.Is(err, units.ErrUnknown) || k != purchase.Double {
		t.Errorf("error %v, kind now %v", err, k)
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
