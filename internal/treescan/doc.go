// Package treescan holds nothing but tests, which read the source of this module
// and report what the compiler lets pass and this house does not.
//
// The rooms are stacked (units below, load, purchase and arbor on it and beside
// one another, purchase/lineset above them, examples on top), and quantities are
// defined floats, so that products, quotients and conversions between them
// compile though they mean nothing. Each scan stands in a file of its own,
// with the reason for each rule and each exception, and with a test on small
// snippets which proves that it bites:
//
//   - imports: which package may import which
//   - signature: no bare float where a quantity belongs
//   - quantity: no product, quotient or conversion of quantities without a name
//   - comment: every exported symbol says what it is
//   - layout: names and lengths of files
//   - state: no panics, no init, no package variables that change, no input or
//     output, no goroutines, value receivers
//   - word: what must not stand in the text
//   - source: what a comment names as its source stands in the table of sources
//
// The packages are read with go/parser and checked with go/types, from the
// standard library alone.
package treescan
