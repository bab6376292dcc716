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

// lineNames are the names of what a lift line may have of its own.
type lineNames struct{ lift, batten, loft, dead, beam string }

// namesOf gives those of a line, counted from 0.
func namesOf(line int) *lineNames {
	if line < len(knownNames) {
		return &knownNames[line]
	}
	names := newNames(line)
	return &names
}

// knownNames are those of as many lines as most battens have, which need not be put together anew for each set.
var knownNames = [...]lineNames{
	{liftName + "1", battenName + "1", loftName + "1", deadName + "1", beamName + "1"},
	{liftName + "2", battenName + "2", loftName + "2", deadName + "2", beamName + "2"},
	{liftName + "3", battenName + "3", loftName + "3", deadName + "3", beamName + "3"},
	{liftName + "4", battenName + "4", loftName + "4", deadName + "4", beamName + "4"},
	{liftName + "5", battenName + "5", loftName + "5", deadName + "5", beamName + "5"},
	{liftName + "6", battenName + "6", loftName + "6", deadName + "6", beamName + "6"},
	{liftName + "7", battenName + "7", loftName + "7", deadName + "7", beamName + "7"},
	{liftName + "8", battenName + "8", loftName + "8", deadName + "8", beamName + "8"},
	{liftName + "9", battenName + "9", loftName + "9", deadName + "9", beamName + "9"},
	{liftName + "10", battenName + "10", loftName + "10", deadName + "10", beamName + "10"},
	{liftName + "11", battenName + "11", loftName + "11", deadName + "11", beamName + "11"},
	{liftName + "12", battenName + "12", loftName + "12", deadName + "12", beamName + "12"},
}

func newNames(line int) lineNames {
	number := strconv.Itoa(line + 1)
	return lineNames{
		lift: liftName + number, batten: battenName + number, loft: loftName + number, dead: deadName + number, beam: beamName + number,
	}
}
