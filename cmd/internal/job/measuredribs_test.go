package job

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/render/rendertest"
)

var (
	onLane    = regexp.MustCompile(`(?:^| )(B|S\d+|shoulder|tenon|end) (-?[\d.]+)$`)
	toRadius  = regexp.MustCompile(`^(?:then|radius) ([\d.]+) mm(?:, (?:hot|form) (\d+) mm)?$`)
	toWidth   = regexp.MustCompile(`(hot|relax to) ([\d.]+) mm`)
	ribBlank  = regexp.MustCompile(`blank ([\d.]+) mm$`)
	laneName  = 4.5 // mm, the capitals of ribs' names
	underLane = 1.2 // mm from a lane's edge to its name
)

// ribStick reads half a rib a lane.
func (m *offPaper) ribStick(k *inked) {
	lanes := k.take("mark", func(l *inkLine) bool { return l.level() && math.Abs(l.X0) < 0.02 })
	for _, lane := range lanes {
		names := ""
		for _, w := range k.words {
			if math.Abs(w.capital-laneName) < 0.05 && math.Abs(lane.Y0-underLane-laneName-w.from.Y) < 0.05 {
				names = w.text
			}
		}
		for n, rib := range ribsNamed(names) {
			if n == 0 || twin(rib, ribsNamed(names)[0]) { // others are drawn as the first, and are a little else
				m.ribLane(k, lane, foot(lanes, lane), "rib "+rib)
			}
		}
	}
}

// twin reports whether two ribs stand as far from midship, one on either side.
func twin(a, b string) bool { return a[0] != b[0] && a[1:] == b[1:] }

// foot is where the next lane begins.
func foot(lanes []*inkLine, lane *inkLine) float64 {
	next := math.Inf(-1)
	for _, o := range lanes {
		if o.Y0 < lane.Y0-1 {
			next = math.Max(next, o.Y0)
		}
	}
	return next
}

func (m *offPaper) ribLane(k *inked, lane *inkLine, foot float64, part string) {
	var lines []*inkLine
	for _, pen := range []string{"mark", "cut"} {
		lines = append(lines, k.take(pen, func(l *inkLine) bool { return l.upright() && math.Abs(l.Y1-lane.Y0) < 0.02 })...)
	}
	slices.SortFunc(lines, func(a, b *inkLine) int { return cmp.Compare(a.X0, b.X0) })
	bends := 0
	for _, l := range lines {
		what := k.onLane(l, lane.Y0, foot)
		l.read = what != ""
		x := l.X0
		switch {
		case what == "B":
			bends++
			m.put(part, "bend mark", bends, x, drawnWithin)
		case what == "shoulder":
			m.put(part, "length", 0, 2*x, 2*drawnWithin)
		case what == "tenon":
			m.put(part, "tenon", 0, x-m.get(part, "length", 0)/2, 2*drawnWithin)
		case what == "end":
			m.put(part, "blank", 0, 2*x, 2*drawnWithin)
		case what != "":
			m.put(part, "stringer mark", int(number(what[1:])), x, drawnWithin)
		}
	}
	m.laneTold(k, lane.Y0, foot, part)
}

// onLane is what a mark on a lane is: its words stand nearest to it of those that give its
// place, "" for none. Where a joint would cut them they stand on its other side or a row on.
func (k *inked) onLane(l *inkLine, top, foot float64) string {
	what, least := "", math.Inf(1)
	for _, w := range k.lettered(onLane) {
		if w.from.Y > top || w.from.Y < foot-4 || math.Abs(number(w.groups[2])-l.X0) > toTenth+drawnWithin {
			continue
		}
		at := rendertest.Point{X: l.X0, Y: l.Y0}
		if d := math.Min(w.from.To(at), w.to.To(at)); d < least && d < 10 {
			what, least = w.groups[1], d
		}
	}
	return what
}

// laneTold reads the sentences of a lane, row by row.
func (m *offPaper) laneTold(k *inked, top, foot float64, part string) {
	var told []inkWords
	for _, w := range k.words {
		if w.from.Y < top && w.from.Y > foot && w.capital < 3 {
			told = append(told, w)
		}
	}
	slices.SortFunc(told, func(a, b inkWords) int {
		return cmp.Or(cmp.Compare(math.Round(10*b.from.Y), math.Round(10*a.from.Y)), cmp.Compare(a.from.X, b.from.X))
	})
	arc := 0
	for _, w := range told {
		if g := toRadius.FindStringSubmatch(w.text); g != nil {
			arc++
			m.put(part, "arc radius", arc, number(g[1]), toTenth)
			if g[2] != "" {
				m.put(part, "form radius", arc, number(g[2]), toWhole)
			}
			continue
		}
		if g := ribBlank.FindStringSubmatch(w.text); g != nil {
			m.put(part, "blank", 0, number(g[1]), toTenth)
		}
		for _, g := range toWidth.FindAllStringSubmatch(w.text, -1) {
			m.put(part, map[string]string{"hot": "hot width", "relax to": "relax to"}[g[1]], 0, number(g[2]), toFive)
		}
	}
}

// body reads where the ribs' heads stand; the lines of their outer faces run into each other.
func (m *offPaper) body(k *inked, heads map[string]float64) {
	at := k.take("mark", func(l *inkLine) bool { return len(l.Pieces) == 1 && !l.level() })
	for _, l := range at {
		l.read = false
	}
	var moved []string
	for _, w := range k.words {
		if math.Abs(w.from.X-w.to.X) > 0.01 || !ribName.MatchString(w.text) {
			continue
		}
		if head := headNamed(k, w, at); head != nil {
			m.head(head, w.text, heads)
		} else {
			moved = append(moved, w.text)
		}
	}
	for _, names := range moved { // off a joint: by the width that the book has
		ribs := ribsNamed(names)
		half := m.get("rib "+ribs[0], "half-breadth", 0)
		if len(ribs) == 1 && ribs[0][0] == 'A' {
			half = -half
		}
		for _, l := range at {
			if !l.read && math.Abs(l.middle().X-half) < toWhole/2+drawnWithin {
				m.head(l, names, heads)
				break
			}
		}
	}
	for _, l := range k.take("mark", func(l *inkLine) bool { return l.level() }) {
		m.put("hull", "waterline", 0, l.Y0, drawnWithin)
	}
	for _, pen := range []string{"mark", "long"} {
		k.take(pen, func(l *inkLine) bool { return len(l.Pieces) > 1 && !l.Closed })
	}
}

// pastFace is how far a head's line reaches past either face of its rib, mm.
const pastFace = 2.0

// headNamed is the head that a line joins to a name, nil for none: the line ends where the head's
// meets the rib's outer face, which is what is drawn of a rib. A name that is read from above
// is turned end for end where it was, as on tiles that lie turned.
func headNamed(k *inked, w inkWords, heads []*inkLine) *inkLine {
	foot := geometry.Pt(w.from.X-1.25, w.from.Y-0.8)
	if w.to.Y < w.from.Y {
		foot = geometry.Pt(w.to.X+1.25, w.to.Y-0.8)
	}
	for _, l := range k.lines {
		a, b := l.Pieces[0].From, l.Pieces[len(l.Pieces)-1].To
		if l.pen != "tick" || len(l.Pieces) != 1 || math.Hypot(b.X-foot.X, b.Y-foot.Y) > 0.03 {
			continue
		}
		for _, h := range heads {
			if half := math.Hypot(h.W(), h.H()) / 2; math.Abs(h.middle().To(a)-(half-pastFace)) < 0.02 && math.Abs(a.X) > math.Abs(h.middle().X) {
				return h
			}
		}
	}
	return nil
}

func (m *offPaper) head(l *inkLine, names string, heads map[string]float64) {
	l.read = true
	for _, rib := range ribsNamed(names) {
		m.put("rib "+rib, "half-breadth", 0, math.Abs(l.middle().X), drawnWithin)
		heads[rib] = l.middle().Y
	}
}

var laneEnds = regexp.MustCompile(`^(keel|S\d+) (after |forward )?end (-?[\d.]+) mm$`)

// leanOn is a small angle with the way it leans.
var leanOn = regexp.MustCompile(`\b(out|in) ([\d.]+)\x{b0}`)

// endOf asks for the end of a lane at the place that words give.
func endOf(edge *inkLine, w letteredWords) func(l *inkLine) bool {
	return func(l *inkLine) bool {
		return l.upright() && math.Abs(l.Y1-edge.Y0) < 0.02 && math.Abs(l.X0-number(w.groups[3])) < toTenth+drawnWithin
	}
}

// endsLane reports whether words are those of a lane's end: the lane ends where they say, and
// where more than one does they stand in it. Past a lane's end they may be moved out of it.
func (k *inked) endsLane(w letteredWords, edge *inkLine, edges []*inkLine) bool {
	ending := slices.DeleteFunc(slices.Clone(edges), func(e *inkLine) bool { return len(k.take("cut", endOf(e, w))) == 0 })
	return slices.Contains(ending, edge) && (len(ending) == 1 || w.from.Y <= edge.Y0 && w.from.Y >= foot(edges, edge))
}

// battens reads keel and stringers, a lane each.
func (m *offPaper) battens(k *inked) {
	edges := k.take("mark", func(l *inkLine) bool { return l.level() })
	slices.SortFunc(edges, func(a, b *inkLine) int { return cmp.Compare(b.Y0, a.Y0) })
	for _, edge := range edges {
		low := foot(edges, edge)
		if math.IsInf(low, -1) {
			low = edge.Y0 - 10
		}
		part := ""
		for _, w := range k.lettered(laneEnds) {
			if !k.endsLane(w, edge, edges) {
				continue
			}
			part = w.groups[1]
			if n, is := strings.CutPrefix(part, "S"); is {
				part = "stringer " + n
			}
			at := k.take("cut", endOf(edge, w))[0].X0
			if w.groups[2] != "after " {
				m.put(part, "fore end", 0, at, drawnWithin)
			}
			if w.groups[2] == "after " {
				m.put(part, "aft end", 0, at, drawnWithin)
			}
			if w.groups[2] == "" { // one half for both
				m.put(part, "aft end", 0, -at, drawnWithin)
			}
		}
		for _, l := range k.take("mark", func(l *inkLine) bool { return l.upright() && math.Abs(l.Y1-edge.Y0) < 0.02 }) {
			l.read = false
			for _, w := range k.words {
				names := regexp.MustCompile(`^(?:(?:keel|S\d+) )?((?:M|[AF]\d+)(?: [AF]\d+)*)(?: (-?[\d.]+) mm)?$`).FindStringSubmatch(w.text)
				off := math.Min(math.Abs(w.from.X-l.X0), math.Abs(w.to.X-l.X0))
				switch {
				case names == nil || w.from.Y > edge.Y0 || w.from.Y < low:
					continue
				case names[2] == "" && off > 2.5: // beside its mark
					continue
				case names[2] != "" && !(math.Abs(number(names[2])-l.X0) <= toTenth+drawnWithin): // says where it is
					continue
				}
				l.read = true
				ribs := ribsNamed(names[1])
				for _, rib := range ribs {
					m.put(part, "middle of rib "+rib, 0, placed(rib, l.X0, len(ribs) > 1), drawnWithin)
				}
			}
		}
	}
}

// middlePly reads the blocks of a gunwale whose mortises are gaps, from aft.
func (m *offPaper) middlePly(k *inked) {
	k.take("mark", func(l *inkLine) bool { return true })
	type block struct{ from, to float64 }
	var all []block
	halved := true
	for _, l := range k.take("cut", func(l *inkLine) bool { _, ok := l.Rectangle(0.02); return ok }) {
		if math.Abs(l.Y0) < 0.02 { // not the gauge for a gap
			all = append(all, block{l.X0, l.X1})
			halved = halved && l.X1 > 0
		}
	}
	if halved {
		for _, b := range slices.Clone(all) {
			if b.from > 0 {
				all = append(all, block{-b.to, -b.from})
			}
		}
	}
	slices.SortFunc(all, func(a, b block) int { return cmp.Compare(a.from, b.from) })
	for i, b := range all {
		part := fmt.Sprintf("block %d", i+1)
		if halved && b.from < 0 && b.to > 0 { // cut short over midship
			b.from = -b.to
		}
		m.put(part, "from", 0, b.from, drawnWithin)
		m.put(part, "to", 0, b.to, drawnWithin)
		m.put(part, "length", 0, b.to-b.from, 2*drawnWithin)
	}
}
