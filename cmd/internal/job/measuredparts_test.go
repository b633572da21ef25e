package job

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"ribwright/render/rendertest"
)

// stem reads a stem, or both where they are alike, and returns its outline.
func (m *offPaper) stem(k *inked, ends ...string) *inkLine {
	outline := largest(k.take("cut", func(l *inkLine) bool { return l.Closed && !l.round() }))
	holes := k.take("cut", func(l *inkLine) bool { return l.round() })
	slices.SortFunc(holes, func(a, b *inkLine) int { return cmp.Compare(a.middle().Y, b.middle().Y) })
	var toe float64
	for _, w := range k.lettered(regexp.MustCompile(`^station ([\d.]+) mm`)) {
		for _, l := range k.lines {
			if l.pen == "guide" && l.upright() && math.Abs(l.X0-number(w.groups[1])) < toTenth+drawnWithin {
				toe = l.X0
			}
		}
	}
	for _, end := range ends {
		part := end + " stem"
		for i, h := range holes[:len(holes)-1] {
			m.put(part, "stringer hole from midship", i+1, h.middle().X, drawnWithin)
			m.put(part, "stringer hole height", i+1, h.middle().Y, drawnWithin)
			m.put(part, "stringer hole diameter", 0, h.W(), 2*drawnWithin)
		}
		lash := holes[len(holes)-1] // under the gunwales, over all stringers
		m.put(part, "gunwale hole from midship", 0, lash.middle().X, drawnWithin)
		m.put(part, "gunwale hole height", 0, lash.middle().Y, drawnWithin)
		m.put(part, "gunwale hole diameter", 0, lash.W(), 2*drawnWithin)
		m.put("hull", "keel end at "+end, 0, math.Copysign(toe, map[string]float64{"bow": 1, "stern": -1}[end]), drawnWithin)
		m.landings(k, part)
		m.screws(k, part, outline)
	}
	return outline
}

// screws reads where the keel's come up into the foot, from its step, in which the keel's
// end butts: they begin 2 mm under the foot's line.
func (m *offPaper) screws(k *inked, part string, outline *inkLine) {
	up := k.take("center", func(l *inkLine) bool { return l.upright() && l.H() > 5 })
	slices.SortFunc(up, func(a, b *inkLine) int { return cmp.Compare(b.X0, a.X0) })
	foot := func(l *inkLine) rendertest.Point { return rendertest.Point{X: l.X0, Y: l.Y0 + 2} }
	first, last := foot(up[0]), foot(up[len(up)-1])
	step := first
	for _, c := range outline.Corners() {
		off := ((c.X-last.X)*(first.Y-last.Y) - (c.Y-last.Y)*(first.X-last.X)) / first.To(last)
		if math.Abs(off) < 0.5 && c.X > step.X {
			step = c
		}
	}
	for i, l := range up {
		m.put(part, "screw from the keel's end", i+1, step.To(foot(l)), 0.1)
	}
}

// landings reads the crosses of the stringers' ends, from the keel up.
func (m *offPaper) landings(k *inked, part string) {
	up := k.take("mark", func(l *inkLine) bool { return l.upright() && math.Abs(l.H()-6) < 0.02 })
	level := k.take("mark", func(l *inkLine) bool { return l.level() && math.Abs(l.W()-6) < 0.02 })
	slices.SortFunc(up, func(a, b *inkLine) int { return cmp.Compare(a.middle().Y, b.middle().Y) })
	for i, l := range up {
		crossed := slices.ContainsFunc(level, func(o *inkLine) bool { return o.middle().To(l.middle()) < 0.02 })
		if !crossed {
			m.t.Errorf("%s: half a cross at %.2f", part, l.middle())
		}
		m.put(part, "stringer landing from midship", i+1, l.middle().X, drawnWithin)
		m.put(part, "stringer landing height", i+1, l.middle().Y, drawnWithin)
	}
}

// largest is the line that reaches farthest.
func largest(all []*inkLine) *inkLine {
	return slices.MaxFunc(all, func(a, b *inkLine) int { return cmp.Compare(a.W()+a.H(), b.W()+b.H()) })
}

// hook reads a breasthook, or both, and returns its outline.
func (m *offPaper) hook(k *inked, ends ...string) *inkLine {
	outline := largest(k.take("cut", func(l *inkLine) bool { return l.Closed && !l.round() }))
	pegs := k.take("mark", func(l *inkLine) bool { return len(l.Pieces) == 1 && math.Hypot(l.W(), l.H()) < 9 && !l.upright() })
	k.take("mark", func(l *inkLine) bool { return l.upright() }) // across the painter's hole
	for _, end := range ends {
		part := end + " breasthook"
		for _, h := range k.take("cut", func(l *inkLine) bool { return l.round() }) {
			m.put(part, "painter's hole from the gunwale ends", 0, -h.middle().X, drawnWithin)
			m.put(map[string]string{"bow": "painters"}[end], "hole from the gunwale ends", 0, -h.middle().X, drawnWithin) // of both; the bow's
		}
		m.pegs(pegs, part)
		for _, w := range k.words {
			read := func(as, quantity string, unit, within float64) {
				if g := regexp.MustCompile(as).FindStringSubmatch(w.text); g != nil {
					m.put(part, quantity, 0, unit*number(strings.Join(g[1:], " ")), unit*within)
				}
			}
			read(`make \d, ([\d.]+) mm thick`, "thickness", 1, toTenth)
			if g := leanOn.FindStringSubmatch(w.text); g != nil && strings.HasSuffix(w.text, "to fit the gunwales") {
				m.put(part, "bevel", 0, degree*number(g[2]+" "+g[1]), degree*toTenth)
			}
			read(`pegs ([\d.]+) mm`, "peg diameter", 1, toTenth)
			read(`^([\d.]+) mm deep`, "peg hole depth", 1, toTenth)
			read(`gunwale, ([\d.]+) mm under`, "pegs down", 1, toTenth)
		}
	}
	return outline
}

// pegs holds the pegs on an edge to the places that the book has from the gunwale's end:
// as far from one another along a straight line, for edges bend by little there.
func (m *offPaper) pegs(lines []*inkLine, part string) {
	var at []rendertest.Point
	for _, l := range lines {
		p := l.Pieces[0].From
		if math.Abs(l.Pieces[0].To.Y) > math.Abs(p.Y) {
			p = l.Pieces[0].To
		}
		if p.Y > 0 {
			at = append(at, p)
		}
	}
	slices.SortFunc(at, func(a, b rendertest.Point) int { return cmp.Compare(b.X, a.X) })
	for i := 1; i < len(at); i++ {
		told := m.get(part, "peg from the gunwale's end", i+1) - m.get(part, "peg from the gunwale's end", i)
		if off := at[i].To(at[i-1]) - told; math.Abs(off) > 2*toWhole {
			m.t.Errorf("%s: pegs %d and %d are drawn %.2f mm apart, and lettered %.2f", part, i, i+1, at[i].To(at[i-1]), told)
		}
	}
}

// thwart reads half a cross piece and returns its outline, turned over on the line at 0.
func (m *offPaper) thwart(k *inked, part string) rendertest.Outline {
	var whole rendertest.Outline
	over := func(p rendertest.Point) rendertest.Point { return rendertest.Point{X: -p.X, Y: p.Y} }
	var end *inkLine
	for _, l := range k.take("cut", func(l *inkLine) bool { return !l.Closed }) {
		for _, c := range l.Pieces {
			whole.Pieces = append(whole.Pieces, c, rendertest.Piece{From: over(c.From), To: over(c.To), C1: over(c.C1), C2: over(c.C2), Curved: c.Curved})
		}
		if len(l.Pieces) == 1 && !l.Pieces[0].Curved && l.H() > 20 && (end == nil || l.X1 > end.X1) {
			end = l
		}
	}
	m.put(part, "length", 0, 2*end.X1, 2*drawnWithin)
	m.put(part, "end cut", 0, math.Atan(end.W()/end.H()), 0.0005)
	for _, l := range k.take("guide", func(l *inkLine) bool { return math.Abs(l.H()-end.H()) < 0.05 }) {
		m.put(part, "end cut back below", 0, end.middle().X-l.middle().X, drawnWithin)
	}
	holes := k.take("mark", func(l *inkLine) bool { return l.round() })
	slices.SortFunc(holes, func(a, b *inkLine) int { return cmp.Compare(a.middle().Y, b.middle().Y) })
	for i, h := range holes {
		for n, side := range map[int]float64{i + 1: 1, i + 1 + len(holes): -1} {
			m.put(part, "hole off the middle line", n, side*h.middle().X, drawnWithin)
			m.put(part, "hole forward of its middle", n, h.middle().Y, drawnWithin)
			m.put(part, "hole diameter", 0, h.W(), 2*drawnWithin)
		}
	}
	for _, w := range k.words {
		if g := regexp.MustCompile(`^middle at (-?[\d.]+) mm, ([\d.]+) mm clear`).FindStringSubmatch(w.text); g != nil {
			m.put(part, "station", 0, number(g[1]), toTenth)
			m.put(part, "between gunwales", 0, number(g[2]), toTenth)
		}
		if g := leanOn.FindStringSubmatch(w.text); g != nil && strings.HasPrefix(w.text, "ease the top to the gunwales' lean") {
			m.put(part, "bolts lean", 0, number(g[2]+" "+g[1])*degree, toTenth*degree)
			m.put("gunwale", "tilt", 0, number(g[1]+" "+g[2])*degree, toTenth*degree)
		}
	}
	return whole
}

// hanger reads the port hanger of a rail.
func (m *offPaper) hanger(k *inked, part, rail string) {
	boards := k.take("cut", func(l *inkLine) bool { return l.Closed && !l.round() })
	board := largest(boards)
	m.put(part, rail+" hanger width", 0, board.W(), 2*drawnWithin)
	m.put(part, rail+" hanger length", 0, board.H(), 2*drawnWithin)
	upper := func(l *inkLine) (x, y float64) { // the middle of a mouth's upper edge
		pts := l.Corners()
		slices.SortFunc(pts, func(a, b rendertest.Point) int { return cmp.Compare(b.Y, a.Y) })
		return (pts[0].X + pts[1].X) / 2, (pts[0].Y + pts[1].Y) / 2
	}
	for _, l := range boards {
		for _, o := range k.take("long", func(l *inkLine) bool { return l.Closed }) {
			if l != board { // the rail's middle lies half way between both faces
				x, y := upper(l)
				u, v := upper(o)
				m.put(part, rail+" hanger to rail top", 0, -(y+v)/2, drawnWithin)
				m.put(part, rail+" hanger slot forward of its middle", 0, (x+u)/2, drawnWithin)
			}
		}
	}
	apart := m.get("gunwale", fmt.Sprintf("bolt of %s, %s, from midship", part, rail), 2) - m.get("gunwale", fmt.Sprintf("bolt of %s, %s, from midship", part, rail), 1)
	for _, h := range k.take("mark", func(l *inkLine) bool { return l.round() }) {
		m.put(part, rail+" bolts under the gunwale top", 0, -h.middle().Y, drawnWithin)
		if off := 2*math.Abs(h.middle().X) - apart; !(math.Abs(off) < 2*drawnWithin) {
			m.t.Errorf("%s, %s hanger: a bolt is %.2f mm off its place beside the gunwale's", part, rail, off)
		}
	}
	for _, w := range k.words {
		if g := regexp.MustCompile(`high x ([\d.]+) mm`).FindStringSubmatch(w.text); g != nil {
			m.put(part, rail+" hanger block", 0, number(g[1]), toTenth)
		}
		if g := regexp.MustCompile(`slot for ([\d.]+) mm x ([\d.]+) mm`).FindStringSubmatch(w.text); g != nil {
			m.put(part, "rail width", 0, number(g[1]), toTenth)
			m.put(part, "rail depth", 0, number(g[2]), toTenth)
		}
	}
}
