package treescan

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What the README shows as code stands, line for line, in an example that is compiled and run.
func TestReadmeCodeIsInExamples(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	blocks := codeBlocks(string(readme))
	if len(blocks) == 0 {
		t.Fatal("the README shows no Go code")
	}
	var examples []string
	err = filepath.WalkDir("../..", func(path string, entry fs.DirEntry, err error) error {
		name := filepath.Base(path)
		if err != nil || !strings.HasPrefix(name, "example") || !strings.HasSuffix(name, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		examples = append(examples, unindented(string(text)))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, block := range blocks {
		found := false
		for _, e := range examples {
			found = found || strings.Contains(e, unindented(block))
		}
		if !found {
			t.Errorf("no example holds this code of the README:\n%s", block)
		}
	}
}

// codeBlocks gives the Go code of a text in Markdown.
func codeBlocks(text string) (blocks []string) {
	for {
		_, rest, ok := strings.Cut(text, "\n```go\n")
		if !ok {
			return blocks
		}
		block, after, _ := strings.Cut(rest, "```")
		blocks, text = append(blocks, block), after
	}
}

// unindented is code with each line on the left.
func unindented(code string) string {
	lines := strings.Split(code, "\n")
	for i, line := range lines {
		lines[i] = strings.TrimLeft(line, "\t ")
	}
	return strings.Join(lines, "\n")
}
