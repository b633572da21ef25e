package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// GaugeStock is the plywood that gauges and guides are cut from, mm: stiff enough
// and cheap. Common practice, no source.
const GaugeStock = 4.0

// engraved is the height of letters on cut parts, mm.
const engraved = 5

// Parts returns every piece to cut from sheet or plank by machine, each as many
// times as the boat needs it. The grain of stems runs from foot to head, that of
// thwarts and breasthooks along x; gauges may lie any way.
func Parts(f *frame.Frame) []layout.Part {
	out := []layout.Part{stemPart(f, f.Bow), stemPart(f, f.Stern), hookPart(f.BowHook), hookPart(f.SternHook)}
	for _, t := range f.Thwarts {
		out = append(out, thwartPart(t))
	}
	for _, g := range f.Gauges {
		out = append(out, gaugePart(g))
	}
	return out
}

func engrave(p *layout.Part, at geometry.Point, angle float64, words string) {
	if words = lettering.Safe(words); words != "" {
		p.Letters = append(p.Letters, layout.Text{At: at, Height: engraved, Angle: angle, Align: layout.Middle, Words: words})
	}
}

func stemPart(f *frame.Frame, s frame.Stem) layout.Part {
	p := layout.Part{Name: s.End + " stem", Cut: []curve.Path{s.Outline}, Thickness: s.Thickness, Grain: s.Grain}
	for i, l := range s.Landings {
		// Crosses show where the stringers land; the number stands beside them.
		p.Marks = append(p.Marks,
			curve.Polyline(l.At.Add(geometry.Point{X: -3}), l.At.Add(geometry.Point{X: 3})),
			curve.Polyline(l.At.Add(geometry.Point{Y: -3}), l.At.Add(geometry.Point{Y: 3})))
		engrave(&p, l.At.Add(geometry.Point{X: -11, Y: -2.5}), 0, fmt.Sprintf("S%d", i+1))
	}
	// The name runs up the wood from the forefoot, clear of the crosses.
	at := s.Middle.Add(geometry.Polar(engraved*1.4, s.Rise+math.Pi/2)).Add(geometry.Polar(40, s.Rise))
	engrave(&p, at, s.Rise, fmt.Sprintf("%s stem, %.4g mm", s.End, s.Thickness))
	return p
}

func hookPart(b frame.Breasthook) layout.Part {
	p := layout.Part{Name: b.End + " breasthook", Cut: []curve.Path{b.Outline}, Thickness: b.Thickness}
	box := b.Outline.Bounds()
	p.Marks = append(p.Marks, curve.Polyline(geometry.Point{X: box.Min.X * 0.45}, geometry.Point{X: box.Max.X - 4}))
	engrave(&p, geometry.Point{X: box.Min.X * 0.6, Y: -engraved * 2}, 0, lettering.Clip(fmt.Sprintf("%s, %.4g mm", b.End, b.Thickness), engraved, box.W()*0.5))
	return p
}

func thwartPart(t frame.Thwart) layout.Part {
	p := layout.Part{Name: t.Name, Cut: append(append([]curve.Path(nil), t.Holes...), t.Outline), Thickness: t.Thickness}
	p.Marks = append(p.Marks, curve.Polyline(geometry.Point{Y: -8}, geometry.Point{Y: 8}))
	engrave(&p, geometry.Point{X: t.Length / 4, Y: -engraved / 2}, 0, lettering.Clip(fmt.Sprintf("%s, %.4g mm", t.Name, t.Thickness), engraved, t.Length/3))
	return p
}

func gaugePart(g frame.Gauge) layout.Part {
	p := layout.Part{Name: "gauge " + list(g.Names), Cut: []curve.Path{g.Outline}, Marks: g.Ticks, Thickness: GaugeStock, Loose: true}
	engrave(&p, g.Middle.Add(geometry.Polar(engraved/2, -math.Pi/2)), 0, lettering.Clip("gauge "+list(g.Names), engraved, 2*g.Middle.X-6))
	return p
}
