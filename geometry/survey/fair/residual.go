package fair

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/survey/offsets"
)

// measure compares the finished design, as its file will hold it, with every
// point of the table.
func (f *fit) measure() (*Result, error) {
	h, err := f.hullNow()
	if err != nil {
		return nil, err
	}
	out := &Result{Design: f.d}
	sum, n := 0.0, 0
	for _, half := range []struct {
		stations []offsets.Station
		end      hull.End
		side     float64
	}{{f.aft, h.Stern, -1}, {f.bow, h.Bow, 1}} {
		for _, s := range half.stations {
			if half.side < 0 && s.X == 0 {
				continue
			}
			r := Residual{Station: half.side * s.X, Points: len(s.Points)}
			squares := 0.0
			for _, m := range f.missesAt(h, half.end, s, half.side) {
				m.Station = r.Station
				squares += m.Off * m.Off
				if m.Off > r.Worst.Off {
					r.Worst = m
				}
			}
			r.RMS = math.Sqrt(squares / float64(r.Points))
			sum, n = sum+squares, n+r.Points
			if r.Worst.Off > out.Worst.Off {
				out.Worst = r.Worst
			}
			out.Stations = append(out.Stations, r)
		}
	}
	sortStations(out.Stations)
	out.RMS = math.Sqrt(sum / float64(n))
	return out, nil
}

func sortStations(all []Residual) {
	for i := range all {
		for k := i; k > 0 && all[k].Station < all[k-1].Station; k-- {
			all[k], all[k-1] = all[k-1], all[k]
		}
	}
}

// missesAt measures a section against the hull's own section, and a narrow end
// against the profile.
func (f *fit) missesAt(h *hull.Hull, e hull.End, s offsets.Station, side float64) []Miss {
	if s.Sheer().X >= narrow && len(s.Points) >= 3 {
		if sec, err := h.Section(side * s.X); err == nil {
			if o, err := f.holdAt(h, side*s.X).outline(sec); err == nil {
				return o.misses(s)
			}
		}
	}
	out := make([]Miss, len(s.Points))
	for i, p := range s.Points {
		off := profileOff(h, e, geometry.Point{X: s.X, Y: p.Y}, side)
		// Beside the stem's own half thickness what is wider is off too.
		out[i] = Miss{s.X, p, math.Hypot(off, math.Max(0, p.X-float64(f.d.Bow.Siding)/2))}
	}
	return out
}
