package sizing

import (
	"fmt"
	"math"
	"os"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/survey/fair"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wood/timber"
)

// run is how a line points at a station, by a chord of half a millimeter.
func run(s frame.Stringer, x float64) geometry.Point3 {
	return s.Line.Point(x + 0.25).Sub(s.Line.Point(x - 0.25))
}

// between is the angle between two runs.
func between(a, b geometry.Point3) float64 {
	dot := a.X*b.X + a.Y*b.Y + a.Z*b.Z
	return math.Acos(math.Min(1, dot/a.Norm()/b.Norm()))
}

// rough tells what of a frame's stringers is not fair, measured on their lines. Beyond
// the last rib a stringer turns no more for each millimeter than in the bay before, and
// no more than twice that bay and 2 degrees; ends lie a width apart, clear of keel and
// gunwale; and what is bent along its flat past the stress of dry bending is steamed.
func rough(f *frame.Frame) (out finding.List) {
	say := func(text string, args ...any) {
		out.Judge(finding.Missed, "stringer", finding.Arithmetic, text, args...)
	}
	n := len(f.Ribs)
	wide := float64(f.Design.Stringers.Width)
	for k, st := range []frame.Stem{f.Stern, f.Bow} {
		side := float64(2*k - 1)
		last, before := f.Ribs[(n-1)*k].Station, f.Ribs[1+(n-3)*k].Station
		for i, s := range f.Stringers {
			end := side * st.Landings[i].X
			tip := s.Line.Point(end)
			if off := tip.Sub(geometry.Point3{X: end, Y: st.Thickness / 2, Z: st.Landings[i].Y}).Norm(); off > 1e-6 {
				say("S%d misses its landing on the %s by %.6f mm", i+1, st.End, off)
			}
			bay, turn := between(run(s, before), run(s, last)), between(run(s, last), run(s, end))
			reach := math.Abs(end - last)
			if most := math.Min(bay/math.Abs(last-before)*reach, 2*bay+2*math.Pi/180); turn > math.Max(most, 0.1*math.Pi/180) {
				say("S%d turns %.2f deg to the %s, %.2f deg are fair", i+1, turn*180/math.Pi, st.End, most*180/math.Pi)
			}
			if i > 0 && st.Landings[i].Sub(st.Landings[i-1]).Norm() < wide {
				say("S%d and S%d lie %.1f mm apart on the %s", i, i+1, st.Landings[i].Sub(st.Landings[i-1]).Norm(), st.End)
			}
			if st.Landings[i].X < st.ToeX+wide/2 || st.Landings[i].Y > st.Shelf[0].Y-wide/2 {
				say("S%d ends on keel or gunwale at %v on the %s", i+1, st.Landings[i], st.End)
			}
		}
	}
	r, err := bend.Of(f)
	if err != nil {
		say("%v", err)
		return out
	}
	wood, _ := f.Design.Wood(f.Design.Stringers.Species)
	for i, s := range f.Stringers {
		edge := edgewise(s, f, wood.MOE)
		if edge < 0.8*r.Stringers[i].Edgewise || edge > 1.05*r.Stringers[i].Edgewise {
			say("S%d is bent along its flat by %.1f N/mm2, said %.1f", i+1, edge, r.Stringers[i].Edgewise)
		}
		if edge <= timber.AssemblyShare*wood.MOR {
			continue
		}
		steamed := false
		for _, v := range r.Findings {
			steamed = steamed || (v.About == fmt.Sprintf("stringer %d, between its ends", i+1) || v.About == fmt.Sprintf("stringer %d, ends", i+1)) && v.Verdict >= finding.Steam
		}
		if !steamed {
			say("S%d is bent along its flat by %.0f N/mm2 and not steamed", i+1, edge)
		}
	}
	return out
}

// edgewise is the greatest stress of a stringer along its flat, N/mm2: the bend of the
// line by chords of 10 mm, along the heading of the sections at the marks, which turns
// evenly from rib to rib and on to the upright stem's side.
func edgewise(s frame.Stringer, f *frame.Frame, moe float64) (worst float64) {
	aft, fore := s.Line.Ends()
	xs, flats := []float64{aft}, []float64{math.Pi / 2}
	for _, r := range f.Ribs {
		_, heading := r.Section.Half.At(r.Stringers[s.Number-1])
		xs, flats = append(xs, r.Station), append(flats, heading)
	}
	xs, flats = append(xs, fore), append(flats, math.Pi/2)
	const chord = 10.0
	k := 1
	for x := aft + chord; x < fore-chord; x += chord / 2 {
		for xs[k] < x {
			k++
		}
		flat := flats[k-1] + (flats[k]-flats[k-1])*(x-xs[k-1])/(xs[k]-xs[k-1])
		a, b, c := s.Line.Point(x-chord), s.Line.Point(x), s.Line.Point(x+chord)
		ab, bc := b.Sub(a), c.Sub(b)
		length := c.Sub(a).Norm() / 2
		unit := func(p geometry.Point3) geometry.Point3 {
			n := p.Norm()
			return geometry.Point3{X: p.X / n, Y: p.Y / n, Z: p.Z / n}
		}
		bend := unit(bc).Sub(unit(ab))
		// The flat's direction, made square to the run.
		t := unit(c.Sub(a))
		sin, cos := math.Sincos(flat)
		along := cos*t.Y + sin*t.Z
		axis := unit(geometry.Point3{X: -along * t.X, Y: cos - along*t.Y, Z: sin - along*t.Z})
		worst = math.Max(worst, math.Abs(bend.X*axis.X+bend.Y*axis.Y+bend.Z*axis.Z)/length)
	}
	return worst * moe * float64(f.Design.Stringers.Width) / 2
}

// TestStringersFair sights along the stringers of the shipped boats, of faired canoes that
// were measured and of boats of every family for random bodies.
func TestStringersFair(t *testing.T) {
	check := func(name string, d *design.Design) {
		f, err := frame.Build(d)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, v := range rough(f) {
			t.Errorf("%s: %s", name, v.Text)
		}
	}
	for _, name := range design.ShippedNames() {
		d, err := design.Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		check(name, d)
	}
	canoes := []string{"fig69", "fig108", "fig31", "cruising"} // two of long ends first, after which marks give way
	for _, name := range canoes[:some(2, 4)] {
		file, err := os.Open("../../testdata/offsets/" + name + ".csv")
		if err != nil {
			t.Fatal(err)
		}
		table, err := offsets.Read(file, name)
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		r, err := fair.Of(table, name)
		if err != nil {
			t.Fatal(err)
		}
		check(name, r.Design)
	}
	for _, name := range family.Names() {
		p := Trying{Family: shipped(t, name), Judge: func(b *Boat) finding.List { return rough(b.Frame) }}.Try(some(10, 200))
		for _, trial := range p.Failing {
			for _, v := range trial.Failed {
				if v.About == "stringer" {
					t.Errorf("%s, trial %d: %s", name, trial.Number, v.Text)
				}
			}
		}
	}
}
