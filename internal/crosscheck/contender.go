package crosscheck

// Contender is one of several ways to the same figure, ready to be timed against the others.
type Contender struct {
	By string
	// Once works it out for the i-th time; inputs change with i. What it returns is more than zero, and NaN where it failed.
	Once func(i int) float64
}
