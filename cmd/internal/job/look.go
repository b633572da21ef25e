package job

import (
	"io"
	"math"
	"strings"

	"ribwright/geometry/altered"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/water"
	"ribwright/layout/lines"
	"ribwright/layout/report"
	"ribwright/render/json"
)

// Look asks for a boat to be looked at while it is changed: its lines, how it stands and
// what its wood bears, and the design as it then is. Only a page asks for it.
type Look struct {
	Subject
	Measures [10]float64 // by altered.Measure, in its unit; NaN for as it is
	Turn     float64     // degrees, where the three-quarter view is seen from
	Rise     float64
	Water    water.Kind
	Whole    bool                 // with what takes longer: hidden lines left out, and every finding
	sail     changes[design.Sail] // with a rig, the three-quarter view shows it
}

// NewLook returns the request with its defaults.
func NewLook() *Look {
	l := &Look{Subject: usual(), Turn: 55, Rise: 22, sail: changes[design.Sail]{}}
	for i := range l.Measures {
		l.Measures[i] = math.NaN()
	}
	return l
}

// Fields lists the choices.
func (l *Look) Fields() []Field {
	out := []Field{units(&l.Units, "what lengths are lettered in"), kindOfWater(&l.Water)}
	for i, m := range altered.All() {
		name := [...]string{"hull-length", "hull-beam", "hull-depth", "rocker", "seat-height", "seat-place", "rib-thickness", "thwart-place", "flare", "fullness"}[i]
		kind := readingOf(m)
		out = append(out, Field{Name: name, Takes: kind.takes, Says: m.Says(), Value: bind(&l.Measures[i], kind.read, kind.show)})
	}
	return append(out, rigField(l.sail), areaField(l.sail),
		Field{Name: "turn", Takes: "degrees", Says: "from ahead towards port, where the view is seen from", Value: degrees(&l.Turn, -3600, 3600)},
		Field{Name: "rise", Takes: "degrees", Says: "over level, where the view is seen from", Value: degrees(&l.Rise, -89, 89)},
		Field{Name: "whole", Says: "what is hidden left out, and every finding", Value: yes(&l.Whole)})
}

// reading is how the values of a measure are written.
type reading struct {
	takes string
	read  func(string) (float64, error)
	show  func(float64) string // nothing of NaN
}

func readingOf(m altered.Measure) reading {
	orNone := func(show func(float64) string) func(float64) string {
		return func(v float64) string {
			if math.IsNaN(v) {
				return ""
			}
			return show(v)
		}
	}
	const degree = math.Pi / 180
	switch m.Unit() {
	case "deg":
		return reading{"angle", func(s string) (float64, error) { v, err := measure.ParseAngle(s); return float64(v) / degree, err },
			orNone(func(v float64) string { return measure.Angle(v * degree).String() })}
	case "%":
		return reading{"percent", func(s string) (float64, error) {
			return plainNumber(strings.TrimSuffix(strings.TrimSpace(s), "%"), 0, 1000)
		},
			orNone(func(v float64) string { return trimmed(v) + " %" })}
	}
	return reading{"length", func(s string) (float64, error) { v, err := measure.ParseLength(s); return float64(v), err },
		orNone(func(v float64) string { return measure.Length(v).String() })}
}

// degrees is an angle written as a plain number, from low to high.
func degrees(to *float64, low, high float64) Value {
	return bind(to, func(s string) (float64, error) { return plainNumber(s, low, high) }, func(v float64) string { return trimmed(v) })
}

// changes are those that are asked for.
func (l *Look) changes() []altered.Change {
	var out []altered.Change
	for i, m := range altered.All() {
		if !math.IsNaN(l.Measures[i]) {
			out = append(out, altered.Change{Measure: m, To: l.Measures[i]})
		}
	}
	return out
}

// opened is the design as it was, and the facts of it as it is changed.
func (l *Look) opened(w World) (first *design.Design, k *facts, err error) {
	if first, err = w.open(l.Design); err != nil {
		return nil, nil, err
	}
	d := first
	if changes := l.changes(); len(changes) > 0 {
		if d, err = altered.Of(first, changes...); err != nil {
			return nil, nil, misuse("", "%w", err)
		}
		if len(design.Differ(first, d)) > 0 {
			d.Next(first, altered.Said(first, changes...))
		}
	}
	k, err = w.facts(d, l.Design)
	return first, k, err
}

// Do looks at the boat.
func (l *Look) Do(w World) (*Result, error) {
	first, k, err := l.opened(w)
	if err != nil {
		return nil, err
	}
	var trial *afloat.Report
	var bends *bend.Report
	try := afloat.Stands
	if l.Whole {
		try = afloat.Run
	}
	if err := together(
		func() (err error) { trial, err = k.afloat(w, l.Water, try); return err },
		func() (err error) { bends, err = k.bending(); return err },
	); err != nil {
		return nil, err
	}
	rigged, err := l.rigged(w, k, trial)
	return l.tell(k, first, trial, bends, rigged, err)
}

// rigged is the boat with the sail that is to be seen, as if its design had it. A small
// look shows one of the area that is said, and none where none is said. An error is why the
// boat cannot carry it.
func (l *Look) rigged(w World, k *facts, trial *afloat.Report) (*sail.Fit, error) {
	if _, asked := l.sail["rig"]; !asked {
		return nil, nil
	}
	all, mine := k.design.Fitted(), l.sail.over(k.design.Sail())
	if mine.Area > 0 {
		return sail.Rigged(trial.Boat, *mine, trial.Rest)
	}
	if !l.Whole {
		return nil, nil
	}
	s, err := k.ship(w, k.design.Gear, k.beside(), l.Water)
	if err != nil {
		return nil, err
	}
	d, f := *k.design, *s.Boat.Frame
	all.Sail, d.Outfit, f.Design, s.Boat.Frame = mine, &all, &d, &f
	one, err := outfit.One(s, outfit.Sail)
	if err != nil {
		return nil, err
	}
	return one.Sail, nil
}

// tell draws the boat and writes the design as it now is. unfit is why a sail that is to be
// seen cannot be.
func (l *Look) tell(k *facts, first *design.Design, trial *afloat.Report, bends *bend.Report, under *sail.Fit, unfit error) (*Result, error) {
	const degree = math.Pi / 180
	b := lines.Boat{Boat: trial.Boat, Water: &trial.Rest.Plane, Sail: under}
	drawn := b.Draw(lines.Eye{Turn: l.Turn * degree, Rise: l.Rise * degree, Hidden: l.Whole})
	told := lines.Tell(trial, report.Letters{Units: l.Units})
	if unfit != nil {
		told = append(told, lines.Told{About: "sail", Says: "This boat cannot carry the sail: " + l.Units.Words(unfit.Error()) + "."})
	}
	numbers, err := json.Look(first, k.design, drawn, told, trial, bends, under, l.Units)
	if err != nil {
		return nil, of(k.name, err)
	}
	out := Output{k.design.Stem() + ".toml", "the design as it now is", func(to io.Writer) error { return design.Encode(to, k.design) }}
	return &Result{Report: k.report("looked at", nil), Numbers: numbers, Outputs: []Output{out}}, nil
}
