package pool

// Drawn are values whose own errors are known, one for each side, drawn to their mean.
//
// Each keeps B/(B + its variance) of its difference, for the likeliest spread B of the
// sides, and of the rest 2/(J-1) more: the likeliest spread is a guess of J values, and one
// of nothing is no proof that all are equal. With three or fewer nothing is drawn.
//
// Source: C. N. Morris, Parametric empirical Bayes inference, J. Amer. Statist. Assoc. 78
// (1983); with equal errors it is the estimator of Stein that B. Efron and C. Morris used.
func (f *Fit) Drawn(side int) float64 {
	mean, _ := f.Mean()
	value, variance := mean, 0.0
	for _, r := range f.d.Readings {
		if r.Side == side {
			value, variance = r.Value, r.Known
		}
	}
	j := float64(f.d.sides)
	if variance == 0 || j <= 3 {
		return value
	}
	draw := (j - 3) / (j - 1) * variance / (variance + f.Side*f.Side)
	return value - draw*(value-mean)
}
