package pattern

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/label"
)

const (
	linesApart = 0.8 // mm that lines of ribs keep from each other; nearer they are one
	linesLeast = 8.0 // mm of a line that is worth drawing between two that it joins
	linesStep  = 1.0 // mm between points that are looked at along a line
	linesLook  = 16  // mm round a point in which a line is looked for
	linesFlat  = 0.002
	wordsApart = 2.5  // mm between names: nearer they are read as one
	dotRadius  = 0.5  // mm, of the circle where a name's line begins
	dotApart   = 1.25 // mm that it keeps from other lines, where they leave so much
	ownLine    = 0.1  // mm round a line that it bends within, this near to one of its points
)

// ribLine is the outer face of a rib on the body plan.
type ribLine struct {
	name string
	pts  []geometry.Point // from the keel to the head
	with []int            // by point: the line that it joins there, -1 where it is drawn
	ink  []bool           // by point: whether there is a dash, not the gap behind one
}

// drawSide draws the ribs of one side from midship outward, each as one line, solid and
// broken in turn, with its name at keel, bilge and head.
func drawSide(d *layout.Drawing, b *bend.Report, side float64) {
	f := b.Frame
	var on []int
	for i, r := range f.Ribs {
		if r.Station*side >= 0 {
			on = append(on, i)
		}
	}
	if len(on) == 0 {
		return
	}
	slices.SortStableFunc(on, func(i, j int) int { return cmp.Compare(math.Abs(f.Ribs[i].Station), math.Abs(f.Ribs[j].Station)) })
	place := geometry.Stretch(side, 1)
	var lines []ribLine
	var heads []ribHead
	for n, i := range on {
		r := f.Ribs[i]
		l := ribLine{name: twins(f, i), pts: dense(r.Outer.Map(place))}
		l.join(lines)
		pen := layout.Mark
		if n%2 == 1 {
			pen = layout.Long
		}
		l.ink = make([]bool, len(l.pts))
		for _, run := range l.runs() {
			d.Line(pen, curve.Polyline(l.pts[run[0]:run[1]]...))
			copy(l.ink[run[0]:], dashes(pen, l.pts[run[0]:run[1]]))
		}
		lines = append(lines, l)
		_, heading := r.Section.Half.End()
		tip := place.Apply(r.Face(r.Section.Half.Length(), 0))
		across := geometry.Polar(r.Thickness/2+2, heading-math.Pi/2)
		across.X *= side
		d.Line(layout.Mark, curve.Polyline(tip.Sub(across), tip.Add(across)))
		heads = append(heads, ribHead{l.pts[len(l.pts)-1], l.name})
	}
	loose := drawLoose(d, b, on[0], side)
	bends := drawBends(d, f, on, side)
	nameHeads(d, heads)
	var g grounds
	g.nameLines(d, lines, 0.02, 0.28)
	g.nameLines(d, lines, 0.4, 0.72)
	g.take(d)
	for _, l := range bends {
		g.nameLine(d, l, freest(&g.all, l, dashes(layout.Tick, l), every(l, 0.3, 1)), "bends begin, end")
	}
	for _, share := range [][2]float64{{0.05, 0.4}, {0.4, 0.75}} {
		g.nameLine(d, loose, freest(&g.all, loose, dashes(layout.Guide, loose), every(loose, share[0], share[1])), "pushed in")
	}
}

// dense is a path in straight pieces, short enough to look at its ends alone.
func dense(p curve.Path) []geometry.Point {
	flat := p.Flatten(linesFlat)
	out := flat[:1:1]
	for i := 1; i < len(flat); i++ {
		n := max(1, int(math.Ceil(flat[i].Sub(flat[i-1]).Norm()/linesStep)))
		for k := 1; k <= n; k++ {
			out = append(out, flat[i-1].Lerp(flat[i], float64(k)/float64(n)))
		}
	}
	return out
}

// join finds where a line lies too near to one that is drawn. How far off that one is from a
// point tells how many points on it cannot be too near.
func (l *ribLine) join(drawn []ribLine) {
	l.with = make([]int, len(l.pts))
	next := make([]int, len(drawn)) // by line: the point from which on it is looked for again
	at := make([]int, len(drawn))   // and where it passed last
	for i, p := range l.pts {
		l.with[i] = -1
		for k := range drawn {
			if i < next[k] {
				continue
			}
			var away float64
			if away, at[k] = drawn[k].away(p, at[k]); away < linesApart {
				l.with[i] = k
				break
			}
			next[k] = i + int((away-linesApart)/linesStep)
		}
	}
	for i := 0; i < len(l.pts); { // what is too short between two joins is not drawn
		j := i
		for j < len(l.pts) && l.with[j] == l.with[i] {
			j++
		}
		if l.with[i] < 0 && float64(j-i)*linesStep < linesLeast && (i > 0 || j < len(l.pts)) {
			to := l.with[max(0, i-1)]
			if i == 0 {
				to = l.with[j]
			}
			for k := i; k < j; k++ {
				l.with[k] = to
			}
		}
		i = j
	}
}

// away is how far what is drawn of a line passes a point, and at which of its own points;
// linesLook where it is no nearer. It begins with where the line passed last. As its points lie
// no more than linesStep apart, those are passed over that cannot be nearer than what is found.
func (l *ribLine) away(p geometry.Point, last int) (nearest float64, at int) {
	nearest = linesLook
	if last > 0 {
		nearest, at = min(nearest, l.pts[last].Sub(p).Norm()), last
	}
	for i := 1; i < len(l.pts); i++ {
		a, b := l.pts[i-1], l.pts[i]
		far := math.Abs(a.X - p.X)
		if y := math.Abs(a.Y - p.Y); y > far {
			far = y
		}
		if reach := nearest + linesStep; far > reach {
			i += max(0, int((far-reach)/linesStep)-1)
			continue
		}
		if l.with[i-1] >= 0 || l.with[i] >= 0 {
			continue
		}
		step, t := b.Sub(a), 0.0
		if long := step.Dot(step); long > 0 {
			t = max(0, min(1, p.Sub(a).Dot(step)/long))
		}
		if off := a.Add(step.Scale(t)).Sub(p); off.Dot(off) < nearest*nearest {
			nearest, at = off.Norm(), i
		}
	}
	return nearest, at
}

// runs are the stretches of points that are drawn.
func (l *ribLine) runs() [][2]int {
	var out [][2]int
	for i := 0; i < len(l.pts); {
		j := i
		for j < len(l.pts) && l.with[j] < 0 {
			j++
		}
		if j-i > 1 {
			out = append(out, [2]int{i, j})
		}
		i = j + 1
	}
	return out
}

// nameLines letters every line between two shares of its length, with a leader where the
// name has no room beside it. A line that is joined to another all the way is named with it.
func (g *grounds) nameLines(d *layout.Drawing, lines []ribLine, from, to float64) {
	names := make([][]string, len(lines))
	at := make([][]int, len(lines)) // points where a line can be named
	for i, l := range lines {
		first, last := int(from*float64(len(l.pts))), int(to*float64(len(l.pts)))
		for k := first; k < last; k += 4 {
			if l.with[k] < 0 {
				at[i] = append(at[i], k)
			}
		}
		names[i] = append(names[i], l.name)
		if len(at[i]) == 0 {
			with := l.with[(first+last)/2]
			for len(at[with]) == 0 && lines[with].with[first] >= 0 {
				with = lines[with].with[first]
			}
			names[with], names[i] = append(names[with], names[i]...), nil
		}
	}
	g.take(d)
	for i, l := range lines {
		if len(names[i]) > 0 {
			g.nameLine(d, l.pts, freest(&g.all, l.pts, l.ink, at[i]), strings.Join(names[i], " "))
		}
	}
}

// grounds are all that is drawn, and its words alone, as far as they are taken.
type grounds struct {
	all, words     label.Ground
	strokes, texts int
}

// take takes what was drawn since.
func (g *grounds) take(d *layout.Drawing) {
	for _, s := range d.Strokes[g.strokes:] {
		g.all.Line(s.Path)
	}
	for _, t := range d.Texts[g.texts:] {
		g.all.Text(t)
		g.words.Text(t)
	}
	g.strokes, g.texts = len(d.Strokes), len(d.Texts)
}

// every lists points between two shares of a line where it can be named.
func every(pts []geometry.Point, from, to float64) (at []int) {
	for k := int(from * float64(len(pts))); k < int(to*float64(len(pts))); k += 4 {
		at = append(at, k)
	}
	return at
}

// dashes reports by point whether a line that a pen draws from the first one on has ink there
// and so far round it as the circle of a name reaches.
func dashes(pen layout.Pen, pts []geometry.Point) []bool {
	out, passed, dash := make([]bool, len(pts)), 0.0, pen.Dash()
	for i := range pts {
		if i > 0 {
			passed += pts[i].Sub(pts[i-1]).Norm()
		}
		out[i] = dash == nil || math.Abs(math.Mod(passed, dash[0]+dash[1])-dash[0]/2) <= dash[0]/2-dotRadius
	}
	return out
}

// freest are those of some points of a line where a name's circle is seen to stand on that line:
// on its ink, and as far as can be, up to dotApart, from all else on the ground.
func freest(g *label.Ground, pts []geometry.Point, ink []bool, at []int) []int {
	for apart := dotApart; apart >= dotRadius; apart -= 0.25 {
		var free []int
		for _, k := range at {
			if ink[k] && alone(g, pts, k, apart) {
				free = append(free, k)
			}
		}
		if free != nil {
			return free
		}
	}
	return at
}

// alone reports whether nothing but a line itself lies so far round one of its points.
func alone(g *label.Ground, pts []geometry.Point, k int, apart float64) bool {
	along := pts[min(k+1, len(pts)-1)].Sub(pts[max(k-1, 0)]).Unit()
	b := label.Block{At: pts[k].Sub(along.Scale(apart)), Angle: math.Atan2(along.Y, along.X), Wide: 2 * apart, Low: ownLine, High: apart}
	over := g.Clear(b, 0)
	b.Low, b.High = -apart, -ownLine
	return over && g.Clear(b, 0)
}

// nameLine letters a line at one of its points, as near to it as can be: clear of all on the
// ground, and twice so far off other words, which lie in line with it.
func (g *grounds) nameLine(d *layout.Drawing, pts []geometry.Point, at []int, words string) {
	for _, far := range []float64{1.5, 3, 5, 8, 12, 17, 23, 30, 38, 48, 60, 75, 90} {
		for _, k := range at {
			p, along := pts[k], pts[min(k+1, len(pts)-1)].Sub(pts[max(k-1, 0)]).Unit()
			for _, way := range []geometry.Point{along.Left(), along.Left().Scale(-1)} {
				end := p.Add(way.Scale(far))
				t := layout.Text{At: end.Add(geometry.Point{X: 0.7, Y: -small / 2}), Height: small, Words: words}
				if way.X < 0 {
					t.At, t.Align = end.Add(geometry.Point{X: -0.7, Y: -small / 2}), layout.Right
				}
				if b := label.BlockOf(t); g.all.Clear(b, label.Off) && g.words.Clear(b, 2*wordsApart) && !g.all.Strikes(p, end) {
					leader, dot := curve.Polyline(p, end), curve.Circle(p, dotRadius)
					d.Line(layout.Tick, leader)
					d.Line(layout.Tick, dot)
					d.Texts = append(d.Texts, t)
					g.all.Line(leader)
					g.all.Text(t)
					g.words.Text(t)
					return
				}
			}
		}
	}
}
