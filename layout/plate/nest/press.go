package nest

// places is how many places a body that is stuck is tried at.
const places = 40

// settle pushes all bodies apart and, as long as some are stuck, puts one of
// them elsewhere, at most the given number of times. It reports whether all came
// apart; the poses are changed either way.
func (b *bench) settle(s state, times int) bool {
	const rounds = 40
	w := newWeights(len(b.bodies))
	stuck := make([]float64, len(b.bodies))
	for range times {
		left := b.relax(s, rounds)
		if left > settled && left < 100*settled {
			left = b.relax(s, 6*rounds)
		}
		if left <= settled {
			return true
		}
		if i := b.pick(s, w, stuck); i >= 0 {
			b.seek(s, w, i, places)
		}
	}
	return b.relax(s, rounds) <= settled
}

// pick makes stuck pairs count more and picks one of the stuck bodies by chance,
// the more likely the deeper it is stuck; -1 when none is.
func (b *bench) pick(s state, w weights, stuck []float64) int {
	const growth = 1.3
	sum := 0.0
	for i := range stuck {
		stuck[i] = 0
	}
	add := func(i, j int, e float64) {
		if e > 0 {
			w[i][j] *= growth
			w[j][i] = w[i][j]
			stuck[i] += w[i][j] * e
			stuck[j] += w[i][j] * e
			sum += 2 * w[i][j] * e
		}
	}
	frames := b.frames(s)
	for i, p := range s.poses {
		add(i, i, b.outside(i, p, s.w, s.h))
		for j := range i {
			add(i, j, b.both(i, j, p, s.poses[j], &frames[i], &frames[j]))
		}
	}
	mark := b.chance.Float64() * sum
	for i, e := range stuck {
		if mark -= e; e > 0 && mark <= 0 {
			return i
		}
	}
	return -1
}

// squeeze makes the rectangle smaller, one side after the other, as long as
// pushing alone brings the bodies apart in it.
func (b *bench) squeeze(s state) state {
	const first, last, rounds = 0.008, 0.0008, 250
	steps := [2]float64{first, first}
	for k := 0; steps[0] > last || steps[1] > last; k = 1 - k {
		if steps[k] <= last {
			continue
		}
		f := [2]float64{1, 1}
		f[k] -= steps[k]
		if q := s.squashed(f[0], f[1]); b.relax(q, rounds) <= settled {
			s = q
		} else {
			steps[k] /= 2
		}
	}
	return s
}
