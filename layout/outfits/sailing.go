package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// SailBoards returns the wooden pieces: step, partner, leeboard with its bracket, and
// the clips that hold partner and bracket.
func SailBoards(f *sail.Fit, units measure.System) []Board {
	out := []Board{mastStep(f, units), partner(f, units)}
	clips := sail.PartnerClips
	if f.Board.Area > 0 {
		out = append(out, leeboard(f, units), bracketBar(f, units), bracketCheek(f, units))
		clips += sail.BracketClips
	}
	return append(out, gunwaleClip(f.Boat.Frame.Gunwale, clips))
}

// mastHoles are the places of mast or spars across a board.
func mastHoles(f *sail.Fit, z float64) []float64 {
	if f.Sail.Rig == design.Vee {
		s := f.Spread(z)
		return []float64{s, -s}
	}
	return []float64{0}
}

// mastStep is the block on the keel between two ribs, from above: x along the boat.
func mastStep(f *sail.Fit, units measure.System) Board {
	half, high := f.StepLong()/2, f.StepAcross()/2
	pitch := float64(f.Boat.Frame.Design.Ribs.Pitch)
	b := Board{Name: "step", Title: "Mast step", Count: 1, Thick: sail.StepThick, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 12),
		At: geometry.Pt(-pitch/2+3, high-7), NameAt: geometry.Pt(0, -high+9), Engrave: "step",
		Words: []string{"on the keel, lashed to two ribs"}}
	for _, y := range mastHoles(f, f.Mast.StepZ+sail.StepThick) {
		b.hole(0, y, f.Mast.Diameter+1)
	}
	b.marks(high, pitch/2)
	b.label(-pitch/2+3, -high+3, layout.Left, "station "+units.Fine(f.Mast.At)+"; lines: middles of ribs")
	return b
}

// partner is the plank across the gunwales that the mast passes, from above: x across
// the boat, y forward.
func partner(f *sail.Fit, units measure.System) Board {
	inner, outer := f.Boat.GunwaleTop(f.Mast.At)
	half, high := f.PartnerLong()/2, sail.PartnerWide/2.0
	b := Board{Name: "partner", Title: "Mast partner", Count: 1, Thick: sail.PartnerThick, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 20),
		At: geometry.Pt(-inner.Y+kit.ClipWide+12, high-8), NameAt: geometry.Pt(-inner.Y/2-20, -high/2-10), Engrave: "partner",
		Words: []string{"middle at station " + units.Fine(f.Mast.At), "forward is up"}}
	for _, x := range mastHoles(f, f.Mast.PartnerZ) {
		b.hole(x, 0, f.Mast.Diameter+2)
	}
	b.line(layout.Center, 0, high-14, 0, high)
	b.line(layout.Center, 0, -high, 0, -high+14)
	b.marks(high, inner.Y, outer.Y)
	for _, side := range []float64{1, -1} {
		for _, y := range []float64{high - 25, -high + 25} {
			b.hole(side*(inner.Y-kit.ClipWide/2), y, bolt)
		}
	}
	b.label(inner.Y-kit.ClipWide-6, -high+4, layout.Right, "marks: the gunwale's edges; leather the hole")
	return b
}

// leeboard is the blade from the side: x down from its head, y forward.
func leeboard(f *sail.Fit, units measure.System) Board {
	long, half := f.Board.Long, f.Board.Chord/2
	neck := math.Min(math.Max(55, half*0.62), sail.PivotDown-8) // it passes under the bar when the blade swings up
	over := long - f.Board.Deep
	tip := math.Min(half*1.2, f.Board.Deep*0.45)
	p := curve.Path{
		curve.Line{A: geometry.Pt(neck*0.6, -neck), B: geometry.Pt(over*0.75, -neck)},
		curve.Cubic{P0: geometry.Pt(over*0.75, -neck), P1: geometry.Pt(over*0.95, -neck), P2: geometry.Pt(over*0.9, -half), P3: geometry.Pt(over*1.1, -half)},
		curve.Line{A: geometry.Pt(over*1.1, -half), B: geometry.Pt(long-tip, -half)},
		curve.Cubic{P0: geometry.Pt(long-tip, -half), P1: geometry.Pt(long-tip*0.45, -half), P2: geometry.Pt(long, -half*0.5), P3: geometry.Pt(long, 0)},
		curve.Cubic{P0: geometry.Pt(long, 0), P1: geometry.Pt(long, half*0.5), P2: geometry.Pt(long-tip*0.45, half), P3: geometry.Pt(long-tip, half)},
		curve.Line{A: geometry.Pt(long-tip, half), B: geometry.Pt(over*1.1, half)},
		curve.Cubic{P0: geometry.Pt(over*1.1, half), P1: geometry.Pt(over*0.9, half), P2: geometry.Pt(over*0.95, neck), P3: geometry.Pt(over*0.75, neck)},
		curve.Line{A: geometry.Pt(over*0.75, neck), B: geometry.Pt(neck*0.6, neck)},
		curve.Cubic{P0: geometry.Pt(neck*0.6, neck), P1: geometry.Pt(neck*0.1, neck), P2: geometry.Pt(0, neck*0.6), P3: geometry.Pt(0, 0)},
		curve.Cubic{P0: geometry.Pt(0, 0), P1: geometry.Pt(0, -neck*0.6), P2: geometry.Pt(neck*0.1, -neck), P3: geometry.Pt(neck*0.6, -neck)},
	}
	b := Board{Name: "leeboard", Title: "Leeboard", Count: 1, Thick: f.Board.Thick, Outline: p,
		At: geometry.Pt(over+40, half-14), NameAt: geometry.Pt(over+100, -12),
		Words: []string{"grain along the blade; forward edge up on this sheet",
			"forward edge round, after edge thin: a foil below the water",
			fmt.Sprintf("%s under water; pivot 12 mm, to swing up when it strikes", units.Fine(f.Board.Deep))}}
	b.hole(sail.BladeHead, 0, 12)
	b.line(layout.Mark, over, -half, over, half)
	b.label(over+3, -half+4, layout.Left, "water")
	b.line(layout.Center, 95, 0, long-5, 0)
	return b
}

// bracketBar lies across the gunwales and holds the leeboard's cheek at one end.
func bracketBar(f *sail.Fit, units measure.System) Board {
	x := f.BracketAt()
	inner, outer := f.Boat.GunwaleTop(x)
	half, high := f.BracketLong()/2, sail.BracketBar/2.0
	b := Board{Name: "bracket", Title: "Leeboard bracket", Count: 1, Thick: sail.BracketHigh, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 8),
		At: geometry.Pt(-inner.Y+kit.ClipWide+24, high-9), NameAt: geometry.Pt(-20, -high+8), Engrave: "bracket",
		Words: []string{"holes for its middle at station " + units.Fine(x) + ";", "bore new ones where trials move it to"}}
	b.marks(high, inner.Y, outer.Y)
	for _, side := range []float64{1, -1} {
		b.hole(side*(inner.Y-kit.ClipWide/2), 0, bolt)
		peg := f.CheeksAt() + bolt/2 + 1
		b.hole(side*peg, 0, bolt)
		b.Keep = append(b.Keep, layout.Span{From: side*peg - 20, To: side*peg + 20})
	}
	return b
}

// bracketCheek is put over the bar's end outside the gunwale, one on each side of the
// blade, which turns between them: x along the boat, y up from the bar's lower face.
func bracketCheek(f *sail.Fit, units measure.System) Board {
	half, top := sail.CheekLong/2, sail.BracketHigh+sail.CheekUp
	b := Board{Name: "bracket-cheek", Title: "Cheek of the bracket", Count: 2, Thick: sail.CheekThick,
		Outline: curve.Polygon(geometry.Pt(-half, top), geometry.Pt(-half, -60), geometry.Pt(-70, -sail.CheekDown), geometry.Pt(70, -sail.CheekDown), geometry.Pt(half, -60), geometry.Pt(half, top)),
		At:      geometry.Pt(-60, -12), NameAt: geometry.Pt(0, -58), Engrave: "cheek",
		Words: []string{"one on each side of the blade; the bar passes through both,", "a bolt outside the outer one keeps them on; grain up and down"}}
	const easy = 0.5 // the bar slides in by hand
	b.Holes = append(b.Holes, curve.Rectangle(geometry.Rect(-sail.BracketBar/2-easy, 0, sail.BracketBar/2+easy, sail.BracketHigh+easy)))
	b.hole(0, -sail.PivotDown, 12)
	return b
}

// PanelDrawings returns the panels of cloth: x along the leech from clew to peak, y
// forward from it.
func PanelDrawings(f *sail.Fit, units measure.System) []layout.Drawing {
	var out []layout.Drawing
	for i, p := range f.Cloth.Panels {
		d := layout.Drawing{Name: fmt.Sprintf("panel-%d", i+1), Title: fmt.Sprintf("Panel %d of %d", i+1, len(f.Cloth.Panels)), Family: "Sail panels", Make: "cut 1 of cloth"}
		d.Line(layout.Cut, curve.Polygon(p.Outline...))
		d.Line(layout.Mark, curve.Polygon(p.Edge...))
		if !math.IsNaN(p.Seam) {
			a, b := across(p.Outline, p.Seam)
			d.Straight(layout.Guide, a, p.Seam, b, p.Seam)
		}
		lines := []string{
			fmt.Sprintf("%s, %.2f m2 %s", f.Boat.Frame.Design.Title, f.Plan.Area(), f.Sail.Rig),
			"thin: finished edge; " + units.Fine(float64(f.Sail.Hem)) + " hem beyond it; dashed: the next panel's edge lies here",
			"leech runs along this strip, peak to the right; patch every corner in three layers",
		}
		at := wordsOn(p, lines)
		d.Write(at.X, at.Y+6, head, layout.Left, d.Title)
		for k, w := range lines {
			d.Write(at.X, at.Y-row*float64(k), small, layout.Left, w)
		}
		drawCorners(&d, f, geometry.Around(p.Outline...))
		keepWords(&d)
		out = append(out, d)
	}
	return out
}

// wordsOn returns where the first line of a panel's words begins: about the middle of
// its length, just over its lower finished edge. Words in the middle of the panel
// would stand on tiles of their own that no joint holds to the others.
func wordsOn(p sail.Panel, lines []string) geometry.Point {
	wide := 0.0
	for _, l := range lines {
		wide = math.Max(wide, lettering.Width(l, small))
	}
	middle := sail.Centroid(p.Outline)
	from, over := middle.X-wide/2, math.Inf(-1)
	for _, x := range []float64{from, middle.X, from + wide} {
		if y := lowest(p.Edge, x); !math.IsInf(y, 1) {
			over = math.Max(over, y)
		}
	}
	if math.IsInf(over, -1) { // a panel of hem alone
		return geometry.Pt(from, middle.Y)
	}
	return geometry.Pt(from, math.Min(middle.Y, over+row*float64(len(lines))))
}

// lowest returns where an upright line first meets a polygon from below; without end
// where it misses.
func lowest(pts []geometry.Point, x float64) float64 {
	turned := make([]geometry.Point, len(pts))
	for i, p := range pts {
		turned[i] = geometry.Pt(p.Y, p.X)
	}
	low, _ := across(turned, x)
	return low
}

// across returns where a level crosses a polygon, from left to right.
func across(pts []geometry.Point, y float64) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y < y) != (b.Y < y) {
			x := a.Lerp(b, (y-a.Y)/(b.Y-a.Y)).X
			from, to = math.Min(from, x), math.Max(to, x)
		}
	}
	return from, to
}

func drawCorners(d *layout.Drawing, f *sail.Fit, box geometry.Box) {
	c := f.Cloth
	middle := sail.Centroid(c.Finished)
	for i, q := range f.Plan.Corners {
		at := c.Turn.Apply(q)
		if !box.Holds(at) {
			continue
		}
		in := at.Add(middle.Sub(at).Unit().Scale(45))
		d.Write(in.X, in.Y, head, layout.Middle, f.Plan.Names[i])
	}
}

// PanelParts returns the panels for a cutter of cloth.
func PanelParts(f *sail.Fit) []layout.Part {
	var out []layout.Part
	for i, p := range f.Cloth.Panels {
		part := layout.Part{Name: fmt.Sprintf("panel %d", i+1), Cut: []curve.Path{curve.Polygon(p.Outline...)}, Marks: []curve.Path{curve.Polygon(p.Edge...)}}
		if !math.IsNaN(p.Seam) {
			a, b := across(p.Outline, p.Seam)
			part.Marks = append(part.Marks, curve.Polyline(geometry.Pt(a, p.Seam), geometry.Pt(b, p.Seam)))
		}
		if t, ok := panelLetters(p, fmt.Sprintf("panel %d, peak this way >", i+1), fmt.Sprintf("%d >", i+1)); ok {
			part.Letters = append(part.Letters, t)
		}
		out = append(out, part)
	}
	return out
}

// panelLetters finds letters for a panel that lie wholly on it, about its middle: the
// first words that fit, as large as fit; the last panel may be a mere strip. It reports
// false where none do.
func panelLetters(p sail.Panel, words ...string) (layout.Text, bool) {
	const clear = 5.0 // of the edge, mm
	middle := sail.Centroid(p.Outline)
	for _, w := range words {
		for _, high := range []float64{15, 10, 7, engraved} {
			t := layout.Text{Height: high, Align: layout.Middle, Words: w}
			half := lettering.Width(w, high) / 2 // and the cutter's letters may reach further
			half = math.Max(half, lettering.StrokeWidth(w, high)-half)
			from, to := math.Inf(-1), math.Inf(1)
			for _, y := range []float64{middle.Y - high - clear, middle.Y + high + clear} { // tails and all
				a, b := across(p.Outline, y)
				from, to = math.Max(from, a), math.Min(to, b)
			}
			if t.At = geometry.Pt((from+to)/2, middle.Y-high/2); to-from >= 2*(half+clear) {
				return t, true
			}
		}
	}
	return layout.Text{}, false
}

// SailNotes are the words for the first sheet.
func SailNotes(f *sail.Fit, units measure.System) []layout.Note {
	var winds []string
	last := f.Needed(f.Chosen()) - 1
	for i, s := range f.States[:last+1] {
		what := "take in the next reef"
		if i == last {
			what = "take the sail down"
		}
		winds = append(winds, fmt.Sprintf("%s, %.2f m2: %s at %.1f m/s (%.0f knots, force %d).", wording.Capital(s.Name), s.Area, what, f.Wind.Reef[i], sail.Knots(f.Wind.Reef[i]), sail.Beaufort(f.Wind.Reef[i])))
	}
	if s := f.Spared(); s != "" {
		winds = append(winds, wording.Capital(s)+".")
	}
	winds = append(winds, fmt.Sprintf("With the crew %s; %s.", f.Chosen(), f.InMiddle()))
	var sticks []string
	if f.Mast.Long > 0 {
		sticks = append(sticks, fmt.Sprintf("Mast %s long, %.0f mm at the partner, tapered to six tenths at the head; %s.", units.Fine(f.Mast.Long), f.Mast.Diameter, f.Sail.Spars))
	}
	for _, s := range f.Plan.Spars {
		sticks = append(sticks, fmt.Sprintf("%s %s long, %.0f mm in its middle.", wording.Capital(s.Name), units.Fine(s.Length()), s.Diameter))
	}
	sticks = append(sticks, fmt.Sprintf("The tack stands %s over the gunwale.", units.Fine(f.Tack-(f.Mast.PartnerZ-sail.PartnerThick/2))))
	return []layout.Note{{Heading: "Wind", Lines: winds}, cautions(f.Findings), {Heading: "Spars", Lines: sticks}}
}
