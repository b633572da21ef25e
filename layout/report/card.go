package report

import (
	"slices"
	"strings"
)

// Card is all that tables say of one thing, each figure under the title of its table and
// the head of its column.
type Card struct {
	Name  string
	Facts []Fact
}

// Fact is one figure of a card.
type Fact struct{ Table, Head, Says string }

// Cards turns the tables whose first column has a head into a card for each thing that
// they name, in the order in which they name them. A row of several, "A5, F5", is told on
// the card of each.
func Cards(blocks []Block, head string) []Card {
	var out []Card
	for _, b := range blocks {
		t, ok := b.(Table)
		if !ok || len(t.Columns) == 0 || t.Columns[0].Head != head {
			continue
		}
		for _, row := range t.Rows {
			for name := range strings.SplitSeq(row[0], ", ") {
				i := slices.IndexFunc(out, func(c Card) bool { return c.Name == name })
				if i < 0 {
					i, out = len(out), append(out, Card{Name: name})
				}
				for k, says := range row[1:] {
					out[i].Facts = append(out[i].Facts, Fact{t.Title, t.Columns[k+1].Head, says})
				}
			}
		}
	}
	return out
}
