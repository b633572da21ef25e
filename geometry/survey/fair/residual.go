package fair

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/survey/offsets"
)

// measure compares the finished design, as its file will hold it, with every
// point of the table.
func (f *fit) measure() (*Result, error) {
	h, err := f.hullNow()
	if err != nil {
		return nil, err
	}
	out := &Result{Design: f.d}
	sum, n := 0.0, 0
	for _, half := range []struct {
		stations []offsets.Station
		end      hull.End
		side     float64
	}{{f.aft, h.Stern, -1}, {f.bow, h.Bow, 1}} {
		for _, s := range half.stations {
			if half.side < 0 && s.X == 0 {
				continue
			}
			r := Residual{Station: half.side * s.X, Points: len(s.Points)}
			squares := 0.0
			for _, m := range f.missesAt(h, half.end, s, half.side) {
				m.Station = r.Station
				squares += m.Off * m.Off
				if m.Off > r.Worst.Off {
					r.Worst = m
				}
			}
			r.RMS = math.Sqrt(squares / float64(r.Points))
			sum, n = sum+squares, n+r.Points
			if r.Worst.Off > out.Worst.Off {
				out.Worst = r.Worst
			}
			out.Stations = append(out.Stations, r)
		}
	}
	slices.SortStableFunc(out.Stations, func(a, b Residual) int { return cmp.Compare(a.Station, b.Station) })
	out.RMS = math.Sqrt(sum / float64(n))
	return out, nil
}

// missesAt measures a section against the hull's own section, and a narrow end
// against the profile.
func (f *fit) missesAt(h *hull.Hull, e hull.End, s offsets.Station, side float64) []Miss {
	if isSection(s) {
		if sec, err := h.Section(side * s.X); err == nil {
			if o, err := f.holdAt(h, side*s.X).outline(sec); err == nil {
				return o.misses(s)
			}
		}
	}
	out := make([]Miss, len(s.Points))
	for i, p := range s.Points {
		off := profileOff(h, e, geometry.Point{X: s.X, Y: p.Y}, side)
		// Beside the stem's own half thickness what is wider is off too.
		out[i] = Miss{s.X, p, math.Hypot(off, math.Max(0, p.X-float64(f.d.Bow.Siding)/2))}
	}
	return out
}

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
		out.rail[i] = geometry.Point{X: p.Y + float64(f.d.Skin.Thickness()), Y: p.Z}
	}
	return out
}

// outline is the skin of the faired hull at one station, from the keel to the sheer.
type outline []geometry.Point

// outline draws the skin: the section moved out by half the rib, the stringers and
// the skin, then the gunwale's outer face.
func (b holding) outline(sec hull.Section) (outline, error) {
	const chord = 0.3 // mm
	chain, err := sec.Half.Offset(-b.over)
	if err != nil {
		return nil, err
	}
	line := append(outline{b.keel}, chain.Path(geometry.Point{Y: b.keel.Y + b.seat - b.over}, 0).Flatten(chord)...)
	return append(line, b.rail[:]...), nil
}

// misses gives each measured point's distance: the lowest from the keel, the
// uppermost from the sheer, the others from the nearest of the outline.
func (o outline) misses(s offsets.Station) []Miss {
	out := make([]Miss, len(s.Points))
	for i, p := range s.Points {
		off := 0.0
		switch {
		case i == 0 && p.X < 1:
			off = p.Sub(o[0]).Norm()
		case i == len(s.Points)-1:
			off = p.Sub(o[len(o)-1]).Norm()
		default:
			off = offLine(p, o)
		}
		out[i] = Miss{s.X, p, off}
	}
	return out
}
