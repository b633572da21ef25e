package bend

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
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

// stems judges laminated stems: the innermost ply has the tightest bend.
func (r *Report) stems() error {
	b := r.Frame.Design.Bending
	if b.StemPlies == 0 {
		return nil
	}
	wood, err := r.Frame.Design.Wood(b.StemSpecies)
	if err != nil {
		return err
	}
	for _, e := range []struct {
		name string
		stem design.Stem
		end  hull.End
	}{{"bow", r.Frame.Design.Bow, r.Frame.Hull.Bow}, {"stern", r.Frame.Design.After(), r.Frame.Hull.Stern}} {
		s, err := r.laminated(e.name, e.stem, e.end.Tightest())
		if err != nil {
			return fmt.Errorf("%s: %w", e.name, err)
		}
		r.Stems = append(r.Stems, s)
		f := byRatio(fmt.Sprintf("stem at the %s, ply of %.1f mm", e.name, s.Ply), wood, s.Ratio, b.Strap)
		r.noteCure(f, "%.0f plies", math.Ceil(float64(e.stem.Moulded)/(s.Form/f.Limit)))
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
