package cost

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
)

// Line is one thing to buy with its price.
type Line struct {
	materials.Item
	Each   float64 // price of a unit; 0 where boards are priced one by one
	Likely float64
	Spread float64 // share by which it may be off either way
	From   string  // where the price comes from: "wood.other of table mixed"
}

// Estimate is the cost of the materials.
type Estimate struct {
	Lines   []Line
	Missing []string // things without a price
	Likely  float64
	// Off is by how much the sum may be off when prices err on their own, one up and
	// one down; OffAll when all err the same way.
	Off, OffAll float64
}

// Of prices a bill.
func Of(n *materials.Needs, p *cutlist.Plan, t *Table) Estimate {
	var out Estimate
	squares := 0.0
	for _, item := range n.Items {
		l, ok := t.price(item, p)
		if !ok {
			out.Missing = append(out.Missing, item.Name)
			continue
		}
		out.Lines = append(out.Lines, l)
		out.Likely += l.Likely
		out.OffAll += l.Likely * l.Spread
		squares += l.Likely * l.Spread * l.Likely * l.Spread
	}
	out.Off = math.Sqrt(squares)
	return out
}

func (t *Table) price(item materials.Item, p *cutlist.Plan) (Line, bool) {
	l := Line{Item: item}
	kind, species, isWood := strings.Cut(item.Key, ": ")
	if !isWood {
		each, ok := t.Item[item.Key]
		l.Each, l.Likely, l.Spread = each, each*item.Amount, t.spread(item.Key)
		l.From = fmt.Sprintf("item.%s of %s", item.Key, t.Name)
		return l, ok
	}
	l.Spread = t.spread(kind)
	if boards, sum, ok := named(p, species); ok {
		l.Likely, l.From = sum, fmt.Sprintf("%d boards at the prices in the design", boards)
		return l, true
	}
	key := species
	if _, ok := t.Wood[key]; !ok {
		key = "other"
	}
	l.Each = t.Wood[key]
	l.Likely, l.From = l.Each*item.Amount, fmt.Sprintf("wood.%s of %s", key, t.Name)
	return l, true
}

// named adds up the boards of a wood, when all have a price of their own.
func named(p *cutlist.Plan, species string) (boards int, sum float64, ok bool) {
	for _, w := range p.Woods {
		if w.Species != species {
			continue
		}
		for _, b := range w.Boards {
			if b.Board.Price == 0 {
				return 0, 0, false
			}
			boards++
			sum += b.Board.Price
		}
	}
	return boards, sum, boards > 0
}

func (t *Table) spread(key string) float64 {
	if s, ok := t.Spread[key]; ok {
		return s
	}
	return t.Spread["other"]
}
