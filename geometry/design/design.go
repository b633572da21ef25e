// Package design holds the design file: what a builder decides about a boat.
// It reads, checks and writes it; every key is described in the comment tags
// of the types below and nowhere else.
package design

import "ribwright/geometry/measure"

// Design is everything that sizes one boat. A Design from Decode or Shipped
// has been checked; one put together by hand must pass Check before use.
type Design struct {
	Title      string     `toml:"title" comment:"Name of the boat, printed on every sheet."`
	Edition    string     `toml:"edition,omitempty" json:",omitempty" comment:"Which edition of the design this is, as '2' or 'spring 2027'; written into the JSON files. None when left out."`
	For        string     `toml:"for" comment:"Who and what it is for, in your own words."`
	Hull       Hull       `toml:"hull" comment:"The shape, without a mould: widths, depths and how the ribs turn."`
	Bow        Stem       `toml:"bow" comment:"The stem at the bow, seen from the side and cut from sheet or plank."`
	Stern      *Stem      `toml:"stern,omitempty" comment:"The stem at the stern; leave [stern] out for a stern like the bow."`
	Gunwale    Gunwale    `toml:"gunwale" comment:"The pair of rails that the ribs are mortised into."`
	Ribs       Ribs       `toml:"ribs" comment:"The bent frames."`
	Keel       Keel       `toml:"keel" comment:"The batten along the bottom, outside the ribs."`
	Stringers  Stringers  `toml:"stringers" comment:"The battens lashed along the outside of the ribs."`
	Breasthook Breasthook `toml:"breasthook" comment:"The plate at each end that ties the gunwale ends together."`
	Skin       Skin       `toml:"skin" comment:"The cloth and its coating."`
	Bending    Bending    `toml:"bending" comment:"How the wood is bent and glued."`
	Stock      Stock      `toml:"stock" comment:"The lumber that the sticks are sawn from, for the build book; none is needed to loft the boat."`
	Woods      []Wood     `toml:"wood" comment:"One [[wood]] for each wood of your own, or known wood that you have better values for."`
	Thwarts    []Thwart   `toml:"thwart" comment:"One [[thwart]] for each cross piece under the gunwales."`
	Crew       []Person   `toml:"crew" comment:"One [[crew]] for each person aboard, for floating the boat; none is needed to loft it."`
	Gear       []Gear     `toml:"gear" comment:"One [[gear]] for each lot of what is carried."`
	Outfit     *Outfit    `toml:"outfit,omitempty" json:",omitempty" comment:"What is added for a while: sail, second hull, oars. Leave out what is not aboard."`
}

// Hull is the shape, without a mould. Places along the boat are measured from
// the middle of the length overall, forward positive.
type Hull struct {
	Length       measure.Length `toml:"length" comment:"Length overall, stem head to stem head. 2000 to 9000 mm."`
	Beam         measure.Length `toml:"beam" comment:"Midship width between the gunwale lines (middle of one gunwale to middle of the other). 400 to 1500 mm."`
	Depth        measure.Length `toml:"depth" comment:"Midship depth from the middle of the rib's thickness at the keel up to the underside of the gunwales. 150 to 700 mm."`
	Symmetric    bool           `toml:"symmetric" comment:"true: spreaders and sections given forward of midship are mirrored aft."`
	KeelStraight measure.Length `toml:"keel_straight" comment:"Length of straight keel amidships; rocker begins at its ends."`
	RockerBow    measure.Length `toml:"rocker_bow" comment:"Rise of the keel where the forefoot begins."`
	RockerStern  measure.Length `toml:"rocker_stern" comment:"The same aft; like the bow when left out."`
	Waterline    measure.Length `toml:"waterline" comment:"Height of the designed waterline above the baseline, marked on stems and body plan."`
	Spreaders    []Spreader     `toml:"spreader" comment:"One [[hull.spreader]] for each extra place where the gunwales are held apart, besides midship."`
	Sections     []Section      `toml:"section" comment:"One [[hull.section]] for each place where the section's shape is set; between them it changes smoothly, beyond the last it stays."`
}

// Spreader holds the gunwales at a width somewhere other than midship.
type Spreader struct {
	At   measure.Length `toml:"at" comment:"Place along the boat from midship, forward positive."`
	Beam measure.Length `toml:"beam" comment:"Width between the gunwale lines there."`
	Tie  bool           `toml:"tie" comment:"true: it is lashed or pegged and pulls the gunwales in too, so that between it and the next towards midship they may run hollow; false when left out."`
}

// Section sets the shape of the ribs at one place. Turns are the change of
// direction of the rib from level at the keel.
type Section struct {
	At           measure.Length `toml:"at" comment:"Place along the boat from midship, forward positive."`
	BottomTurn   measure.Angle  `toml:"bottom_turn" comment:"Turn of the bottom arc, from the keel to the bilge. 0 deg gives a flat bottom."`
	BilgeRadius  measure.Length `toml:"bilge_radius" comment:"Radius of the bilge at mid-thickness of the rib."`
	Flare        measure.Angle  `toml:"flare" comment:"Lean of the topside outward at the gunwale, from upright; negative is tumblehome."`
	TopsideCurve measure.Angle  `toml:"topside_curve" comment:"How much the topside itself turns between bilge and gunwale: 0 deg, straight, when left out."`
}

// Stem is one end of the boat, seen from the side and cut from sheet or plank.
type Stem struct {
	Rake           measure.Angle  `toml:"rake" comment:"Lean of the stem outward from upright, above the forefoot."`
	ForefootRadius measure.Length `toml:"forefoot_radius" comment:"Radius of the outer edge from keel to stem."`
	HeadRadius     measure.Length `toml:"head_radius" comment:"Radius of the outer edge above the forefoot when the head curves back in; 0 mm for a straight rake."`
	Siding         measure.Length `toml:"siding" comment:"Thickness across the boat; at least the width of a gunwale so that the gunwale ends clear each other."`
	Moulded        measure.Length `toml:"moulded" comment:"Depth of the piece seen from the side, outer to inner edge."`
	Landing        measure.Length `toml:"landing" comment:"Length along the keel on which the stem's foot lies."`
	Horn           measure.Length `toml:"horn" comment:"What stands of the stem head outside the gunwale ends, measured level."`
}

// Gunwale is one of the pair of laminated rails that the ribs are mortised into.
type Gunwale struct {
	Species     string           `toml:"species" comment:"Wood, by a name that 'ribwright help species' lists."`
	Width       measure.Length   `toml:"width" comment:"Across the boat, all plies together: the thin way, which bends."`
	Height      measure.Length   `toml:"height" comment:"The tall way, which is mortised from below."`
	Plies       int              `toml:"plies" comment:"Number of equal layers glued to make the width. 1 to 12."`
	Glued       string           `toml:"glued" comment:"How the plies are glued: straight (flat, sprung afterwards), bent (while the spreaders hold them to the finished curve) or form (on a form tightened by what springs back)."`
	Tilt        measure.Angle    `toml:"tilt" comment:"Lean of the gunwale outward from upright; it gives the natural sheer."`
	EdgeSetBow  measure.Length   `toml:"edge_set_bow" comment:"Extra rise at the bow, sprung edgewise into the gunwales, beyond the natural sheer."`
	EdgeSetAft  measure.Length   `toml:"edge_set_stern" comment:"The same at the stern; like the bow when left out."`
	EdgeSetFrom measure.Length   `toml:"edge_set_from" comment:"Distance from midship where the edge-set begins, both ways."`
	Scarfs      []measure.Length `toml:"scarfs" comment:"Middles of the scarfs along the gunwale from midship, forward positive; empty for full-length stock."`
	ScarfSlope  float64          `toml:"scarf_slope" comment:"Scarf length over ply thickness. 8 to 12 is usual."`
}

// Ribs are the bent frames.
type Ribs struct {
	Species      string         `toml:"species" comment:"Wood, by a name that 'ribwright help species' lists."`
	Width        measure.Length `toml:"width" comment:"Along the boat."`
	Thickness    measure.Length `toml:"thickness" comment:"The way it bends."`
	Pitch        measure.Length `toml:"pitch" comment:"Distance between ribs along the boat, middle to middle."`
	AtMidship    bool           `toml:"at_midship" comment:"true: one rib stands at midship; false: midship lies half-way between two."`
	FromBow      measure.Length `toml:"from_bow" comment:"Least distance from the last rib to the gunwale's forward end, along the boat."`
	FromStern    measure.Length `toml:"from_stern" comment:"The same aft; like the bow when left out."`
	MortiseDepth measure.Length `toml:"mortise_depth" comment:"Depth of the slot in the gunwale's underside."`
	TenonGap     measure.Length `toml:"tenon_gap" comment:"How much shorter the tenon is than its mortise is deep."`
	FitWidth     measure.Length `toml:"fit_width" comment:"Mortise length beyond the rib's width, both ends together."`
	FitThickness measure.Length `toml:"fit_thickness" comment:"Mortise width beyond the rib's thickness, both sides together."`
	Trim         measure.Length `toml:"trim" comment:"Spare length at each end of a rib blank, cut off after the test fit."`
	Tolerance    measure.Length `toml:"tolerance" comment:"Ribs that differ by less than this share one marking strip."`
}

// Keel is the batten along the bottom, outside the ribs.
type Keel struct {
	Species string         `toml:"species" comment:"Wood."`
	Width   measure.Length `toml:"width" comment:"Across the boat."`
	Depth   measure.Length `toml:"depth" comment:"From the ribs out to the skin."`
}

// Stringers are the battens lashed along the outside of the ribs.
type Stringers struct {
	Species string         `toml:"species" comment:"Wood."`
	Width   measure.Length `toml:"width" comment:"Along the rib."`
	Depth   measure.Length `toml:"depth" comment:"From the ribs out to the skin."`
	At      []float64      `toml:"at" comment:"Places of the stringers on each side, as shares of the way from keel (0) to gunwale (1) along the rib."`
}

// Breasthook is the plate that ties the gunwale ends together.
type Breasthook struct {
	Species   string         `toml:"species" comment:"Wood."`
	Length    measure.Length `toml:"length" comment:"From the gunwale ends inward along the middle line."`
	Thickness measure.Length `toml:"thickness" comment:"From its upper to its under face."`
	Hollow    measure.Length `toml:"hollow" comment:"Depth of the hollow in its inner edge."`
}

// Skin is the cloth and its coating.
type Skin struct {
	Thickness measure.Length `toml:"thickness" comment:"Cloth and coating together."`
	Mass      float64        `toml:"mass" comment:"Cloth and coating together, grams per square metre."`
}

// Thwart is a cross piece under the gunwales that can be taken out.
type Thwart struct {
	Name      string         `toml:"name" comment:"What it is called on the sheets."`
	Kind      Kind           `toml:"kind" comment:"thwart, yoke (with a neck hollow) or seat bar."`
	At        measure.Length `toml:"at" comment:"Its middle along the boat from midship, forward positive."`
	Species   string         `toml:"species" comment:"Wood."`
	Width     measure.Length `toml:"width" comment:"Along the boat, at its ends."`
	Waist     measure.Length `toml:"waist" comment:"Along the boat, at its middle."`
	Thickness measure.Length `toml:"thickness" comment:"From its upper to its under face."`
}

// EndsAlike reports whether one pattern serves for bow and stern.
func (d *Design) EndsAlike() bool { return d.Hull.Symmetric && d.Stern == nil }

// After returns the stem at the stern: the bow's when none is given.
func (d *Design) After() Stem {
	if d.Stern != nil {
		return *d.Stern
	}
	return d.Bow
}
