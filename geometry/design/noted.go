package design

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"ribwright/geometry/wording"
)

// EncodeNoted writes d as a design file with a note before the keys that have one
// instead of their description; head stands on top. Keys are numbered as in
// Problem: "hull.section.1.flare". Decode gives the same design back.
func EncodeNoted(w io.Writer, d *Design, head []string, notes map[string]string) error {
	var plain bytes.Buffer
	if err := Encode(&plain, d); err != nil {
		return err
	}
	var out strings.Builder
	for _, line := range head {
		comment(&out, line)
	}
	n := noter{notes: notes, rows: map[string]int{}}
	for _, line := range strings.Split(strings.TrimRight(plain.String(), "\n"), "\n") {
		n.line(&out, line)
	}
	_, err := io.WriteString(w, out.String())
	return err
}

type noter struct {
	notes   map[string]string
	rows    map[string]int // rows begun, by table
	table   string         // with the number of its row, and a point behind
	pending []string       // comments before the next key
}

func (n *noter) line(out *strings.Builder, line string) {
	text := strings.TrimSpace(line)
	switch {
	case strings.HasPrefix(text, "#"):
		n.pending = append(n.pending, line)
		return
	case strings.HasPrefix(text, "[["):
		name := strings.Trim(text, "[]")
		n.table = fmt.Sprintf("%s.%d.", name, n.rows[name])
		n.rows[name]++
	case strings.HasPrefix(text, "["):
		n.table = strings.Trim(text, "[]") + "."
	case strings.Contains(text, "="):
		key, _, _ := strings.Cut(text, "=")
		if note := n.notes[n.table+strings.TrimSpace(key)]; note != "" {
			comment(out, note)
			n.pending = nil
		}
	}
	for _, c := range n.pending {
		out.WriteString(c + "\n")
	}
	n.pending = nil
	out.WriteString(line + "\n")
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
