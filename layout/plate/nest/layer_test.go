package nest

import (
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

// TestBestOfAll: among parts of the dice the place that a layer finds for a part is the first
// of those that touch most, looked at cell by cell.
func TestBestOfAll(t *testing.T) {
	dice := rand.New(rand.NewPCG(7, 4))
	const room, halo = 3.0, 2
	drawn := func() (s, h stamp) {
		p := geometry.Pt(20+120*dice.Float64(), 20+80*dice.Float64())
		q := geometry.Pt(p.X*dice.Float64(), p.Y*dice.Float64())
		loop := []geometry.Point{{}, {X: p.X}, q, {Y: p.Y}, {}} // hollow as often as not
		of := shape{loops: [][]geometry.Point{loop}, box: geometry.Around(loop...)}
		return new(stamper).stamp(of, room, cell).looked(), new(stamper).stamp(of, room+halo*cell, cell)
	}
	laid, lost := 0, 0
	for range 10 {
		wide, high := 60+dice.IntN(80), 30+dice.IntN(20)
		l := newLayer(wide, high, halo)
		taken := map[spot]bool{}
		for range 12 {
			s, h := drawn()
			least := dice.Float64() * 0.6
			want, most := plainly(l, taken, s, h, h.below(least))
			at, share, ok := l.best(s, h, least)
			if ok != (most >= 0) || ok && (at != want || share != float64(most)/float64(h.cells)) {
				t.Fatalf("on %d x %d cells: %v with %.4f, %v; want %v with %d of %d", wide, high, at, share, ok, want, most, h.cells)
			}
			if !ok {
				lost++
				continue
			}
			laid++
			l.put(s, h, at)
			for y, row := range s.rows {
				for _, run := range row {
					for x := run.a; x < run.b; x++ {
						taken[spot{at.x + x, at.y + y}] = true
					}
				}
			}
		}
	}
	if laid < 20 || lost < 5 {
		t.Errorf("%d parts laid and %d without a place: too few to tell", laid, lost)
	}
}

// plainly finds the place by counting cells; most is -1 where no place touches more than none.
func plainly(l *layer, taken map[spot]bool, s, halo stamp, none int32) (at spot, most int32) {
	room, rows := l.grid.wide-s.wide, len(l.grid.used)-len(s.rows)
	free := map[spot]bool{}
	for y := 0; y <= rows; y++ {
		for x := 0; x <= room; x++ {
			free[spot{x, y}] = !some(s, func(col, row int) bool { return taken[spot{x + col, y + row}] })
		}
	}
	most = -1
	for y := 0; y <= rows; y++ {
		for x := 0; x <= room; x++ {
			inner := free[spot{x - 1, y}] && free[spot{x + 1, y}] && free[spot{x, y - 1}] && free[spot{x, y + 1}]
			if !free[spot{x, y}] || inner {
				continue
			}
			sum := int32(0)
			some(halo, func(col, row int) bool {
				if near := l.row(y + 1 + row); x+col+2 < len(near) {
					sum += near[x+col+2] - near[x+col+1]
				}
				return false
			})
			if sum > max(most, none) {
				at, most = spot{x, y}, sum
			}
		}
	}
	return at, most
}

// some reports whether something holds for any cell of a stamp.
func some(s stamp, holds func(col, row int) bool) bool {
	for row, runs := range s.rows {
		for _, run := range runs {
			for col := run.a; col < run.b; col++ {
				if holds(col, row) {
					return true
				}
			}
		}
	}
	return false
}
