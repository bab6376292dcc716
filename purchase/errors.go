package purchase

import "errors"

// The kinds of fault of a reeving, for use with errors.Is. They reach the caller
// inside a *units.FieldError that names the rope, the part or the block.
var (
	ErrNoTravel        = errors.New("does not move")
	ErrOverConstrained = errors.New("is over-constrained")
	ErrNoTurn          = errors.New("does not turn the rope")
	ErrSlack           = errors.New("would be slack") // a part whose tension comes out below zero
)
