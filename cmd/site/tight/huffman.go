package tight

import (
	mathbits "math/bits"
	"slices"
)

// lengths are those of the shortest code with no length over most, for symbols used so often;
// 0 for one that is not used. By packages: Larmore and Hirschberg 1990.
func lengths(counts []int, most int) []int {
	type pack struct {
		weight      int
		symbol      int // -1 for a pair
		left, right *pack
	}
	var leaves []*pack
	for i, n := range counts {
		if n > 0 {
			leaves = append(leaves, &pack{weight: n, symbol: i})
		}
	}
	out := make([]int, len(counts))
	if len(leaves) < 2 {
		for _, l := range leaves {
			out[l.symbol] = 1
		}
		return out
	}
	lighter := func(a, b *pack) int { return a.weight - b.weight }
	slices.SortStableFunc(leaves, lighter)
	row := leaves
	for range most - 1 {
		next := slices.Clone(leaves)
		for i := 0; i+1 < len(row); i += 2 {
			next = append(next, &pack{weight: row[i].weight + row[i+1].weight, symbol: -1, left: row[i], right: row[i+1]})
		}
		slices.SortStableFunc(next, lighter)
		row = next
	}
	var open func(p *pack)
	open = func(p *pack) {
		if p.symbol >= 0 {
			out[p.symbol]++
			return
		}
		open(p.left)
		open(p.right)
	}
	for _, p := range row[:2*len(leaves)-2] {
		open(p)
	}
	return out
}

// codes are the codes of those lengths, the first bit lowest.
func codes(lengths []int) []uint64 {
	var count, next [16]int
	for _, l := range lengths {
		count[l]++
	}
	count[0] = 0
	for l := 1; l < len(next); l++ {
		next[l] = (next[l-1] + count[l-1]) << 1
	}
	out := make([]uint64, len(lengths))
	for i, l := range lengths {
		if l > 0 {
			out[i] = uint64(mathbits.Reverse16(uint16(next[l])) >> (16 - l))
			next[l]++
		}
	}
	return out
}

type sink interface{ put(v uint64, n uint) }

// counter counts bits that are not written.
type counter int

func (c *counter) put(_ uint64, n uint) { *c += counter(n) }

// order is that in which the lengths of the lengths' own code are told.
var order = [...]int{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15}

// told is a length, or that lengths repeat: a code, and bits after it.
type told struct {
	code, extra int
	rest        uint64
}

// header tells the lengths of both codes.
func header(out sink, lit, far []int) {
	trim := func(v []int, least int) []int {
		n := len(v)
		for n > least && v[n-1] == 0 {
			n--
		}
		return v[:n]
	}
	lit, far = trim(lit, 257), trim(far, 1)
	all := repeats(slices.Concat(lit, far))
	counts := make([]int, len(order))
	for _, t := range all {
		counts[t.code]++
	}
	own := lengths(counts, 7)
	n := len(order)
	for n > 4 && own[order[n-1]] == 0 {
		n--
	}
	out.put(uint64(len(lit)-257), 5)
	out.put(uint64(len(far)-1), 5)
	out.put(uint64(n-4), 4)
	for _, i := range order[:n] {
		out.put(uint64(own[i]), 3)
	}
	ownCodes := codes(own)
	for _, t := range all {
		out.put(ownCodes[t.code], uint(own[t.code]))
		out.put(t.rest, uint(t.extra))
	}
}

// repeats tells a row of lengths with runs of one.
func repeats(row []int) (out []told) {
	for i := 0; i < len(row); {
		n := 1
		for i+n < len(row) && row[i+n] == row[i] {
			n++
		}
		i += n
		v := row[i-1]
		if v > 0 {
			out, n = append(out, told{code: v}), n-1
		}
		for n > 0 {
			switch {
			case v == 0 && n >= 11:
				k := min(n, 138)
				out, n = append(out, told{18, 7, uint64(k - 11)}), n-k
			case v == 0 && n >= 3:
				out, n = append(out, told{17, 3, uint64(n - 3)}), 0
			case v > 0 && n >= 3:
				k := min(n, 6)
				out, n = append(out, told{16, 2, uint64(k - 3)}), n-k
			default:
				out, n = append(out, told{code: v}), n-1
			}
		}
	}
	return out
}
