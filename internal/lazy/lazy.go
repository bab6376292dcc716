// Package lazy keeps what a value that does not change comes to, from when it is first asked: who never asks does not pay, and
// who asks again gets the same. The public packages keep no other state.
package lazy

import "sync"

// Value is worked out once. The zero value is ready; it must not be copied after it was first asked.
type Value[T any] struct {
	once sync.Once
	v    T
}

// Get gives the value, which find works out when it is first asked. Find must always find the same: of several that ask at
// once, one works it out for all.
func (v *Value[T]) Get(find func() T) T {
	v.once.Do(func() { v.v = find() })
	return v.v
}
