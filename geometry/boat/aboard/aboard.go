// Package aboard is a boat made ready to be loaded: its hull for floating, what it
// weighs itself, and its outfits, people and gear apart, so that each can be changed.
package aboard

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
)

// Boat is a boat and what is aboard. One from a table of offsets has neither frame nor
// cloth nor parts, and its whole weight is its gear.
type Boat struct {
	Title, For string
	Notes      []string // what was understood of the input

	Frame *frame.Frame // nil for a table of offsets
	Cloth *skin.Cloth  // likewise
	Hull  *float.Hull

	Places    fittings.Places // of all that is fastened to the frame, seats taken out or not
	Seats     []seat.Seat     // that are in the boat
	Fittings  []kit.Kit       // what the finished boat has besides frame and skin
	Flotation flotation.Fit   // that is among them
	Parts     []weight.Item   // of the boat itself, fittings too
	Outfits   []weight.Item   // what its outfits weigh
	People    []design.Person
	Crew      []weight.Item // what the people weigh
	Gear      []weight.Item

	framed []weight.Item // the parts without fittings
}

// Covered is a frame in its cloth, before anything is fitted.
type Covered struct {
	Cloth *skin.Cloth
	parts []weight.Item // of frame and skin
}

// Cover puts the cloth over a frame and weighs both.
//
// Errors: an outside that cannot be drawn, or a wood that is not known.
func Cover(f *frame.Frame) (c Covered, err error) {
	if c.Cloth, err = skin.Of(f); err != nil {
		return c, err
	}
	c.parts, err = weight.Boat(f, c.Cloth)
	return c, err
}

// New covers and weighs a frame with the people and gear given, and no outfits.
//
// Errors: an outside that cannot be drawn, or a wood that is not known.
func New(f *frame.Frame, people []design.Person, gear []design.Gear) (Boat, error) {
	c, err := Cover(f)
	if err != nil {
		return Boat{}, err
	}
	p, err := fittings.Placed(f)
	if err != nil {
		return Boat{}, err
	}
	return Fitted(c, p, people, gear)
}

// Fitted is New for a frame that is covered and whose places are worked out already.
func Fitted(c Covered, p fittings.Places, people []design.Person, gear []design.Gear) (Boat, error) {
	f := p.Frame
	b := Boat{Title: f.Design.Title, For: f.Design.For, Frame: f, Cloth: c.Cloth, Hull: c.Cloth.Hull, Places: p,
		Seats: f.Seats, People: people, framed: c.parts}
	b.Crew, b.Gear = weight.Crew(f.Hull, f.Design, people), weight.Gear(f.Hull, gear)
	if len(people)+len(gear) == 0 {
		b.Notes = append(b.Notes, "nobody is aboard: the design has no [[crew]] and no [[gear]]")
	}
	fitted, err := fittings.Of(p, b.Cloth, b.framed)
	b.Flotation = fitted.Flotation
	return b, cmp.Or(err, b.fit(fitted.Kits))
}

// fit takes the fittings and weighs them.
func (b *Boat) fit(kits []kit.Kit) error {
	b.Fittings, b.Parts = kits, slices.Clone(b.framed)
	for _, k := range kits {
		items, err := k.Items(b.Frame.Design)
		if err != nil {
			return err
		}
		b.Parts = append(b.Parts, items...)
	}
	return nil
}

// WithoutSeats returns the boat with the seats of those numbers taken out, each with all
// of its parts and no other. Who sat on one sits on the floor there; a note says so.
//
// Errors: a wood that is not known.
func (b Boat) WithoutSeats(numbers []int) (Boat, error) {
	d := b.Frame.Design
	var groups []string
	for _, i := range numbers {
		groups = append(groups, d.Seats[i].Name)
	}
	kits := slices.Clone(b.Fittings)
	for i, k := range kits {
		if k.Name == fittings.Seats {
			kits[i] = k.Without(groups)
		}
	}
	b.People, b.Notes = slices.Clone(b.People), slices.Clone(b.Notes)
	for i, p := range b.People {
		if s, ok := d.SeatOf(p); ok && slices.Contains(groups, s.Name) {
			b.People[i] = d.Lowered(p)
			b.Notes = append(b.Notes, fmt.Sprintf("%s sits on the floor: %s is out", wording.OneLine(p.Name), wording.OneLine(s.Name)))
		}
	}
	b.Seats = slices.DeleteFunc(slices.Clone(b.Seats), func(s seat.Seat) bool { return slices.Contains(numbers, s.Number) })
	b.Crew = weight.Crew(b.Frame.Hull, d, b.People)
	return b, b.fit(kits)
}

// AssumedHeight is how high over the baseline the weight lies that a table of offsets is
// given when nothing is known, mm: boat and paddlers kneeling or low. Common practice,
// no source.
const AssumedHeight = 300.0

// OfHull gives a boat of which only the hull is known, with notes on what was understood
// of it. mass is the whole weight in kg, 0 for none; its height over the baseline is in
// mm, 0 when not known. It lies amidships.
func OfHull(title string, hull *float.Hull, notes []string, mass, height float64) Boat {
	b := Boat{Title: title, Hull: hull, Notes: slices.Clone(notes)}
	if height == 0 {
		height = AssumedHeight
		b.Notes = append(b.Notes, fmt.Sprintf("the height of the weight is not known; %.0f mm over the baseline is assumed", height))
	}
	b.Gear = []weight.Item{{Name: "All up", Loads: []float.Load{{Mass: mass, At: geometry.Point3{Z: height}}}}}
	return b
}

// Own returns what the boat itself weighs.
func (b Boat) Own() float.Load { return weight.Sum(b.Parts) }

// Light returns the boat with its outfits, without people and gear.
func (b Boat) Light() float.Load { return weight.Sum(slices.Concat(b.Parts, b.Outfits)) }

// Aboard lists people and gear.
func (b Boat) Aboard() []weight.Item { return slices.Concat(b.Crew, b.Gear) }

// Carried returns what the people weigh together, kg.
func (b Boat) Carried() float64 { return weight.Sum(b.Crew).Mass }

// Live returns what the live cargo of a crew weighs together, kg.
func Live(crew []design.Person) (mass float64) {
	for _, p := range crew {
		if p.Role.Live() {
			mass += p.Mass
		}
	}
	return mass
}

// Load returns boat, outfits, crew and gear with whatever else is given.
func (b Boat) Load(more ...float.Load) float.Load {
	all := append([]float.Load{b.Light(), weight.Sum(b.Aboard())}, more...)
	return float.Total(all...)
}

// SayOutfits tells of the other outfits' weight, where there is some.
func (b Boat) SayOutfits(n *finding.List) {
	if l := weight.Sum(b.Outfits); l.Mass > 0 {
		n.Say("aboard", finding.Arithmetic, "the other outfits of %s, %.1f kg, are counted as weight", wording.OneLine(b.Title), l.Mass)
	}
}

// Who says who is aboard, each with their weight and place: "Paddler, 80 kg, kneeling at
// Seat, 480 mm aft"; nobody when nobody is.
func (b Boat) Who() string {
	var out []string
	for i, p := range b.People {
		at := b.Crew[i].Load().At
		on := "on the floor"
		if s, seated := b.Frame.Design.SeatOf(p); seated {
			on = "at " + wording.OneLine(wording.Clip(s.Name, 40))
		}
		how := map[design.Posture]string{design.Kneeling: "kneeling ", design.Floor: "legs out ", design.Bench: "sitting "}[p.Posture]
		out = append(out, fmt.Sprintf("%s, %.0f kg, %s%s, weight at station %.0f mm, %.0f mm over the floor", wording.OneLine(wording.Clip(p.Name, 40)), p.Mass, how, on, at.X, weight.Height(b.Frame.Design, p)))
	}
	if out == nil {
		return "nobody"
	}
	return strings.Join(out, "; ")
}

// Crosses names the cross pieces of the frame, with their stations, whose middles lie
// from one station to another, mm.
func (b Boat) Crosses(from, to float64) []string {
	var out []string
	for _, t := range b.Frame.Thwarts {
		if t.At >= from && t.At <= to {
			out = append(out, fmt.Sprintf("%s at %.0f mm", wording.OneLine(wording.Clip(t.Name, 40)), t.At))
		}
	}
	return out
}

// GunwaleTop returns the inner and the outer upper edge of the port gunwale at a
// station.
func (b Boat) GunwaleTop(x float64) (inner, outer geometry.Point3) {
	g := b.Frame.Gunwale
	return g.EdgeAt(x, -g.Width/2, g.Height), g.EdgeAt(x, g.Width/2, g.Height)
}

// Rail returns the outer upper edge of the port gunwale as the boat is finished, cloth and
// outwale with it, at a station.
func (b Boat) Rail(x float64) geometry.Point3 {
	g, d := b.Frame.Gunwale, b.Frame.Design
	return g.EdgeAt(x, g.Width/2+float64(d.Skin.Thickness()+d.Outside.Outwale), g.Height)
}

// Floor returns the height of the ribs' upper face over the keel at a station: an outfit
// stands on the ribs, wherever the floor slats end.
func (b Boat) Floor(x float64) float64 { return b.Frame.Hull.RibsZ(x) }
