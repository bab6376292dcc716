package lesson_test

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/steelyard/examples/lesson"
	"example.com/steelyard/examples/lesson/lessontest"
	"example.com/steelyard/internal/svg"
)

// tiny is a lesson that says what it was given.
func tiny() lesson.Lesson {
	name := ""
	return lesson.Lesson{
		Name: "tiny", About: "says how heavy a set is.", Draws: true,
		Flags: func(f *flag.FlagSet) { f.StringVar(&name, "set", "4 first electric", "the `set`") },
		Teach: func(p *lesson.Page) error {
			set, err := p.Set(name)
			if err != nil {
				return err
			}
			if name == "9 empty" {
				return errors.New("one\ntwo\nthree")
			}
			p.Say("%s carries %s.", name, p.Units.Format(set.Hung()))
			p.Gap()
			p.Table([]string{"what", "how much"}, [][]string{{"a long name", "1"}, {"b\x1b", "12345678901", "and one column too many"}, {"short"}})
			pic := lesson.Picture(600, 100, "tiny", "a line")
			pic.Line(svg.Point{X: 10, Y: 10}, svg.Point{X: 90, Y: 10}, svg.Pen{})
			p.Draw(pic)
			return nil
		},
	}
}

func TestGolden(t *testing.T) { lessontest.Golden(t, tiny()) }

func TestAnswers(t *testing.T) {
	lessontest.Answers(t, tiny(),
		lessontest.Wrong{Args: []string{"-set", "moon"}, Says: `want one of "1 house curtain", "2 first border"`},
		lessontest.Wrong{Args: []string{"-set", "9 empty"}, Says: "one; and 2 more, which go run ./examples/house -file lists"})
}

func TestRunWritesThePicture(t *testing.T) {
	file := filepath.Join(t.TempDir(), "p.svg")
	var out, errs bytes.Buffer
	if status := tiny().Run([]string{"-picture", file}, strings.NewReader(""), &out, &errs); status != 0 || errs.Len() > 0 {
		t.Fatalf("status %d: %s", status, errs.String())
	}
	if !strings.Contains(out.String(), "picture: "+file) || !strings.HasPrefix(out.String(), "4 first electric carries 420 lb.") {
		t.Error(out.String())
	}
	kept, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	out.Reset()
	if status := tiny().Run([]string{"-picture", "-"}, strings.NewReader(""), &out, &errs); status != 0 || out.String() != string(kept) {
		t.Errorf("status %d; on standard output it is not the same picture: %s", status, out.String())
	}
}

// A house from standard input is that which is taught.
func TestHouseOfTheReader(t *testing.T) {
	page, err := tiny().Lay([]string{"-file", "../quillmoor/house.json", "-set", "11 moon"}, strings.NewReader(""))
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(page.Text(), "11 moon carries 92 lb.") {
		t.Error(page.Text())
	}
}

// A rigging answers to its name only where it is of the purchase asked for; who errs is told the names that are.
func TestRigging(t *testing.T) {
	page, err := tiny().Lay(nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if r, err := page.Rigging("single", "single, under the duct"); err != nil || len(r.Loft) != 5 {
		t.Errorf("%d loft blocks of their own, %v", len(r.Loft), err)
	}
	for _, c := range []struct{ flag, name, want string }{
		{"single", "moon", `-single "moon": want a rigging of single purchase, one of "single", "single, under the duct"`},
		{"double", "single", `-double "single": want a rigging of double purchase, one of "double", "double, lines measured"`},
		{"triple", "double", `-triple "double": want a house with a rigging of triple purchase, and this one has none`},
	} {
		if _, err := page.Rigging(c.flag, c.name); err == nil || err.Error() != c.want {
			t.Errorf("got  %v\nwant %s", err, c.want)
		}
	}
}
