package eyes

import (
	"fmt"
	"math"

	"ribwright/render/rendertest"
)

// Line is a line whose place is known from elsewhere, in mm of the pattern.
type Line struct {
	Name   string
	Points []rendertest.Point
	Closed bool
}

// pieces returns the ends of every straight piece in turn.
func (l Line) pieces() [][2]rendertest.Point {
	var out [][2]rendertest.Point
	for i := 1; i < len(l.Points); i++ {
		out = append(out, [2]rendertest.Point{l.Points[i-1], l.Points[i]})
	}
	if n := len(l.Points); l.Closed && n > 1 {
		out = append(out, [2]rendertest.Point{l.Points[n-1], l.Points[0]})
	}
	return out
}

// corner is where a line turns, or its loose end.
type corner struct {
	at    rendertest.Point
	apart float64 // how far along the line no rule can be laid down, mm
}

// corners returns the points where the line turns by more than a rule can be
// laid over, and its loose ends.
func (l Line) corners() []corner {
	var out []corner
	n := len(l.Points)
	for i, p := range l.Points {
		if !l.Closed && (i == 0 || i == n-1) {
			out = append(out, corner{p, apart})
			continue
		}
		before, after := l.Points[(i+n-1)%n], l.Points[(i+1)%n]
		turn := math.Atan2(after.Y-p.Y, after.X-p.X) - math.Atan2(p.Y-before.Y, p.X-before.X)
		turn = math.Abs(math.Remainder(turn, 2*math.Pi))
		if turn <= 10*math.Pi/180 {
			continue
		}
		c := corner{p, apart}
		// In a sharp corner a rule across one side meets the other.
		if inner := math.Pi - turn; inner < math.Pi/4 {
			c.apart = math.Max(apart, (reach+0.5)/math.Tan(inner))
		}
		out = append(out, c)
	}
	return out
}

const (
	reach = 0.9  // half the length of the rule laid across a line, mm
	fine  = 0.02 // its divisions, mm
	every = 1.0  // the rule is laid down this often along a line, mm
	apart = 1.5  // and this far from its corners, mm; further from sharp ones
)

// Reading is what measuring one or more lines gave, in mm.
type Reading struct {
	Count     int     // places measured
	Worst     float64 // largest distance of a line's middle from its place
	Where     rendertest.Point
	Line      string
	Unclear   int // places where the rule saw not one line of the right weight
	Unclearly string
}

// String tells it in a line.
func (r Reading) String() string {
	return fmt.Sprintf("worst %.4f mm of %d places, on %s at %.1f %.1f", r.Worst, r.Count, r.Line, r.Where.X, r.Where.Y)
}

// Join takes another reading in.
func (r *Reading) Join(o Reading) {
	r.Count += o.Count
	if o.Worst > r.Worst {
		r.Worst, r.Where, r.Line = o.Worst, o.Where, o.Line
	}
	if r.Unclear += o.Unclear; r.Unclearly == "" {
		r.Unclearly = o.Unclearly
	}
}

// Measure lays a rule across a line of the given weight at every millimetre that
// the picture shows, and finds the middle of the ink to a fraction of a dot.
func (r *Raster) Measure(l Line, weight float64) Reading {
	var out Reading
	// All of the line's own ink must show. The rule may reach over the picture's edge: there
	// is bare paper, as 0.8 mm outside a part's edge.
	room := r.Box().Grow(-weight/2 - 0.2)
	corners := l.corners()
	for _, piece := range l.pieces() {
		a, b := piece[0], piece[1]
		long := a.To(b)
		if long == 0 {
			continue
		}
		across := rendertest.Point{X: -(b.Y - a.Y) / long, Y: (b.X - a.X) / long}
		n := max(1, int(long/every))
		for i := range n {
			t := (float64(i) + 0.5) / float64(n)
			at := rendertest.Point{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
			if room.Holds(at) && !near(corners, at) {
				out.Join(r.reading(l.Name, at, across, weight))
			}
		}
	}
	return out
}

func near(corners []corner, at rendertest.Point) bool {
	for _, c := range corners {
		if c.at.To(at) < c.apart {
			return true
		}
	}
	return false
}

// reading measures at one place.
func (r *Raster) reading(name string, at, across rendertest.Point, weight float64) Reading {
	sum, moment := 0.0, 0.0
	n := int(math.Round(reach / fine))
	for k := -n; k <= n; k++ {
		d := float64(k) * fine
		ink := r.Between(rendertest.Point{X: at.X + across.X*d, Y: at.Y + across.Y*d})
		sum += ink * fine
		moment += ink * fine * d
	}
	out := Reading{Count: 1, Where: at, Line: name}
	if math.Abs(sum-weight) > 0.15*weight {
		out.Unclear, out.Unclearly = 1, fmt.Sprintf("%s at %.2f %.2f: a line %.3f mm heavy, not %.3f", name, at.X, at.Y, sum, weight)
		return out
	}
	out.Worst = math.Abs(moment / sum)
	return out
}
