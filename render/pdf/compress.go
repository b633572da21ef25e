package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"runtime"
	"strconv"

	"ribwright/geometry/sidebyside"
)

// compressed is a finished file with what its pages draw made small. The writing library can
// do so too, but makes a compressor for every page, which costs more than most pages do, and
// does one page after another.
//
// The objects of pages are the first in the file, from 3 on: each page, and what it draws.
func compressed(file []byte, pages int) []byte {
	table, end := bytes.LastIndex(file, []byte("\nxref\n"))+1, bytes.LastIndex(file, []byte("trailer"))
	const entry = len("0000000000 00000 n \n")
	count := (end - table) / entry // what begins the table is shorter than an entry
	place := func(k int) []byte { return file[end-(count-k)*entry:][:10] }
	at := func(k int) int { at, _ := strconv.Atoi(string(place(k))); return at }
	drawn := make([][]byte, pages)
	for i := range drawn {
		_, rest, _ := bytes.Cut(file[at(4+2*i):], []byte("/Length "))
		length, stream, _ := bytes.Cut(rest, []byte(">>\nstream\n"))
		long, _ := strconv.Atoi(string(length))
		drawn[i] = stream[:long]
	}
	var out bytes.Buffer
	out.Grow(len(file) / 4) // as small as most come out
	read := 0
	moved := func(k int) { copy(place(k), fmt.Sprintf("%010d", at(k)-read+out.Len())) }
	for i, small := range squeezed(drawn) {
		k := 4 + 2*i
		begin := at(k)
		moved(k - 1)
		moved(k)
		out.Write(file[read:begin])
		fmt.Fprintf(&out, "%d 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n%s", k, len(small), small)
		read = cap(file) - cap(drawn[i]) + len(drawn[i]) // where in the file it ends
	}
	for k := 1; k < count; k++ {
		if k < 3 || k > 2+2*pages {
			moved(k)
		}
	}
	table += out.Len() - read
	out.Write(file[read:bytes.LastIndex(file, []byte("startxref"))])
	fmt.Fprintf(&out, "startxref\n%d\n%%%%EOF\n", table)
	return out.Bytes()
}

// squeezed makes each stream small, with a compressor for every processor.
func squeezed(streams [][]byte) [][]byte {
	out := make([][]byte, len(streams))
	hands := runtime.GOMAXPROCS(0)
	sidebyside.Each(hands, func(hand int) {
		var small bytes.Buffer
		z, _ := zlib.NewWriterLevel(&small, zlib.BestSpeed) // the level is one that there is
		for i := hand; i < len(streams); i += hands {
			small.Reset()
			z.Reset(&small)
			z.Write(streams[i])
			z.Close()
			out[i] = bytes.Clone(small.Bytes())
		}
	})
	return out
}
