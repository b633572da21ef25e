package marks

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/trial/bend"
)

// ends lists stems and breasthooks. Their outlines are on the patterns.
func (l *list) ends(f *frame.Frame, b *bend.Report) {
	for end, s := range []frame.Stem{f.Bow, f.Stern} {
		part := s.End + " stem"
		l.add(part, length("thickness", s.Thickness, planed))
		if b != nil {
			l.stemHoles(part, b.Joints, 1-end)
		}
		for i, at := range s.Landings {
			l.add(part, length("stringer landing from midship", at.X, joined).nth(i+1),
				length("stringer landing height", at.Y, joined).nth(i+1))
		}
	}
	for end, h := range []frame.Breasthook{f.BowHook, f.SternHook} {
		l.add(h.End+" breasthook", length("thickness", h.Thickness, planed), angle("bevel", h.Bevel), angle("slope", math.Atan(h.Slope)))
		if h.Painter > 0 {
			l.add(h.End+" breasthook", length("painter's hole from the gunwale ends", h.Painter, joined))
		}
		if b != nil {
			pegs := &b.Joints.Hooks[1-end]
			for i, from := range pegs.FromEnd {
				l.add(h.End+" breasthook", length("peg from the gunwale's end", from, pencil).nth(i+1))
			}
			l.add(h.End+" breasthook", length("peg diameter", pegs.Fastener.Diameter, bored), length("pegs down", pegs.Down, pencil), length("peg hole depth", pegs.Fastener.Length, pencil))
		}
	}
}

// stemHoles lists what is bored in a stem, and the screws of its foot.
func (l *list) stemHoles(part string, j *joint.Joints, end int) {
	for i, h := range j.Landings[end].Holes {
		l.add(part, length("stringer hole from midship", h.At.X, pencil).nth(i+1), length("stringer hole height", h.At.Y, pencil).nth(i+1))
	}
	g := &j.Ends[end]
	l.add(part, length("stringer hole diameter", j.Landings[end].Drill, bored), length("gunwale hole diameter", g.Drill, bored),
		length("gunwale hole from midship", g.At.X, pencil), length("gunwale hole height", g.At.Y, pencil),
		length("gunwale hole from its end", g.FromEnd, pencil), length("gunwale hole up", g.Up, pencil))
	for i, from := range j.Feet[end].FromEnd {
		l.add(part, length("screw from the keel's end", from, pencil).nth(i+1))
	}
}

// hull lists the shape that the frame is held to while it is set up.
func (l *list) hull(f *frame.Frame) {
	h := f.Hull
	l.add("hull", length("length", h.Length, set), length("beam", h.Beam, FreeWidth), length("depth", h.Depth, set),
		length("waterline", float64(f.Design.Hull.Waterline), pencil), length("sheer at midship", h.Sheer.MidZ, set),
		length("sheer at bow", h.Sheer.BowZ, sprung), length("sheer at stern", h.Sheer.SternZ, sprung),
		length("keel end at bow", h.Bow.Toe.X, sawn), length("keel end at stern", -h.Stern.Toe.X, sawn))
}

// spreaders lists where and how wide the gunwales are held while they are bent, by
// number from aft.
func (l *list) spreaders(f *frame.Frame) {
	for i, s := range f.Design.AllSpreaders() {
		l.add(fmt.Sprintf("spreader %d", i+1), length("station", float64(s.At), set),
			length("from midship", f.Gunwale.OnStock(float64(s.At)), pencil), length("beam", float64(s.Beam), held))
	}
}

func (l *list) thwart(i int, t frame.Thwart, tilt float64) {
	l.add(fmt.Sprintf("thwart %d", i+1), length("station", t.At, set), length("thickness", t.Thickness, planed),
		length("length", t.Length, pencil), length("between gunwales", t.Between, FreeWidth), angle("end cut", t.EndCut), length("end cut back below", t.Under, pencil), length("hole diameter", t.Hole, bored), angle("bolts lean", tilt))
	for k, h := range t.Holes {
		at := h.Bounds().Center()
		l.add(fmt.Sprintf("thwart %d", i+1), length("hole off the middle line", at.X, pencil).nth(k+1), length("hole forward of its middle", at.Y, pencil).nth(k+1))
	}
}

// ribPeg lists the peg of a rib's head.
func (l *list) ribPeg(h *joint.Head) {
	l.add("rib peg", length("diameter", h.Fastener.Diameter, bored), length("up", h.Up, pencil), length("hole depth", h.Long, pencil), length("least wall", h.Wall, planed))
}

// battens lists the keel and the stringers.
func (l *list) battens(f *frame.Frame) {
	l.batten("keel", f, f.Keel.Aft, f.Keel.Fore, f.Keel.RibMarks)
	for _, s := range f.Stringers {
		l.batten(fmt.Sprintf("stringer %d", s.Number), f, s.Aft, s.Fore, s.RibMarks)
	}
}

func (l *list) batten(part string, f *frame.Frame, aft, fore float64, ribs []float64) {
	l.add(part, length("aft end", aft, sawn), length("fore end", fore, sawn))
	for i, at := range ribs {
		l.add(part, length("middle of rib "+f.Ribs[i].Name, at, joined))
	}
}

func (l *list) skin(f *frame.Frame) {
	l.add("skin", length("thickness", float64(f.Design.Skin.Thickness()), coating),
		length("midship girth", f.Skin.Girth, cloth), length("length", f.Skin.Length, cloth))
}

// outside lists the strips over the skin and the holes for painters.
func (l *list) outside(f *frame.Frame, o outside.Fit) {
	for _, s := range []struct {
		part string
		outside.Strip
	}{{"outwale", o.Outwale}, {"keel strip", o.Keel}} {
		if s.There() {
			l.add(s.part, length("off the skin", s.Across, planed), length("along the skin", s.Tall, planed), length("length", s.Long, sawn))
			for i, at := range s.Screws {
				l.add(s.part, length("screw from midship", at, joined).nth(i+1))
			}
		}
	}
	if o.Painter > 0 {
		l.add("painters", length("length", o.Painter, cloth), length("hole from the gunwale ends", f.BowHook.Painter, joined))
	}
}

// inside lists floor slats, footbraces and backrests, by number from aft or in the order
// of the crew.
func (l *list) inside(o inside.Fit) {
	for i, fl := range o.Floors {
		part := fmt.Sprintf("floor %d", i+1)
		l.add(part, length("aft end", fl.Aft, sawn), length("fore end", fl.Fore, sawn), length("width", fl.Wide, planed), length("thickness", fl.Thick, planed))
		for k, y := range fl.Across {
			l.add(part, length("slat from the middle line", y, sawn).nth(k+1))
		}
	}
	for i, b := range o.Braces {
		l.add(fmt.Sprintf("footbrace %d", i+1), length("after face", b.At, sprung), length("board", b.Bar, sawn), length("rail", b.Rail, sawn), length("rail from the middle line", b.Across, sawn))
	}
	for i, b := range o.Backs {
		l.add(fmt.Sprintf("backrest %d", i+1), length("fore face", b.At, cloth), length("lower edge over the floor", b.Low, cloth), length("board", b.Across, sawn))
	}
}
