package folder

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/wording"
)

// ListName is the file in a folder that says which of its files the program made.
const ListName = "ribwright.txt"

// List is what a folder's list says.
type List struct {
	read  bool   // there is one
	whole bool   // all of its files were written
	Key   string // of what the files were made from
	Made  []Made
	Below []Made   // files of a course in its folders, which have lists of their own
	Notes []string // what is told besides
}

// Made is a file that the program made, with the SHA-256 sum of its bytes.
type Made struct {
	Sum, Name string
	From      string // the design that it was made from, as it lies from the folder; "" where that is not told
}

func (l List) names() []string {
	var out []string
	for _, m := range l.Made {
		out = append(out, m.Name)
	}
	return out
}

// ListHead begins every list.
const ListHead = "# Files here that ribwright made, with their SHA-256 sums. It replaces or removes\n# these alone, and only while they are as it made them. Keep this list with them.\n"

// The lines of a list besides its files.
const (
	fromMark  = "# from "
	keyMark   = "# made from "
	wholeMark = "# complete"
)

// text is the list as programs that check sums read one.
func (l List) text() string {
	var b strings.Builder
	b.WriteString(ListHead)
	if l.Key != "" {
		b.WriteString(keyMark + l.Key + "\n")
	}
	if l.whole {
		b.WriteString(wholeMark + "\n")
	}
	for _, note := range l.Notes {
		b.WriteString("# " + wording.Flat(note) + "\n")
	}
	all := slices.Clone(l.Made)
	slices.SortStableFunc(all, func(a, b Made) int { return strings.Compare(a.From, b.From) })
	from := ""
	for _, m := range append(all, l.Below...) {
		if m.From != from && m.From != "" {
			from = m.From
			b.WriteString(fromMark + from + "\n")
		}
		fmt.Fprintf(&b, "%s  %s\n", m.Sum, m.Name)
	}
	return b.String()
}

// Listed reads a folder's list; an empty one where there is none, or a file that is something
// else.
func Listed(dir string) List {
	path := filepath.Join(dir, ListName)
	if info, err := os.Lstat(path); err != nil || !info.Mode().IsRegular() {
		return List{}
	}
	data, err := keep.ReadFile(path)
	rest, ours := strings.CutPrefix(string(data), ListHead)
	if err != nil || !ours {
		return List{}
	}
	l := List{read: true}
	from := ""
	for line := range strings.Lines(rest) {
		line = strings.TrimRight(line, "\r\n")
		if key, ok := strings.CutPrefix(line, keyMark); ok {
			l.Key = key
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
			return List{}
		case filepath.Base(name) == name:
			l.Made = append(l.Made, Made{sum, name, from})
		case deep && filepath.Base(within) == within && filepath.Base(file) == file:
			l.Below = append(l.Below, Made{Sum: sum, Name: name})
		default:
			return List{}
		}
	}
	return l
}
