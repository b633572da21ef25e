package design

import (
	"bytes"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

func encode(t testing.TB, d *Design) string {
	t.Helper()
	var b bytes.Buffer
	if err := Encode(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestRoundTrip writes each shipped design and reads it back.
func TestRoundTrip(t *testing.T) {
	for _, name := range ShippedNames() {
		t.Run(name, func(t *testing.T) {
			want, err := Shipped(name)
			if err != nil {
				t.Fatal(err)
			}
			file := encode(t, want)
			if got := mustDecode(t, file); !reflect.DeepEqual(got, want) {
				t.Errorf("got %+v\nwant %+v", got, want)
			}
			if again := encode(t, mustDecode(t, file)); again != file {
				t.Errorf("written a second time the file differs:\n%s\nfirst\n%s", again, file)
			}
		})
	}
}

// TestRoundTripValues has values that are hard to write exactly.
func TestRoundTripValues(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(d *Design)
	}{
		{"thirds", func(d *Design) { d.Hull.Length = 14696.0 / 3 }},
		{"inches", func(d *Design) { d.Hull.Beam = 33.4375 * 25.4 }},
		{"angle of odd bits", func(d *Design) { d.Bow.Rake = 0.1 + 0.2 }},
		{"share of odd bits", func(d *Design) { d.Stringers.At = []float64{0.1 + 0.2, math.Nextafter(1, 0)} }},
		{"smallest share", func(d *Design) { d.Stringers.At = []float64{5e-324} }},
		{"title in quotes", func(d *Design) { d.Title = `"River" 'R' \ """ ''' # [x]` }},
		{"title on lines", func(d *Design) { d.Title = "a\nb\r\nc\td\x00\x1b\u0085\u2028é—🛶" }},
		{"edition", func(d *Design) { d.Edition, d.Changed = `2 "b", spring 2027`, `"wider", by 20 mm` }},
		{"no spreaders", func(d *Design) { d.Hull.Spreaders = nil }},
		{"no thwarts", func(d *Design) { d.Thwarts = nil }},
		{"no scarfs", func(d *Design) { d.Gunwale.Scarfs = nil }},
		{"boards", func(d *Design) {
			d.Stock = Stock{Kerf: 2.5, Boards: []Board{{Species: "white oak", Length: 2440, Width: 7.25 * 25.4, Thickness: 25, Count: 3, Price: new(31.4), Sawn: "quarter"}, {Species: "white ash", Length: 3000, Width: 150, Thickness: 25, Price: new(0.0)}}}
		}},
		{"no saw", func(d *Design) { d.Stock = Stock{} }},
		{"stern like the bow", func(d *Design) { d.Stern = nil }},
		{"midship between ribs", func(d *Design) { d.Ribs.AtMidship = false }},
		{"no defaults left", func(d *Design) {
			d.Ribs.TenonGap, d.Ribs.FitWidth, d.Ribs.FitThickness, d.Ribs.Trim, d.Ribs.Tolerance = 0, 0, 0, 0, 0
			d.Skin = Skin{}
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			want := mustDecode(t, text(t, "river"))
			c.change(want)
			if got := mustDecode(t, encode(t, want)); !reflect.DeepEqual(got, want) {
				t.Errorf("got %+v\nwant %+v", got, want)
			}
		})
	}
}

// TestEncodeComments checks that a written file explains each of its keys, in
// the line above; of several tables the first one carries the comment.
func TestEncodeComments(t *testing.T) {
	above := map[string]string{}
	table, before := "", ""
	river := mustDecode(t, text(t, "river"))
	river.Outfit = &Outfit{defaultSail(), defaultPair(), defaultRow()}
	river.Edition, river.Changed = "2", "wider"
	river.Crew[0].Role = Passenger // written of live cargo alone
	river.Stock.Boards[0].Price, river.Stock.Boards[0].Sawn = new(0.0), "flat"
	river.Skill, river.Stock.Longest = "beginner", 3000
	river.Skin.Weighed = 700 // only in older designs
	river.Woods = []Wood{{Name: "white oak", Stiff: 12000}}
	for _, l := range strings.Split(encode(t, river), "\n") {
		name := ""
		if strings.HasPrefix(l, "[") {
			name = strings.Trim(l, "[]")
			table = name
		} else if key, _, ok := strings.Cut(l, " = "); ok && !strings.HasPrefix(l, "#") {
			name = joined(table, key)
		}
		if name != "" && above[name] == "" {
			above[name] = before
		}
		before = l
	}
	for _, k := range Keys() {
		if got, want := above[k.Name], "# "+k.Doc; got != want {
			t.Errorf("above %s stands %q, want %q", k.Name, got, want)
		}
	}
	if len(above) != len(Keys()) {
		t.Errorf("the file has %d keys and tables, want %d", len(above), len(Keys()))
	}
}

func TestEncodeRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(d *Design)
	}{
		{"length that is not a number", func(d *Design) { d.Hull.Length = measure.Length(math.NaN()) }},
		{"endless length", func(d *Design) { d.Hull.Beam *= 1e300 }},
		{"endless angle", func(d *Design) { d.Bow.Rake = 1e9 }},
	} {
		d := mustDecode(t, text(t, "brook"))
		c.change(d)
		if err := Encode(new(bytes.Buffer), d); err == nil {
			t.Errorf("%s: Encode gives no error", c.name)
		}
		if print, err := d.Fingerprint(); err == nil {
			t.Errorf("%s: Fingerprint gives %q and no error", c.name, print)
		}
	}
	full := errors.New("disk full")
	if err := Encode(fullDisk{full}, mustDecode(t, text(t, "brook"))); !errors.Is(err, full) {
		t.Errorf("to a full disk Encode gives %v, want %v", err, full)
	}
}

type fullDisk struct{ err error }

func (f fullDisk) Write([]byte) (int, error) { return 0, f.err }

// FuzzDecode requires that whatever is read is either refused in one line or
// can be written and read back as the same design.
func FuzzDecode(f *testing.F) {
	for _, name := range ShippedNames() {
		file := text(f, name)
		f.Add([]byte(file))
		f.Add([]byte("\uFEFF" + strings.ReplaceAll(file, "\n", "\r\n")))
		f.Add([]byte(encode(f, mustDecode(f, file))))
	}
	for _, s := range []string{"", "title = 1", "[hull]\nlength = nan", "hull.section = [{at = '1 mm'}]", "[[thwart]]\n[thwart.x]", "x = [[[", "\"\" = 1", "a.b.c = {d = 1}"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := Decode(bytes.NewReader(data), "x.toml")
		if err != nil {
			var fault *wording.Fault
			if d != nil || !errors.As(err, &fault) || strings.ContainsAny(err.Error(), "\n\r") || fault.Text == "" {
				t.Fatalf("Decode gives %v and %q, want one line of a fault", d, err)
			}
			return
		}
		if p := d.Check(); p != nil {
			t.Fatalf("a design that was read is refused: %s: %s", p.Key, p.Text)
		}
		again := mustDecode(t, encode(t, d))
		if !reflect.DeepEqual(again, d) {
			t.Fatalf("read back\n%+v\nwant\n%+v", again, d)
		}
		first, err1 := d.Fingerprint()
		second, err2 := again.Fingerprint()
		if err1 != nil || err2 != nil || first != second {
			t.Fatalf("fingerprints %q (%v) and %q (%v), want the same", first, err1, second, err2)
		}
	})
}
