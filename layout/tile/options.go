package tile

import (
	"math"
	"slices"

	"ribwright/layout"
)

// option is one way to divide a pattern.
type option struct {
	pieces []piece
	sure   bool // the headings of all its pieces are set; else those of a grid are taken to stand within
}

// options lists the ways to divide a pattern that cut the least of what must stay whole, and of
// those the ones that take the fewest joints, for pieces that lie as they are read and for
// pieces that lie turned. A place for a heading on a piece is slow to
// find, and is looked for when an option is made sure.
func (p plan) options(d *layout.Drawing) []option {
	var all []option
	k := p.known.ink(d)
	for _, turned := range []bool{false, true} {
		w, h := p.roomOf(cutting{turned: turned})
		var seen []*grid
		var ups [last + 1][]float64
		for up := range ups {
			ups[up] = upward(d, k.box, h, wish(up))
		}
		for along := range wish(len(ups)) {
			x := across(d, k.box, w, along)
			for up, y := range ups {
				if slices.ContainsFunc(seen, func(g *grid) bool { return slices.Equal(g.x, x) && slices.Equal(g.y, y) }) {
					continue
				}
				o := option{pieces: cutAt(d, k, cutting{along, wish(up), turned}, x, y)}
				all, seen = append(all, o), append(seen, o.pieces[0].grid)
			}
		}
	}
	all = fewest(fewest(all, option.broken), func(o option) int { return joined(o.pieces) })
	for _, o := range all {
		p.roughly(o.pieces)
	}
	return all
}

// fewest keeps the options with the fewest of what is counted, in their slice itself.
func fewest(all []option, count func(option) int) []option {
	out, least := all[:0], math.MaxInt
	for _, o := range all {
		n := count(o)
		if n < least {
			out, least = out[:0], n
		}
		if n == least {
			out = append(out, o)
		}
	}
	return out
}

// broken is how many joints fall into what must stay whole.
func (o option) broken() (n int) {
	if len(o.pieces) == 0 {
		return 0
	}
	for _, x := range o.pieces[0].grid.x {
		if slices.ContainsFunc(o.pieces[0].drawing.Whole, func(s layout.Span) bool { return s.From+closeEnough < x && x < s.To-closeEnough }) {
			n++
		}
	}
	return n
}

// roughly gives pieces the looks that they likely have: tiles hold their headings, and strips
// do not.
func (p plan) roughly(pieces []piece) {
	for i := range pieces {
		k := &pieces[i]
		k.pattern = p.pattern(k.drawing)
		switch f := k.frame; {
		case k.grid.whole():
			k.looks = p.looks(*k)
		case k.grid.rows() == 1:
			k.looks = p.taking(*k, p.known.around(*k, p.units, p.room.W()))
		default:
			k.looks = []look{{wide: f.W(), high: f.H(), taken: f.W(), heads: within}}
		}
	}
}

// sure is an option with all headings set.
func (p plan) sure(o option) option {
	if o.sure || len(o.pieces) == 0 {
		return o
	}
	return option{p.fitted(slices.Clone(o.pieces)), true}
}
