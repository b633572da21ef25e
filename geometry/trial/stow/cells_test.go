package stow_test

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// The cells of the brute-force check: along the boat and up, mm. Across the
// boat a row of cells is kept as where its wood begins or ends.
const (
	cellX = 5.0
	cellZ = 1.0
)

// solid is one boat in cells: for each slice and level the half-breadth where its
// wood begins (of a boat below) or up to which it reaches (of a boat above).
type solid struct {
	x0   float64
	rows [][]float64
}

const tall = 620 // levels, mm

func newSolid(f *frame.Frame, empty float64) *solid {
	s := &solid{x0: -f.Hull.Length/2 - 5}
	n := int((f.Hull.Length+10)/cellX) + 1
	for range n {
		r := make([]float64, tall)
		for i := range r {
			r[i] = empty
		}
		s.rows = append(s.rows, r)
	}
	return s
}

// spans calls row for the half-breadths between which a closed polygon lies at
// the middle of each level.
func spans(poly []geometry.Point, row func(level int, from, to float64)) {
	for level := range tall {
		z := (float64(level) + 0.5) * cellZ
		lo, hi := math.Inf(1), math.Inf(-1)
		for i, a := range poly {
			b := poly[(i+1)%len(poly)]
			if (a.Y > z) == (b.Y > z) {
				continue
			}
			y := a.X + (b.X-a.X)*(z-a.Y)/(b.Y-a.Y)
			lo, hi = math.Min(lo, y), math.Max(hi, y)
		}
		if hi >= lo {
			row(level, lo, hi)
		}
	}
}

func (s *solid) begin(i int, poly []geometry.Point) {
	spans(poly, func(level int, from, to float64) {
		s.rows[i][level] = math.Min(s.rows[i][level], math.Max(0, from))
	})
}

func (s *solid) reach(i int, poly []geometry.Point) {
	spans(poly, func(level int, from, to float64) {
		s.rows[i][level] = math.Max(s.rows[i][level], to)
	})
}

func flat3(p geometry.Point3) geometry.Point { return geometry.Point{X: p.Y, Y: p.Z} }

// stick is a batten's section: its middle, its heading and its size.
func stick(mid geometry.Point, heading, wide, deep float64) []geometry.Point {
	w, d := geometry.Polar(wide/2, heading), geometry.Polar(deep/2, heading-math.Pi/2)
	return []geometry.Point{mid.Sub(w).Sub(d), mid.Add(w).Sub(d), mid.Add(w).Add(d), mid.Sub(w).Add(d)}
}

// bay finds the ribs around a station.
func bay(f *frame.Frame, x float64) (a, b frame.Rib, t float64) {
	rs := f.Ribs
	if x <= rs[0].Station {
		return rs[0], rs[0], 0
	}
	for i := 1; i < len(rs); i++ {
		if x <= rs[i].Station {
			return rs[i-1], rs[i], (x - rs[i-1].Station) / (rs[i].Station - rs[i-1].Station)
		}
	}
	last := rs[len(rs)-1]
	return last, last, 0
}

func heading(f *frame.Frame, x float64, stringer int) float64 {
	a, b, t := bay(f, x)
	_, h := a.Section.Half.At(a.Stringers[stringer])
	_, k := b.Section.Half.At(b.Stringers[stringer])
	return h*(1-t) + k*t
}

// below fills a boat that another is lowered into: every rib, batten, gunwale
// and stem as the solid it is.
func below(f *frame.Frame) *solid {
	s := newSolid(f, math.Inf(1))
	d := f.Design
	aft, fore := f.Gunwale.Line.Ends()
	for i := range s.rows {
		x := s.x0 + cellX*float64(i)
		for _, r := range f.Ribs { // solid from its outer to its inner face
			if math.Abs(x-r.Station) <= float64(d.Ribs.Width)/2 {
				out, in := r.Outer.Flatten(0.05), r.Inner.Reverse().Flatten(0.05)
				s.begin(i, append(out, in...))
			}
		}
		if x > aft && x < fore {
			g, w, h := &f.Gunwale, f.Gunwale.Width/2, f.Gunwale.Height
			s.begin(i, []geometry.Point{flat3(g.EdgeAt(x, -w, 0)), flat3(g.EdgeAt(x, w, 0)), flat3(g.EdgeAt(x, w, h)), flat3(g.EdgeAt(x, -w, h))})
		}
		for _, l := range f.Stringers {
			if a, b := l.Line.Ends(); x > a && x < b {
				s.begin(i, stick(flat3(l.Line.Point(x)), heading(f, x, l.Number-1), float64(d.Stringers.Width), float64(d.Stringers.Depth)))
			}
		}
		if x < f.Hull.Bow.Toe.X && -x < f.Hull.Stern.Toe.X {
			z, _ := f.Hull.KeelZ(x)
			z += float64(d.Skin.Thickness())
			s.begin(i, stick(geometry.Point{Y: z + float64(d.Keel.Depth)/2}, 0, float64(d.Keel.Width), float64(d.Keel.Depth)))
		}
		s.post(i, x, f.Bow)
		s.post(i, -x, f.Stern)
		s.plate(i, x, f.Hull.Bow.GunwaleX, f.Hull.Bow.TopZ, f.BowHook)
		s.plate(i, -x, f.Hull.Stern.GunwaleX, f.Hull.Stern.TopZ, f.SternHook)
	}
	return s
}

// post fills a stem: wood from the middle line out, wherever its outline lies.
func (s *solid) post(i int, u float64, st frame.Stem) {
	if b := st.Outline.Bounds(); u < b.Min.X || u > b.Max.X {
		return
	}
	pts := st.Outline.Flatten(0.05)
	for level := range tall {
		z := (float64(level) + 0.5) * cellZ
		in := false
		for k, a := range pts {
			b := pts[(k+1)%len(pts)]
			if (a.Y > z) != (b.Y > z) && u < a.X+(b.X-a.X)*(z-a.Y)/(b.Y-a.Y) {
				in = !in
			}
		}
		if in {
			s.rows[i][level] = 0
		}
	}
}

// plate fills a breasthook.
func (s *solid) plate(i int, u, tip, top float64, b frame.Breasthook) {
	along := (u - tip) * math.Hypot(1, b.Slope)
	pts := b.Outline.Flatten(0.05)
	begin := math.Inf(1)
	for k, p := range pts {
		q := pts[(k+1)%len(pts)]
		if (p.X > along) != (q.X > along) {
			if y := p.Y + (q.Y-p.Y)*(along-p.X)/(q.X-p.X); y >= 0 {
				begin = math.Min(begin, y)
			}
		}
	}
	if math.IsInf(begin, 0) {
		return
	}
	// Forward of the hollow the plate is whole from side to side.
	hollow := math.Inf(1)
	for _, p := range pts {
		if math.Abs(p.Y) < 3 {
			hollow = math.Min(hollow, p.X)
		}
	}
	if along > hollow {
		begin = 0
	}
	z := top + (u-tip)*b.Slope
	for level := range tall {
		if h := (float64(level) + 0.5) * cellZ; h <= z && h >= z-b.Thickness {
			s.rows[i][level] = math.Min(s.rows[i][level], begin)
		}
	}
}

// above fills a boat that is lowered: everything inside the cloth, which lies over
// battens, gunwales, stems and over the ribs from one to the next, and from there
// straight up.
func above(f *frame.Frame) *solid {
	s := newSolid(f, -1)
	d := f.Design
	skin := float64(d.Skin.Thickness())
	aft, fore := f.Gunwale.Line.Ends()
	for i := range s.rows {
		x := s.x0 + cellX*float64(i)
		e, st, u := f.Hull.Bow, f.Bow, x
		if x < 0 {
			e, st, u = f.Hull.Stern, f.Stern, -x
		}
		// The stem under its cloth.
		if u > e.Toe.X && u < f.Hull.Length/2 {
			low := math.Inf(1)
			for k := range 2000 {
				if p, _ := e.Point(e.Outer.Length() * float64(k) / 2000); p.X >= u {
					low = math.Min(low, p.Y)
				}
			}
			w := st.Thickness/2 + skin
			s.reach(i, []geometry.Point{{Y: low}, {X: w, Y: low}, {X: w, Y: e.TopZ}, {Y: e.TopZ}})
		}
		if x <= aft || x >= fore {
			continue
		}
		a, b, t := bay(f, x)
		keel, edge := math.Inf(1), float64(d.Keel.Width)/2
		if u <= e.Toe.X {
			keel, _ = f.Hull.KeelZ(x)
			if last := math.Abs(a.Station); a.Name == b.Name && u > last { // narrowed to the stem
				edge += (st.Thickness/2 + skin - edge) * (u - last) / (e.Toe.X - last)
			}
		} else {
			for k := range 2000 {
				if p, _ := e.Point(e.Outer.Length() * float64(k) / 2000); p.X >= u {
					keel = math.Min(keel, p.Y)
				}
			}
			edge = st.Thickness/2 + skin
		}
		poly := []geometry.Point{{Y: keel}, {X: edge, Y: keel}}
		for _, l := range f.Stringers {
			if p, q := l.Line.Ends(); x <= p || x >= q {
				continue
			}
			deep := float64(d.Stringers.Depth)/2 + skin
			wide := float64(d.Stringers.Width)
			if last := math.Abs(a.Station); a.Name == b.Name && u > last { // worked down towards the stem
				_, end := l.Line.Ends()
				if x < 0 {
					end, _ = l.Line.Ends()
				}
				left := (math.Abs(end) - u) / (math.Abs(end) - last)
				deep, wide = deep*left, wide*left
			}
			h := heading(f, x, l.Number-1)
			mid := flat3(l.Line.Point(x)).Add(geometry.Polar(deep, h-math.Pi/2))
			for _, c := range []geometry.Point{mid.Sub(geometry.Polar(wide/2, h)), mid.Add(geometry.Polar(wide/2, h))} {
				if c.Y >= keel {
					poly = append(poly, c)
				}
			}
		}
		g, w := &f.Gunwale, f.Gunwale.Width/2+skin
		top := flat3(g.EdgeAt(x, w, f.Gunwale.Height))
		poly = append(poly, flat3(g.EdgeAt(x, w, 0)))
		if o := d.Outside; o.Outwale > 0 {
			off, under := w+float64(o.Outwale), f.Gunwale.Height-float64(o.OutwaleHeight)
			poly = append(poly, flat3(g.EdgeAt(x, w, under)), flat3(g.EdgeAt(x, off, under)))
			top = flat3(g.EdgeAt(x, off, f.Gunwale.Height))
		}
		poly = append(poly, top, geometry.Point{Y: top.Y})
		s.reach(i, poly)
		if a.Name != b.Name || x == a.Station {
			var over []geometry.Point
			out := a.Thickness/2 + skin
			for k := range 101 {
				share := float64(k) / 100
				p := a.Face(share*a.Section.Half.Length(), out)
				over = append(over, p.Lerp(b.Face(share*b.Section.Half.Length(), out), t))
			}
			s.reach(i, append(over, geometry.Point{Y: over[100].Y}))
		}
	}
	for _, r := range s.rows {
		for level := 1; level < tall; level++ {
			r[level] = math.Max(r[level], r[level-1])
		}
	}
	return s
}

// at returns a row of a boat that has been moved, false where there is none.
func (s *solid) at(x float64) []float64 {
	i := int(math.Round((x - s.x0) / cellX))
	if i < 0 || i >= len(s.rows) {
		return nil
	}
	return s.rows[i]
}
