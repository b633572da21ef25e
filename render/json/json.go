// Package json writes what was worked out as JSON, for other programs: one file here
// for each report, each an Object made from the facts, which Encode writes.
//
// Every report begins with the design it is of. Lengths end in _mm, angles in _deg;
// x, y and z are as everywhere. The names of the fields are a promise; they are added
// to, never changed.
package json

import (
	"encoding/json"
	"io"

	"ribwright/geometry/design"
)

// Encode writes a report.
//
// Errors: the writer's own.
func Encode(w io.Writer, report any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(report)
}

// of puts the header of a design before what is told of it.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func of(d *design.Design, told ...field) (Object, error) {
	head, err := headerOf(d)
	if err != nil {
		return nil, err
	}
	return append(Object{{"design", head}}, told...), nil
}

func headerOf(d *design.Design) (Object, error) {
	print, err := d.Fingerprint()
	return header(d.Title, d.Slug(), d.Edition, print), err
}

// header says which design a report is of; the edition is "" for a design without one,
// the fingerprint "" for a boat that no design is of.
func header(title, slug, edition, print string) Object {
	return Object{{"title", title}, {"slug", slug}, {"edition", edition}, {"fingerprint", print}}
}
