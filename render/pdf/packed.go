package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"strconv"
)

// The writing library begins what is drawn on a page so, and each entry of its table of
// objects is as long as this one.
const (
	drawn = "<</Length "
	entry = "0000000000 00000 n \n"
)

// shrunk is by how much the file is shorter from a place on.
type shrunk struct{ from, by int }

// packed returns a finished file with what is drawn on its pages, whose objects stand first,
// packed by one writer: the library would make a new one for every page, a megabyte each.
func packed(file []byte, pages int) ([]byte, error) {
	out := bytes.NewBuffer(make([]byte, 0, len(file)/3))
	var cuts []shrunk
	var room bytes.Buffer
	z, err := zlib.NewWriterLevel(&room, zlib.BestSpeed)
	if err != nil {
		return nil, err
	}
	at := 0
	for range pages {
		begin, data, end, err := pageOf(file, at)
		if err != nil {
			return nil, err
		}
		room.Reset()
		z.Reset(&room)
		if _, err := z.Write(data); err != nil {
			return nil, err
		}
		if err := z.Close(); err != nil {
			return nil, err
		}
		out.Write(file[at:begin])
		fmt.Fprintf(out, "<</Filter /FlateDecode /Length %d>>\nstream\n", room.Len())
		out.Write(room.Bytes())
		at = end
		cuts = append(cuts, shrunk{end, end - out.Len()})
	}
	return moved(append(out.Bytes(), file[at:]...), cuts)
}

// pageOf finds the next object with what is drawn on a page: where its dictionary begins,
// its data, and where these end.
func pageOf(file []byte, at int) (begin int, data []byte, end int, err error) {
	broken := errors.New("the PDF came out with a broken page; please report this")
	i := bytes.Index(file[at:], []byte(drawn))
	if i < 0 {
		return 0, nil, 0, broken
	}
	begin = at + i
	digits, rest, ok := bytes.Cut(file[begin+len(drawn):], []byte(">>\nstream\n"))
	long, err := strconv.Atoi(string(digits))
	if !ok || err != nil || long > len(rest) {
		return 0, nil, 0, broken
	}
	end = len(file) - len(rest) + long
	return begin, rest[:long], end, nil
}

// moved sets right where the table of a file says that its objects and itself lie.
func moved(file []byte, cuts []shrunk) ([]byte, error) {
	place := func(old int) int {
		by := 0
		for _, c := range cuts {
			if c.from <= old {
				by = c.by
			}
		}
		return old - by
	}
	tail := startXref.FindSubmatchIndex(file)
	if tail == nil {
		return nil, errors.New("the PDF came out without a trailer; please report this")
	}
	table, err := strconv.Atoi(string(file[tail[2]:tail[3]]))
	if err != nil {
		return nil, err
	}
	table = place(table)
	first := bytes.IndexByte(file[table+len("xref\n"):], '\n') + table + len("xref\n") + 1 + len(entry)
	for i := first; ; i += len(entry) {
		old, err := strconv.Atoi(string(file[i : i+10]))
		if err != nil { // the trailer
			break
		}
		copy(file[i:], fmt.Sprintf("%010d", place(old)))
	}
	return fmt.Appendf(file[:tail[2]], "%d\n%%%%EOF\n", table), nil
}
