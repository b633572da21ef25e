package reasons

import (
	"bytes"
	"strings"
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
)

// TestPage checks that the page of reasons is one page: lines that fit, not more
// of them than a sheet holds, with the checks and what is only estimated.
func TestPage(t *testing.T) {
	for _, name := range family.Names() {
		f, err := family.Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		var texts [2]string
		for i := range texts {
			boat, err := sizing.Size(f, brief(f))
			if err != nil {
				t.Fatal(err)
			}
			var page bytes.Buffer
			if err := Page(&page, boat); err != nil {
				t.Fatal(err)
			}
			texts[i] = page.String()
		}
		if texts[0] != texts[1] {
			t.Errorf("%s: the second time other words", name)
		}
		for _, line := range strings.Split(texts[0], "\n") {
			if len([]rune(line)) > 110 {
				t.Errorf("%s: a line of the page is %d letters wide: %s", name, len(line), line)
			}
		}
		if n := strings.Count(texts[0], "\n"); n > 66 {
			t.Errorf("%s: the page has %d lines", name, n)
		}
		for _, s := range []string{".family", "reach", "All ", "give or take 48 mm"} {
			if !strings.Contains(texts[0], s) {
				t.Errorf("%s: %q is nowhere", name, s)
			}
		}
	}
}

// brief is a woman of 60 kg and 1650 mm in every seat, without gear.
func brief(f *family.Family) sizing.Brief {
	b := sizing.Usual()
	b.Title, b.Gear = "Trial", 0
	for range f.Seats {
		b.Crew = append(b.Crew, sizing.Paddler{Person: body.Person{Sex: body.Woman, Weight: 60, Stature: 1650}, Posture: family.Either})
	}
	return b
}
