package job

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/flaw"
	"ribwright/render/rendertest"
)

// beside is a pair of pictures of a book, fair and faulty: their frames, the bold lines
// in each and the scale that the words under them give.
type beside struct {
	bold  [2][]rendertest.Outline
	frame [2]rendertest.Box
	per   float64
}

// pictures reads them out of the PDF: two equal frames side by side, and the first words
// "1:..." below.
func pictures(t *testing.T, src []byte) []beside {
	t.Helper()
	file, err := rendertest.ReadPDF(src)
	if err != nil {
		t.Fatal(err)
	}
	pages, err := file.Pages()
	if err != nil {
		t.Fatal(err)
	}
	var out []beside
	for _, p := range pages {
		var frames []rendertest.Box
		for _, s := range p.Strokes {
			for _, o := range s.Outlines {
				if b, ok := o.Rectangle(0.01); ok && math.Abs(b.W()-83) < 0.02 {
					frames = append(frames, b)
				}
			}
		}
		for k := 0; k+1 < len(frames); k += 2 {
			pic := beside{frame: [2]rendertest.Box{frames[k], frames[k+1]}}
			for i, f := range pic.frame {
				for _, s := range p.Strokes {
					if math.Abs(s.Width-0.5) > 0.01 || s.Dash != nil {
						continue
					}
					for _, o := range s.Outlines {
						if f.Grow(0.05).HoldsBox(rendertest.Around(o.Points(1)...)) {
							pic.bold[i] = append(pic.bold[i], o)
						}
					}
				}
			}
			under := math.Inf(1)
			for _, w := range p.Texts {
				if d := pic.frame[0].Y0 - w.At.Y; strings.HasPrefix(w.Words, "1:") && d > 0 && d < under {
					under = d
					if _, err := fmt.Sscanf(w.Words, "1:%f", &pic.per); err != nil {
						t.Fatal(err)
					}
				}
			}
			out = append(out, pic)
		}
	}
	return out
}

// camera projects by similar triangles, with nothing of the program's: e looks at a
// place that lies in the middle of the frame's width, so high over its lower edge.
func camera(e solid.Eye, p geometry.Point3, per float64, f rendertest.Box, high float64) rendertest.Point {
	unit := func(v [3]float64) [3]float64 {
		n := math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2])
		return [3]float64{v[0] / n, v[1] / n, v[2] / n}
	}
	dot := func(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
	to := [3]float64{e.To.X - e.At.X, e.To.Y - e.At.Y, e.To.Z - e.At.Z}
	ahead := unit(to)
	right := unit([3]float64{ahead[1], -ahead[0], 0}) // ahead times up
	up := [3]float64{right[1]*ahead[2] - right[2]*ahead[1], right[2]*ahead[0] - right[0]*ahead[2], right[0]*ahead[1] - right[1]*ahead[0]}
	q := [3]float64{p.X - e.At.X, p.Y - e.At.Y, p.Z - e.At.Z}
	shrink := 1.0
	if !e.Parallel {
		shrink = dot(to, ahead) / dot(q, ahead)
	}
	return rendertest.Point{
		X: (f.X0+f.X1)/2 + (dot(q, right)*shrink-dot(to, right))/per,
		Y: f.Y0 + high + (dot(q, up)*shrink-dot(to, up))/per,
	}
}

// off is how far the nearest bold line passes a place.
func off(lines []rendertest.Outline, p rendertest.Point) float64 {
	best := math.Inf(1)
	for _, o := range lines {
		for _, s := range o.Pieces {
			wx, wy := s.To.X-s.From.X, s.To.Y-s.From.Y
			t := math.Max(0, math.Min(1, ((p.X-s.From.X)*wx+(p.Y-s.From.Y)*wy)/(wx*wx+wy*wy)))
			best = math.Min(best, p.To(rendertest.Point{X: s.From.X + t*wx, Y: s.From.Y + t*wy}))
		}
	}
	return best
}

// spot is a place of the fair boat that must be drawn, and how far the fault moves it.
type spot struct {
	at, by geometry.Point3
	name   string
}

// fullness is the bulge of a half rib by its formula: ta (1-t)b with its peak of 1 at
// the middle of the tightest bend, the less of a and b being 2.
func fullness(r frame.Rib, t float64) float64 {
	bend, from := 0, 0.0
	for i, at := 0, 0.0; i < len(r.Section.Half); i++ {
		b := r.Section.Half[i]
		if b.Radius > 0 && (r.Section.Half[bend].Radius == 0 || b.Radius < r.Section.Half[bend].Radius || i == 0) {
			bend, from = i, at
		}
		at += b.Length
	}
	m := (from + r.Section.Half[bend].Length/2) / r.Section.Half.Length()
	m = math.Max(0.3, math.Min(0.75, m))
	a, b := 2.0, 2.0
	if m > 0.5 {
		a = 2 * m / (1 - m)
	} else {
		b = 2 * (1 - m) / m
	}
	return math.Pow(t, a) * math.Pow(1-t, b) / (math.Pow(m, a) * math.Pow(1-m, b))
}

// outward is square to a half rib, out, at a length from the keel.
func outward(r frame.Rib, along float64, side float64) geometry.Point3 {
	_, heading := r.Section.Half.At(along)
	return geometry.Point3{Y: side * math.Sin(heading), Z: -math.Cos(heading)}
}

func times(p geometry.Point3, k float64) geometry.Point3 {
	return geometry.Point3{X: p.X * k, Y: p.Y * k, Z: p.Z * k}
}

// spots lists, for a fault, places whose way is known in closed form.
func spots(f *frame.Frame, r *flaw.Report, l flaw.Look) (out []spot) {
	d, n := f.Design, l.Fault.Rib
	rib := f.Ribs[n]
	girth := rib.Section.Half.Length()
	switch l.Fault.Kind {
	case flaw.Proud: // the outer edges of the stringer at the rib
		along := rib.Stringers[r.Sighted-1]
		in, over := rib.Section.Stringer(d, along)
		for _, p := range []geometry.Point{in, over} {
			out = append(out, spot{geometry.Point3{X: rib.Station, Y: p.X, Z: p.Y}, times(outward(rib, along, 1), 12*fullness(rib, along/girth)), "stringer"})
		}
	case flaw.OneSide: // the inner forward edge of the rib
		for _, side := range []float64{1, -1} {
			for _, k := range []float64{6, 9, 12, 15} {
				t := k / 24
				p := rib.Section.Face(t*girth, -float64(d.Ribs.Thickness)/2)
				out = append(out, spot{geometry.Point3{X: rib.Station + float64(d.Ribs.Width)/2, Y: side * p.X, Z: p.Y},
					times(outward(rib, t*girth, side), 8*side*fullness(rib, t)), fmt.Sprintf("side %g, %g of 24", side, k)})
			}
		}
	case flaw.Wavy: // the keel's lower edges where it hangs low, which hides what is high behind
		middle := len(f.Ribs) / 2
		for _, k := range []int{-1, 3} {
			x := f.Ribs[middle+k].Station
			z, rise := f.Hull.KeelZ(x)
			for _, side := range []float64{1, -1} {
				if rise == 0 {
					out = append(out, spot{geometry.Point3{X: x, Y: side * float64(d.Keel.Width) / 2, Z: z + float64(d.Skin.Thickness())}, geometry.Point3{Z: -6}, "keel at " + f.Ribs[middle+k].Name})
				}
			}
		}
	case flaw.Aside: // the gunwales' upper outer edges at ribs near midship
		_, fore := f.Gunwale.Line.Ends()
		for _, k := range []int{n - 5, n - 4, n - 3, n - 2, n - 1, n} {
			u := f.Ribs[k].Station / fore
			for _, side := range []float64{1, -1} {
				p := f.Gunwale.At(f.Ribs[k].Station, f.Gunwale.Width/2, f.Gunwale.Height)
				p.Y *= side
				out = append(out, spot{p, geometry.Point3{Y: 8 * (1 - 1.5*u*u + u*u*u/2)}, "gunwale at " + f.Ribs[k].Name})
			}
		}
	case flaw.Twist: // the upper corners of the winding sticks
		for _, k := range []int{0, len(f.Ribs) - 1} {
			x := f.Ribs[k].Station
			sin, cos := math.Sincos(2 * math.Pi / 180 * x / f.Hull.Length)
			top := math.Max(f.Gunwale.At(x, f.Gunwale.Width/2, f.Gunwale.Height).Z, f.Gunwale.At(x, -f.Gunwale.Width/2, f.Gunwale.Height).Z) + 30
			for _, side := range []float64{1, -1} {
				y, z := side*r.Sticks/2, top-f.Hull.Depth/2
				out = append(out, spot{geometry.Point3{X: x, Y: y, Z: top}, geometry.Point3{Y: y*cos - z*sin - y, Z: y*sin + z*cos - z}, "stick at " + f.Ribs[k].Name})
			}
		}
	}
	return out
}

// TestFaultsAreDrawnTrue reads the pictures of faults back out of the printed books: what
// is bold passes through the projected places of the fair boat, and in the picture beside
// it through the same places moved by the offset that is stated, within 0.1 mm.
func TestFaultsAreDrawnTrue(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b, err := Ask("book", []string{name})
		if err != nil {
			t.Fatal(err)
		}
		made := do(t, b, world())
		pics := pictures(t, made.files[name+"-book-letter.pdf"])
		f := frametest.Shipped(t, name, nil)
		r, err := flaw.Of(f, nil)
		if err != nil {
			t.Fatal(err)
		}
		if len(pics) != len(r.Looks) {
			t.Fatalf("%s: %d pairs of pictures for %d faults", name, len(pics), len(r.Looks))
		}
		high := []float64{17, 16, 14, 24, 27} // of the place looked at in its frame, mm
		for i, l := range r.Looks {
			pic, seen := pics[i], 0
			for _, s := range spots(f, r, l) {
				var at [2]rendertest.Point
				inside := true
				for k, p := range []geometry.Point3{s.at, s.at.Add(s.by)} {
					at[k] = camera(l.Eye, p, pic.per, pic.frame[k], high[i])
					inside = inside && pic.frame[k].Grow(-0.2).Holds(at[k])
				}
				if !inside {
					continue
				}
				for k := range at {
					if miss := off(pic.bold[k], at[k]); miss > 0.1 {
						t.Errorf("%s, fault %d, %s, %s: drawn %.3f mm from %v", name, i+1, []string{"fair", "faulty"}[k], s.name, miss, at[k])
					}
				}
				shift := rendertest.Point{X: at[1].X - pic.frame[1].X0, Y: at[1].Y - pic.frame[1].Y0}.To(rendertest.Point{X: at[0].X - pic.frame[0].X0, Y: at[0].Y - pic.frame[0].Y0})
				if shift > 0.2 { // else too little to be told from the fair place
					seen++
				}
			}
			if seen < 2 {
				t.Errorf("%s, fault %d: %d of its places lie in the picture and move", name, i+1, seen)
			}
		}
	}
}

// TestFaultsOnScreen: the same figures stand in the HTML book, with a table for each fault.
func TestFaultsOnScreen(t *testing.T) {
	b, err := Ask("book", []string{"brook"}, [2]string{"html", "true"})
	if err != nil {
		t.Fatal(err)
	}
	page := string(do(t, b, world()).files["brook-book.html"])
	at := strings.Index(page, `<bdi>Judging by eye</bdi></h1>`)
	if at < 0 {
		t.Fatal("no such chapter")
	}
	page = page[at:]
	if n := strings.Count(page, "Leave it when"); n != 5 {
		t.Errorf("%d faults, want 5", n)
	}
	if n := strings.Count(page[:strings.Index(page, `<bdi>Joints</bdi></h1>`)], "<svg"); n != 6 {
		t.Errorf("%d pictures, want where to stand and one for each fault", n)
	}
}
