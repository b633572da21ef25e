package bend

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/finding"
)

// Form is the flat form that the ribs of one group are bent round: a plate whose edge
// is the inner face of the rib as it is bent hot. x is the half-breadth and y the
// height over the middle of the rib's thickness at the keel, mm; both halves are alike.
type Form struct {
	Names   []string     // of the ribs it serves, the nearest to midship first
	Edge    curve.Path   // of the port half, from the middle line out past the rib's end
	Outline curve.Path   // of the whole plate, closed, counter-clockwise
	Holes   []curve.Path // for the clamps' jaws
	Ticks   []curve.Path // across the edge where bends meet and where the rib's heads come, port half
	Layers  int          // of sheet, each FormStock thick, that bear enough of the rib's width
}

// The making of a form, mm. Common practice, no source, but for the share of a rib's
// width that must bear, which is our own choice: thin ribs do not curl at their edges.
const (
	FormStock  = 18.0    // thickness of the sheet that forms are sawn from
	formBears  = 2.0 / 3 // of the rib's width
	formPast   = 10.0    // of edge past the rib's end
	clampHole  = 40.0    // diameter
	clampIn    = 50.0    // from the edge in to the middle of a hole
	clampPitch = 100.0   // along the edge
	clampWood  = 18.0    // wood round a hole
	leastForm  = clampIn // between the heads: a narrower form breaks, and the rib cannot be slid off it
)

// onForms makes forms and gauges, the gauges of the free ribs. Ribs bent in place have
// no form, and the gauges show the shape in the boat.
func (r *Report) onForms() {
	if r.Gauges = r.Frame.Gauges; !r.OnForms() {
		return
	}
	r.Gauges = nil
	for _, g := range r.Frame.RibGroups {
		i := slices.IndexFunc(r.Ribs, func(b Rib) bool { return b.Name == g.Rib.Name })
		arcs := r.Ribs[i].Arcs
		f, err := newForm(g, bentTo(g.Rib.Section.Half, arcs, form), float64(r.Frame.Design.Ribs.Width))
		if err != nil {
			r.noForm(g, err)
		} else {
			r.Forms = append(r.Forms, f)
		}
		gauge, err := frame.NewGauge(g, bentTo(g.Rib.Section.Half, arcs, free))
		if err != nil {
			r.noForm(g, err)
			continue
		}
		r.Gauges = append(r.Gauges, gauge)
	}
}

// noForm notes that a rib cannot be bent round a form, or has no gauge, and why.
func (r *Report) noForm(g frame.Group, why error) {
	r.note(finding.Finding{About: "form for rib " + g.Rib.Name, Text: why.Error(), Verdict: finding.TooTight, Standing: finding.Common,
		Cure: "less springback (bending.springback: dry the ribs as they are bent), a larger bilge radius there, or bend in place (bending.method)"})
}

// newForm draws the form for the ribs of a group, wide mm, which are bent hot to half.
//
// Errors: a bend without an inner edge, and heads that come too near each other.
func newForm(g frame.Group, half curve.Chain, wide float64) (Form, error) {
	r := g.Rib
	inner, err := half.Offset(r.Thickness / 2)
	if err != nil {
		return Form{}, err
	}
	past := (r.Blank-r.Length)/2 + formPast
	line := append(slices.Clone(inner), curve.Straight(past))
	f := Form{Names: g.Names, Edge: line.Path(geometry.Point{Y: r.Thickness / 2}, 0),
		Layers: max(1, int(math.Ceil(formBears*wide/FormStock-1e-9)))}
	end := f.Edge[len(f.Edge)-1].End()
	apart := math.Inf(1)
	for _, p := range f.Edge.Flatten(0.05) {
		if p.Y > end.Y/2 {
			apart = math.Min(apart, 2*p.X)
		}
	}
	if !(apart >= leastForm && end.Y > r.Thickness) {
		return Form{}, fmt.Errorf("held as it is bent hot its ends come within %.0f mm of each other, and a form wants %.0f mm between them", math.Max(0, apart), leastForm)
	}
	other := f.Edge.Map(geometry.Stretch(-1, 1)).Reverse()
	f.Outline = slices.Concat(other, f.Edge, curve.Path{curve.Line{A: end, B: geometry.Point{X: -end.X, Y: end.Y}}})
	f.ticks(inner, r.Thickness)
	f.clampHoles(inner, r.Thickness)
	return f, nil
}

// ticks marks on the face of the form, square to its edge, where bends meet and where
// the head of the rib comes.
func (f *Form) ticks(inner curve.Chain, thickness float64) {
	at := 0.0
	for _, b := range inner {
		at += b.Length
		p, heading := inner.At(at)
		p = p.Add(geometry.Point{Y: thickness / 2})
		f.Ticks = append(f.Ticks, curve.Polyline(p, p.Add(geometry.Polar(12, heading+math.Pi/2))))
	}
}

// clampHoles sets holes along the edge, from the middle outward, where enough wood is
// left round them.
func (f *Form) clampHoles(inner curve.Chain, thickness float64) {
	outline := f.Outline.Flatten(1)
	var middles []geometry.Point
	for s := 0.0; s <= f.Edge.Length(); s += clampPitch {
		p, heading := inner.At(s)
		p = p.Add(geometry.Point{Y: thickness / 2}).Add(geometry.Polar(clampIn, heading+math.Pi/2))
		other := geometry.Point{X: -p.X, Y: p.Y}
		clear := s == 0 || p.Sub(other).Norm() >= clampHole+clampWood
		for _, m := range middles {
			clear = clear && p.Sub(m).Norm() >= clampHole+clampWood && other.Sub(m).Norm() >= clampHole+clampWood
		}
		if !clear || p.X < 0 || !curve.Holds(outline, p) || nearest(outline, p) < clampHole/2+clampWood {
			continue
		}
		middles = append(middles, p)
		f.Holes = append(f.Holes, curve.Circle(p, clampHole/2))
		if s > 0 {
			middles = append(middles, other)
			f.Holes = append(f.Holes, curve.Circle(other, clampHole/2))
		}
	}
}

// nearest is how far a point lies from a closed line.
func nearest(line []geometry.Point, p geometry.Point) float64 {
	least := math.Inf(1)
	for i, a := range line {
		least = math.Min(least, p.Off(a, line[(i+1)%len(line)]))
	}
	return least
}
