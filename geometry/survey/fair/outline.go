package fair

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/survey/offsets"
)

// holding is what a section hangs between at one station: keel and gunwale, which
// do not change while its shape is looked for.
type holding struct {
	keel           geometry.Point    // of the skin on the middle line
	breadth, depth float64           // of the section, mm
	rail           [2]geometry.Point // lower and upper edge of the gunwale's outer face, skin included
	seat, over     float64           // keel's skin to mid-rib, and mid-rib to skin, mm
}

func (f *fit) holdAt(h *hull.Hull, x float64) holding {
	z, _ := h.KeelZ(x)
	g := h.Gunwale.Point(x)
	out := holding{keel: geometry.Point{Y: z}, breadth: g.Y, depth: g.Z - z - f.seat(), seat: f.seat(), over: f.skinOver()}
	gun := frame.Gunwale{Line: h.Gunwale, Width: float64(f.d.Gunwale.Width), Height: float64(f.d.Gunwale.Height), Tilt: float64(f.d.Gunwale.Tilt)}
	for i, up := range []float64{0, gun.Height} {
		p := gun.EdgeAt(x, gun.Width/2, up)
		out.rail[i] = geometry.Point{X: p.Y + float64(f.d.Skin.Thickness), Y: p.Z}
	}
	return out
}

// outline is the skin of the faired hull at one station.
type outline struct {
	keel, sheer geometry.Point
	line        []geometry.Point
}

// outline draws the skin: the section moved out by half the rib, the stringers and
// the skin, then the gunwale's outer face.
func (b holding) outline(sec hull.Section) (outline, error) {
	const chord = 0.3 // mm
	chain, err := sec.Half.Offset(-b.over)
	if err != nil {
		return outline{}, err
	}
	o := outline{keel: b.keel, sheer: b.rail[1], line: []geometry.Point{b.keel}}
	o.line = append(o.line, chain.Path(geometry.Point{Y: b.keel.Y + b.seat - b.over}, 0).Flatten(chord)...)
	o.line = append(o.line, b.rail[:]...)
	return o, nil
}

// misses gives each measured point's distance: the lowest from the keel, the
// uppermost from the sheer, the others from the nearest of the outline.
func (o outline) misses(s offsets.Station) []Miss {
	out := make([]Miss, len(s.Points))
	last := len(s.Points) - 1
	for i, p := range s.Points {
		off := math.Inf(1)
		switch {
		case i == 0 && p.X < 1:
			off = p.Sub(o.keel).Norm()
		case i == last:
			off = p.Sub(o.sheer).Norm()
		default:
			for k := 1; k < len(o.line); k++ {
				off = math.Min(off, offLine(p, o.line[k-1], o.line[k]))
			}
		}
		out[i] = Miss{s.X, p, off}
	}
	return out
}
