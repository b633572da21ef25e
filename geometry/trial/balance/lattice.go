package balance

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/sidebyside"
)

// model is the frame as the likely case has it.
func (b *Boat) model(struts []Member) (*Model, error) {
	m := &Model{rail: b.rail(), struts: struts, likely: b.Likely()}
	m.hoops = make([]*hoop, len(b.Frame.Ribs))
	sidebyside.Each(len(m.hoops), func(i int) { m.hoops[i] = b.hoop(i) })
	for i, r := range b.Frame.Ribs {
		h := m.hoops[i]
		spring := Member{r.Name, r.Station, 0}
		if h != nil {
			spring.Stiffness = 1 / h.give()
		}
		m.ribs = append(m.ribs, spring)
		m.pitches = append(m.pitches, b.Frame.Carries(i))
	}
	var err error
	if m.battens, err = b.battens(); err != nil {
		return nil, err
	}
	return m, m.build(1)
}

// hoop is rib i with what lies on it.
func (b *Boat) hoop(i int) *hoop {
	r := b.Frame.Ribs[i]
	keel := geometry.Point{Y: r.Section.KeelZ}
	var at []crossing
	for j, s := range b.Frame.Stringers {
		p := s.Line.Point(r.Station)
		at = append(at, crossing{r.Stringers[j], geometry.Pt(p.Y, p.Z).Sub(keel)})
	}
	cloth := b.Frame.Corners(r)
	for k := range cloth {
		cloth[k] = cloth[k].Sub(keel)
	}
	return newHoop(r.Section.Half, b.ribStiff(), r.Thickness, at, cloth)
}

// battens are the keel and the stringers.
func (b *Boat) battens() ([]*batten, error) {
	d := b.Frame.Design
	wood, err := d.Wood(d.Keel.Species)
	if err != nil {
		return nil, err
	}
	// Half of the keel belongs to either side of the boat.
	keel := &batten{moe: wood.MOE, wide: float64(d.Keel.Width) / 2, deep: float64(d.Keel.Depth)}
	out := []*batten{b.lie(keel, b.Frame.Keel, func(frame.Rib) float64 { return 0 })}
	if wood, err = d.Wood(d.Stringers.Species); err != nil {
		return nil, err
	}
	for j, s := range b.Frame.Stringers {
		stick := &batten{moe: wood.MOE, wide: float64(d.Stringers.Width), deep: float64(d.Stringers.Depth), ends: true}
		out = append(out, b.lie(stick, s.Batten, func(r frame.Rib) float64 { return r.Stringers[j] }))
	}
	return out, nil
}

// lie lays a stick along its line over the ribs, so far along each.
func (b *Boat) lie(t *batten, on frame.Batten, along func(frame.Rib) float64) *batten {
	aft, fore := on.Line.Ends()
	n := len(b.Frame.Ribs) + 2
	t.x, t.face = append(make([]float64, 0, n), aft), make([]float64, 0, n)
	t.at, t.slope = make([][2]float64, 0, n), make([][2]float64, 0, n)
	for _, r := range b.Frame.Ribs {
		t.x = append(t.x, r.Station)
		_, heading := r.Section.Half.At(along(r))
		t.face = append(t.face, heading)
	}
	t.x = append(t.x, fore)
	last := len(t.face) - 1
	t.face = append(append([]float64{t.face[0]}, t.face...), t.face[last])
	for _, x := range t.x {
		p := on.Line.Point(x)
		out, up := on.Line.Slopes(x)
		t.at, t.slope = append(t.at, [2]float64{p.Y, p.Z}), append(t.slope, [2]float64{out, up})
	}
	return t
}

// EndBend is the stringer whose ends bear most when they are forced cold.
type EndBend struct {
	Stringer int     // its number
	Stress   float64 // N/mm2
	Breaks   float64 // at what its wood breaks, N/mm2
	Wood     string
}

func (b *Boat) endBend() EndBend {
	wood, _ := b.Frame.Design.Wood(b.Frame.Design.Stringers.Species) // battens has asked for it
	out := EndBend{Breaks: wood.MOR, Wood: wood.Name}
	for i, s := range b.Frame.Stringers {
		if stress := b.Model.battens[i+1].stress(); stress > out.Stress {
			out.Stringer, out.Stress = s.Number, stress
		}
	}
	return out
}

// What no drawing settles. All of it is from memory or our own choice.
const (
	// likelyHeads is the share of the moment of heads that cannot turn. A tenon of some
	// 22 mm with 0.3 mm to spare may turn by 0.8 degrees either way, which is what heads
	// turn when the beam changes by some 8 mm, and gunwales roll along with heads that all
	// turn one way. Against that it is pegged and swells tight. So: half. Our own choice.
	likelyHeads = 0.5
	// The cloth's pull may be so many times as small or as large as the likely one: from
	// 0.1 to 1 N/mm where 0.3 is likely. It is hardly ever measured, and rises and falls
	// with wetness. From memory.
	slacker, tauter = 1 / 3.0, 10 / 3.0
	// No cloth on a small boat pulls harder than a design may say, N/mm.
	tautest = 2.0
)

// Likely is the case for which the neutral set is made: heads half fast, ribs opened as
// their forms are made, ends of stringers steamed, cloth as the design has it.
func (b *Boat) Likely() Case {
	return Case{Heads: likelyHeads, Cloth: b.Frame.Design.Skin.Tension}
}
