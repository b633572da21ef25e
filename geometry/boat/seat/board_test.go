package seat_test

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/seat"
)

// rails are those of both hung boats, each with its frame and its seat.
func rails(t *testing.T, each func(f *frame.Frame, s seat.Seat, r seat.Rail)) {
	t.Helper()
	for _, name := range []string{"lake", "river"} {
		f := frametest.Shipped(t, name, nil)
		for _, s := range f.Seats {
			each(f, s, s.Hung.Front)
			each(f, s, s.Hung.After)
		}
	}
}

// wall is the gunwale's inner face where a hanger hangs, from the gunwale's own edges: a
// place on its upper edge midway between the bolts' marks, the way forward along it, and the way in.
func wall(f *frame.Frame, h seat.Hanger) (top, fore, in geometry.Point3) {
	g := &f.Gunwale
	x := g.StationOf((h.Bolts[0] + h.Bolts[1]) / 2)
	a, b := g.At(x-2, -g.Width/2, g.Height), g.At(x+2, -g.Width/2, g.Height)
	fore = b.Sub(a).Scale(1 / b.Sub(a).Norm())
	foot := g.At(x, -g.Width/2, 0)
	in = foot.Sub(g.At(x, -g.Width/2, g.Height)).Cross(fore)
	in = in.Scale(1 / in.Norm())
	return foot.Sub(fore.Cross(in).Scale(g.Height)), fore, in // the marks are carried square up the face
}

// TestRailGoesThrough: the four edges of a level rail, athwart, are followed through the
// leaning, slanting board. Where each meets either face it meets a corner of that mouth:
// found from the gunwale's own edges by planes, not from the board.
func TestRailGoesThrough(t *testing.T) {
	rails(t, func(f *frame.Frame, s seat.Seat, r seat.Rail) {
		h := r.Hanger
		top, fore, in := wall(f, h)
		down := fore.Cross(in)
		for inboard, deep := range map[bool]float64{false: h.Block, true: h.Block + seat.Thick} {
			for i, c := range r.Mouth(s.Hung.Width, s.Hung.Depth, inboard) {
				p := geometry.Point3{X: r.Station - s.Hung.Width/2, Z: r.TopZ}
				if i == 1 || i == 2 {
					p.X += s.Hung.Width
				}
				if i > 1 {
					p.Z -= s.Hung.Depth
				}
				// On the plane so far in from the face: in.(p - top) = deep gives p.Y.
				p.Y = top.Y + (deep-in.X*(p.X-top.X)-in.Z*(p.Z-top.Z))/in.Y
				near(t, s.Name+": corner forward", c.X, p.Sub(top).Dot(fore), 0.1)
				near(t, s.Name+": corner down", c.Y, p.Sub(top).Dot(down), 0.1)
				if beside := h.Wide/2 - math.Abs(c.X); beside < 7.5 {
					t.Errorf("%s: %.1f mm of wood beside the slot", s.Name, beside)
				}
			}
		}
	})
}

// TestSlotPared: what is sawn square through the board lies in both mouths, touches the
// four sides that they have in common, and a rail 40 mm wide wants 41.2 mm at 13.8 degrees in
// plan (40/cos 13.8, by hand).
func TestSlotPared(t *testing.T) {
	rails(t, func(f *frame.Frame, s seat.Seat, r seat.Rail) {
		a, b := r.Mouth(s.Hung.Width, s.Hung.Depth, true), r.Mouth(s.Hung.Width, s.Hung.Depth, false)
		by := r.Shift()
		for i := range a {
			if off := b[i].Sub(a[i]).Sub(by).Norm(); off > 1e-6 {
				t.Errorf("%s: the mouths are not alike by %g mm", s.Name, off)
			}
		}
		for _, p := range r.Through(s.Hung.Width, s.Hung.Depth) {
			for _, m := range [][4]geometry.Point{a, b} {
				for i := range m {
					if side := m[(i+1)%4].Sub(m[i]).Cross(p.Sub(m[i])); side < -1e-6 {
						t.Errorf("%s: %v of the opening is outside %v", s.Name, p, m)
					}
				}
			}
		}
		turn := math.Atan(math.Tan(r.Hanger.Skew) / math.Cos(f.Gunwale.Tilt))
		near(t, s.Name+": mouth's breadth", a[1].X-a[0].X, s.Hung.Width/math.Cos(turn), 0.1)
		near(t, s.Name+": mouths apart along", math.Abs(by.X), 20*math.Tan(turn), 0.1)
		near(t, s.Name+": and in height", by.Y, -20*math.Tan(f.Gunwale.Tilt)/math.Cos(turn), 0.3)
		// The gunwales close in toward the nearer end, and the outboard mouth lies the other way.
		if by.X*r.Station > 0 {
			t.Errorf("%s at %.0f mm: the outboard mouth is %.1f mm forward", s.Name, r.Station, by.X)
		}
	})
	r := frametest.Shipped(t, "river", nil).Seats[1].Hung.After
	a := r.Mouth(40, 25, true)
	near(t, "breadth at 13.8 degrees", a[1].X-a[0].X, 41.2, 0.1)
}

// TestHungFromAbove: with the bolts out a seat comes down between its blocks in one piece, its
// hangers pinned, and touches them only when it is home: every corner of each hanger's outer
// face, so far up, is inboard of the block's face as it comes down.
func TestHungFromAbove(t *testing.T) {
	rails(t, func(f *frame.Frame, s seat.Seat, r seat.Rail) {
		h := r.Hanger
		top, fore, in := wall(f, h)
		down := fore.Cross(in)
		for _, c := range []geometry.Point{{X: -h.Wide / 2}, {X: h.Wide / 2}, {X: -h.Wide / 2, Y: h.Length}, {X: h.Wide / 2, Y: h.Length}} {
			home := fore.Scale(c.X).Add(down.Scale(c.Y)).Add(in.Scale(h.Block))
			for up := 0.0; up <= 300; up += 10 {
				if gap := home.Add(geometry.Point3{Z: up}).Dot(in) - h.Block; gap < up*math.Sin(f.Gunwale.Tilt)*0.95-1e-9 {
					t.Errorf("%s, %.0f mm up: a hanger is %.1f mm from its block", s.Name, up, gap)
				}
			}
		}
		if home := top.Add(in.Scale(h.Block + seat.Thick)); home.Y < s.Wide/2+seat.SpreadWide {
			t.Errorf("%s: its spreaders reach into the hangers", s.Name)
		}
	})
}

// TestHangsInTheMiddle: half-way through a hanger the rail lies in its middle, though the board
// stands inboard of its bolts at a slant and square to a rising sheer: the marks on the stock
// are moved for it. By hand for a gunwale 13.8 degrees off the middle line: some 33 mm in, 8 mm.
func TestHangsInTheMiddle(t *testing.T) {
	rails(t, func(f *frame.Frame, s seat.Seat, r seat.Rail) {
		h := r.Hanger
		top, fore, in := wall(f, h)
		near(t, s.Name+": off its middle", h.Off, 0, 0.05)
		p := top.Add(fore.Cross(in).Scale(h.Slot)).Add(in.Scale(h.Block + seat.Thick/2))
		near(t, s.Name+": station of its middle", p.X, r.Station, 0.15)
	})
}
