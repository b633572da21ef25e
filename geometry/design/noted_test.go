package design

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
)

// TestNoted writes every shipped design with notes and reads the same back; notes
// stand before their keys, in the right row of the right table.
func TestNoted(t *testing.T) {
	for _, name := range ShippedNames() {
		want, err := Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		notes := map[string]string{
			"hull.beam": "as wide as arms reach\n[bow] = 3", "hull.section.1.flare": strings.Repeat("second ", 40), "thwart.0.at": "first", "title": "the title",
		}
		if err := EncodeNoted(&b, want, []string{"Sized\nfor somebody"}, notes); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		if got := mustDecode(t, text); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %+v\nwant %+v", name, got, want)
		}
		for _, s := range []string{"# Sized for somebody\n", "# Name of the boat, printed on every sheet.\n# the title\ntitle = ", "# as wide as arms reach [bow] = 3\nbeam = ", "# first\nat = "} {
			if strings.Count(text, s) != 1 {
				t.Errorf("%s: %q stands %d times, want once, in\n%s", name, s, strings.Count(text, s), text)
			}
		}
		if i, j := strings.Index(text, "# second"), strings.Index(text, "flare"); i < j {
			t.Errorf("%s: the note of the second section stands before the first", name)
		}
	}
}

// TestEncodeFrom: whatever a comment on top holds, the design comes back.
func TestEncodeFrom(t *testing.T) {
	want := mustDecode(t, text(t, "brook"))
	for _, from := range []string{"", "from brook, edition 1", "a\nlength = 1\r\u2028x", strings.Repeat("long ", 60)} {
		var b bytes.Buffer
		if err := EncodeFrom(&b, want, from); err != nil {
			t.Fatal(err)
		}
		if got := mustDecode(t, b.String()); !reflect.DeepEqual(got, want) || !strings.HasPrefix(b.String(), "#") {
			t.Errorf("under %q: %+v", from, got)
		}
	}
}
