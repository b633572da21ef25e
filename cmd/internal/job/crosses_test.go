package job

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"ribwright/render/rendertest"
)

// What must hold of registration crosses, mm: neighbours show the same part of the
// pattern for the overlap; a cross is crossLong wide with a circle round its middle.
const (
	crossLong, crossRadius = 10, 2
	crossIn                = overlap / 2 // from the end of a joint, at most a fifth of it
	crossMiddle            = 60          // a joint this long has a third cross, midway
	crossTol               = 0.02
)

// checkCrosses holds the crosses of every tile against what the table of tiles asks
// for. Two tiles of neighbouring places have a joint, in the middle of what both
// show. A joint has a cross at each of its ends and, when it is long, one midway. An
// end where four tiles meet has its cross in the very corner, which all four show;
// any other is drawn in, and only the two tiles of the joint show its cross. A tile
// shows all crosses of its joints and no other.
func (s truth) checkCrosses(t *testing.T) {
	for _, fault := range s.crossFaults() {
		t.Error(fault)
	}
}

func (s truth) crossFaults() []string {
	var out []string
	onPage := make([]int, len(s.pages))
	for pattern, views := range s.numbers.Views() {
		views = slices.DeleteFunc(views, func(v rendertest.View) bool { return v.Turned })
		g, err := placesOf(views)
		if err != nil {
			out = append(out, fmt.Sprintf("%s: %v", pattern, err))
			continue
		}
		if n := g.hangTogether(); n != len(views) {
			out = append(out, fmt.Sprintf("%s: joints hold %d of %d pieces together", pattern, n, len(views)))
		}
		for at, v := range g {
			want, faults := g.crossesOf(at)
			got := s.crosses(v)
			onPage[v.Page-1] += len(got)
			out = append(out, faults...)
			if len(got) != len(want) || !rendertest.SameSet(got, want, crossTol) {
				out = append(out, fmt.Sprintf("%v: crosses at %.3f, want %.3f", v, got, want))
			}
		}
	}
	for i, p := range s.pages {
		if n := len(p.Crosses(crossLong, crossRadius, crossTol)); n != onPage[i] {
			out = append(out, fmt.Sprintf("page %d: %d crosses, %d of them on tiles", i+1, n, onPage[i]))
		}
	}
	return out
}

// crosses returns the crosses a view shows, in the pattern's coordinates.
func (s truth) crosses(v rendertest.View) []rendertest.Point {
	var out []rendertest.Point
	for _, q := range s.pages[v.Page-1].Crosses(crossLong, crossRadius, crossTol) {
		if v.OnSheet().Holds(q) {
			out = append(out, v.Back(q))
		}
	}
	return out
}

// place is a tile's column from the left and row from the top, 0 first.
type place struct{ col, row int }

// tiles are the printed tiles of a pattern by their places.
type tiles map[place]rendertest.View

// placesOf reads the places off the names: "B3" is the third tile of the second row,
// "3" the third piece of a strip, "" a pattern in one piece.
func placesOf(views []rendertest.View) (tiles, error) {
	out := tiles{}
	for _, v := range views {
		m := regexp.MustCompile(`^([A-Z]*)([0-9]*)$`).FindStringSubmatch(v.Tile)
		if m == nil || m[2] == "" && len(views) > 1 {
			return nil, fmt.Errorf("%v has no place in its name", v)
		}
		at := place{}
		for _, r := range m[1] {
			at.row = at.row*26 + int(r-'A') + 1
		}
		at.row = max(0, at.row-1)
		if m[2] != "" {
			n, err := strconv.Atoi(m[2])
			if err != nil || n < 1 {
				return nil, fmt.Errorf("%v has no place in its name", v)
			}
			at.col = n - 1
		}
		if _, twice := out[at]; twice {
			return nil, fmt.Errorf("%v is there twice", v)
		}
		out[at] = v
	}
	return out, nil
}

func (g tiles) has(col, row int) bool { _, ok := g[place{col, row}]; return ok }

// next lists the places beside one that have a tile.
func (g tiles) next(at place) []place {
	var out []place
	for _, n := range []place{{at.col - 1, at.row}, {at.col + 1, at.row}, {at.col, at.row - 1}, {at.col, at.row + 1}} {
		if g.has(n.col, n.row) {
			out = append(out, n)
		}
	}
	return out
}

// hangTogether counts the tiles that joints hold to any first one.
func (g tiles) hangTogether() int {
	seen := map[place]bool{}
	var walk func(at place)
	walk = func(at place) {
		if seen[at] {
			return
		}
		seen[at] = true
		for _, n := range g.next(at) {
			walk(n)
		}
	}
	for at := range g {
		walk(at)
		break
	}
	return len(seen)
}

// cell returns what a tile shows up to its joints.
func (g tiles) cell(at place) rendertest.Box {
	const lap = overlap / 2.0
	b := g[at].Frame()
	for _, n := range g.next(at) {
		switch {
		case n.col < at.col:
			b.X0 += lap
		case n.col > at.col:
			b.X1 -= lap
		case n.row < at.row:
			b.Y1 -= lap
		default:
			b.Y0 += lap
		}
	}
	return b
}

// crossesOf returns the crosses that a tile must show, and what is wrong with its
// joints.
func (g tiles) crossesOf(at place) (want []rendertest.Point, faults []string) {
	for _, n := range g.next(at) {
		first, second := at, n
		if n.col < at.col || n.row < at.row {
			first, second = n, at
		}
		a, b := g.cell(first), g.cell(second)
		both := rendertest.Box{X0: math.Max(a.X0, b.X0), Y0: math.Max(a.Y0, b.Y0), X1: math.Min(a.X1, b.X1), Y1: math.Min(a.Y1, b.Y1)}
		apart, long := both.W(), both.H()
		if first.row != second.row {
			apart, long = long, apart
		}
		if math.Abs(apart) > 0.001 || long < crossLong {
			faults = append(faults, fmt.Sprintf("%v and %v meet %.4f mm off, along %.3f mm", g[first], g[second], apart, long))
			continue
		}
		for _, q := range g.alongJoint(first, second, both, long) {
			if !slices.ContainsFunc(want, func(p rendertest.Point) bool { return p.To(q) < crossTol }) {
				want = append(want, q)
			}
		}
	}
	return want, faults
}

// alongJoint returns the places of the crosses of a joint. The first tile is the left
// or the upper one.
func (g tiles) alongJoint(first, second place, joint rendertest.Box, long float64) []rendertest.Point {
	in := math.Min(crossIn, long/5)
	from, to := in, long-in
	step := place{second.row - first.row, second.col - first.col} // along the joint: right, or down
	if g.has(first.col-step.col, first.row-step.row) && g.has(second.col-step.col, second.row-step.row) {
		from = 0
	}
	if g.has(first.col+step.col, first.row+step.row) && g.has(second.col+step.col, second.row+step.row) {
		to = long
	}
	away := []float64{from, to}
	if long >= crossMiddle {
		away = append(away, (from+to)/2)
	}
	var out []rendertest.Point
	for _, d := range away {
		if step.col > 0 {
			out = append(out, rendertest.Point{X: joint.X0 + d, Y: joint.Y0})
		} else {
			out = append(out, rendertest.Point{X: joint.X0, Y: joint.Y1 - d})
		}
	}
	return out
}

// TestCrossFaultsSeen moves every cross of a sail's panel by 0.1 mm, drops it, draws
// it where none belongs, and moves it on all its tiles alike: each must be found, or
// the silence of checkCrosses says nothing. The panel is slanting, so there are
// corners where the fourth tile is empty.
func TestCrossFaultsSeen(t *testing.T) {
	s := outfitted(t, "sail", "lake", "a4", "--full-size", "--only", "panel-2")
	if faults := s.crossFaults(); len(faults) > 0 {
		t.Fatal(faults)
	}
	g, err := placesOf(s.numbers.Pages)
	if err != nil {
		t.Fatal(err)
	}
	corners := 0
	for at, v := range g {
		for _, d := range []place{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			if !g.has(at.col+d.col, at.row+d.row) && g.has(at.col+d.col, at.row) && g.has(at.col, at.row+d.row) {
				corners++
			}
		}
		for _, q := range s.crosses(v) {
			for what, change := range map[string]func(rendertest.Stroke) []rendertest.Stroke{
				"moved":   func(k rendertest.Stroke) []rendertest.Stroke { return []rendertest.Stroke{k.Moved(0.1, 0)} },
				"raised":  func(k rendertest.Stroke) []rendertest.Stroke { return []rendertest.Stroke{k.Moved(0, 0.1)} },
				"dropped": func(rendertest.Stroke) []rendertest.Stroke { return nil },
				"doubled": func(k rendertest.Stroke) []rendertest.Stroke { return []rendertest.Stroke{k, k.Moved(20, 0)} },
			} {
				if len(s.withCross(q, change, v).crossFaults()) == 0 {
					t.Errorf("%v: the cross at %.1f, %s, goes unseen", v, q, what)
				}
			}
			alike := s.withCross(q, func(k rendertest.Stroke) []rendertest.Stroke { return []rendertest.Stroke{k.Moved(0.1, 0.1)} }, s.numbers.Pages...)
			if len(alike.crossFaults()) == 0 {
				t.Errorf("the cross at %.1f, moved on all its tiles, goes unseen", q)
			}
		}
	}
	if corners == 0 {
		t.Error("no corner has an empty fourth tile")
	}
}

// withCross returns the same set with the cross at a place of the pattern changed on
// some tiles.
func (s truth) withCross(q rendertest.Point, change func(rendertest.Stroke) []rendertest.Stroke, on ...rendertest.View) truth {
	s.pages = slices.Clone(s.pages)
	for _, v := range on {
		p := &s.pages[v.Page-1]
		var strokes []rendertest.Stroke
		for _, k := range p.Strokes {
			b := k.Outlines[0].Bounds()
			mid := rendertest.Point{X: (b.X0 + b.X1) / 2, Y: (b.Y0 + b.Y1) / 2}
			if k.Clip == (rendertest.Box{X1: p.W, Y1: p.H}) && v.OnSheet().Holds(mid) && v.Back(mid).To(q) < crossTol && math.Max(b.W(), b.H()) < crossLong+1 {
				strokes = append(strokes, change(k)...)
			} else {
				strokes = append(strokes, k)
			}
		}
		p.Strokes = strokes
	}
	return s
}
