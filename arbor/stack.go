package arbor

import (
	"iter"
	"math"
	"strconv"
	"strings"

	"example.com/steelyard/units"
)

// Row is so many pieces of one kind, one upon the other.
type Row struct {
	Name      string       `json:"name"`      // what the pieces are called
	Count     int          `json:"count"`     // how many
	Mass      units.Mass   `json:"mass"`      // of each
	Thickness units.Length `json:"thickness"` // of each
}

// Total is the mass of all pieces of the row, rounded once from the exact product.
func (r Row) Total() units.Mass {
	if ng := nanograms(r.Mass); fits(r.Count, ng) {
		return kilograms(int64(r.Count) * ng)
	}
	return r.Mass.Scale(float64(r.Count))
}

// Height is the thickness of all pieces of the row, rounded once from the exact product.
func (r Row) Height() units.Length {
	if nm := nanometres(r.Thickness); fits(r.Count, nm) {
		return metres(int64(r.Count) * nm)
	}
	return r.Thickness.Scale(float64(r.Count))
}

// fits reports that the ledger holds each as it is, and that n·each stays in int64. A stack from Fill always does.
func fits(n int, each int64) bool {
	return n == 0 || max(each, -each) < min(most, math.MaxInt64/max(int64(n), -int64(n)))
}

// Stack is what to put in an arbor: pipe weight at the bottom, show weight on
// it. Both lists run from the bottom up, the heaviest pieces lowest and, of
// equally heavy ones, the thicker. Sums are exact before they are rounded once.
type Stack struct {
	Wanted    Wanted       `json:"wanted"`
	Pipe      []Row        `json:"pipe,omitempty"`     // pipe weight: stays for the bare batten
	Show      []Row        `json:"show,omitempty"`     // show weight: for what hangs
	Pieces    int          `json:"pieces"`             // of pipe and show weight, spreader plates left out
	Plates    int          `json:"plates"`             // spreader plates
	PipeMass  units.Mass   `json:"pipe_mass"`          // of the pipe weight
	ShowMass  units.Mass   `json:"show_mass"`          // of the show weight, spreader plates left out
	PlateMass units.Mass   `json:"plate_mass"`         // of the spreader plates
	LockMass  units.Mass   `json:"lock_mass,omitzero"` // of the lock plate
	Mass      units.Mass   `json:"mass"`               // of all of them: what the capacity is held against
	Height    units.Length `json:"height"`             // of all of them: what the room is held against
	Error     units.Mass   `json:"error"`              // Mass less what is wanted: positive is too heavy (arbor-heavy), negative too light (batten-heavy)
	Proven    bool         `json:"proven"`             // no other stack is better; false where the search was cut short
	Gap       units.Mass   `json:"gap,omitzero"`       // where it was: no stack on this pipe weight has an error smaller than |Error| less Gap
}

// Referred is the Error as it is felt at the batten: divided by the ratio of the
// purchase, batten travel for each unit of arbor travel (2 in double purchase).
// Positive is still too heavy in the arbor. A ratio that is not a number from
// 1/1000 to 1000 is a *units.FieldError.
func (s Stack) Referred(ratio float64) (units.Mass, error) {
	const most = 1000
	if !(ratio >= 1.0/most && ratio <= most) {
		return 0, &units.FieldError{
			Field: "ratio", Value: strconv.FormatFloat(ratio, 'g', -1, 64),
			Want: "the batten's travel for each unit of the arbor's, from 1/1000 to 1000", Err: units.ErrOutOfRange,
		}
	}
	return s.Error.Scale(1 / ratio), nil
}

// Call is the stack as it is read out on the loading bridge, from the bottom up:
// "27 of the 23.5, 1 of the 11". Pipe weight, which stays, is called by itself
// in front; spreader plates come last. An empty stack is "nothing".
func (s Stack) Call() string {
	var parts []string
	if len(s.Pipe) > 0 {
		parts = append(parts, "pipe weight "+callRows(s.Pipe))
	}
	if len(s.Show) > 0 {
		show := callRows(s.Show)
		if len(s.Pipe) > 0 {
			show = "show weight " + show
		}
		switch {
		case s.Plates == 1:
			show += ", with 1 spreader plate"
		case s.Plates > 1:
			show += ", with " + strconv.Itoa(s.Plates) + " spreader plates"
		}
		parts = append(parts, show)
	}
	if len(parts) == 0 {
		return "nothing"
	}
	return strings.Join(parts, "; ")
}

func callRows(rows []Row) string {
	var b strings.Builder
	for i, r := range rows {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(strconv.Itoa(r.Count))
		b.WriteString(" of the ")
		b.WriteString(r.Name)
	}
	return b.String()
}

// Used is how many pieces of the kind called name the stack takes from the
// stock, as pipe and as show weight together.
func (s Stack) Used(name string) int {
	n := 0
	for _, rows := range [...][]Row{s.Pipe, s.Show} {
		for _, r := range rows {
			if r.Name == name {
				n += r.Count
			}
		}
	}
	return n
}

// Kinds walks over the kinds of piece in the stack, each name once with the
// number used as pipe and show weight together: what a house takes off its stock.
func (s Stack) Kinds() iter.Seq2[string, int] {
	return func(yield func(string, int) bool) {
		for i, r := range s.Pipe {
			if !standsIn(s.Pipe[:i], r.Name) && !yield(r.Name, s.Used(r.Name)) {
				return
			}
		}
		for i, r := range s.Show {
			if !standsIn(s.Pipe, r.Name) && !standsIn(s.Show[:i], r.Name) && !yield(r.Name, s.Used(r.Name)) {
				return
			}
		}
	}
}

func standsIn(rows []Row, name string) bool {
	for _, r := range rows {
		if r.Name == name {
			return true
		}
	}
	return false
}
