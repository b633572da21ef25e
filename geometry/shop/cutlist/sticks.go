// Package cutlist turns a frame into the sticks to saw and the sticks into a plan of
// boards: what to rip, what to crosscut, where to scarf. Units: mm, mm2, mm3.
package cutlist

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// Family is what a stick becomes a part of.
type Family string

// The families, in the order in which they are made.
const (
	Gunwale    Family = "gunwale"
	Block      Family = "gunwale block" // of a middle ply that is left open for mortises
	Rib        Family = "rib"
	Stem       Family = "stem"
	Keel       Family = "keel"
	Stringer   Family = "stringer"
	Breasthook Family = "breasthook"
	Thwart     Family = "cross piece"
	Spar       Family = "spar"
	Beam       Family = "beam"
	Fitting    Family = "fitting" // a board of an outfit or of a fitting of the boat
)

// Stick is one piece of wood of the boat, as it is sawn.
type Stick struct {
	Mark      string // "G3", unique in a boat
	Part      string // "port gunwale, ply 3 of 3"
	Family    Family
	Member    string // sticks with the same word are the plies of one part; "" for others
	Edge      bool   // plies are glued edge to edge
	Species   string
	Length    float64 // to cut, trim included
	Width     float64 // the larger side of the finished section
	Thickness float64
	Grain     string
	Wants     Faces   // how the rings should lie in its wide faces; "" where it does not matter
	Net       float64 // wood that stays in the boat, mm3
	Spare     bool    // sawn in case another breaks or sets wrong
	Kit       string  // what it is fitted with; "" for the frame
	Own       bool    // that belongs to the finished boat and is no outfit
	Run       *Run    // how it may be scarfed; nil when it must be one piece
}

// shaped reports whether the stick is sawn to an outline, so that its width need
// not be ripped exactly.
func (s Stick) shaped() bool {
	return s.Family == Breasthook || s.Family == Thwart || s.Family == Fitting || s.Family == Stem && s.Member == ""
}

// Outfit reports whether the stick is an outfit's and not the boat's.
func (s Stick) Outfit() bool { return s.Kit != "" && !s.Own }

// Scope is the narrowest part of the build that needs the stick.
func (s Stick) Scope() kit.Scope {
	switch {
	case s.Kit == "":
		return kit.FrameAndSkin
	case s.Own:
		return kit.ReadyForWater
	}
	return kit.WithOutfits
}

// Run is a long stick along the boat. Places are along the stock from midship.
type Run struct {
	Aft, Fore float64      // of the stock, trim included
	Scarf     float64      // length of one scarf at the design's slope
	Rooms     []frame.Zone // where a whole scarf may lie
	Borne     []frame.Zone // where one may lie too if need be: in a curve that the wood bears for years
	Heat      []frame.Zone // what is steamed before it is bent in; nil for nothing
	Fixed     []float64    // middles of the scarfs that the design places in this stick
	Beside    string       // sticks with the same word lie side by side and stagger their scarfs
}

// along returns the sides of a blank, along the grain and across.
func along(blank curve.Path) (long, wide float64) { return blank[0].Length(), blank[1].Length() }

// Sticks lists every piece of wood of a frame, its fittings and its outfits, each once.
func (h Heat) Sticks(f *frame.Frame, kits ...kit.Kit) []Stick {
	var out []Stick
	for _, add := range []func(*frame.Frame) []Stick{gunwales, ribs, stems, keel, h.stringers, breasthooks, thwarts} {
		out = append(out, add(f)...)
	}
	out = append(out, fitted(kits)...)
	for i := range out {
		s := &out[i]
		s.Width, s.Thickness = max(s.Width, s.Thickness), min(s.Width, s.Thickness)
		if wood, err := f.Design.Wood(s.Species); err == nil {
			s.Species = wood.Name // however the design spells it
		}
	}
	return out
}

func gunwales(f *frame.Frame) []Stick {
	g, d := &f.Gunwale, f.Design
	n := d.Gunwale.Plies
	long := g.Fore - g.Aft
	slots := 0.0
	for _, m := range g.Mortises {
		slots += m.Length * m.Width * m.Depth
	}
	gaps := g.Blocks != nil
	if gaps {
		slots = 0 // the blocks have none
	}
	var out []Stick
	for s, side := range []string{"port", "starboard"} {
		for i := range n {
			run := &Run{Aft: g.Aft - frame.EndTrim, Fore: g.Fore + frame.EndTrim, Scarf: g.ScarfLength, Rooms: g.ScarfRooms(g.ScarfLength), Beside: side + " gunwale"}
			for k, scarf := range g.Scarfs {
				if k%n == i {
					run.Fixed = append(run.Fixed, scarf.Middle)
				}
			}
			wide, grained := g.Height, "along, straightest"
			if g.Made() {
				wide, grained = g.Height+run.bows(g), "along, straightest; saw the sheer's curve"
			}
			part := side + " gunwale"
			if n > 1 {
				part += fmt.Sprintf(", ply %d of %d", i+1, n)
			}
			out = append(out, Stick{Mark: fmt.Sprintf("G%d", s*n+i+1), Part: part, Family: Gunwale, Member: side + " gunwale", Species: d.Gunwale.Species,
				Length: run.Fore - run.Aft, Width: wide, Thickness: g.Width / float64(n),
				Grain: grained, Net: (long*g.Width*g.Height - slots) / float64(n), Run: run})
			if gaps && i == n/2 {
				out[len(out)-1].overGaps(g.Mortises[0].Depth, g.Height)
			}
		}
		out = append(out, blocks(f, side)...)
	}
	return out
}

// bows returns how much wider than the finished gunwale its stock must be, mm: how far the
// made sheer leaves the chord from end to end. Sticks are scarfed straight and then sawn.
func (r *Run) bows(g *frame.Gunwale) float64 {
	a, b := g.Raised(r.Aft), g.Raised(r.Fore)
	most := 0.0
	const places = 128 // a parabola between them leaves 1 part in 10,000
	for i := range places {
		share := float64(i) / places
		most = math.Max(most, a+(b-a)*share-g.Raised(r.Aft+(r.Fore-r.Aft)*share))
	}
	return math.Ceil(most)
}

// ribs are the blanks of all ribs, and spare ones as long as the longest.
func ribs(f *frame.Frame) []Stick {
	d := f.Design.Ribs
	w, t := float64(d.Width), float64(d.Thickness)
	blank := Stick{Family: Rib, Species: d.Species, Width: w, Thickness: t, Grain: "along, straightest", Wants: FlatFaces}
	var out []Stick
	longest := 0.0
	for _, r := range f.Ribs {
		s := blank
		s.Mark, s.Part, s.Length, s.Net = "R-"+r.Name, "rib "+r.Name, r.Blank, (r.Length+2*r.Tenon)*w*t
		out, longest = append(out, s), math.Max(longest, r.Blank)
	}
	for i := range d.Spare {
		s := blank
		s.Mark, s.Part, s.Length, s.Spare = fmt.Sprintf("RS%d", i+1), fmt.Sprintf("spare rib %d of %d", i+1, d.Spare), longest, true
		out = append(out, s)
	}
	return out
}

// stems are sawn from plank, or glued from layers round their forefoot; those of plywood
// are no sticks.
func stems(f *frame.Frame) []Stick {
	var out []Stick
	b, made, wood := f.Design.Bending, f.Design.MadeStems(), f.Design.StemWood()
	if made == design.StemsPlywood {
		return nil
	}
	for i, s := range []frame.Stem{f.Bow, f.Stern} {
		mark, net := fmt.Sprintf("T%d", i+1), area(s.Outline)*s.Thickness
		if made == design.StemsSolid {
			long, wide := along(s.Blank())
			out = append(out, Stick{Mark: mark, Part: s.End + " stem", Family: Stem, Species: wood,
				Length: long, Width: wide, Thickness: s.Thickness, Grain: "along the arrow on the pattern", Net: net})
			continue
		}
		outer := f.Hull.Bow.Outer
		if i == 1 {
			outer = f.Hull.Stern.Outer
		}
		long := outer.Length() + (s.ToeX - s.FootX) + 2*frame.EndTrim
		for k := range b.StemPlies {
			out = append(out, Stick{Mark: fmt.Sprintf("%s-%d", mark, k+1), Part: fmt.Sprintf("%s stem, ply %d of %d", s.End, k+1, b.StemPlies), Family: Stem, Member: s.End + " stem", Species: wood,
				Length: long, Width: s.Thickness, Thickness: s.Moulded / float64(b.StemPlies), Grain: "along, straightest", Wants: FlatFaces, Net: net / float64(b.StemPlies)})
		}
	}
	return out
}

func keel(f *frame.Frame) []Stick {
	k := f.Design.Keel
	w, t := float64(k.Width), float64(k.Depth)
	run := battenRun(f, k.Species, f.Keel.Line, f.Keel.Aft, f.Keel.Fore, t)
	run.Beside = "keel"
	return []Stick{{Mark: "K1", Part: "keel", Family: Keel, Species: k.Species, Length: run.Fore - run.Aft, Width: w, Thickness: t,
		Grain: "along", Net: w * t * (f.Keel.Fore - f.Keel.Aft), Run: run}}
}

func (h Heat) stringers(f *frame.Frame) []Stick {
	d := f.Design.Stringers
	w, t := float64(d.Width), float64(d.Depth)
	var out []Stick
	for _, side := range []string{"port", "starboard"} {
		for _, s := range f.Stringers {
			run := battenRun(f, d.Species, s.Line, s.Aft, s.Fore, t)
			run.Beside, run.Heat = side+" stringers", h[s.Number]
			out = append(out, Stick{Mark: fmt.Sprintf("S%d%s", s.Number, side[:1]), Part: fmt.Sprintf("%s stringer %d", side, s.Number), Family: Stringer, Species: d.Species,
				Length: run.Fore - run.Aft, Width: w, Thickness: t, Grain: "along, straight", Net: w * t * (s.Fore - s.Aft), Run: run})
		}
	}
	return out
}

func breasthooks(f *frame.Frame) []Stick {
	var out []Stick
	for i, b := range []frame.Breasthook{f.BowHook, f.SternHook} {
		long, wide := along(b.Blank())
		out = append(out, Stick{Mark: fmt.Sprintf("B%d", i+1), Part: b.End + " breasthook", Family: Breasthook, Species: f.Design.Breasthook.Species,
			Length: long, Width: wide, Thickness: b.Thickness, Grain: "as on the pattern", Net: area(b.Outline) * b.Thickness})
	}
	return out
}

func thwarts(f *frame.Frame) []Stick {
	var out []Stick
	for i, t := range f.Thwarts {
		long, wide := along(t.Blank())
		out = append(out, Stick{Mark: frame.CrossMark(i), Part: t.Name, Family: Thwart, Species: f.Design.Thwarts[i].Species,
			Length: long, Width: wide, Thickness: t.Thickness, Grain: "along", Net: area(t.Outline) * t.Thickness})
	}
	return out
}

// area is what a closed outline holds, mm2.
func area(outline curve.Path) float64 {
	const chord = 0.05 // mm
	return math.Abs(curve.Area(outline.Flatten(chord)))
}

// Finished is the wood of finished sticks.
type Finished struct {
	Volume float64 // mm3
	Mass   float64 // kg
}

// Finished returns the wood that stays in the boat and in its outfits.
//
// Errors: a wood that the design does not know.
func (p *Plan) Finished(d *design.Design) (boat, outfits Finished, err error) {
	for _, s := range p.Sticks {
		wood, err := d.Wood(s.Species)
		if err != nil {
			return boat, outfits, fmt.Errorf("%s: %w", s.Part, err)
		}
		of := &boat
		if s.Outfit() {
			of = &outfits
		}
		of.Volume += s.Net
		of.Mass += s.Net * wood.Density * 1e-9
	}
	return boat, outfits, nil
}

// glueUp is the thickest spar or beam that is sawn as one, and glueBoard the thickest
// board of an outfit, mm; thicker ones are glued from layers. Common practice, no
// source: nobody buys thick stock for one mast step.
const (
	glueUp    = 45.0
	glueBoard = 25.0
)

// edgeUp is the widest board of an outfit that is sawn as one, mm; wider ones are glued
// edge to edge. Common practice, no source.
const edgeUp = 280.0

// fitted are the sticks of all kits: P of the boat itself, X of outfits.
func fitted(kits []kit.Kit) []Stick {
	var out []Stick
	number := map[bool]int{}
	for _, k := range kits {
		for _, p := range k.Pieces {
			for i := range p.Count {
				number[k.Own]++
				letter := map[bool]string{true: "P", false: "X"}[k.Own]
				for _, s := range layers(p, fmt.Sprintf("%s%d", letter, number[k.Own]), name(k, p, i)) {
					s.Kit, s.Own = k.Name, k.Own
					out = append(out, s)
				}
			}
		}
	}
	return out
}

// scarfed lets a stick be scarfed at a slope, away from its ends.
func scarfed(s Stick, slope float64) *Run {
	half, long := s.Length/2, slope*s.Thickness
	run := &Run{Aft: -half, Fore: half, Scarf: long, Beside: s.Part}
	if room := (frame.Zone{From: -half * 0.8, To: half * 0.8}); room.To-room.From > long {
		run.Rooms = []frame.Zone{room}
	}
	return run
}

func name(k kit.Kit, p kit.Piece, i int) string {
	out := wording.Capital(p.Name)
	if p.Count > 1 {
		out = fmt.Sprintf("%s, %d of %d", out, i+1, p.Count)
	}
	if k.Own {
		return out
	}
	return fmt.Sprintf("%s (%s)", out, k.Name)
}

// layers are the sticks of one piece: layers of a thick one, staves of a wide board.
func layers(p kit.Piece, mark, name string) []Stick {
	s := Stick{Mark: mark, Part: name, Family: Fitting, Species: p.Wood, Length: math.Ceil(p.Long + 2*frame.Around), Width: p.Wide, Thickness: p.Thick, Grain: p.Grain, Net: p.Volume()}
	if s.Grain == "" {
		s.Grain = "along"
	}
	switch p.Form {
	case kit.Spar:
		s.Family, s.Grain, s.Length = Spar, "along, straightest, no knots", math.Ceil(p.Long+2*frame.EndTrim)
	case kit.Beam:
		s.Family, s.Grain, s.Length = Beam, "along, straightest, no knots", math.Ceil(p.Long+2*frame.EndTrim)
	}
	if p.Scarf > 0 {
		s.Run = scarfed(s, p.Scarf)
	}
	thick := glueUp
	if p.Form == kit.Board {
		thick = glueBoard
	}
	const word = "layer"
	n := max(1, int(math.Ceil(p.Thick/thick)))
	s.Thickness /= float64(n)
	if n == 1 && p.Wide > edgeUp { // what is thick as well is left in whole widths
		return s.staves(int(math.Ceil(p.Wide / edgeUp)))
	}
	return s.parted(n, word)
}

// parted shares a stick out over so many that become one part.
func (s Stick) parted(n int, word string) []Stick {
	if n == 1 {
		return []Stick{s}
	}
	out := make([]Stick, n)
	for i := range out {
		out[i] = s
		out[i].Mark, out[i].Part, out[i].Member = fmt.Sprintf("%s-%d", s.Mark, i+1), fmt.Sprintf("%s, %s %d of %d", s.Part, word, i+1, n), s.Part
		out[i].Net = s.Net / float64(n)
	}
	return out
}
