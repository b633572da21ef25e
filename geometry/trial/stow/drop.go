package stow

import (
	"math"

	"ribwright/geometry"
)

// Drop returns how high the baseline of the boat above comes to lie when it is
// lowered until it touches, its midship at x, and where it touches.
//
// How: over each place of the plan the boat below has a top and the boat above
// an underside; the least height is the greatest top less underside. Both are
// straight between the corners that are looked at.
// Returns: a contact whose Room is 0; with nothing in the way minus infinity
// and no contact.
func Drop(in *Inside, o *Outside, x float64, turned bool) (float64, Contact) {
	return drop(in, o, Place{X: x, Turned: turned}, 0, anyZone)
}

func anyZone(Zone) bool { return true }

// drop is Drop with the boat above grown by pad sideways and down, and for
// some zones only.
func drop(in *Inside, o *Outside, p Place, pad float64, counts func(Zone) bool) (float64, Contact) {
	best, contact := math.Inf(-1), nowhere()
	p.Z = 0
	var buf []geometry.Point
	for _, e := range in.edges {
		a, b := p.local(e.A), p.local(e.B)
		y0, y1 := max(0, min(a.Y, b.Y)-pad), max(a.Y, b.Y)
		if max(a.Z, b.Z)+pad-min(o.table.lowest(a.X, y0, y1), o.table.lowest(b.X, y0, y1)) <= best {
			continue
		}
		try := func(q geometry.Point3, pts []geometry.Point) {
			under, piece, ok := under(pts, max(0, q.Y-pad))
			if !ok {
				return
			}
			part := in.parts[e.Part]
			if h := q.Z + pad - under; h > best && counts(e.zone(part.Kind, o.parts[piece].Kind)) {
				best = h
				at := q
				at.Z -= h // where it lies once the boat has come down by that much less
				contact = Contact{0, Place{X: p.X, Z: h, Turned: p.Turned}.Outer(at), part, o.parts[piece]}
			}
		}
		pts := o.slice(a.X, buf)
		if buf = pts; pts == nil {
			buf = make([]geometry.Point, 0, 64)
		} else {
			try(a, pts)
		}
		if a.X != b.X {
			if pts = o.slice(b.X, buf); pts != nil {
				buf = pts
				try(b, pts)
			}
			continue
		}
		if pts == nil {
			continue
		}
		try(b, pts)
		for _, c := range pts { // the corners of the boat above over the line
			if t := (c.X + pad - a.Y) / (b.Y - a.Y); t > 0 && t < 1 {
				try(geometry.Point3{X: a.X, Y: c.X + pad, Z: a.Z + t*(b.Z-a.Z)}, pts)
			}
		}
	}
	return best, contact
}

// Squeeze returns the least room sideways, a side, between the boats at a place,
// stems, breasthooks, cross pieces and the floor left out: how far the boat
// above could widen before it met the one below. Below zero they overlap by that
// much.
func Squeeze(in *Inside, o *Outside, p Place) Contact {
	least := nowhere()
	var buf []geometry.Point
	for _, e := range in.edges {
		part := in.parts[e.Part]
		if part.Kind == Stem || part.Kind == Breasthook || part.Kind == CrossPiece {
			continue
		}
		a, b := p.local(e.A), p.local(e.B)
		if min(a.Y, b.Y)-o.Half >= least.Room {
			continue
		}
		try := func(q geometry.Point3, pts []geometry.Point) {
			y, piece, ok := breadth(pts, q.Z)
			if !ok || e.zone(part.Kind, o.parts[piece].Kind) != Sides {
				return
			}
			if room := q.Y - y; room < least.Room {
				least = Contact{room, p.Outer(q), part, o.parts[piece]}
			}
		}
		pts := o.slice(a.X, buf)
		if pts == nil {
			continue
		}
		buf = pts
		try(a, pts)
		if a.X != b.X {
			continue // the other end is the next edge's first, or lies as near
		}
		try(b, pts)
		for _, c := range pts {
			if t := (c.Y - a.Z) / (b.Z - a.Z); t > 0 && t < 1 {
				try(geometry.Point3{X: a.X, Y: a.Y + t*(b.Y-a.Y), Z: c.Y}, pts)
			}
		}
	}
	return least
}
