package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/water/float"
	"ribwright/layout"
	"ribwright/layout/report"
)

func (w *writer) lines() {
	w.section("Lines")
	per := scaleFor(w.Frame.Hull.Length, w.Frame.Hull.Bow.TopZ, 164, 60)
	w.add(w.sheerPlan(per), w.planView(per), w.bodyPlan())
}

func (w *writer) sheerPlan(per float64) report.Figure {
	f := w.Frame
	s := newSketch("sheer", "Sheer plan", per)
	g := &f.Gunwale
	aft, fore := g.Line.Ends()
	for _, up := range []float64{0, g.Height} {
		s.path(layout.Cut, curve.Polyline(along(aft, fore, 80, func(x float64) geometry.Point {
			p := g.At(x, g.Width/2, up)
			return geometry.Pt(p.X, p.Z)
		})...))
	}
	var low []geometry.Point
	for _, p := range profile(f) {
		low = append(low, geometry.Point{X: p.X, Y: p.Z})
	}
	s.path(layout.Cut, curve.Polyline(low...))
	for i, stem := range []curve.Path{f.Bow.Outline, f.Stern.Outline} {
		s.path(layout.Mark, stem.Map(geometry.Stretch([]float64{1, -1}[i], 1)))
	}
	for _, r := range f.Ribs {
		s.line(layout.Tick, r.Station, r.Section.KeelZ, r.Station, r.Section.KeelZ+r.Section.Depth)
	}
	half := f.Hull.Length / 2
	s.line(layout.Center, -half-2*per, 0, half+2*per, 0)
	z, water := float64(f.Design.Hull.Waterline), "designed waterline"
	at := func(float64) float64 { return z }
	if w.Trial != nil {
		water, at = "waterline at rest", w.Trial.Rest.Plane.Water
	}
	s.line(layout.Guide, -half-2*per, at(-half-2*per), half+2*per, at(half+2*per))
	for _, st := range stations(w.Afloat.Hull) {
		s.line(layout.Tick, st.x, -1.5*per, st.x, 1.5*per)
		if len(st.name) < 3 {
			s.note(st.x, 0, 0, -5.5, layout.Middle, st.name)
		}
	}
	return report.Figure{Drawing: s.Drawing, Caption: fmt.Sprintf("Sheer plan, %s. Bow to the right; baseline and stations 0 to 10 below; dashed the %s; thin uprights are the ribs.", ratio(per), water),
		About: "Side view of the boat: sheer, keel, both stems, ribs, the waterline and the numbered stations."}
}

func (w *writer) planView(per float64) report.Figure {
	f := w.Frame
	s := newSketch("plan", "Plan view", per)
	g := &f.Gunwale
	aft, fore := g.Line.Ends()
	for _, side := range []float64{1, -1} {
		for _, across := range []float64{g.Width / 2, -g.Width / 2} {
			s.path(layout.Cut, curve.Polyline(along(aft, fore, 80, func(x float64) geometry.Point {
				p := g.At(x, across, g.Height)
				return geometry.Pt(p.X, side*p.Y)
			})...))
		}
	}
	for _, r := range f.Ribs {
		s.line(layout.Tick, r.Station, -r.Section.HalfBreadth, r.Station, r.Section.HalfBreadth)
	}
	for _, t := range f.Thwarts {
		// The pattern lies across: its x is the boat's y.
		s.path(layout.Mark, t.Outline.Map(geometry.Affine{B: 1, C: 1, E: t.At}))
	}
	s.path(layout.Mark, f.BowHook.Outline.Map(geometry.Shift(f.Hull.Bow.GunwaleX, 0)))
	s.path(layout.Mark, f.SternHook.Outline.Map(geometry.Stretch(-1, 1)).Map(geometry.Shift(-f.Hull.Stern.GunwaleX, 0)))
	half := f.Hull.Length / 2
	s.line(layout.Center, -half-2*per, 0, half+2*per, 0)
	return report.Figure{Drawing: s.Drawing, Caption: fmt.Sprintf("Plan view, %s: gunwales, breasthooks and cross pieces; thin lines are the ribs.", ratio(per)),
		About: "View from above: both gunwales, breasthooks, cross pieces, ribs and the middle line."}
}

func (w *writer) bodyPlan() report.Figure {
	h := w.Afloat.Hull
	wide, top := w.Frame.Hull.Beam/2+w.Frame.Gunwale.Width, 0.0
	for _, p := range h.Profile() {
		top = math.Max(top, p[2])
	}
	per := scaleFor(2*wide, top, 130, 75)
	s := newSketch("stations", "Body plan of the stations", per)
	all := stations(h)
	for i, st := range all[1 : len(all)-1] {
		half := curve.Polyline(h.Half(st.x)...)
		if i+1 <= len(all)/2 {
			s.path(layout.Cut, half)
		}
		if i+1 >= len(all)/2 { // midship stands on both sides
			s.path(layout.Cut, half.Map(geometry.Stretch(-1, 1)))
		}
	}
	last := -10.0
	for _, z := range w.waterlines() {
		s.line(layout.Tick, -wide, z, wide, z)
		if z/per-last > 4 {
			s.note(wide, z, 2, -small/2, layout.Left, w.level(z))
			last = z / per
		}
	}
	s.line(layout.Mark, -wide, 0, wide, 0)
	s.line(layout.Center, 0, -3*per, 0, top+3*per)
	return report.Figure{Drawing: s.Drawing, Caption: fmt.Sprintf("Body plan to the outside of the skin, %s: fore body on the right, after body on the left, the stations of the table of offsets, narrower toward the ends. Level lines are the waterlines.", ratio(per)),
		About: "Body plan: half sections of the fore body on the right and of the after body on the left, with waterlines."}
}

// dimensions lists the principal dimensions by the terms of ISO 8666.
func (w *writer) dimensions() {
	w.chapter("Dimensions and lines")
	w.say("Terms and symbols after ISO 8666, taken from the design and not from a finished boat; no claim of compliance is made. Waterline, draft and freeboard are those at rest with the people and gear of the design aboard. The line that the body plan and the stems' patterns call waterline, %s up, is the one that the design was drawn to, to place them by: it is not where the boat floats.", w.Length(float64(w.Frame.Design.Hull.Waterline)))
	h := w.Afloat.Hull
	aft, fore := h.Ends()
	_, midSheer := h.Heights(0)
	t := report.Titled("").Names("Symbol").Words("Dimension").Numbers("From the design").Filled(
		"LH", "length of hull, stem to stem", w.Length(fore-aft), "BH", "beam of hull, over the skin", w.Length(h.Beam()),
		"", "depth amidships, baseline to sheer", w.Length(midSheer),
		"", "sheer at the bow and at the stern, over the baseline", w.Length(w.Frame.Hull.Bow.TopZ)+", "+w.Length(w.Frame.Hull.Stern.TopZ))
	if r := w.Trial; r != nil {
		o := r.Rest
		t = t.Filled("LWL", "length of waterline", w.Length(o.LWL), "BWL", "beam of waterline", w.Length(o.BWL), "TC", "draft of canoe body", w.Length(o.Draft),
			"FF", "freeboard forward, at the bow", w.Length(freeboard(h, o.Plane, fore)), "FM", "freeboard amidships", w.Length(freeboard(h, o.Plane, 0)),
			"FA", "freeboard aft, at the stern", w.Length(freeboard(h, o.Plane, aft)), "", "least freeboard", w.Length(o.Freeboard.Least),
			"", "mass of the boat, estimated", w.Mass(w.Afloat.Own().Mass), "", "displacement, all aboard", w.Mass(o.Displacement),
			"", "block and prismatic coefficient", fmt.Sprintf("%.3f, %.3f", o.CB, o.CP))
	}
	w.add(t)
	if w.Trial == nil {
		w.warn("The boat as loaded finds no rest, so it has no waterline: "+w.NoTrial, "arithmetic of this design")
	}
}

// freeboard is the height of the sheer over the water at a station, mm.
func freeboard(h *float.Hull, p float.Plane, x float64) float64 {
	_, sheer := h.Heights(x)
	return sheer - p.Water(x)
}

// along is what lies at n+1 even places from a to b.
func along[P any](a, b float64, n int, at func(x float64) P) []P {
	out := make([]P, n+1)
	for i := range out {
		out[i] = at(a + (b-a)*float64(i)/float64(n))
	}
	return out
}
