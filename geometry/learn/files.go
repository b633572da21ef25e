package learn

import (
	"bytes"
	"encoding/csv"
	"io"
	"regexp"
	"slices"
	"strings"

	"ribwright/geometry/shop/hours"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wording"
)

// Rewrite is a family's file with the proposed lines in place of its own, each with its
// evidence over it. One that comes with the program is used and gets the lines behind it.
func Rewrite(src formula.Source, shipped bool, all []Proposal) formula.Source {
	text := strings.TrimRight(src.Text, "\n") + "\n"
	if shipped {
		text = "use \"" + src.Name + "\"\n"
	}
	for _, p := range all {
		if p.Home != Family {
			continue
		}
		text = without(text, p.Name) + "\n# " + wording.OneLine(p.Why) + "\n# " + wording.OneLine(p.Evidence) + "\n" + p.Line + "\n"
	}
	return formula.Source{Name: "proposed.family", Text: text}
}

// without takes the line that sets a name out, with those that go on with it: they begin
// with a blank.
func without(text, name string) string {
	begins := regexp.MustCompile(`^(tell |check |guess )?\s*` + regexp.QuoteMeta(name) + `\s*=([^=]|$)`)
	var out []string
	going := false
	for _, line := range strings.Split(text, "\n") {
		if begins.MatchString(line) {
			going = true
			continue
		}
		if going = going && strings.HasPrefix(line, " "); !going {
			out = append(out, line)
		}
	}
	return strings.Join(out, "\n")
}

// logHeads are the columns of a log.
var logHeads = []string{"date", "line", "why", "evidence"}

// WriteLabor writes the lines that are proposed for a labor file.
//
// Errors: those of the writer.
func WriteLabor(to io.Writer, all []Proposal) error {
	var out strings.Builder
	out.WriteString(strings.Join(hours.LaborHeads(), ",") + "\n")
	for _, p := range all {
		if p.Home == Labor {
			out.WriteString("# " + wording.OneLine(p.Why) + "\n# " + wording.OneLine(p.Evidence) + "\n" + p.Line + "\n")
		}
	}
	_, err := io.WriteString(to, out.String())
	return err
}

// CheckLog refuses a file that is no log.
//
// Errors: *wording.Fault.
func CheckLog(data []byte, name string) error {
	c := csv.NewReader(bytes.NewReader(data))
	rows, err := c.ReadAll()
	if err != nil || len(rows) == 0 || !slices.Equal(rows[0], logHeads) {
		return &wording.Fault{File: name, Text: "is no log of a family; accepted: CSV text with the columns " + strings.Join(logHeads, ",")}
	}
	return nil
}

// WriteLog writes a log on: what it had, and a line for each proposal. old is nothing for a
// new one.
//
// Errors: those of the writer.
func WriteLog(to io.Writer, old []byte, date string, all []Proposal) error {
	if _, err := to.Write(old); err != nil {
		return err
	}
	c := csv.NewWriter(to)
	var rows [][]string
	if len(old) == 0 {
		rows = append(rows, logHeads)
	} else if old[len(old)-1] != '\n' {
		if _, err := io.WriteString(to, "\n"); err != nil {
			return err
		}
	}
	for _, p := range all {
		rows = append(rows, []string{date, p.Line, p.Why, p.Evidence})
	}
	return c.WriteAll(rows)
}
