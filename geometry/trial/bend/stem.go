package bend

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/grain"
	"ribwright/geometry/wood/timber"
)

// Stem is a stem laminated round its forefoot and up its head.
type Stem struct {
	End   string
	Ply   float64 // mm
	Inner float64 // radius of its inner edge in the boat where it is bent most, mm
	Form  float64 // radius of the form, on which the inner edge lies, mm
	Ratio float64 // inner radius over thickness of the innermost ply on the form
}

// stems judges how the stems are made: the innermost ply of a laminated one has the
// tightest bend, and a sawn one the steepest grain.
func (r *Report) stems() error {
	d := r.Frame.Design
	wood, err := d.Wood(d.StemWood())
	if err != nil {
		return err
	}
	for i, e := range []stemEnd{{d.Bow, r.Frame.Bow, r.Frame.Hull.Bow, "stem at the bow"}, {d.After(), r.Frame.Stern, r.Frame.Hull.Stern, "stem at the stern"}} {
		if d.MadeStems() == design.StemsLaminated {
			s, err := r.laminated(e.stem.End, e.of, e.hull.Tightest())
			if err != nil {
				return fmt.Errorf("%s: %w", e.stem.End, err)
			}
			r.Stems = append(r.Stems, s)
			f := byRatio(fmt.Sprintf("%s, ply of %.1f mm", e.name, s.Ply), wood, s.Ratio, d.Bending.Strap)
			r.noteCure(f, "%.0f plies", math.Ceil(float64(e.of.Moulded)/(s.Form/f.Limit)))
		}
		if i == 0 && d.EndsAlike() {
			e.name = "stems"
		}
		if i == 0 || !d.EndsAlike() {
			r.knocked(e, wood)
		}
	}
	return nil
}

// laminated is a stem whose outer edge is nowhere bent more than to the given radius, mm.
func (r *Report) laminated(name string, e design.Stem, radius float64) (Stem, error) {
	b, skin := r.Frame.Design.Bending, float64(r.Frame.Design.Skin.Thickness())
	s := Stem{End: name, Ply: float64(e.Moulded) / float64(b.StemPlies), Inner: radius - float64(e.Moulded) - skin}
	back, err := timber.Springback(slices.Repeat([]float64{s.Ply}, b.StemPlies))
	if err != nil {
		return s, err
	}
	middle := s.Inner + float64(e.Moulded)/2
	s.Form = middle*(1-math.Min(back*b.GlueCreep, 0.95)) - float64(e.Moulded)/2
	if s.Form <= 0 {
		return s, fmt.Errorf("a laminated stem of %.0f mm round an outer edge of %.0f mm radius leaves no form inside it; accepted: more bending.stem_plies, less moulded depth or a larger forefoot or head radius", float64(e.Moulded), radius)
	}
	s.Ratio = s.Form / s.Ply
	return s, nil
}

// stemEnd is one stem by the design, by the frame and by the hull.
type stemEnd struct {
	of   design.Stem
	stem frame.Stem
	hull hull.End
	name string
}

// knocked judges a stem under a push against it at the waterline, as on a stone, carried
// by the foot and by the gunwales.
//
// How: a beam between the toe and the gunwales' ends. Each section bends along the
// stem's edge; what it bears there follows from how it is made. Solid: Hankinson's
// formula at the angle between edge and grain, on the cautious side. Plywood: the plies
// along the edge. Laminated: the wood along its grain, and a third of its strength
// across it against being pulled open, which is half a safety for the glue.
func (r *Report) knocked(e stemEnd, wood timber.Species) {
	d, push := r.Frame.Design, joint.Remembered().Knock
	wide, deep := e.stem.Thickness, e.stem.Moulded
	low, high, at := e.hull.Toe.Y, e.hull.GunwaleZ, e.stem.Waterline
	at = math.Min(math.Max(at, low), high)
	f := finding.Finding{About: e.name + ", knocked at the waterline", Verdict: finding.Holds, Standing: finding.Estimate, Measure: finding.Measure{Unit: stressUnit, AtMost: true}}
	steepest, share := 0.0, -1.0
	take := func(stress, limit float64) {
		if stress/limit > share {
			share, f.Value, f.Limit = stress/limit, stress, limit
		}
	}
	edge, long := e.hull.Points(), e.hull.Outer.Length()
	for s := 0.0; s <= long; s++ {
		p, heading := edge(s)
		if p.Y > high {
			break
		}
		moment := push * math.Min((high-at)*(p.Y-low), (at-low)*(high-p.Y)) / (high - low)
		stress := moment / (wide * deep * deep / 6)
		off := grain.Off(heading, e.stem.Grain)
		switch d.MadeStems() {
		case design.StemsSolid:
			steepest = math.Max(steepest, off)
			take(stress, grain.Hankinson(wood.MOR, wood.Split, off, grain.Cautious))
		case design.StemsPlywood:
			take(stress, wood.MOR*grain.OnEdge(grain.SheetPlies, off))
		default:
			take(stress, wood.MOR)
			if radius := e.hull.Outer.RadiusAt(s); radius > 0 {
				take(grain.RadialTension(moment, radius-deep/2, wide, deep), wood.Split/3)
			}
		}
	}
	cure := `plywood (bow.made = "plywood") or layers round the forefoot (bow.made = "laminated")`
	switch {
	case !(f.Value <= f.Limit):
		f.Verdict = finding.Weak
		if d.MadeStems() != design.StemsSolid {
			cure = "more siding or more moulded depth"
		}
		f.Cure = cure
	case steepest > grain.Short:
		f.Verdict, f.Cure = finding.Caution, cure
		f.About += fmt.Sprintf(", grain up to %.0f degrees across", steepest*180/math.Pi)
	}
	r.note(f)
}
