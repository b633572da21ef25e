package eyes

import (
	"encoding/json"
	"fmt"
	"math"

	"ribwright/render/rendertest"
)

// Numbers is a NAME-numbers.json, with the fields only looked up here.
type Numbers struct {
	*rendertest.Numbers
	Gunwale struct {
		Width   float64    `json:"width_mm"`
		Ends    [2]float64 `json:"ends_mm"`      // aft, fore
		EndCuts [2]float64 `json:"end_cuts_deg"` // aft, fore
	} `json:"gunwale"`
	Stems []struct {
		End     string       `json:"end"`
		Holes   [][2]float64 `json:"stringer_holes_mm"`
		Wide    float64      `json:"stringer_hole_diameter_mm"`
		Gunwale [2]float64   `json:"gunwale_hole_mm"`
		Lashed  float64      `json:"gunwale_hole_diameter_mm"`
	} `json:"stems"`
}

// ReadNumbers reads a NAME-numbers.json.
func ReadNumbers(src []byte) (*Numbers, error) {
	n := &Numbers{}
	if err := json.Unmarshal(src, n); err != nil {
		return nil, err
	}
	var err error
	n.Numbers, err = rendertest.ReadNumbers(src)
	return n, err
}

// CutLines returns every line of a pattern that is to be cut, from the numbers
// alone: the slots and end cuts of the gunwale strip, the outline and the holes of a stem.
func (n *Numbers) CutLines(pattern string) ([]Line, error) {
	switch pattern {
	case "mortises":
		return append(n.slots(), n.endCuts()...), nil
	case "stems", "stem-bow":
		return n.stem("bow")
	case "stem-stern":
		return n.stem("stern")
	}
	return nil, fmt.Errorf("no cut lines are known of the pattern %q", pattern)
}

func (n *Numbers) slots() []Line {
	var out []Line
	for _, m := range n.Numbers.Gunwale.Mortises {
		b := m.Slot()
		out = append(out, Line{Name: "mortise " + m.Rib, Closed: true,
			Points: []rendertest.Point{{X: b.X0, Y: b.Y0}, {X: b.X1, Y: b.Y0}, {X: b.X1, Y: b.Y1}, {X: b.X0, Y: b.Y1}}})
	}
	return out
}

// endCuts returns the cuts across both ends of the port gunwale: they lean by
// the angle off square, the upper (inboard) edge being the longer one.
func (n *Numbers) endCuts() []Line {
	var out []Line
	half := n.Gunwale.Width / 2
	for i, side := range []float64{-1, 1} {
		x, lean := n.Gunwale.Ends[i], side*half*math.Tan(n.Gunwale.EndCuts[i]*math.Pi/180)
		out = append(out, Line{Name: fmt.Sprintf("end cut at %.0f", x), Points: []rendertest.Point{{X: x + lean, Y: half}, {X: x - lean, Y: -half}}})
	}
	return out
}

func (n *Numbers) stem(end string) ([]Line, error) {
	for i, s := range n.Stems {
		if s.End != end {
			continue
		}
		l := Line{Name: end + " stem", Closed: true}
		for _, c := range n.Numbers.Stems[i].Corners {
			l.Points = append(l.Points, rendertest.Point{X: c[0], Y: c[1]})
		}
		out := []Line{l, hole(s.Gunwale, s.Lashed)}
		for _, at := range s.Holes {
			out = append(out, hole(at, s.Wide))
		}
		return out, nil
	}
	return nil, fmt.Errorf("the numbers hold no %s stem", end)
}

// hole is a round hole; its chords leave it by a thousandth of a millimeter.
func hole(at [2]float64, wide float64) Line {
	const corners = 96
	l := Line{Name: "hole", Closed: true}
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		l.Points = append(l.Points, rendertest.Point{X: at[0] + wide/2*cos, Y: at[1] + wide/2*sin})
	}
	return l
}
