package balance

import (
	"errors"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
)

// Boat is the balance of one frame.
type Boat struct {
	Frame *frame.Frame
	Glue  Glue
	Model *Model
	Wood  timber.Species // of the gunwales
	Ribs  timber.Species
	Open  []float64        // the neutral set: how much wider than its place each rib should stand before it is fitted, mm; nil when there is none
	Fit   []float64        // how much longer than drawn each cross piece is, mm: cut to the frame as it stands in the neutral set; nil when there is none
	Why   *finding.Finding // why there is no neutral set; nil when there is one
	Ends  EndBend          // what it takes to force the stringers' ends cold
}

// Of works out the balance of a frame.
//
// Errors: woods or sizes from which no model can be made. A frame whose ribs
// cannot take the load off its cross pieces is no error: Why tells.
func Of(f *frame.Frame) (*Boat, error) {
	b := &Boat{Frame: f}
	var err error
	if b.Wood, err = f.Design.Wood(f.Design.Gunwale.Species); err != nil {
		return nil, err
	}
	if b.Ribs, err = f.Design.Wood(f.Design.Ribs.Species); err != nil {
		return nil, err
	}
	if b.Glue, err = glueOf(f.Design); err != nil {
		return nil, err
	}
	struts, err := b.struts()
	if err != nil {
		return nil, err
	}
	if b.Model, err = b.model(struts); err != nil {
		return nil, err
	}
	b.Ends = b.endBend()
	b.Open, err = b.Model.Neutral()
	if errors.Is(err, ErrNoNeutral) {
		b.Why = b.without(err.Error(), softer)
		return b, nil
	}
	if err != nil {
		return nil, err
	}
	b.Fit = b.Model.Fit(b.Open)
	if b.Why = b.beyond(); b.Why != nil {
		b.Fit = nil
	}
	return b, nil
}

// mostOpen is the share of a rib's width by which it can still be set wider or
// narrower and remain the same rib. Our own limit.
const mostOpen = 0.5

// softer is what lets the ribs hold the gunwales.
const softer = "glue the plies bent, or make the gunwales thinner or the ribs thicker"

func (b *Boat) without(why, cure string) *finding.Finding {
	if cure != "" {
		why += "; " + cure
	}
	return &finding.Finding{About: "neutral set", Text: why, Standing: b.Ribs.Strength, Verdict: finding.Weak, Cure: cure}
}

// beyond tells why a neutral set that the sums give cannot be made: a rib set too
// far off, or stressed past half its strength in its place; nil when it can.
func (b *Boat) beyond() *finding.Finding {
	s, err := b.Settle(b.Open, nil)
	if err != nil {
		return b.without(err.Error(), "")
	}
	for i, r := range b.Frame.Ribs {
		wide := 2 * r.Section.HalfBreadth
		if math.Abs(b.Open[i]) > mostOpen*wide {
			return b.tooFar(r.Name, b.Open[i], wide)
		}
		if most := timber.AssemblyShare * b.Ribs.MOR; b.RibStress(i, s) > most {
			return b.without(fmt.Sprintf("gunwales too stiff for these ribs: holding them, rib %s would bear %.0f N/mm2, more than half of what %s breaks at (%.0f)",
				r.Name, b.RibStress(i, s), b.Ribs.Name, b.Ribs.MOR), softer)
		}
	}
	return nil
}

// tooFar says that a rib would have to stand so much wider than its place, mm, as to be
// another rib.
func (b *Boat) tooFar(name string, open, wide float64) *finding.Finding {
	stand := fmt.Sprintf("rib %s would have to stand %.0f mm wide for its place of %.0f mm", name, wide+open, wide)
	if open > 0 {
		return b.without("gunwales too stiff for these ribs: "+stand, softer)
	}
	if wide+open <= 0 {
		stand = fmt.Sprintf("the heads of rib %s would have to cross before it goes into its place of %.0f mm", name, wide)
	}
	return b.without("cloth or gunwales spread these ribs too far: "+stand, "less pull of the cloth (skin.tension), thicker ribs, or gunwales that need less drawing in (hull.spreader)")
}

// Stiff returns the gunwale's bending stiffness about its weak axis, N mm2.
func (b *Boat) Stiff() float64 {
	g := &b.Frame.Gunwale
	return b.Wood.MOE * g.Height * g.Width * g.Width * g.Width / 12
}

// rail is the port gunwale. It bends in its tilted plane, where its line makes
// the angle φ with the middle plane (tan φ = y'/cos ψ, ψ the tilt). A small
// change v of half-breadth at a place of the stock turns it there by v'/cos ψ, so
//
//	S = E I cos φ / cos² ψ    g = (κ - κ0) cos ψ / cos φ    κ = (y''/cos ψ) cos³ φ
//
// for which the energy is ½ ∫ S (v” + g)² dx over the stations, whatever the
// slope.
func (b *Boat) rail() Rail {
	line := b.Frame.Gunwale.Line
	aft, fore := line.Ends()
	ei, tilt := b.Stiff(), math.Cos(b.Frame.Gunwale.Tilt)
	r := Rail{From: aft, To: fore,
		Stiffness: func(x float64) float64 { return ei * b.cosPhi(x) / (tilt * tilt) },
		Strain: func(x float64) float64 {
			return b.Curvature(x) * (1 - b.Glue.Kept) * tilt / b.cosPhi(x)
		},
	}
	for _, s := range b.Frame.Design.AllSpreaders() {
		r.Kinks = append(r.Kinks, float64(s.At))
	}
	return r
}

// cosPhi is the cosine of the gunwale's angle to the middle plane in its own
// tilted plane.
func (b *Boat) cosPhi(x float64) float64 {
	dy, _ := b.Frame.Gunwale.Line.Slopes(x)
	return 1 / math.Hypot(1, dy/math.Cos(b.Frame.Gunwale.Tilt))
}

// Curvature returns how the gunwale as designed is curved in its tilted plane at
// the station x, 1/mm, negative where it bulges.
func (b *Boat) Curvature(x float64) float64 {
	_, _, bend := b.Frame.Hull.Plan.At(x)
	c := b.cosPhi(x)
	return bend / math.Cos(b.Frame.Gunwale.Tilt) * c * c * c
}

// ribStiff returns a rib's bending stiffness, N mm2.
func (b *Boat) ribStiff() float64 {
	w, t := float64(b.Frame.Design.Ribs.Width), float64(b.Frame.Design.Ribs.Thickness)
	return b.Ribs.MOE * w * t * t * t / 12
}

// struts are the cross pieces, stiff along themselves as sticks of their mean
// width.
func (b *Boat) struts() ([]Member, error) {
	var out []Member
	for i, t := range b.Frame.Thwarts {
		of := b.Frame.Design.Thwarts[i]
		wood, err := b.Frame.Design.Wood(of.Species)
		if err != nil {
			return nil, err
		}
		area := float64(of.Width+of.Waist) / 2 * t.Thickness
		out = append(out, Member{t.Name, t.At, wood.MOE * area / (2 * b.Frame.Gunwale.Line.Point(t.At).Y)})
	}
	return out, nil
}

// Settle returns where the frame rests in the likely case with its ribs set open by the
// given amounts (nil for ribs just as wide as their places) and without some members.
// Cross pieces are as long as they are cut for the neutral set.
func (b *Boat) Settle(open []float64, without *Without) (*State, error) {
	if without == nil {
		without = &Without{}
	}
	return b.Model.Settle(Setting{Open: open, Slack: b.Fit, RibsOut: without.ribs, StrutsOut: without.struts})
}

// Width returns how wide rib i stands between the middles of its heads' thickness
// before it is fitted in the neutral set, mm: what to relax it to.
func (b *Boat) Width(i int) float64 {
	return 2*b.Frame.Ribs[i].Section.HalfBreadth + b.Open[i]
}

// RibStress returns the greatest stress in rib i of a state, beyond what it stands free
// with, N/mm2: its bending over the section's modulus.
func (b *Boat) RibStress(i int, s *State) float64 {
	w, t := float64(b.Frame.Design.Ribs.Width), float64(b.Frame.Design.Ribs.Thickness)
	return s.Bent[i] / (w * t * t / 6)
}

// FreeRadius returns the radius that bend j of rib i has when the rib stands free
// in the neutral set, mm at mid-thickness; +Inf when it would be straight or bent
// the other way, the radius in the boat when there is no neutral set.
//
// How: in its place the rib is pinched by P, which bends it by P m/(E I) more, m
// the height of its head above the place. A form has plain arcs and straight runs
// that stay straight, so each bend takes the mean of m over it, and all together
// are scaled so that they make the whole opening.
func (b *Boat) FreeRadius(i, j int) float64 {
	half := b.Frame.Ribs[i].Section.Half
	head, _ := half.End()
	moments := make([]float64, len(half)) // ∫ m ds over each bend, mm2
	half.Along(func(k int, p geometry.Point, ds float64) { moments[k] += (head.Y - p.Y) * ds })
	pinch := 0.0 // P/(E I) for each mm of moment
	if b.Why == nil {
		bends := 0.0
		for k, bend := range half {
			if bend.Radius > 0 {
				bends += moments[k] * moments[k] / bend.Length
			}
		}
		pinch = b.Open[i] / 2 / bends
	}
	free := 1/half[j].Radius - pinch*moments[j]/half[j].Length
	if half[j].Radius == 0 || !(free > 0) {
		return math.Inf(1)
	}
	return 1 / free
}
