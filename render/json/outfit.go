package json

import (
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/layout"
)

// outfit is the report of an outfit by its name; doc are the sheets of its patterns, of
// which nothing is said where there are none.
func outfit(d *design.Design, name string, told Object, doc *layout.Document) (Object, error) {
	out, err := of(d, field{name, told})
	if err == nil && doc != nil && len(doc.Sheets) > 0 {
		out = append(out, field{"pages", pages(*doc)})
	}
	return out, err
}

func notes(all finding.List) []Object {
	return each(all, func(n finding.Finding) Object {
		return Object{{"about", n.About}, {"text", n.Text}, {"standing", n.Standing}, {"danger", n.Verdict.Danger()}}
	})
}

// ranges tells figures beside what practice gives for them.
func ranges(all []finding.Range) []Object {
	return each(all, func(r finding.Range) Object {
		return Object{{"name", r.Name}, {"value", r.Value}, {"low", r.Low}, {"high", r.High}, {"unit", r.Unit},
			{"source", r.Source + " (practice)"}, {"inside", r.Inside()}}
	})
}
