package design

import "strings"

// nearestKey returns the known key that is spelled most like the given one, in
// its own table or in any, and says where it stands when that is not plain.
func nearestKey(key string) string {
	best, least := "", 1<<30
	for _, k := range Keys() {
		// The last word counts most: a right key in a wrong table is near.
		d := 2*distance(last(k.Name), last(key)) + distance(k.Name, key)
		if d < least {
			best, least = k.Name, d
		}
	}
	if strings.Contains(key, ".") && !strings.Contains(best, ".") && last(key) == best {
		return best + ", which stands at the top, before the first table"
	}
	return best
}

func last(key string) string { return key[strings.LastIndexByte(key, '.')+1:] }

// distance is the number of single-letter changes from a to b (Levenshtein),
// for words of at most 64 letters; the rest of a longer word is not compared.
func distance(a, b string) int {
	a, b = a[:min(len(a), 64)], b[:min(len(b), 64)]
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
