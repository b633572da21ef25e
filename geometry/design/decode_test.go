package design

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"
)

// text returns the file of a shipped design.
func text(t testing.TB, name string) string {
	t.Helper()
	data, err := os.ReadFile("shipped/" + name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// swap replaces the one place where old stands.
func swap(t testing.TB, s, old, with string) string {
	t.Helper()
	if n := strings.Count(s, old); n != 1 {
		t.Fatalf("%q stands %d times in the file, want once", old, n)
	}
	return strings.Replace(s, old, with, 1)
}

func decode(s string) (*Design, error) { return Decode(strings.NewReader(s), "x.toml") }

func mustDecode(t testing.TB, s string) *Design {
	t.Helper()
	d, err := decode(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestShipped(t *testing.T) {
	names := ShippedNames()
	if want := []string{"brook", "lake", "river"}; !reflect.DeepEqual(names, want) {
		t.Fatalf("ShippedNames() = %q, want %q", names, want)
	}
	entries, err := fs.ReadDir(shippedFiles, "shipped")
	if err != nil || len(entries) != len(names) {
		t.Errorf("%d files are embedded for %d names (%v)", len(entries), len(names), err)
	}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			d, err := Shipped(name)
			if err != nil {
				t.Fatal(err)
			}
			if p := d.Check(); p != nil {
				t.Errorf("Check() = %s: %s, want nothing to be wrong", p.Key, p.Text)
			}
			if !strings.EqualFold(d.Title, name) {
				t.Errorf("title %q of the design %q", d.Title, name)
			}
		})
	}
}

func TestShippedUnknown(t *testing.T) {
	for _, name := range []string{"", "creek", "../shipped/brook", "Brook", "brook.toml"} {
		_, err := Shipped(name)
		if err == nil || !strings.Contains(err.Error(), "brook, lake, river") {
			t.Errorf("Shipped(%q) = %v, want an error that lists the names", name, err)
		}
	}
}

// TestDecodeValues reads a few values of each kind back, in mm and radians.
func TestDecodeValues(t *testing.T) {
	file := swap(t, text(t, "river"), `length = "4900 mm"`, `length = '16 ft 1 in'`)
	file = swap(t, file, `bottom_turn = "15 deg"`, `bottom_turn = "0.25 rad"`)
	d := mustDecode(t, file)
	for _, c := range []struct {
		name           string
		got, want, tol float64
	}{
		{"feet and inches", float64(d.Hull.Length), 193 * 25.4, 1e-9},
		{"radians", float64(d.Hull.Sections[1].BottomTurn), 0.25, 1e-15},
		{"negative length", float64(d.Hull.Spreaders[0].At), -1250, 0},
		{"list of lengths", float64(d.Gunwale.Scarfs[1]), 1480, 0},
		{"whole number", float64(d.Gunwale.Plies), 3, 0},
		{"number", d.Skin.Cloth, 407, 0},
		{"list of numbers", d.Stringers.At[3], 0.8, 0},
		{"default", float64(d.Ribs.Trim), 12, 0},
		{"kind", float64(d.Thwarts[2].Kind), float64(PlainThwart), 0},
		{"stern of its own", float64(d.After().ForefootRadius), 340, 0},
	} {
		if diff := c.got - c.want; diff > c.tol || diff < -c.tol {
			t.Errorf("%s: got %g, want %g within %g", c.name, c.got, c.want, c.tol)
		}
	}
	if got := mustDecode(t, text(t, "lake")).After().ForefootRadius; got != 320 {
		t.Errorf("a stern left out has a forefoot of %v, want the bow's 320 mm", got)
	}
}

// TestDecodeForms checks that the same design in other clothes is the same.
func TestDecodeForms(t *testing.T) {
	plain := text(t, "river")
	want := mustDecode(t, plain)
	crlf := strings.ReplaceAll(plain, "\n", "\r\n")
	for _, c := range []struct{ name, file string }{
		{"carriage returns", crlf},
		{"byte order mark", "\uFEFF" + plain},
		{"both", "\uFEFF" + crlf},
		{"tabs before keys", strings.ReplaceAll(plain, "\n", "\n\t")},
		{"tabs around =", strings.ReplaceAll(plain, " = ", "\t=\t")},
		{"no line end at the end", strings.TrimRight(plain, "\n")},
		{"comments", strings.ReplaceAll(plain, "\n", " # why\n")},
		{"single quotes", strings.ReplaceAll(plain, `"`, `'`)},
		{"tight units", strings.ReplaceAll(plain, ` mm"`, `mm"`)},
		{"stringers on two lines", strings.ReplaceAll(plain, "[0.21, ", "[\r\n0.21, # low\n")},
		{"dotted keys", strings.Replace(swap(t, plain, "[keel]\n", "[keelx]\n"),
			"[keelx]\nspecies = \"douglas-fir\"\nwidth = \"45 mm\"\ndepth = \"14 mm\"\n", "", 1)},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := c.file
			if c.name == "dotted keys" {
				file = "keel.species = \"douglas-fir\"\nkeel.width = \"45 mm\"\nkeel.depth = \"14 mm\"\n" + file
			}
			if file == plain {
				t.Fatal("the file has not changed")
			}
			if got := mustDecode(t, file); !reflect.DeepEqual(got, want) {
				t.Errorf("got %+v\nwant %+v", got, want)
			}
		})
	}
}

// TestDecodeBraces reads tables written in braces.
func TestDecodeBraces(t *testing.T) {
	plain := text(t, "brook")
	file := swap(t, plain, "[[hull.spreader]]\nat = \"900 mm\"\nbeam = \"552 mm\"\n", "")
	file = swap(t, file, "[hull]\n", "[hull]\nspreader = [{ at = \"900 mm\", beam = \"552 mm\" }]\n")
	if got, want := mustDecode(t, file), mustDecode(t, plain); !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
}

func TestDecodeReaderFails(t *testing.T) {
	broken := errors.New("the stick was pulled out")
	for _, r := range []struct {
		name string
		err  error
	}{{"at once", broken}, {"half-way", broken}} {
		from := iotest.ErrReader(r.err)
		if r.name == "half-way" {
			from = &halfReader{bytes.NewReader([]byte(text(t, "brook"))), r.err}
		}
		d, err := Decode(from, "x.toml")
		if d != nil || !errors.Is(err, broken) || !strings.HasPrefix(err.Error(), "x.toml: ") {
			t.Errorf("%s: got %v, %v, want no design and the reader's error with the file's name", r.name, d, err)
		}
	}
}

// halfReader gives what it has, then an error where the end should be.
type halfReader struct {
	*bytes.Reader
	err error
}

func (h *halfReader) Read(p []byte) (int, error) {
	if h.Len() == 0 {
		return 0, h.err
	}
	return h.Reader.Read(p)
}
