package fan

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
)

// Scale is a scale of readings, mm.
type Scale struct{ From, To float64 }

// share is where a reading lies on the scale, 0 to 1 within it.
func (s Scale) share(v float64) float64 {
	if s.To == s.From {
		return 0
	}
	return (v - s.From) / (s.To - s.From)
}

// holds reports whether a reading lies on the scale.
func (s Scale) holds(v float64) bool { return v >= s.From-1e-9 && v <= s.To+1e-9 }

// Ray is one mark over the board's scales.
type Ray struct {
	Mark
	Net  bool          // read by the beam too: between two rays
	Ends [2][2]float64 // mm from the zero: at the least and the most beam, at the least and the most reading; alike for any beam without a net
}

// Board serves the builders of a class whose boats are of one family, water, skill and
// section.
type Board struct {
	Rib, Half, Beam Scale
	Rays            []Ray // by kind, rib and number
	On              []Boat
	Off             []Verdict
}

// Verdict is why a builder's boat is not on a board.
type Verdict struct {
	Boat
	Why string // in a line, with the rib and by how much
}

// spare is the share of a tolerance that a single ray may use up: the rest is for the
// eye and the pencil. What uses more is drawn as a net.
const spare = 0.5

// Make fits a board to boats. A boat that would be off by more than the tolerances is left
// out and told with its worst mark, the worst boat first, until all others fit: rays go
// through the boats that are on the board alone. What fits again then comes back.
//
// Errors: fewer than two boats, which share nothing.
func Make(boats []Boat) (*Board, error) {
	if len(boats) < 2 {
		return nil, fmt.Errorf("a fan board serves two builders or more of one family, water, skill and section; here is %d", len(boats))
	}
	like := usual(boats)
	on := slices.DeleteFunc(slices.Clone(boats), func(b Boat) bool { return like.lacks(b) != "" })
	var out *Board
	for {
		out = through(on, like)
		worst, most := -1, 1.0
		for i, b := range on {
			if _, share := out.worst(b); share > most {
				worst, most = i, share
			}
		}
		if worst < 0 {
			break
		}
		on = slices.Delete(on, worst, worst+1)
	}
	for _, b := range boats {
		if why := cmp.Or(like.lacks(b), out.Refuses(b)); why != "" {
			out.Off = append(out.Off, Verdict{b, why})
		} else {
			out.On = append(out.On, b)
		}
	}
	return out, nil
}

// marked is which marks boats have, in order.
type marked []Mark

// usual are the marks that most of the boats have, the first of them where as many have
// others.
func usual(boats []Boat) marked {
	var best marked
	most := 0
	for _, b := range boats {
		own := marksOf(b)
		n := 0
		for _, o := range boats {
			if slices.Equal(own, marksOf(o)) {
				n++
			}
		}
		if n > most {
			best, most = own, n
		}
	}
	return best
}

func marksOf(b Boat) marked {
	return slices.SortedFunc(maps.Keys(b.Marks), func(a, b Mark) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Rib, b.Rib), cmp.Compare(a.Number, b.Number))
	})
}

// lacks tells the first mark that a boat has and others have not, or the other way round;
// "" where it has the same.
func (m marked) lacks(b Boat) string {
	for _, k := range m {
		if _, has := b.Marks[k]; !has {
			return fmt.Sprintf("it has no %s", k)
		}
	}
	for _, k := range marksOf(b) {
		if !slices.Contains(m, k) {
			return fmt.Sprintf("it has a %s, and the others have none", k)
		}
	}
	return ""
}

// through fits every mark over the boats.
func through(boats []Boat, marks marked) *Board {
	out := &Board{Rib: scaleOf(boats, func(b Boat) float64 { return b.Rib }), Half: scaleOf(boats, func(b Boat) float64 { return b.Half }), Beam: scaleOf(boats, func(b Boat) float64 { return b.Beam })}
	for _, m := range marks {
		points := make([]point, len(boats))
		for i, b := range boats {
			points[i] = point{out.scale(m.Kind).share(b.at(m.Kind)), out.Beam.share(b.Beam), b.Marks[m]}
		}
		ray := Ray{Mark: m, Ends: fitted(points, false)}
		if corners(ray.Ends).worst(points) > spare*m.Kind.Tolerance() {
			ray.Net, ray.Ends = true, fitted(points, true)
		}
		out.Rays = append(out.Rays, ray)
	}
	return out
}

func scaleOf(boats []Boat, of func(Boat) float64) Scale {
	out := Scale{math.Inf(1), math.Inf(-1)}
	for _, b := range boats {
		out.From, out.To = math.Min(out.From, of(b)), math.Max(out.To, of(b))
	}
	return out
}

// scale is the one at which a kind of mark is read.
func (b *Board) scale(k Kind) Scale {
	if k == Mortise {
		return b.Half
	}
	return b.Rib
}

// Read is where a ray lies for a builder, mm.
func (b *Board) Read(r Ray, at Reading) float64 {
	return corners(r.Ends).at(b.scale(r.Kind).share(at.at(r.Kind)), b.Across(at))
}

// Across is how far across a net a builder reads, from the ray of the least beam, 0, to
// that of the most, 1.
func (b *Board) Across(at Reading) float64 { return b.Beam.share(at.Beam) }

// worst is the mark of a boat that lies farthest off its ray, as a share of its tolerance.
func (b *Board) worst(boat Boat) (ray Ray, share float64) {
	for _, r := range b.Rays {
		if s := math.Abs(b.Read(r, boat.Reading)-boat.Marks[r.Mark]) / r.Kind.Tolerance(); s > share {
			ray, share = r, s
		}
	}
	return ray, share
}

// Refuses tells why a boat with the board's marks cannot use it, by the mark that is
// worst; "" where it can.
func (b *Board) Refuses(boat Boat) string {
	for _, s := range []struct {
		what string
		on   Scale
		at   float64
	}{{"midship rib", b.Rib, boat.Rib}, {"half length", b.Half, boat.Half}, {"beam", b.Beam, boat.Beam}} {
		if !s.on.holds(s.at) {
			return fmt.Sprintf("its %s of %.0f mm is off the board, which goes from %.0f to %.0f mm", s.what, s.at, s.on.From, s.on.To)
		}
	}
	r, share := b.worst(boat)
	if share <= 1 {
		return ""
	}
	twice := 1.0 // lengths are told whole
	if r.Kind == Length {
		twice = 2
	}
	return fmt.Sprintf("the %s would be %.1f mm off; accepted: %.0f mm", r.Mark, twice*share*r.Kind.Tolerance(), twice*r.Kind.Tolerance())
}
