package tile

import (
	"slices"

	"ribwright/layout"
)

// option is one way to divide a pattern.
type option struct {
	pieces []piece
	sure   bool // the headings of all its pieces are set; else those of a grid are taken to stand within
}

// options lists the ways to divide a pattern that take the fewest joints, for pieces that lie
// as they are read and for pieces that lie turned. A place for a heading on a tile is slow to
// find, and is looked for when an option is made sure.
func (p plan) options(d *layout.Drawing) []option {
	var all []option
	least := 0
	for _, turned := range []bool{false, true} {
		for _, along := range []wish{even, first, last} {
			for _, up := range []wish{even, first, last} {
				o := p.option(d, cutting{along, up, turned})
				if slices.ContainsFunc(all, o.packsAs) {
					continue
				}
				if n := joined(o.pieces); len(all) == 0 || n < least {
					least = n
				}
				all = append(all, o)
			}
		}
	}
	return slices.DeleteFunc(all, func(o option) bool { return joined(o.pieces) > least })
}

// option divides a pattern; the headings of strips are set.
func (p plan) option(d *layout.Drawing, how cutting) option {
	w, h := p.roomOf(how)
	pieces := cut(d, w, h, how)
	if len(pieces) > 0 && pieces[0].grid.rows() == 1 {
		return option{p.fitted(d, how), true}
	}
	for i := range pieces {
		f := pieces[i].frame
		pieces[i].pattern = p.pattern(d)
		pieces[i].looks = []look{{wide: f.W(), high: f.H(), taken: f.W(), heads: within}}
	}
	return option{pieces, false}
}

// sure is an option with all headings set.
func (p plan) sure(o option) option {
	if o.sure || len(o.pieces) == 0 {
		return o
	}
	return option{p.fitted(o.pieces[0].drawing, o.pieces[0].cutting), true}
}

// packsAs reports whether two options are the same joints, and take the same room.
func (o option) packsAs(p option) bool {
	return slices.EqualFunc(o.pieces, p.pieces, piece.packsAs)
}

// packsAs reports whether two pieces are the same part of a pattern and take the same room.
func (k piece) packsAs(o piece) bool {
	return k.drawing == o.drawing && k.cell == o.cell && k.frame == o.frame && k.col == o.col && k.row == o.row &&
		slices.EqualFunc(k.looks, o.looks, look.packsAs) && k.grid.rows() == o.grid.rows() && k.grid.cols() == o.grid.cols()
}

func (l look) packsAs(m look) bool { return l.wide == m.wide && l.high == m.high && l.taken == m.taken }
