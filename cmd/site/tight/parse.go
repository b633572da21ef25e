package tight

import "math"

// What the format allows, bytes.
const (
	window  = 1 << 15
	least   = 3
	longest = 258
)

// tries are how many earlier places are looked at for each place, rounds how often a stretch is
// parsed anew with the costs of the last way.
const (
	tries  = 100
	rounds = 3
)

// step is one byte as it stands (far 0), or so many from so far back.
type step struct{ long, far uint16 }

// matches lists, for each place of a stretch, ever longer matches with the nearest place for each.
func matches(data []byte, from, to int) [][]step {
	start := max(0, from-window)
	key := func(i int) uint32 {
		return (uint32(data[i]) | uint32(data[i+1])<<8 | uint32(data[i+2])<<16) * 0x9E3779B1 >> 16
	}
	last := make([]int32, 1<<16) // 1 past the latest place with a key
	before := make([]int32, to-start)
	out := make([][]step, to-from)
	var pool []step
	for i := start; i+least <= to; i++ {
		k := key(i)
		if i >= from {
			n := len(pool)
			pool = search(data, before, last[k], start, i, to, pool)
			out[i-from] = pool[n:len(pool):len(pool)]
		}
		before[i-start], last[k] = last[k], int32(i)+1
	}
	return out
}

func search(data []byte, before []int32, at int32, start, i, to int, out []step) []step {
	most, best := min(longest, to-i), least-1
	for n := 0; at > 0 && n < tries; n++ {
		j := int(at) - 1
		if i-j > window {
			break
		}
		if best < most && data[j+best] == data[i+best] {
			l := 0
			for l < most && data[j+l] == data[i+l] {
				l++
			}
			if l > best {
				best, out = l, append(out, step{uint16(l), uint16(i - j)})
				if l == most {
					break
				}
			}
		}
		at = before[j-start]
	}
	return out
}

// costs are what each choice takes, in bits.
type costs struct {
	lit  [256]float32
	long [longest + 1]float32
	far  [30]float32
}

// parse finds the cheapest way through a stretch.
func parse(data []byte, from, to int) block {
	found := matches(data, from, to)
	c := guess()
	var b block
	for range rounds {
		b = newBlock(data, from, cheapest(data[from:to], found, c))
		c = b.costs()
	}
	return b
}

// guess is what choices cost where nothing is known yet.
func guess() *costs {
	c := &costs{}
	for i := range c.lit {
		c.lit[i] = 8.5
	}
	for l := least; l <= longest; l++ {
		_, extra, _ := lengthCode(l)
		c.long[l] = 6 + float32(extra)
	}
	for d := range c.far {
		c.far[d] = 5 + float32(farExtra(d))
	}
	return c
}

// cheapest is the way of least cost from the first byte to the last, each place reached
// from those before it.
func cheapest(data []byte, found [][]step, c *costs) []step {
	n := len(data)
	cost, by := make([]float32, n+1), make([]step, n+1)
	for i := range cost[1:] {
		cost[i+1] = math.MaxFloat32
	}
	for i, v := range data {
		if now := cost[i] + c.lit[v]; now < cost[i+1] {
			cost[i+1], by[i+1] = now, step{1, 0}
		}
		l := least
		for _, m := range found[i] {
			so := cost[i] + c.far[farCode(int(m.far))]
			for ; l <= int(m.long); l++ {
				if now := so + c.long[l]; now < cost[i+l] {
					cost[i+l], by[i+l] = now, step{uint16(l), m.far}
				}
			}
		}
	}
	steps := 0
	for i := n; i > 0; i -= int(by[i].long) {
		steps++
	}
	out := make([]step, steps)
	for i := n; i > 0; i -= int(by[i].long) {
		steps--
		out[steps] = by[i]
	}
	return out
}
