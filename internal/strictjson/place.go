package strictjson

import (
	"strconv"
	"strings"
)

// holder is an object or a list that the walk is inside of.
type holder struct {
	at   spot
	name string // its "name" member, as soon as that has been read
}

// spot is the place of one value: in which holder, under which key or index.
type spot struct {
	in    *holder // nil at the root
	key   string
	index int
	entry bool // of a list: index counts, not key
	whole bool // the holder itself
}

// path writes the place as "sets[3].hang[0].mass", and the root as nothing.
func (s spot) path() string {
	if s.whole {
		return s.in.at.path()
	}
	if s.in == nil {
		return ""
	}
	outer := s.in.at.path()
	if s.entry {
		return outer + "[" + strconv.Itoa(s.index) + "]"
	}
	return Member(outer, s.key)
}

// Member writes the path of an object's member as Decode does, for checks that
// come after it: riggings.single, but riggings["over the dock"].
func Member(outer, key string) string {
	switch {
	case !plain(key):
		return outer + "[" + strconv.Quote(shorten(key)) + "]"
	case outer == "":
		return key
	}
	return outer + "." + key
}

// Name writes the name of a thing as Decode does, for checks that come after it:
// quoted, and shortened where it is long. No name gives nothing.
func Name(name string) string {
	if name == "" {
		return ""
	}
	return strconv.Quote(shorten(name))
}

// Line writes a name within a line of words: without quotes where nothing in it could be misread, else as Name does.
func Line(name string) string {
	if quoted := Name(name); quoted != `"`+name+`"` {
		return quoted
	}
	return name
}

// plain reports whether a key can stand in a path without quotes.
func plain(key string) bool {
	if key == "" || len(key) > maxShown {
		return false
	}
	for _, r := range key {
		if r != '_' && (r < '0' || r > '9') && (r < 'A' || r > 'Z') && (r < 'a' || r > 'z') {
			return false
		}
	}
	return true
}

// of names the things that the place belongs to, innermost first: `"border" of
// "Second electric"`. The root is left out, because everything belongs to it.
func (s spot) of() string {
	var names []string
	for h := s.in; h != nil && h.at.in != nil; h = h.at.in {
		if h.name != "" {
			names = append(names, strconv.Quote(shorten(h.name)))
		}
	}
	return strings.Join(names, " of ")
}
