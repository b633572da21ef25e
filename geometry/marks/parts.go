package marks

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
)

// ends lists stems and breasthooks. Their outlines are on the patterns.
func (l *list) ends(f *frame.Frame) {
	for _, s := range []frame.Stem{f.Bow, f.Stern} {
		l.part = s.End + " stem"
		l.length("thickness", s.Thickness, planed)
		for i, at := range s.Landings {
			l.nth("stringer landing from midship", i+1, at.At.X, pencil)
			l.nth("stringer landing height", i+1, at.At.Y, pencil)
		}
	}
	for _, b := range []frame.Breasthook{f.BowHook, f.SternHook} {
		l.part = b.End + " breasthook"
		l.length("thickness", b.Thickness, planed)
		l.angle("bevel", b.Bevel)
		l.angle("slope", math.Atan(b.Slope))
	}
}

// hull lists the shape that the frame is held to while it is set up.
func (l *list) hull(f *frame.Frame) {
	h := f.Hull
	l.part = "hull"
	l.length("length", h.Length, set)
	l.length("beam", h.Beam, FreeWidth)
	l.length("depth", h.Depth, set)
	l.length("waterline", float64(f.Design.Hull.Waterline), pencil)
	l.length("sheer at midship", h.Sheer.MidZ, set)
	l.length("sheer at bow", h.Sheer.BowZ, sprung)
	l.length("sheer at stern", h.Sheer.SternZ, sprung)
	l.length("keel end at bow", h.Bow.Toe.X, sawn)
	l.length("keel end at stern", -h.Stern.Toe.X, sawn)
}

func (l *list) thwart(i int, t frame.Thwart) {
	l.part = fmt.Sprintf("thwart %d", i+1)
	l.length("station", t.At, set)
	l.length("thickness", t.Thickness, planed)
	l.length("length", t.Length, pencil)
	l.length("between gunwales", t.Between, FreeWidth)
	l.angle("end cut", t.EndCut)
}

// battens lists the keel and the stringers.
func (l *list) battens(f *frame.Frame) {
	l.part = "keel"
	l.batten(f, f.Keel.Aft, f.Keel.Fore, f.Keel.RibMarks)
	for _, s := range f.Stringers {
		l.part = fmt.Sprintf("stringer %d", s.Number)
		l.batten(f, s.Aft, s.Fore, s.RibMarks)
	}
}

func (l *list) batten(f *frame.Frame, aft, fore float64, ribs []float64) {
	l.length("aft end", aft, sawn)
	l.length("fore end", fore, sawn)
	for i, at := range ribs {
		l.length("middle of rib "+f.Ribs[i].Name, at, sawn)
	}
}

func (l *list) skin(f *frame.Frame) {
	l.part = "skin"
	l.length("thickness", float64(f.Design.Skin.Thickness), coating)
	l.length("midship girth", f.Skin.Girth, cloth)
	l.length("length", f.Skin.Length, cloth)
}
