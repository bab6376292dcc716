package lineset_test

import (
	"encoding/json"
	"fmt"
	"io"
	"os"

	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// answer reads a house and writes what each of its sets wants, and what exceeds a limit.
func answer(w io.Writer, text []byte) error {
	var house lineset.House // or a literal, or rows of a database
	if err := json.Unmarshal(text, &house); err != nil {
		return err // every fault at once, each with the path of its field
	}
	rigged, err := house.Rig() // checks everything; nothing is computed from half a house
	if err != nil {
		return err
	}
	for set := range rigged.Sets() {
		fmt.Fprintln(w, set.Set().Name, "wants", set.Counterweight().Stack.Call())
		for _, check := range set.Checks() {
			if check.Verdict == lineset.Exceeds {
				fmt.Fprintln(w, check.Name, units.US.Format(check.Demand), "of", units.US.Format(check.Limit), check.Basis)
			}
		}
	}
	return nil
}

// From a file to what is called on the loading bridge.
func Example_house() {
	text, err := json.Marshal(house())
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := answer(os.Stdout, text); err != nil {
		fmt.Println(err)
	}
	// Output:
	// first electric wants pipe weight 3 of the 44, 1 of the 22; show weight 15 of the 44, 1 of the 22, with 2 spreader plates
	// border wants pipe weight 1 of the 22; show weight 1 of the 44, 1 of the 22, with 1 spreader plate
}
