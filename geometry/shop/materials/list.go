package materials

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/outfit/kit"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/wording"
)

// list puts the needs into items, wood first.
func (n *Needs) list(f *frame.Frame, p *cutlist.Plan) {
	add := func(key, name string, amount float64, unit, how string, args ...any) {
		n.Items = append(n.Items, Item{key, name, amount, unit, fmt.Sprintf(how, args...)})
	}
	for _, w := range p.Woods {
		if len(w.Boards) > 0 {
			add("wood: "+w.Species, w.Species, w.Bought/1e9, "m3", "%s of the ripping plan", wording.Counted(len(w.Boards), "board"))
		}
	}
	sheet := n.Cloth.Length * n.Cloth.Width / 1e6
	area := n.Cloth.Area / 1e6
	add("cloth", "cloth for the skin", upTo(sheet, 0.1), "m2", "one sheet of %.2f x %.2f m", n.Cloth.Length/1000, n.Cloth.Width/1000)
	add("coating", "coating of the skin", upTo(area*CoatPerArea, 0.1), "L", "%.2f m2 at %.2f L/m2, %d coats in all", area, CoatPerArea, Coats)
	faces := n.WoodFaces / 1e6
	add("oil", "oil or varnish for the frame", upTo(faces*OilCoats/oilPerLitre, 0.1), "L", "%.1f m2 of wood, %d coats at %.0f m2/L", faces, OilCoats, oilPerLitre)
	if n.GlueArea > 0 {
		glue := n.GlueArea / 1e6
		add("glue", "waterproof glue", upTo(glue*GluePerArea*glueWaste, 0.1), "kg", "%.2f m2 of glue line at %.2f kg/m2, half as much again", glue, GluePerArea)
	}
	add("cord", "lashing cord", upTo(n.Lashings.Total/1000, 1), "m", "%d crossings, a tenth to spare, %.0f m at each end", n.Lashings.Count(), endLashings)
	add("peg", "pegs", float64(n.Pegs), "each", "%d in each rib, and the holes of the cross pieces", PegsPerRib)
	add("tack", "tacks or staples that do not rust", float64(n.Tacks), "each", "every %.0f mm along both gunwales", tackPitch)
	add("thread", "waxed thread", 2*threadPerEnd, "m", "%.0f m for each end", threadPerEnd)
	add("workshop", "abrasives, blades, gloves, masks, rags", 1, "lot", "one lot for a boat")
}

// outfits adds what outfits are bought for, by the price table's keys: what is there
// already grows.
func (n *Needs) outfits(kits []kit.Kit) {
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

// upTo rounds an amount up to a whole number of steps.
func upTo(v, step float64) float64 {
	const speck = 1e-9
	return math.Round(math.Ceil(v/step-speck)*step*1e6) / 1e6
}
