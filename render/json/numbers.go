package json

import (
	"cmp"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
)

// Numbers gathers every number that the patterns of a boat show, and where each piece
// of them lies on the sheets. What is a mark on wood comes from the list of marks of
// the same frame; lines and outlines come from the frame, forces from how it is bent.
//
// Errors: a design that has no fingerprint, which Check would have refused; a list that
// lacks a mark of the frame, by its name.
func Numbers(b *bend.Report, list []marks.Mark, doc layout.Document) (Object, error) {
	f, joints := b.Frame, b.Joints
	l := &lookup{in: marks.Index(list)}
	out, err := of(f.Design, Object{
		{"hull", hullOf(l, b)},
		{"gunwale", gunwaleOf(l, f)},
		{"ribs", each(f.Ribs, func(r frame.Rib) Object { return ribOf(l.part("rib "+r.Name), f, r) })},
		{"stems", each([]frame.Stem{f.Bow, f.Stern}, func(s frame.Stem) Object { return stemOf(l.part(s.End+" stem"), s, b.Joints) })},
		{"keel", battenOf(l.part("keel"), f, 0, 0)},
		{"stringers", upTo(len(f.Stringers), func(i int) Object {
			return stringerOf(l.part(fmt.Sprintf("stringer %d", i+1)), f, f.Stringers[i], b.Stringers[i])
		})},
		{"thwarts", orNull(upTo(len(f.Thwarts), func(i int) Object {
			return thwartOf(l.part(fmt.Sprintf("thwart %d", i+1)), f.Thwarts[i])
		}))},
		{"seats", seatsOf(l, f)},
		{"breasthooks", each([]frame.Breasthook{f.BowHook, f.SternHook}, func(b frame.Breasthook) Object {
			return hookOf(l.part(b.End+" breasthook"), b, joints)
		})},
		{"joints", each(joints.All(), jointOf)},
		{"rib_peg", pegOf(l.part("rib peg"), &joints.Head)},
		{"skin", skinOf(l.part("skin"), f.Design.Skin)},
		{"outside", outsideOf(l, b.Outside.Fit)},
		{"inside", insideOf(l, b.Inside)},
		{"pages", pages(doc)},
	}...)
	return out, cmp.Or(err, l.missing)
}

// lookup finds marks.
type lookup struct {
	in      map[marks.Name]marks.Mark
	missing error // the first mark that was not found
}

func (l *lookup) part(name string) part { return part{l, name} }

// part finds the marks of one part.
type part struct {
	*lookup
	name string
}

// of returns the part's only mark of a quantity.
func (p part) of(quantity string) fixed { return p.nth(quantity, 0) }

// both returns the marks at the after and the forward end.
func (p part) both(quantity string) []fixed {
	return []fixed{p.of("aft " + quantity), p.of("fore " + quantity)}
}

// nth returns the mark with the number n of several, from 1.
func (p part) nth(quantity string, n int) fixed {
	v := p.maybe(quantity, n)
	if math.IsNaN(float64(v)) && p.missing == nil { // the marks of a list are finite
		p.missing = fmt.Errorf("the list of marks has no %s of %s", quantity, p.name)
	}
	return v
}

// all returns n marks of a quantity.
func (p part) all(quantity string, n int) []fixed {
	return upTo(n, func(i int) fixed { return p.nth(quantity, i+1) })
}

// maybe returns a mark that not every boat has: null without it.
func (p part) maybe(quantity string, n int) fixed {
	m, ok := p.in[marks.Name{Part: p.name, Quantity: quantity, Number: n}]
	switch {
	case !ok:
		return fixed(none)
	case m.Unit == marks.Radian:
		return deg(m.Value)
	}
	return fixed(m.Value)
}

// outline flattens a closed path to points within 0.01 mm of it; the last point
// does not repeat the first.
func outline(p curve.Path) [][]fixed {
	pts := p.Flatten(0.01)
	return each(pts[:len(pts)-1], place)
}

func place(p geometry.Point) []fixed { return as[fixed](p.X, p.Y) }

// lineStep is the distance between points of a line in space, mm: chords of
// this length fall short of a gunwale's bend by less than 0.0001 mm each.
const lineStep = 10.0

// line samples a track from its after to its forward end, at the given places
// too. Every place asked for is a point of the result.
func line(t *curve.Track, at []float64) [][]fixed {
	from, end := t.Ends()
	xs := []float64{from}
	for _, x := range append(at, end) {
		n := max(1, int(math.Ceil((x-from)/lineStep)))
		for i := 1; i <= n; i++ {
			xs = append(xs, from+(x-from)*float64(i)/float64(n))
		}
		from = x
	}
	return each(xs, func(x float64) []fixed {
		p := t.Point(x)
		return as[fixed](p.X, p.Y, p.Z)
	})
}
