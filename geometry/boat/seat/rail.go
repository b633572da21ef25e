package seat

import "math"

// rail works out a rail and its hangers.
func (b Boat) rail(s *Seat, r *Rail, w window, forward float64) error {
	r.Station, r.TopZ = s.At+forward, s.railZ(forward)
	g := b.Design.Gunwale
	h := Hanger{Wide: w.wide(s.Hung.Width), Block: leastBlock, high: float64(g.Height), wide: float64(g.Width)}
	h.Down = boltDown(h.high)
	if h.high < leastHigh {
		return s.fault("cannot hang from a gunwale %.0f mm high; accepted: %.0f mm or more for its bolts (gunwale.height), or make it a saddle", h.high, leastHigh)
	}
	b.place(&h, r, w)
	if low := b.Gunwale.EdgeAt(h.Station, -h.wide/2, 0).Z - 8; r.TopZ > low {
		return s.fault("would have its rails beside the gunwale; accepted: %.0f mm over the floor or less (seat.height)", math.Floor(s.Height-(r.TopZ-low)))
	}
	sides, err := b.beside(h)
	if err != nil {
		return s.fault("cannot hang: %v", err)
	}
	for ; h.Block <= mostBlock; h.Block += 2 {
		if h.Block > leastBlock {
			b.place(&h, r, w)
		}
		if h.set(r, s.Hung.Depth); h.free(sides) {
			r.Hanger = h
			return s.comesOut(h)
		}
	}
	return s.fault("would have hangers that touch the ribs at their feet, %.0f mm over the floor; make it higher, put it nearer midship, or make it a saddle", h.Point(h.Length, 0).Y-b.Hull.FloorZ(h.Station))
}

// comesOut refuses gunwales that lean inward so far that a hanger's foot, pushed against the
// spreader, still does not come up past them.
func (s *Seat) comesOut(h Hanger) error {
	if most := math.Asin(toSpreader / h.Length); h.Lean() < -most {
		return s.fault("would not come out past gunwales that lean inward by %.1f deg; accepted: a gunwale.tilt of %.1f deg or more, or make it a saddle (kind = \"saddle\")", -h.Lean()*180/math.Pi, -math.Floor(most*1800/math.Pi)/10)
	}
	return nil
}

// place stands a hanger where the rail goes through its middle, or as near as its bolts may.
func (b Boat) place(h *Hanger, r *Rail, w window) {
	x, lo, hi := r.Station-w.shift, w.lo-w.shift, w.hi-w.shift
	for range 3 { // each step leaves a hundredth
		x = min(max(x, lo), hi)
		h.stands = b.board(x, h.wide, h.high)
		h.Off = h.stands.meets(r.Station, r.TopZ, h.Block+Thick/2).X
		h.Station = r.Station - h.Off*h.stands.fore.X
		x += h.Off * h.stands.fore.X
	}
	h.Skew = abs(math.Atan(h.stands.fore.Y / h.stands.fore.X))
	mark := b.Gunwale.OnStock(min(max(x, lo), hi))
	h.Bolts = [2]float64{mark - w.apart/2, mark + w.apart/2}
}

// boltDown is how far under the gunwale's upper edge bolts stand: the lower, the more of
// the hanger stands over them; the higher, the harder the gunwale splits. In a low one
// their nuts' seats want wood under them.
func boltDown(high float64) float64 {
	return math.Min(math.Round(0.6*high), math.Floor(high-NutSeat/2-leastWall))
}

// set works out lengths from the block's thickness.
func (h *Hanger) set(r *Rail, deep float64) {
	down := func(z, in float64) float64 { return h.stands.meets(r.Station, z, in).Y }
	h.Slot = down(r.TopZ, h.Block+Thick/2)
	h.Length = down(r.TopZ-deep, h.Block+Thick/2) + relish
	mid := func(in float64) float64 {
		p := h.stands.meets(r.Station, r.TopZ-deep/2, in)
		return h.stands.at(p.X, p.Y, in).Y
	}
	r.Length, r.Between = 2*mid(h.Block), 2*mid(h.Block+Thick)
}
