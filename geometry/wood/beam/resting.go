package beam

import (
	"math"
	"slices"

	"ribwright/geometry/equations"
)

// Support is where a stick rests on something that gives: the forces, N, with which it holds
// against 1 mm up and 1 mm across. Both is the force up that 1 mm across meets, and the other
// way round. +Inf holds the stick fast that way; 0 lets it go.
type Support struct{ At, Up, Across, Both float64 }

// Point is a load on a stick, N, upward and across.
type Point struct{ At, Up, Across float64 }

// Resting is a straight stick on supports and free to turn on them, which bends up and down
// and across. Its tall way may lean out of the upright towards "across".
type Resting struct {
	Tall, Flat float64 // stiffness E I in its tall way and its flat one, N mm2
	Lean       float64 // radians
	On         []Support
}

// Curved is how a stick is bent by its loads: curvatures at places from one end to the
// other, 1/mm, straight between them. Tall is positive where the underside is pulled, Flat
// where the side is pulled that the stick does not lean to.
type Curved struct{ X, Tall, Flat []float64 }

// Under returns how loads bend the stick; its ends are the outermost of supports and loads,
// at least two. ok is false for a stick that nothing holds up.
//
// How: beam elements of cubics, exact under loads and supports at their ends.
// Source: the displacement method, as in S. Timoshenko and D. H. Young, Theory of
// Structures; on many even supports it comes to M. Hetenyi, Beams on Elastic Foundation.
func (r Resting) Under(loads ...Point) (c Curved, ok bool) {
	for _, s := range r.On {
		c.X = append(c.X, s.At)
	}
	for _, p := range loads {
		c.X = append(c.X, p.At)
	}
	slices.Sort(c.X)
	c.X = slices.Compact(c.X)
	m := r.assemble(c.X)
	u := make([]float64, 4*len(c.X))
	for _, p := range loads {
		i, _ := slices.BinarySearch(c.X, p.At)
		u[4*i], u[4*i+2] = u[4*i]+p.Up, u[4*i+2]+p.Across
	}
	r.hold(m, c.X, u)
	if !m.Factor() {
		return c, false
	}
	m.Solve(u)
	r.curve(&c, u)
	return c, true
}

// axes are the unit vectors, up and across, of the tall way and the flat one.
func (r Resting) axes() [2][2]float64 {
	sin, cos := math.Sincos(r.Lean)
	return [2][2]float64{{cos, sin}, {-sin, cos}}
}

// bends are the curvatures at the start of an element of length l for 1 mm and 1 radian at
// its start and at its end.
func bends(l float64) [4]float64 { return [4]float64{-6 / (l * l), -4 / l, 6 / (l * l), -2 / l} }

// assemble puts the elements together. Unknowns of each place: up, its slope, across, its slope.
func (r Resting) assemble(x []float64) equations.Profile {
	first := make([]int, 4*len(x))
	for i := range first {
		first[i] = max(0, i/4*4-4)
	}
	m := equations.NewProfile(first)
	for i := 1; i < len(x); i++ {
		l := x[i] - x[i-1]
		k := [4][4]float64{{12, 6 * l, -12, 6 * l}, {6 * l, 4 * l * l, -6 * l, 2 * l * l}, {-12, -6 * l, 12, -6 * l}, {6 * l, 2 * l * l, -6 * l, 4 * l * l}}
		for w, way := range r.axes() {
			stiff := [2]float64{r.Tall, r.Flat}[w] / (l * l * l)
			for p := range 8 {
				for q := range p + 1 { // the lower half, of which Add makes both
					m.Add(unknown(i, p), unknown(i, q), stiff*way[p%4/2]*way[q%4/2]*k[p/4*2+p%2][q/4*2+q%2])
				}
			}
		}
	}
	return m
}

// unknown numbers an element's p-th of eight: four at its start and four at its end.
func unknown(element, p int) int { return 4*(element-1) + p }

// hold adds the supports, and takes the loads off what is held fast.
func (r Resting) hold(m equations.Profile, x, load []float64) {
	for _, s := range r.On {
		i, _ := slices.BinarySearch(x, s.At)
		for w, k := range [2]float64{s.Up, s.Across} {
			if at := 4*i + 2*w; !math.IsInf(k, 1) {
				m.Add(at, at, k)
			}
		}
		if s.Both != 0 {
			m.Add(4*i+2, 4*i, s.Both)
		}
	}
	for _, s := range r.On { // when all is added
		i, _ := slices.BinarySearch(x, s.At)
		for w, k := range [2]float64{s.Up, s.Across} {
			if at := 4*i + 2*w; math.IsInf(k, 1) {
				m.Pin(at)
				load[at] = 0
			}
		}
	}
}

// curve reads the curvatures at every place.
func (r Resting) curve(c *Curved, u []float64) {
	n := len(c.X)
	c.Tall, c.Flat = make([]float64, n), make([]float64, n)
	for i := range n {
		a := min(i, n-2) // the element that starts here, or the last one
		l := c.X[a+1] - c.X[a]
		by := bends(l)
		if i > a {
			by = [4]float64{6 / (l * l), 2 / l, -6 / (l * l), 4 / l}
		}
		var k [2]float64 // up and across
		for w := range k {
			for j, v := range by {
				k[w] += v * u[4*(a+j/2)+2*w+j%2]
			}
		}
		axes := r.axes()
		c.Tall[i], c.Flat[i] = k[0]*axes[0][0]+k[1]*axes[0][1], k[0]*axes[1][0]+k[1]*axes[1][1]
	}
}

// At returns the curvatures at a place.
func (c Curved) At(x float64) (tall, flat float64) {
	i, _ := slices.BinarySearch(c.X, x)
	i = min(max(i, 1), len(c.X)-1)
	t := (x - c.X[i-1]) / (c.X[i] - c.X[i-1])
	return c.Tall[i-1] + t*(c.Tall[i]-c.Tall[i-1]), c.Flat[i-1] + t*(c.Flat[i]-c.Flat[i-1])
}
