package text

import (
	"strings"
	"unicode/utf8"

	"ribwright/layout/report"
)

// letters counts what a terminal shows as letters: runes.
func letters(s string) int { return utf8.RuneCountInString(s) }

// plain is words as one line that a terminal does not obey, with single spaces.
func plain(s string) string { return strings.Join(strings.Fields(report.Clean(s)), " ") }

// wrap breaks words into lines of at most wide letters, at least 1, each as full as
// it can be. A longer word is broken anywhere and begins its own line. No words give
// no lines.
func wrap(s string, wide int) []string {
	wide = max(wide, 1)
	var lines []string
	line := ""
	for _, word := range strings.Fields(report.Clean(s)) {
		if line != "" && letters(line)+1+letters(word) <= wide {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		r := []rune(word)
		for ; len(r) > wide; r = r[wide:] {
			lines = append(lines, string(r[:wide]))
		}
		line = string(r)
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
