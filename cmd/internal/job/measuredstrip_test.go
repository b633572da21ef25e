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

// slotDrawn is a mortise on the strip, in the whole boat.
type slotDrawn struct {
	rib          string
	at, from, to float64
}

// strip reads the mortises and all else that is marked on the gunwales.
func (m *offPaper) strip(k *inked, pieces map[string]string) {
	half := 0.0
	for _, l := range k.take("mark", func(l *inkLine) bool { return l.level() && l.W() > 100 }) {
		half = math.Max(half, math.Abs(l.Y0))
	}
	m.put("gunwale", "width", 0, 2*half, drawnWithin)
	sym := m.endCuts(k, half)
	slots := m.slots(k, half, sym)
	m.gaps(k, slots, sym)
	m.bolts(k, half, sym, pieces)
	m.notches(k, half, sym)
	k.take("mark", func(l *inkLine) bool { // lines to the names of the slots
		return l.upright() && slices.ContainsFunc(slots, func(s slotDrawn) bool { return math.Abs(math.Abs(s.at)-math.Abs(l.X0)) < 0.02 })
	})
}

// endCuts reads the ends, and says whether one half serves for both.
func (m *offPaper) endCuts(k *inked, half float64) (sym bool) {
	cuts := k.take("cut", func(l *inkLine) bool {
		return len(l.Pieces) == 1 && !l.Closed && math.Abs(l.Y1-half) < 0.02 && math.Abs(l.Y0+half) < 0.02
	})
	slices.SortFunc(cuts, func(a, b *inkLine) int { return cmp.Compare(a.X0, b.X0) })
	sym = len(cuts) == 1
	end := func(name string, l *inkLine, side float64) {
		x := l.middle().X
		m.put("gunwale", name+" end", 0, math.Copysign(x, side), drawnWithin)
		m.put("gunwale", name+" end cut", 0, math.Atan(l.W()/l.H()), 0.0005)
		for _, w := range k.lettered(regexp.MustCompile(`top face the cut is ([\d.]+) mm farther out`)) {
			if math.Abs(w.from.X-x) < 20 || math.Abs(w.to.X-x) < 20 {
				m.put("gunwale", name+" end longer above", 0, number(w.groups[1]), toTenth)
			}
		}
	}
	end("fore", cuts[len(cuts)-1], 1)
	end("aft", cuts[0], -1)
	m.put("gunwale", "stock length", 0, m.get("gunwale", "fore end", 0)-m.get("gunwale", "aft end", 0), 2*drawnWithin)
	return sym
}

// slots reads the mortises.
func (m *offPaper) slots(k *inked, half float64, sym bool) []slotDrawn {
	var out []slotDrawn
	slots := k.take("cut", func(l *inkLine) bool {
		b, ok := l.Rectangle(0.02)
		return ok && b.H() > 2 && b.W() > 5 && math.Abs(b.Y0+b.Y1) < 0.02
	})
	names := k.slotNames(slots)
	for _, l := range slots {
		x := l.middle().X
		ribs := ribsNamed(names[l])
		for _, rib := range ribs {
			at := placed(rib, x, sym && len(ribs) > 1)
			out = append(out, slotDrawn{rib, at, at - l.W()/2, at + l.W()/2})
			part := "mortise " + rib
			m.put(part, "from midship", 0, at, drawnWithin)
			m.put(part, "length", 0, l.W(), drawnWithin)
			m.put(part, "width", 0, l.H(), drawnWithin)
			m.put(part, "wall", 0, half-l.H()/2, drawnWithin)
			for _, w := range k.words {
				if math.Abs(w.from.X-(x+1.5)) > 0.02 || w.from.Y < half {
					continue
				}
				if g := leanOn.FindStringSubmatch(w.text); g != nil {
					m.put(part, "bevel", 0, number(g[2]+" "+g[1])*degree, toTenth*degree)
				}
				if strings.Contains(w.text, "lean square") || strings.Contains(w.text, "leans square") {
					m.put(part, "bevel", 0, 0, toTenth*degree)
				}
				if g := regexp.MustCompile(`taper ([\d.]+) mm`).FindStringSubmatch(w.text); g != nil {
					m.put(part, "head taper", 0, number(g[1]), toTenth)
				}
			}
		}
	}
	slices.SortFunc(out, func(a, b slotDrawn) int { return cmp.Compare(a.at, b.at) })
	return out
}

// slotNames are the ribs of the slots. A name stands beside its slot; one that a joint
// would cut stands on the other side, a little off, or in small letters.
func (k *inked) slotNames(slots []*inkLine) map[*inkLine]string {
	const far = 25.0 // mm, less than half way to the next
	out := map[*inkLine]string{}
	for _, w := range k.words {
		if !ribName.MatchString(w.text) {
			continue
		}
		for _, l := range slots {
			if x := l.middle().X; math.Min(math.Abs(w.to.X-x), math.Abs(w.from.X-x)) < far {
				out[l] = w.text
			}
		}
	}
	return out
}

// edges are the two of some upright lines that stand so far apart, nearest to where their words
// have their middle: words are moved a little where a joint would cut them. NaN for none.
func edges(lines []*inkLine, mid, long float64) (from, to float64) {
	const moved = 15.0
	from, to, best := math.NaN(), math.NaN(), moved
	for _, a := range lines {
		for _, b := range lines {
			off := math.Abs((a.X0+b.X0)/2 - mid)
			if math.Abs(b.X0-a.X0-long) < 0.3 && off < best {
				from, to, best = a.X0, b.X0, off
			}
		}
	}
	return from, to
}

// gaps reads the wood from slot to slot and to scarfs.
func (m *offPaper) gaps(k *inked, slots []slotDrawn, sym bool) {
	for i, s := range slots {
		next := m.get("gunwale", "fore end", 0)
		if i+1 < len(slots) {
			next = slots[i+1].from
		}
		m.put("mortise "+s.rib, "to next", 0, next-s.to, 2*drawnWithin)
	}
	var scarfs [][2]float64
	for _, w := range k.lettered(regexp.MustCompile(`^scarf of one ply, ([\d.]+) mm long(.*)$`)) {
		mid, long := (w.from.X+w.to.X)/2, number(w.groups[1])
		from, to := edges(k.take("guide", func(l *inkLine) bool { return l.upright() }), mid, long)
		if !sym || !strings.Contains(w.groups[2], "after half") {
			scarfs = append(scarfs, [2]float64{from, to})
		}
		if sym && !strings.Contains(w.groups[2], "forward half") {
			scarfs = append(scarfs, [2]float64{-to, -from})
		}
	}
	slices.SortFunc(scarfs, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	for i, z := range scarfs {
		m.put("gunwale", "scarf from", i+1, z[0], drawnWithin)
		m.put("gunwale", "scarf to", i+1, z[1], drawnWithin)
	}
	for _, s := range slots {
		gap := math.Inf(1)
		for _, z := range scarfs {
			gap = math.Min(gap, math.Max(s.from-z[1], z[0]-s.to))
		}
		if len(scarfs) > 0 {
			m.put("mortise "+s.rib, "to scarf", 0, gap, 2*drawnWithin)
		}
	}
}

// bolts reads holes for cross pieces, by the names that their own patterns have, and
// the lines for bolts of hangers.
func (m *offPaper) bolts(k *inked, half float64, sym bool, pieces map[string]string) {
	for key, name := range pieces {
		for _, w := range k.words {
			title, whose, _ := strings.Cut(w.text, ", ")
			if title != name && w.text != name {
				continue
			}
			if w.text == name {
				whose = ""
			}
			mid := (w.from.X + w.to.X) / 2
			var at []float64
			for _, l := range k.take("mark", func(l *inkLine) bool {
				return l.round() && math.Abs(l.middle().Y) < 0.02 && math.Abs(l.middle().X-mid) < 40
			}) {
				x := l.middle().X
				if sym && whose == "after half only" {
					x = -x
				}
				at = append(at, x)
			}
			slices.Sort(at)
			for n, x := range at {
				m.put("gunwale", "bolt of "+strings.Replace(key, "-", " ", 1)+" from midship", n+1, x, drawnWithin)
			}
		}
	}
	lines := k.take("mark", func(l *inkLine) bool {
		return l.upright() && math.Abs(l.Y0+half) < 0.02 && math.Abs(l.Y1-half) < 0.02
	})
	for _, l := range lines {
		found := false
		for name, r := range m.of { // the book says whose they are
			if strings.HasPrefix(name.Quantity, "bolt of seat") && (math.Abs(r.value-l.X0) < 0.1 || sym && math.Abs(r.value+l.X0) < 0.1) {
				m.put(name.Part, name.Quantity, name.Number, math.Copysign(l.X0, r.value), drawnWithin)
				found = true
			}
		}
		l.read = found
	}
}

// notches reads where spreaders hold.
func (m *offPaper) notches(k *inked, half float64, sym bool) {
	var at []float64
	for _, l := range k.take("mark", func(l *inkLine) bool { return len(l.Pieces) == 2 && !l.Closed && math.Abs(l.Y0+half) < 0.02 }) {
		x := l.middle().X
		at = append(at, x)
		if sym && math.Abs(x) > 0.02 {
			at = append(at, -x)
		}
	}
	slices.Sort(at)
	for i, x := range at {
		m.put(fmt.Sprintf("spreader %d", i+1), "from midship", 0, x, drawnWithin)
	}
}

// bars are the stretches that shall have no scarf, as drawn: on a half those of both
// halves, run together.
func (k *inked) bars() []rendertest.Box {
	var out []rendertest.Box
	for _, l := range k.take("mark", func(l *inkLine) bool {
		b, ok := l.Rectangle(0.02)
		return ok && math.Abs(b.H()-0.8) < 0.02
	}) {
		out = append(out, l.Box)
	}
	return out
}
