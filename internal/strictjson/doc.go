// Package strictjson decodes JSON written by people into plain structs and
// reports every fault in it together.
//
// The standard decoder is made for programs that talk to programs: it stops at
// the first fault, names no path, matches the names of fields in any case, lets
// the last of two equal keys win, and passes over names that it does not know.
// In a description of things that hang over heads each of these hides a slip of
// the pen. [Decode] refuses them all, and says for each where it stands, to
// which named thing it belongs, what was found and what would be right:
//
//	sets[3].hang[0].mass ("border" of "Second electric"): ...
//
// The lexing is left to the tokens of encoding/json; only the walk over them is
// ours. What Decode accepts, encoding/json accepts with the same result, except
// that Decode passes over a byte order mark at the head of the text.
//
// # Targets
//
// A target is built from structs (fields named as encoding/json names them,
// embedded structs included), slices, maps with text for keys, pointers, strings,
// booleans, integers, floats, and any type whose pointer implements
// [encoding.TextUnmarshaler], which stands as text in quotes. A struct's own
// UnmarshalJSON is not called, because no path would come out of it: it may
// therefore itself call Decode.
//
// # Faults
//
// Every fault is a [units.FieldError]. The kind is units.ErrUnknown for an
// unknown field, ErrDuplicate for one given twice, ErrWrongType for a value of
// another type (null and a bare number in place of a quantity included),
// ErrOutOfRange for a number or a depth that does not fit, ErrMissing for an
// empty text, a [SyntaxError] for text that is not JSON, or the error of
// UnmarshalText. A long list of faults is cut after the first fifty, and the
// rest is counted.
package strictjson
