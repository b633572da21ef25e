package svg_test

import (
	"bytes"
	"io"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/render"
	"ribwright/render/rendertest"
	"ribwright/render/svg"
)

// step is half of the last of the writer's four decimals, mm.
const step = 0.00005 + 1e-9

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

func box(x0, y0, x1, y1 float64) geometry.Box { return geometry.Box{Min: pt(x0, y0), Max: pt(x1, y1)} }

// plate returns a plate of 1220 by 800.25 mm with the parts placed by moves.
func plate(moves []geometry.Affine, parts ...layout.Part) layout.Plate {
	p := layout.Plate{Title: "Brook", W: 1220, H: 800.25, Check: box(12, 12, 112, 112)}
	for i, q := range parts {
		p.Parts = append(p.Parts, layout.Placed{Part: q, Move: moves[i%len(moves)]})
	}
	return p
}

// still places parts where they are drawn.
func still() []geometry.Affine { return []geometry.Affine{geometry.Shift(0, 0)} }

func cut(paths ...curve.Path) layout.Part { return layout.Part{Name: "bow stem", Cut: paths} }

func marks(paths ...curve.Path) layout.Part { return layout.Part{Name: "bow stem", Marks: paths} }

// write traces a plate and writes it, as a job does.
func write(w io.Writer, p layout.Plate) error {
	t, err := render.Trace(p)
	if err != nil {
		return err
	}
	return svg.Encode(w, t)
}

func encode(t *testing.T, p layout.Plate) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func read(t *testing.T, p layout.Plate) *rendertest.SVG {
	t.Helper()
	s, err := rendertest.ReadSVG(encode(t, p))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// readOne returns the one outline of the one path in a layer.
func readOne(t *testing.T, p layout.Plate, layer string) rendertest.Outline {
	t.Helper()
	paths := read(t, p).Paths(layer)
	if len(paths) != 1 || len(paths[0].Outlines) != 1 {
		t.Fatalf("%d paths in %s, want one of one outline", len(paths), layer)
	}
	return paths[0].Outlines[0]
}

// everything is a plate with parts of every kind of path, letters and holes,
// turned and moved.
func everything() layout.Plate {
	var ps []curve.Path
	for _, k := range rendertest.Segments() {
		if k.Length() > 0 {
			ps = append(ps, curve.Path{k})
		}
	}
	a := layout.Part{Name: "yoke", Cut: []curve.Path{curve.Circle(pt(50, 30), 4), curve.Rectangle(box(0, 0, 300, 60))},
		Marks: ps, Letters: []layout.Text{{At: pt(20, 10), Height: 5, Words: "Yoke (A&B) <3>"},
			{At: pt(150, 30), Height: 5, Angle: 1.2, Align: layout.Middle, Words: "grain"}, {At: pt(280, 10), Height: 5, Align: layout.Right, Words: "end"}}}
	return plate([]geometry.Affine{geometry.Shift(150, 150), geometry.Turn(2.5).Then(geometry.Shift(800, 500))}, a, a)
}
