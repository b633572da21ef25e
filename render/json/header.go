package json

import "ribwright/geometry/design"

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
	return Header{Title: d.Title, Slug: d.Slug(), Fingerprint: print}, err
}
