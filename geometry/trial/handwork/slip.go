package handwork

import (
	"math"

	"ribwright/geometry/trial/balance"
)

// slip is one error, by itself of all others, of one unit.
type slip struct {
	*kind
	does disturbance
}

// kind is what slips that a builder makes with one tool have in common.
type kind struct {
	name   string
	from   float64 // midship, either way, of spreaders; 0 for others and for midship, mm
	placed bool
	unit   string
	usual  Spread
	each   bool
}

// disturbance is what an error of one unit does to the parts of the frame, mm.
type disturbance struct {
	in, out    put       // with the cross pieces in, and with all of them out
	glued      []float64 // how much more half-breadth the gunwales keep by themselves, at every rib, at midship and at every cross piece; nil for none
	deeper     row       // each rib, while its head stays where it is
	stern, bow float64   // how much higher the stems stand
}

// put is how ribs and cross pieces are put in otherwise than designed, wider, longer, and
// what else moves the gunwales at every rib, and last at midship; nil for none.
type put struct {
	open, slack row
	off         []float64
}

// row is the values of ribs or cross pieces that follow one another; those of all others
// are 0.
type row struct {
	first int
	of    []float64
}

func (r row) at(i int) float64 {
	if i -= r.first; i >= 0 && i < len(r.of) {
		return r.of[i]
	}
	return 0
}

// slips lists all errors, those of a kind together.
func (m *model) slips() []slip {
	all := make([]slip, 0, 4*len(m.ribs)+len(m.held)+len(m.pieces)+6)
	add := func(k kind, does ...disturbance) {
		for _, d := range does {
			all = append(all, slip{&k, d})
		}
	}
	every := func(name, unit string, s Spread) kind { return kind{name: name, unit: unit, usual: s, each: true} }
	one := func(name, unit string, s Spread) kind { return kind{name: name, unit: unit, usual: s} }
	each := func(k kind, head func(rib) step) {
		room := make([]float64, 2*len(m.ribs))
		for i, r := range m.ribs {
			d := still(i, room[2*i:2*i+2])
			m.atRib(&d, i, head(r))
			all = append(all, slip{&k, d})
		}
	}
	each(every("length of each rib", "mm", usual.ribLength), rib.longer)
	add(one("length of all ribs alike", "mm", usual.allRibs), m.allRibs(rib.longer))
	each(every("bend marks of each rib", "mm", usual.bendMark), rib.markedOut)
	add(one("springback of the ribs' board", "points", usual.board), m.allRibs(m.sprung))
	each(every("springback of each rib beside the board's", "points", usual.rib), m.sprung)
	add(one("thickness of all ribs", "mm", usual.thickness), m.stiffer(0, 3/m.thick))
	for _, s := range m.held {
		k := every("spreaders", "mm", usual.spreader)
		k.from, k.placed = math.Abs(s.at), true
		add(k, s.does)
	}
	for j := range m.b.Frame.Thwarts {
		add(every("lengths of cross pieces", "mm", usual.crossPiece), longerPiece(j))
	}
	each(every("place of each mortise", "mm", usual.mortise), m.mortise)
	add(every("height of each stem", "mm", usual.stem), disturbance{stern: 1}, disturbance{bow: 1})
	add(one("stiffness of the gunwales", "%", usual.gunwale), m.stiffer(0.01, 0))
	return all
}

// allRibs is an error that all ribs share.
func (m *model) allRibs(head func(rib) step) disturbance {
	d := still(0, make([]float64, 2*len(m.ribs)))
	for i, r := range m.ribs {
		m.atRib(&d, i, head(r))
	}
	return d
}

// still is ribs that are moved, from the first of them on, but not yet; room is for two
// values of each.
func still(first int, room []float64) disturbance {
	n := len(room) / 2
	open := row{first, room[:n:n]}
	return disturbance{in: put{open: open}, out: put{open: open}, deeper: row{first, room[n:]}}
}

// atRib moves the free head of rib i.
func (m *model) atRib(d *disturbance, i int, s step) {
	d.in.open.of[i-d.in.open.first] += 2 * s.out
	d.deeper.of[i-d.deeper.first] += s.up + m.ribs[i].lift*s.out
}

// sprung is a point of springback more than the forms allow for: every bend keeps less
// of itself.
func (m *model) sprung(r rib) step {
	const point = 0.01
	return r.opened(point / (1 - m.b.Frame.Design.Bending.Springback))
}

// stiffer is gunwales and ribs that are stiffer by a share of what they are.
func (m *model) stiffer(gunwales, ribs float64) disturbance {
	at := func(by *balance.Answers) put {
		off := make([]float64, len(m.ribs)+1)
		for i := range off {
			off[i] = gunwales*by.Gunwales[i] + ribs*by.Stiff[i]
		}
		return put{off: off}
	}
	return disturbance{in: at(m.in), out: at(m.out)}
}

// longerPiece is the cross piece with the number j a millimeter longer.
func longerPiece(j int) disturbance {
	return disturbance{in: put{slack: row{j, []float64{1}}}}
}

// mortise is a slot that lies a millimeter too far forward: there the rib finds the gunwales
// nearer together, or wider apart, and the depth another.
func (m *model) mortise(r rib) step {
	f := m.b.Frame
	narrower, rises := f.Gunwale.Line.Slopes(r.at)
	_, keel := f.Hull.KeelZ(r.at)
	along := math.Sqrt(1 + narrower*narrower + rises*rises)
	return step{out: -narrower / along, up: -(rises - keel) / along}
}
