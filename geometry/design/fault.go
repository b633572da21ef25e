package design

import (
	"strings"

	"ribwright/geometry/wording"
)

func joinKey(parts []string) string {
	name := ""
	for _, p := range parts {
		name = joined(name, spelled(p))
	}
	return name
}

func lineText(data []byte, line int) string {
	lines := strings.SplitN(string(data), "\n", line+1)
	if line < 1 || line > len(lines) {
		return ""
	}
	return strings.TrimSpace(lines[line-1])
}

// keyIn returns the known key that a line of the table being read begins with,
// "" when there is none: the line may be anything, and where a list was left
// open on a line above, the key on this one is not to blame.
func (s *survey) keyIn(line, text string) string {
	open := strings.Contains(text, "array") || strings.Contains(text, "inline table")
	if open && !strings.ContainsAny(line, "[{") {
		return ""
	}
	word := strings.TrimSpace(line)
	if i := strings.IndexAny(word, "=: \t\"'"); i >= 0 {
		word = word[:i]
	}
	if at := s.table.child(word); at.typ != nil {
		return at.name
	}
	return ""
}

// inQuotes is how a length is written, for the commonest slips.
const inQuotes = `text, lengths and angles stand in quotes, as "850 mm"; a length with an inch mark in single quotes, as '33 1/2"'`

// syntaxTable has the TOML library's words and what to do about it. The first
// row whose words are found counts.
func syntaxTable() [][2]string {
	return [][2]string{
		{"nested", "brackets stand in brackets too deep for a design"},
		{"newline but got U+000D", "a stray carriage return stands here; save the file with ordinary line ends"},
		{"expected newline", "something is left over after the value; " + inQuotes},
		{"must be quoted", "the value has letters outside quotes; " + inQuotes},
		{"end of input", "nothing stands after the = sign; give a value"},
		{"U+000A at start of value", "nothing stands after the = sign; give a value"},
		{"U+000D at start of value", "nothing stands after the = sign; give a value"},
		{"at start of value", "the value begins with something that is neither text nor number; " + inQuotes},
		{"cannot have new lines", "the quotes are not closed on this line; close them with the same mark"},
		{"unterminated", "the quotes are not closed on this line; close them with the same mark"},
		{"not terminated", "the triple quotes are never closed; close them with the same three marks"},
		{"expected '=' after key", `an = sign must follow the key, as beam = "850 mm"`},
		{"to close", "the brackets are not closed; a table begins with [ribs] or [[thwart]]"},
		{"escape", `in double quotes a \ begins a special letter; write \\ for a plain one, or use single quotes`},
		{`after \`, `in double quotes a \ begins a special letter; write \\ for a plain one, or use single quotes`},
		{"UTF-8", "a letter here is not UTF-8; save the file as UTF-8 text"},
		{"control character", "an invisible control character stands here; delete it"},
		{"carriage return", "a stray carriage return stands here; save the file with ordinary line ends"},
		{"at start of key", "a line begins with a key, with a table in brackets, or with # for a comment"},
		{"array", "the list is not closed, here or above, or a comma is missing; write it as [0.3, 0.6]"},
		{"expected value but got", "the list has a comma too many; write it as [0.3, 0.6]"},
		{"inline table", "the braces are not closed, here or above, or a comma is missing; better begin a table with [ ] on its own line"},
	}
}

// syntaxWords replaces the library's words on a line that is no TOML by a
// builder's, and shows the line.
func syntaxWords(text, line string) string {
	text = strings.TrimPrefix(text, "toml: ")
	words := "cannot be read: " + text
	for _, row := range syntaxTable() {
		if strings.Contains(text, row[0]) {
			words = row[1]
			break
		}
	}
	if strings.ContainsAny(line, "\u201c\u201d\u2018\u2019") && strings.Contains(text, "at start of value") {
		words = `curly quotes are read only inside straight ones; write "850 mm"`
	}
	return words + "; the line reads: " + wording.Clip(line, 60)
}

// valueWords gives what a value's own reader said, and replaces what only the
// library can have said.
func valueWords(text string) string {
	text = strings.TrimPrefix(text, "toml: ")
	switch {
	case strings.HasSuffix(text, "64-bit signed integer"):
		return "the number is far too large"
	case strings.HasPrefix(text, "key "), strings.HasPrefix(text, "table "):
		return "is given twice, once as a table and once as a key; keep one"
	}
	return text
}
