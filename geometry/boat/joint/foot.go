package joint

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/wood/fasten"
)

// Foot is where the keel lies under a stem's foot and butts against its step: screws
// from below, and a lashing round both.
type Foot struct {
	Joint
	End      string
	Stem     [2]geometry.Point // of the pattern: step and after end of the foot, on the keel's upper face
	FromEnd  []float64         // places of the screws from the keel's end at the step, mm, along its middle line
	At       []geometry.Point  // the same on the stem's pattern
	Deep     float64           // of a screw's thread in the foot, mm
	Side     float64           // from a screw to the stem's sides, mm
	FootEnd  float64           // from the last screw to the foot's after end, mm
	Lash     float64           // middle of the lashing from the keel's end, mm
	Pilot    float64           // hole for the thread, in the foot
	Shank    float64           // hole in the keel
	Bears    float64           // of the screws along the keel, wet, by their design value, N
	Shortage string            // what the joint lacks by the rules of distance; "" for nothing

	long, shallow float64 // of a screw; least depth of the foot over one, mm
}

// screw is a wood screw by its number: diameters of shank and thread's root (NDS
// appendix L), and the yield of its steel in bending by the rule of nails (NDS).
type screw struct {
	number             int
	shank, root, yield float64 // mm, mm, N/mm2
}

func screws() []screw {
	const ksi = 6.894757
	return []screw{{6, 3.51, 2.87, 100 * ksi}, {7, 3.84, 3.10, 90 * ksi}, {8, 4.17, 3.33, 90 * ksi}}
}

// lengths are those that wood screws come in, mm.
var lengths = [...]float64{16, 20, 25, 30, 35, 40, 45, 50, 60}

func (m *maker) foot(e stemAt) Foot {
	d := m.Frame.Design
	keel, siding := float64(d.Keel.Depth), e.Thickness
	s, f, land := screwed(m.Frame, m.Usual, e)
	n, shallow := len(f.FromEnd), f.shallow
	wide := math.Max(float64(d.Keel.Width), siding)
	f.Joint = Joint{Name: "keel to stem, " + e.End, Count: 1, Turns: Turns,
		Fastener: Fastener{"screw", fmt.Sprintf("stainless wood screw, No. %d", s.number), s.shank, f.long, n},
		Cord:     Turns*2*(wide+keel+shallow) + Tails}
	foot, bottom := m.wood(d.StemWood()), m.wood(d.Keel.Species)
	f.Pilot, f.Shank = math.Round(2*m.Usual.Pilot(s.root, foot.Hard))/2, math.Ceil(2*s.shank)/2
	rod := fasten.Rod{Diameter: s.root, Yield: s.yield}
	if f.Deep > 0 {
		y := fasten.Single(rod, fasten.Piece{Bearing: fasten.Bearing(bottom.Gravity(), s.root, 0), Length: keel}, fasten.Piece{Bearing: fasten.Bearing(foot.Gravity(), s.root, 0), Length: f.Deep})
		z, _ := y.Design(s.shank, 0)
		f.Bears = float64(n) * z * fasten.Wet
	}
	switch {
	case f.Deep < fasten.ScrewDeep*s.shank:
		f.Shortage = fmt.Sprintf("the screws reach %.0f mm into the foot where %.0f mm are wanted; give the stem more moulded depth", f.Deep, math.Ceil(fasten.ScrewDeep*s.shank))
	case f.Side < m.Usual.ScrewEdge*s.shank:
		f.Shortage = fmt.Sprintf("the screws stand %.0f mm from the stem's sides where %.0f mm are wanted; give more siding", f.Side, math.Ceil(m.Usual.ScrewEdge*s.shank))
	case land < (m.Usual.ScrewAlong+2*m.Usual.ScrewEndPressed)*s.shank:
		f.Shortage = fmt.Sprintf("two screws want a landing of %.0f mm", math.Ceil((m.Usual.ScrewAlong+2*m.Usual.ScrewEndPressed)*s.shank))
	}
	return f
}

// screwed chooses the screws of a foot and places them on its landing, whose length it
// returns too.
func screwed(frame *frame.Frame, u Usual, e stemAt) (s screw, f Foot, land float64) {
	keel := float64(frame.Design.Keel.Depth)
	up := float64(frame.Design.Skin.Thickness()) + keel
	// on is the keel's upper face at a station, and up the way square to it.
	on := func(x float64) (geometry.Point, float64) {
		z, slope := frame.Hull.KeelZ(e.side * x)
		heading := math.Atan(slope * e.side)
		return geometry.Point{X: x, Y: z}.Add(geometry.Polar(up, heading+math.Pi/2)), heading
	}
	step, _ := on(e.ToeX)
	after, _ := on(e.FootX)
	f = Foot{End: e.End, Stem: [2]geometry.Point{step, after}, Side: e.Thickness / 2}
	land = step.Sub(after).Norm()
	outline := e.Outline.Flatten(0.01)
	for i, o := range screws() {
		t := f
		t.place(o, u, e, outline, on, land, keel)
		if i == 0 || u.ScrewEdge*o.shank <= t.Side && t.Deep >= fasten.ScrewDeep*o.shank {
			s, f = o, t
		}
	}
	f.Lash = land / 2
	return s, f, land
}

// place sets screws of a kind into the foot, as long as the wood over them allows.
func (f *Foot) place(s screw, u Usual, e stemAt, outline []geometry.Point, on func(float64) (geometry.Point, float64), land, keel float64) {
	f.FromEnd, f.At, f.shallow = screwPlaces(land, u.ScrewEndPulled*s.shank, u.ScrewEndPressed*s.shank, u.ScrewAlong*s.shank), nil, math.Inf(1)
	for _, from := range f.FromEnd {
		p, heading := on(e.ToeX - (e.ToeX-e.FootX)*from/land)
		f.At = append(f.At, p)
		f.shallow = math.Min(f.shallow, deep(outline, p, heading+math.Pi/2))
	}
	f.FootEnd = land - f.FromEnd[len(f.FromEnd)-1]
	const under = 3.0 // mm of wood left over a screw's tip
	f.long = lengths[0]
	for _, l := range lengths {
		if l <= keel+f.shallow-under && l <= keel+10*s.shank {
			f.long = l
		}
	}
	f.Deep = math.Max(0, math.Min(f.long-keel, f.shallow))
}

// screwPlaces returns where two screws stand from the keel's end on a landing, so far
// apart: at the full distance of a pulled end where the landing is long enough, else as
// far from the keel's end as it leaves, no nearer than a pressed end wants, for the
// edge-set presses the keel to the stem. Nearer together where even that has no room, and
// one in the middle where two have none.
func screwPlaces(land, pulled, pressed, apart float64) []float64 {
	switch {
	case land >= pulled+apart+pressed:
		return []float64{math.Ceil(pulled), math.Floor(math.Min(pulled+apart+1, land-pressed))}
	case land >= 2*pressed+apart:
		return []float64{math.Floor(land - pressed - apart), math.Floor(land - pressed)}
	case land >= 2*pressed+apart/2:
		return []float64{math.Ceil(pressed), math.Floor(land - pressed)}
	}
	return []float64{land / 2}
}
