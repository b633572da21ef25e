package cutlist

import "fmt"

// Piece is one length to crosscut: a whole stick or a part of a scarfed one.
type Piece struct {
	Stick  int // number in the list of sticks
	Number int // of the piece in its stick, from aft, from 1
	Of     int // pieces of the stick
	Length float64
}

// Cutting is how a stick is made up of pieces.
type Cutting struct {
	Pieces []Piece
	Joints []Joint
}

// maker splits sticks for stock of a length, staggering scarfs with those placed
// before in the sticks beside.
type maker struct {
	sticks []Stick
	placed map[string][]Joint
}

// split returns the pieces of stick i from stock of the given length.
//
// Errors: a stick that is too long and may not or cannot be scarfed.
func (m *maker) split(i int, stock float64) (Cutting, error) {
	s := &m.sticks[i]
	if s.Run == nil {
		if s.Length > stock {
			return Cutting{}, fmt.Errorf("is %.0f mm long and must be one piece; the longest board is %.0f mm", s.Length, stock)
		}
		return Cutting{Pieces: []Piece{{i, 1, 1, s.Length}}}, nil
	}
	if s.Length <= stock && len(s.Run.Fixed) == 0 {
		return Cutting{Pieces: []Piece{{i, 1, 1, s.Length}}}, nil
	}
	joints, err := s.Run.joints(stock, m.placed[s.Run.Beside])
	if err != nil {
		return Cutting{}, fmt.Errorf("is %.0f mm long, the longest board %.0f mm: %w", s.Length, stock, err)
	}
	m.placed[s.Run.Beside] = append(m.placed[s.Run.Beside], joints...)
	out := Cutting{Joints: joints}
	from := s.Run.Aft
	for k := 0; k <= len(joints); k++ {
		to, next := s.Run.Fore, 0.0
		if k < len(joints) {
			to, next = joints[k].Middle+joints[k].Length/2, joints[k].Middle-joints[k].Length/2
		}
		out.Pieces = append(out.Pieces, Piece{i, k + 1, len(joints) + 1, to - from})
		from = next
	}
	return out, nil
}
