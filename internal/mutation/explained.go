package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strings"
)

// explanation says why one change to one line of a function is none that a test could see. It is tied to the text of the line,
// for numbers of lines do not stay.
type explanation struct {
	file, function, line, change string
	at                           int  // its line in the list
	killed, survived             bool // those that it covers: a line may have the same change at two places
}

type explanations []*explanation

// readExplanations reads the list, of which each entry is
//
//	internal/beam/bend.go bender.walk: if d < 0 {
//		d < 0 → d <= 0
//		because: at nought there is nothing to do either way
//
// with as many changes, and of as many lines, as have the same reason; a blank line ends it. A change that can be made at two places of
// the line is explained at both. Entries of packages other than the one named are passed over. A list that is not there is an empty one.
func readExplanations(name, rel string) (explanations, error) {
	text, err := os.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var out explanations
	var head explanation
	var open explanations // changes that wait for their reason
	for i, line := range strings.Split(string(text), "\n") {
		inner, isInner := strings.CutPrefix(line, "\t")
		reason, isReason := strings.CutPrefix(inner, "because: ")
		bad := func(want string) error { return fmt.Errorf("%s:%d: %q: should be %s", name, i+1, line, want) }
		switch {
		case strings.TrimSpace(line) == "":
			if len(open) > 0 {
				return nil, bad("the reason of the changes above it")
			}
			head = explanation{}
		case strings.HasPrefix(line, "#"):
		case !isInner:
			place, of, ok := strings.Cut(line, ": ")
			file, function, ok2 := strings.Cut(place, " ")
			if !ok || !ok2 {
				return nil, bad("a file, a function, a colon and the source line")
			}
			head = explanation{file: file, function: function, line: of}
		case isReason:
			if len(open) == 0 || strings.TrimSpace(reason) == "" {
				return nil, bad("the reason of the changes above it")
			}
			for _, e := range open {
				if path.Dir(e.file) == rel {
					out = append(out, e)
				}
			}
			open = nil
		default:
			if head.file == "" || !strings.Contains(inner, " → ") {
				return nil, bad("old → new")
			}
			e := head
			e.change, e.at = inner, i+1
			open = append(open, &e)
		}
	}
	if len(open) > 0 {
		return nil, fmt.Errorf("%s: the last changes have no reason", name)
	}
	return out, nil
}

// covers tells whether an explanation is of this mutant.
func (e *explanation) covers(m mutant) bool {
	return e.file == m.dir+"/"+m.file.name && e.function == functionName(m.within) && e.line == m.line && e.change == m.change
}

func (list explanations) find(m mutant) *explanation {
	for _, e := range list {
		if e.covers(m) {
			return e
		}
	}
	return nil
}
