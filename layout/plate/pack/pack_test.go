package pack_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/layout/plate/pack"
	"ribwright/render/rendertest"
)

// laid is the outlines of a nest, turned by the test's own sines.
func laid(task pack.Task, n pack.Nest) []rendertest.Polygon {
	out := make([]rendertest.Polygon, len(n.Spots))
	for i, s := range n.Spots {
		sin, cos := math.Sincos(s.Turn)
		for _, p := range task.Parts[i].Outer {
			out[i] = append(out[i], rendertest.Point{X: cos*p.X - sin*p.Y + s.X, Y: sin*p.X + cos*p.Y + s.Y})
		}
	}
	return out
}

// doubly is the area that more than one part covers, in shares of the rectangle's: level
// lines are walked and what lies in two parts is measured.
func doubly(all []rendertest.Polygon, h float64) float64 {
	const lines = 4001
	sum := 0.0
	for k := range lines {
		y := h * (float64(k) + 0.437) / lines
		type edge struct {
			x  float64
			in int
		}
		var edges []edge
		for _, p := range all {
			var xs []float64
			for i, a := range p {
				b := p[(i+1)%len(p)]
				if (a.Y <= y) != (b.Y <= y) {
					xs = append(xs, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
				}
			}
			slices.Sort(xs)
			for i, x := range xs {
				edges = append(edges, edge{x, 1 - 2*(i%2)})
			}
		}
		slices.SortFunc(edges, func(a, b edge) int {
			if a.x != b.x {
				return int(math.Copysign(1, a.x-b.x))
			}
			return a.in - b.in
		})
		deep := 0
		for i, e := range edges {
			if deep > 1 {
				sum += (e.x - edges[i-1].x) * h / lines
			}
			deep += e.in
		}
	}
	return sum
}

// TestInstances lays public instances in little time: nothing overlaps, all lies in the
// rectangle at a turn that is allowed. The bound on the density of so short a search is
// our own choice; better ones are for the benchmark.
func TestInstances(t *testing.T) {
	sum := 0.0
	for _, name := range instances {
		task, area := load(t, name)
		task.Steps, task.Seed = 2_500_000, 7
		n, ok := pack.Close(task)
		if !ok {
			t.Fatalf("%s: no nest", name)
		}
		all := laid(task, n)
		for i, p := range all {
			if b := rendertest.Around(p...); !(rendertest.Box{X1: n.W, Y1: n.H}).Grow(1e-9 * n.H).HoldsBox(b) {
				t.Errorf("%s: part %d at %v lies outside %g x %g", name, i, b, n.W, n.H)
			}
			if !slices.Contains(task.Parts[i].Turns, n.Spots[i].Turn) {
				t.Errorf("%s: part %d is turned by %g", name, i, n.Spots[i].Turn)
			}
		}
		if over := doubly(all, n.H) / area; over > 1e-7 {
			t.Errorf("%s: %.2g of the area is covered twice", name, over)
		}
		if n.H != task.Room.H {
			t.Errorf("%s: a strip of %g, want %g", name, n.H, task.Room.H)
		}
		sum += area / n.W / n.H
	}
	if mean := sum / float64(len(instances)); mean < 0.74 {
		t.Errorf("a mean density of %.3f, want 0.74", mean)
	}
}

// hook is a bent strip, straight at both ends, as a random design may have it.
func hook(chance *rand.Rand) []geometry.Point {
	wide, r, sweep, leg := 20+20*chance.Float64(), 40+60*chance.Float64(), 1+chance.Float64(), 100*chance.Float64()
	var in, out []geometry.Point
	const corners = 9
	in, out = append(in, geometry.Pt(r, -leg)), append(out, geometry.Pt(r+wide, -leg))
	for k := range corners {
		u := geometry.Polar(1, sweep*float64(k)/(corners-1))
		in, out = append(in, u.Scale(r)), append(out, u.Scale(r+wide))
	}
	slices.Reverse(in)
	return append(out, in...)
}

// TestGap lays unseen hooks and a frame with ten seeds: they keep the gap, by a measure
// that shares no code with the search.
func TestGap(t *testing.T) {
	const gap = 9.0
	for seed := range uint64(10) {
		chance := rand.New(rand.NewPCG(seed, 2))
		task := pack.Task{Room: pack.Room{W: 1500, H: 1500}, Gap: gap, Tolerance: 1, Steps: 1_500_000, Seed: seed}
		for k := range 6 {
			p := pack.Part{Outer: hook(chance), Turns: []float64{0, math.Pi}}
			if k%2 == 0 {
				p.Turns = nil
			}
			task.Parts = append(task.Parts, p)
		}
		n, ok := pack.Close(task)
		if !ok {
			t.Errorf("seed %d: no nest", seed)
			continue
		}
		all := laid(task, n)
		for i, p := range all {
			if b := rendertest.Around(p...); !(rendertest.Box{X1: n.W, Y1: n.H}).Grow(0.01).HoldsBox(b) {
				t.Errorf("seed %d: part %d at %v lies outside %g x %g", seed, i, b, n.W, n.H)
			}
			for k := range i {
				if off := p.Gap(all[k], 2*gap); off < gap-0.01 {
					t.Errorf("seed %d: parts %d and %d lie %.3f apart, want %g", seed, i, k, off, gap)
				}
			}
		}
	}
}

// TestSquares has a known answer: four squares fill a larger one.
func TestSquares(t *testing.T) {
	side := []geometry.Point{{}, {X: 50}, {X: 50, Y: 50}, {Y: 50}}
	task := pack.Task{Room: pack.Room{W: 400, H: 400}, Steps: 8_000_000, Seed: 1}
	for range 4 {
		task.Parts = append(task.Parts, pack.Part{Outer: side, Turns: []float64{0}})
	}
	n, ok := pack.Close(task)
	if share := n.W * n.H / 10000; !ok || share < 1-1e-9 || share > 1.01 {
		t.Errorf("%g x %g, %g times the squares, want 1.00", n.W, n.H, share)
	}
	task.Room = pack.Room{W: 99, H: 99}
	if n, ok := pack.Close(task); ok {
		t.Errorf("four squares of 50 lie in %g x %g", n.W, n.H)
	}
}

// TestSameTwice: the same task gives the same nest, another seed another one.
func TestSameTwice(t *testing.T) {
	task, _ := load(t, "dagli")
	task.Steps = 1_000_000
	one, _ := pack.Close(task)
	two, _ := pack.Close(task)
	task.Seed = 2
	other, _ := pack.Close(task)
	if fmt.Sprint(one) != fmt.Sprint(two) || fmt.Sprint(one) == fmt.Sprint(other) {
		t.Errorf("widths %v, %v, with another seed %v", one.W, two.W, other.W)
	}
}

// TestHole lays a plate where only the hole of a frame has room.
func TestHole(t *testing.T) {
	rect := func(x0, y0, x1, y1 float64) []geometry.Point {
		return []geometry.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
	}
	task := pack.Task{Room: pack.Room{W: 400, H: 500}, Gap: 12, Tolerance: 0.5, Steps: 1_000_000, Seed: 1, Parts: []pack.Part{
		{Outer: rect(0, 0, 400, 500), Holes: [][]geometry.Point{rect(60, 60, 340, 440)}, Turns: []float64{0}},
		{Outer: rect(0, 0, 90, 200), Turns: []float64{0}},
	}}
	n, ok := pack.Close(task)
	if !ok {
		t.Fatal("no nest")
	}
	if x, y := n.Spots[1].X-n.Spots[0].X, n.Spots[1].Y-n.Spots[0].Y; x < 72 || y < 72 || x > 328-90 || y > 428-200 {
		t.Errorf("the plate lies at (%g, %g), the hole from 60 to 340 and 440", x, y)
	}
}

// bent is a strip of two straight arms, as the gauge of a rib is about.
func bent(chance *rand.Rand, wide, bend float64) []geometry.Point {
	out, in := geometry.Pt(200+100*chance.Float64(), 0), geometry.Polar(200+100*chance.Float64(), bend*(0.9+0.2*chance.Float64()))
	a := in.Scale(1 / in.Norm())
	n := geometry.Pt(a.Y, -a.X).Scale(wide)
	inner := geometry.Pt(wide*(1+a.X)/a.Y, wide) // where the inner edges meet
	return []geometry.Point{{}, out, out.Add(geometry.Pt(0, wide)), inner, in.Add(n), in}
}

// TestLike lays unseen bent strips of nearly one shape: they go into one another. The bound
// on the rectangles, in shares of their area, is our own choice.
func TestLike(t *testing.T) {
	sum := 0.0
	const seeds, most = 10, 2.0
	for seed := range uint64(seeds) {
		chance := rand.New(rand.NewPCG(seed, 3))
		task := pack.Task{Room: pack.Room{W: 2400, H: 1200}, Gap: 12, Tolerance: 3, Steps: 2_000_000, Seed: seed}
		wide, bend, area := 30+20*chance.Float64(), 1.3+0.7*chance.Float64(), 0.0
		for range 12 {
			p := pack.Part{Outer: bent(chance, wide, bend)}
			for i, a := range p.Outer {
				b := p.Outer[(i+1)%len(p.Outer)]
				area += (a.X*b.Y - b.X*a.Y) / 2
			}
			task.Parts = append(task.Parts, p)
		}
		n, ok := pack.Close(task)
		if !ok {
			t.Fatalf("seed %d: no nest", seed)
		}
		sum += n.W * n.H / area / seeds
	}
	if t.Logf("%.3f times their area", sum); sum > most {
		t.Errorf("the rectangles round like strips are %.3f times their area, want at most %g", sum, most)
	}
}
