package arbor

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"testing"

	"example.com/steelyard/units"
	"pgregory.net/rapid"
)

func TestNanograms(t *testing.T) {
	tests := []struct {
		name, reason string
		mass         units.Mass
		want         int64
	}{
		{"nothing", "zero is zero", 0, 0},
		{"a nanogram", "the resolution itself", 1e-12, 1},
		{"half a nanogram", "half goes away from zero", 5e-13, 1},
		{"minus half a nanogram", "on both sides", -5e-13, -1},
		{"less than half", "0.49 ng is nothing", 4.9e-13, 0},
		{"half of one more", "the float64 is below the half, its text is not", 20.0000000000005, 20_000_000_000_001},
		{"just less than half of one more", "the next float64 below", 20.000000000000497, 20_000_000_000_000},
		{"far below", "no digit is left", 1e-300, 0},
		{"a pound", "0.45359237 kg exactly, by law", units.Pound, 453_592_370_000},
		{"23.5 lb", "10.659420695 kg exactly", 23.5 * units.Pound, 10_659_420_695_000},
		{"minus 11 lb", "-4.98951607 kg exactly", -11 * units.Pound, -4_989_516_070_000},
		{"an ounce", "28.349523125 g exactly", units.Ounce, 28_349_523_125},
		{"876543.21 kg", "not 876543209999999962: the float64 below it, multiplied out", 876_543.21, 876_543_210_000_000_000},
		{"950 t", "just below the most", 950_000, 950_000_000_000_000_000},
		{"9999999 kg", "ten times more would not be counted in 64 bits", 9_999_999, most},
		{"1000 t", "as far as it goes", 1e6, most},
		{"1234567 kg", "saturates", 1_234_567, most},
		{"infinite", "saturates", units.Mass(math.Inf(1)), most},
		{"minus infinite", "saturates", units.Mass(math.Inf(-1)), -most},
		{"not a number", "is nothing", units.Mass(math.NaN()), 0},
		{"largest", "saturates", units.Mass(math.MaxFloat64), most},
	}
	for _, tt := range tests {
		if got := nanograms(tt.mass); got != tt.want {
			t.Errorf("%s: got %d, want %d: %s", tt.name, got, tt.want, tt.reason)
		}
	}
	if got := nanometres(0.125 * units.Inch); got != 3_175_000 {
		t.Errorf("1/8 in: got %d nm, want 3175000", got)
	}
}

// Against big.Rat: the shortest decimal text, shifted and rounded half away from zero.
func TestPropLedgerEntersByText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(-1e6, 1e6).Draw(t, "mass")
		r, _ := new(big.Rat).SetString(strconv.FormatFloat(f, 'g', -1, 64))
		r.Mul(r, big.NewRat(1_000_000_000_000, 1))
		want, _ := new(big.Int).SetString(r.FloatString(0), 10) // FloatString rounds half away from zero
		if got := nanograms(units.Mass(f)); got != want.Int64() {
			t.Fatalf("%v kg: got %d ng, want %v", f, got, want)
		}
	})
}

// Half a nanogram goes away from zero as it is written, though the product may fall to the other side of it.
func TestHalvesEnterByText(t *testing.T) {
	wrong := 0
	for n := range int64(2000) {
		whole := 3_000_000_000_019*n + 7
		text := strconv.FormatInt(whole/1_000_000_000_000, 10) + "." + fmt.Sprintf("%012d", whole%1_000_000_000_000) + "5"
		f, err := strconv.ParseFloat(text, 64)
		if err != nil || strconv.FormatFloat(f, 'f', -1, 64) != text {
			continue // more digits than a float64 tells apart
		}
		if got := nanograms(units.Mass(f)); got != whole+1 || nanograms(units.Mass(-f)) != -whole-1 {
			t.Errorf("%s kg: %d ng, want %d", text, got, whole+1)
		}
		if math.Round(f*1e12) != float64(whole+1) {
			wrong++
		}
	}
	if wrong == 0 {
		t.Error("no product that falls to the other side: the test shows nothing")
	}
}

// What leaves the ledger is the float64 nearest to the exact number.
func TestPropLedgerLeavesRoundedOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Beyond 53 bits the number itself would be rounded, before the quotient is.
		n := rapid.OneOf(rapid.Int64(), rapid.Int64Range(1<<53, 1<<54)).Draw(t, "ng") >> rapid.SampledFrom([]int{0, 0, 0, 7, 20, 40}).Draw(t, "shift")
		want, _ := new(big.Rat).SetFrac(big.NewInt(n), big.NewInt(1_000_000_000_000)).Float64()
		if got := kilograms(n); float64(got) != want {
			t.Fatalf("%d ng: got %v, want %v", n, float64(got), want)
		}
		// Whatever is not larger than float64 can hold comes back.
		if n>>50 == 0 && nanograms(kilograms(n)) != n {
			t.Fatalf("%d ng does not come back", n)
		}
	})
}

// Beyond 53 bits a quotient of rounded numbers may be the next float64: on either side of nought it is the nearest that leaves.
func TestLedgerLeavesRoundedOnceOnBothSides(t *testing.T) {
	twice := 0 // rounded twice, another
	for n := int64(1 << 53); n < 1<<53+1000; n++ {
		for _, n := range [...]int64{n, -n} {
			want, _ := new(big.Rat).SetFrac(big.NewInt(n), big.NewInt(1_000_000_000_000)).Float64()
			if got := kilograms(n); float64(got) != want {
				t.Errorf("%d ng: got %v, want %v", n, float64(got), want)
			}
			if float64(n)/1e12 != want {
				twice++
			}
		}
	}
	if twice == 0 {
		t.Error("no number that is wrong when it is rounded twice: the test shows nothing")
	}
}

// A quantity written as text, as a constant or computed at run time is the same
// piece to the last nanogram, even where its float64 differs in the last bit.
func TestPropTextAndConstantAreTheSamePiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hundredths := rapid.Int64Range(1, 100_000).Draw(t, "hundredths of a pound")
		text := strconv.FormatFloat(float64(hundredths)/100, 'f', 2, 64)
		parsed, err := units.Parse[units.Mass](text + " lb")
		if err != nil {
			t.Fatal(err)
		}
		// 0.01 lb is 4 535 923 700 ng exactly.
		if got := nanograms(parsed); got != hundredths*4_535_923_700 {
			t.Fatalf("%s lb as text: %d ng, want %d", text, got, hundredths*4_535_923_700)
		}
		computed := units.Pound.Scale(float64(hundredths) / 100)
		if got := nanograms(computed); got != hundredths*4_535_923_700 {
			t.Fatalf("%s lb computed: %d ng, want %d", text, got, hundredths*4_535_923_700)
		}
	})
	for text, constant := range map[string]units.Mass{
		"23.5 lb": 23.5 * units.Pound, "11 lb": 11 * units.Pound, "5.25 lb": 5.25 * units.Pound, "8.4 kg": 8.4 * units.Kilogram, "12 oz": 12 * units.Ounce,
	} {
		parsed, err := units.Parse[units.Mass](text)
		if err != nil || nanograms(parsed) != nanograms(constant) {
			t.Errorf("%s: text %v, constant %v, %v", text, float64(parsed), float64(constant), err)
		}
	}
}
