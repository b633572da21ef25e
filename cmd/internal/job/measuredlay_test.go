package job

import (
	"math"

	"gonum.org/v1/gonum/optimize"

	"ribwright/render/rendertest"
)

// apartDrawn is how far two drawn outlines lie apart at most when one is shifted and turned
// so that this is least, mm: a simplex search from where their middles and their longest
// ways lie on each other. It is never less than the least, and what it finds is near it.
func apartDrawn(was, is rendertest.Outline) float64 {
	a, b := spreadOut(was), spreadOut(is)
	from, to := middleOf(a), middleOf(b)
	far := func(x []float64) float64 {
		sin, cos := math.Sincos(x[2] / 300) // as long a lever as a stem's
		laid := make([]rendertest.Piece, len(a))
		move := func(p rendertest.Point) rendertest.Point {
			u, v := p.X-from.X, p.Y-from.Y
			return rendertest.Point{X: to.X + u*cos - v*sin + x[0], Y: to.Y + u*sin + v*cos + x[1]}
		}
		for i, c := range a {
			laid[i] = rendertest.Piece{From: move(c.From), To: move(c.To)}
		}
		return math.Max(farFrom(laid, b), farFrom(b, laid))
	}
	best := []float64{0, 0, 0}
	least := far(best)
	if same := []float64{from.X - to.X, from.Y - to.Y, 0}; far(same) < least {
		best, least = same, far(same)
	}
	if least < 2*drawnWithin {
		return least
	}
	for _, size := range []float64{2, 0.3, 0.1, 0.03, 0.3, 0.03} {
		r, err := optimize.Minimize(optimize.Problem{Func: far}, best, &optimize.Settings{FuncEvaluations: 300}, &optimize.NelderMead{SimplexSize: size})
		if err == nil && r.F < least {
			best, least = r.X, r.F
		}
	}
	return least
}

// spreadOut are chords that stand for an outline.
func spreadOut(o rendertest.Outline) []rendertest.Piece {
	const step = 8.0 // mm
	var out []rendertest.Piece
	for _, p := range o.Pieces {
		n := math.Max(1, math.Ceil(p.From.To(p.To)/step))
		if p.Curved {
			n = math.Max(n, 12)
		}
		for k := range int(n) {
			out = append(out, rendertest.Piece{From: p.At(float64(k) / n), To: p.At(float64(k+1) / n)})
		}
	}
	return out
}

func middleOf(chords []rendertest.Piece) rendertest.Point {
	box := rendertest.Nowhere()
	for _, c := range chords {
		b := rendertest.Around(c.From, c.To)
		box = rendertest.Box{X0: math.Min(box.X0, b.X0), Y0: math.Min(box.Y0, b.Y0), X1: math.Max(box.X1, b.X1), Y1: math.Max(box.Y1, b.Y1)}
	}
	return rendertest.Point{X: (box.X0 + box.X1) / 2, Y: (box.Y0 + box.Y1) / 2}
}

// farFrom is how far the ends of chords are from a line at most. It looks from where the
// last one was nearest outward, and no longer than that one is nearer than the farthest yet.
func farFrom(chords, line []rendertest.Piece) float64 {
	most, at := 0.0, 0
	for _, c := range chords {
		for _, p := range []rendertest.Point{c.From, c.To} {
			least, found := math.Inf(1), at
			for k := range 2 * len(line) {
				i := at + (k+1)/2*(1-k%2*2)
				if i < 0 || i >= len(line) {
					continue
				}
				if d := toChord(p, line[i]); d < least {
					if least, found = d, i; least <= most {
						break
					}
				}
			}
			most, at = math.Max(most, least), found
		}
	}
	return math.Sqrt(most)
}

// toChord is the square of how far a point is from a straight piece.
func toChord(p rendertest.Point, c rendertest.Piece) float64 {
	dx, dy, px, py := c.To.X-c.From.X, c.To.Y-c.From.Y, p.X-c.From.X, p.Y-c.From.Y
	t, long := px*dx+py*dy, dx*dx+dy*dy
	switch {
	case t <= 0:
		t = 0
	case t >= long:
		t = 1
	default:
		t /= long
	}
	ex, ey := px-t*dx, py-t*dy
	return ex*ex + ey*ey
}
