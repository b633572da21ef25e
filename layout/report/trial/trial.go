// Package trial tells what the trials of a boat found: afloat, of its bends and
// balance, nested with others. A build book and a page of its own tell the same parts.
package trial

import "ribwright/layout/report"

func chapter(words string) report.Block { return report.Heading{Level: 1, Words: words} }
func section(words string) report.Block { return report.Heading{Level: 2, Words: words} }

// practice is who says what nobody wrote down.
const practice = "common practice, no source"

// figures is a table of what is measured and how much it is.
func figures(title string, rows [][]string) report.Table {
	return report.Table{Title: title, Columns: []report.Column{report.Words("Figure"), report.Numbers("")}, Rows: rows}
}

// under makes a section of a table: its title heads the section.
func under(t report.Table) []report.Block {
	title := t.Title
	t.Title = ""
	if len(t.Columns) == 2 && t.Columns[1].Head == "" {
		t.Columns = []report.Column{report.Words(""), report.Numbers("")}
	}
	return []report.Block{section(title), t}
}
