// Package tight packs bytes as gzip, smaller than the library does at its best: it looks for
// the cheapest way through each stretch instead of the longest match at each place, which on
// the engine saves a twentieth. Any reader of gzip unpacks it. The same bytes always pack
// alike.
//
// Source: RFC 1951 and RFC 1952.
package tight

import (
	"encoding/binary"
	"hash/crc32"
	"runtime"
	"sync"
)

// stretch is how many bytes are parsed on one set of costs: fewer follow the data more
// closely, more tell a code's lengths less often. Those that are alike are joined later.
const stretch = 1 << 16

// Gzip packs data.
func Gzip(data []byte) []byte {
	out := &bits{}
	out.raw(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 2, 255)
	all := joined(parsed(data))
	for i, b := range all {
		b.write(out, data, i == len(all)-1)
	}
	if len(all) == 0 { // the end alone, in the fixed code
		out.put(1|1<<1, 3)
		out.put(0, 7)
	}
	out.flush()
	sum := binary.LittleEndian.AppendUint32(nil, crc32.ChecksumIEEE(data))
	out.raw(binary.LittleEndian.AppendUint32(sum, uint32(len(data)))...)
	return out.bytes
}

// parsed finds the way through every stretch, several at a time.
func parsed(data []byte) []block {
	all := make([]block, (len(data)+stretch-1)/stretch)
	var wait sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range next {
				all[i] = parse(data, i*stretch, min(len(data), (i+1)*stretch))
			}
		})
	}
	for i := range all {
		next <- i
	}
	close(next)
	wait.Wait()
	return all
}

// joined puts neighbors under one code where that is shorter than two.
func joined(all []block) []block {
	var out []block
	for _, b := range all {
		if n := len(out) - 1; n >= 0 {
			both := out[n].with(b)
			if both.size() <= out[n].size()+b.size() {
				out[n] = both
				continue
			}
		}
		out = append(out, b)
	}
	return out
}

// bits are written from the lowest up.
type bits struct {
	bytes []byte
	held  uint64
	count uint
}

func (b *bits) put(v uint64, n uint) {
	b.held |= v << b.count
	for b.count += n; b.count >= 8; b.count -= 8 {
		b.bytes = append(b.bytes, byte(b.held))
		b.held >>= 8
	}
}

// flush fills the last byte.
func (b *bits) flush() {
	if b.count > 0 {
		b.put(0, 8-b.count)
	}
}

func (b *bits) raw(v ...byte) { b.bytes = append(b.bytes, v...) }
