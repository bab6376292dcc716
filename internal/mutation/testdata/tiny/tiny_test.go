package tiny

import (
	"errors"
	"testing"
)

func TestTwice(t *testing.T) {
	if got, err := Twice(3); got != 6 || err != nil {
		t.Error(got, err)
	}
	if _, err := Twice(-3); !errors.Is(err, errNegative) {
		t.Error(err)
	}
}

func TestLarger(t *testing.T) {
	if Larger(2, 1) != 2 || Larger(1.0, 2, "ignored") != 2 {
		t.Error(Larger(2, 1), Larger(1.0, 2))
	}
}

func TestSum(t *testing.T) {
	Sum(1, 2) // nothing is asked of it
}
