package sail

import (
	"cmp"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/wording"
)

// taper is the share of a parallel stick that a tapered spar weighs. Common practice, no source.
const taper = 0.8

// The boards' measures, mm. The step is as old canoes had it, some 130 mm square and
// 38 thick, drawn out to lie on two ribs. Common practice, no source.
const (
	StepThick   = 38.0
	StepWide    = 127.0
	PartnerWide = 130.0
	PartnerRoom = 5.0  // of its hole round the mast: leather of 2 mm, and some play
	BracketBar  = 60.0 // the bar across the gunwales that holds the leeboard: along the boat
	BracketHigh = 32.0
	CheekLong   = 220.0 // of the bracket, along the boat; the bar passes through it
	CheekDown   = 150.0 // under the bar
	CheekUp     = 28.0  // over the bar
	CheekThick  = 18.0
	CheekGap    = 6.0   // from the gunwale
	BladeRoom   = 2.0   // more than the blade between the cheeks
	PegRoom     = 25.0  // of the bar beyond the outer cheek, for a bolt that keeps it on
	PivotDown   = 105.0 // of the blade's bolt under the bar
	BladeHead   = 70.0  // of the blade over its bolt
)

// rodLong goes through both sides of the box with a nut at each end, mm.
const rodLong = PartnerWide + 2*BoxThick + 24

// CheekHigh is the height of a cheek, mm.
const CheekHigh = CheekDown + BracketHigh + CheekUp

// How many clips hold the partner, and the leeboard's bracket, to the gunwales.
const (
	PartnerClips = 4
	BracketClips = 2
)

// StepLong is the step's length along the boat, mm: the partner's breadth, so that the
// sides of the box meet both.
const StepLong = PartnerWide

// StepAcross is the step's breadth, mm: wood enough beside each hole.
func (f *Fit) StepAcross() float64 {
	if f.Sail.Rig != design.Vee {
		return math.Max(StepWide, math.Ceil(f.Mast.Diameter)+64)
	}
	return math.Ceil(2*(f.Spread(f.Mast.StepZ+StepThick)+f.Mast.Diameter/2)) + 64
}

// PartnerLong is the partner's length across the boat, mm.
func (f *Fit) PartnerLong() float64 {
	return 2 * (math.Ceil(f.Boat.Rail(f.Mast.At-PartnerWide/2).Y) + 25)
}

// BracketLong is the length of the leeboard's bar across the boat, mm: enough where the
// boat is widest in the bracket's range.
func (f *Fit) BracketLong() float64 {
	ribs := f.Boat.Frame.Ribs
	low, high := math.Max(f.Board.Range[0], ribs[0].Station), math.Min(f.Board.Range[1], ribs[len(ribs)-1].Station)
	widest := math.Max(f.side(f.BracketAt()), math.Max(f.side(low), f.side(high)))
	for x := low; x < high; x += CheekLong {
		widest = math.Max(widest, f.side(x))
	}
	return 2 * math.Ceil(widest+f.cheeks()+PegRoom)
}

// CheeksAt is how far from the middle line the outer face of the outer cheek lies, mm.
func (f *Fit) CheeksAt() float64 { return f.side(f.BracketAt()) + f.cheeks() }

// cheeks is what stands outside the boat's side, mm: both cheeks and the blade.
func (f *Fit) cheeks() float64 { return CheekGap + 2*CheekThick + f.Board.Thick + BladeRoom }

// side is the greatest half-breadth of gunwale or hull beside a cheek whose middle
// stands at a station, mm: the cheek is straight and the boat is not.
func (f *Fit) side(station float64) float64 {
	widest := 0.0
	const steps = 8
	for i := range steps + 1 {
		x := station + CheekLong*(float64(i)/steps-0.5)
		widest = math.Max(widest, f.Boat.Rail(x).Y)
		for _, p := range f.Boat.Hull.Outline(x) {
			widest = math.Max(widest, p.X)
		}
	}
	return widest
}

// Items lists what the rig weighs, sail up.
//
// Errors: a wood that is not known.
func (f *Fit) Items() ([]weight.Item, error) { return f.Kit().Items(f.Boat.Frame.Design) }

// The entries of the list of weights.
const (
	sticks   = "Mast and spars"
	canvas   = "Sail"
	fittings = "Step, partner, leeboard"
)

// Kit lists what the rig is made of.
func (f *Fit) Kit() kit.Kit {
	k := kit.Kit{Name: "sail", Pieces: append(f.sticks(), f.boards()...), Corners: len(f.Plan.Corners)}
	roll := 0.0                        // m, the panels one after the other
	for _, p := range f.Cloth.Panels { // hems once round each panel, seams are among them
		roll += geometry.Around(p.Outline...).W() / 1000
		for i, a := range p.Outline {
			k.Sewing += p.Outline[(i+1)%len(p.Outline)].Sub(a).Norm() / 1000
		}
	}
	roll = math.Ceil(roll*10) / 10
	center := f.Plan.Center()
	up := at(f.Mast.At+center.X, f.Tack+center.Y)
	if f.Sail.Rig == design.Vee {
		up.X = f.Mast.At
	}
	const sewn = 1.25 // hems, patches, lines
	k.Things = append(k.Things, kit.Thing{Group: canvas, Key: "sailcloth", Name: fmt.Sprintf("sailcloth of %.0f g/m2", f.Sail.Cloth), Amount: math.Ceil(roll*float64(f.Sail.Bolt)/1000*10) / 10, Unit: "m2",
		How:  fmt.Sprintf("%.1f m off a roll of %.0f mm: %s one after the other, hems and seams in them", roll, float64(f.Sail.Bolt), wording.Counted(len(f.Cloth.Panels), "panel")),
		Mass: f.Plan.Area() * f.Sail.Cloth / 1000 * sewn, At: up})
	long, cords := 0.0, f.Lines()
	for _, l := range cords {
		long += l.Long
	}
	_, eyelets := f.Eyelets()
	g, mid := f.Boat.Frame.Gunwale, at(f.Mast.At, f.Mast.PartnerZ)
	k.Things = append(k.Things, kit.Thing{Key: "line", Name: "line that stretches little", Amount: math.Ceil(long), Unit: "m",
		How: wording.List(cords, func(l Line) string { return fmt.Sprintf("%s %.1f m of %d mm", l.Name, l.Long, l.Thick) }) + "; its weight is in the sail's"},
		kit.Thing{Key: "eyelet", Name: "eyelets of 10 mm, brass", Amount: float64(eyelets), Unit: "each", How: "as the rigging says"},
		f.leather(mid),
		kit.Bolts(fittings, PartnerClips, fmt.Sprintf("%.0f mm long, one through each clip of the partner", clip.BoltLong(g, PartnerThick)), mid))
	k.Things = append(k.Things, kit.Thing{Group: fittings, Key: "rod", Name: "threaded rods of 8 mm that do not rust, with washers and locking nuts", Amount: 4, Unit: "each",
		How: fmt.Sprintf("%.0f mm long: two through the sides of the box and the partner, two through the sides and the step", rodLong), Mass: 4 * 0.09, At: at(f.Mast.At, f.Mast.PartnerZ)})
	if f.Mast.Long > 0 {
		k.Things = append(k.Things, kit.Thing{Key: "cleat", Name: "cleat for a line of 5 mm, with screws", Amount: 1, Unit: "each", How: "for the halyard, on the mast"})
	}
	if n := f.Sleeves(); n > 0 {
		k.Things = append(k.Things, kit.Thing{Group: sticks, Key: "sleeve", Name: "sleeves of aluminum tube that join the spars' pieces", Amount: float64(n), Unit: "each",
			How:  fmt.Sprintf("%.0f mm inside, %.0f mm wall, %.0f mm long", f.Mast.Diameter, sleeveWall, f.SleeveLong()),
			Mass: float64(n) * f.sleeveMass(), Dense: aluminum, At: at(f.Mast.At, f.Tack)})
	}
	if f.Board.Area > 0 {
		bar := at(f.BracketAt(), f.Mast.PartnerZ)
		k.Things = append(k.Things, kit.Bolts(fittings, BracketClips+1, fmt.Sprintf("%.0f mm long, one through each clip of the bracket, and one to keep the cheeks on, on the side in use", clip.BoltLong(g, BracketHigh)), bar),
			kit.Thing{Group: fittings, Key: "pivot", Name: "bolt of 12 mm that does not rust, with washers and a locking nut", Amount: 1, Unit: "each",
				How: fmt.Sprintf("%.0f mm long; the leeboard turns on it, between its cheeks", math.Ceil((2*CheekThick+f.Board.Thick+BladeRoom+20)/10)*10), Mass: 0.2, At: bar})
	}
	return k
}

// leather lines the partner's hole and what bears on a gunwale.
func (f *Fit) leather(mid geometry.Point3) kit.Thing {
	hide := float64(f.Mast.Count)*math.Pi*f.Mast.Diameter*PartnerThick + 2*PartnerWide*(f.Boat.Frame.Gunwale.Width+20)
	if f.Board.Area > 0 {
		hide += 2 * BracketBar * (f.Boat.Frame.Gunwale.Width + 20)
	}
	hide = math.Ceil(hide/1e4) / 100
	const leatherMass = 1.8 // kg a square metre
	return kit.Thing{Group: fittings, Key: "leather", Name: "leather of 2 mm", Amount: hide, Unit: "m2", How: "round the mast in the partner, over the gunwales under partner and bracket", Mass: hide * leatherMass, Dense: 900, At: mid}
}

func (f *Fit) sticks() []kit.Piece {
	var out []kit.Piece
	add := func(name string, count int, long, diameter, x, z float64) {
		out = append(out, kit.Piece{Group: sticks, Name: name, Count: count, Form: kit.Spar, Wood: f.Sail.Spars,
			Long: long, Wide: diameter, Thick: diameter, Fill: taper * kit.Round, At: at(x, z)})
	}
	if f.Mast.Long > 0 {
		add("mast", 1, f.Mast.Long, f.Mast.Diameter, f.Mast.At, f.Mast.StepZ+0.45*f.Mast.Long)
	}
	for _, s := range f.Plan.Spars {
		x, mid := f.Mast.At, s.From.Lerp(s.To, 0.5)
		if f.Sail.Rig != design.Vee {
			x += mid.X
		}
		n := f.Pieces(s)
		add(s.Name, n, s.Length()/float64(n), cmp.Or(s.Diameter, leastSpar), x, f.Tack+mid.Y)
	}
	return out
}

func (f *Fit) boards() []kit.Piece {
	board := func(name string, count int, long, wide, thick, fill float64, p geometry.Point3) kit.Piece {
		return kit.Piece{Group: fittings, Name: name, Count: count, Wood: f.Sail.Boards, Long: long, Wide: wide, Thick: thick, Fill: fill, At: p}
	}
	m := f.Mast
	long, across := StepLong, f.StepAcross()
	holes := func(easy float64) float64 { // of mast or spars
		return float64(m.Count) * kit.Round * (m.Diameter + easy) * (m.Diameter + easy)
	}
	side := func(name string, way float64) kit.Piece {
		high, wide := f.BoxHigh(way), f.BoxWide()
		return board(name, 1, math.Max(high, wide), math.Min(high, wide), BoxThick, 1, at(m.At, m.StepZ+high/2))
	}
	out := []kit.Piece{
		board("Mast step", 1, across, long, StepThick, 1-holes(1)/(long*across), at(m.At, m.StepZ+StepThick/2)),
		board("Mast bed", 1, f.Bed.Long, BedWide, BedThick, 1, at(m.At, m.StepZ-BedThick/2)),
		side("Fore side of the mast box", 1),
		side("After side of the mast box", -1),
		board("Mast partner", 1, f.PartnerLong(), PartnerWide, PartnerThick, 1-holes(PartnerRoom)/(f.PartnerLong()*PartnerWide), at(m.At, m.PartnerZ)),
	}
	clips, mid := PartnerClips, m.At
	if b := f.Board; b.Area > 0 {
		_, o := f.Boat.GunwaleTop(f.BracketAt())
		x, low := f.BracketAt(), o.Z-PivotDown+BladeHead-b.Long/2
		out = append(out,
			board("Leeboard", 1, b.Long, b.Chord, math.Max(b.Thick, 16), 0.85, at(x, low)),
			board("Leeboard bracket", 1, f.BracketLong(), BracketBar, BracketHigh, 1, at(x, o.Z+BracketHigh/2)),
			board("Cheek of the bracket", 2, CheekHigh, CheekLong, CheekThick, 0.88, at(x, o.Z-CheekDown/2)))
		out[len(out)-1].Grain = "up and down as it hangs" // the blade bends it across the other way
		clips, mid = PartnerClips+BracketClips, (2*m.At+x)/3
	}
	return append(out, kit.Clip(f.Boat.Frame.Gunwale, fittings, f.Sail.Boards, clips, at(mid, m.PartnerZ)))
}

func at(x, z float64) geometry.Point3 { return geometry.Point3{X: x, Z: z} }
