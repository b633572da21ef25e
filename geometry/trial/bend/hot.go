package bend

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
)

// OnForms reports whether the ribs are bent round forms, and not by hand.
func (r *Report) OnForms() bool { return r.Frame.Design.Bending.Method == design.OnForms }

// strapped reports whether ribs are bent with a strap: it pulls against end stops round
// a form, so a bend made by hand has none.
func (r *Report) strapped() bool { return r.Frame.Design.Bending.Strap && r.OnForms() }

// bentTo is a half rib on the same stock with other radii: each bend keeps its length
// at mid-thickness and turns as its radius says, straight runs stay straight.
func bentTo(half curve.Chain, arcs []Arc, radius func(Arc) float64) curve.Chain {
	return bentIn(make(curve.Chain, 0, len(half)), half, arcs, radius)
}

// bentIn is bentTo in the room given.
func bentIn(room, half curve.Chain, arcs []Arc, radius func(Arc) float64) curve.Chain {
	room = append(room, half...)
	for i := range arcs {
		a := &arcs[i]
		long := half[a.Bend].Length
		if to := radius(*a); math.IsInf(to, 1) {
			room[a.Bend] = curve.Straight(long)
		} else {
			room[a.Bend] = curve.Bend{Radius: to, Sweep: long / to, Length: long}
		}
	}
	return room
}

// widthAt is the width of a half rib that is bentTo other radii.
func widthAt(half curve.Chain, arcs []Arc, radius func(Arc) float64) float64 {
	var room [4]curve.Bend // as many as a half section has
	return width(bentIn(room[:0], half, arcs, radius))
}

func form(a Arc) float64 { return a.Form }
func free(a Arc) float64 { return a.Free }

// width is that between the heads of a rib with the given half.
func width(half curve.Chain) float64 {
	head, _ := half.End()
	return 2 * head.X
}

// after is the radius of a bend that was made to its form radius and let go, when it
// loses the share back of its curvature.
func after(back float64) func(Arc) float64 {
	return func(a Arc) float64 { return a.Form / (1 - back) }
}

// sprung returns the width of a rib held as it is bent hot, and how much wider it
// stands free for each hundredth of springback more, about the share that the design
// counts with, mm.
func sprung(half curve.Chain, arcs []Arc, back float64) (hot, point float64) {
	const step = 0.005 // either way, together a hundredth
	return widthAt(half, arcs, form),
		widthAt(half, arcs, after(back+step)) - widthAt(half, arcs, after(back-step))
}

// Bent returns the width between the heads of rib i, from aft, when every bend has so many
// times the curvature with which it stands free, mm: at 1 it stands free, at 1/(1 - s) it
// is held as hot as is right for wood that loses the share s.
func (r *Report) Bent(i int, times float64) float64 {
	return widthAt(r.Frame.Ribs[i].Section.Half, r.Ribs[i].Arcs, func(a Arc) float64 { return a.Free / times })
}

// Sprung is a width of a rib that goes with a springback: what it comes to when it is let
// go, or how it is held so that it comes out right.
type Sprung struct {
	Back  float64 // share of the curvature that the rib loses
	Width float64 // between its heads, to the middle of the thickness, mm
}

// TestRib is the rib to bend first, the one nearest midship: its number from aft.
func (r *Report) TestRib() int {
	for i, rib := range r.Frame.Ribs {
		if rib.Name == r.Frame.RibGroups[0].Rib.Name {
			return i
		}
	}
	return 0
}

// backs are springbacks that a board may have, in steps of two hundredths about what the
// design counts with.
func backs(back float64) []float64 {
	const step, below, above = 0.02, 4, 6
	var out []float64
	for n := -below; n <= above; n++ {
		if s := back + step*float64(n); s > -1e-9 && s < 0.5 {
			out = append(out, math.Max(s, 0))
		}
	}
	return out
}

// held lists how wide a rib is held hot so that it stands as it should when it has sprung
// back as its board does, by one share after the other; a width that is not above 0 is one where its heads would cross.
func held(half curve.Chain, arcs []Arc, backs []float64) []Sprung {
	out := make([]Sprung, 0, len(backs))
	for _, s := range backs {
		out = append(out, Sprung{s, widthAt(half, arcs, func(a Arc) float64 { return timber.FormRadius(a.Free, s) })})
	}
	return out
}

// test lists what the first rib may come to.
func (r *Report) test() []Sprung {
	i := r.TestRib()
	half, arcs, back := r.Frame.Ribs[i].Section.Half, r.Ribs[i].Arcs, r.Frame.Design.Bending.Springback
	// At the design's own springback the rib stands at its width of the neutral set,
	// which its radii meet to a millimeter.
	off := 0.0
	if relax := r.Ribs[i].Relax; relax > 0 {
		off = relax - widthAt(half, arcs, free)
	}
	var out []Sprung
	for _, s := range backs(back) {
		out = append(out, Sprung{s, widthAt(half, arcs, after(s)) + off})
	}
	return out
}

// Expected is what the first rib comes to when it springs back as the design says.
func (r *Report) Expected() Sprung {
	back := r.Frame.Design.Bending.Springback
	return slices.MinFunc(r.Test, func(a, b Sprung) int { return cmp.Compare(math.Abs(a.Back-back), math.Abs(b.Back-back)) })
}
