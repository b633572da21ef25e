package tile

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// least is how many sheets the patterns would fill as they are drawn, with nothing lost
// between them: what their tiles show and the laps that no layout does without, captions
// left out, over all that lies within the margins. Title blocks and scale bars are room
// here, so that no set reaches it.
func (p plan) least() float64 {
	sum := 0.0
	for i := range p.drawings {
		var cells []geometry.Box
		for _, k := range p.pieces {
			if k.drawing == &p.drawings[i] {
				cells = append(cells, k.cell)
			}
		}
		for _, c := range cells {
			sum += c.W() * c.H()
		}
		sum += lapped(cells, max(p.sheet.Area.W(), p.sheet.Area.H()))
	}
	return sum / (p.sheet.Area.W() * p.sheet.Area.H())
}

// lapped is an area that the laps of a pattern, as large as its cells, take at the least on
// sheets of a given length, however it is cut into upright tiles.
//
// Take a level line on which the pattern lies for a length l, without a gap. A tile shows at
// most the sheet's length r of it, whichever way it lies. So n tiles with n - 1 joints
// between them show l + 2 lap (n - 1) <= n r, and n >= (l - 2 lap) / (r - 2 lap): each
// joint shows 2 lap twice. Summed over all level lines this is area, and the same holds for
// upright lines. Where laps of both ways meet, four tiles show the place, three of them
// once too often, so that both sums may be added.
func lapped(cells []geometry.Box, long float64) float64 {
	var upright []geometry.Box
	for _, c := range cells {
		upright = append(upright, geometry.Rect(c.Min.Y, c.Min.X, c.Max.Y, c.Max.X))
	}
	return 2 * lap * (crossed(cells, long) + crossed(upright, long))
}

// crossed is how long all joints across level lines are at the least, mm.
func crossed(cells []geometry.Box, long float64) float64 {
	var ys []float64
	for _, c := range cells {
		ys = append(ys, c.Min.Y, c.Max.Y)
	}
	slices.Sort(ys)
	sum := 0.0
	for i := 1; i < len(ys); i++ {
		for _, run := range runs(cells, (ys[i-1]+ys[i])/2) {
			n := math.Ceil((run.To - run.From - 2*lap - closeEnough) / (long - 2*lap))
			sum += max(0, n-1) * (ys[i] - ys[i-1])
		}
	}
	return sum
}

// runs are the stretches of a level line that cells cover, each without a gap.
func runs(cells []geometry.Box, y float64) []layout.Span {
	var out []layout.Span
	for _, c := range cells {
		if c.Min.Y < y && y < c.Max.Y {
			out = append(out, layout.Span{From: c.Min.X, To: c.Max.X})
		}
	}
	slices.SortStableFunc(out, func(a, b layout.Span) int { return cmp.Compare(a.From, b.From) })
	n := 0
	for i, s := range out {
		if i > 0 && s.From <= out[n-1].To+closeEnough {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out[n] = s
		n++
	}
	return out[:n]
}
