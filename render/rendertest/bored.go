package rendertest

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// hole is one through a gunwale, or a screw in it: how far it reaches along it, and from
// the underside up.
type hole struct {
	what     string
	from, to float64
	low, top float64
}

// usualBolt is how wide a hole of a hanger's bolt is at the least, and outwaleScrew how thick a
// screw of an outwale, mm.
const (
	usualBolt    = 5
	outwaleScrew = 3
)

// bored holds what is cut into a gunwale clear of all else that is: mortises from below, bolts
// of cross pieces upright, of hangers and screws of outwales level.
func (f *faults) bored(b *Fitted) {
	high := b.Gunwale.Height
	var all []hole
	for _, m := range b.Gunwale.Mortises {
		all = append(all, hole{"mortise " + m.Rib, m.Midship - m.Length/2, m.Midship + m.Length/2, 0, m.Depth})
	}
	for _, c := range b.Thwarts {
		for _, x := range c.Bolts {
			all = append(all, hole{fmt.Sprintf("the bolt of %s at %.1f", c.Name, x), x - c.Bolt/2, x + c.Bolt/2, 0, high})
		}
	}
	for _, s := range b.Seats {
		if s.Hung == nil {
			continue
		}
		for _, r := range []rail{s.Hung.Front, s.Hung.After} {
			up := high - r.Down
			for _, x := range r.Bolts {
				all = append(all, hole{fmt.Sprintf("the bolt of %s's hanger at %.1f", s.Name, x), x - usualBolt/2, x + usualBolt/2, up - usualBolt/2, up + usualBolt/2})
			}
		}
	}
	if b.Outside.Outwales != nil {
		for _, x := range b.Outside.Outwales.Screws {
			all = append(all, hole{fmt.Sprintf("the outwale's screw at %.1f", x), x - outwaleScrew/2, x + outwaleScrew/2, 0, high})
		}
	}
	f.apart(all)
}

// crossings holds cross pieces between the gunwales.
func (f *faults) crossings(b *Fitted) {
	for _, c := range b.Thwarts {
		y, _ := over(b.Gunwale.Line, c.Station)
		f.unless(c.Clear > 0 && c.Clear < 2*y, "%s is %.1f mm long between gunwales, the boat %.1f mm wide there", c.Name, c.Clear, 2*y)
	}
}

// apart holds holes clear of one another, with wood between them.
func (f *faults) apart(all []hole) {
	slices.SortStableFunc(all, func(a, b hole) int { return cmp.Compare(a.from, b.from) })
	for i, a := range all {
		for _, b := range all[:i] {
			clear := math.Max(a.from-b.to, math.Max(a.low-b.top, b.low-a.top))
			f.unless(clear >= leastWood, "%s is %.2f mm from %s", a.what, clear, b.what)
		}
	}
}

// seat holds a seat over the keel and under the gunwales' top, and its rails between hangers
// that are long enough to reach them.
func (f *faults) seat(b *Fitted, s seated) {
	_, z := over(b.Gunwale.Line, s.Station)
	f.unless(s.Top > 0 && s.Top < z+b.Gunwale.Height, "%s has its top at %.1f mm, the gunwale its own at %.1f", s.Name, s.Top, z+b.Gunwale.Height)
	f.unless(s.Length > 0, "%s is %.1f mm long", s.Name, s.Length)
	if s.Hung == nil {
		return
	}
	for _, r := range []rail{s.Hung.Front, s.Hung.After} {
		y, z := over(b.Gunwale.Line, r.Station)
		f.unless(r.Top < z, "a rail of %s has its top at %.1f mm, the gunwale its underside at %.1f", s.Name, r.Top, z)
		f.unless(r.Length > 0 && r.Length < 2*y, "a rail of %s is %.1f mm long, the boat %.1f mm wide there", s.Name, r.Length, 2*y)
		f.unless(r.ToTop > r.Down && r.Hanger > r.ToTop, "a hanger of %s is %.1f mm long, its rail %.1f mm down, its bolts %.1f", s.Name, r.Hanger, r.ToTop, r.Down)
	}
}

// floor holds slats beside one another and inside the ribs that they lie on.
func (f *faults) floor(b *Fitted, l slatted) {
	for i, at := range l.At {
		f.unless(i == 0 || at-l.At[i-1] >= l.Width, "floor slats of %.1f mm lie at %.1f and %.1f", l.Width, l.At[max(0, i-1)], at)
	}
	for _, r := range b.Ribs {
		if n := len(l.At); n > 0 && slices.Contains(l.Ribs, r.Rib) {
			wide := Around(r.Points(12)...).X1
			f.unless(l.At[n-1]+l.Width/2 < wide, "a floor slat reaches %.1f mm out, rib %s %.1f", l.At[n-1]+l.Width/2, r.Rib, wide)
		}
	}
}
