package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
)

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
	b.hole(sail.BladeHead, 0, 12, "the bolt it turns on")
	b.line(layout.Mark, over, -half, over, half)
	b.Flat = true
	b.Curves = []Curved{{"head", 0, sail.BladeHead + 25}, {"shoulder", over*0.75 - curveEnds, over*1.1 + curveEnds}, {"tip", long - tip - curveEnds, long}}
	b.Places, b.Rows = nil, []string{
		fmt.Sprintf("From the head: bolt of 12 mm at %s, neck %s wide from %s to %s, water at %s, blade %s wide from %s to %s.", units.Fine(sail.BladeHead),
			units.Fine(2*neck), units.Fine(neck*0.6), units.Fine(over*0.75), units.Fine(over), units.Fine(2*half), units.Fine(over*1.1), units.Fine(long-tip)),
		"Head, shoulder and tip are curves: their full-size halves are in this set. Turn each over about the middle line."}
	b.label(over+3, -half+4, layout.Left, "water")
	b.line(layout.Center, 95, 0, long-5, 0)
	return b
}

// curveEnds is how much of the straight edge a curve at full size shows beside it, mm.
const curveEnds = 15.0

// CurveDrawings draws the curves of a board at full size, each as the half over the
// board's middle line; x is as on the whole board.
func (b Board) CurveDrawings(units measure.System) []layout.Drawing {
	var out []layout.Drawing
	for _, c := range b.Curves {
		d := layout.Drawing{Name: b.Name + "-" + c.Name, Title: b.Title + ", " + c.Name, Family: b.Title, Make: "half, full size: turn it over about the middle line"}
		high := 0.0
		for _, s := range b.Outline {
			a, z := s.At(0), s.At(1)
			if a.Y+z.Y < 0 || math.Max(a.X, z.X) < c.From || math.Min(a.X, z.X) > c.To {
				continue
			}
			if l, straight := s.(curve.Line); straight {
				s = curve.Line{A: within(l, c.From, c.To, 0), B: within(l, c.From, c.To, 1)}
			}
			d.Line(layout.Cut, curve.Path{s})
			high = math.Max(high, math.Max(s.At(0).Y, s.At(1).Y))
		}
		d.Straight(layout.Center, c.From, 0, c.To, 0)
		for _, x := range []float64{c.From, c.To} {
			if x > 0 && x < b.Outline.Bounds().Max.X {
				d.Straight(layout.Mark, x, 0, x, high)
			}
		}
		for _, h := range b.Holes {
			if m := h.Bounds().Center(); m.X > c.From && m.X < c.To {
				d.Straight(layout.Mark, m.X, 0, m.X, 12)
			}
		}
		words := []string{c.Name, fmt.Sprintf("%s to %s", units.Fine(c.From), units.Fine(c.To)), "from the head"}
		for i, w := range words {
			d.Write((c.From+c.To)/2, high/2+3-row*float64(i), small, layout.Middle, w)
		}
		keepWords(&d)
		out = append(out, d)
	}
	return out
}

// within is the point of a line nearest to one of its ends that lies between two places.
func within(l curve.Line, from, to, end float64) geometry.Point {
	p := l.At(end)
	x := math.Max(from, math.Min(to, p.X))
	if l.B.X == l.A.X {
		return p
	}
	return l.At((x - l.A.X) / (l.B.X - l.A.X))
}

// bracketBar lies across the gunwales and holds the leeboard's cheek at one end.
func bracketBar(f *sail.Fit, units measure.System) Board {
	x := f.BracketAt()
	inner, _ := f.Boat.GunwaleTop(x)
	half, high := f.BracketLong()/2, sail.BracketBar/2.0
	b := Board{Name: "bracket", Title: "Leeboard bracket", Count: 1, Thick: sail.BracketHigh, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 8), Flat: true, Corner: 8,
		At: geometry.Pt(-inner.Y+kit.ClipWide+24, high-9), NameAt: geometry.Pt(-20, -high+8), Engrave: "bracket",
		Words: []string{"forward is up; holes for its middle at station " + units.Fine(x) + ";", "bore new ones where trials move it to, " + inFrom(units)}}
	b.gunwales(f.Boat, x, high)
	b.clipHoles(x, f.BracketClip())
	for _, side := range []float64{1, -1} {
		peg := f.CheeksAt() + bolt/2 + 1
		b.hole(side*peg, 0, bolt, "bolt outside the cheeks")
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
	b.Flat, b.Zero = true, "the bar's lower face"
	const easy = 0.5 // the bar slides in by hand
	b.Places = append(b.Places, Place{What: "the bar", At: geometry.Pt(0, (sail.BracketHigh+easy)/2), Slot: geometry.Pt(sail.BracketBar+2*easy, sail.BracketHigh+easy)})
	b.Holes = append(b.Holes, curve.Rectangle(geometry.Rect(-sail.BracketBar/2-easy, 0, sail.BracketBar/2+easy, sail.BracketHigh+easy)))
	b.hole(0, -sail.PivotDown, 12, "the blade's bolt")
	return b
}
