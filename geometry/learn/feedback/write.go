package feedback

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
)

// remark begins a file.
const remark = "# What one build measured beside its drawing. It names no person and no place.\n"

// heads are the columns of a file.
var heads = []string{"what", "of", "drawn", "found"}

// Write writes a build: words from the program's own lists and figures, and no other.
//
// Errors: those of the writer.
func Write(to io.Writer, b *Build) error {
	return write(to, b, func(l Line) string { return l.found() })
}

// Blank writes the notes that a builder fills in: a remark of one line, what the build is of, and a
// line with nothing found for each that the drawing has.
func Blank(to io.Writer, b *Build, says string) error {
	if _, err := io.WriteString(to, "# "+says+"\n"); err != nil {
		return err
	}
	return write(to, b, func(Line) string { return "" })
}

// write writes the hours as drawn for the build's own skill, which stands as the drawn one too.
func write(to io.Writer, b *Build, found func(Line) string) error {
	if _, err := io.WriteString(to, remark); err != nil {
		return err
	}
	skill := b.Skill.String()
	rows := [][]string{heads, {"wood", "", "", b.Wood}, {"stock", "", "", b.Stock}, {"boiler", "", "", b.Boiler}, {"board", "", "", b.Board}, {"skill", "", skill, skill}}
	for _, l := range b.Lines {
		if l.What == Hours {
			l.Drawn *= b.Skill.Factor()
		}
		rows = append(rows, []string{l.What.String(), l.Of, l.drawn(), found(l)})
	}
	c := csv.NewWriter(to)
	return c.WriteAll(rows)
}

// drawn and found are a line's figures with their units, no finer than they are known.
func (l Line) drawn() string {
	switch l.What {
	case Deeper:
		return ""
	case Rib:
		return short(l.Drawn, 1)
	}
	return l.figure(l.Drawn)
}

func (l Line) found() string {
	if l.What == Rib {
		if l.Found > 0 {
			return "broken"
		}
		return "whole"
	}
	return l.figure(l.Found)
}

func (l Line) figure(v float64) string {
	u := kindsOf[l.What].units[0]
	places := 1
	if l.What == Weight {
		places = 2
	}
	return short(v/u.is, places) + " " + u.word
}

func short(v float64, places int) string {
	k := math.Pow(10, float64(places))
	return strconv.FormatFloat(math.Round(v*k)/k+0, 'f', -1, 64)
}
