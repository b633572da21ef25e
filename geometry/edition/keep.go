package edition

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// Kept is an edition for a boat with pieces that are cut: as near to the new one as they
// let it be.
type Kept struct {
	*Edition
	Takes  []Taken // keys that it takes from the new edition, wholly or in part
	Leaves []Left  // keys that it leaves as they were
}

// Taken is a key that goes the whole way to the new edition, or a part of it.
type Taken struct {
	design.Difference
	Whole bool
	Value string // that it comes to
	Held  string // what stops it there; "" where it goes the whole way
}

// Left is a key that stays as in the old edition, and what holds it there.
type Left struct {
	design.Difference
	Held string
}

// Worker works an edition out of a design.
//
// Errors: a design that cannot be built.
type Worker func(*design.Design) (*Edition, error)

// Keep looks for the edition that all cut pieces fit and that is nearest to the new one.
// It is nil where the pieces fit the new one.
//
// How: a merge of three, key by key. What the pieces were cut from is the base; every
// piece that is cut holds the marks on its wood, and the new edition wants its own value
// of each key that differs. From the base on each key is taken, in the order of the file,
// where all pieces fit then; two keys that cannot be built without one another are taken
// together; keys are tried again when others have been taken, and at last a length, an angle or a share goes as many steps of the way as
// the pieces let it. So it is an edition of which no key can be taken further by itself;
// another order might take others.
//
// Errors: those of the worker for the old design, which is known to be built.
func (c *Comparison) Keep(cut []Cut, work Worker) (*Kept, error) {
	m := merge{c: c, cut: cut, work: work, share: map[string]float64{}, held: map[string]string{}}
	if m.fits(c.New.Design) {
		return nil, nil
	}
	groups := m.groups()
	for again := true; again; {
		again = false
		for _, g := range groups {
			if m.share[g[0]] < 1 && m.try(g, 1) {
				again = true
			}
		}
	}
	for _, g := range groups {
		if m.share[g[0]] < 1 {
			m.partly(g)
		}
	}
	return m.kept()
}

type merge struct {
	c     *Comparison
	cut   []Cut
	work  Worker
	share map[string]float64
	held  map[string]string // by key: what held it when it was tried last
	why   string            // why the last design tried was not taken
}

// groups are the keys that are taken together: each by itself, but for two of which
// neither can be built alone, as what holds for bow and stern alike.
func (m *merge) groups() [][]string {
	var out [][]string
	var bound []string
	for _, k := range m.c.Keys {
		if m.builds(k.Key) {
			out = append(out, []string{k.Key})
		} else {
			bound = append(bound, k.Key)
		}
	}
	for len(bound) > 0 {
		g := bound[:1:1]
		for i, other := range bound[1:] {
			if m.builds(g[0], other) {
				g, bound = append(g, other), slices.Delete(bound, i+1, i+2)
				break
			}
		}
		out, bound = append(out, g), bound[1:]
	}
	return out
}

// builds reports whether the old edition can be built with the new one's values of keys.
func (m *merge) builds(keys ...string) bool {
	share := map[string]float64{}
	for _, k := range keys {
		share[k] = 1
	}
	_, err := m.made(design.Toward(m.c.Old.Design, m.c.New.Design, share))
	return err == nil
}

// try takes a share of the way of a group besides what is taken, if all pieces fit then.
func (m *merge) try(group []string, share float64) bool {
	before := m.share[group[0]]
	for _, key := range group {
		m.share[key] = share
	}
	if m.fits(design.Toward(m.c.Old.Design, m.c.New.Design, m.share)) {
		return true
	}
	for _, key := range group {
		m.share[key], m.held[key] = before, m.why
	}
	return false
}

// partly goes as many steps of the way as the pieces let it, halving what is left.
func (m *merge) partly(group []string) {
	steps := 1
	for _, key := range group {
		steps = max(steps, design.Steps(m.c.Old.Design, m.c.New.Design, key))
	}
	for low, high := 0, steps; high-low > 1; {
		middle := (low + high) / 2
		if m.try(group, float64(middle)/float64(steps)) {
			low = middle
		} else {
			high = middle
		}
	}
}

// fits reports whether every cut piece fits a design as it is.
func (m *merge) fits(d *design.Design) bool {
	e, err := m.made(d)
	if err != nil {
		m.why = "the boat cannot be built so"
		return false
	}
	for _, j := range Compare(m.c.Old, e).Judge(m.cut) {
		if j.Verdict > Placed {
			m.why = j.Name
			if len(j.Reasons) > 0 {
				m.why = j.holds()
			}
			return false
		}
	}
	return true
}

func (m *merge) made(d *design.Design) (*Edition, error) {
	if p := d.Check(); p != nil {
		return nil, fmt.Errorf("%s: %s", p.Key, p.Text)
	}
	return m.work(d)
}

// holds says what of a piece is off most.
func (j *Judged) holds() string {
	r := j.Reasons[0]
	if r.Part == j.Name {
		return fmt.Sprintf("%s: %s %s off", j.Name, r.Label(), inUnit(math.Abs(r.Off), r.Unit))
	}
	return fmt.Sprintf("%s: %s, %s %s off", j.Name, r.Part, r.Label(), inUnit(math.Abs(r.Off), r.Unit))
}

// Label is the quantity with its number: "stringer mark 2".
func (c Change) Label() string {
	if c.Number == 0 {
		return c.Quantity
	}
	return fmt.Sprintf("%s %d", c.Quantity, c.Number)
}

// kept makes the edition of what was taken.
func (m *merge) kept() (*Kept, error) {
	d := design.Toward(m.c.Old.Design, m.c.New.Design, m.share)
	d.Next(m.c.New.Design, "for a boat with its "+names(m.cut)+" cut to edition "+m.c.Old.Design.EditionName())
	e, err := m.made(d)
	if err != nil {
		return nil, err
	}
	out := &Kept{Edition: e}
	values := map[string]string{}
	for _, k := range design.Differ(m.c.Old.Design, d) {
		values[k.Key] = k.New
	}
	for _, k := range m.c.Keys {
		switch value, moved := values[k.Key]; {
		case m.share[k.Key] == 1:
			out.Takes = append(out.Takes, Taken{k, true, k.New, ""})
		case moved:
			out.Takes = append(out.Takes, Taken{k, false, value, m.held[k.Key]})
		default:
			out.Leaves = append(out.Leaves, Left{k, m.held[k.Key]})
		}
	}
	return out, nil
}

// names are the pieces in words, those of a row of the same sort together.
func names(cut []Cut) string {
	const most = 6
	var out []string
	for _, c := range cut {
		out = append(out, c.Name)
	}
	if len(out) > most {
		return wording.Counted(len(out), "piece")
	}
	return wording.And(out)
}
