package lettering

import (
	"math"
	"testing"

	"github.com/go-pdf/fpdf"
)

// Against the Helvetica that the PDF writer carries, an independent copy of the
// published font metrics: every cp1252 code has the same advance.
func TestWidthAgainstThePrinter(t *testing.T) {
	pdf := fpdf.New("P", "pt", "A4", "")
	pdf.SetFont("Helvetica", "", 1000) // 1 pt is a thousandth of an em
	count := 0
	for r := rune(' '); r <= 0x2122; r++ {
		b, ok := code(r)
		if !ok {
			continue
		}
		count++
		want := pdf.GetStringWidth(string([]byte{b}))
		if got := Width(string(r), 718); !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("%+q, code %#x: %g thousandths of an em, the printer has %g", r, b, got, want)
		}
	}
	if count != 218 {
		t.Errorf("%d codes compared, want 218", count)
	}
}
