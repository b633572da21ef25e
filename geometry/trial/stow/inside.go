package stow

import (
	"errors"
	"math"

	"ribwright/geometry"
)

// Edge is a straight piece of a lower boat's wood that the boat above may meet.
// Of a face both the edges and lines across it are given.
type Edge struct {
	A, B geometry.Point3
	Part int // its number among the parts
}

// Inside is everything of a boat that one lowered into it may touch, on the
// port side; starboard is its mirror.
type Inside struct {
	parts []Part
	edges []Edge
}

// NewInside makes an inside from its edges. Edges must be short where boats
// bend: what lies between two of them is not seen.
// Errors: none given, or one that is no place or names no part.
func NewInside(edges []Edge, parts []Part) (*Inside, error) {
	if len(edges) == 0 {
		return nil, errors.New("an inside needs an edge")
	}
	for _, e := range edges {
		for _, p := range []geometry.Point3{e.A, e.B} {
			if !geometry.Finite(p.X + p.Y + p.Z) {
				return nil, errors.New("an edge ends at a point that is no place")
			}
		}
		if e.Part < 0 || e.Part >= len(parts) {
			return nil, errors.New("an edge belongs to no part")
		}
	}
	return &Inside{parts: parts, edges: edges}, nil
}

func (in *Inside) only(keep func(Edge, Part) bool) *Inside {
	out := &Inside{parts: in.parts}
	for _, e := range in.edges {
		if keep(e, in.parts[e.Part]) {
			out.edges = append(out.edges, e)
		}
	}
	return out
}

// Bare returns the inside with thwarts, yoke and seat bars taken out.
func (in *Inside) Bare() *Inside {
	return in.only(func(_ Edge, p Part) bool { return p.Kind != CrossPiece })
}

// floor returns the edges that may be met in the zone Floor.
func (in *Inside) floor() *Inside {
	return in.only(func(e Edge, p Part) bool { return e.zone(p.Kind, Cloth) == Floor })
}

// level reports whether an edge lies across the boat, flatter than 45 degrees.
func (e Edge) level() bool {
	return e.A.X == e.B.X && math.Abs(e.B.Z-e.A.Z) <= math.Abs(e.B.Y-e.A.Y)
}

// zone says where an edge of a part below and a part of the boat above meet.
func (e Edge) zone(lower, upper Kind) Zone {
	switch {
	case lower == Stem || lower == Breasthook || lower == Gunwale && upper == Keel:
		return Ends
	case lower == CrossPiece:
		return Across
	case lower != Gunwale && e.level():
		return Floor
	}
	return Sides
}
