package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
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
	w.add(w.toSteam().IfAny()...)
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
	row := func(i int, name string, aft, fore, wide float64, marks []float64, ends [2]float64) {
		y := -9.0 * float64(i) * per
		s.path(layout.Cut, tapered(aft, fore, wide, marks, ends).Map(geometry.Shift(0, y)))
		for _, m := range marks {
			s.line(layout.Tick, m, y-wide/2-1*per, m, y+wide/2+1*per)
		}
		s.note(aft, y, -2, -small/2, layout.Right, name)
	}
	row(0, "keel", f.Keel.Aft, f.Keel.Fore, float64(f.Design.Keel.Width), f.Keel.RibMarks, [2]float64{2 * w.keelEnd(f.Stern.End), 2 * w.keelEnd(f.Bow.End)})
	wide := float64(f.Design.Stringers.Width)
	for i, b := range f.Stringers {
		row(i+1, fmt.Sprintf("S%d", b.Number), b.Aft, b.Fore, wide, b.RibMarks, [2]float64{wide, wide})
	}
	s.line(layout.Center, 0, 6*per, 0, -(9*float64(len(f.Stringers))+6)*per)
	return report.Figure{Drawing: s.Drawing, Caption: fmt.Sprintf("Keel and stringers laid straight, %s, bow to the right. Ticks are the middles of the ribs, the upright line is midship.", ratio(per)),
		About: "Keel and stringers as straight sticks with the places where the ribs cross them."}
}

// tapered is the outline of a stick that is so wide between its first and last marks, and at
// its ends as wide as given.
func tapered(aft, fore, wide float64, marks []float64, ends [2]float64) curve.Path {
	a, b := marks[0], marks[len(marks)-1]
	return curve.Polygon(geometry.Pt(aft, -ends[0]/2), geometry.Pt(a, -wide/2), geometry.Pt(b, -wide/2), geometry.Pt(fore, -ends[1]/2),
		geometry.Pt(fore, ends[1]/2), geometry.Pt(b, wide/2), geometry.Pt(a, wide/2), geometry.Pt(aft, ends[0]/2))
}

// keelTaper tells how the keel's ends narrow to the stems, "" where they do not.
func (w *writer) keelTaper() string {
	f := w.Frame
	wide, bow, stern := float64(f.Design.Keel.Width), 2*w.keelEnd(f.Bow.End), 2*w.keelEnd(f.Stern.End)
	if bow == wide && stern == wide {
		return ""
	}
	to := w.Fine(bow)
	if stern != bow {
		to += " at the bow's end, " + w.Fine(stern) + " at the stern's"
	}
	return fmt.Sprintf(" From its marks of the last ribs, %s and %s, out to its ends plane both sides straight, port and starboard alike, from %s wide to %s, as wide as the stem: the cloth would stand up over a square shoulder there. Round the planed edges again, as the others are.",
		f.Ribs[0].Name, f.Ribs[len(f.Ribs)-1].Name, w.Fine(wide), to)
}

// tapers reminds of the taper at the joint of one end.
func (w *writer) tapers(end string) string {
	if 2*w.keelEnd(end) == float64(w.Frame.Design.Keel.Width) {
		return ""
	}
	return " Seen from below, its taper runs on into the stem's sides."
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
