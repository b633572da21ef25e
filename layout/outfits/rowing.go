package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/wording"
	"ribwright/layout"
)

// bolt is the hole for an 8 mm bolt, mm.
const bolt = 8.5

// RowingBoards returns the pieces of the frame, the seat and the footrest.
func RowingBoards(f *rowing.Fit, units measure.System) []Board {
	return []Board{
		rowingBar(f, 1, units), rowingBar(f, -1, units), rowlockBoard(f, units), gunwaleClip(f.Boat.Frame.Gunwale, rowing.Clips),
		rowingSeat(f, units), seatCheek(f, units), footrest(f, units),
	}
}

// rowingBar is one cross bar from above: x across the boat, y forward.
func rowingBar(f *rowing.Fit, way float64, units measure.System) Board {
	station := f.LockX + way*rowing.Pitch/2
	name, title := "bar-fore", "Forward bar"
	if way < 0 {
		name, title = "bar-aft", "After bar"
	}
	half, high := f.BarLong()/2, rowing.BarWide/2
	b := Board{Name: name, Title: title, Count: 1, Thick: f.BarThick, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 10), Flat: true, Corner: 10,
		At: geometry.Pt(12, 7), NameAt: geometry.Pt(60, -engraved/2),
		Words: []string{"middle at station " + units.Fine(station) + ", lies on the gunwales", "upper face, forward edge up"}}
	inner, outer := f.Boat.GunwaleTop(station)
	b.line(layout.Center, 0, -high, 0, high)
	b.marks(high, inner.Y, gunwaleIn)
	b.marks(high, outer.Y, gunwaleOut)
	for _, side := range []float64{1, -1} {
		b.hole(side*f.Span/2, 0, bolt, "bolt of the rowlock board")
		b.hole(side*(inner.Y-kit.ClipWide/2), 0, bolt, clipBolt)
		b.Keep = append(b.Keep, layout.Span{From: side*f.Span/2 - 20, To: side*f.Span/2 + 20})
		b.label(side*(outer.Y+3), high-5.5, alignOut(side), "gunwale's outer edge")
		b.label(side*(f.Span/2-9), -high+3, alignIn(side), "rowlock board")
	}
	b.Keep = append(b.Keep, layout.Span{From: -5, To: 90})
	return b
}

// What stands on more than one board.
const (
	gunwaleIn  = "gunwale's inner edge"
	gunwaleOut = "gunwale's outer edge"
	clipBolt   = "bolt of a clip"
)

// alignOut begins words at a place and runs them away from the middle line; alignIn toward it.
func alignOut(side float64) layout.Align {
	if side > 0 {
		return layout.Left
	}
	return layout.Right
}

func alignIn(side float64) layout.Align { return alignOut(-side) }

// rowlockBoard joins the outer ends of the bars from below: x along the boat.
func rowlockBoard(f *rowing.Fit, units measure.System) Board {
	half, high := rowing.BoardLong/2.0, rowing.BoardWide/2.0
	b := Board{Name: "rowlock-board", Title: "Rowlock board", Count: 2, Thick: rowing.BoardThick,
		Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 20), Flat: true, Corner: 20, At: geometry.Pt(-half+95, high-9), NameAt: geometry.Pt(-half+140, -engraved/2),
		Words: []string{"under the bars; " + units.Fine(f.Span/2) + " from the boat's middle line"}}
	b.hole(-rowing.Pitch/2, 0, bolt, "bolt of a bar")
	b.hole(rowing.Pitch/2, 0, bolt, "bolt of a bar")
	b.hole(0, 0, rowing.PinHole, "socket of the rowlock, or as yours asks")
	b.label(14, -high+4, layout.Left, fmt.Sprintf("socket of the rowlock: drill for yours, %.0f mm here", rowing.PinHole))
	b.marks(high, rowing.Pitch/2-rowing.BarWide/2, "a bar's inner edge")
	b.marks(high, rowing.Pitch/2+rowing.BarWide/2, "a bar's outer edge")
	return b
}

// gunwaleClip is a hook under the gunwale's inner edge, seen along the boat: x outboard, y up.
func gunwaleClip(g frame.Gunwale, count int) Board {
	sin, cos := math.Sincos(g.Tilt)
	w, p := g.Width, kit.ClipOutline(g)
	foot, lip := p[len(p)-2], p[len(p)-3]
	b := Board{Name: "clip", Title: "Clip", Count: count, Thick: kit.ClipThick, Outline: curve.Polygon(p...),
		At: geometry.Pt(w*cos+6, -6), NameAt: geometry.Pt(p[0].X/2-2, -g.Height*0.8), Engrave: "clip",
		Words: []string{"hooks under the gunwale's inner edge", "between two ribs; the edge at the top", "lies against the bar; grain across the boat, along the hook;", "8.5 mm bolt hole through all of it, the bolt's head below"}}
	b.line(layout.Center, -kit.ClipWide/2, -2, -kit.ClipWide/2, -18)
	// The gunwale, to see how it sits.
	b.Pattern = append(b.Pattern, layout.Stroke{Pen: layout.Guide, Path: curve.Polyline(geometry.Pt(0, 0), geometry.Pt(w*cos, -w*sin),
		geometry.Pt(w*cos+foot.X, -w*sin+foot.Y), lip)})
	return b
}

func rowingSeat(f *rowing.Fit, units measure.System) Board {
	half, high := f.SeatLong()/2, rowing.SeatWide/2.0
	b := Board{Name: "rowing-seat", Title: "Rowing seat", Count: 1, Thick: rowing.BoardThick,
		Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 25), Flat: true, Corner: 25, At: geometry.Pt(25, -12), NameAt: geometry.Pt(80, -55),
		Words: []string{"middle at station " + units.Fine(f.SeatX), "top " + units.Fine(f.SeatOver) + " over the floor", "the rower faces aft: down on this sheet"}}
	b.line(layout.Center, 0, -high, 0, high)
	for _, side := range []float64{1, -1} {
		b.mark(side*(half-50), high, "middle of a cheek")
		b.label(side*(half-53), -high+20, alignIn(side), "cheek")
	}
	return b
}

func seatCheek(f *rowing.Fit, units measure.System) Board {
	high, half := f.CheekHigh(), rowing.CheekLong/2.0
	b := Board{Name: "seat-cheek", Title: "Cheek of the seat", Count: 2, Thick: rowing.BoardThick, NameAt: geometry.Pt(0, high/2+4), At: geometry.Pt(-half+12, high/2-8), Flat: true,
		Outline: curve.Polygon(geometry.Pt(-half, 0), geometry.Pt(half, 0), geometry.Pt(half, high), geometry.Pt(-half, high)),
		Words:   []string{"lower edge on the ribs, lashed to two of them", "plane it to the floor where it stands"}}
	if high < 40 {
		b.At, b.Words = geometry.Pt(half+5, high-4), nil
	}
	return b
}

func footrest(f *rowing.Fit, units measure.System) Board {
	half := f.FootrestLong() / 2
	b := Board{Name: "footrest", Title: "Footrest", Count: 1, Thick: rowing.BoardThick, Outline: curve.Rounded(geometry.Rect(-half, 0, half, rowing.FootrestHigh), 15), Flat: true, Corner: 15,
		At: geometry.Pt(-40, 100), NameAt: geometry.Pt(0, 20),
		Words: []string{"heels at station " + units.Fine(f.FootX), units.Fine(f.Legs.Heel) + " from the back of the seat", "let it move 200 mm along the boat"}}
	for _, side := range []float64{1, -1} {
		x := side * math.Min(150, half-30)
		b.line(layout.Center, x, 8, x, 112)
		b.label(x-side*3, 5, alignIn(side), "heel")
	}
	return b
}

// RowingFirst is what the first sheet says.
func RowingFirst(f *rowing.Fit, units measure.System) *layout.First {
	fit := []string{
		fmt.Sprintf("Span between the rowlocks %s; oars %s long, %s of it inboard of the button.", units.Fine(f.Span), units.Fine(f.Oar.Length), units.Fine(f.Oar.Inboard)),
		fmt.Sprintf("Rowlocks %s aft of the seat's after edge and %s over the seat, at station %s.", units.Fine(f.SeatX-rowing.SeatWide/2-f.LockX), units.Fine(f.LockZ-f.SeatZ), units.Fine(f.LockX)),
		"All of these are habits of the trade: sit in the boat on land, and move seat, footrest and button before you drill.",
	}
	return &layout.First{Notes: []layout.Note{{Heading: "Fit", Lines: fit}}, Cautions: cautions(f.Findings)}
}

// cautions stand on the first sheet of every outfit, its dangers first.
func cautions(found finding.List) []string {
	var out []string
	for _, f := range found.Dangers() {
		out = append(out, wording.Capital(f.About)+": "+f.Text+".")
	}
	return append(out,
		"Wear a life jacket; try the outfit in shallow water near help, swamped and with flotation fitted, before you rely on it.",
		"Every strength here is an estimate from clear wood at rest. Saws, drills and dust hurt: goggles, ears, a mask, and clamp small pieces.",
		"Nothing here certifies a boat. Local law, the authority of the water and licensed advice come first.")
}
