// Package design holds the design file: what a builder decides about a boat.
// It reads, checks and writes it; every key is described in the comment tags
// of the types below and nowhere else.
package design

import "ribwright/geometry/measure"

// Design is everything that sizes one boat. A Design from Decode or Shipped
// has been checked; one put together by hand must pass Check before use.
type Design struct {
	Title      string     `toml:"title" most:"2000" accepts:"a name in quotes, as title = 'Brook'" comment:"Name of the boat, printed on every sheet."`
	Edition    string     `toml:"edition,omitempty" json:",omitempty" most:"80" comment:"Which edition of the design this is, as '2' or 'spring 2027'; it stands on every sheet and in every file. None when left out."`
	Changed    string     `toml:"changed,omitempty" json:",omitempty" most:"400" comment:"What this edition changes of the one before, in a line. None when left out."`
	For        string     `toml:"for" most:"2000" comment:"Who and what it is for, in your own words."`
	Skill      string     `toml:"skill,omitempty" json:",omitempty" comment:"How practiced the builder is, for the hours of the build book: experienced, average or beginner. Left out: average."`
	Hull       Hull       `toml:"hull" comment:"The shape, without a mold: widths, depths and how the ribs turn."`
	Bow        Stem       `toml:"bow" comment:"The stem at the bow, seen from the side and cut from sheet or plank."`
	Stern      *Stem      `toml:"stern,omitempty" comment:"The stem at the stern; leave [stern] out for a stern like the bow."`
	Gunwale    Gunwale    `toml:"gunwale" comment:"The pair of rails that the ribs are mortised into."`
	Ribs       Ribs       `toml:"ribs" comment:"The bent frames."`
	Keel       Keel       `toml:"keel" comment:"The batten along the bottom, outside the ribs."`
	Stringers  Stringers  `toml:"stringers" comment:"The battens lashed along the outside of the ribs."`
	Breasthook Breasthook `toml:"breasthook" comment:"The plate at each end that ties the gunwale ends together."`
	Skin       Skin       `toml:"skin" comment:"The cloth and its coating."`
	Outside    Outside    `toml:"outside" comment:"What goes on outside the skin: a strip along each gunwale and under the keel, painters, a drain."`
	Inside     Inside     `toml:"inside" comment:"What people sit on, lean on and push against, and what keeps the boat up when it is full of water."`
	Bending    Bending    `toml:"bending" comment:"How the wood is bent and glued."`
	Stock      Stock      `toml:"stock" comment:"The lumber that the sticks are sawn from, for the build book; none is needed to loft the boat."`
	Woods      []Wood     `toml:"wood" comment:"One [[wood]] for each wood of your own, or known wood that you have better values for."`
	Thwarts    []Thwart   `toml:"thwart" most:"12" comment:"One [[thwart]] for each cross piece under the gunwales."`
	Seats      []Seat     `toml:"seat" json:",omitempty" most:"12" comment:"One [[seat]] for each seat: a pad, a saddle or a hung one. Who sits on it sits at its height and at no other."`
	Crew       []Person   `toml:"crew" most:"20" comment:"One [[crew]] for each person aboard, for floating the boat; none is needed to loft it."`
	Gear       []Gear     `toml:"gear" most:"20" comment:"One [[gear]] for each lot of what is carried."`
	Outfit     *Outfit    `toml:"outfit,omitempty" json:",omitempty" comment:"What is added for a while: sail, second hull, oars. Leave out what is not aboard."`
}

// Hull is the shape, without a mold. Places along the boat are measured from
// the middle of the length overall, forward positive.
type Hull struct {
	Length       measure.Length `toml:"length" accepts:"2000 to 9000 mm" comment:"Length overall, stem head to stem head. 2000 to 9000 mm."`
	Beam         measure.Length `toml:"beam" accepts:"400 to 1500 mm" comment:"Midship width between the gunwale lines (middle of one gunwale to middle of the other). 400 to 1500 mm."`
	Depth        measure.Length `toml:"depth" accepts:"150 to 700 mm" comment:"Midship depth from the middle of the rib's thickness at the keel up to the underside of the gunwales. 150 to 700 mm."`
	Symmetric    bool           `toml:"symmetric" comment:"true: spreaders and sections given forward of midship are mirrored aft."`
	KeelStraight measure.Length `toml:"keel_straight" comment:"Length of straight keel amidships; rocker begins at its ends."`
	RockerBow    measure.Length `toml:"rocker_bow" accepts:"0 to 250 mm" comment:"Rise of the keel where the forefoot begins."`
	RockerStern  measure.Length `toml:"rocker_stern" accepts:"0 to 250 mm" comment:"The same aft; like the bow when left out."`
	Waterline    measure.Length `toml:"waterline" comment:"Height of the designed waterline above the baseline, marked on stems and body plan."`
	Spreaders    []Spreader     `toml:"spreader" most:"40" comment:"One [[hull.spreader]] for each extra place where the gunwales are held apart, besides midship."`
	Sections     []Section      `toml:"section" most:"40" comment:"One [[hull.section]] for each place where the section's shape is set; between them it changes smoothly, beyond the last it stays."`
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
	BottomTurn   measure.Angle  `toml:"bottom_turn" accepts:"0 to 60 deg" comment:"Turn of the bottom arc, from the keel to the bilge. 0 deg gives a flat bottom."`
	BilgeRadius  measure.Length `toml:"bilge_radius" accepts:"20 to 1000 mm" comment:"Radius of the bilge at mid-thickness of the rib."`
	Flare        measure.Angle  `toml:"flare" accepts:"-30 to 45 deg" comment:"Lean of the topside outward at the gunwale, from upright; negative is tumblehome."`
	TopsideCurve measure.Angle  `toml:"topside_curve" accepts:"0 to 60 deg" comment:"How much the topside itself turns between bilge and gunwale: 0 deg, straight, when left out."`
}

// Stem is one end of the boat, seen from the side and cut from sheet or plank.
type Stem struct {
	Rake           measure.Angle  `toml:"rake" accepts:"-10 to 45 deg" comment:"Lean of the stem outward from upright, above the forefoot."`
	ForefootRadius measure.Length `toml:"forefoot_radius" accepts:"30 to 1500 mm" comment:"Radius of the outer edge from keel to stem."`
	HeadTurn       measure.Angle  `toml:"head_turn" json:",omitempty" accepts:"0 to 90 deg" comment:"How far the head turns back from the rake on: as much as the rake brings it upright at its top, more leans it inboard there. 0 deg, a straight rake, when left out."`
	HeadRadius     measure.Length `toml:"head_radius" accepts:"50 to 5000 mm, or 0 mm for a straight rake or an even turn" comment:"Radius of the head's turn: small for a head that rolls back at the top of a straight rake; 0 mm, or left out, for one even curve from the forefoot up. Given without head_turn, all above the forefoot curves so."`
	Siding         measure.Length `toml:"siding" accepts:"10 to 100 mm" comment:"Thickness across the boat; at least the width of a gunwale so that the gunwale ends clear each other."`
	Moulded        measure.Length `toml:"moulded" accepts:"20 to 300 mm" comment:"Depth of the piece seen from the side, outer to inner edge."`
	Landing        measure.Length `toml:"landing" accepts:"30 to 600 mm" comment:"Length along the keel on which the stem's foot lies."`
	Horn           measure.Length `toml:"horn" accepts:"0 to 100 mm" comment:"What stands of the stem head outside the gunwale ends, measured level."`
	Made           string         `toml:"made" json:",omitempty" comment:"How both stems are made: solid (sawn from a plank, where the grain allows), plywood (a blank glued from sheets to the siding, then sawn) or laminated (glued from bending.stem_plies layers round the forefoot). Where bending.stem_plies is given they are laminated, whatever stands here; left out without it: solid. At the stern like the bow."`
}

// Gunwale is one of the pair of laminated rails that the ribs are mortised into.
type Gunwale struct {
	Species     string           `toml:"species" accepts:"a wood" comment:"Wood, by a name that 'ribwright help species' lists."`
	Width       measure.Length   `toml:"width" accepts:"8 to 60 mm" comment:"Across the boat, all plies together: the thin way, which bends."`
	Height      measure.Length   `toml:"height" accepts:"15 to 120 mm" comment:"The tall way, which is mortised from below."`
	Plies       int              `toml:"plies" accepts:"1 to 12" comment:"Number of equal layers glued to make the width. 1 to 12."`
	Glued       string           `toml:"glued" comment:"How the plies are glued: straight (flat, sprung afterwards), bent (while the spreaders hold them to the finished curve) or form (on a form tightened by what springs back)."`
	Tilt        measure.Angle    `toml:"tilt" accepts:"-10 to 35 deg" comment:"Lean of the gunwale outward from upright; it gives the natural sheer."`
	EdgeSetBow  measure.Length   `toml:"edge_set_bow" accepts:"0 to 400 mm" comment:"Extra rise at the bow, sprung edgewise into the gunwales, beyond the natural sheer."`
	EdgeSetAft  measure.Length   `toml:"edge_set_stern" accepts:"0 to 400 mm" comment:"The same at the stern; like the bow when left out."`
	EdgeSetFrom measure.Length   `toml:"edge_set_from" comment:"Distance from midship where the edge-set begins, both ways."`
	EdgeSetMade measure.Length   `toml:"edge_set_made" json:",omitempty" accepts:"0 to 400 mm" comment:"How much of the rise at either end is sawn or laminated into the gunwales before they are marked; the rest is sprung. The frame need not hold what is made, and boards must be wider."`
	Scarfs      []measure.Length `toml:"scarfs" most:"20" comment:"Middles of the scarfs along the gunwale from midship, forward positive; empty for full-length stock."`
	Mortises    MortiseWay       `toml:"mortises" json:",omitempty" comment:"How the mortises are made: cut (routed or chopped; so when left out) or by gap (the middle ply is set in blocks with gaps for mortises, which wants an odd number of plies, 3 or more, each as thick as a mortise is wide, within 0.2 mm)."`
	ScarfSlope  float64          `toml:"scarf_slope" accepts:"5 to 20, 8 to 12 is usual" comment:"Scarf length over ply thickness. 8 to 12 is usual."`
}

// Ribs are the bent frames.
type Ribs struct {
	Species      string         `toml:"species" accepts:"a wood" comment:"Wood, by a name that 'ribwright help species' lists."`
	Width        measure.Length `toml:"width" accepts:"8 to 80 mm" comment:"Along the boat."`
	Thickness    measure.Length `toml:"thickness" accepts:"2 to 25 mm" comment:"The way it bends."`
	Pitch        measure.Length `toml:"pitch" accepts:"40 to 400 mm" comment:"Distance between ribs along the boat, middle to middle."`
	AtMidship    bool           `toml:"at_midship" comment:"true: one rib stands at midship; false: midship lies half-way between two."`
	FromBow      measure.Length `toml:"from_bow" comment:"Least distance from the last rib to the gunwale's forward end, along the boat."`
	FromStern    measure.Length `toml:"from_stern" comment:"The same aft; like the bow when left out."`
	MortiseDepth measure.Length `toml:"mortise_depth" comment:"Depth of the slot in the gunwale's underside."`
	TenonGap     measure.Length `toml:"tenon_gap" comment:"How much shorter the tenon is than its mortise is deep."`
	FitWidth     measure.Length `toml:"fit_width" accepts:"0 to 3 mm" comment:"Mortise length beyond the rib's width, both ends together."`
	FitThickness measure.Length `toml:"fit_thickness" accepts:"0 to 2 mm" comment:"Mortise width beyond the rib's thickness, both sides together."`
	Trim         measure.Length `toml:"trim" accepts:"0 to 100 mm" comment:"Spare length at each end of a rib blank, cut off after the test fit."`
	Tolerance    measure.Length `toml:"tolerance" accepts:"0 to 10 mm" comment:"Ribs that differ by less than this share one marking strip."`
	Spare        int            `toml:"spare" accepts:"0 to 40" comment:"Spare rib blanks in the cut list, each as long as the longest: some break, some set wrong. 6 for a first boat, 3 for one who has bent ribs before; common practice."`
}

// Keel is the batten along the bottom, outside the ribs.
type Keel struct {
	Species string         `toml:"species" accepts:"a wood" comment:"Wood."`
	Width   measure.Length `toml:"width" accepts:"8 to 120 mm" comment:"Across the boat."`
	Depth   measure.Length `toml:"depth" accepts:"3 to 60 mm" comment:"From the ribs out to the skin."`
}

// Stringers are the battens lashed along the outside of the ribs.
type Stringers struct {
	Species string         `toml:"species" accepts:"a wood" comment:"Wood."`
	Width   measure.Length `toml:"width" accepts:"8 to 60 mm" comment:"Along the rib."`
	Depth   measure.Length `toml:"depth" accepts:"3 to 40 mm" comment:"From the ribs out to the skin."`
	At      []float64      `toml:"at" comment:"Places of the stringers on each side, as shares of the way from keel (0) to gunwale (1) along the rib."`
}

// Breasthook is the plate that ties the gunwale ends together.
type Breasthook struct {
	Species   string         `toml:"species" accepts:"a wood" comment:"Wood."`
	Length    measure.Length `toml:"length" accepts:"40 to 600 mm" comment:"From the gunwale ends inward along the middle line."`
	Thickness measure.Length `toml:"thickness" comment:"From its upper to its under face."`
	Hollow    measure.Length `toml:"hollow" comment:"Depth of the hollow in its inner edge."`
}

// Skin is the cloth and its coating.
type Skin struct {
	Fiber   Fiber          `toml:"fiber" comment:"What the cloth is woven of: polyester (when left out; heat draws it taut and water leaves it so), nylon (tougher; slackens when wet) or cotton."`
	Cloth   float64        `toml:"cloth" accepts:"0 to 3000 g/m2" comment:"The cloth as it is bought, grams per square meter: 271 (8 oz/yd2) when left out, 200 to 410 is usual. Coats come on top. 0 for a frame without its skin."`
	Coats   int            `toml:"coats" accepts:"0 to 12" comment:"How many coats of the coating. 3 when left out; 0 for bare cloth."`
	Solids  float64        `toml:"solids" accepts:"20 to 100 %, or 0 for 70 %" comment:"What of the coating's volume stays when it is dry, percent, as its data sheet says. 70 when left out or 0, from memory for two-part polyurethane."`
	Roll    measure.Length `toml:"roll" accepts:"300 to 5000 mm, or 0 mm for the width that suits" comment:"Width of the cloth as it is sold; of the usual widths the one that suits when left out or 0 mm."`
	Thick   measure.Length `toml:"thickness" accepts:"0 to 5 mm" comment:"Cloth and coating together, when you have measured it; what cloth and coats make when left out or 0 mm."`
	Weighed float64        `toml:"mass,omitempty" json:",omitempty" accepts:"0 to 5000 g/m2" comment:"Only in older designs: cloth and coating together, grams per square meter, from which the cloth is worked out. Give cloth and coats instead."`
	Tension float64        `toml:"tension" accepts:"0 to 2 N/mm" comment:"How hard the finished skin pulls from gunwale to gunwale, newtons for each millimeter along the boat. 0.3 when left out, from memory: 0.1 for slack cloth, 1 for taut; reports tell what a third of it and a good three times as much would do. 0 for a frame without its skin."`
}

// Outside is what goes on over the skin when it is coated.
type Outside struct {
	Species        string         `toml:"species" comment:"Wood of outwales and keel strip; that of the ribs when left out."`
	Outwale        measure.Length `toml:"outwale" accepts:"4 to 40 mm, or 0 mm for none" comment:"Thickness across the boat of the batten outside each gunwale, which covers the cloth's fasteners and takes the knocks."`
	OutwaleHeight  measure.Length `toml:"outwale_height" accepts:"8 to 80 mm" comment:"Its height, from the gunwale's upper edge down; 20 mm when left out, or the gunwale's where that is less."`
	KeelStrip      measure.Length `toml:"keel_strip" accepts:"2 to 20 mm, or 0 mm for none" comment:"Depth of the strip under the keel, outside the skin, which wears in place of the cloth."`
	KeelStripWidth measure.Length `toml:"keel_strip_width" accepts:"8 to 80 mm" comment:"Its width, up to the keel's; 20 mm when left out, or the keel's where that is less."`
	Painters       measure.Length `toml:"painters" accepts:"1000 to 15000 mm, or 0 mm for none" comment:"Length of the line at each end of the boat."`
	Drain          bool           `toml:"drain" comment:"true: a drain with a screw cap beside the keel; false, when left out: the boat is emptied by turning it over."`
}

// Inside is what is fitted in the boat for the people in it.
type Inside struct {
	Species       string         `toml:"species" comment:"Wood of floor slats, footbraces and backrests; that of the stringers when left out."`
	Slats         int            `toml:"slats" accepts:"1 to 15, or 0 for none" comment:"How many floor slats lie side by side under each person, lashed over the ribs. 5 when left out; fewer where the floor is too narrow for them; 0 for none."`
	SlatWidth     measure.Length `toml:"slat_width" accepts:"20 to 150 mm" comment:"Width of a floor slat. 45 mm when left out."`
	SlatThickness measure.Length `toml:"slat_thickness" accepts:"4 to 20 mm" comment:"Thickness of a floor slat. 6 mm when left out."`
	Backrest      bool           `toml:"backrest" comment:"true, when left out: a board to lean on, hung behind each person who sits on the floor or on a bench; false: none."`
	Footbrace     bool           `toml:"footbrace" comment:"true, when left out: a board to push against for the same people, at the length of the leg; false: none."`
	Flotation     Flotation      `toml:"flotation" comment:"Where flotation lies that carries the swamped boat with its people sitting in it: sides and ends (when left out), sides, ends, or none. How much is worked out."`
}

// Thwart is a cross piece under the gunwales that can be taken out.
type Thwart struct {
	Name      string         `toml:"name" most:"200" accepts:"a name in quotes, as 'Yoke'" comment:"What it is called on the sheets."`
	Kind      Kind           `toml:"kind" comment:"thwart, or yoke (with a neck hollow). Seats are no cross pieces: they have tables of their own, [[seat]]."`
	At        measure.Length `toml:"at" comment:"Its middle along the boat from midship, forward positive."`
	Species   string         `toml:"species" accepts:"a wood" comment:"Wood."`
	Width     measure.Length `toml:"width" accepts:"15 to 200 mm" comment:"Along the boat, at its ends."`
	Waist     measure.Length `toml:"waist" accepts:"10 to 200 mm" comment:"Along the boat, at its middle."`
	Thickness measure.Length `toml:"thickness" accepts:"5 to 60 mm" comment:"From its upper to its under face."`
}

// Bending is how the wood is bent and glued.
type Bending struct {
	Method      Method    `toml:"method" json:",omitempty" comment:"How the ribs are bent: in place (hot, by hand and eye, and set in the boat; so when left out) or on forms (round a flat form for each kind of rib, which has a pattern and takes stock and hours)."`
	Stock       Seasoning `toml:"stock" json:",omitempty" comment:"How the wood that is steamed was dried when you get it: air-dried, green or kiln-dried. It says how long to soak, to steam and to dry. When left out it follows from moisture, and is air-dried when that is left out too."`
	Moisture    float64   `toml:"moisture" accepts:"8 to 40 %" comment:"Moisture of the rib stock when it is steamed, after soaking, percent. 8 to 40; at least 16 for mild bends and 23 for severe ones. When left out it follows from stock: air-dried 23, green 30, kiln-dried 27."`
	Strap       bool      `toml:"strap" comment:"true: ribs are bent with a metal strap and end stops where they need it; that takes forms."`
	Springback  float64   `toml:"springback" accepts:"0 to 0.4, a share" comment:"Share of its curvature that a rib loses when it is let go. 0 to 0.4; 0.05 to 0.1 when dried as it was bent, 0.1 to 0.2 when only cooled, from memory: measure your first rib, as the build book says how."`
	GlueCreep   float64   `toml:"glue_creep" accepts:"1 to 1.3" comment:"How much more a lamination springs back than plies alone explain. 1 for a rigid glue line, up to 1.3 for a soft one, from memory."`
	StemPlies   int       `toml:"stem_plies" accepts:"2 to 40, or 0 for stems that are cut" comment:"Number of layers when the stems are laminated round their forefoot; 0 when they are cut from sheet or plank."`
	StemSpecies string    `toml:"stem_species" comment:"Wood of the stems. Left out: that of the breasthooks for solid stems, Douglas-fir for plywood; laminated stems need it."`
}

// The ways to glue a gunwale's plies.
const (
	GluedStraight = "straight" // flat, and sprung round the spreaders as one stick
	GluedBent     = "bent"     // while held to the finished curve by the spreaders
	GluedOnForm   = "form"     // on a form tightened by what springs back
)

// Stock is the lumber that the sticks are sawn from, and the saw.
type Stock struct {
	Kerf    measure.Length `toml:"kerf" accepts:"0 to 10 mm" comment:"What one saw cut takes away, ripping and crosscutting. 0 to 10 mm."`
	Longest measure.Length `toml:"longest,omitempty" json:",omitempty" accepts:"0 to 12000 mm, 0 for any" comment:"The longest stick that you can get without splits: for woods that no board below names, no longer board is asked for. Left out, boards of up to 5490 mm (18 ft) are."`
	Boards  []Board        `toml:"board" most:"40" comment:"One [[stock.board]] for each size of board that you have or can buy; for a wood that none names, sizes to ask the yard for are worked out."`
}

// Board is one size of board, all of one wood.
type Board struct {
	Species   string         `toml:"species" accepts:"a wood" comment:"Wood, by a name that 'ribwright help species' lists."`
	Length    measure.Length `toml:"length" accepts:"300 to 12000 mm" comment:"Usable length, without split ends. 300 to 12000 mm."`
	Width     measure.Length `toml:"width" accepts:"20 to 1000 mm" comment:"Usable width, sapwood and edges off. 20 to 1000 mm."`
	Thickness measure.Length `toml:"thickness" accepts:"5 to 200 mm" comment:"Thickness as it is planed before ripping. 5 to 200 mm."`
	Count     int            `toml:"count" accepts:"0 to 1000, 0 for as many as needed" comment:"How many there are; 0, or left out, for as many as are needed."`
	Price     *float64       `toml:"price,omitempty" json:",omitempty" accepts:"0 to 1000000, 0 for a board that you own" comment:"Price of one, in the currency of your price table; 0 for a board that you own already, which then costs nothing. Left out, it is priced by volume."`
	Sawn      string         `toml:"sawn,omitempty" json:",omitempty" comment:"How its rings lie, as the end of the board shows: flat (along its face) or quarter (upright to its face). Left out when you do not know."`
}

// Person is one of the crew, where and how they sit.
type Person struct {
	Name    string         `toml:"name" most:"200" accepts:"a name in quotes, as 'Paddler'" comment:"What to call the person on the page, as \"Bow paddler\"."`
	Role    Role           `toml:"role,omitempty" json:",omitempty" comment:"paddler, when left out, or live cargo: passenger, a child too, or dog. Live cargo paddles nothing, needs no footbrace, sits on the floor or a seat, and moves about."`
	Mass    float64        `toml:"mass" accepts:"3 to 250 kg" comment:"Kilograms, dressed and with a life jacket. 3 to 250."`
	Posture Posture        `toml:"posture" comment:"How the person sits: kneeling with the hips on a seat edge (when left out), floor, or bench. A dog: floor."`
	Seat    string         `toml:"seat" most:"200" comment:"Name of the [[seat]] that the person sits on or kneels at, or floor. The seat's height is the person's."`
	At      measure.Length `toml:"at" comment:"Of one on the floor alone: where the weight comes down, from midship, forward positive, some 220 mm forward of the back. On a seat it comes a little ahead of the seat's middle: 100 mm kneeling, 50 mm sitting, from memory."`
	Stature measure.Length `toml:"stature" accepts:"700 to 2300 mm, or 0 mm when not known" comment:"Height of the person standing; an average of that mass when left out or 0 mm. A dog has none."`
}

// Gear is one lot of what is carried.
type Gear struct {
	Name   string         `toml:"name" most:"200" accepts:"a name in quotes, as 'Day bag'" comment:"What it is, as \"Day bag\"."`
	Mass   float64        `toml:"mass" accepts:"0.1 to 500 kg" comment:"Kilograms. 0.1 to 500."`
	At     measure.Length `toml:"at" comment:"Its middle along the boat from midship, forward positive."`
	Height measure.Length `toml:"height" accepts:"0 to 1000 mm" comment:"Its middle over the floor; 150 mm when left out or 0 mm."`
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
