package balance

import "ribwright/geometry/equations"

// Answers are what small changes do to the gunwales in the likely case: by how much the
// half-breadth grows at the places asked for, mm.
type Answers struct {
	Ribs   [][]float64 // for each rib that stands a millimeter wider
	Pieces [][]float64 // for each cross piece that is a millimeter longer; nil for one that is out

	Gunwales, Stiff []float64 // for a whole share by which the gunwales, and the ribs, are stiffer
}

// Answers returns them at the stations x, mm, for a frame that is set so.
//
// How: what Settle gives runs straight in the setting; stiffness gives its slope, for
// what bears more by a share of what it bears pushes with that on where it is.
// Errors: cross pieces with which no shape can be worked out.
func (m *Model) Answers(s Setting, x []float64) (*Answers, error) {
	t, err := m.settled.with(s.StrutsOut)
	if err != nil {
		return nil, err
	}
	at := m.reads(x)
	rows := equations.Rows(2*len(m.struts)+len(m.ribs)+2, len(x))
	read := func(u []float64) (row []float64) {
		row, rows = rows[0], rows[1:]
		at.read(u, row)
		return row
	}
	pieces := make([][]float64, len(m.struts))
	for i, u := range t.struts {
		pieces[i] = read(u)
	}
	answer := func(u, slack []float64) []float64 {
		row := read(u)
		for i, p := range t.pushes(func(k int) float64 { return u[k] }, slack) {
			add(row, p, pieces[i])
		}
		return row
	}
	out := &Answers{Ribs: make([][]float64, len(m.ribs)), Pieces: make([][]float64, len(m.struts))}
	for i, u := range m.opens {
		out.Ribs[i] = answer(u, nil)
	}
	still := make([]float64, m.unknowns)
	for _, j := range t.in {
		longer := make([]float64, len(m.struts))
		longer[j] = 1
		out.Pieces[j] = answer(still, longer)
	}
	u, _ := t.at(m.likely, t.opened(s.Open, m.likely.Upright), s.Slack)
	out.Gunwales = answer(t.under(m.stiffGunwales(u)), nil)
	out.Stiff = answer(t.under(m.stiffRibs(u, s.Open)), nil)
	return out, nil
}

// readings are stations where half-breadths are read: the unknowns there, and what each of
// them counts for. None count beyond the ends.
type readings []struct {
	at [4]int
	by [4]float64
}

func (m *Model) reads(x []float64) readings {
	out := make(readings, len(x))
	for k, x := range x {
		if i, by := cubics(m.x, x); i >= 0 {
			out[k].at, out[k].by = m.ends(i), by
		}
	}
	return out
}

// read sets a row to the half-breadths of a frame at u.
func (r readings) read(u, row []float64) {
	for k := range r {
		row[k] = 0
		for p, at := range r[k].at {
			row[k] += r[k].by[p] * u[at]
		}
	}
}

// stiffGunwales is the load of gunwales that are stiffer by a whole share, at u.
func (m *Model) stiffGunwales(u []float64) []float64 {
	_, load := m.bears(u)
	for k := range load {
		load[k] = -load[k]
	}
	return load
}

// stiffRibs is the load of ribs, open so far, that are stiffer by a whole share, at u.
func (m *Model) stiffRibs(u, open []float64) []float64 {
	load, c := make([]float64, m.unknowns), m.likely
	for i, at := range m.ribAt {
		m.open(load, i, value(open, i), c.Upright)
		h := m.hoop(i)
		if h == nil {
			load[at] -= m.ribs[i].Stiffness * 2 * u[at]
			continue
		}
		var now ways
		for k := range now {
			now[k] = u[at+2*k]
		}
		for k, row := range h.held(c.Heads) {
			load[at+2*k] -= row.dot(now)
		}
	}
	return load
}
