package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// next is what a builder types next, after a verb, and what for: args is what was typed,
// names what was named in it, made what was written.
func (v verb) next(args, names []string, made []keep.File) (command, why string) {
	boat := typed(names[:min(1, len(names))])
	if boat == "" {
		boat = typed(design.ShippedNames()[:1])
	}
	file := written(made, ".toml")
	switch v.name {
	case "class":
		if file == "" {
			return "", "" // no boat was made, and the run has said why
		}
		return "built" + typed([]string{file}), "the card of one builder's frame, for the trestles"
	case "size", "fair", "built", "compare", "fleet":
		switch {
		case file != "":
			return "float" + typed([]string{file}), "how it stands; then loft draws its patterns"
		case v.name == "size":
			return "size --use pack, solo or tandem, and -o mine.toml", "one boat, as a file to be changed, floated and lofted"
		case v.name == "compare":
			return "loft" + typed(names[1:]) + " --since" + boat, "the sheets to print again"
		case v.name == "fleet":
			if len(names) > 0 {
				boat = typed([]string{slices.Min(names)}) // whatever order they are given in
			}
			return "loft" + boat, "the patterns of one of them"
		case len(names) < 2:
			return "built" + boat + " and the table's name, when it is filled in", "what is off, and what to do"
		}
		return "built" + typed(names), "the same again, when more ribs stand and are measured"
	case "learn":
		if proposed := written(made, ".family"); proposed != "" {
			return "size --family" + typed([]string{proposed}) + " --paddler '62 kg, 168 cm'", "a boat by the proposed lines, to lay beside one without them"
		}
		return "learn" + typed(names) + " and the files of more builds", "what more builds say"
	case "float":
		return "bend" + boat, "whether its wood bends"
	case "bend":
		return "loft" + boat, "its patterns"
	case "loft":
		return "book" + boat, "how it is built, step by step"
	case "book":
		return "loft" + boat, "the patterns that the book works from"
	case "proof":
		return "loft --printed-across or --printed-down", "where a bar does not measure what stands beside it"
	case "sail", "row", "pair":
		if len(made) == 0 {
			return v.name + typed(args) + " --loft", "the patterns of what is made for it"
		}
		return "book" + boat, "how the boat under it is built, step by step"
	}
	return "", ""
}

// written is the first file of a kind among those that were made, "" without one.
func written(made []keep.File, kind string) string {
	for _, f := range made {
		if strings.EqualFold(filepath.Ext(f.Path), kind) {
			return f.Path
		}
	}
	return ""
}

// end says on a page's last lines what to type next.
func (v verb) end(w io.Writer, args, names []string, made []keep.File) error {
	next, why := v.next(args, names, made)
	if next == "" {
		return nil
	}
	_, err := fmt.Fprintf(w, "\nNext: ribwright %s\n  %s\n", wording.OneLine(next), why)
	return err
}

// typed is names and flags as they are typed behind a verb.
func typed(names []string) string {
	out := ""
	for _, n := range names {
		out += " " + quoted(n)
	}
	return out
}

// quoted is a word as a shell takes it.
func quoted(word string) string {
	if strings.Trim(word, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.,=%@_-/\\:") == "" {
		return word
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}
