package hours

import (
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
)

type counter struct {
	f   *frame.Frame
	p   *cutlist.Plan
	n   *materials.Needs
	out []Work
}

func (c *counter) add(s Stage, name string, count float64, unit string, minutes float64) {
	if count > 0 {
		c.out = append(c.out, Work{s, name, count, unit, minutes})
	}
}

// wood is everything from the patterns to planed sticks.
func (c *counter) wood() {
	rips, pieces, metres, sections := 0.0, 0.0, 0.0, map[[2]float64]bool{}
	for _, w := range c.p.Woods {
		for _, b := range w.Boards {
			for _, r := range b.Rips {
				rips += b.Board.Length / 1000 * float64(len(r.Layers))
			}
			pieces += float64(len(b.Pieces()))
		}
	}
	joints := 0.0
	for i, s := range c.p.Sticks {
		metres += s.Length / 1000
		sections[[2]float64{s.Width, s.Thickness}] = true
		joints += float64(len(c.p.Cuttings[i].Joints))
	}
	c.add(Loft, "print, check and tape patterns", 1, "set", 90)
	c.add(Saw, "set the saw for a section", float64(len(sections)), "sections", 6)
	c.add(Saw, "rip", rips, "m", 0.9)
	c.add(Saw, "crosscut and mark", pieces, "pieces", 0.7)
	c.add(Saw, "plane and ease the edges", metres, "m", 0.6)
	c.add(Saw, "scarf and glue", joints, "scarfs", 15)
}

// frame is the frame, from the gunwales to the last lashing.
func (c *counter) frame() {
	f := c.f
	ribs, plies := float64(len(f.Ribs)), float64(f.Design.Gunwale.Plies)
	c.add(Gunwale, "glue plies of a pair of gunwales", 2*(plies-1), "glue lines", 15)
	c.add(Gunwale, "mark and cut mortises", 2*ribs, "mortises", 3.5)
	c.add(Gunwale, "cut the ends", 4, "ends", 8)
	c.add(Ends, "saw and shape stems", 2, "stems", 45)
	c.add(Ends, "make and fit breasthooks", 2, "breasthooks", 35)
	c.add(Setup, "spread the gunwales and tie the ends", 1, "boat", 110)
	c.add(Setup, "make and fit cross pieces", float64(len(f.Thwarts)), "cross pieces", 25)
	c.add(Bend, "rig the steam box", 1, "boat", 45)
	c.add(Bend, "mark, shoulder and ease ribs", ribs, "ribs", 3)
	c.add(Bend, "steam and bend", ribs, "ribs", 3)
	c.add(Bend, "fit, true by eye and peg", ribs, "ribs", 5)
	c.add(Lash, "fit keel and stringers", float64(1+2*len(f.Stringers)), "battens", 10)
	c.add(Lash, "lash", float64(c.n.Lashings.Count()), "crossings", 1.5)
}

// cover is the rest: oil, skin, coats, fitting out.
func (c *counter) cover() {
	g := &c.f.Gunwale
	area := c.n.Cloth.Area / 1e6
	c.add(Oil, "smooth and round over", c.n.WoodFaces/1e6, "m2 of wood", 8)
	c.add(Oil, "oil", c.n.WoodFaces/1e6*materials.OilCoats, "m2 and coat", 3)
	c.add(Skin, "lay out and stretch the cloth", 1, "boat", 60)
	c.add(Skin, "fasten the cloth", 2*(g.Fore-g.Aft)/1000, "m of gunwale", 4)
	c.add(Skin, "gather and sew the ends", 2, "ends", 45)
	c.add(Coat, "coat", area*materials.Coats, "m2 and coat", 4)
	c.add(Coat, "mix, clean up", materials.Coats, "coats", 15)
	c.add(Fit, "seat, flotation, trial", 1, "boat", 90)
}
