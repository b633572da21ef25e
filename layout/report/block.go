// Package report is what the program tells a person, once, as a list of blocks:
// headings, paragraphs, lists, tables, figures, findings, cautions. Sheets of paper, a
// terminal and a browser set the same blocks.
package report

import (
	"fmt"

	"ribwright/layout"
)

// Report is what is told, block by block. Words are as they were written: whoever
// sets them makes them safe.
type Report struct {
	Title       string
	Kind        string // what is told, as "build book"; may be empty
	For         string
	Edition     string // of the design; may be empty
	Fingerprint string // tells two versions of a design apart; empty without a design
	Blocks      []Block
}

// Block is one of the kinds of this package and no other.
type Block interface{ block() }

// Heading begins a chapter (level 1, on a new sheet), a section (2) or a part of one (3).
type Heading struct {
	Level int
	Words string
}

// Chapter and Section are headings by their level.
func Chapter(words string) Heading { return Heading{1, words} }
func Section(words string) Heading { return Heading{2, words} }

// Paragraph is running text.
type Paragraph struct{ Words string }

// Say is running text with figures in it.
func Say(format string, args ...any) Paragraph { return Paragraph{fmt.Sprintf(format, args...)} }

// List is a row of items, numbered from First or with dashes when First is 0.
type List struct {
	First int
	Items []string
}

// Caution is said where the danger is, with who says so.
type Caution struct {
	Words string
	Says  string // the source, "common practice, no source" where there is none
}

// Table is rows under column heads.
type Table struct {
	Title   string
	Columns []Column
	Rows    [][]string // each as long as Columns
	Note    string     // under the table
}

// Column says how a column is set.
type Column struct {
	Head  string
	Align layout.Align // Left or Right
	Text  bool         // words that may be broken into lines
}

// Figure is a drawing at its size on paper, mm.
type Figure struct {
	Drawing layout.Drawing
	Caption string // with the scale it is drawn at
	About   string // what is to be seen, for those who cannot see it
}

// Contents lists the chapters with their sheets.
type Contents struct{}

func (Heading) block()   {}
func (Paragraph) block() {}
func (List) block()      {}
func (Caution) block()   {}
func (Table) block()     {}
func (Figure) block()    {}
func (Contents) block()  {}

// Wide is the widest figure that every paper accepted has room for, mm.
const Wide = 170.0
