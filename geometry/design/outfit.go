package design

import (
	"cmp"

	"ribwright/geometry/measure"
)

// Outfit is what is added to the boat for a while: a sail, a second hull, oars.
// A table that is left out is not aboard; float counts those that are given.
type Outfit struct {
	Sail *Sail `toml:"sail,omitempty" comment:"A small sail that comes up and goes away in seconds; 'ribwright sail' explains it."`
	Pair *Pair `toml:"pair,omitempty" comment:"Beams that tie the boat to a second one beside it; 'ribwright pair' explains them."`
	Row  *Row  `toml:"row,omitempty" comment:"A clip-on frame with rowlocks and a fixed seat; 'ribwright row' explains it."`
}

// Sail is a small fore-and-aft sail with what carries it.
type Sail struct {
	Rig    Rig            `toml:"rig" comment:"spritsail, when left out, leg-of-mutton, lug, or vee: two spars spread from one foot, for running before the wind only."`
	Area   float64        `toml:"area" accepts:"0.5 to 8 m2, or 0 to let the boat decide" comment:"Square meters. 0.5 to 8; 0 lets the boat's righting moment and the wind decide."`
	Wind   float64        `toml:"wind" accepts:"2 to 12 m/s" comment:"The steady wind in which you want to carry full sail, meters per second. 2 to 12."`
	Hike   bool           `toml:"hike" comment:"true: the crew leans out over the gunwale; false: they sit inside against it."`
	Reefs  int            `toml:"reefs" accepts:"0 to 3" comment:"How many times the sail can be made smaller. 0 to 3."`
	MastAt measure.Length `toml:"mast_at" comment:"Station of the mast, forward positive; 0 mm lets the program choose."`
	Pack   measure.Length `toml:"pack" accepts:"400 to 4000 mm, or 0 mm" comment:"Of a vee: how long the longest piece may be when it is packed; its spars come apart. 0 mm for 1.2 m."`
	Spars  string         `toml:"spars" accepts:"a wood" comment:"Wood of mast and spars."`
	Boards string         `toml:"boards" accepts:"a wood" comment:"Wood of leeboard, partner, step and bracket."`
	Cloth  float64        `toml:"cloth" accepts:"30 to 400 g/m2" comment:"Mass of the sailcloth, grams per square meter. 30 to 400."`
	Bolt   measure.Length `toml:"bolt" accepts:"500 to 2000 mm" comment:"Width of the cloth as it comes off the roll. 500 to 2000 mm."`
	Seam   measure.Length `toml:"seam" accepts:"6 to 40 mm" comment:"How far one panel lies over the next. 6 to 40 mm."`
	Hem    measure.Length `toml:"hem" accepts:"10 to 80 mm" comment:"Cloth turned in round the edges. 10 to 80 mm."`
	Roach  float64        `toml:"roach" accepts:"0 to 0.06, a share of the edge" comment:"How far the sail's edges on spars are cut round, as a share of their length, which gives the sail its belly. 0 to 0.06."`
}

// Pair is two hulls side by side.
type Pair struct {
	With    string         `toml:"with" most:"500" comment:"The other boat, a file or a shipped name; one like this when left out."`
	Purpose Purpose        `toml:"purpose" comment:"moving: narrow, to pass between rocks and turn; open or sail: wide. It must be said, or a spacing given."`
	Spacing measure.Length `toml:"spacing" comment:"Between the middle lines of the hulls; 0 mm for what the purpose asks: 1.4 m on moving water, else half the length of the boat."`
	Beams   int            `toml:"beams" accepts:"2 to 4" comment:"How many beams. 2 to 4."`
	Apart   measure.Length `toml:"apart" comment:"Between the first beam and the last; 0 mm for four tenths of the length of the boat."`
	Species string         `toml:"species" accepts:"a wood" comment:"Wood of the beams."`
	Width   measure.Length `toml:"width" accepts:"25 to 300 mm, or 0 mm to let the loads decide" comment:"Of a beam, along the boat; 0 mm lets the loads decide."`
	Depth   measure.Length `toml:"depth" accepts:"25 to 300 mm, or 0 mm to let the loads decide" comment:"Of a beam, up and down; 0 mm lets the loads decide."`
	Person  float64        `toml:"person" accepts:"40 to 250 kg" comment:"Mass of who may step on the middle of one beam, kilograms. 40 to 250."`
}

// Row is a frame with rowlocks that clips on the gunwales, and a fixed seat.
type Row struct {
	Body    Body           `toml:"body" comment:"Whose proportions the rower has where they are not measured: woman or man; woman when left out."`
	Stature measure.Length `toml:"stature" accepts:"1200 to 2200 mm, or 0 mm" comment:"Height of the rower standing; the median of that body when 0 mm. With neither this nor a mass the heaviest of the boat's people rows."`
	Mass    float64        `toml:"mass" accepts:"25 to 200 kg, or 0" comment:"Of the rower, kilograms; the median of that body when 0. 25 to 200."`
	Span    measure.Length `toml:"span" accepts:"700 to 2000 mm, or 0 mm for 48 in" comment:"Between the rowlocks, pin to pin; 0 mm for 48 in, 1219.2 mm."`
	Oar     measure.Length `toml:"oar" accepts:"1000 to 4000 mm, or 0 mm for the rule from the span" comment:"Length of an oar; 0 mm for the oar maker's rule from the span."`
	SeatAt  measure.Length `toml:"seat_at" comment:"Station of the middle of the seat, forward positive; 0 mm for where the boat floats level."`
	Seat    measure.Length `toml:"seat" accepts:"40 to 450 mm, or 0 mm for what suits the rowlocks" comment:"Height of the seat over the floor; 0 mm for 180 mm under the rowlocks."`
	Species string         `toml:"species" accepts:"a wood" comment:"Wood of the frame."`
	Pull    float64        `toml:"pull" accepts:"50 to 600 N" comment:"The pull on each handle that the frame must take, newtons. 50 to 600."`
}

// defaultSail is what a sail is where nothing is said of it. Common practice, no
// source.
func defaultSail() *Sail {
	return &Sail{Rig: Spritsail, Wind: 5, Reefs: 1, Spars: "Sitka spruce", Boards: "white ash", Cloth: 140,
		Bolt: 1370, Seam: 12, Hem: 25, Roach: 0.02}
}

func defaultPair() *Pair {
	return &Pair{Beams: 2, Species: "Douglas-fir", Person: 100}
}

func defaultRow() *Row { return &Row{Species: "white ash", Pull: 250} }

// Sail returns the sail of the design, or what it would be if it had one.
func (d *Design) Sail() Sail { return *cmp.Or(d.Fitted().Sail, defaultSail()) }

// Pair returns the beams of the design, or what they would be.
func (d *Design) Pair() Pair { return *cmp.Or(d.Fitted().Pair, defaultPair()) }

// Row returns the rowing frame of the design, or what it would be.
func (d *Design) Row() Row { return *cmp.Or(d.Fitted().Row, defaultRow()) }

// Fitted returns which outfits are aboard; nil tables are not.
func (d *Design) Fitted() Outfit {
	if d.Outfit == nil {
		return Outfit{}
	}
	return *d.Outfit
}

// outfitDefaults gives every outfit that the file begins what it has where keys
// are left out.
func (d *Design) outfitDefaults(begun func(table string) bool) {
	var o Outfit
	if begun("outfit.sail") {
		o.Sail = defaultSail()
	}
	if begun("outfit.pair") {
		o.Pair = defaultPair()
	}
	if begun("outfit.row") {
		o.Row = defaultRow()
	}
	if o != (Outfit{}) {
		d.Outfit = &o
	}
}
