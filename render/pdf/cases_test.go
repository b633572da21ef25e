package pdf_test

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/layout/lettering"
	"ribwright/layout/paper"
	"ribwright/layout/report/reporttest"
	"ribwright/layout/typeset"
)

// TestCases reads the words of every kind of block in the file, where they stand and
// from which side: the same that the sheets were set with.
func TestCases(t *testing.T) {
	sheet, err := paper.Setup{Size: paper.Letter(), Margins: paper.HomeMargins()}.Sheet(false)
	if err != nil {
		t.Fatal(err)
	}
	const edge = 0.003 // keeps what ends in 5 hundredths of a mm from falling to either side
	for _, c := range reporttest.Cases() {
		doc, err := typeset.Lay(c.Report, sheet)
		if err != nil {
			continue // no sheets; the case's file says why
		}
		var out strings.Builder
		for i, p := range readPages(t, doc) {
			for k, x := range p.Texts {
				a := doc.Sheets[i].Texts[k].Align
				at := x.At.X + lettering.Width(x.Words, x.CapHeight())*float64(a)/2
				fmt.Fprintf(&out, "%d %5.1f %5.1f %s %s\n", i+1, at+edge, x.At.Y+edge, [...]string{"left", "middle", "right"}[a], x.Words)
			}
		}
		c.Check(t, "pdf", out.String())
	}
}
