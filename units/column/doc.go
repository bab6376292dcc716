// Package column keeps quantities in a database, as text with their units.
//
// A quantity handed to database/sql as it is would be stored as a bare number, for
// that is what a float64 by another name is to a driver; and a bare number is read
// back as anything. [Of] stores the text that MarshalText writes, in SI, which comes
// back as the same value, bit for bit; it reads every text that [units.Parse]
// reads, and refuses a number and NULL. The column should be of a text type.
//
//	_, err := db.Exec(`insert into piece values (?, ?)`, "brick", column.Of[units.Mass]{Q: brick})
//
//	var mass column.Of[units.Mass]
//	err := db.QueryRow(`select mass from piece where name = ?`, "brick").Scan(&mass)
//
// Where a value may be missing, wrap it: sql.Null[column.Of[units.Mass]].
//
// Nothing here opens or asks a database.
package column
