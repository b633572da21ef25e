package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ribwright/cmd/ribwright/keep"
)

// listName is the file in a folder that says which of its files the program made.
const listName = "ribwright.txt"

// list is what a folder's list says.
type list struct {
	read  bool   // there is one
	whole bool   // all of its files were written
	key   string // of what the files were made from
	made  []made
	below []made   // files of a course in its folders, which have lists of their own
	notes []string // what is told besides
}

// made is a file that the program made, with the SHA-256 sum of its bytes.
type made struct {
	sum, name string
	from      string // the design that it was made from, as it lies from the folder; "" where that is not told
}

func (l list) names() []string {
	var out []string
	for _, m := range l.made {
		out = append(out, m.name)
	}
	return out
}

// The lines of a list besides its files.
const (
	listHead  = "# Files here that ribwright made, with their SHA-256 sums. It replaces or removes\n# these alone, and only while they are as it made them. Keep this list with them.\n"
	fromMark  = "# from "
	keyMark   = "# made from "
	wholeMark = "# complete"
)

// text is the list as programs that check sums read one.
func (l list) text() string {
	var b strings.Builder
	b.WriteString(listHead)
	if l.key != "" {
		b.WriteString(keyMark + l.key + "\n")
	}
	if l.whole {
		b.WriteString(wholeMark + "\n")
	}
	for _, note := range l.notes {
		b.WriteString("# " + flat(note) + "\n")
	}
	all := slices.Clone(l.made)
	slices.SortStableFunc(all, func(a, b made) int { return strings.Compare(a.from, b.from) })
	from := ""
	for _, m := range append(all, l.below...) {
		if m.from != from && m.from != "" {
			from = m.from
			b.WriteString(fromMark + from + "\n")
		}
		fmt.Fprintf(&b, "%s  %s\n", m.sum, m.name)
	}
	return b.String()
}

// readList reads a list; an empty one where there is none, or a file that is something
// else.
func readList(path string) list {
	if info, err := os.Lstat(path); err != nil || !info.Mode().IsRegular() {
		return list{}
	}
	data, err := keep.ReadFile(path)
	rest, ours := strings.CutPrefix(string(data), listHead)
	if err != nil || !ours {
		return list{}
	}
	l := list{read: true}
	from := ""
	for line := range strings.Lines(rest) {
		line = strings.TrimRight(line, "\r\n")
		if key, ok := strings.CutPrefix(line, keyMark); ok {
			l.key = key
			continue
		}
		if line == wholeMark {
			l.whole = true
			continue
		}
		if design, ok := strings.CutPrefix(line, fromMark); ok {
			from = design
			continue
		}
		if strings.HasPrefix(line, "# ") {
			continue
		}
		sum, name, ok := strings.Cut(line, "  ")
		within, file, deep := strings.Cut(name, "/")
		switch {
		case !ok || !filepath.IsLocal(name): // nothing outside the folder is ever taken for ours
			return list{}
		case filepath.Base(name) == name:
			l.made = append(l.made, made{sum, name, from})
		case deep && filepath.Base(within) == within && filepath.Base(file) == file:
			l.below = append(l.below, made{sum: sum, name: name})
		default:
			return list{}
		}
	}
	return l
}
