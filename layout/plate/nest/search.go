package nest

import (
	"math"
	"math/rand/v2"
	"sync"

	"ribwright/geometry"
)

// How long a close nest is searched for. Two searches run side by side, from two
// seeds that were found to serve canoes' parts well; the shares are of the parts'
// own area.
const (
	opening  = 2.1   // share of the rectangle that a nest is begun in, on a board large enough
	tightest = 1.75  // the least share that is tried when the board is smaller
	begins   = 12    // nests begun at most
	goal     = 1.795 // share at which the search is content
	rounds   = 12    // of laying parts anew at most
	effort   = 170   // parts of a nest times the tries of a round
)

var seeds = [2]uint64{11, 43}

// closeNest searches for a nest in a small rectangle; ok is false when no nest
// begun came apart. The same parts give the same nest.
func (j *job) closeNest() (state, bool) {
	j.prepare()
	var runs [2]search
	for n := range runs {
		runs[n] = search{job: j, bench: j.bench(seeds[n])}
	}
	both := func(f func(s *search)) {
		var all sync.WaitGroup
		for n := range runs {
			all.Go(func() { f(&runs[n]) })
		}
		all.Wait()
	}
	both((*search).begin)
	for k := 0; k < rounds && !runs[0].content() && !runs[1].content(); k++ {
		both((*search).round)
	}
	both((*search).finish)
	best := runs[0]
	if runs[1].found && (!best.found || j.share(runs[1].state) < j.share(best.state)) {
		best = runs[1]
	}
	return best.state, best.found
}

// search is one run from one seed.
type search struct {
	*bench
	job   *job
	state state
	found bool
}

func (s *search) content() bool { return s.found && s.job.share(s.state) <= goal }

// begin lays a first nest and pushes it together.
func (s *search) begin() {
	share := math.Min(opening, 0.999*s.job.room.X*s.job.room.Y/s.job.area)
	for range begins {
		if first, ok := s.job.first(s.bench, share); ok && s.settle(first, 2*moves) {
			s.state, s.found = s.squeeze(first), true
			return
		}
	}
}

// round lays parts anew some times and keeps what is no worse.
func (s *search) round() {
	for range s.job.tries {
		if !s.found || s.content() {
			return
		}
		if next, ok := s.job.again(s.bench, s.state); ok && s.job.share(next) <= s.job.share(s.state) {
			s.state = next
		}
	}
}

// finish takes back what was kept over the gap, as far as true distances allow.
func (s *search) finish() {
	if !s.found {
		return
	}
	for _, m := range []float64{0.15, 0.3, margin} {
		s.need = s.job.gap + m
		closer := s.squeeze(s.state.squashed(1, 1))
		if s.job.holds(closer) {
			s.state = closer
			return
		}
	}
	s.state, s.found = s.job.proved(s.bench, s.state)
}

// share is how many times the parts' own area a nest takes.
func (j *job) share(s state) float64 { return s.w * s.h / j.area }

// margin is what is kept over the gap while parts are pushed about, mm, because
// fields are not exact.
const margin = 0.4

// bench returns a bench of its own for one search.
func (j *job) bench(seed uint64) *bench {
	return &bench{bodies: j.bodies, need: j.gap + margin, chance: rand.New(rand.NewPCG(seed, 1))}
}

// proved checks a nest by true distances and gives it a little more room until
// it holds; ok is false when that does not help.
func (j *job) proved(b *bench, s state) (state, bool) {
	for range 5 {
		if j.holds(s) {
			return s, true
		}
		s = s.squashed(1.002, 1.002)
		s.w, s.h = math.Min(s.w, j.room.X), math.Min(s.h, j.room.Y)
		b.need += margin / 2
		b.relax(s, 200)
	}
	return s, false
}

// holds reports whether all parts of a nest keep the gap and lie on the board.
func (j *job) holds(s state) bool {
	moves := make([]*geometry.Affine, len(s.poses))
	for i, p := range s.poses {
		m := j.bodies[i].move(p)
		moves[i] = &m
	}
	return j.lieApart(moves)
}

// lieApart reports whether all parts, so moved, keep the gap and have room on the board, by
// true distances.
func (j *job) lieApart(moves []*geometry.Affine) bool {
	laid, all := make([]shape, len(moves)), geometry.EmptyBox()
	for i, m := range moves {
		laid[i] = j.exact[i].mapped(*m)
		all = all.Union(laid[i].box)
		for k := range i {
			if !apart(laid[i], laid[k], j.gap+2*chord+rounding) {
				return false
			}
		}
	}
	return all.W() <= j.room.X-rounding && all.H() <= j.room.Y-rounding
}
