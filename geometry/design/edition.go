package design

import (
	"fmt"
	"strconv"
	"strings"
)

// first is the edition of a design that names none.
const first = "1"

// EditionName is the edition as it is told of: the first for a design that names none.
func (d *Design) EditionName() string {
	if d.Edition == "" {
		return first
	}
	return d.Edition
}

// Next makes d the edition after another one, with a line of what it changes.
func (d *Design) Next(after *Design, changed string) {
	d.Edition, d.Changed = nextEdition(after.EditionName()), changed
}

// nextEdition counts on: "2" gives "3", "spring 2027" gives "spring 2027, 2", and that
// "spring 2027, 3".
func nextEdition(name string) string {
	if n, err := strconv.Atoi(name); err == nil && n > 0 {
		return strconv.Itoa(n + 1)
	}
	if at := strings.LastIndex(name, ", "); at >= 0 {
		if n, err := strconv.Atoi(name[at+2:]); err == nil && n > 1 {
			return fmt.Sprintf("%s, %d", name[:at], n+1)
		}
	}
	const room = 80 - len(", 2")
	return strings.ToValidUTF8(name[:min(len(name), room)], "") + ", 2"
}

// First makes d a first edition, with a line of where it came from.
func (d *Design) First(from string) { d.Edition, d.Changed = first, from }
