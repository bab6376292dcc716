// Package svg writes small pictures: lines, arrows, areas and words, in black, grey and a few colours that stay apart in
// grey. A picture has a title and a description for those who do not see it, and can tell where its own words run into
// one another, into a line or off the edge, so that a test can.
//
// Lengths are in the picture's own units, a pixel on a screen, from the upper left corner: X to the right, Y down.
// Numbers are written to a hundredth, so that the same picture is the same text everywhere.
package svg
