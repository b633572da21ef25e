package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"strconv"
)

// compressed is a finished file with what its pages draw made small. The writing library can
// do so too, but makes a compressor for every page, which costs more than most pages do.
//
// The objects of pages are the first in the file, from 3 on: each page, and what it draws.
func compressed(file []byte, pages int) []byte {
	table, end := bytes.LastIndex(file, []byte("\nxref\n"))+1, bytes.LastIndex(file, []byte("trailer"))
	const entry = len("0000000000 00000 n \n")
	count := (end - table) / entry // what begins the table is shorter than an entry
	place := func(k int) []byte { return file[end-(count-k)*entry:][:10] }
	var out, small bytes.Buffer
	out.Grow(len(file) / 4)                             // as small as most come out
	z, _ := zlib.NewWriterLevel(&small, zlib.BestSpeed) // the level is one that there is
	read := 0
	moved := func(k int) (at int) {
		at, _ = strconv.Atoi(string(place(k)))
		copy(place(k), fmt.Sprintf("%010d", at-read+out.Len()))
		return at
	}
	for k := 4; k <= 2+2*pages; k += 2 {
		moved(k - 1)
		at := moved(k)
		out.Write(file[read:at])
		_, rest, _ := bytes.Cut(file[at:], []byte("/Length "))
		length, drawn, _ := bytes.Cut(rest, []byte(">>\nstream\n"))
		long, _ := strconv.Atoi(string(length))
		small.Reset()
		z.Reset(&small)
		z.Write(drawn[:long])
		z.Close()
		fmt.Fprintf(&out, "%d 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n%s", k, small.Len(), small.Bytes())
		read = len(file) - len(drawn) + long
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
