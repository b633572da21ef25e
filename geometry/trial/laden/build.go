package laden

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/equations"
)

// builder makes a boat from aft forward.
type builder struct {
	*Boat
	gunwale, keel, stringer stiffness
	stems                   [2]stiffness
	last                    []*joint // the ends of keel, stringers and gunwale so far
	line                    []*joint // theirs at the last rib or stem, between which cloth lies
	loads                   [][]Load
}

// Of readies a frame on which loads hang in turn: each list is one.
//
// Errors: woods that are not known; a frame that does not stand.
func Of(f *frame.Frame, loads ...[]Load) (*Boat, error) {
	b := builder{Boat: &Boat{frame: f, wide: float64(f.Design.Ribs.Width), hung: make([][]push, len(loads))}, loads: loads}
	rib, err := b.woods()
	if err != nil {
		return nil, err
	}
	var c condenser
	for i, r := range f.Ribs {
		if other := len(f.Ribs) - 1 - i; other < i && alike(r, f.Ribs[other]) {
			b.hoops = append(b.hoops, b.hoops[other])
			continue
		}
		h, ok := c.hoop(r, b.wide, rib)
		if !ok {
			return nil, fmt.Errorf("rib %s does not stand", r.Name)
		}
		b.hoops = append(b.hoops, h)
	}
	b.stem(0)
	for _, p := range b.places() {
		b.pass(p)
	}
	b.stem(1)
	b.base = equations.NewProfile(b.first)
	for _, t := range b.sticks {
		t.hold(b.base)
	}
	return b.Boat, nil
}

// alike reports whether two ribs hold alike, as those of a boat do whose ends are equal.
func alike(r, s frame.Rib) bool {
	return r.Thickness == s.Thickness && slices.Equal(r.Stringers, s.Stringers) && slices.Equal(r.Section.Half, s.Section.Half)
}

// woods makes the stiffnesses of what runs along the boat, and returns that of the ribs' wood.
func (b *builder) woods() (rib float64, err error) {
	d, g := b.frame.Design, &b.frame.Gunwale
	of := func(wide, deep float64, name string) stiffness {
		wood, bad := d.Wood(name)
		err = cmp.Or(err, bad)
		return rectangle(wide, deep, wood.MOE)
	}
	b.keel = of(float64(d.Keel.Width)/2, float64(d.Keel.Depth), d.Keel.Species)
	b.stringer = of(float64(d.Stringers.Width), float64(d.Stringers.Depth), d.Stringers.Species)
	b.stringer = stiffness{long: b.stringer.long} // beside gunwale and keel it bends and twists easily
	b.gunwale = of(g.Width, g.Height, d.Gunwale.Species)
	if o := d.Outside; o.Outwale > 0 {
		s := of(float64(o.Outwale), float64(o.OutwaleHeight), d.OutsideWood()) // screwed on: it bends along and slides
		b.gunwale.tall, b.gunwale.flat = b.gunwale.tall+s.tall, b.gunwale.flat+s.flat
	}
	for i, s := range []design.Stem{d.After(), d.Bow} {
		b.stems[i] = of(float64(s.Siding)/2, float64(s.Moulded), d.StemWood())
	}
	wood, bad := d.Wood(d.Ribs.Species)
	return wood.MOE, cmp.Or(err, bad)
}

// place is one where something meets the gunwale.
type place struct {
	at    float64
	rib   int // its number, or -1
	cross bool
	loads []hanging
}

// hanging is a load with the number of its list.
type hanging struct {
	list int
	Load
}

// same is the distance under which two places are one, mm: far below what can be marked.
const same = 0.01

// places are from aft forward, each once.
func (b *builder) places() (out []place) {
	for i, r := range b.frame.Ribs {
		out = append(out, place{at: r.Station, rib: i})
	}
	for _, c := range b.frame.Thwarts {
		k := placeAt(&out, c.At)
		out[k].cross = true
	}
	for i, list := range b.loads {
		for _, l := range list {
			k := placeAt(&out, l.At)
			out[k].loads = append(out[k].loads, hanging{i, l})
		}
	}
	return out
}

// placeAt is the number of the place at a station, which is made where there is none.
func placeAt(all *[]place, x float64) int {
	k := 0
	for k < len(*all) && (*all)[k].at < x-same {
		k++
	}
	if k == len(*all) || (*all)[k].at > x+same {
		*all = append(*all, place{})
		copy((*all)[k+1:], (*all)[k:])
		(*all)[k] = place{at: x, rib: -1}
	}
	return k
}

// pass brings all that runs along the boat on to a place.
func (b *builder) pass(p place) {
	var line []*joint
	if p.rib >= 0 {
		line = b.crossings(p.rib)
	}
	j := b.joint(b.frame.Gunwale.At(p.at, 0, 0), 0, 2, 3, 4, 5)
	if !p.cross { // which keeps the gunwale from going in or out
		b.free(j, 1)
	}
	b.run(len(b.last)-1, j)
	for _, l := range p.loads {
		b.hung[l.list] = append(b.hung[l.list], push{j.of[1], l.Out}, push{j.of[2], l.Up})
	}
	if p.rib >= 0 {
		line = append(line, j)
		b.hoop(p.rib, line)
		b.cover(line)
		b.bed(p.rib, line)
	}
}

// crossings brings keel and stringers on to a rib.
func (b *builder) crossings(i int) (line []*joint) {
	r := b.frame.Ribs[i]
	at := func(along float64) geometry.Point3 {
		p, _ := r.Section.Half.At(along)
		return geometry.Point3{X: r.Station, Y: p.X, Z: p.Y + r.Section.KeelZ}
	}
	line = append(line, b.joint(at(0), 0, 2, 4))
	for _, s := range r.Stringers {
		line = append(line, b.joint(at(s), 0, 1, 2))
	}
	for k, j := range line {
		b.run(k, j)
	}
	return line
}

// run runs the keel (0), a stringer or the gunwale (the last) on to a joint.
func (b *builder) run(i int, to *joint) {
	g := &b.frame.Gunwale
	t := stick{from: b.last[i], to: to, up: geometry.Point3{Z: 1}, stiff: b.stringer}
	switch {
	case i == 0:
		t.stiff = b.keel
	case i == len(b.last)-1:
		t.up, t.stiff = geometry.Point3{Y: math.Sin(g.Tilt), Z: math.Cos(g.Tilt)}, b.gunwale
		b.rails = append(b.rails, t)
	}
	b.last[i] = to
	b.join(t)
}

func (b *builder) join(t stick) {
	moves := t.moves()
	b.meet(moves[:]...)
	b.sticks = append(b.sticks, t)
}

// hoop stands half a rib on keel, stringers and gunwale.
func (b *builder) hoop(i int, line []*joint) {
	h := &b.hoops[i]
	keel, head := line[0].of, line[len(line)-1].of
	h.within.of, h.square.of = []int{keel[2]}, []int{keel[0]}
	for _, j := range line[1:] {
		h.within.of = append(h.within.of, j.of[1], j.of[2])
		h.square.of = append(h.square.of, j.of[0])
	}
	h.within.of = append(h.within.of, head[3])
	h.square.of = append(h.square.of, head[4], head[5])
	b.meet(h.within.of...)
	b.meet(h.square.of...)
}

// cover lays cloth from the last rib or stem to this one.
func (b *builder) cover(line []*joint) {
	if b.line != nil {
		b.bays = append(b.bays, newBay(b.line, line))
		b.meet(b.bays[len(b.bays)-1].on[:]...)
	}
	b.line = line
}

// stem is an end, after (0) or fore (1): a stick with the ends of keel, stringers and gunwale on
// it, which turn on it but for rolling. It stays in the middle of the boat. The after one keeps
// the boat from going ahead.
func (b *builder) stem(end int) {
	var on []*joint
	for i, t := range b.lines() {
		aft, fore := t.Ends()
		j := b.joint(t.Point([]float64{aft, fore}[end]), 2, 4)
		if i+end > 0 {
			b.free(j, 0)
		}
		if i > 0 {
			b.join(stick{on[i-1], j, geometry.Point3{X: 1, Z: 1}, b.stems[end]})
		}
		on = append(on, j)
	}
	b.cover(on)
	ends := slices.Clone(on)
	for _, i := range []int{0, len(on) - 1} {
		ends[i] = &joint{on[i].at, on[i].of}
		b.free(ends[i], 4)
	}
	b.free(ends[len(on)-1], 5)
	if end == 0 {
		b.last = ends
		return
	}
	for i, j := range ends {
		b.run(i, j)
	}
}

// lines are those of keel, stringers and gunwale.
func (b *builder) lines() []*curve.Track {
	out := []*curve.Track{b.frame.Keel.Line}
	for _, s := range b.frame.Stringers {
		out = append(out, s.Line)
	}
	return append(out, b.frame.Gunwale.Line)
}
