package job

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/render/rendertest"
)

// bookPDF is a build book as its PDF has it: rows of words, and all words in one line.
type bookPDF struct {
	rows [][]rendertest.Text
	text string
}

var (
	footer = regexp.MustCompile(`build book, design|^sheet \d+ of \d+$`)
	bullet = regexp.MustCompile(`^(-|\d+\.)$`) // before sentences
)

// readBook writes the book of a design and reads it back.
func readBook(t *testing.T, d *design.Design) bookPDF {
	t.Helper()
	m := do(t, asked(t, "book", "it.toml"), inFiles(t, map[string]*design.Design{"it.toml": d}))
	file, err := rendertest.ReadPDF(m.only(t, ".pdf"))
	var pages []rendertest.Page
	if err == nil {
		pages, err = file.Pages()
	}
	if err != nil {
		t.Fatal(err)
	}
	var out bookPDF
	var all []string
	for _, p := range pages {
		upright := slices.DeleteFunc(p.Texts, func(x rendertest.Text) bool { return footer.MatchString(x.Words) || math.Abs(x.Angle) > 0.01 })
		for _, x := range upright {
			if !bullet.MatchString(x.Words) {
				all = append(all, x.Words)
			}
		}
		slices.SortStableFunc(upright, func(a, b rendertest.Text) int {
			return cmp.Or(cmp.Compare(math.Round(b.At.Y*10), math.Round(a.At.Y*10)), cmp.Compare(a.At.X, b.At.X))
		})
		var row []rendertest.Text
		for _, x := range upright {
			if len(row) > 0 && row[0].At.Y-x.At.Y > 0.15 {
				out.rows, row = append(out.rows, row), nil
			}
			row = append(row, x)
		}
		out.rows = append(out.rows, row)
	}
	out.text = strings.Join(strings.Fields(strings.Join(all, " ")), " ")
	return out
}

// tableRow is a row of a table: what its first column says, and its cells by heading.
type tableRow struct {
	first string
	cells map[string]string
}

// rowKey says which rows of words begin a row of a table.
type rowKey func(row []rendertest.Text) bool

// cellIs asks a cell, from 0, of such a row.
func cellIs(n int, as string) rowKey {
	re := regexp.MustCompile(as)
	return func(row []rendertest.Text) bool { return len(row) > n && re.MatchString(row[n].Words) }
}

var ofRib = cellIs(0, ribName.String())

// tables returns the tables of a title, each with its rows; parts of one that goes on
// overleaf are joined. A row begins with what keys match.
func (b bookPDF) tables(title string, keys rowKey) [][]tableRow {
	var out [][]tableRow
	for i, row := range b.rows {
		if len(row) == 0 || len(row) > 1 || !strings.HasPrefix(row[0].Words, title) {
			continue
		}
		rows := tableAt(b.rows[i+1:], keys)
		if strings.HasSuffix(row[0].Words, ", continued") && len(out) > 0 {
			out[len(out)-1] = append(out[len(out)-1], rows...)
		} else {
			out = append(out, rows)
		}
	}
	return out
}

// table returns the only table of a title, nil where there is none.
func (b bookPDF) table(title string, keys rowKey) []tableRow {
	all := b.tables(title, keys)
	if len(all) == 0 {
		return nil
	}
	return slices.Concat(all...)
}

// tableAt reads a table whose heading begins with the first of the rows. A cell stands
// under the words of the heading that begin or end where it does; a row without a first
// cell goes on with the one before.
func tableAt(rows [][]rendertest.Text, keys rowKey) []tableRow {
	const same = 0.3
	var head []rendertest.Text
	var out []tableRow
	var starts [][]rendertest.Text // where the cells of the last row begin
	for _, row := range rows {
		if len(row) == 0 {
			break
		}
		isRow := keys(row) && (len(out) == 0 || math.Abs(row[0].At.X-starts[len(starts)-1][0].At.X) < same)
		if len(out) == 0 && !isRow {
			head = append(head, row...)
			continue
		}
		if !isRow {
			last := starts[len(starts)-1]
			if row[0].At.X < last[0].At.X+same && len(row) == 1 {
				break
			}
			for _, c := range row {
				for k, o := range last {
					if math.Abs(c.At.X-o.At.X) < same {
						name := headingOf(head, last[k])
						out[len(out)-1].cells[name] += " " + c.Words
					}
				}
			}
			continue
		}
		r := tableRow{row[0].Words, map[string]string{}}
		for _, c := range row[1:] {
			r.cells[headingOf(head, c)] = c.Words
		}
		out, starts = append(out, r), append(starts, row)
	}
	return out
}

// headingOf is what stands over a cell.
func headingOf(head []rendertest.Text, cell rendertest.Text) string {
	const same = 0.3
	var out []string
	for _, h := range head {
		if math.Abs(h.At.X-cell.At.X) < same || math.Abs(h.At.X+h.Advance()-cell.At.X-cell.Advance()) < same {
			out = append(out, h.Words)
		}
	}
	return strings.Join(out, " ")
}

// find returns the groups of the first place in the text that is so, nil for none.
func (b bookPDF) find(as string) []string { return regexp.MustCompile(as).FindStringSubmatch(b.text) }

func (b bookPDF) findAll(as string) [][]string {
	return regexp.MustCompile(as).FindAllStringSubmatch(b.text, -1)
}
