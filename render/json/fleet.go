package json

import (
	"math"

	"ribwright/geometry/trial/stow"
)

// FleetReport is what was found of boats put into one another.
type FleetReport struct {
	Designs []Header       `json:"designs"` // in the order of the stack
	Room    fixed          `json:"room_asked_mm"`
	LeftIn  bool           `json:"thwarts_left_in"`
	Nests   bool           `json:"nests"`
	Order   []stackedBoat  `json:"order"` // from the outermost in
	Pairs   []stackedPair  `json:"pairs"`
	Stack   stackPart      `json:"stack"`
	Fitted  []fittedPart   `json:"fitted"`
	After   *stackPart     `json:"stack_fitted"`
	Limits  []judgmentPart `json:"limits"`
}

type stackedBoat struct {
	Title  string   `json:"title"`
	Mass   fixed    `json:"mass_kg"`
	X      fixed    `json:"x_mm"` // of its midship, in the axes of the first boat
	Z      fixed    `json:"z_mm"` // of its baseline
	Turned bool     `json:"turned"`
	Out    []string `json:"take_out"`
}

type stackedPair struct {
	Lower  string       `json:"lower"`
	Upper  string       `json:"upper"`
	Nests  bool         `json:"nests"`
	X      fixed        `json:"x_mm"`
	Z      fixed        `json:"z_mm"`
	Turned bool         `json:"turned"`
	Touch  fixed        `json:"first_contact_z_mm"`
	First  *contactPart `json:"first_contact"`
	Seat   fixed        `json:"seat_z_mm"`
	Lift   fixed        `json:"above_seat_mm"`
	Floor  *contactPart `json:"least_floor"`
	Sides  *contactPart `json:"least_sides"`
	Ends   *contactPart `json:"least_ends"`
	Across *contactPart `json:"least_cross_pieces"`
	Bound  *contactPart `json:"held_up_by"`
	Short  fixed        `json:"lacking_mm"`
	Cures  []curePart   `json:"cures"`
}

type contactPart struct {
	Room    fixed  `json:"room_mm"`
	Station fixed  `json:"station_mm"`
	Half    fixed  `json:"half_breadth_mm"`
	Height  fixed  `json:"height_mm"`
	Lower   string `json:"lower_part"`
	Upper   string `json:"upper_part"`
}

type curePart struct {
	Boat    string `json:"boat"`
	Which   string `json:"which"` // "upper" or "lower"
	Measure string `json:"measure"`
	MM      *fixed `json:"by_mm,omitempty"`
	Deg     *fixed `json:"by_deg,omitempty"`
}

type stackPart struct {
	Height fixed `json:"height_mm"`
	Length fixed `json:"length_mm"`
	Width  fixed `json:"width_mm"`
	Mass   fixed `json:"mass_kg"`
	Nests  bool  `json:"nests"`
}

type fittedPart struct {
	Title  string `json:"title"`
	Slug   string `json:"slug"`
	Beam   fixed  `json:"beam_mm"`
	Length fixed  `json:"length_mm"`
}

type judgmentPart struct {
	About string `json:"about"` // "roof", "door"
	Limit fixed  `json:"limit"`
	Value fixed  `json:"value"`
	Unit  string `json:"unit"`
	OK    bool   `json:"ok"`
}

// Fleet gathers what was found of boats put into one another. Stations are from
// midship and heights over the baseline of the lower boat of a pair.
//
// Errors: as HeaderOf.
func Fleet(r *stow.Report) (*FleetReport, error) {
	s := r.Stack
	d := &FleetReport{Room: fixed(r.Options.Pad), LeftIn: r.Options.LeftIn, Nests: s.Nests, Stack: stackOf(s),
		Fitted: []fittedPart{}, Limits: judgmentsOf(r)}
	for i, b := range s.Boats {
		head, err := HeaderOf(b.Frame.Design)
		if err != nil {
			return nil, err
		}
		p := s.Places[i]
		d.Designs = append(d.Designs, head)
		d.Order = append(d.Order, stackedBoat{b.Title, fixed(b.Mass), fixed(p.X), fixed(p.Z), p.Turned, s.TakenOut(i)})
	}
	for i, p := range s.Pairs {
		d.Pairs = append(d.Pairs, pairOf(p, r.Cures[i]))
	}
	for _, b := range r.Proposed {
		if b != nil {
			f := b.Frame.Design
			d.Fitted = append(d.Fitted, fittedPart{b.Title, f.Slug(), fixed(f.Hull.Beam), fixed(f.Hull.Length)})
		}
	}
	if r.After != nil {
		m := stackOf(r.After)
		d.After = &m
	}
	return d, nil
}

func stackOf(s *stow.Stack) stackPart {
	return stackPart{fixed(s.Height), fixed(s.Length), fixed(s.Width), fixed(s.Mass), s.Nests}
}

func pairOf(p *stow.Pair, cures []stow.Cure) stackedPair {
	out := stackedPair{
		Lower: p.Lower.Title, Upper: p.Upper.Title, Nests: p.Nests,
		X: fixed(p.Place.X), Z: fixed(p.Place.Z), Turned: p.Place.Turned,
		Touch: fixed(p.Touch), First: contactOf(p.First), Seat: fixed(p.Seat), Lift: fixed(p.Lift()),
		Floor: contactOf(p.Rooms[stow.Floor]), Sides: contactOf(p.Rooms[stow.Sides]),
		Ends: contactOf(p.Rooms[stow.Ends]), Across: contactOf(p.Rooms[stow.Across]),
		Bound: contactOf(p.Bound), Short: fixed(p.Short), Cures: []curePart{},
	}
	for _, c := range cures {
		k := curePart{Boat: c.Boat.Title, Which: "lower", Measure: c.Measure.String()}
		if c.Upper {
			k.Which = "upper"
		}
		if v := fixed(c.By); c.Measure == stow.Flare {
			v = fixed(inDegrees(c.By))
			k.Deg = &v
		} else {
			k.MM = &v
		}
		out.Cures = append(out.Cures, k)
	}
	return out
}

func contactOf(c stow.Contact) *contactPart {
	if !c.Meets() {
		return nil
	}
	return &contactPart{fixed(c.Room), fixed(c.At.X), fixed(c.At.Y), fixed(c.At.Z), c.Lower.Name, c.Upper.Name}
}

func judgmentsOf(r *stow.Report) []judgmentPart {
	out := []judgmentPart{}
	if r.Limits.Roof > 0 {
		out = append(out, judgmentPart{"roof", fixed(r.Limits.Roof), fixed(r.Stack.Mass), "kg", r.Over() <= 0})
	}
	if r.Limits.Door > 0 {
		level, side := r.Through()
		out = append(out, judgmentPart{"door", fixed(r.Limits.Door), fixed(math.Min(r.Stack.Width, r.Stack.Height)), "mm", level || side})
	}
	return out
}
