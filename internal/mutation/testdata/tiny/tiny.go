// Package tiny is small enough to know the fate of each of its mutants.
package tiny

import "errors"

var errNegative = errors.New("negative")

const doubles = 2

// Twice doubles what is not negative.
func Twice(n int) (int, error) {
	if n < 0 {
		return 0, errNegative
	}
	return doubles * n, nil
}

// Larger gives the larger of two numbers.
func Larger[T int | float64](a, b T, _ ...string) T {
	if a > b {
		return a
	}
	return b
}

// Sum adds numbers up.
func Sum(numbers ...int) (sum int) {
	for _, n := range numbers {
		sum += n
	}
	return sum
}

// Unseen is asked by no test.
func Unseen(n int) int { return n + 1 }
