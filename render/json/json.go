// Package json writes what was worked out as JSON, for other programs: one file here
// for each report, each a plain value made from the facts, which Encode writes.
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

// Header says which design a report is of.
type Header struct {
	Title       string `json:"title"`
	Slug        string `json:"slug"`
	Edition     string `json:"edition"`     // "" for a design without one
	Fingerprint string `json:"fingerprint"` // "" for a boat that no design is of
}

// HeaderOf returns the header of a report about a design.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func HeaderOf(d *design.Design) (Header, error) {
	print, err := d.Fingerprint()
	return Header{d.Title, d.Slug(), d.Edition, print}, err
}
