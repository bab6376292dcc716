package treescan

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/steelyard/internal/verification"
)

// The tree that the tests stand in, read once.
var realTree = sync.OnceValues(func() (*tree, error) {
	root, err := filepath.Abs("../..")
	if err != nil {
		return nil, err
	}
	return readTree(root)
})

// scans are run over the whole tree, each as a test of its own.
var scans = []struct {
	name string
	run  func(*tree) []finding
}{
	{"imports", scanImports},
	{"signature", scanSignatures},
	{"quantity", scanQuantities},
	{"comment", scanComments},
	{"layout", scanLayout},
	{"state", scanState},
	{"word", scanWords},
	{"source", sourceScan(verification.Sources())},
}

func TestTree(t *testing.T) {
	tr, err := realTree()
	if err != nil {
		t.Fatal(err)
	}
	if len(tr.packages) < 3 || len(tr.texts) < 10 {
		t.Fatalf("found %d packages in %d files: the tree was not read", len(tr.packages), len(tr.texts))
	}
	t.Run("compiles", func(t *testing.T) {
		// The scans go as far as they can see; a package that does not compile
		// hides things from them, and that must not pass in silence.
		for _, p := range tr.packages {
			for _, f := range p.broken {
				t.Errorf("%s is not scanned whole, because it does not compile: %v", p.rel, f)
			}
		}
	})
	for _, s := range scans {
		t.Run(s.name, func(t *testing.T) {
			for _, f := range s.run(tr) {
				t.Error(f)
			}
		})
	}
}

// snippet is a small tree with the mark /*BAD*/ at the head of each line that a
// scan should report.
type snippet struct {
	name   string
	reason string
	files  map[string]string
}

const bad = "/*BAD*/"

// runSnippets proves that a scan reports the marked lines and no others.
func runSnippets(t *testing.T, scan func(*tree) []finding, snippets []snippet) {
	t.Helper()
	names, bites := map[string]bool{}, false
	for _, s := range snippets {
		if names[s.name] || s.reason == "" {
			t.Errorf("snippet %q: needs a name of its own and a reason", s.name)
		}
		names[s.name] = true
		t.Run(s.name, func(t *testing.T) {
			sources := map[string]string{"units/quantity.go": snippetUnits}
			var want []string
			for name, text := range s.files {
				sources[name] = text
				for i, line := range strings.Split(text, "\n") {
					if strings.HasPrefix(strings.TrimSpace(line), bad) {
						want = append(want, fmt.Sprintf("%s:%d", name, i+1))
					}
				}
			}
			tr := newTree(sources, stubs{})
			for _, p := range tr.packages {
				for _, f := range p.broken {
					t.Errorf("the snippet does not compile: %v", f)
				}
			}
			var got, told []string
			for _, f := range scan(tr) {
				if f.file == "units/quantity.go" {
					continue // the stand-in is not under test
				}
				got = append(got, fmt.Sprintf("%s:%d", f.file, f.line))
				told = append(told, f.String())
			}
			slices.Sort(want)
			slices.Sort(got)
			if got = slices.Compact(got); !slices.Equal(got, want) {
				t.Errorf("reported %v, should be %v\n%s", got, want, strings.Join(told, "\n"))
			}
			bites = bites || len(want) > 0
		})
	}
	if !bites {
		t.Error("no snippet shows that the scan bites")
	}
}

// The snippets stand on a small copy of units. The scans must know the real
// quantities for what they are, too.
func TestScansKnowTheRealUnits(t *testing.T) {
	tr, err := realTree()
	if err != nil {
		t.Fatal(err)
	}
	sources := map[string]string{"load/bad.go": `// Package load is a snippet.
package load

import "example.com/steelyard/units"

// Bad is refused four times, and its float once.
func Bad(l units.Length, m units.Mass) float64 {
	_ = l * units.Foot
	_ = l / units.Foot
	_ = units.Mass(l)
	l = 3
	return units.Ratio(m, 12.5*units.Pound)
}
`}
	for _, p := range tr.packages {
		if room(p.rel) == "units" || isInternal(p.rel) {
			for _, f := range p.files {
				sources[f.name] = f.text
			}
		}
	}
	small := newTree(sources, outside)
	for _, p := range small.packages {
		for _, f := range p.broken {
			t.Errorf("the snippet does not compile: %v", f)
		}
	}
	var got []int
	for _, f := range slices.Concat(scanQuantities(small), scanSignaturesBut(small, nil)) {
		if f.file == "load/bad.go" {
			got = append(got, f.line)
		}
	}
	if want := []int{8, 9, 10, 11, 7}; !slices.Equal(got, want) {
		t.Errorf("reported lines %v, should be %v", got, want)
	}
}
