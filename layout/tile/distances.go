package tile

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// distances lists, for every pattern that is taped together from more than two
// pieces, how far apart the crosses of its outermost joints are: a tape laid
// over the whole finds a joint that has slipped. Strips of a family, which are
// short, are left out.
func (p plan) distances() []string {
	var out []string
	for i := range p.drawings {
		d := &p.drawings[i]
		if d.Family != "" {
			continue
		}
		along, up := p.farthest(d)
		for _, a := range []apart{along, up} {
			if a.between > 0 {
				out = append(out, fmt.Sprintf("%s, %s cross of joint %s to that of %s: %s.", d.Title, a.which, a.first, a.last, p.told(a.between)))
			}
		}
	}
	return out
}

// told letters a length in the builder's system, with the millimetres.
func (p plan) told(mm float64) string {
	metric := measure.MM(mm, 1) + " mm"
	if p.units == measure.Imperial {
		return measure.Sixteenths(mm) + " = " + metric
	}
	return metric
}

// apart is the distance between the crosses of two joints.
type apart struct {
	between            float64
	which, first, last string
}

// farthest finds the two upright joints of one row, and the two level joints of
// one column, that lie farthest apart.
func (p plan) farthest(d *layout.Drawing) (along, up apart) {
	type mark struct {
		at   geometry.Point
		code string
	}
	firstIn, firstOn := map[int]mark{}, map[int]mark{}
	wider := func(best *apart, first map[int]mark, line int, m mark, which string) {
		if f, ok := first[line]; !ok {
			first[line] = m
		} else if far := m.at.Sub(f.at).Norm(); far > best.between {
			*best = apart{far, which, f.code, m.code}
		}
	}
	for _, k := range p.pieces {
		if k.drawing != d {
			continue
		}
		for _, s := range k.sides() {
			if !s.trim {
				continue
			}
			m := mark{s.crossPlaces()[1], s.other + "-" + k.name()}
			if s.from.X == s.to.X {
				wider(&along, firstIn, k.row, m, "upper")
			} else {
				wider(&up, firstOn, k.col, m, "right")
			}
		}
	}
	return along, up
}
