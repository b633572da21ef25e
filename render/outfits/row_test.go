package outfits

import (
	"bytes"
	"regexp"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/rowing"
)

// TestNotAfloatPage: no figure that depends on the water is shown of a boat that does
// not float under its rower.
func TestNotAfloatPage(t *testing.T) {
	b, w := boat(t, "brook")
	r := b.Frame.Design.Row()
	r.Mass, r.SeatAt = 200, 1000
	f, err := rowing.New(b, r, w)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := RowPage(&out, f, measure.Metric); err != nil {
		t.Fatal(err)
	}
	for _, what := range []string{"over the water", "handles over seat", "carried clear", "over the legs", "over the gunwale"} {
		if !regexp.MustCompile(what+` +-`).Match(out.Bytes()) || regexp.MustCompile(what+` +-?[0-9]`).Match(out.Bytes()) {
			t.Errorf("%s has a figure", what)
		}
	}
}
