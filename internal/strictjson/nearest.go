package strictjson

import "strings"

// maxWord bounds the words that are compared: the time taken grows with the
// product of their lengths, and no field has a longer name.
const maxWord = 40

// nearest gives the known field that a wrong name was most likely meant to be,
// if any is near: at most one slip in three letters, or one in a short word,
// capitals aside.
func nearest(word string, known layout) (string, bool) {
	if len(word) > maxWord {
		return "", false
	}
	word = strings.ToLower(word)
	best, least := "", max(1, len(word)/3)+1
	for _, f := range known.fields {
		if d := distance(word, strings.ToLower(f.name)); d < least {
			best, least = f.name, d
		}
	}
	return best, best != ""
}

// distance counts the slips between two words: a letter left out, put in,
// changed, or swapped with its neighbour (optimal string alignment).
func distance(a, b string) int {
	// Three rows of the table of distances between the heads of a and of b.
	two, one, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range one {
		one[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			changed := one[j-1]
			if a[i-1] != b[j-1] {
				changed++
			}
			row[j] = min(changed, one[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], two[j-2]+1)
			}
		}
		two, one, row = one, row, two
	}
	return one[len(b)]
}
