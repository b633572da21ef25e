// Package feedback is what one build says of the program's figures: each measured beside
// what was drawn or worked out, in a file that names no person and no place.
package feedback

import (
	"ribwright/geometry/shop/hours"
)

// Build is one build.
type Build struct {
	Name   string // of its file or its row, for messages; it is never written
	Wood   string // of the ribs, one that the program knows, or OtherWood
	Stock  string // how it was dried: air-dried, green, kiln-dried
	Boiler string // a letter or a figure that several builds share; "" for the builder's own
	Board  string // of the ribs, the same; "" for a board of its own
	Skill  hours.Skill
	Lines  []Line
}

// OtherWood stands for a wood whose name only its builder knows.
const OtherWood = "other wood"

// What a line is about.
type What int

// The kinds of line.
const (
	Springback What = iota // share of a rib's bend that it lost
	Deeper                 // mm that a rib came out deeper than its bend and length explain
	Rib                    // inner radius over thickness at its hardest bend; found 1 where it broke there
	Weight                 // kg of a part
	Hours                  // of a stage; drawn is for an experienced builder; a file has it for the skill that it names
	kinds
)

// String names the kind as a file has it.
func (w What) String() string { return kindsOf[w].word }

// Line is one thing measured.
type Line struct {
	What  What
	Of    string  // a rib, a part, a stage
	Drawn float64 // as drawn or worked out; 0 for Deeper
	Found float64
	At    int // line of the file, 0 for none
}

// kind is how a kind of line is written.
type kind struct {
	word  string
	units []unit // the first is written
	of    string // what it is of, in words
	least float64
	most  float64 // of what was found, in the unit that is kept
}

type unit struct {
	word string
	is   float64
}

var kindsOf = [kinds]kind{
	{"springback", []unit{{"%", 0.01}}, "a rib", -0.2, 0.7},
	{"deeper", []unit{{"mm", 1}, {"in", 25.4}}, "a rib", -80, 80},
	{"rib", nil, "a rib", 0, 1},
	{"weight", []unit{{"kg", 1}, {"lb", 0.45359237}, {"g", 0.001}}, "a part", 0.01, 100},
	{"hours", []unit{{"h", 1}, {"min", 1.0 / 60}}, "a stage", 0.05, 500},
}

// Parts are the parts of a boat that can be weighed before they are put together.
func Parts() []string {
	return []string{"gunwales", "ribs", "keel", "stringers", "stems and breasthooks", "thwarts and yoke", "cloth and coating"}
}

// All returns the lines of a kind.
func (b *Build) All(w What) []Line {
	var out []Line
	for _, l := range b.Lines {
		if l.What == w {
			out = append(out, l)
		}
	}
	return out
}
