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
	Ends [2][2]float64 // mm from the zero: for the narrowest and the widest boats of a reading, at the least and the most reading; alike for any beam without a net
}

// Board serves the builders of a class whose boats are of one family, water, skill and
// section.
type Board struct {
	Rib, Half     Scale
	ByRib, ByHalf Beams // of boats by the reading on either scale
	Rays          []Ray // by kind, rib and number
	On            []Boat
	Refused       []Verdict
}

// Beams are what is usual of a reading, so that two rays of a net lie no farther apart than
// the boats that use them.
type Beams struct {
	Usual [2]float64 // mm, at the least and the most reading; straight between
	Off   Scale      // how much narrower and wider than that boats are
}

// Verdict is why a builder's boat is not on a board.
type Verdict struct {
	Boat
	Why string // in a line, with the rib and by how much
}

// spare is the share of a tolerance that a single ray may use up: the rest is for the
// eye and the pencil. What uses more is drawn as a net.
const spare = 0.5

// Make fits a board to boats. While one would be off by more than the tolerances, the boat
// without which the others are read best is left out and told with its worst mark: rays go
// through the boats that are on the board alone. What fits again then comes back.
//
// Errors: fewer than two boats, which share nothing.
func Make(boats []Boat) (*Board, error) {
	if len(boats) < 2 {
		return nil, fmt.Errorf("a fan board serves two builders or more of one family, water, skill and section; here is %d", len(boats))
	}
	like := usual(boats)
	on := slices.DeleteFunc(slices.Clone(boats), func(b Boat) bool { return like.lacks(b) != "" })
	out := through(on, like)
	for len(on) > 2 && out.greatest(on) > 1 {
		on, out = without(on, like, out)
	}
	for _, b := range boats {
		if why := cmp.Or(like.lacks(b), out.Refuses(b)); why != "" {
			out.Refused = append(out.Refused, Verdict{b, why})
		} else {
			out.On = append(out.On, b)
		}
	}
	return out, nil
}

// greatest is how far off the worst of all boats is, as a share of a tolerance.
func (b *Board) greatest(boats []Boat) (out float64) {
	for _, boat := range boats {
		_, share := b.worst(boat)
		out = math.Max(out, share)
	}
	return out
}

// without leaves out the boat without which the others are read best. Least worst error is
// shared by several boats, of which one alone may be the odd one: each of those that are
// off nearly as far as the worst is tried.
func without(boats []Boat, like marked, was *Board) (on []Boat, out *Board) {
	const nearly = 0.9
	most, best := was.greatest(boats), math.Inf(1)
	for i, b := range boats {
		if _, share := was.worst(b); share < nearly*most {
			continue
		}
		others := slices.Delete(slices.Clone(boats), i, i+1)
		board := through(others, like)
		if g := board.greatest(others); g < best {
			on, out, best = others, board, g
		}
	}
	return on, out
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
	out := &Board{Rib: scaleOf(boats, func(b Boat) float64 { return b.Rib }), Half: scaleOf(boats, func(b Boat) float64 { return b.Half })}
	out.ByRib, out.ByHalf = out.usual(boats, Length), out.usual(boats, Mortise)
	for _, m := range marks {
		points := make([]point, len(boats))
		for i, b := range boats {
			points[i] = point{out.scale(m.Kind).share(b.at(m.Kind)), out.Across(m.Kind, b.Reading), b.Marks[m]}
		}
		ray := Ray{Mark: m, Ends: fitted(points, false)}
		if corners(ray.Ends).worst(points) > spare*m.Kind.Tolerance() {
			ray.Net, ray.Ends = true, fitted(points, true)
		}
		out.Rays = append(out.Rays, ray)
	}
	return out
}

// usual draws the usual beam over the readings of a kind of mark.
func (b *Board) usual(boats []Boat, k Kind) (out Beams) {
	points := make([]point, len(boats))
	for i, boat := range boats {
		points[i] = point{u: b.scale(k).share(boat.at(k)), y: boat.Beam}
	}
	out.Usual = fitted(points, false)[0]
	out.Off = scaleOf(boats, func(boat Boat) float64 { return out.off(b.scale(k).share(boat.at(k)), boat.Beam) })
	return out
}

// off is how much wider a boat is than usual, mm, by the share of its reading.
func (m Beams) off(share, beam float64) float64 {
	return beam - (m.Usual[0] + (m.Usual[1]-m.Usual[0])*share)
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

// beams are those by the reading of a kind of mark.
func (b *Board) beams(k Kind) Beams {
	if k == Mortise {
		return b.ByHalf
	}
	return b.ByRib
}

// Read is where a ray lies for a builder, mm.
func (b *Board) Read(r Ray, at Reading) float64 {
	return corners(r.Ends).at(b.scale(r.Kind).share(at.at(r.Kind)), b.Across(r.Kind, at))
}

// Off is how far off a boat's own mark its reading is, mm; for a mark that it has.
func (b *Board) Off(r Ray, boat Boat) float64 {
	return math.Abs(b.Read(r, boat.Reading) - boat.Marks[r.Mark])
}

// Across is how far across a net a builder reads marks of a kind, from the ray of the
// narrowest boats, 0, to that of the widest, 1.
func (b *Board) Across(k Kind, at Reading) float64 {
	m := b.beams(k)
	return m.Off.share(m.off(b.scale(k).share(at.at(k)), at.Beam))
}

// worst is the mark of a boat that lies farthest off its ray, as a share of its tolerance.
func (b *Board) worst(boat Boat) (ray Ray, share float64) {
	for _, r := range b.Rays {
		if s := b.Off(r, boat) / r.Kind.Tolerance(); s > share {
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
		kind Kind
	}{{"midship rib", Length}, {"half length", Mortise}} {
		on, at := b.scale(s.kind), boat.at(s.kind)
		if !on.holds(at) {
			return fmt.Sprintf("its %s of %.0f mm is off the board, which goes from %.0f to %.0f mm", s.what, at, on.From, on.To)
		}
		m := b.beams(s.kind)
		if off := m.off(on.share(at), boat.Beam); !m.Off.holds(off) {
			return fmt.Sprintf("its beam of %.0f mm is off the board, which goes from %.0f to %.0f mm at a %s of %.0f mm", boat.Beam, boat.Beam-off+m.Off.From, boat.Beam-off+m.Off.To, s.what, at)
		}
	}
	r, share := b.worst(boat)
	if share <= 1 {
		return ""
	}
	return fmt.Sprintf("the %s would be %.1f mm off; accepted: %.0f mm", r.Mark, r.Whole(share*r.Kind.Tolerance()), r.Whole(r.Kind.Tolerance()))
}
