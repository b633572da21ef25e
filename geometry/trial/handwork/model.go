package handwork

import (
	"fmt"
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/curve"
	"ribwright/geometry/trial/balance"
)

// model is a frame made ready to be disturbed.
type model struct {
	b      *balance.Boat
	open   []float64 // how the ribs are set
	ribs   []rib
	pieces []float64 // stations of the cross pieces
	thick  float64   // of the ribs, mm

	in, out *balance.Answers // at every rib, and last at midship: with the cross pieces in, and with all of them out
	held    []held           // places around which the plies are glued, from aft forward
	keel    *keel
	water   *water // nil when the boat does not rest upright

	wanted, lies []float64 // room for the heights that the ribs ask of the keel, and for those at which it lies
}

func newModel(b *balance.Boat, carried *aboard.Boat) (*model, error) {
	f := b.Frame
	m := &model{b: b, thick: float64(f.Design.Ribs.Thickness)}
	if b.Why == nil {
		m.open = b.Open
	}
	m.ribs = make([]rib, len(f.Ribs))
	for i, r := range f.Ribs {
		m.ribs[i] = newRib(r)
	}
	set := balance.Setting{Open: m.open, Slack: b.Fit, StrutsOut: map[int]bool{}}
	read := append(f.Stations(), 0)
	var err error
	if m.in, err = b.Model.Answers(set, read); err != nil {
		return nil, err
	}
	for j, t := range f.Thwarts {
		m.pieces, set.StrutsOut[j] = append(m.pieces, t.At), true
	}
	if m.out, err = b.Model.Answers(set, read); err != nil {
		return nil, err
	}
	for _, step := range []func() error{m.readSpreaders, m.restKeel} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	m.water, err = newWater(m, carried)
	return m, err
}

// wider adds to out how much wider the gunwales come to lie at every rib, and last at
// midship, on each side, mm.
//
// How: where the gunwales keep w more by themselves, ribs and cross pieces, which do
// not know of it, are as much narrower and shorter in the boat that is off by w.
func (m *model) wider(by *balance.Answers, d put, glued, out []float64) {
	n := len(m.ribs)
	add := func(row []float64, times float64) {
		for i, v := range row {
			out[i] += times * v
		}
	}
	for k, wide := range d.open.of {
		add(by.Ribs[d.open.first+k], wide)
	}
	for k, long := range d.slack.of {
		add(by.Pieces[d.slack.first+k], long)
	}
	add(d.off, 1)
	if glued != nil {
		add(glued[:n+1], 1)
		for i, row := range by.Ribs {
			add(row, -2*glued[i])
		}
		for j, row := range by.Pieces {
			add(row, -2*glued[n+1+j])
		}
	}
}

// held is a spreader, or midship, around which the plies are glued.
type held struct {
	at   float64
	does disturbance
}

// readSpreaders lists them, each a millimeter longer while the plies are glued: the
// stick keeps its share of the curve that takes.
func (m *model) readSpreaders() error {
	f := m.b.Frame
	aft, fore := f.Gunwale.Line.Ends()
	x := []float64{aft}
	for _, s := range f.Design.AllSpreaders() {
		x = append(x, float64(s.At))
	}
	x = append(x, fore)
	y := make([]float64, len(x))
	for k := range x {
		y[k], _ = f.Hull.Plan.Rise(x[k])
	}
	const longer = 0.1 // mm on each side: the lines differ by 1 part in 1,000 of their slope
	read := slices.Concat(f.Stations(), []float64{0}, m.pieces)
	was := make([]float64, len(read))
	for i, x := range read {
		was[i], _ = f.Hull.Plan.Rise(x)
	}
	for k := 1; k < len(x)-1; k++ {
		pins := slices.Clone(y)
		pins[k] += longer
		bent, err := curve.NewElastica(x, pins)
		if err != nil {
			return fmt.Errorf("spreader at %.0f mm: %w", x[k], err)
		}
		glued := make([]float64, len(read))
		for i, x := range read {
			now, _ := bent.Rise(x)
			glued[i] = (now - was[i]) / (2 * longer) * m.b.Glue.Kept
		}
		m.held = append(m.held, held{x[k], disturbance{glued: glued}})
	}
	return nil
}

// restKeel rests the keel on the ribs.
func (m *model) restKeel() error {
	f := m.b.Frame
	wood, err := f.Design.Wood(f.Design.Keel.Species)
	if err != nil {
		return err
	}
	k, w := f.Design.Keel, float64(f.Design.Ribs.Width)
	depth := float64(k.Depth)
	bends := m.b.Ribs.MOE * w * m.thick * m.thick * m.thick / 12
	at, springs := make([]float64, len(m.ribs)), make([]float64, len(m.ribs))
	for i := range m.ribs {
		at[i], springs[i] = m.ribs[i].at, bends*m.ribs[i].upright()
	}
	m.keel, err = newKeel(wood.MOE*float64(k.Width)*depth*depth*depth/12, -f.Hull.Stern.Toe.X, f.Hull.Bow.Toe.X, at, springs)
	return err
}

// effect is what a disturbance does to the boat, mm.
type effect struct {
	wide         []float64 // beam at every rib, and last at midship
	moved        []float64 // beam at every rib and last at midship when the cross pieces come out
	middle       float64   // height of the keel at midship
	stern, bow   float64   // of the stems
	trim, metric float64   // bow up over the waterline; GM
}

// effect works it out.
func (m *model) effect(d disturbance) effect {
	n := len(m.ribs) + 1
	room := make([]float64, 2*n)
	e := effect{wide: room[:n:n], moved: room[n:], stern: d.stern, bow: d.bow}
	m.wider(m.in, d.in, d.glued, e.wide)
	m.wider(m.out, d.out, d.glued, e.moved)
	m.wanted = m.wanted[:0]
	for i := range m.ribs {
		m.wanted = append(m.wanted, m.ribs[i].lift*e.wide[i])
	}
	for k, deep := range d.deeper.of {
		m.wanted[d.deeper.first+k] -= deep
	}
	m.lies = m.keel.rests(m.wanted, d.stern, d.bow, m.lies)
	e.middle = m.keel.midship(m.lies, d.stern, d.bow)
	if m.water != nil {
		e.trim, e.metric = m.water.answers(e, m.lies)
	}
	for i, wide := range e.wide {
		e.moved[i] = 2 * (e.moved[i] - wide)
		e.wide[i] = 2 * wide
	}
	return e
}

// What a builder would notice or mind, mm: of trim, of which gear can shift some 25, and
// of any other outcome. Our own choice.
const (
	MindsTrim = 10.0
	Minds     = 5.0
)

// outcomes lists those that the frame has. A name with a verb is that of a rib.
func (m *model) outcomes() []Outcome {
	n := len(m.ribs)
	out := []Outcome{
		{Name: "beam at midship", Of: Beam, Matters: Minds, at: func(e effect) float64 { return e.wide[n] }},
		{Name: beamAlong, Of: Beam, Matters: Minds},
		{Name: "depth at midship", Of: Depth, Matters: Minds, at: func(e effect) float64 { return -e.middle }},
		{Name: "rocker at the bow", Of: Rocker, Matters: Minds, at: func(e effect) float64 { return e.bow - e.middle }},
		{Name: "rocker at the stern", Of: Rocker, Matters: Minds, at: func(e effect) float64 { return e.stern - e.middle }},
	}
	if m.water != nil {
		out = append(out, Outcome{Name: "trim over the waterline", Of: Trim, Matters: MindsTrim, at: func(e effect) float64 { return e.trim }},
			Outcome{Name: "GM", Of: GM, Matters: Minds, at: func(e effect) float64 { return e.metric }})
	}
	if m.b.Why == nil && len(m.pieces) > 0 {
		out = append(out, Outcome{Name: movedAlong, Of: Balance, Matters: Minds})
	}
	return out
}

// The outcomes that are read at the rib where they are worst.
const (
	beamAlong  = "beam at rib %s, where it is worst"
	movedAlong = "beam at rib %s when all cross pieces come out"
)

var worstAlong = map[string]func(effect) []float64{
	beamAlong:  func(e effect) []float64 { return e.wide },
	movedAlong: func(e effect) []float64 { return e.moved },
}
