package outfits

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/wording"
	"ribwright/layout"
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

// mastHole says what goes through a hole.
func mastHole(f *sail.Fit) string {
	if f.Sail.Rig == design.Vee {
		return "a spar"
	}
	return "the mast"
}

// mastStep is the block on the keel between two ribs, from above: x along the boat.
func mastStep(f *sail.Fit, units measure.System) Board {
	half, high := f.StepLong()/2, f.StepAcross()/2
	pitch := float64(f.Boat.Frame.Design.Ribs.Pitch)
	b := Board{Name: "step", Title: "Mast step", Count: 1, Thick: sail.StepThick, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 12), Flat: true, Corner: 12,
		At: geometry.Pt(-pitch/2+3, high-7), NameAt: geometry.Pt(0, -high+9), Engrave: "step",
		Words: []string{"on the keel, lashed to two ribs"}}
	for _, y := range mastHoles(f, f.Mast.StepZ+sail.StepThick) {
		b.hole(0, y, f.Mast.Diameter+1, mastHole(f))
	}
	b.marks(high, pitch/2, "middle of a rib")
	b.Rows = []string{"middle at station " + units.Fine(f.Mast.At) + "; length runs along the boat"}
	b.label(-pitch/2+3, -high+3, layout.Left, "station "+units.Fine(f.Mast.At)+"; lines: middles of ribs")
	return b
}

// partner is the plank across the gunwales that the mast passes, from above: x across
// the boat, y forward.
func partner(f *sail.Fit, units measure.System) Board {
	inner, outer := f.Boat.GunwaleTop(f.Mast.At)
	half, high := f.PartnerLong()/2, sail.PartnerWide/2.0
	b := Board{Name: "partner", Title: "Mast partner", Count: 1, Thick: sail.PartnerThick, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 20), Flat: true, Corner: 20,
		At: geometry.Pt(-inner.Y+kit.ClipWide+12, high-8), NameAt: geometry.Pt(-inner.Y/2-20, -high/2-10), Engrave: "partner",
		Words: []string{"middle at station " + units.Fine(f.Mast.At), "forward is up"}}
	for _, x := range mastHoles(f, f.Mast.PartnerZ) {
		b.hole(x, 0, f.Mast.Diameter+2, mastHole(f)+", leathered")
	}
	b.line(layout.Center, 0, high-14, 0, high)
	b.line(layout.Center, 0, -high, 0, -high+14)
	b.marks(high, inner.Y, gunwaleIn)
	b.marks(high, outer.Y, gunwaleOut)
	for _, side := range []float64{1, -1} {
		for _, y := range []float64{high - 25, -high + 25} {
			b.hole(side*(inner.Y-kit.ClipWide/2), y, bolt, clipBolt)
		}
	}
	b.label(inner.Y-kit.ClipWide-6, -high+4, layout.Right, "marks: the gunwale's edges; leather the hole")
	return b
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
