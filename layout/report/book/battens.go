package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

// battens draws keel and stringers laid straight, with where the ribs cross.
func (w *writer) battens() {
	f, d := w.Frame, w.Frame.Design
	w.chapter("Keel and stringers")
	w.say("Keel: %s, %s wide, %s deep, %s long, butted between the stems' shoulders. Stringers: %s, %s wide along the rib, %s deep, %d on each side.",
		d.Keel.Species, w.Fine(float64(d.Keel.Width)), w.Fine(float64(d.Keel.Depth)), w.Fine(f.Keel.Fore-f.Keel.Aft),
		d.Stringers.Species, w.Fine(float64(d.Stringers.Width)), w.Fine(float64(d.Stringers.Depth)), len(f.Stringers))
	t := report.Titled("Lengths on the straight stock, "+w.Marks()).Names("Batten").Numbers("Aft of midship", "Forward", "Whole", "Share of the way from keel to gunwale")
	t.Row("keel", w.Mark(-f.Keel.Aft), w.Mark(f.Keel.Fore), w.Mark(f.Keel.Fore-f.Keel.Aft), "-")
	for _, s := range f.Stringers {
		t.Row(fmt.Sprintf("S%d, two", s.Number), w.Mark(-s.Aft), w.Mark(s.Fore), w.Mark(s.Fore-s.Aft), fmt.Sprintf("%.0f %%", 100*s.Share))
	}
	w.add(t)
	w.runOut()
	w.add(w.battenFigure(), w.battenMarks())
}

// runOut says how the stringers run out to the stems.
func (w *writer) runOut() {
	f := w.Frame
	bevels := func(end func(t *curve.Track) float64) string {
		return wording.List(f.Stringers, func(s frame.Stringer) string {
			dy, _ := s.Line.Slopes(end(s.Line))
			return fmt.Sprintf("S%d %.0f", s.Number, math.Atan(math.Abs(dy))*180/math.Pi)
		})
	}
	ends := "Each stringer runs out fair and ends on its cross on the stem, where it bends least. Plane the inner face of its end to lie on the stem's side, in degrees: " +
		bevels(func(t *curve.Track) float64 { _, fore := t.Ends(); return fore })
	if !f.Design.EndsAlike() {
		ends += " at the bow, " + bevels(func(t *curve.Track) float64 { aft, _ := t.Ends(); return aft }) + " at the stern"
	}
	w.say("%s.", ends)
	if moved := w.moved(); len(moved) > 0 {
		w.say("On the last ribs some marks lie off that share, so that the stringer runs fair to the stem: %s. Lash to the marks.", strings.Join(moved, "; "))
	}
}

// moved names the marks on ribs that lie off a stringer's share of the way.
func (w *writer) moved() (out []string) {
	const least = 0.5 // mm
	for i, s := range w.Frame.Stringers {
		for _, r := range w.Frame.Ribs {
			by := r.Stringers[i] - s.Share*r.Section.Half.Length()
			side := "the gunwale"
			if by < 0 {
				side = "the keel"
			}
			if math.Abs(by) >= least {
				out = append(out, fmt.Sprintf("S%d on %s by %s to %s", s.Number, r.Name, w.Fine(math.Abs(by)), side))
			}
		}
	}
	return out
}

func (w *writer) battenFigure() report.Figure {
	f := w.Frame
	most := f.Keel.Fore - f.Keel.Aft
	for _, s := range f.Stringers {
		most = math.Max(most, s.Fore-s.Aft)
	}
	per := scaleFor(most, 0, 150, 1)
	s := newSketch("battens", "Keel and stringers, laid straight", per)
	row := func(i int, name string, aft, fore, wide float64, marks []float64) {
		y := -9.0 * float64(i) * per
		s.path(layout.Cut, curve.Rectangle(geometry.Box{Min: geometry.Point{X: aft, Y: y - wide/2}, Max: geometry.Point{X: fore, Y: y + wide/2}}))
		for _, m := range marks {
			s.line(layout.Tick, m, y-wide/2-1*per, m, y+wide/2+1*per)
		}
		s.note(aft, y, -2, -small/2, layout.Right, name)
	}
	row(0, "keel", f.Keel.Aft, f.Keel.Fore, float64(f.Design.Keel.Width), f.Keel.RibMarks)
	for i, b := range f.Stringers {
		row(i+1, fmt.Sprintf("S%d", b.Number), b.Aft, b.Fore, float64(f.Design.Stringers.Width), b.RibMarks)
	}
	s.line(layout.Center, 0, 6*per, 0, -(9*float64(len(f.Stringers))+6)*per)
	return report.Figure{Drawing: s.Drawing, Caption: fmt.Sprintf("Keel and stringers laid straight, %s, bow to the right. Ticks are the middles of the ribs, the upright line is midship.", ratio(per)),
		About: "Keel and stringers as straight sticks with the places where the ribs cross them."}
}

func (w *writer) battenMarks() report.Table {
	f := w.Frame
	t := report.Titled("Middles of the ribs on the straight battens, from midship, " + w.Unit()).Names("Rib").Numbers("keel")
	for _, s := range f.Stringers {
		t = t.Numbers(fmt.Sprintf("S%d", s.Number))
	}
	for i, r := range f.Ribs {
		row := []string{r.Name, w.Cell(f.Keel.RibMarks[i])}
		for _, s := range f.Stringers {
			row = append(row, w.Cell(s.RibMarks[i]))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (w *writer) lashings() {
	l := w.Needs.Lashings
	w.chapter("Lashings and skin")
	w.say("%d crossings, each an X lashing of %d turns, two on each diagonal: %d of ribs with stringers at %s of cord each, %d with the keel at %s, tails of %s together. With a tenth to spare and both ends tied, %.0f m (%.0f ft) of cord.",
		l.Count(), materials.Turns, l.Stringers, w.Length(l.EachStringer), l.Keel, w.Length(l.EachKeel), w.Length(materials.Tails), l.Total/1000, l.Total/304.8)
	w.say("Wet or wax the cord, haul every turn taut, and let no knot stand outside the battens, where the skin would chafe on it.")
}

func (w *writer) skin() {
	n, f := w.Needs, w.Frame
	w.section("Skin")
	w.add(report.Titled("").Words("Cloth and coating").Numbers("").Filled(
		"sheet to buy, length", w.Length(n.Cloth.Length), "sheet to buy, width", w.Length(n.Cloth.Width),
		"greatest way round the outside, gunwale top to gunwale top", w.Length(n.Cloth.Width-2*materials.GripEach),
		"least way round at the last ribs", w.Length(n.Cloth.EndGirth),
		"length along keel and both stems", w.Length(f.Skin.Length), "length along a gunwale", w.Length(f.Gunwale.Fore-f.Gunwale.Aft),
		"outside of the boat", fmt.Sprintf("%.2f m2 (%.1f sq ft)", n.Cloth.Area/1e6, n.Cloth.Area/92903.04),
		"cloth and coating by the design", fmt.Sprintf("%.0f g/m2 = %.1f oz/yd2", f.Design.Skin.Mass(), measure.OuncesPerSquareYard(f.Design.Skin.Mass())),
		"fasteners along both gunwales", fmt.Sprint(n.Tacks)))
	w.cloth()
	w.say("Lay the sheet over the upturned frame with its middle thread on the keel. It has %s more on each side than it covers, to pull by. Fasten amidships first, then outward to both ends, each place on one side and then on the other; pull along the boat before across.", w.Length(materials.GripEach))
	over := n.Cloth.Width - 2*materials.GripEach - n.Cloth.EndGirth
	w.say("The seam runs up each stem, from the forefoot to the head, a flat fell of some 20 mm (3/4 in). At the last ribs the sheet has about %s too much across: gather it in even pleats towards the stem, none longer than 40 mm (1 1/2 in), as common practice has it without a source; sew the seam, trim, and turn the edge in.", w.Length(math.Max(0, over)))
	w.warn("A hot knife and a hot iron give off fumes from synthetic cloth: open the doors. Cut away from yourself; a glove that resists cuts on the hand that holds.", "common practice, no source read")
	w.warn("Two-part urethanes and their vapour can cause asthma for life, and smaller amounts then suffice. Brush, never spray; ventilate; gloves, goggles, and the respirator that the maker's sheet asks for.", "NIOSH alert 96-111 on diisocyanates")
}

// cloth says whether the stringers hold the cloth off the ribs.
func (w *writer) cloth() {
	f, c := w.Frame, w.Clearance
	near := c.Nearest
	if len(c.Proud) == 0 {
		if near.By <= -0.1 {
			w.say("The stringers hold the flat cloth off every rib; rib %s comes nearest, %s inside it between %s. Stringers that are planed thinner than the design leave less.",
				near.Rib, w.Fine(-near.By), near.Between(f))
		}
		return
	}
	text := fmt.Sprintf("Ribs %s stand outside the flat cloth, most of all rib %s, by %s between %s: the cloth lies on them there, they show through and chafe it.",
		skin.Runs(f, c.Proud), near.Rib, w.Fine(near.By), near.Between(f))
	if c.Cure != nil {
		text += fmt.Sprintf(" The cheapest cure, before the stringers are lashed: %s, and make the book and the patterns anew; then every rib stays inside the cloth.", c.Cure.Words(f.Design, w.Fine))
	} else {
		text += " Round their outer edges over with care."
	}
	w.say("%s", text)
}
