package pattern

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/label"
	"ribwright/layout/lettering"
)

// Form draws half of the i-th form that ribs are bent round, from its middle line (x =
// 0) out; the other half is marked by turning the pattern over on that line. y is the
// height over the middle of the rib's thickness at the keel, as the rib hangs in the boat.
func Form(b *bend.Report, i int, units measure.System) layout.Drawing {
	f := b.Forms[i]
	d := layout.Drawing{
		Name: "form-" + f.Names[0], Title: "Form for ribs " + strings.Join(f.Names, ", "), Family: "Forms for ribs",
		Make: fmt.Sprintf("%s of %s sheet", wording.Counted(f.Layers, "layer"), units.Whole(bend.FormStock)),
	}
	if len(f.Names) == 1 {
		d.Title = "Form for rib " + f.Names[0]
	}
	foot, end := f.Edge[0].Start(), f.Edge[len(f.Edge)-1].End()
	d.Line(layout.Cut, f.Edge)
	d.Straight(layout.Cut, end.X, end.Y, 0, end.Y)
	d.Straight(layout.Center, 0, foot.Y, 0, end.Y)
	for _, h := range f.Holes {
		if h.Bounds().Center().X > -1e-6 {
			d.Line(layout.Cut, h)
		}
	}
	for _, t := range f.Ticks {
		d.Line(layout.Mark, t)
	}
	rib := ribNamed(b, f.Names[0])
	lines := []string{"Both halves in one piece: turn over on the middle line.",
		"Bend the ribs round the lower edge, the middle first; a clamp in every hole.",
		"Short lines at the edge: where bends meet; the last is the rib's shoulder."}
	if rib.Relax > 0 {
		lines = append(lines, fmt.Sprintf("On the form the shoulders stand %s apart; free, the rib shall stand %s.", units.Rough(rib.Hot), units.Rough(rib.Relax)))
	}
	tell(&d, f, lines)
	return d
}

// tell letters the title and lines of words on the face of a form, beside its middle
// line, broken to the widest room that holds them clear of holes and edge. A joint through
// them would leave a narrow piece that owns them all and has no room for them.
func tell(d *layout.Drawing, f bend.Form, lines []string) {
	const from, widest, narrowest = 6.0, 130.0, 50.0
	for room := widest; ; room -= 10 {
		titles := lettering.Wrap(d.Title, head, room)
		var words []string
		for _, l := range append([]string{d.Make + "."}, lines...) {
			words = append(words, lettering.Wrap(l, small, room)...)
		}
		high := float64(len(titles))*(head+2) + float64(len(words))*row
		y, ok := clearOn(f, from, room, high+4)
		if !ok && room > narrowest {
			continue
		}
		top := y
		y -= 2
		for _, l := range titles {
			y -= head + 2
			d.Write(from, y, head, layout.Left, l)
		}
		for _, l := range words {
			y -= row
			d.Write(from, y, small, layout.Left, l)
		}
		d.Keep = append(d.Keep, layout.Span{From: -12, To: from + room + 3})
		d.KeepUp = append(d.KeepUp, layout.Span{From: y - 9, To: top + 1})
		return
	}
}

// clearOn finds the highest box on the face of a form that begins at x, wide and high
// mm, and touches neither hole nor edge. It returns its upper edge, or the form's where
// there is no room.
func clearOn(f bend.Form, x, wide, high float64) (top float64, ok bool) {
	r := label.On(f.Outline)
	for _, h := range f.Holes {
		r.Line(h)
	}
	face := f.Outline.Bounds()
	for top = face.Max.Y - 2; top-high > face.Min.Y; top -= 2 {
		if r.Free(label.Block{At: geometry.Pt(x, top-high), Wide: wide, High: high}) {
			return top, true
		}
	}
	return face.Max.Y - 2, false
}

// ribNamed is how the rib of that name is bent.
func ribNamed(b *bend.Report, name string) bend.Rib {
	for _, r := range b.Ribs {
		if r.Name == name {
			return r
		}
	}
	return bend.Rib{}
}
