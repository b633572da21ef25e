package book

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout/typeset"
)

// TestHardBoats: the book of a boat that sinks, capsizes, has nobody aboard, many
// stringers, glued stems or no wood is set all the same, and says so.
func TestHardBoats(t *testing.T) {
	for n, c := range []struct {
		name   string
		change func(d *design.Design)
		want   string
	}{
		{"sinks", func(d *design.Design) { d.Crew = append(d.Crew, heavy(), heavy(), heavy(), heavy()) }, "finds no rest"},
		{"capsizes", func(d *design.Design) {
			d.Seats[0].Kind, d.Seats[0].Height, d.Crew[0].Posture = design.Saddle, 600, design.Bench
		}, "capsizes"},
		{"nobody aboard", func(d *design.Design) { d.Crew, d.Gear = nil, nil }, "On the water"},
		{"twelve stringers a side", func(d *design.Design) {
			d.Stringers.Width, d.Stringers.Depth, d.Keel.Width = 8, 8, 20
			d.Stringers.At = nil
			for i := range 12 {
				d.Stringers.At = append(d.Stringers.At, 0.1+0.07*float64(i))
			}
		}, "S12"},
		{"glued stems", func(d *design.Design) {
			d.Bending.StemPlies, d.Bending.StemSpecies = 16, "white ash"
		}, "bow stem, ply 16 of 16"},
		{"one ply", func(d *design.Design) { d.Gunwale.Plies, d.Gunwale.Glued = 1, design.GluedStraight }, "port gunwale"},
		{"no wood", func(d *design.Design) {
			d.Stock.Boards = []design.Board{{Species: "white ash", Length: 600, Width: 100, Thickness: 10, Count: 1}}
		}, "There is no wood for these sticks"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := shipped(t, "brook")
			c.change(d)
			if p := d.Check(); p != nil {
				t.Fatal(p)
			}
			units := []measure.System{measure.Metric, measure.Imperial}[n%2]
			b := sharedBook(t, facts(t, d, units))
			if said := fmt.Sprintf("%v", b.Blocks); !strings.Contains(said, c.want) {
				t.Errorf("the book does not say %q", c.want)
			}
			p := sheet(t, "a4")
			doc, err := typeset.Lay(b, p)
			if err != nil {
				t.Fatal(err)
			}
			for i, s := range doc.Sheets {
				apart(t, fmt.Sprintf("sheet %d", i+1), s, p.Area)
			}
		})
	}
}

func heavy() design.Person {
	return design.Person{Name: "Guest", Mass: 250, Posture: design.Floor, Seat: design.OnFloor}
}
