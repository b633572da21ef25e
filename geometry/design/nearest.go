package design

import (
	"strings"

	"ribwright/geometry/wording"
)

// nearestKey returns the known key that is spelled most like the given one, in
// its own table or in any, and says where it stands when that is not plain.
func nearestKey(key string) string {
	best, least := "", 1<<30
	for _, k := range Keys() {
		// The last word counts most: a right key in a wrong table is near.
		d := 2*wording.Edits(last(k.Name), last(key)) + wording.Edits(k.Name, key)
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
