// Package diagram draws line sets as free bodies, with the symbols of a textbook: what every rope, block, dead end and body bears
// at one trim, at rest or while it is flown by hand. It works nothing out; every figure in a picture is asked of the library.
//
// Overhead lifting can kill. The pictures are for planning and teaching. Local codes, the manufacturers' ratings and a licensed
// engineer or qualified rigger on site decide.
package diagram
