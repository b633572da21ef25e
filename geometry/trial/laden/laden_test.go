package laden

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/referencetest"
)

var shapeFile = flag.String("shape", "", "write the shape of lake here, for testdata/reference/laden.py")

// pulls are those of the bolts of a frame's first hung seat.
func pulls(f *frame.Frame) (out []Load) {
	h := f.Seats[0].Hung.Front.Hanger
	down := f.Seats[0].Share() / float64(len(h.Bolts))
	for _, b := range h.Bolts {
		out = append(out, Load{f.Gunwale.StationOf(b), -down, -down * math.Tan(h.Lean())})
	}
	return out
}

func of(t testing.TB, f *frame.Frame, loads []Load) *Boat {
	t.Helper()
	b, err := Of(f, loads)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func under(t testing.TB, f *frame.Frame, c Case, loads []Load) Borne {
	t.Helper()
	out, err := of(t, f, loads).Under(c)
	if err != nil {
		t.Fatal(err)
	}
	return out[0][0]
}

// TestWhole: lake under its paddler is borne as testdata/reference/laden.py has it, which cuts ribs
// into short straight sticks and condenses nothing. Those sticks and its series for twist make what
// is left between both.
func TestWhole(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	if *shapeFile != "" {
		writeShape(t, f)
	}
	b := of(t, f, pulls(f))
	for k, c := range []Case{{0, 0, false}, {0.5, 4, false}, {1, 15, false}, {0.5, 4, true}} {
		all, err := b.Under(c)
		if err != nil {
			t.Fatal(err)
		}
		got := all[0][0]
		var ribs, most, pulled float64
		for i, row := range referencetest.Table(t, "../../../testdata/reference/laden.csv") {
			want, x := referencetest.Number(t, row[2+k]), referencetest.Number(t, row[1])
			at := got.At(x)
			switch row[0] {
			case "rib":
				ribs = math.Max(ribs, want)
				close(t, row[0]+" "+f.Ribs[i].Name, got.Ribs[i], want, 0.01*want+0.2) // the most may lie between our places
			case "tall":
				most = math.Max(most, math.Abs(want))
				close(t, row[0]+" "+row[1], at.Tall, want, 2e-3*most)
			case "flat":
				close(t, row[0]+" "+row[1], at.Flat, want, 2e-3*most)
			case "long":
				pulled = math.Max(pulled, math.Abs(want))
				close(t, row[0]+" "+row[1], at.Long, want, 2e-3*pulled)
			}
		}
		if !(ribs > 10 && most > 1e-5) {
			t.Errorf("%+v: nothing is borne", c)
		}
	}
}

func close(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

// writeShape writes what laden.py reads.
func writeShape(t *testing.T, f *frame.Frame) {
	type dict = map[string]any
	d := f.Design
	moe := func(name string) float64 {
		w, err := d.Wood(name)
		if err != nil {
			t.Fatal(err)
		}
		return w.MOE
	}
	wood := func(wide, deep float64, name string) dict { return dict{"wide": wide, "deep": deep, "moe": moe(name)} }
	point := func(p geometry.Point3) []float64 { return []float64{p.X, p.Y, p.Z} }
	var b builder
	b.Boat = &Boat{frame: f}
	b.loads = [][]Load{pulls(f)}
	var ribs, places, stems []dict
	for i, r := range f.Ribs {
		line := make([]*joint, len(r.Stringers)+2)
		for k := range line {
			line[k] = &joint{}
		}
		b.beds = nil
		b.bed(i, line)
		one := dict{"x": r.Station, "keel_z": r.Section.KeelZ, "thick": r.Thickness, "marks": r.Stringers}
		var bends [][]float64
		for _, c := range r.Section.Half {
			bends = append(bends, []float64{c.Radius, c.Length})
		}
		var afloat, ground []float64
		for _, s := range b.beds {
			afloat, ground = append(afloat, s.afloat), append(ground, s.ground)
		}
		one["bends"], one["afloat"], one["ground"] = bends, afloat, ground
		ribs = append(ribs, one)
	}
	for _, p := range b.places() {
		up, out := 0.0, 0.0
		for _, l := range p.loads {
			up, out = up+l.Up, out+l.Out
		}
		places = append(places, dict{"at": point(f.Gunwale.At(p.at, 0, 0)), "rib": p.rib, "cross": p.cross, "up": up, "out": out})
	}
	for end, s := range []design.Stem{d.After(), d.Bow} {
		one := wood(float64(s.Siding)/2, float64(s.Moulded), d.StemWood())
		var at [][]float64
		for _, l := range b.lines() {
			aft, fore := l.Ends()
			at = append(at, point(l.Point([]float64{aft, fore}[end])))
		}
		one["at"] = at
		stems = append(stems, one)
	}
	g := wood(f.Gunwale.Width, f.Gunwale.Height, d.Gunwale.Species)
	g["tilt"] = f.Gunwale.Tilt
	shape, err := json.MarshalIndent(dict{"ribs": ribs, "places": places, "stems": stems, "gunwale": g,
		"rib_wide": float64(d.Ribs.Width), "rib_moe": moe(d.Ribs.Species),
		"keel":     wood(float64(d.Keel.Width)/2, float64(d.Keel.Depth), d.Keel.Species),
		"stringer": wood(float64(d.Stringers.Width), float64(d.Stringers.Depth), d.Stringers.Species),
		"outwale":  wood(float64(d.Outside.Outwale), float64(d.Outside.OutwaleHeight), d.OutsideWood()),
	}, "", "")
	if err == nil {
		err = os.WriteFile(*shapeFile, append(shape, '\n'), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}
