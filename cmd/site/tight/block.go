package tight

import (
	"math"
	mathbits "math/bits"
	"slices"
)

// literals counts the codes of bytes, of the end and of lengths; end is the code that ends a block.
const (
	literals = 286
	fars     = 30
	end      = 256
)

// block is what is written under one code.
type block struct {
	from  int // of its bytes in the data
	steps []step
	lit   [literals]int // how often each code is used
	far   [fars]int
}

func newBlock(data []byte, from int, steps []step) block {
	b := block{from: from, steps: steps}
	at := from
	for _, s := range steps {
		if s.far == 0 {
			b.lit[data[at]]++
		} else {
			code, _, _ := lengthCode(int(s.long))
			b.lit[code]++
			b.far[farCode(int(s.far))]++
		}
		at += int(s.long)
	}
	b.lit[end]++
	return b
}

// with is both blocks as one.
func (b block) with(next block) block {
	b.steps = slices.Concat(b.steps, next.steps)
	for i, n := range next.lit {
		b.lit[i] += n
	}
	b.lit[end]--
	for i, n := range next.far {
		b.far[i] += n
	}
	return b
}

// costs are by how often each code was used; one that was not is as dear as one used half a time.
func (b block) costs() *costs {
	c := &costs{}
	lit, far := entropy(b.lit[:]), entropy(b.far[:])
	copy(c.lit[:], lit[:256])
	for l := least; l <= longest; l++ {
		code, extra, _ := lengthCode(l)
		c.long[l] = lit[code] + float32(extra)
	}
	for d := range c.far {
		c.far[d] = far[d] + float32(farExtra(d))
	}
	return c
}

func entropy(counts []int) []float32 {
	sum := 0.0
	for _, n := range counts {
		sum += math.Max(0.5, float64(n))
	}
	out := make([]float32, len(counts))
	for i, n := range counts {
		out[i] = float32(math.Log2(sum / math.Max(0.5, float64(n))))
	}
	return out
}

// size is how many bits the block takes.
func (b block) size() int {
	lit, far := lengths(b.lit[:], 15), lengths(b.far[:], 15)
	var head counter
	header(&head, lit, far)
	sum := int(head)
	for i, n := range b.lit {
		sum += n * (lit[i] + lengthExtra(i))
	}
	for i, n := range b.far {
		sum += n * (far[i] + farExtra(i))
	}
	return sum
}

// write puts the block down, the last one marked.
func (b block) write(out *bits, data []byte, last bool) {
	lit, far := lengths(b.lit[:], 15), lengths(b.far[:], 15)
	mark := uint64(2 << 1) // a code of its own
	if last {
		mark |= 1
	}
	out.put(mark, 3)
	header(out, lit, far)
	litCodes, farCodes := codes(lit), codes(far)
	at := b.from
	for _, s := range b.steps {
		if s.far == 0 {
			out.put(litCodes[data[at]], uint(lit[data[at]]))
		} else {
			code, extra, rest := lengthCode(int(s.long))
			out.put(litCodes[code], uint(lit[code]))
			out.put(uint64(rest), uint(extra))
			code = farCode(int(s.far))
			extra = farExtra(code)
			out.put(farCodes[code], uint(far[code]))
			out.put(uint64(s.far-1)&(1<<extra-1), uint(extra))
		}
		at += int(s.long)
	}
	out.put(litCodes[end], uint(lit[end]))
}

// lengthCode is the code of a match's length, how many bits follow it, and what they say.
func lengthCode(l int) (code, extra, rest int) {
	switch {
	case l == longest:
		return 285, 0, 0
	case l < 11:
		return 254 + l, 0, 0
	}
	extra = mathbits.Len(uint(l-3)) - 3
	step := (l - 3) >> extra // 4 to 7
	return 257 + 4*extra + step, extra, (l - 3) & (1<<extra - 1)
}

func lengthExtra(code int) int {
	if code < 265 || code >= 285 {
		return 0
	}
	return (code - 261) / 4
}

// farCode is the code of a distance.
func farCode(d int) int {
	if d < 5 {
		return d - 1
	}
	extra := mathbits.Len(uint(d-1)) - 2
	return 2*extra + (d-1)>>extra
}

func farExtra(code int) int { return max(0, code/2-1) }
