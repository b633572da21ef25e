package typeset

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/layout/report"
	"ribwright/layout/report/reporttest"
)

// TestCases reads where the words of every kind of block stand on letter paper: sheet,
// mm from its left and lower edges, side that they end at, words.
func TestCases(t *testing.T) {
	const edge = 0.003 // keeps what ends in 5 hundredths of a mm from falling to either side
	for _, c := range reporttest.Cases() {
		doc, err := Lay(c.Report, letter(t))
		if err != nil {
			c.Check(t, "pdf", err.Error())
			continue
		}
		var out strings.Builder
		for _, s := range doc.Sheets {
			for _, x := range s.Texts {
				fmt.Fprintf(&out, "%d %5.1f %5.1f %s %s\n", s.Number, x.At.X+edge, x.At.Y+edge, [...]string{"left", "middle", "right"}[x.Align], x.Words)
			}
		}
		c.Check(t, "pdf", out.String())
	}
}

// TestHostile: hostile words stay on the sheet, or are refused in words.
func TestHostile(t *testing.T) {
	for _, words := range reporttest.Hostile() {
		doc, err := Lay(reporttest.Everything(words), letter(t))
		for i, s := range doc.Sheets {
			clean(t, fmt.Sprintf("%.20q, sheet %d", words, i+1), s, letter(t).Area)
		}
		if err != nil && !strings.Contains(err.Error(), "wider than the paper") {
			t.Errorf("%.20q: %v", words, err)
		}
	}
}

// odd is a kind of block that no writer knows.
type odd struct{ report.Block }

func TestUnknown(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an unknown kind of block passes")
		}
	}()
	_, _ = Lay(report.Report{Blocks: []report.Block{odd{}}}, letter(t))
}
