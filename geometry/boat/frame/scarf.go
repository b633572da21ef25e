package frame

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Scarf is the stretch of gunwale in which the plies of one place are joined.
type Scarf struct{ Middle, Length float64 } // mm along the stock

// Zone is a stretch of gunwale stock, mm from midship.
type Zone struct{ From, To float64 }

// scarfClear is the whole wood kept between a mortise and a scarf, mm. Common
// practice, no source.
const scarfClear = 5

// placeScarfs works out where no scarf may lie and refuses one that does: not
// across a mortise, not under a cross piece, not in the middle third, where the
// gunwale is bent most. Common practice, no source.
func (f *Frame) placeScarfs() error {
	g := &f.Gunwale
	third := (g.Fore - g.Aft) / 3
	zones := []Zone{{g.Aft, g.Aft + leastEnd}, {g.Aft + third, g.Fore - third}, {g.Fore - leastEnd, g.Fore}}
	for _, m := range g.Mortises {
		lo, hi := m.Ends()
		zones = append(zones, Zone{lo - scarfClear, hi + scarfClear})
	}
	for _, t := range f.Design.Thwarts {
		at, half := float64(t.At), float64(t.Width)/2
		zones = append(zones, Zone{g.Line.Length(at - half), g.Line.Length(at + half)})
	}
	g.NoScarf = Merged(zones)
	for i, s := range g.Scarfs {
		for _, o := range g.Scarfs[:i] {
			if gap := math.Abs(s.Middle-o.Middle) - s.Length; gap < s.Length {
				return fmt.Errorf("the scarfs at %.0f and %.0f mm leave %.0f mm between them; stagger them by a scarf's length of %.0f mm at least", o.Middle, s.Middle, math.Max(0, gap), s.Length)
			}
		}
		from, to := s.Middle-s.Length/2, s.Middle+s.Length/2
		if from < g.Aft || to > g.Fore {
			return fmt.Errorf("the scarf at %.0f mm runs from %.0f to %.0f mm along the stock, past its end; %s", s.Middle, from, to, g.nearestRoom(s))
		}
		for _, z := range g.NoScarf {
			if to < z.From || from > z.To {
				continue
			}
			return fmt.Errorf("the scarf at %.0f mm runs from %.0f to %.0f mm along the stock, into the stretch from %.0f to %.0f mm that mortises, cross pieces or the middle third need whole; %s",
				s.Middle, from, to, z.From, z.To, g.nearestRoom(s))
		}
	}
	return nil
}

// Merged joins zones that touch and sorts them from aft forward.
func Merged(zones []Zone) []Zone {
	slices.SortFunc(zones, func(a, b Zone) int { return cmp.Compare(a.From, b.From) })
	var out []Zone
	for _, z := range zones {
		if n := len(out); n > 0 && z.From <= out[n-1].To {
			out[n-1].To = math.Max(out[n-1].To, z.To)
			continue
		}
		out = append(out, z)
	}
	return out
}

// ScarfRooms returns the stretches between the no-scarf zones that are long
// enough for a scarf of the given length, mm.
func (g *Gunwale) ScarfRooms(length float64) []Zone {
	var out []Zone
	for i := 1; i < len(g.NoScarf); i++ {
		if room := (Zone{g.NoScarf[i-1].To, g.NoScarf[i].From}); room.To-room.From >= length {
			out = append(out, room)
		}
	}
	return out
}

// nearestRoom says where the scarf would fit.
func (g *Gunwale) nearestRoom(s Scarf) string {
	best := math.Inf(1)
	for _, r := range g.ScarfRooms(s.Length) {
		if mid := (r.From + r.To) / 2; math.Abs(mid-s.Middle) < math.Abs(best-s.Middle) {
			best = mid
		}
	}
	if math.IsInf(best, 1) {
		return fmt.Sprintf("no gap is long enough for its %.0f mm; use thinner plies, a wider rib pitch or full-length stock", s.Length)
	}
	return fmt.Sprintf("put its middle at %.0f mm", best)
}
