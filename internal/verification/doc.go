// Package verification is the register of what this library is checked against from outside: every figure of a
// publication, a table of the trade or a closed form that a test compares with ours, where it stands, and how far the two
// may be apart and why.
//
// There is no list to keep. A check in a test is one [Row], which compares and is recorded at once:
//
//	func TestVerifySheaves(t *testing.T) {
//		verification.Row{
//			Key: "sheave/120 degrees", Source: "sheave multiplier table", Place: "row of 120 degrees",
//			What: "load on a sheave over the pull", Theirs: 1.00, Tol: 1e-12, Why: "2·cos 60° is 1 exactly",
//		}.Check(t, ours)
//	}
//
// Where many figures stand in one place, [Row.Of] makes a row of each from what they share. A row names its source by a
// key of the table in sources.go, which says what the publication is and how far it may be trusted: published, second
// hand, common practice, from memory, or an identity that needs no publication. The "Source:" of a comment begins with
// such a key too, and [Citation.Unresolved] tells of those that do not; a scan in internal/treescan asks it of the whole
// tree, and reports a source of the table that nothing uses.
//
// Rows stand in tests called TestVerify and something, and in no others, so that the command that prints the register
// can run those alone:
//
//	go run ./internal/verification/register            # a table, and whether REGISTER.md is up to date
//	go run ./internal/verification/register -update    # writes REGISTER.md
//
// A figure that our own code gave is no row, nor is one that cannot fail.
package verification
