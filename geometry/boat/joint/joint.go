// Package joint has the joints of a frame as facts: which pieces meet, what holds them,
// where each hole stands by edges that a builder can measure from, how much cord and
// glue they take, and what they bear. It asks nothing of the loads: others judge.
//
// Lengths in mm, loads in N. Places on a stem are those of its pattern: x from midship,
// y over the baseline, drawn as the bow.
package joint

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/wood/timber"
)

// Fastener is what is driven or put through a joint.
type Fastener struct {
	Key              string // as price tables name it: "peg", "screw", "bolt"
	Name             string // "stainless wood screw, No. 6"; "" for none
	Diameter, Length float64
	Each             int // in one joint
}

// Joint is what every joint has.
type Joint struct {
	Name     string // "keel to stem, bow"
	Count    int    // of the same in the boat
	Fastener Fastener
	Turns    int     // of its lashing; 0 for none
	Cord     float64 // that one lashing takes, both tails in it
	Glue     float64 // area glued in one, mm2
}

// cordStep is what cord is cut by, mm: nobody measures it closer.
const cordStep = 50.0

// Cut is the cord that is cut for one lashing, mm: what it takes, up to the next 50 mm.
func (j Joint) Cut() float64 { return cordStep * math.Ceil(j.Cord/cordStep-1e-9) }

// Joints are all joints of one frame. Pairs are stern and bow, as everywhere.
type Joints struct {
	Frame *frame.Frame
	Usual Usual

	Feet      [2]Foot
	Landings  [2]Landing
	Ends      [2]End
	Hooks     [2]Hook
	Head      Head
	Keel      Crossing // ribs on the keel
	Stringers Crossing // stringers on the ribs
	Cross     []Cross  // as the frame's cross pieces
}

// Of works out the joints of a frame.
//
// Errors: a wood that is not known.
func Of(f *frame.Frame) (*Joints, error) {
	j := &Joints{Frame: f, Usual: Remembered()}
	m := maker{Joints: j, woods: map[string]timber.Species{}}
	for i, e := range ends(f) {
		outline := outlineOf(e.Outline.Flatten(0.05))
		j.Feet[i] = m.foot(e)
		j.Landings[i] = m.landing(e, outline)
		j.Ends[i] = m.end(e, outline, j.Landings[i])
	}
	for i, h := range [2]frame.Breasthook{f.SternHook, f.BowHook} {
		j.Hooks[i] = m.hook(h)
	}
	if err := j.landed(); err != nil {
		return nil, err
	}
	j.Head = m.head()
	j.Keel, j.Stringers = m.crossings()
	for i, t := range f.Thwarts {
		j.Cross = append(j.Cross, m.cross(t, f.Design.Thwarts[i].Species))
	}
	return j, m.err
}

// maker makes joints and keeps the first wood that is not known.
type maker struct {
	*Joints
	woods map[string]timber.Species
	err   error
}

// stemAt is a stem with its end of the hull; side is 1 forward and -1 aft.
type stemAt struct {
	frame.Stem
	hull hull.End
	side float64
}

func (m *maker) wood(name string) timber.Species {
	if s, ok := m.woods[name]; ok {
		return s
	}
	s, err := m.Frame.Design.Wood(name)
	if err != nil && m.err == nil {
		m.err = err
	}
	m.woods[name] = s
	return s
}

// All lists the joints, each kind once for each end.
func (j *Joints) All() []Joint {
	var out []Joint
	for _, i := range []int{1, 0} {
		out = append(out, j.Feet[i].Joint, j.Landings[i].Joint, j.Ends[i].Joint, j.Hooks[i].Joint)
	}
	out = append(out, j.Head.Joint, j.Keel.Joint, j.Stringers.Joint)
	for _, c := range j.Cross {
		out = append(out, c.Joint)
	}
	return out
}

// Fasteners counts those with a key of the price table.
func (j *Joints) Fasteners(key string) int {
	n := 0
	for _, o := range j.All() {
		if o.Fastener.Key == key {
			n += o.Count * o.Fastener.Each
		}
	}
	return n
}

// Cord is the cord that is cut for all lashings, mm.
func (j *Joints) Cord() float64 {
	sum := 0.0
	for _, o := range j.All() {
		sum += float64(o.Count) * o.Cut()
	}
	return sum
}

// Lashings counts the lashings that are no crossings of ribs.
func (j *Joints) Lashings() int {
	n := 0
	for _, o := range j.All() {
		if o.Turns > 0 && o != j.Keel.Joint && o != j.Stringers.Joint {
			n += o.Count
		}
	}
	return n
}

// Glue is the area of all glue lines of the joints, mm2.
func (j *Joints) Glue() float64 {
	sum := 0.0
	for _, o := range j.All() {
		sum += float64(o.Count) * o.Glue
	}
	return sum
}

// deep returns how far wood reaches from a place on an outline in a direction, mm.
func deep(outline []geometry.Point, from geometry.Point, heading float64) float64 {
	way := geometry.Polar(1, heading)
	best := math.Inf(1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		edge := b.Sub(a)
		cross := way.Cross(edge)
		if math.Abs(cross) < 1e-12 {
			continue
		}
		to := a.Sub(from)
		along, share := to.Cross(edge)/cross, to.Cross(way)/cross
		if along > 0.5 && share >= 0 && share <= 1 {
			best = math.Min(best, along)
		}
	}
	return best
}

// roomiest returns the first of the whole millimeters from one place to another where
// there is most room, to a hundredth. A step of a millimeter changes the room by one at
// the most, so places that cannot have more are left out.
func roomiest(from, to float64, room func(at float64) float64) float64 {
	best, place := math.Inf(-1), from
	for at := from; at <= to; {
		now := room(at)
		if now > best+0.01 {
			best, place = now, at
		}
		at += max(1, math.Ceil(best-now-0.01)) // a little early, for rounding
	}
	return place
}

// cordHole returns the drill for so many turns of the cord.
func (u Usual) cordHole(turns int) float64 {
	return math.Ceil(u.Cord.Diameter*math.Sqrt(float64(turns)/u.CordFull) + 0.5)
}

// Bears returns what a lashing of so many turns bears for years, N.
func (u Usual) Bears(turns int) float64 {
	return u.Lashing(u.Cord, turns) * u.WorkingEnd
}
