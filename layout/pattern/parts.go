package pattern

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/label"
	"ribwright/layout/lettering"
)

// GaugeStock is the plywood that gauges and guides are cut from, mm: stiff enough
// and cheap. Common practice, no source.
const GaugeStock = 4.0

// plywood is what gauges, guides and forms are cut from.
const plywood = "plywood"

// stemStuff is what stems are cut from.
func stemStuff(b *bend.Report) string {
	d := b.Frame.Design
	if d.MadeStems() == design.StemsPlywood {
		return d.StemWood() + " " + plywood
	}
	return d.StemWood()
}

// engraved is the height of letters on cut parts, mm.
const engraved = 5

// Parts returns every piece to cut from sheet or plank by machine, each as many
// times as the boat needs it. The grain of stems runs from foot to head, that of
// thwarts and breasthooks along x; gauges and forms may lie any way.
func Parts(b *bend.Report) []layout.Part {
	f := b.Frame
	out := []layout.Part{stemPart(b, f.Bow, 1), stemPart(b, f.Stern, 0), hookPart(b, f.BowHook, 1), hookPart(b, f.SternHook, 0)}
	for i, t := range f.Thwarts {
		p := thwartPart(t)
		p.Material = f.Design.Thwarts[i].Species
		out = append(out, p)
	}
	out = append(out, seatParts(f)...)
	shows := "in the boat"
	if b.OnForms() {
		shows = "free rib"
	}
	for _, g := range b.Gauges {
		out = append(out, gaugePart(g, shows))
	}
	for _, form := range b.Forms {
		out = append(out, formParts(form)...)
	}
	return out
}

func engrave(p *layout.Part, at geometry.Point, angle float64, words string) {
	if words = lettering.Safe(words); words != "" {
		p.Letters = append(p.Letters, layout.Text{At: at, Height: engraved, Angle: angle, Align: layout.Middle, Words: words})
	}
}

func stemPart(b *bend.Report, s frame.Stem, end int) layout.Part {
	l, g := &b.Joints.Landings[end], &b.Joints.Ends[end]
	p := layout.Part{Name: s.End + " stem", Material: stemStuff(b), Thickness: s.Thickness, Grain: s.Grain}
	if b.Frame.Design.MadeStems() != design.StemsLaminated { // whose blank is bent
		p.Blank = s.Blank()
	}
	for _, h := range l.Holes {
		p.Cut = append(p.Cut, curve.Circle(h.At, l.Drill/2))
	}
	p.Cut = append(p.Cut, curve.Circle(g.At, g.Drill/2), s.Outline)
	for _, l := range s.Landings {
		// Crosses show where the stringers land; the number stands beside them.
		p.Marks = append(p.Marks,
			curve.Polyline(l.Add(geometry.Point{X: -3}), l.Add(geometry.Point{X: 3})),
			curve.Polyline(l.Add(geometry.Point{Y: -3}), l.Add(geometry.Point{Y: 3})))
	}
	room := label.On(s.Outline)
	for _, path := range append(slices.Clone(p.Cut), p.Marks...) {
		room.Line(path)
	}
	for i, l := range s.Landings {
		engraveNear(&p, room, l.Add(geometry.Point{X: -11}), 0, 0, fmt.Sprintf("S%d", i+1))
	}
	// The name runs up the wood from the forefoot, clear of all that is cut and marked.
	engraveNear(&p, room, s.Middle.Add(geometry.Polar(40, s.Rise)), s.Rise, namesApart, fmt.Sprintf("%s stem, %.4g mm", s.End, s.Thickness))
	return p
}

// namesApart is how far a part's name keeps, before and behind, from what is on the wood
// besides, mm, where there is room: nearer, it and the number of a stringer read as one word.
const namesApart = 4.0

// engraveNear engraves words as near to a place as the part has room for them, so far apart
// from the rest before and behind if that can be, and in small letters where large ones
// have no room.
func engraveNear(p *layout.Part, room *label.Room, near geometry.Point, angle, apart float64, words string) {
	words = lettering.Safe(words)
	for _, height := range []float64{engraved, engraved * 0.7, small} {
		b := label.Block{Angle: angle, Wide: lettering.StrokeWidth(words, height), Low: -0.3 * height, High: height}
		for _, apart := range []float64{apart, 0} {
			wide := b
			wide.Wide += 2 * apart
			if at, found := room.Place(wide, near); found {
				b.Angle, b.At = at.Angle, at.At.Add(geometry.Polar(apart, at.Angle))
				room.Block(b)
				p.Letters = append(p.Letters, layout.Text{At: b.At, Height: height, Angle: b.Angle, Align: layout.Left, Words: words})
				return
			}
		}
	}
}

func hookPart(r *bend.Report, b frame.Breasthook, end int) layout.Part {
	p := layout.Part{Name: b.End + " breasthook", Cut: []curve.Path{b.Outline}, Material: r.Frame.Design.Breasthook.Species, Thickness: b.Thickness, Blank: b.Blank(), Marks: pegMarks(&r.Joints.Hooks[end])}
	if hole := b.Hole(); hole != nil {
		p.Cut = append([]curve.Path{hole}, p.Cut...)
	}
	box := b.Outline.Bounds()
	from := box.Min.X * 0.45
	if b.Painter > 0 { // the middle line begins beyond the hole
		from = math.Max(from, frame.PainterHole/2+3-b.Painter)
	}
	p.Marks = append(p.Marks, curve.Polyline(geometry.Point{X: from}, geometry.Point{X: box.Max.X - 4}))
	room := label.On(b.Outline)
	for _, path := range append(slices.Clone(p.Cut), p.Marks...) {
		room.Line(path)
	}
	engraveNear(&p, room, geometry.Point{X: box.Min.X * 0.6, Y: -engraved * 1.5}, 0, namesApart, fmt.Sprintf("%s, %.4g mm", b.End, b.Thickness))
	return p
}

func thwartPart(t frame.Thwart) layout.Part {
	// Holes are bored in the boat, through the gunwale's own: here they only show where.
	p := layout.Part{Name: t.Name, Cut: []curve.Path{t.Outline}, Marks: slices.Clone(t.Holes), Thickness: t.Thickness, Blank: t.Blank()}
	p.Marks = append(p.Marks, curve.Polyline(geometry.Point{Y: -8}, geometry.Point{Y: 8}))
	p.Engrave(geometry.Point{X: t.Length / 4, Y: -engraved / 2}, engraved, fmt.Sprintf("%s, %.4g mm", t.Name, t.Thickness), t.Length/3)
	return p
}

// gaugePart is a gauge that shows a shape: of the rib in the boat, or of the free rib.
func gaugePart(g frame.Gauge, shows string) layout.Part {
	p := layout.Part{Name: "gauge " + strings.Join(g.Names, ", "), Cut: []curve.Path{g.Outline}, Marks: g.Ticks, Material: plywood, Thickness: GaugeStock, Loose: true}
	room := label.On(g.Outline)
	for _, t := range g.Ticks {
		room.Line(t)
	}
	engraveNear(&p, room, g.Middle.Add(geometry.Point{Y: 1}), 0, 0, "gauge "+strings.Join(g.Names, ", "))
	engraveNear(&p, room, g.Middle.Sub(geometry.Point{Y: engraved + 1}), 0, 0, shows)
	return p
}

// formParts are the layers of a form.
func formParts(f bend.Form) []layout.Part {
	name := "form " + strings.Join(f.Names, ", ")
	var out []layout.Part
	for range f.Layers {
		p := layout.Part{Name: name, Cut: append(slices.Clone(f.Holes), f.Outline), Material: plywood, Thickness: bend.FormStock, Loose: true}
		for _, t := range f.Ticks {
			p.Marks = append(p.Marks, t, t.Map(geometry.Stretch(-1, 1)))
		}
		p.Marks = append(p.Marks, curve.Polyline(geometry.Point{Y: f.Edge[0].Start().Y}, geometry.Point{Y: f.Edge[0].Start().Y + 12}))
		for long := lettering.StrokeWidth(name, engraved); ; long -= 10 {
			if top, ok := clearOn(f, -long/2, long, 2*engraved); ok || long < 40 {
				p.Engrave(geometry.Point{Y: top - 1.5*engraved}, engraved, name, long)
				break
			}
		}
		out = append(out, p)
	}
	return out
}

// leastBush is how much wider a guide bush is than its bit at the least, mm: half
// a millimeter of steel on each side. Common practice, no source.
const leastBush = 1.0

// How far a guide reaches past its opening, so that the router does not tip, and
// how wide its cheek is, mm. Common practice, no source.
const (
	guideFoot  = 60.0
	guideCheek = 30.0
)

// Guide returns a plate for routing the mortises and the cheek that is fixed
// under it: a bush of one diameter in the router's foot rides in the opening,
// and a bit of another cuts the slot. The opening is the slot and bush less bit
// each way, its corners as round as the bush. The line is the gunwale's edge: the
// cheek's face lies on it, and the short lines on the middle of the mortise. Lean
// the stock, not the guide.
//
// Units: mm. Errors: a bit wider than the slot, a bush that does not go round the bit,
// or mortises that are gaps.
func Guide(f *frame.Frame, bush, bit float64) ([]layout.Part, error) {
	if f.Gunwale.Blocks != nil {
		return nil, errors.New(`no router cuts the mortises of this gunwale, which are gaps between blocks; leave the guide out, or set gunwale.mortises = "cut"`)
	}
	slot := f.Gunwale.Mortises[0]
	for _, m := range f.Gunwale.Mortises {
		slot.Length, slot.Width = math.Min(slot.Length, m.Length), math.Min(slot.Width, m.Width)
	}
	switch {
	case !(bit > 0 && bit <= slot.Width):
		return nil, fmt.Errorf("a bit of %.4g mm cannot cut a slot %.4g mm wide; accepted: a bit of at most %.4g mm", bit, slot.Width, slot.Width)
	case !(bush >= bit+leastBush && bush <= bit+f.Gunwale.Width-slot.Width):
		// A wider opening would reach past the gunwale's edge, where the cheek is.
		return nil, fmt.Errorf("a bush of %.4g mm does not suit a bit of %.4g mm on a gunwale %.4g mm wide; accepted: %.4g to %.4g mm",
			bush, bit, f.Gunwale.Width, bit+leastBush, bit+f.Gunwale.Width-slot.Width)
	}
	more := bush - bit
	long, wide := (slot.Length+more)/2, (slot.Width+more)/2
	mid := f.Gunwale.Width / 2
	reach, top := long+guideFoot, mid+wide+guideFoot
	opening := curve.Rounded(geometry.Rect(-long, mid-wide, long, mid+wide), bush/2)
	plate := layout.Part{Name: "router guide", Material: plywood, Thickness: GaugeStock, Loose: true, Cut: []curve.Path{
		append(opening[1:], opening[0]), // the cut begins in a corner
		curve.Rectangle(geometry.Rect(-reach, -guideCheek, reach, top)),
	}}
	plate.Marks = []curve.Path{
		curve.Polyline(geometry.Point{X: -reach + 4}, geometry.Point{X: reach - 4}),
		curve.Polyline(geometry.Point{Y: mid - wide - 2}, geometry.Point{Y: mid - wide - 14}),
		curve.Polyline(geometry.Point{Y: mid + wide + 2}, geometry.Point{Y: mid + wide + 16}),
	}
	engrave(&plate, geometry.Point{Y: top - 12}, 0, fmt.Sprintf("router guide, bush %.4g, bit %.4g", bush, bit))
	engrave(&plate, geometry.Point{Y: top - 22}, 0, fmt.Sprintf("slot %.4g x %.4g mm", slot.Length, slot.Width))
	engrave(&plate, geometry.Point{X: -long - guideFoot/2, Y: 3}, 0, "gunwale's edge")
	engrave(&plate, geometry.Point{X: -long - guideFoot/2, Y: -guideCheek / 2}, 0, "cheek below")
	cheek := layout.Part{Name: "router guide's cheek", Material: plywood, Thickness: GaugeStock, Loose: true, Cut: []curve.Path{
		curve.Rectangle(geometry.Box{Max: geometry.Point{X: 2 * reach, Y: guideCheek - 1}})}}
	engrave(&cheek, geometry.Point{X: reach, Y: (guideCheek - engraved) / 2}, 0, "router guide's cheek")
	return []layout.Part{plate, cheek}, nil
}
