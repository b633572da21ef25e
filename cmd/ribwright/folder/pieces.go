package folder

import "io"

// pieces are the bytes of a file that is made, piece behind piece: a single buffer would be
// copied each time that it has to grow, and the last copy would be larger than the file.
type pieces [][]byte

// The room of the first piece, bytes, and how often the next one has twice as much: small files
// take little, and a disk gets large ones in few steps.
const (
	firstPiece = 4 << 10
	doubled    = 5
)

// Write takes more of the file.
func (p *pieces) Write(more []byte) (int, error) {
	n := len(more)
	for len(more) > 0 {
		last := len(*p) - 1
		if last < 0 || len((*p)[last]) == cap((*p)[last]) {
			*p = append(*p, make([]byte, 0, firstPiece<<min(len(*p), doubled)))
			last++
		}
		end := &(*p)[last]
		take := min(len(more), cap(*end)-len(*end))
		*end, more = append(*end, more[:take]...), more[take:]
	}
	return n, nil
}

// writeTo writes the file.
func (p pieces) writeTo(w io.Writer) error {
	for _, piece := range p {
		if _, err := w.Write(piece); err != nil {
			return err
		}
	}
	return nil
}
