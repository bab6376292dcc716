package stack

// Meet is Best by the halves alone.
func Meet(p Problem, limit int) Choice { return best(p, limit, 0) }

// MeetRefill is Refill by the halves alone.
func MeetRefill(p Problem, today []int64, within int64, limit int) Choice {
	return refill(p, today, within, limit, 0)
}
