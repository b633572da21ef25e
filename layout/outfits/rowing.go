package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/wording"
	"ribwright/layout"
)

// bolt is the hole for an 8 mm bolt, mm.
const bolt = 8.5

// RowingBoards returns the pieces of the frame, the seat and the footrest.
func RowingBoards(f *rowing.Fit, units measure.System) []Board {
	out := []Board{
		rowingBar(f, 0, units), rowingBar(f, 1, units), rowlockBoard(f, units), gunwaleClip(f.Boat.Frame.Gunwale, rowing.Clips),
		rowingSeat(f, units), seatCheek(f, units), seatBrace(f, units),
	}
	if f.FootFits {
		out = append(out, footrest(f, units)...)
	}
	return out
}

// rowingBar is one cross bar from above: x across the boat, y forward.
func rowingBar(f *rowing.Fit, which int, units measure.System) Board {
	station := f.Bars[which]
	name, title := "bar-fore", "Forward bar"
	if which > 0 {
		name, title = "bar-aft", "After bar"
	}
	half, high := f.BarLong()/2, rowing.BarWide/2
	b := Board{Name: name, Title: title, Count: 1, Thick: f.BarThick, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 10), Flat: true, Corner: 10,
		At: geometry.Pt(12, 7), NameAt: geometry.Pt(60, -engraved/2),
		Words: []string{"middle at station " + units.Fine(station) + ", lies on the gunwales", "upper face, forward edge up",
			fmt.Sprintf("ease its lower face to the gunwales, which lean %.0f deg, or pack with leather; turn clips along them", f.Boat.Frame.Gunwale.Tilt*180/math.Pi)}}
	inner, _ := f.Boat.GunwaleTop(station)
	outer, at := f.Boat.Rail(station), clip.Lay(f.Boat.Frame, station)
	b.line(layout.Center, 0, -high, 0, high)
	b.marks(high, inner.Y, gunwaleIn)
	b.marks(high, outer.Y, "finished gunwale's outer edge")
	for _, side := range []float64{1, -1} {
		b.hole(side*f.Span/2, 0, bolt, "bolt of the rowlock board")
		b.hole(side*at.Hole.Y, 0, bolt, clipBolt)
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
	half, high := f.BoardLong()/2, rowing.BoardWide/2.0
	pin := f.LockX - (f.Bars[0]+f.Bars[1])/2
	b := Board{Name: "rowlock-board", Title: "Rowlock board", Count: 2, Thick: rowing.BoardThick,
		Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 20), Flat: true, Corner: 20, At: geometry.Pt(-half+95, high-9), NameAt: geometry.Pt(-half+140, -engraved/2),
		Words: []string{"under the bars; " + units.Fine(f.Span/2) + " from the boat's middle line; forward to the right",
			"the oar's middle lies " + units.Fine(rowing.LockRise) + " over its upper face: if your rowlock", "holds it higher or lower, raise or lower the seat by as much"}}
	b.hole(-f.Apart()/2, 0, bolt, "bolt of a bar")
	b.hole(f.Apart()/2, 0, bolt, "bolt of a bar")
	b.hole(pin, 0, rowing.PinHole, "socket of the rowlock, or as yours asks")
	b.label(pin+14, -high+4, layout.Left, fmt.Sprintf("socket of the rowlock: drill for yours, %.0f mm here", rowing.PinHole))
	b.marks(high, f.Apart()/2-rowing.BarWide/2, "a bar's inner edge")
	b.marks(high, f.Apart()/2+rowing.BarWide/2, "a bar's outer edge")
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
		Words: []string{"middle at station " + units.Fine(f.SeatX), "top " + units.Fine(f.SeatOver) + " over the ribs at the keel", "the rower faces aft: down on this sheet",
			"glue it to cheeks and brace, 4 screws of 45 mm", "into each cheek, 3 into the brace"}}
	b.line(layout.Center, 0, -high, 0, high)
	for _, side := range []float64{1, -1} {
		b.mark(side*f.Cheek.Across, high, "middle of a cheek")
		b.label(side*(f.Cheek.Across-3), -high+20, alignIn(side), "cheek")
	}
	return b
}

// seatCheek is seen from outboard, forward to the right as for starboard.
func seatCheek(f *rowing.Fit, units measure.System) Board {
	c, outline := f.Cheek, f.CheekOutline()
	on := "the ribs"
	if c.Slat {
		on = "floor slats over the ribs"
	}
	b := Board{Name: "seat-cheek", Title: "Cheek of the seat", Count: 2, Thick: rowing.BoardThick, Outline: curve.Polygon(outline...), Flat: true, Zero: "the upper edge",
		At: geometry.Pt(c.Aft-f.SeatX+12, -8), NameAt: geometry.Pt(0, -15),
		Words: []string{"under the seat; forward to the right, middle at the seat's middle", "lower edge on " + on + ", planed to them, up to " + units.Whole(c.Off) + " off outboard;", "cord through the holes, round what is under them"}}
	for _, i := range []int{1, len(c.Ribs)} { // where the first and the last rib are
		b.hole(outline[i].X, math.Min(outline[i].Y+15, -8), rowing.CordHole, "cord of a lashing")
	}
	return b
}

func plain(name, title string, count int, long, high, thick float64, words ...string) Board {
	return Board{Name: name, Title: title, Count: count, Thick: thick, Outline: curve.Rectangle(geometry.Rect(-long/2, -high/2, long/2, high/2)), Flat: true,
		At: geometry.Pt(8-long/2, high/2+4+row*float64(len(words)+1)), Words: words}
}

func seatBrace(f *rowing.Fit, units measure.System) Board {
	long, high := f.SeatBrace()
	return plain("seat-brace", "Brace of the seat", 1, long, high, rowing.BoardThick, "stands under the seat's middle, between the cheeks", "glue, and 2 screws through each cheek")
}

// footrest is a board with two knees, pegged to rails that are lashed to the ribs.
func footrest(f *rowing.Fit, units measure.System) []Board {
	b := f.Foot
	board := plain("footrest", "Footrest", 1, b.Bar, b.Tall, b.Thick, "stands on the rails, plumb: its forward face at station "+units.Fine(b.At)+",", units.Fine(f.Legs.Heel)+" from the back of the seat",
		"a knee behind it inboard of each rail: glue, 3 screws of 30 mm", "knees clear the ribs by "+units.Fine(b.KneeFoot))
	board.marks(b.Tall/2, b.KneeAcross(), "middle of a knee")
	rail := plain("footrest-rail", "Rail of the footrest", 2, b.Rail, b.RailTall, b.RailWide, "middle "+units.Fine(b.Across)+" from the middle line; forward to the right,", "after end at station "+units.Fine(b.RailAft),
		"plane it to the ribs, "+units.Fine(b.Off())+" off outboard; lash it at both ends")
	rail.NameAt, rail.Engrave = geometry.Pt(12-b.Rail/2, -engraved/2), "rail" // before the holes
	for i := range inside.Holes {
		rail.hole(b.HoleAt-b.RailAft-b.Rail/2+inside.Step*float64(i-inside.Holes/2), b.HoleUp-b.RailTall/2, inside.Peg, "a peg: move the footrest by them")
	}
	knee := Board{Name: "footrest-knee", Title: "Knee of the footrest", Count: 2, Thick: b.RailWide, Outline: curve.Polygon(geometry.Pt(0, 0), geometry.Pt(inside.Knee, 0), geometry.Pt(0, inside.Knee)),
		At: geometry.Pt(50, 80), NameAt: geometry.Pt(25, 35), Engrave: "knee", Words: []string{"grain along the foot, which points aft"}}
	knee.hole(inside.KneeHole, inside.KneeUp, inside.Peg, "a peg, bored through the rail")
	out := []Board{board, rail, knee}
	if wide, thick := f.HeelSlat(); wide > 0 {
		out = append(out, plain("heel-slat", "Slat under a heel", 2, b.Rail, wide, thick, "beside the middle line, between the rails, lashed to the ribs"))
	}
	return out
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
