package built

import "math"

// Rest is how much deeper a rib came out than its bend and the length it was cut to explain, mm.
type Rest struct {
	Rib, Line int
	Deeper    float64
}

// Common is the part of the rests that all ribs have in common.
type Common struct {
	All   float64 // alike at every rib, as a tape or a shoulder leaves it, mm
	Point float64 // for each mm that a rib comes deeper by a hundredth of springback: a free width tells too much or too little of it
}

// What a rib of known bend and length is off in depth, mm: by chance, which is what 2 mm in
// its length and 5 mm in where its bilges are bent come to in the shipped boats; and of either
// kind in common with all others of the boat, our own choice, which makes a millimeter
// amidships. One standard deviation.
const (
	chance = 2.2
	shared = 0.7
)

// common learns what the ribs that stand have in common. Wood does not lose the same share of
// a slight bend as of a tight one, so a rib held in the boat stands as if it had sprung back
// more or less than its free width says, and most where its depth hangs most on that.
//
// How: least squares of the chance and of the two parts, each over its standard deviation, as
// in any text on regression with known spreads.
func (f *Frame) common(rests []Rest) Common {
	const little = chance * chance / (shared * shared)
	a, y := [2][2]float64{{little, 0}, {0, little}}, [2]float64{}
	for _, rest := range rests {
		u := [2]float64{1, f.answers(rest.Rib)}
		for j := range u {
			for k := range u {
				a[j][k] += u[j] * u[k]
			}
			y[j] += u[j] * rest.Deeper
		}
	}
	all := a[0][0]*a[1][1] - a[0][1]*a[1][0] // never nothing: both parts are held
	return Common{All: (y[0]*a[1][1] - y[1]*a[0][1]) / all, Point: (y[1]*a[0][0] - y[0]*a[1][0]) / all}
}

// answers is how much deeper a rib comes for a hundredth of springback more, mm.
func (f *Frame) answers(i int) float64 { return f.ribs[i].deeper * f.Report.Ribs[i].Point }

// bias is how much deeper rib i comes than its bend and length explain, as far as it goes with
// the others, mm.
func (r *Report) bias(i int) float64 { return r.Common.All + r.Common.Point*r.answers(i) }

// Bias is that on the average of the ribs that remain, mm; 0 where none does.
func (r *Report) Bias() float64 {
	sum := 0.0
	for _, m := range r.Remaining {
		sum += r.bias(m.Rib) / float64(len(r.Remaining))
	}
	return sum
}

// known is the part of what a standing rib is off in depth whose cause was measured.
func (r *Report) known(row Row, beam float64) float64 {
	i, sum := row.Rib, 0.0
	if v := row.Is[Free]; !math.IsNaN(v) {
		sum += (v - r.ribs[i].free) * r.ribs[i].deeper
	}
	if v := row.Is[Blank]; !math.IsNaN(v) {
		longer := v - r.ribs[i].blank
		if !math.IsNaN(beam) {
			longer -= r.curb[i].Beam * beam
		}
		sum += longer / r.curb[i].Depth
	}
	return sum
}
