package main

import (
	"path/filepath"
	"strings"

	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/design"
)

// next is what a builder types next, after a verb, and what for: args is what was typed,
// names what was named in it, made what was written. It is "" where the page says what to do.
func (v verb) next(args, names []string, made []keep.File) (command, why string) {
	boat := typed(names[:min(1, len(names))])
	if boat == "" {
		boat = typed(design.ShippedNames()[:1])
	}
	file := ""
	if len(made) > 0 {
		file = made[0].Path
	}
	wrote := strings.EqualFold(filepath.Ext(file), ".toml")
	switch v.name {
	case "size", "fair", "built":
		switch {
		case wrote:
			return "float" + typed([]string{file}), "how it stands; then loft draws its patterns"
		case v.name == "size":
			return "size --use pack, solo or tandem, and -o mine.toml", "one boat, as a file to be changed, floated and lofted"
		case len(names) < 2:
			return "built" + boat + " and the table's name, when it is filled in", "what is off, and what to do"
		}
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
		if file == "" {
			return v.name + typed(args) + " --loft", "the patterns of what is made for it"
		}
	case "compare":
		return "loft" + typed(names[1:]) + " --since" + boat, "the sheets to print again"
	}
	return "", ""
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
