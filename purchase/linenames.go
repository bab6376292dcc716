package purchase

import "strconv"

// What a lift line and the stops of its own are called, before the number of the line.
const (
	liftName   = "lift line "
	battenName = "batten at line "
	loftName   = "loft block "
	deadName   = "dead end "
	beamName   = "beam block "
)

// lineNames are the names of what every lift line has of its own, line by line. They are cut out of one text: a layout
// of seven lines has 28 of them.
type lineNames struct{ text string }

func (l Layout) lineNames() lineNames {
	of := [...]string{battenName, loftName, "", liftName}
	switch l.Kind {
	case Double:
		of[2] = deadName
	case Triple:
		of[2] = beamName
	}
	text := make([]byte, 0, 1024) // more make more
	for i := range l.Loft {
		for _, name := range of {
			if name != "" {
				text = append(text, name...)
				text = strconv.AppendInt(text, int64(i+1), 10)
			}
		}
	}
	return lineNames{string(text)}
}

// next cuts the next name off, which is that of a line counted from 0.
func (n *lineNames) next(name string, line int) string {
	size := len(name) + digits(line+1)
	first := n.text[:size]
	n.text = n.text[size:]
	return first
}

// digits is how many a number above zero is written with.
func digits(n int) int {
	count := 1
	for ; n >= 10; n /= 10 {
		count++
	}
	return count
}
