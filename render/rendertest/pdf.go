package rendertest

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
)

// PDF is a file that has been read: its cross-reference tables are followed
// from the last one back, and every entry has been found to point at its
// object.
type PDF struct {
	Version  string // of the header, "1.7"
	Trailer  Dict   // the newest one
	Sections int    // cross-reference sections: 1 and one for every update
	src      []byte
	offsets  map[int]int   // the newest place of each object
	fonts    map[int]*font // those that have been read, by their object
}

// ReadPDF reads the structure of a file, not yet its pages.
//
// Errors: a header that is none, a table or an entry that points at something
// else, a /Size that is not one more than the highest object, a dictionary with
// a key twice.
func ReadPDF(src []byte) (*PDF, error) {
	if len(src) < 9 || !bytes.HasPrefix(src, []byte("%PDF-")) {
		return nil, fmt.Errorf("the file does not start as a PDF")
	}
	f := &PDF{Version: string(src[5:8]), src: src, offsets: map[int]int{}, fonts: map[int]*font{}}
	return f, f.readTables()
}

// Catalogue returns the newest version of the document's catalogue.
func (f *PDF) Catalogue() (Dict, error) {
	d, ok := f.resolve(f.Trailer["Root"]).(Dict)
	if !ok {
		return nil, fmt.Errorf("the file has no catalogue")
	}
	return d, nil
}

// CatalogueText returns the catalogue as it stands in the file, from its object
// number up to endobj.
func (f *PDF) CatalogueText() (string, error) {
	r, ok := f.Trailer["Root"].(Ref)
	if !ok {
		return "", fmt.Errorf("the trailer names no catalogue")
	}
	rest := f.src[f.offsets[r.Number]:]
	end := bytes.Index(rest, []byte("endobj"))
	if end < 0 {
		return "", fmt.Errorf("the catalogue does not end")
	}
	return string(rest[:end]), nil
}

// Info returns the document's information dictionary.
func (f *PDF) Info() (Dict, error) {
	d, ok := f.resolve(f.Trailer["Info"]).(Dict)
	if !ok {
		return nil, fmt.Errorf("the file has no information dictionary")
	}
	return d, nil
}

// Metadata returns the description that the catalogue points at, as XML.
func (f *PDF) Metadata() ([]byte, error) {
	root, err := f.Catalogue()
	if err != nil {
		return nil, err
	}
	at, ok := root["Metadata"].(Ref)
	if !ok {
		return nil, fmt.Errorf("the catalogue points at no description")
	}
	return f.stream(at.Number)
}

// resolve returns what a reference points at, and any other value as it is; nil
// when there is nothing.
func (f *PDF) resolve(v any) any {
	r, ok := v.(Ref)
	if !ok {
		return v
	}
	out, _, err := f.object(r.Number)
	if err != nil {
		return nil
	}
	return out
}

// object returns the value of an object and where in the file it ends.
func (f *PDF) object(number int) (any, int, error) {
	at, ok := f.offsets[number]
	if !ok {
		return nil, 0, fmt.Errorf("there is no object %d", number)
	}
	s := &scanner{src: f.src, pos: at, refs: true}
	for range 3 { // "7 0 obj"
		if _, err := s.value(); err != nil {
			return nil, 0, err
		}
	}
	v, err := s.value()
	if err != nil {
		return nil, 0, fmt.Errorf("object %d: %w", number, err)
	}
	return v, s.pos, nil
}

// stream returns the inflated bytes of a stream object.
func (f *PDF) stream(number int) ([]byte, error) {
	v, end, err := f.object(number)
	if err != nil {
		return nil, err
	}
	d, isDict := v.(Dict)
	length, hasLength := f.resolve(d["Length"]).(float64)
	s := &scanner{src: f.src, pos: end}
	s.skip()
	if !isDict || !hasLength || s.word() != "stream" {
		return nil, fmt.Errorf("object %d is no stream", number)
	}
	if s.starts("\r") {
		s.pos++
	}
	from, to := s.pos+1, s.pos+1+int(length) // past the line feed
	if to > len(f.src) {
		return nil, fmt.Errorf("stream %d runs past the end of the file", number)
	}
	s.pos = to
	if s.skip(); s.word() != "endstream" {
		return nil, fmt.Errorf("stream %d does not end where its length says", number)
	}
	raw := f.src[from:to]
	switch d["Filter"] {
	case nil:
		return raw, nil
	case Name("FlateDecode"):
		z, err := zlib.NewReader(bytes.NewReader(raw))
		if err != nil {
			return nil, fmt.Errorf("stream %d: %w", number, err)
		}
		return io.ReadAll(z)
	}
	return nil, fmt.Errorf("stream %d is packed with %v, which is not read here", number, d["Filter"])
}
