package json

import (
	"bytes"
	"fmt"
	"math"
	"strconv"

	"ribwright/geometry"
	"ribwright/geometry/altered"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/yardstick"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/lines"
)

// Look tells of a boat while it is changed: its drawings as lines, what can be changed
// and how far, how it stands, and what was found. first is the design before the
// changes. The trial may be without effort and findings, and the sail that the view shows is
// nil for none.
//
// Words are lettered in the units given, and numbers in their own.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Look(first, d *design.Design, drawn []layout.Drawing, told []lines.Told, r *afloat.Report, b *bend.Report, under *sail.Fit, units measure.System) (Object, error) {
	flooding, outcome := inDegrees(r.Curve.Flooding), ""
	if r.Fault != nil {
		flooding, outcome = none, r.Fault.Outcome.String()
	}
	o := r.Rest
	var rig any
	if under != nil {
		rig = Object{{"rig", under.Sail.Rig.String()}, {"area_m2", fixed(under.Plan.Area())}, {"head_mm", under.Head()}, {"says", units.Words(fmt.Sprintf("%s of %.2f m2", wording.Capital(under.Sail.Rig.String()), under.Plan.Area()))}}
	}
	return of(d, Object{
		{"sail", rig}, {"for", d.For}, {"skill", d.Skill}, {"woods", d.MadeOf()},
		{"drawings", each(drawn, drawing)},
		{"measures", measures(first, d, units)},
		{"lines", found(first, finding.List{r.InALine(), b.InALine()}, units)},
		{"told", each(told, func(t lines.Told) Object { return Object{{"about", t.About}, {"says", t.Says}} })},
		{"standing", Object{
			{"fault", outcome}, {"draft_mm", o.Draft}, {"freeboard_min_mm", o.Freeboard.Least}, {"trim_mm", o.TrimRise()}, {"gm_mm", o.GM},
			{"all_up_kg", r.Load.Mass}, {"flooding_deg", flooding},
			{"known", each(yardstick.For(len(r.Boat.Crew)), knownLevers)},
			{"gz", each(r.Curve.Levers, func(v float.Lever) []fixed { return as[fixed](inDegrees(v.Heel), v.GZ) })},
		}},
		{"water", found(first, r.Findings.Sorted(), units)},
		{"wood", found(first, b.Findings.Sorted(), units)},
	}...)
}

// knownLevers tells the righting levers of a known boat.
func knownLevers(b yardstick.Boat) Object {
	gz := make([][]fixed, len(b.Levers))
	for i, mm := range b.Levers {
		gz[i] = as[fixed](math.Min(float64(i)*yardstick.Step, b.Flooding), mm)
	}
	return Object{{"name", b.Name}, {"from", b.From}, {"all_up_kg", b.Mass}, {"gz", gz}}
}

// Sight tells of a fault: what it is, and the frame fair and with it as it is seen.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Sight(d *design.Design, says string, drawn []layout.Drawing) (Object, error) {
	return of(d, Object{{"says", says}, {"drawings", each(drawn, drawing)}}...)
}

// found tells findings in words. first is the design before the changes, whose bands hold
// what mends them too.
func found(first *design.Design, all finding.List, units measure.System) []Object {
	return each(all, func(f finding.Finding) Object {
		o := Object{{"about", units.Words(f.About)}, {"says", units.Words(f.Words())}, {"verdict", f.Verdict.String()}, {"passes", f.Verdict.Passes()},
			{"danger", f.Verdict.Danger()}, {"standing", f.Standing}}
		if f.Mend.IsSet() && altered.Within(first, f.Mend) {
			o = append(o, field{"mend", Object{{"measure", f.Mend.Measure}, {"to", fixed(f.Mend.To)}, {"says", units.Words(f.Mend.Says)}}})
		}
		return o
	})
}

// measures are those that the design has, with what they were.
func measures(first, d *design.Design, units measure.System) []Object {
	var out []Object
	for _, m := range altered.All() {
		b, ok := m.Band(first)
		if !ok {
			continue
		}
		now, _ := m.Band(d) // has what first has
		out = append(out, Object{{"name", m.String()}, {"says", m.Says()}, {"unit", m.Unit()}, {"was", fixed(b.Now)}, {"now", fixed(now.Now)},
			{"least", fixed(b.Least)}, {"most", fixed(b.Most)}, {"step", fixed(b.Step)}, {"why", units.Words(b.Why)}})
	}
	return out
}

// drawing is the lines of a drawing by their pens, mm of drawing, y up.
func drawing(d layout.Drawing) Object {
	box := d.Bounds()
	pens := Object{}
	for _, p := range layout.Pens() {
		var runs []run
		for _, s := range d.Strokes {
			if s.Pen == p {
				runs = append(runs, s.Path.Flatten(0.02))
			}
		}
		if runs != nil {
			pens = append(pens, field{p.String(), runs})
		}
	}
	return Object{{"name", d.Name}, {"title", d.Title}, {"box_mm", as[fixed](box.Min.X, box.Min.Y, box.Max.X, box.Max.Y)}, {"lines", pens}}
}

// run is a line's places, x and y in turn, to the hundredth of a millimeter of drawing.
type run []geometry.Point

// writeRuns writes runs; a place that is none becomes null.
func writeRuns(out *bytes.Buffer, all []run) {
	b := make([]byte, 0, 4096)
	for i, r := range all {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, '[')
		for k, p := range r {
			if k > 0 {
				b = append(b, ',')
			}
			b = appendPlace(append(appendPlace(b, p.X), ','), p.Y)
		}
		b = append(b, ']')
	}
	out.WriteByte('[')
	out.Write(b)
	out.WriteByte(']')
}

func appendPlace(b []byte, v float64) []byte {
	if !geometry.Finite(v) {
		return append(b, "null"...)
	}
	n := int64(math.Round(v * 100))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	switch n %= 100; {
	case n == 0:
	case n%10 == 0:
		b = append(b, '.', byte('0'+n/10))
	default:
		b = append(b, '.', byte('0'+n/10), byte('0'+n%10))
	}
	return b
}
