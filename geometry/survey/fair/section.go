package fair

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/survey/offsets"
)

// shapeStarts are where the search begins: round, hard-bilged, V'd, tumblehome,
// and the slots of the ends.
func shapeStarts() [][]float64 {
	return [][]float64{
		{10, 120, 5, 0}, {4, 60, 2, 5}, {25, 90, 3, 0}, {3, 60, -15, 40}, {8, 150, -8, 20}, {35, 60, 2, 2},
		{1, 40, 0.3, 0.3}, {1, 30, -3, 5},
	}
}

// MostSections is how many stations give the sections their shape, and mostPoints how many
// points of each: more than a drawing has. Of a table that has many more, as from a scan,
// they are spread evenly; all are compared with the boat that comes of it. Our own choice:
// time grows with both.
const MostSections, mostPoints = 24, 40

// spread keeps at most so many of a row, the first and the last among them.
func spread[T any](row []T, most int) []T {
	if len(row) <= most {
		return row
	}
	out := make([]T, most)
	for i := range out {
		out[i] = row[i*(len(row)-1)/(most-1)]
	}
	return out
}

func (f *fit) fitSections() error {
	h, err := f.hullNow()
	if err != nil {
		return err
	}
	type sided struct {
		offsets.Station
		side float64
	}
	var wide []sided
	for side, s := range f.stations() {
		if isSection(s) {
			s.Points = spread(s.Points, mostPoints)
			wide = append(wide, sided{s, side})
		}
	}
	if len(wide) == 0 {
		return errors.New("no station is wide enough for a section")
	}
	slices.SortStableFunc(wide, func(a, b sided) int { return cmp.Compare(a.side*a.X, b.side*b.X) })
	var out []design.Section
	f.d.Hull.Sections = nil
	for _, s := range spread(wide, MostSections) {
		c, err := f.fitSection(h, s.Station, s.side)
		if err != nil {
			return err
		}
		out = append(out, c)
	}
	f.d.Hull.Sections = out
	return nil
}

func (f *fit) fitSection(h *hull.Hull, s offsets.Station, side float64) (design.Section, error) {
	x := side * s.X
	tilt, lean := float64(f.d.Gunwale.Tilt)*180/math.Pi, f.lean()
	// Degrees and mm, inside what the design file takes.
	spans := []span{{0, 55}, {20, 600}, {math.Max(-29, tilt-lean), math.Min(40, tilt+lean)}, {0, 58}}
	held := f.holdAt(h, x)
	cost := func(p []float64) float64 {
		if p[0]+p[2]+p[3] > 88 {
			return math.Inf(1)
		}
		sec, err := hull.Solve(held.breadth, held.depth, shapeOf(p))
		if err != nil {
			return math.Inf(1)
		}
		o, err := held.outline(sec)
		if err != nil {
			return math.Inf(1)
		}
		sum := 0.0
		for _, m := range o.misses(s) {
			sum += m.Off * m.Off
		}
		// What the points leave open stays plain.
		return sum + 1e-3*p[3]*p[3] + 1e-5*(p[1]-100)*(p[1]-100) + 1e-4*p[0]*p[0]
	}
	p, c := least(spans, shapeStarts(), cost)
	if p == nil || c >= 1e11 {
		return design.Section{}, fmt.Errorf("station %.0f mm on line %d: no section of the family fits between its keel at %.0f mm and its sheer at %.0f mm", x, s.Line, s.Keel().Y, s.Sheer().Y)
	}
	return design.Section{At: rounded(x), BottomTurn: turned(p[0]), BilgeRadius: rounded(p[1]), Flare: turned(p[2]), TopsideCurve: turned(p[3])}, nil
}

func shapeOf(p []float64) hull.Shape {
	const rad = math.Pi / 180
	return hull.Shape{BottomTurn: p[0] * rad, BilgeRadius: p[1], Flare: p[2] * rad, TopsideCurve: p[3] * rad}
}
