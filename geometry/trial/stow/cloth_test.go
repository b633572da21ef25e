package stow

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestOneCloth: at every rib and in both ends the outside that boats nest by is the
// outside that they float by. A nest only widens on the way up, so the half-breadths
// of what floats are taken as their greatest so far.
func TestOneCloth(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := shipped(t, name, func(d *design.Design) { d.Outside.Outwale = 0 }) // which floats nothing
		boat, err := aboard.New(b.Frame, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		hull := boat.Hull
		most, at := 0.0, 0.0
		for _, row := range hull.Profile() {
			x, outline := row[0], hull.Outline(row[0])
			floats := swept(Section{Half: outline}).pts[:len(outline)]
			nests := b.Outside.slice(x, nil)
			nests = nests[:len(nests)-1] // without the wall over it
			if off := math.Max(apart(nests, floats), apart(floats, nests)); off > most {
				most, at = off, x
			}
		}
		t.Logf("%s: %.2g mm at %.0f mm", name, most, at)
		if most > 0.01 {
			t.Errorf("%s: at station %.1f mm the cloth of nesting and that of flotation are %.2f mm apart", name, at, most)
		}
	}
}

// apart returns how far the point of a line that is farthest from another line lies
// from it, mm.
func apart(pts, line []geometry.Point) float64 {
	most := 0.0
	for _, p := range pts {
		least := math.Inf(1)
		for i, b := range line {
			a := line[max(0, i-1)]
			d := b.Sub(a)
			t := 0.0
			if l := d.Dot(d); l > 0 {
				t = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/l))
			}
			least = math.Min(least, p.Sub(a.Add(d.Scale(t))).Norm())
		}
		most = math.Max(most, least)
	}
	return most
}

// TestOutwaleStandsOut: a boat is broader by its two outwales where they stand square off
// gunwales that lean: each by its thickness times the cosine of the lean.
func TestOutwaleStandsOut(t *testing.T) {
	for _, name := range design.ShippedNames() {
		with := func(mm float64) *Boat {
			return shipped(t, name, func(d *design.Design) { d.Outside.Outwale = measure.Length(mm) })
		}
		b := with(12)
		want := with(0).Outside.Half + 12*math.Cos(b.Frame.Gunwale.Tilt)
		if got := b.Outside.Half; math.Abs(got-want) > 0.01 { // sections cut a gunwale that runs askew to them
			t.Errorf("%s: %.3f mm to a side, want %.3f", name, got, want)
		}
	}
}
