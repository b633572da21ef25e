// Package materials counts what a boat takes besides its sticks: glue by area, cloth by
// shape, coating by area and coats, cord, pegs, screws and bolts by the joints.
package materials

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/boat/joint"
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
	kit.Share
}

// Allowances and rates. Common practice, no source, unless said otherwise.
const (
	GluePerArea = 0.30 // kg/m2 of glue line, both faces wetted
	glueWaste   = 1.5  // mixed and not used
	OilCoats    = 2
	oilPerLitre = 10.0 // m2 of wood and coat
	TackPitch   = 30.0 // mm along each gunwale
	CordSpare   = 1.10 // of cord
)

// Needs is everything counted for one boat.
type Needs struct {
	Items     []Item
	Cloth     Cloth
	Coating   Coating
	Joints    *joint.Joints
	Forms     Forms     // none until AddForms counts them
	GlueArea  float64   // mm2
	WoodFaces float64   // mm2 of wood to oil
	Glued     kit.Share // of the glue lines
	Faces     kit.Share // of the wood to oil
	Tacks     int
}

// Count works out the needs of a frame by its joints, its cloth, its fittings and its
// outfits, whose sticks are sawn by the plan.
func Count(j *joint.Joints, c *skin.Cloth, p *cutlist.Plan, kits ...kit.Kit) *Needs {
	f := j.Frame
	n := &Needs{Joints: j, Cloth: sheetOf(f, c), Coating: coatingOf(f.Design.Skin, c)}
	n.GlueArea, n.Glued = glueArea(p)
	n.GlueArea += j.Glue() + stemGlue(f)
	for _, s := range p.Sticks {
		if !s.Spare {
			faces := 2 * (s.Width + s.Thickness) * s.Length
			n.WoodFaces += faces
			n.Faces.Take(s.Scope(), faces)
		}
	}
	if f.Design.Skin.Cloth > 0 {
		n.Tacks = 2 * int(math.Ceil((f.Gunwale.Fore-f.Gunwale.Aft)/TackPitch))
	}
	n.list(p)
	n.fitted(kits)
	return n
}

// glueArea is every glue line of the sticks: between plies, and in scarfs.
func glueArea(p *cutlist.Plan) (sum float64, share kit.Share) {
	members := map[string]int{}
	for i, s := range p.Sticks {
		before := sum
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
		share.Take(s.Scope(), sum-before)
	}
	return sum, share
}

func (n *Needs) add(key, name string, amount float64, unit, how string, args ...any) {
	n.Items = append(n.Items, Item{Key: key, Name: name, Amount: amount, Unit: unit, How: fmt.Sprintf(how, args...)})
}

// shared says what kits take of the last thing, by what they take of the quantity that its
// amount follows from: each scope by itself is taken in whole steps.
func (n *Needs) shared(s kit.Share, of, step, each float64) {
	last := &n.Items[len(n.Items)-1]
	upTo := func(all kit.Scope) float64 { return upTo(each*s.Within(of, all), step) }
	ready := upTo(kit.ReadyForWater)
	last.Share = kit.Share{Own: ready - upTo(kit.FrameAndSkin), Outfits: last.Amount - ready}
}

func (n *Needs) list(p *cutlist.Plan) {
	add := n.add
	for _, w := range p.Woods {
		if len(w.Boards) > 0 {
			n.wood(p, w)
		}
	}
	n.cover(n.Joints.Frame.Design.Skin)
	faces := n.WoodFaces / 1e6
	add("oil", "oil or varnish for the frame", upTo(faces*OilCoats/oilPerLitre, 0.1), "L", "%.1f m2 of wood, %d coats at %.0f m2/L", faces, OilCoats, oilPerLitre)
	n.shared(n.Faces, n.WoodFaces, 0.1, 1e-6*OilCoats/oilPerLitre)
	if n.GlueArea > 0 {
		glue := n.GlueArea / 1e6
		add("glue", "waterproof glue", upTo(glue*GluePerArea*glueWaste, 0.1), "kg", "%.2f m2 of glue line at %.2f kg/m2, half as much again", glue, GluePerArea)
		n.shared(n.Glued, n.GlueArea, 0.1, 1e-6*GluePerArea*glueWaste)
	}
	n.joints(add)
	if n.Joints.Frame.Design.Skin.Cloth > 0 {
		add("tack", "tacks or staples that do not rust", float64(n.Tacks), "each", "every %.0f mm along both gunwales", TackPitch)
		n.thread()
	}
	add("workshop", "abrasives, blades, gloves, masks, rags", 1, "lot", "one lot for a boat")
}

// wood adds what is to be bought of one wood: the boards of the ripping plan that the
// builder does not own.
func (n *Needs) wood(p *cutlist.Plan, w cutlist.Wood) {
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
	n.Items = append(n.Items, Item{"wood: " + w.Species, w.Species, volume / 1e9, "m3", how, p.Bill(w, volume/1e9)})
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
				i, n.Items = len(n.Items), append(n.Items, Item{Key: t.Key, Name: t.Name, Amount: t.Amount, Unit: t.Unit, How: how})
				n.Items[i].Take(k.Scope(), t.Amount)
				continue
			}
			n.Items[i].Amount += t.Amount
			n.Items[i].Take(k.Scope(), t.Amount)
			if !strings.Contains(n.Items[i].How, how) {
				n.Items[i].How += "; " + how
			}
			n.Items[i].Name = bothNames(n.Items[i].Name, t.Name)
		}
	}
}

// Together lists what several boats take: their wood by the plan that saws all of it,
// everything else added up.
func Together(each [][]Item, p *cutlist.Plan) *Needs {
	n := &Needs{}
	for _, w := range p.Woods {
		if len(w.Boards) > 0 {
			n.wood(p, w)
		}
	}
	at, boats := map[string]int{}, map[string]int{}
	for _, items := range each {
		for _, v := range items {
			if strings.HasPrefix(v.Key, "wood: ") {
				continue
			}
			i, there := at[v.Key]
			if !there {
				i = len(n.Items)
				at[v.Key], n.Items = i, append(n.Items, Item{Key: v.Key, Name: v.Name, Unit: v.Unit})
			}
			boats[v.Key]++
			n.Items[i].Amount += v.Amount
			n.Items[i].How = "added up for " + wording.Counted(boats[v.Key], "boat")
			n.Items[i].Name = bothNames(n.Items[i].Name, v.Name)
		}
	}
	return n
}

// bothNames names what two things are that are bought as one: where one says what it is for and
// the other is the same for something else, by what both are.
func bothNames(a, b string) string {
	switch {
	case strings.HasPrefix(a, b+" for "):
		return b
	case strings.HasPrefix(b, a+" for "), strings.Contains(a, b):
		return a
	}
	return a + ", " + b
}

func upTo(v, step float64) float64 {
	const speck = 1e-9
	return math.Round(math.Ceil(v/step-speck)*step*1e6) / 1e6
}
