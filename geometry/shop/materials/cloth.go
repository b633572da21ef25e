package materials

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/fabric"
	"ribwright/geometry/wording"
)

// Allowances for the cloth, mm. Common practice, no source.
const (
	GripLeast  = 60.0  // beyond the gunwale's top on each side: the least that can be pulled by
	gripMost   = 100.0 // likewise; more is trimmed off before it is in the way
	GripLength = 400.0 // beyond the boat, both ends together, at least
	cutStep    = 100.0 // of lengths that shops cut
	JoinLap    = 30.0  // of two sheets sewn to one another
	toTry      = 50.0  // the narrowest strip that needle and coating can be tried on
	toIron     = 150.0 // and heat, where the cloth is ironed
	trial      = 300.0 // of the roll, where no such strip is trimmed off
)

// rolls are the widths that cloth is sold in, 45, 60 and 72 in, mm. From memory.
func rolls() []float64 { return []float64{1143, 1524, 1829} }

// Thread for one mm of seam, both rows with their turns through the cloth, and for its two
// ends, mm. Estimate.
const (
	threadPerSeam = 6.0
	threadTails   = 1000.0
)

// Cloth is the sheet for the skin, mm.
type Cloth struct {
	Girth    float64    // the greatest way round the outside, gunwale top to gunwale top
	EndGirth float64    // round the last rib on each end; what the cloth has too much there is gathered
	Area     float64    // of the boat's outside, mm2
	Length   float64    // of each sheet, in steps that shops cut
	Least    float64    // width that covers the boat and can just be gripped
	Roll     float64    // width that is bought
	Wide     float64    // to which the sheet is trimmed: Girth and Grip on either side
	Trial    float64    // of the roll besides, to try needle, heat and coating on; 0 where what is trimmed off serves
	Sheets   int        // side by side; more than one are sewn together along the boat
	Grip     float64    // what is left on each side to pull by
	Pull     float64    // how far it is drawn over the greatest girth
	Ends     [2]float64 // seams up the stems, the after one first
	Seam     float64    // all seams along the boat, 0 for one sheet
	Thread   float64
	Slack    float64  // how much longer the way along a gunwale is than along the keel, between the forefeet
	TakesUp  float64  // how much of Slack the fiber takes up when it is drawn taut
	Pleats   int      // at each end, for the slack that is left
	Pleat    float64  // what each of them takes up, at most PleatTakes; 0 without pleats
	Marks    []Pulled // by rib, from aft forward
	Lies     []Lie    // from aft forward
}

// Pulled is where a rib lies under the cloth.
type Pulled struct {
	Rib     string
	Station float64
	Half    float64 // from the middle of the keel to the gunwale's upper edge, round the outside
	Mark    float64 // from the middle thread to a line that is drawn on slack cloth and stands on that edge when it is drawn taut
}

// Lie is what the boat takes of the flat sheet at a station: on each side of the middle
// thread from the stem, or from the thread itself, to the gunwale's upper edge.
type Lie struct{ Station, Inner, Outer float64 }

// PleatTakes is how much cloth one pleat takes up at most, mm. Common practice, no source.
const PleatTakes = 20.0

// sheetOf is the cloth to buy: over the greatest girth and the longest line, with what is
// needed to grip it. Of the widths that are sold it takes the narrowest that does as one
// sheet; a boat that none covers takes two or more sewn together.
func sheetOf(f *frame.Frame, c *skin.Cloth) Cloth {
	s := f.Design.Skin
	out := Cloth{
		Girth: f.Skin.Girth, EndGirth: math.Inf(1), Area: c.Area(),
		Length: upTo(math.Max(f.Hull.Length, f.Gunwale.Fore-f.Gunwale.Aft)+GripLength, cutStep),
		Ends:   [2]float64{f.Hull.Stern.Outer.Length(), f.Hull.Bow.Outer.Length()},
	}
	ribs := c.Ribs()
	for i, r := range ribs {
		half, _ := r.Girth()
		out.Girth = math.Max(out.Girth, 2*half)
		if i == 0 || i == len(ribs)-1 {
			out.EndGirth = math.Min(out.EndGirth, 2*half)
		}
	}
	fiber := fabric.Fiber(s.Fiber)
	out.Pull = fiber.Pull() * out.Girth
	for i, r := range f.Ribs {
		half, _ := ribs[i].Girth()
		out.Marks = append(out.Marks, Pulled{r.Name, r.Station, half, half * (1 - fiber.Pull())})
	}
	out.lie(c)
	out.TakesUp = math.Min(out.Slack, fiber.Shrink()*(out.Length-GripLength))
	if each := (out.Slack - out.TakesUp) / 2; each > 0 {
		out.Pleats = int(math.Ceil(each / PleatTakes))
		out.Pleat = each / float64(out.Pleats)
	}
	out.Least = out.Girth + 2*GripLeast
	out.Roll, out.Sheets = rollFor(out.Least, float64(s.Roll))
	out.Seam = float64(out.Sheets-1) * out.Length
	out.Grip = math.Min((out.Sewn()-out.Girth)/2, gripMost)
	out.Wide = out.Girth + 2*out.Grip
	strip := toTry
	if len(fiber.Ironing().Steps) > 0 {
		strip = toIron
	}
	if (out.Sewn()-out.Wide)/2 < strip {
		out.Trial = trial
	}
	for _, seam := range append(out.Ends[:], out.Seam) {
		if seam > 0 {
			out.Thread += threadPerSeam*seam + threadTails
		}
	}
	return out
}

// lie lays the boat on the flat sheet with its keel on the middle thread, and measures by
// how much the gunwales' way along the boat is the longer one.
func (c *Cloth) lie(over *skin.Cloth) {
	stern, bow := over.Ends()
	heel, toe := over.At(-stern.Toe)[0].Y, over.At(bow.Toe)[0].Y
	var last [2]geometry.Point3
	begun := false
	for _, x := range over.Stations() {
		pts := over.At(x)
		l := Lie{Station: x}
		switch {
		case x > bow.Toe:
			l.Inner = math.Max(0, pts[0].Y-toe)
		case x < -stern.Toe:
			l.Inner = math.Max(0, pts[0].Y-heel)
		}
		l.Outer = l.Inner
		for i := 1; i < len(pts); i++ {
			l.Outer += pts[i].Sub(pts[i-1]).Norm()
		}
		c.Lies = append(c.Lies, l)
		if x < -stern.Toe || x > bow.Toe {
			continue
		}
		rail := pts[len(pts)-1]
		at := [2]geometry.Point3{{X: x, Z: pts[0].Y}, {X: x, Y: rail.X, Z: rail.Y}}
		if begun {
			c.Slack += at[1].Sub(last[1]).Norm() - at[0].Sub(last[0]).Norm()
		}
		last, begun = at, true
	}
	c.Slack = math.Max(0, c.Slack)
}

// Sewn is how wide the lengths off the roll are side by side, mm.
func (c Cloth) Sewn() float64 { return float64(c.Sheets)*c.Roll - float64(c.Sheets-1)*JoinLap }

// rollFor picks a width that is sold, or the builder's own, and how many lengths of it lie
// side by side. Two sheets meet under the keel and may be half as wide.
func rollFor(wide, own float64) (roll float64, sheets int) {
	widths := rolls()
	if own > 0 {
		widths = []float64{own}
	}
	for n := 1; ; n++ {
		for _, w := range widths {
			if float64(n)*w-float64(n-1)*JoinLap >= wide {
				return w, n
			}
		}
	}
}

// OffRoll is how much of the roll is bought, mm along it.
func (c Cloth) OffRoll() float64 { return float64(c.Sheets)*c.Length + c.Trial }

// Bought is the cloth off the roll, mm2.
func (c Cloth) Bought() float64 { return c.OffRoll() * c.Roll }

// Coating is what the coats take, liters, with what stays in brush and tray. Each coat is
// mixed by itself, to the next tenth of a liter, and all of them are bought.
type Coating struct {
	fabric.Coats
	FirstCoat float64
	EachLater float64 // 0 where there is no second
	Liters    float64 // to buy
}

// coatingOf is none where there is no cloth.
func coatingOf(s design.Skin, c *skin.Cloth) Coating {
	if s.Cloth == 0 {
		return Coating{}
	}
	k, area := s.Coated(), c.Area()/1e6/(1-fabric.Loss)
	first, later := upTo(area*k.First(), 0.1), upTo(area*k.Later(), 0.1)
	return Coating{k, first, later, upTo(first+later*math.Max(0, float64(k.Count-1)), 0.1)}
}

// cover lists cloth and coating, none for a frame without its skin.
func (n *Needs) cover(s design.Skin) {
	c, k := n.Cloth, n.Coating
	if s.Cloth > 0 {
		n.add("cloth", s.Fiber.String()+" cloth for the skin", upTo(c.Bought()/1e6, 0.1), "m2", "%.1f m off a roll %.3f m wide, for %s",
			c.OffRoll()/1000, c.Roll/1000, map[bool]string{true: "one sheet", false: "sheets sewn together"}[c.Sheets == 1])
	}
	if k.Liters > 0 {
		later := ""
		if k.Count > 1 {
			later = fmt.Sprintf(", %.1f L for each later one", k.EachLater)
		}
		n.add("coating", "coating of the skin", k.Liters, "L", "%s on %.2f m2, each mixed by itself: %.1f L for the first%s, with what stays in brush and tray", wording.Counted(k.Count, "coat"), c.Area/1e6, k.FirstCoat, later)
	}
}

// thread is for all seams.
func (n *Needs) thread() {
	n.add("thread", "waxed thread", upTo(n.Cloth.Thread/1000, 1), "m", "%.0f times %.2f m of seam, and %.1f m at each of its ends", threadPerSeam, (n.Cloth.Ends[0]+n.Cloth.Ends[1]+n.Cloth.Seam)/1000, threadTails/2000)
}
