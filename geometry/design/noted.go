package design

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"ribwright/geometry/wording"
)

// EncodeNoted writes d as a design file: before each key what it means, and then its note
// where it has one; head stands on top. Of a table that has no rows a sample stands as
// comments. Keys are numbered as in Problem: "hull.section.1.flare". Decode gives the same
// design back.
func EncodeNoted(w io.Writer, d *Design, head []string, notes map[string]string) error {
	var plain bytes.Buffer
	if err := Encode(&plain, d); err != nil {
		return err
	}
	var out strings.Builder
	for _, line := range head {
		comment(&out, line)
	}
	n := noter{notes: notes, docs: docs(), rows: map[string]int{}}
	for _, line := range strings.Split(strings.TrimRight(plain.String(), "\n"), "\n") {
		n.line(&out, line)
	}
	out.WriteString(n.samples)
	_, err := io.WriteString(w, out.String())
	return err
}

// EncodeFrom writes d as Encode does, under a comment of where it came from.
func EncodeFrom(w io.Writer, d *Design, from string) error {
	var out strings.Builder
	comment(&out, from)
	out.WriteString("#\n")
	if err := Encode(&out, d); err != nil {
		return err
	}
	_, err := io.WriteString(w, out.String())
	return err
}

type noter struct {
	notes   map[string]string
	docs    map[string]string // what each key means, by its name without a number
	rows    map[string]int    // rows begun, by table
	table   string            // with the number of its row, and a point behind
	pending []string          // comments before the next key
	samples string            // of tables without rows, at the end of the table that they are in
}

func (n *noter) line(out *strings.Builder, line string) {
	text := strings.TrimSpace(line)
	switch {
	case strings.HasPrefix(text, "#"):
		n.pending = append(n.pending, line)
		return
	case strings.HasPrefix(text, "["):
		n.begin(out, text)
	case strings.Contains(text, "="):
		key, value, _ := strings.Cut(text, "=")
		key = strings.TrimSpace(key)
		if name := n.table + key; strings.TrimSpace(value) == "[]" && n.isTable(name) {
			var b strings.Builder
			n.describe(&b)
			n.samples += "\n" + b.String() + sample(name, n.docs)
			return
		}
		n.describe(out)
		if note := n.notes[n.table+key]; note != "" {
			comment(out, note)
		}
	}
	n.describe(out)
	out.WriteString(line + "\n")
}

// begin begins a table or a row of one.
func (n *noter) begin(out *strings.Builder, text string) {
	if n.samples != "" {
		out.WriteString(strings.TrimPrefix(n.samples, "\n") + "\n")
		n.samples = ""
	}
	name := strings.Trim(text, "[]")
	n.table = name + "."
	if strings.HasPrefix(text, "[[") {
		n.table = fmt.Sprintf("%s.%d.", name, n.rows[name])
		n.rows[name]++
	}
}

// isTable reports whether a key is a list of tables.
func (n *noter) isTable(name string) bool {
	for key := range n.docs {
		if strings.HasPrefix(key, name+".") {
			return true
		}
	}
	return false
}

// describe writes what the next key or table means.
func (n *noter) describe(out *strings.Builder) {
	for _, c := range n.pending {
		comment(out, strings.TrimPrefix(strings.TrimSpace(c), "#"))
	}
	n.pending = nil
}

// wide is how many letters a line of comment has before it is wrapped.
const wide = 96

// comment writes a text as comment lines, whatever it holds.
func comment(out *strings.Builder, text string) {
	line := "#"
	for _, word := range strings.Fields(wording.OneLine(text)) {
		if len(line)+1+len(word) > wide && line != "#" {
			out.WriteString(line + "\n")
			line = "#"
		}
		line += " " + word
	}
	out.WriteString(line + "\n")
}
