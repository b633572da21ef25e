package eyes

import (
	"math"
	"testing"

	"ribwright/render/rendertest"
)

// Unused bank cards, mm: ISO/IEC 7810, ID-1, 85.60 x 53.98, whose tolerances are from memory.
const (
	cardLong, cardHigh           = 85.60, 53.98
	longestCard, highestCard     = 85.72, 54.03
	shortestCard, lowestCard     = 85.47, 53.92
	fitToPage                    = 0.97 // what a dialogue mostly makes of a page that it fits
	seenAtOnce                   = 1.0  // mm by which a card then hides the line, both ways together
	seenBeside                   = 0.1  // mm of line that show beside any card at 100 %, on each side
	mayMeasureCard, mayLineWidth = 0.01, 0.005
)

// TestBankCard measures the outline of a bank card in finished files: it has the card's
// size; at 100 % its line shows all round the largest card; and where the page was fitted
// to 97 %, the smallest card hides the line whole, which is seen at once.
func TestBankCard(t *testing.T) {
	for _, paper := range oneOf("letter", "a4") {
		for _, way := range oneOf("best", "lying", "standing") {
			t.Run(paper+" "+way, func(t *testing.T) {
				pages := pagesOf(t, ask(t, "loft", "brook", "--paper", paper, "--way", way, "--nest", "quick")(".pdf"))
				w, h, line := cardOn(t, pages[0])
				if beside := math.Min(w+line-longestCard, h+line-highestCard) / 2; beside < seenBeside {
					t.Errorf("at 100 %% %.2f mm of line show beside the largest card", beside)
				}
				if over := math.Min(shortestCard-fitToPage*(w+line), lowestCard-fitToPage*(h+line)); over < seenAtOnce {
					t.Errorf("at 97 %% the smallest card hides the line by %.2f mm only", over)
				}
			})
		}
	}
}

// cardOn finds the one closed line of a card's size on a page.
func cardOn(t *testing.T, p rendertest.Page) (w, h, line float64) {
	t.Helper()
	found := 0
	for _, s := range p.Strokes {
		b := s.Seen()
		dx, dy := b.X1-b.X0, b.Y1-b.Y0
		if len(s.Outlines) == 1 && s.Outlines[0].Closed && math.Abs(dx-cardLong) < mayMeasureCard && math.Abs(dy-cardHigh) < mayMeasureCard {
			w, h, line = dx, dy, s.Width
			found++
		}
	}
	if found != 1 || math.Abs(line-0.5) > mayLineWidth {
		t.Fatalf("%d outlines of a card, the last with a line of %.2f mm", found, line)
	}
	return w, h, line
}
