// Package fleet writes what was found of boats put into one another: as JSON for
// other programs and as a page for a terminal. The names of the JSON fields are a
// promise; they are added to, never changed. Lengths end in _mm; stations are
// from midship and heights over the baseline of the lower boat of a pair.
package fleet

import (
	"encoding/json"
	"io"
	"math"

	"ribwright/geometry/trial/stow"
)

type document struct {
	Room   number     `json:"room_asked_mm"`
	LeftIn bool       `json:"thwarts_left_in"`
	Nests  bool       `json:"nests"`
	Order  []boat     `json:"order"` // from the outermost in
	Pairs  []pair     `json:"pairs"`
	Stack  stack      `json:"stack"`
	Fitted []fitted   `json:"fitted"`
	After  *stack     `json:"stack_fitted"`
	Limits []judgment `json:"limits"`
}

type boat struct {
	Title  string   `json:"title"`
	Mass   number   `json:"mass_kg"`
	X      number   `json:"x_mm"` // of its midship, in the axes of the first boat
	Z      number   `json:"z_mm"` // of its baseline
	Turned bool     `json:"turned"`
	Out    []string `json:"take_out"`
}

type pair struct {
	Lower  string   `json:"lower"`
	Upper  string   `json:"upper"`
	Nests  bool     `json:"nests"`
	X      number   `json:"x_mm"`
	Z      number   `json:"z_mm"`
	Turned bool     `json:"turned"`
	Touch  number   `json:"first_contact_z_mm"`
	First  *contact `json:"first_contact"`
	Seat   number   `json:"seat_z_mm"`
	Lift   number   `json:"above_seat_mm"`
	Floor  *contact `json:"least_floor"`
	Sides  *contact `json:"least_sides"`
	Ends   *contact `json:"least_ends"`
	Across *contact `json:"least_cross_pieces"`
	Bound  *contact `json:"held_up_by"`
	Short  number   `json:"lacking_mm"`
	Cures  []cure   `json:"cures"`
}

type contact struct {
	Room    number `json:"room_mm"`
	Station number `json:"station_mm"`
	Half    number `json:"half_breadth_mm"`
	Height  number `json:"height_mm"`
	Lower   string `json:"lower_part"`
	Upper   string `json:"upper_part"`
}

type cure struct {
	Boat    string  `json:"boat"`
	Which   string  `json:"which"` // "upper" or "lower"
	Measure string  `json:"measure"`
	MM      *number `json:"by_mm,omitempty"`
	Deg     *number `json:"by_deg,omitempty"`
}

type stack struct {
	Height number `json:"height_mm"`
	Length number `json:"length_mm"`
	Width  number `json:"width_mm"`
	Mass   number `json:"mass_kg"`
	Nests  bool   `json:"nests"`
}

type fitted struct {
	Title  string `json:"title"`
	Slug   string `json:"slug"`
	Beam   number `json:"beam_mm"`
	Length number `json:"length_mm"`
}

type judgment struct {
	About string `json:"about"` // "roof", "door"
	Limit number `json:"limit"`
	Value number `json:"value"`
	Unit  string `json:"unit"`
	OK    bool   `json:"ok"`
}

// number is written with three decimals and as null when it is no number.
type number float64

// MarshalJSON writes the number.
func (n number) MarshalJSON() ([]byte, error) {
	v := math.Round(float64(n)*1000) / 1000
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(v + 0) // no minus zero
}

// Encode writes the report as JSON.
//
// Errors: the writer's own.
func Encode(w io.Writer, r *stow.Report) error {
	s := r.Stack
	d := document{Room: number(r.Options.Pad), LeftIn: r.Options.LeftIn, Nests: s.Nests, Stack: measures(s),
		Fitted: []fitted{}, Limits: judgments(r)}
	for i, b := range s.Boats {
		p := s.Places[i]
		d.Order = append(d.Order, boat{b.Title, number(b.Mass), number(p.X), number(p.Z), p.Turned, takenOut(s, i)})
	}
	for i, p := range s.Pairs {
		d.Pairs = append(d.Pairs, pairOf(p, r.Cures[i]))
	}
	for _, b := range r.Fitted {
		if b != nil {
			f := b.Frame.Design
			d.Fitted = append(d.Fitted, fitted{b.Title, f.Slug(), number(f.Hull.Beam), number(f.Hull.Length)})
		}
	}
	if r.After != nil {
		m := measures(r.After)
		d.After = &m
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(d)
}

func measures(s *stow.Stack) stack {
	return stack{number(s.Height), number(s.Length), number(s.Width), number(s.Mass), s.Nests}
}

// takenOut names the thwarts that must come out of a boat of the stack.
func takenOut(s *stow.Stack, i int) []string {
	out := []string{}
	for _, n := range s.Out[i] {
		out = append(out, s.Boats[i].Frame.Thwarts[n].Name)
	}
	return out
}

func pairOf(p *stow.Pair, cures []stow.Cure) pair {
	out := pair{
		Lower: p.Lower.Title, Upper: p.Upper.Title, Nests: p.Nests,
		X: number(p.Place.X), Z: number(p.Place.Z), Turned: p.Place.Turned,
		Touch: number(p.Touch), First: contactOf(p.First), Seat: number(p.Seat), Lift: number(p.Lift()),
		Floor: contactOf(p.Rooms[stow.Floor]), Sides: contactOf(p.Rooms[stow.Sides]),
		Ends: contactOf(p.Rooms[stow.Ends]), Across: contactOf(p.Rooms[stow.Across]),
		Bound: contactOf(p.Bound), Short: number(p.Short), Cures: []cure{},
	}
	for _, c := range cures {
		k := cure{Boat: c.Boat.Title, Which: "lower", Measure: c.Measure.String()}
		if c.Upper {
			k.Which = "upper"
		}
		if v := number(c.By); c.Measure == stow.Flare {
			v = number(c.By * 180 / math.Pi)
			k.Deg = &v
		} else {
			k.MM = &v
		}
		out.Cures = append(out.Cures, k)
	}
	return out
}

func contactOf(c stow.Contact) *contact {
	if !c.Meets() {
		return nil
	}
	return &contact{number(c.Room), number(c.At.X), number(c.At.Y), number(c.At.Z), c.Lower.Name, c.Upper.Name}
}

func judgments(r *stow.Report) []judgment {
	out := []judgment{}
	if r.Limits.Roof > 0 {
		out = append(out, judgment{"roof", number(r.Limits.Roof), number(r.Stack.Mass), "kg", r.Over() <= 0})
	}
	if r.Limits.Door > 0 {
		level, side := r.Through()
		out = append(out, judgment{"door", number(r.Limits.Door), number(math.Min(r.Stack.Width, r.Stack.Height)), "mm", level || side})
	}
	return out
}
