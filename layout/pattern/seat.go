package pattern

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// headed is what the heading of a piece takes at most, mm: it goes over the notes.
const headed = 22.0

// SeatsOf draws what of the seats is sawn to an outline: hangers and a saddle's cheeks.
func SeatsOf(f *frame.Frame, units measure.System) []layout.Drawing {
	var out []layout.Drawing
	for _, s := range f.Seats {
		switch {
		case s.Hung != nil:
			out = append(out, Hanger(s, "front", s.Hung.Front, units), Hanger(s, "after", s.Hung.After, units))
		case s.Saddle != nil:
			out = append(out, cheek(s, units))
		}
	}
	return out
}

// Hanger draws the port hanger of a rail on the face that looks inboard, its upper end
// at the top: x along the boat from its middle, y = 0 at the gunwale's upper edge. The
// slot's mouth on this face is to be cut, the one on the outboard face is broken. The bolts'
// holes are bored in the boat, with the gunwale's. The starboard one is its mirror.
func Hanger(s seat.Seat, which string, r seat.Rail, units measure.System) layout.Drawing {
	h := r.Hanger
	d := layout.Drawing{Name: fmt.Sprintf("seat-%d-%s", s.Number+1, which), Title: s.Name + ", " + which + " hanger", Family: "Seats",
		Make: fmt.Sprintf("make 2, one mirrored, %s thick", units.Fine(seat.Thick))}
	inboard := r.Mouth(s.Hung.Width, s.Hung.Depth, true)
	d.Line(layout.Cut, mouth(inboard))
	d.Line(layout.Long, mouth(r.Mouth(s.Hung.Width, s.Hung.Depth, false)))
	d.Line(layout.Cut, hangerBoard(h))
	half, apart := h.Wide/2, (h.Bolts[1]-h.Bolts[0])/2
	for _, x := range []float64{-apart, apart} {
		d.Line(layout.Mark, curve.Circle(geometry.Pt(x, -h.Down), seat.Hole/2))
	}
	d.Straight(layout.Center, 0, 4, 0, -h.BlockHigh())
	d.Straight(layout.Center, 0, -max(inboard[2].Y, inboard[3].Y)-1, 0, -h.Length-4)
	foot := -h.BlockHigh() - 2
	d.Straight(layout.Guide, -half, foot, half, foot)
	d.Write(0, foot-row, small, layout.Middle, "dashed: lower edge of block")
	var lines []string
	for _, words := range []string{
		"top in line with gunwale's top",
		"seen from inboard on port, bow right",
		fmt.Sprintf("holes %s, %s down: bore them", units.Drill(seat.Hole), units.Fine(h.Down)),
		"in the boat, through gunwale too",
		"block behind, grain along, glued:",
		fmt.Sprintf("%s long x %s high x %s", units.Fine(h.BlockLong()), units.Fine(h.BlockHigh()), units.Fine(h.Block)),
		fmt.Sprintf("closed slot for %s x %s:", units.Fine(s.Hung.Width), units.Fine(s.Hung.Depth)),
		"full line on this face, broken line",
		"on the outboard face: " + OutboardMouth(r, units),
	} {
		lines = append(lines, lettering.Wrap(lettering.Safe(words), small, h.Wide-4)...)
	}
	room := min(inboard[0].Y, inboard[1].Y, inboard[2].Y, inboard[3].Y) // down to the slot
	low := foot - row - min(headed, max(0, room+foot-row*float64(len(lines)+3)))
	for i, words := range lines {
		d.Write(0, low-row*float64(i+1), small, layout.Middle, words)
	}
	last := d.Texts[len(d.Texts)-1].At.Y
	d.KeepUp = append(d.KeepUp, layout.Span{From: last - 9, To: 1}) // bolts and words in one piece, clear of a joint's crosses
	return d
}

// OutboardMouth says where a slot's mouth on the outboard face lies beside the inboard one.
func OutboardMouth(r seat.Rail, units measure.System) string {
	by, high, end := r.Shift(), "higher", "bow"
	if by.Y > 0 {
		high = "lower"
	}
	if by.X < 0 {
		end = "stern"
	}
	return fmt.Sprintf("%s %s and %s nearer the %s", units.Fine(math.Abs(by.Y)), high, units.Fine(math.Abs(by.X)), end)
}

// mouth is the outline of a slot on a face. Seen from inboard on the port side the bow is to
// the right.
func mouth(corners [4]geometry.Point) curve.Path {
	for i, p := range corners {
		corners[i] = geometry.Pt(p.X, -p.Y)
	}
	return curve.Polygon(corners[:]...).Reverse()
}

func hangerBoard(h seat.Hanger) curve.Path {
	return curve.Rounded(geometry.Rect(-h.Wide/2, -h.Length, h.Wide/2, 0), 6)
}

// hangerCut are the outlines of a hanger for a cutter: of its slot what goes through square,
// and the board, cut last.
func hangerCut(s seat.Seat, r seat.Rail) []curve.Path {
	return []curve.Path{mouth(r.Through(s.Hung.Width, s.Hung.Depth)), hangerBoard(r.Hanger)}
}

// cheek draws a side of a saddle, the bow to the right, y over the floor at its middle.
func cheek(s seat.Seat, units measure.System) layout.Drawing {
	a := s.Saddle
	d := layout.Drawing{Name: fmt.Sprintf("seat-%d-cheek", s.Number+1), Title: s.Name + ", cheek", Family: "Seats",
		Make: fmt.Sprintf("make 2, %s thick, grain along", units.Fine(seat.BoardThick))}
	d.Line(layout.Cut, curve.Polygon(a.Cheek...))
	box := geometry.Around(a.Cheek...)
	for i, words := range []string{
		fmt.Sprintf("top board %s x %s, grain across the boat; cheeks %s apart, middle to middle", units.Fine(s.Long), units.Fine(s.Wide), units.Fine(a.Apart)),
		fmt.Sprintf("middle at station %s; top %s over the floor; forward is to the right", units.Fine(s.At), units.Fine(s.Height)),
		"lower edge on the floor: plane it there to stand without rocking",
	} {
		d.Write(box.Min.X, box.Min.Y-6-row*float64(i), small, layout.Left, words)
	}
	d.Write(0, box.Min.Y-6-row*3.4, head, layout.Middle, d.Title)
	d.Straight(layout.Center, 0, box.Min.Y-3, 0, box.Max.Y+3)
	return d
}

// seatParts are the pieces of the seats for a cutter, as many as the boat needs.
func seatParts(f *frame.Frame) []layout.Part {
	var out []layout.Part
	for _, s := range f.Seats {
		switch {
		case s.Hung != nil:
			for _, r := range []struct {
				word string
				rail seat.Rail
			}{{"front", s.Hung.Front}, {"after", s.Hung.After}} {
				for _, hand := range []string{"port", "starboard"} {
					cut := hangerCut(s, r.rail)
					if hand == "starboard" {
						for i, p := range cut {
							cut[i] = p.Map(geometry.Stretch(-1, 1)).Reverse()
						}
					}
					p := layout.Part{Name: fmt.Sprintf("%s, %s hanger, %s", s.Name, r.word, hand), Cut: cut, Material: s.Wood, Thickness: seat.Thick, Grain: math.Pi / 2}
					p.Blank = frame.Blank(p.Outline(), p.Grain, frame.EndTrim, 0)
					engrave(&p, geometry.Point{Y: -r.rail.Hanger.Down - 20}, 0, r.word+" "+hand[:1])
					out = append(out, p)
				}
			}
		case s.Saddle != nil:
			for range 2 {
				p := layout.Part{Name: s.Name + ", cheek", Cut: []curve.Path{curve.Polygon(s.Saddle.Cheek...)}, Material: s.Wood, Thickness: seat.BoardThick}
				p.Blank = frame.Blank(p.Outline(), p.Grain, frame.Around, 0)
				box := geometry.Around(s.Saddle.Cheek...)
				p.Engrave(box.Center(), engraved, s.Name, box.W()*0.8)
				out = append(out, p)
			}
		}
	}
	return out
}

// boltsOn is where the bolts of a rail's hanger come on the strip, with a word on whose they
// are where it is a half.
func boltsOn(d *layout.Drawing, r seat.Rail) (a, b float64, whose string) {
	a, b = r.Hanger.Bolts[0], r.Hanger.Bolts[1]
	if d.Turns {
		mid, word := folded((a + b) / 2)
		return mid - (b-a)/2, mid + (b-a)/2, word
	}
	return a, b, ""
}

// drawSeatBolts marks where hangers' bolts go through the gunwale, on the strip of its
// underside.
func drawSeatBolts(d *layout.Drawing, f *frame.Frame, half float64, units measure.System) {
	for _, s := range f.Seats {
		if s.Hung == nil {
			continue
		}
		for i, r := range []seat.Rail{s.Hung.Front, s.Hung.After} {
			a, b, whose := boltsOn(d, r)
			for _, x := range []float64{a, b} {
				d.Straight(layout.Mark, x, -half, x, half)
			}
			d.Write((a+b)/2, -half+1, small, layout.Middle, "bolts "+units.Fine(r.Hanger.Down)+" down")
			d.Write((a+b)/2, half-3.4-row, small, layout.Middle, []string{"front", "after"}[i]+" hanger")
			d.Write((a+b)/2, half-3.4, small, layout.Middle, strings.TrimPrefix(whose, ", "))
			d.Whole = append(d.Whole, layout.Span{From: a - 5, To: b + 1})
		}
	}
}
