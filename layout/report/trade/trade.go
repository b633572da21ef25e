// Package trade explains the trade's words, once for all who use them: a page of them is
// told as help, and the book takes from it the words that it takes for granted.
package trade

import (
	_ "embed"
	"regexp"
	"strings"
)

//go:embed words.md
var words string

// entry is words set apart with what they mean behind a colon, up to the next entry.
var entry = regexp.MustCompile(`(?:^- |\. )\*\*([^*]+)\*\*: `)

// Page is the whole page, in Markdown.
func Page() string { return words }

// Meaning returns what a word of the page means, as the page heads it ("mortise, tenon"),
// without a full stop; false for a word that the page does not explain.
func Meaning(word string) (string, bool) {
	for line := range strings.SplitSeq(strings.ReplaceAll(words, "\n  ", " "), "\n") {
		heads := entry.FindAllStringSubmatchIndex(line, -1)
		for i, h := range heads {
			if line[h[2]:h[3]] != word {
				continue
			}
			end := len(line)
			if i+1 < len(heads) {
				end = heads[i+1][0]
			}
			return strings.TrimSuffix(strings.ReplaceAll(line[h[1]:end], "*", ""), "."), true
		}
	}
	return "", false
}
