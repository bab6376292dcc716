package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// workbench holds what is known of a package's tests, and where the broken packages are built.
type workbench struct {
	*source
	dir          string // for what is built; nothing is written elsewhere
	checks, jobs int
	tests        []test // the quick ones first
	leftOut      []string
}

// test is one test, example or fuzz target with its seeds, run alone and with nothing broken.
type test struct {
	name   string
	took   time.Duration
	blocks []block // that it passed through
}

// block is a stretch of a file in which either everything is run or nothing.
type block struct {
	file                           string
	line, column, toLine, toColumn int
}

func (b block) holds(m mutant) bool {
	p := m.reach
	return b.file == m.file.name && (p.Line > b.line || p.Line == b.line && p.Column >= b.column) &&
		(p.Line < b.toLine || p.Line == b.toLine && p.Column <= b.toColumn)
}

// meets tells whether a test reaches a mutant. Constants and tables of the package may be met by any.
func (t test) meets(m mutant) bool {
	return m.within == nil || slices.ContainsFunc(t.blocks, func(b block) bool { return b.holds(m) })
}

func (w *workbench) reached(m mutant) bool {
	return slices.ContainsFunc(w.tests, func(t test) bool { return t.meets(m) })
}

// measure runs every test once, alone, with nothing broken.
func (w *workbench) measure() error {
	binary := filepath.Join(w.dir, "whole")
	if out, err := w.goTool("test", "-c", "-vet=off", "-cover", "-o", binary, "."); err != nil {
		return fmt.Errorf("the tests do not build: %w\n%s", err, out)
	}
	list := exec.Command(binary, "-test.list", ".")
	list.Dir = w.source.dir
	out, err := list.Output()
	if err != nil {
		return fmt.Errorf("listing the tests: %w", err)
	}
	profile := filepath.Join(w.dir, "profile")
	for name := range strings.FieldsSeq(string(out)) {
		if strings.HasPrefix(name, "Benchmark") {
			continue
		}
		start := time.Now()
		if w.start(binary, 0, []string{name}, 10*time.Minute, "-test.coverprofile="+profile) != nil {
			w.leftOut = append(w.leftOut, name)
			continue
		}
		t := test{name: name, took: time.Since(start)}
		if t.blocks, err = readProfile(profile); err != nil {
			return err
		}
		w.tests = append(w.tests, t)
	}
	slices.SortStableFunc(w.tests, func(a, b test) int { return int(a.took - b.took) })
	return nil
}

func readProfile(name string) ([]block, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	shape := regexp.MustCompile(`^(.*):(\d+)\.(\d+),(\d+)\.(\d+) \d+ ([1-9]\d*)$`)
	var out []block
	for line := range strings.Lines(string(text)) {
		if part := shape.FindStringSubmatch(strings.TrimSpace(line)); part != nil {
			b := block{file: path.Base(part[1])}
			for i, to := range []*int{&b.line, &b.column, &b.toLine, &b.toColumn} {
				if *to, err = strconv.Atoi(part[i+2]); err != nil {
					return nil, err
				}
			}
			out = append(out, b)
		}
	}
	return out, nil
}

func (w *workbench) goTool(args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Dir = w.source.dir
	out, err := cmd.CombinedOutput()
	return string(out), err
}

// chosen is the environment variable that picks a mutant at run time.
const chosen = "STEELYARD_MUTANT"

// start runs tests of a binary with one of its mutants chosen, or with none where that is 0. A mutant may ask for memory
// without end: where there is a shell, it gets so much and no more.
func (w *workbench) start(binary string, number int, names []string, limit time.Duration, more ...string) error {
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	args := append([]string{
		"-test.run=^(" + strings.Join(names, "|") + ")$", "-test.short", "-test.failfast", "-test.timeout=" + limit.String(),
	}, more...)
	if w.usesRapid {
		args = append(args, "-rapid.nofailfile", "-rapid.seed=1", "-rapid.checks="+strconv.Itoa(5*w.checks)) // of which -short runs a fifth
	}
	cmd := exec.CommandContext(ctx, binary, args...)
	if shell, err := exec.LookPath("sh"); err == nil {
		cmd = exec.CommandContext(ctx, shell, append([]string{"-c", `ulimit -v 6000000; exec "$0" "$@"`, binary}, args...)...)
	}
	cmd.Dir = w.source.dir
	cmd.Env = append(os.Environ(), chosen+"="+strconv.Itoa(number), "GOMAXPROCS=1", "GOTRACEBACK=none")
	cmd.WaitDelay = time.Second
	err := cmd.Run()
	if ctx.Err() != nil {
		return ctx.Err()
	}
	return err
}
