package cutlist

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ribwright/geometry/referencetest"
)

// instance is a published problem with its best known number of bins.
type instance struct {
	name     string
	capacity float64
	best     int
	lengths  []float64
}

// instances reads the published problems; the sources stand in the file.
func instances(t testing.TB) []instance {
	t.Helper()
	number := func(s string) float64 { return referencetest.Number(t, s) }
	var out []instance
	for _, row := range referencetest.Table(t, "testdata/instances.csv") {
		if len(out) == 0 || out[len(out)-1].name != row[0] {
			out = append(out, instance{row[0], number(row[1]), int(number(row[2])), nil})
		}
		in := &out[len(out)-1]
		for range int(number(row[4])) {
			in.lengths = append(in.lengths, number(row[3]))
		}
	}
	return out
}

// whole checks that each item lies in one bin and that no bin is overfull.
func whole(t *testing.T, p Packing, lengths []float64, capacity, gap float64) {
	t.Helper()
	seen := make([]int, len(lengths))
	for b, bin := range p.Bins {
		used := -gap
		for _, i := range bin {
			seen[i]++
			used += lengths[i] + gap
		}
		if used > capacity+1e-6 {
			t.Errorf("bin %d holds %.3f with gaps of %g, capacity %g", b, used, gap, capacity)
		}
	}
	for i, n := range seen {
		if n != 1 {
			t.Errorf("item %d lies in %d bins", i, n)
		}
	}
}

// TestPublished packs the published instances: Falkenauer's, Scholl's, Schwerin's and the
// paper machine's rolls, with the optima that the file names: optimal or one more, and told
// as optimal only where that is proved.
func TestPublished(t *testing.T) {
	all := instances(t)
	if len(all) != 6 {
		t.Fatalf("%d instances, want 6", len(all))
	}
	for _, in := range all {
		p := Pack(in.lengths, in.capacity, 0)
		first := firstFitOnly(in.lengths, in.capacity, 0)
		t.Logf("%s: %d bins, best known %d, bound %d, first-fit decreasing %d", in.name, len(p.Bins), in.best, p.Bound, len(first.Bins))
		whole(t, p, in.lengths, in.capacity, 0)
		if len(p.Bins) > in.best+1 || len(p.Bins) > len(first.Bins) {
			t.Errorf("%s: %d bins, best known %d", in.name, len(p.Bins), in.best)
		}
		if p.Optimal() && len(p.Bins) > in.best {
			t.Errorf("%s: %d bins are told as optimal, best known %d", in.name, len(p.Bins), in.best)
		}
		if p.Bound > in.best {
			t.Errorf("%s: the bound %d is above the best known %d", in.name, p.Bound, in.best)
		}
	}
}

// least finds the fewest bins by trying every way: for a handful of items.
func least(lengths []float64, capacity, gap float64) int {
	best := len(lengths)
	var used []float64
	var put func(i int)
	put = func(i int) {
		if len(used) >= best {
			return
		}
		if i == len(lengths) {
			best = len(used)
			return
		}
		for b := range used {
			if used[b]+gap+lengths[i] <= capacity+1e-9 {
				was := used[b]
				used[b] += gap + lengths[i]
				put(i + 1)
				used[b] = was
			}
		}
		used = append(used, lengths[i])
		put(i + 1)
		used = used[:len(used)-1]
	}
	put(0)
	return best
}

// TestSmall holds Pack and its bound to the true optimum, found by trying every
// way, on random small sets with and without a kerf.
func TestSmall(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 1))
	worse := 0
	for range 300 {
		n := 1 + random.IntN(9)
		lengths := make([]float64, n)
		for i := range lengths {
			lengths[i] = float64(random.IntN(960)+40) / 10
		}
		gap := float64(random.IntN(4))
		p, want := Pack(lengths, 100, gap), least(lengths, 100, gap)
		whole(t, p, lengths, 100, gap)
		if len(p.Bins) < want || p.Bound > want {
			t.Fatalf("%v gap %g: %d bins, bound %d, but %d are needed", lengths, gap, len(p.Bins), p.Bound, want)
		}
		if len(p.Bins) > want {
			worse++
		}
	}
	t.Logf("%d of 300 over the optimum", worse)
	if worse > 0 {
		t.Errorf("%d of 300 small sets take more bins than the optimum", worse)
	}
}

// TestPackPlainly holds first fit and the bound to their definitions, written out plainly.
func TestPackPlainly(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 2))
	for range 400 {
		room, n := 100+random.IntN(100), 1+random.IntN(60)
		sizes, order := make([]int, n), make([]int, n)
		for i := range sizes {
			sizes[i], order[i] = 1+random.IntN(room), i
		}
		slices.SortStableFunc(order, func(a, b int) int { return sizes[b] - sizes[a] })
		var bins [][]int
		var left []int
		for _, i := range order {
			at := slices.IndexFunc(left, func(l int) bool { return l >= sizes[i] })
			if at < 0 {
				at, bins, left = len(bins), append(bins, nil), append(left, room)
			}
			bins[at], left[at] = append(bins[at], i), left[at]-sizes[i]
		}
		if got := firstFit(sizes, order, room); !slices.EqualFunc(got, bins, slices.Equal) {
			t.Fatalf("%v in %d: %v, want %v", sizes, room, got, bins)
		}
		want := 0
		for k := 0; 2*k <= room; k++ {
			alone, half, gaps, rest := 0, 0, 0, 0
			for _, v := range sizes {
				switch {
				case v > room-k:
					alone++
				case 2*v > room:
					half, gaps = half+1, gaps+room-v
				case v >= k:
					rest += v
				}
			}
			want = max(want, alone+half, alone+half+int(math.Ceil(float64(rest-gaps)/float64(room))))
		}
		for k := 1; k <= 50; k++ {
			many := 0
			for _, v := range sizes {
				if v*(k+1) > room {
					many++
				}
			}
			want = max(want, int(math.Ceil(float64(many)/float64(k))))
		}
		if got := bound(sizes, order, room); got != want {
			t.Fatalf("%v in %d: bound %d, want %d", sizes, room, got, want)
		}
	}
}

// many are n lengths, and so many that differ, from a range, mm.
func many(n, kinds int, from, to float64) []float64 {
	random := rand.New(rand.NewPCG(7, uint64(n)))
	each, out := make([]float64, kinds), make([]float64, n)
	for i := range each {
		each[i] = from + (to-from)*random.Float64()
	}
	for i := range out {
		out[i] = each[random.IntN(kinds)]
	}
	return out
}

// TestThousand packs a thousand sticks, all different or alike, in no more boards than first
// fit takes and less than 1 in 100 over the bound.
func TestThousand(t *testing.T) {
	for _, lengths := range thousands() {
		p := Pack(lengths, 5440, 3)
		whole(t, p, lengths, 5440, 3)
		first := len(firstFitOnly(lengths, 5440, 3).Bins)
		t.Logf("%d boards, bound %d, first fit %d", len(p.Bins), p.Bound, first)
		if len(p.Bins) > first || 100*(len(p.Bins)-p.Bound) > p.Bound {
			t.Errorf("%d boards, bound %d, first fit %d", len(p.Bins), p.Bound, first)
		}
	}
}

func thousands() [][]float64 {
	return [][]float64{many(1000, 1000, 500, 3000), many(1000, 1000, 900, 2100), many(1000, 40, 300, 5000), many(1000, 1, 1830, 1830)}
}

// TestKerfCounts: three pieces of 1000 mm need 3006 mm with a 3 mm saw, not 3000;
// the last cut falls on the end of the board.
func TestKerfCounts(t *testing.T) {
	three := []float64{1000, 1000, 1000}
	for _, c := range []struct {
		capacity, kerf float64
		want           int
	}{{3000, 0, 1}, {3000, 3, 2}, {3005.9, 3, 2}, {3006, 3, 1}} {
		if got := len(Pack(three, c.capacity, c.kerf).Bins); got != c.want {
			t.Errorf("board of %g mm, kerf %g mm: %d boards, want %d", c.capacity, c.kerf, got, c.want)
		}
	}
}

// TestPackRepeats gives the same packing for the same input.
func TestPackRepeats(t *testing.T) {
	in := instances(t)[0]
	a, b := Pack(in.lengths, in.capacity, 0), Pack(in.lengths, in.capacity, 0)
	if !slices.EqualFunc(a.Bins, b.Bins, slices.Equal) {
		t.Error("two packings of one set differ")
	}
}

func BenchmarkPack(b *testing.B) {
	for _, n := range []int{125, 250, 500, 1000, 2000} {
		lengths := many(n, n, 500, 3000)
		b.Run(fmt.Sprintf("%d sticks", n), func(b *testing.B) {
			for b.Loop() {
				Pack(lengths, 5440, 3)
			}
		})
	}
	for _, in := range instances(b) {
		b.Run(in.name, func(b *testing.B) {
			for b.Loop() {
				Pack(in.lengths, in.capacity, 0)
			}
		})
	}
}
