// Package materials counts what a boat takes besides its sticks: glue by area, cloth by
// shape, coating by area and coats, cord by lashings, fasteners by places.
package materials

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/wording"
)

// Item is one thing to buy.
type Item struct {
	Key    string  // as price tables name it
	Name   string  // in words
	Amount float64 // in units
	Unit   string  // "kg", "L", "m", "m2", "m3", "each", "lot"
	How    string  // how the amount is worked out
}

// Allowances and rates. Common practice, no source, unless said otherwise.
const (
	GluePerArea = 0.30 // kg/m2 of glue line, both faces wetted
	glueWaste   = 1.5  // mixed and not used
	OilCoats    = 2
	oilPerLitre = 10.0 // m2 of wood and coat
	PegsPerRib  = 2    // one in each head
	TackPitch   = 30.0 // mm along each gunwale
	endLashings = 6.0  // m of cord at each end: stem to keel, gunwales, breasthook
)

// Needs is everything counted for one boat.
type Needs struct {
	Items     []Item
	Cloth     Cloth
	Coating   Coating
	Lashings  Lashings
	Forms     Forms   // none until AddForms counts them
	GlueArea  float64 // mm2
	WoodFaces float64 // mm2 of wood to oil
	Pegs      int
	Tacks     int
}

// Count works out the needs of a frame with its cloth, its fittings and its outfits,
// whose sticks are sawn by the plan.
func Count(f *frame.Frame, c *skin.Cloth, p *cutlist.Plan, kits ...kit.Kit) *Needs {
	n := &Needs{Lashings: lashings(f), GlueArea: glueArea(p), Cloth: sheetOf(f, c), Coating: coatingOf(f.Design.Skin, c)}
	for _, s := range p.Sticks {
		if !s.Spare {
			n.WoodFaces += 2 * (s.Width + s.Thickness) * s.Length
		}
	}
	n.Pegs = PegsPerRib * len(f.Ribs)
	for _, t := range f.Thwarts {
		n.Pegs += len(t.Holes)
	}
	n.Tacks = 2 * int(math.Ceil((f.Gunwale.Fore-f.Gunwale.Aft)/TackPitch))
	n.list(f, p)
	n.fitted(kits)
	return n
}

// glueArea is every glue line: between plies, and in scarfs.
func glueArea(p *cutlist.Plan) float64 {
	sum := 0.0
	members := map[string]int{}
	for i, s := range p.Sticks {
		for _, j := range p.Cuttings[i].Joints {
			sum += s.Width * math.Hypot(j.Length, s.Thickness)
		}
		if m := s.Member; m != "" {
			wide := s.Width
			if s.Edge {
				wide = s.Thickness
			}
			if s.Family == cutlist.Block { // on its faces, and under its strip
				wide += s.Thickness
			}
			if members[m]++; members[m] > 1 {
				sum += wide * s.Length
			}
		}
	}
	return sum
}

func (n *Needs) add(key, name string, amount float64, unit, how string, args ...any) {
	n.Items = append(n.Items, Item{key, name, amount, unit, fmt.Sprintf(how, args...)})
}

func (n *Needs) list(f *frame.Frame, p *cutlist.Plan) {
	add := n.add
	for _, w := range p.Woods {
		if len(w.Boards) > 0 {
			n.wood(w)
		}
	}
	n.cover(f.Design.Skin)
	faces := n.WoodFaces / 1e6
	add("oil", "oil or varnish for the frame", upTo(faces*OilCoats/oilPerLitre, 0.1), "L", "%.1f m2 of wood, %d coats at %.0f m2/L", faces, OilCoats, oilPerLitre)
	if n.GlueArea > 0 {
		glue := n.GlueArea / 1e6
		add("glue", "waterproof glue", upTo(glue*GluePerArea*glueWaste, 0.1), "kg", "%.2f m2 of glue line at %.2f kg/m2, half as much again", glue, GluePerArea)
	}
	add("cord", "lashing cord", upTo(n.Lashings.Total/1000, 1), "m", "%d crossings, a tenth to spare, %.0f m at each end", n.Lashings.Count(), endLashings)
	add("peg", "pegs", float64(n.Pegs), "each", "%d in each rib, and the holes of the cross pieces", PegsPerRib)
	add("tack", "tacks or staples that do not rust", float64(n.Tacks), "each", "every %.0f mm along both gunwales", TackPitch)
	n.thread()
	add("workshop", "abrasives, blades, gloves, masks, rags", 1, "lot", "one lot for a boat")
}

// wood adds what is to be bought of one wood: the boards of the ripping plan that the
// builder does not own.
func (n *Needs) wood(w cutlist.Wood) {
	volume, owned := 0.0, 0
	for _, b := range w.Boards {
		if b.Board.Owned() {
			owned++
		} else {
			volume += b.Board.Volume()
		}
	}
	how := wording.Counted(len(w.Boards)-owned, "board") + " of the ripping plan"
	switch {
	case owned == len(w.Boards):
		how = "nothing to buy: " + wording.Counted(owned, "board") + " of the ripping plan, your own"
	case owned > 0:
		is := "are"
		if owned == 1 {
			is = "is"
		}
		how += fmt.Sprintf("; %d more %s your own", owned, is)
	}
	n.Items = append(n.Items, Item{"wood: " + w.Species, w.Species, volume / 1e9, "m3", how})
}

// fitted adds what kits are bought for, by the price table's keys: what is there
// already grows.
func (n *Needs) fitted(kits []kit.Kit) {
	at := map[string]int{}
	for i, v := range n.Items {
		at[v.Key] = i
	}
	for _, k := range kits {
		for _, t := range k.Things {
			how := t.How + " (" + k.Name + ")"
			i, there := at[t.Key]
			if !there {
				at[t.Key] = len(n.Items)
				n.Items = append(n.Items, Item{t.Key, t.Name, t.Amount, t.Unit, how})
				continue
			}
			n.Items[i].Amount += t.Amount
			n.Items[i].How += "; " + how
			if !strings.Contains(n.Items[i].Name, t.Name) {
				n.Items[i].Name += ", " + t.Name
			}
		}
	}
}

func upTo(v, step float64) float64 {
	const speck = 1e-9
	return math.Round(math.Ceil(v/step-speck)*step*1e6) / 1e6
}

// Lashings are the crossings of ribs with keel and stringers, each lashed in an X.
type Lashings struct {
	Stringers, Keel int     // crossings
	EachStringer    float64 // mm of cord
	EachKeel        float64
	Total           float64 // mm, with a tenth to spare and the ends' own lashings
}

// Count is all crossings.
func (l Lashings) Count() int { return l.Stringers + l.Keel }

// The turns of one lashing, two on each diagonal, and its two tails together, mm.
// Common practice, no source; old beam lashings of skin boats have three to four
// turns (Murdoch, Ninth Annual Report of the Bureau of Ethnology, 1892).
const (
	Turns = 4
	Tails = 200.0
	spare = 1.10
)

// Lashing returns the cord of one X lashing, mm: a rib of width a and thickness t
// crossed by a batten of width b and depth d, with so many turns:
//
//	turns (2 sqrt(a2 + b2) + 2 (t + d)) + tails
//
// Derived: each turn goes over the crossing on one diagonal and back under it.
func Lashing(a, t, b, d float64, turns int, tails float64) float64 {
	return float64(turns)*(2*math.Hypot(a, b)+2*(t+d)) + tails
}

func lashings(f *frame.Frame) Lashings {
	d := f.Design
	a, t := float64(d.Ribs.Width), float64(d.Ribs.Thickness)
	l := Lashings{
		Stringers:    2 * len(f.Stringers) * len(f.Ribs),
		Keel:         len(f.Ribs),
		EachStringer: Lashing(a, t, float64(d.Stringers.Width), float64(d.Stringers.Depth), Turns, Tails),
		EachKeel:     Lashing(a, t, float64(d.Keel.Width), float64(d.Keel.Depth), Turns, Tails),
	}
	l.Total = spare*(float64(l.Stringers)*l.EachStringer+float64(l.Keel)*l.EachKeel) + 2*endLashings*1000
	return l
}
