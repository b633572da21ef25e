package pool

import "math"

// system is the equations of one way to take the sides, made ready to be solved for any
// spread of sides and units.
type system struct {
	d      *Data
	loose  bool // sides are drawn from a family; else they are told apart as kinds are
	fixed  int  // columns that are told apart
	wide   int  // all columns but units
	middle float64
	square float64     // weighted sum of squares about the middle
	logW   float64     // sum of the logarithms of weights
	own    [][]float64 // of the columns with one another
	right  []float64
	share  [][]float64 // of each unit with the columns
	weight []float64   // of each unit
	sum    []float64   // weighted, of each unit
}

// newSystem sums the readings up.
func newSystem(d *Data, loose bool) *system {
	s := &system{d: d, loose: loose, fixed: d.kinds, wide: d.kinds}
	if d.sides > 0 && loose {
		s.wide += d.sides
	} else if d.sides > 1 {
		s.wide += d.sides - 1
		s.fixed = s.wide
	}
	s.own, s.right = square(s.wide), make([]float64, s.wide)
	s.weight, s.sum = make([]float64, d.units), make([]float64, d.units)
	s.share = make([][]float64, d.units)
	for j := range s.share {
		s.share[j] = make([]float64, s.wide)
	}
	count := 0.0
	for _, r := range d.Readings {
		s.middle += r.weight() * r.Value
		count += r.weight()
	}
	s.middle /= count
	row := make([]float64, s.wide)
	for _, r := range d.Readings {
		s.columns(row, r.Kind, r.Side)
		w, y := r.weight(), r.Value-s.middle
		s.square += w * y * y
		s.logW += math.Log(w)
		s.weight[r.Unit] += w
		s.sum[r.Unit] += w * y
		for c, x := range row {
			if x == 0 {
				continue
			}
			s.right[c] += w * x * y
			s.share[r.Unit][c] += w * x
			for k, z := range row {
				s.own[c][k] += w * x * z
			}
		}
	}
	return s
}

// columns are what a reading of a kind and side is made of. Sides that are told apart add
// up to nothing.
func (s *system) columns(row []float64, kind, side int) {
	clear(row)
	if kind >= 0 {
		row[kind] = 1
	} else { // the mean of all kinds
		for k := range s.d.kinds {
			row[k] = 1 / float64(s.d.kinds)
		}
	}
	last := s.d.sides - 1
	switch {
	case side < 0:
	case s.loose:
		row[s.d.kinds+side] = 1
	case side < last:
		row[s.d.kinds+side] = 1
	default:
		for k := range last {
			row[s.d.kinds+k] = -1
		}
	}
}

// solved is the equations solved for one spread of sides and of units, each over that of
// chance.
type solved struct {
	s         *system
	scale     []float64
	unit      float64
	lower     [][]float64 // Cholesky factor
	is        []float64   // of the columns, scaled
	chance    float64     // variance of a reading of weight 1
	criterion float64     // -2 log of the restricted likelihood
	free      float64     // degrees of freedom of chance
}

// solve solves; nil where the columns cannot be told apart.
func (s *system) solve(side, unit float64) *solved {
	out := &solved{s: s, unit: unit, scale: make([]float64, s.wide)}
	for c := range out.scale {
		if out.scale[c] = 1; s.loose && c >= s.fixed {
			out.scale[c] = side
		}
	}
	a, y := square(s.wide), make([]float64, s.wide)
	rest, logs, u2 := s.square, 0.0, unit*unit
	for c := range a {
		for k := range a {
			a[c][k] = s.own[c][k] * out.scale[c] * out.scale[k]
		}
		if s.loose && c >= s.fixed {
			a[c][c]++
		}
		y[c] = s.right[c] * out.scale[c]
	}
	if unit > 0 {
		for j, row := range s.share {
			by := 1 + u2*s.weight[j]
			logs += math.Log(by)
			rest -= u2 * s.sum[j] * s.sum[j] / by
			for c, v := range row {
				if v == 0 {
					continue
				}
				v *= out.scale[c] * u2 / by
				y[c] -= v * s.sum[j]
				for k, z := range row {
					a[c][k] -= v * z * out.scale[k]
				}
			}
		}
	}
	var ok bool
	if out.lower, ok = cholesky(a); !ok {
		return nil
	}
	out.is = substitute(out.lower, y)
	for c := range y {
		rest -= out.is[c] * y[c]
		logs += 2 * math.Log(out.lower[c][c])
	}
	left := float64(len(s.d.Readings) - s.fixed)
	if s.d.known {
		out.chance, out.free = 1, math.Inf(1)
		out.criterion = rest - s.logW + logs + left*math.Log(2*math.Pi)
		return out
	}
	out.chance, out.free = math.Max(rest, 1e-12*s.square+1e-300)/left, left
	out.criterion = left*(math.Log(out.chance)+1+math.Log(2*math.Pi)) - s.logW + logs
	return out
}

// of is a sum of columns: its value, and its variance over that of chance.
func (o *solved) of(row []float64) (is, variance float64) {
	x := make([]float64, len(row))
	is = o.s.middle * o.kinds(row)
	for c, v := range row {
		x[c] = v * o.scale[c]
		is += x[c] * o.is[c]
	}
	for _, v := range forward(o.lower, x) {
		variance += v * v
	}
	return is, variance
}

// kinds is how much of a kind a row is of: 1 for a value, 0 for a difference.
func (o *solved) kinds(row []float64) float64 {
	sum := 0.0
	for _, v := range row[:o.s.d.kinds] {
		sum += v
	}
	return sum
}

func square(n int) [][]float64 {
	out := make([][]float64, n)
	for i := range out {
		out[i] = make([]float64, n)
	}
	return out
}

// cholesky factors a in its lower half; false where it is not positive.
func cholesky(a [][]float64) ([][]float64, bool) {
	for j := range a {
		first := a[j][j]
		for k := range j {
			a[j][j] -= a[j][k] * a[j][k]
		}
		if !(a[j][j] > 1e-10*first) {
			return nil, false
		}
		a[j][j] = math.Sqrt(a[j][j])
		for i := j + 1; i < len(a); i++ {
			for k := range j {
				a[i][j] -= a[i][k] * a[j][k]
			}
			a[i][j] /= a[j][j]
		}
	}
	return a, true
}

// forward solves the lower half.
func forward(l [][]float64, y []float64) []float64 {
	out := make([]float64, len(y))
	for i := range out {
		out[i] = y[i]
		for k := range i {
			out[i] -= l[i][k] * out[k]
		}
		out[i] /= l[i][i]
	}
	return out
}

// substitute solves the whole.
func substitute(l [][]float64, y []float64) []float64 {
	out := forward(l, y)
	for i := len(out) - 1; i >= 0; i-- {
		for k := i + 1; k < len(out); k++ {
			out[i] -= l[k][i] * out[k]
		}
		out[i] /= l[i][i]
	}
	return out
}
