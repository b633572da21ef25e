package stow_test

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/stow"
)

// overlap reports whether any cell holds wood of both boats.
func overlap(lo, hi *solid, dx, dz float64) bool {
	shift := int(math.Round(dz / cellZ))
	for i, r := range lo.rows {
		up := hi.at(lo.x0 + cellX*float64(i) - dx)
		if up == nil {
			continue
		}
		for level, begin := range r {
			k := level - shift
			if k >= tall {
				k = tall - 1
			}
			if k >= 0 && begin < up[k] {
				return true
			}
		}
	}
	return false
}

// least is the smallest distance between cells of two boats that do not overlap,
// by trying them all within reach.
func least(lo, hi *solid, dx, dz, reach float64) float64 {
	best := reach * reach
	shift := int(math.Round(dz / cellZ))
	for i, r := range lo.rows {
		for di := -int(reach / cellX); di <= int(reach/cellX); di++ {
			ex := float64(di) * cellX
			up := hi.at(lo.x0 + cellX*float64(i+di) - dx)
			if up == nil || ex*ex >= best {
				continue
			}
			for level, begin := range r {
				if math.IsInf(begin, 0) {
					continue
				}
				side := math.Sqrt(best - ex*ex)
				for dk := -int(side/cellZ) - 1; dk <= int(side/cellZ)+1; dk++ {
					k := level + dk - shift
					if k >= tall {
						k = tall - 1
					}
					if k < 0 || up[k] < 0 {
						continue
					}
					// Cells are boxes: those of neighbouring levels touch.
					ez, ey := math.Max(0, math.Abs(float64(dk))-1)*cellZ, math.Max(0, begin-up[k])
					if d := ex*ex + ey*ey + ez*ez; d < best {
						best = d
					}
				}
			}
		}
	}
	return math.Sqrt(best)
}

// varied is a shipped design with its measures changed at random, larger or
// smaller, that can be built.
func varied(t *testing.T, rnd *rand.Rand, name string, scale float64) *frame.Frame {
	t.Helper()
	for range 200 {
		d, err := design.Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		k := measure.Length(scale * (0.97 + 0.06*rnd.Float64()))
		d.Hull.Beam *= k
		for i := range d.Hull.Spreaders {
			d.Hull.Spreaders[i].Beam *= k
		}
		d.Hull.Depth *= measure.Length(0.9 + 0.2*rnd.Float64())
		for i := range d.Hull.Sections {
			d.Hull.Sections[i].Flare += measure.Angle((rnd.Float64() - 0.5) * 0.1)
		}
		if d.Check() != nil {
			continue
		}
		if f, err := frame.Build(d); err == nil {
			return f
		}
	}
	t.Fatalf("no variation of %s can be built", name)
	return nil
}

func cover(t *testing.T, f *frame.Frame) *skin.Cloth {
	t.Helper()
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestVoxels checks heights and rooms of random pairs against boats filled with
// cells from the frame's own parts, without any of the package's code: the
// distance within 2 mm, and no overlap 2 mm over the height of first contact but
// one 2 mm under it.
func TestVoxels(t *testing.T) {
	rnd := rand.New(rand.NewSource(8))
	for _, c := range []struct {
		lower, upper string
		scale        float64 // of the upper boat's beam
		x            float64
	}{
		{"lake", "brook", 0.96, 0}, {"river", "lake", 1, -60}, {"river", "lake", 1.04, 25},
		{"brook", "lake", 0.9, 0}, {"lake", "lake", 0.95, 40}, {"river", "brook", 1.12, -300},
	} {
		lower, upper := varied(t, rnd, c.lower, 1), varied(t, rnd, c.upper, c.scale)
		in, err := stow.InsideOf(lower, cover(t, lower))
		if err != nil {
			t.Fatal(err)
		}
		in = in.Bare()
		o, err := stow.OutsideOf(upper, cover(t, upper).Press(upper))
		if err != nil {
			t.Fatal(err)
		}
		lo, hi := below(lower), above(upper)
		z, contact := stow.Drop(in, o, c.x, false)
		up, down := math.Ceil(z/cellZ)*cellZ+2, math.Floor(z/cellZ)*cellZ-2
		if overlap(lo, hi, c.x, up) {
			t.Errorf("%s in %s: cells overlap at %.0f mm, over the first contact at %.2f mm (%v)", c.upper, c.lower, up, z, contact)
		}
		if !overlap(lo, hi, c.x, down) {
			t.Errorf("%s in %s: no cells overlap at %.0f mm, under the first contact at %.2f mm (%v)", c.upper, c.lower, down, z, contact)
		}
		was := 0.0
		for _, lift := range []float64{3, 17} {
			at := math.Ceil(z) + lift
			rooms := stow.Clearance(in, o, stow.Place{X: c.x, Z: at})
			got := math.Min(50, rooms.Least().Room)
			want := least(lo, hi, c.x, at, 50)
			if math.Abs(got-want) > 2 {
				t.Errorf("%s in %s, %.0f mm up: room %.2f mm (%+v), by cells %.2f", c.upper, c.lower, at, got, rooms.Least(), want)
			}
			if got < was {
				t.Errorf("%s in %s: room falls from %.3f to %.3f mm on the way up", c.upper, c.lower, was, got)
			}
			was = got
			t.Logf("%s in %s at %.0f: %.2f, cells %.2f, %v", c.upper, c.lower, at, got, want, rooms.Least().Lower.Name)
		}
	}
}

// TestProposal fills a boat that was proposed and the one it shall nest in with
// cells: they do not overlap where it is said to lie, and lie the room asked for
// apart.
func TestProposal(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	lake, err := stow.NewBoat(f)
	if err != nil {
		t.Fatal(err)
	}
	o := stow.Options{Pad: 5}
	small, err := stow.Fit(lake, lake, o).Refit(o, "Small Lake")
	if err != nil {
		t.Fatal(err)
	}
	var file strings.Builder
	if err := design.Encode(&file, small.Frame.Design); err != nil {
		t.Fatal(err)
	}
	again, err := design.Decode(strings.NewReader(file.String()), "proposal")
	if err != nil {
		t.Fatal(err)
	}
	g, err := frame.Build(again)
	if err != nil {
		t.Fatal(err)
	}
	p := stow.Fit(lake, small, o)
	if !p.Nests {
		t.Fatal("the proposal does not nest")
	}
	lo, hi := below(f), above(g)
	at := math.Ceil(p.Place.Z)
	if overlap(lo, hi, p.Place.X, at) {
		t.Error("cells overlap")
	}
	if got := least(lo, hi, p.Place.X, at, 20); math.Abs(got-5) > 2 {
		t.Errorf("by cells %.2f mm of room, want 5", got)
	}
}
