// Register runs the tests that hold rows of package verification, and prints the register of outside checks as a table: what
// is compared with which source, our value, theirs, how far they may be apart and why, and the result.
//
//	go run ./internal/verification/register             # plain text, rows on long lines
//	go run ./internal/verification/register -markdown
//	go run ./internal/verification/register -update     # writes internal/verification/REGISTER.md
//
// It exits with 1 where a row or a test fails, two rows have one key, or REGISTER.md is not what it would write; with 2
// where it is called wrongly.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

const (
	module    = "example.com/steelyard"
	rows      = module + "/internal/verification"
	committed = "internal/verification/REGISTER.md"
)

func main() {
	flags := flag.NewFlagSet("register", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	markdown := flags.Bool("markdown", false, "print the table in Markdown, as it is committed")
	update := flags.Bool("update", false, "write "+committed+" instead of comparing with it")
	err := flags.Parse(os.Args[1:])
	switch {
	case errors.Is(err, flag.ErrHelp):
		fmt.Println("usage: go run ./internal/verification/register [-markdown] [-update]")
		flags.SetOutput(os.Stdout)
		flags.PrintDefaults()
		return
	case err == nil && flags.NArg() > 0:
		err = fmt.Errorf("unexpected argument %q", flags.Arg(0))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "register:", err)
		os.Exit(2)
	}
	if err := run(os.Stdout, *markdown, *update); err != nil {
		fmt.Fprintln(os.Stderr, "register:", err)
		os.Exit(1)
	}
}

// run prints the register, and gives everything that is wrong with it as one error.
func run(out io.Writer, markdown, update bool) error {
	root, err := command("go", "list", "-m", "-f", "{{.Dir}}", module)
	if err != nil {
		return err
	}
	dir := strings.TrimSpace(root)
	packages, err := holders(dir)
	if err != nil {
		return err
	}
	test := exec.Command("go", append([]string{"test", "-json", "-count=1", "-vet=off", "-run=^TestVerify"}, packages...)...)
	test.Dir = dir
	var complaints bytes.Buffer
	test.Stderr = &complaints
	events, failed := test.Output() // a test that fails is told of below
	r, err := collect(bytes.NewReader(events))
	if err != nil {
		return err
	}
	text := r.markdown()
	if markdown {
		_, err = io.WriteString(out, text)
	} else {
		err = r.plain(out)
	}
	if err != nil {
		return err
	}
	wrong := r.faults()
	if failed != nil && len(r.failed) == 0 {
		wrong = append(wrong, fmt.Errorf("go test: %w\n%s", failed, complaints.String()))
	}
	file := filepath.Join(dir, filepath.FromSlash(committed))
	if update {
		if len(wrong) == 0 {
			wrong = append(wrong, os.WriteFile(file, []byte(text), 0o644))
		}
		return errors.Join(wrong...)
	}
	old, err := os.ReadFile(file)
	if err != nil || string(old) != text {
		wrong = append(wrong, fmt.Errorf("%s is stale: go run ./internal/verification/register -update, and read the difference", committed))
	}
	return errors.Join(wrong...)
}

// holders lists the packages whose tests hold rows.
func holders(dir string) ([]string, error) {
	list := exec.Command("go", "list", "-f", "{{.ImportPath}} {{.TestImports}} {{.XTestImports}}", "./...")
	list.Dir = dir
	out, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var packages []string
	for line := range strings.Lines(string(out)) {
		name, imports, _ := strings.Cut(strings.TrimSpace(line), " ")
		within := name == rows || strings.HasPrefix(name, rows+"/") // its own tests hold no rows, but play with some
		for path := range strings.FieldsSeq(strings.NewReplacer("[", " ", "]", " ").Replace(imports)) {
			if path == rows && !within {
				packages = append(packages, name)
				break
			}
		}
	}
	if len(packages) == 0 {
		return nil, errors.New("no test imports " + rows)
	}
	return packages, nil
}

func command(name string, args ...string) (string, error) {
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		return "", fmt.Errorf("%s: %w", name, err)
	}
	return string(out), nil
}
