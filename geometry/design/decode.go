package design

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"ribwright/geometry/wording"
)

// maxFile is the largest design file read, bytes: a hundred times what the
// longest sensible design needs, and little enough to refuse a wrong file fast.
const maxFile = 1 << 20

// Decode reads and checks a design file. The name is used in messages only.
//
// Units: every length and angle in the file carries its own.
// Returns: a design that has passed Check, with defaults filled in for keys
// that have one and the stern's values like the bow's where they are left out.
// Errors: *wording.Fault for anything wrong in the file; the reader's own error.
func Decode(r io.Reader, name string) (*Design, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	// Editors on some systems put a byte order mark in front.
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if why := noDesign(data); why != "" {
		return nil, &wording.Fault{File: name, Text: why}
	}
	s := newSurvey(data, name)
	if f := s.walk(); f != nil {
		return nil, f
	}
	d := Defaults()
	d.outfitDefaults(s.begins)
	if err := toml.Unmarshal(data, d); err != nil {
		return nil, s.decodeFault(err)
	}
	d.settle(s.given)
	if p := d.Check(); p != nil {
		return nil, &wording.Fault{File: name, Line: s.lineOf(p.Key), Key: unnumbered(p.Key), Text: p.Text}
	}
	return d, nil
}

// noDesign says why a file is not worth reading, "" when it is.
func noDesign(data []byte) string {
	switch {
	case len(data) > maxFile:
		return "is larger than 1 MB, so it is no design file"
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return "is saved as UTF-16; save it as UTF-8 text"
	case bytes.IndexByte(data, 0) >= 0:
		return "is no text file; a design is UTF-8 text"
	case len(bytes.TrimSpace(data)) == 0:
		return "is empty; a design holds at least a title and the measures of the hull"
	}
	return ""
}

// Encode writes d as a design file with every key described, such that Decode
// gives the same design back.
func Encode(w io.Writer, d *Design) error {
	return toml.NewEncoder(w).Encode(d)
}

// Defaults returns a design in which every key that has a default carries it.
// They are common practice, no source, unless a comment names one.
func Defaults() *Design {
	return &Design{
		Gunwale: Gunwale{Plies: 1, ScarfSlope: 8, Glued: GluedStraight},
		Ribs: Ribs{
			AtMidship: true, TenonGap: 2, FitWidth: 0.3, FitThickness: 0.3,
			Trim: 12, Tolerance: 1, Spare: 6,
		},
		Skin:    usualSkin(),
		Outside: usualOutside(),
		Inside:  usualInside(),
		Bending: Bending{Moisture: 23, Springback: 0.08, GlueCreep: 1},
		Stock:   Stock{Kerf: 3},
	}
}

// settle gives a design read from a file its one form: the stern follows the bow
// where its own value is left out, and a list without items is no list.
func (d *Design) settle(given func(key string) bool) {
	d.SternLikeBow(given)
	d.season(given)
	d.SkinOfMass(given)
	d.OutsideWithin(given)
	emptied(&d.Hull.Spreaders)
	emptied(&d.Hull.Sections)
	emptied(&d.Gunwale.Scarfs)
	emptied(&d.Stringers.At)
	emptied(&d.Woods)
	emptied(&d.Stock.Boards)
	emptied(&d.Thwarts)
	emptied(&d.Seats)
	emptied(&d.Crew)
	emptied(&d.Gear)
	if d.Fitted() == (Outfit{}) {
		d.Outfit = nil
	}
}

func emptied[T any](list *[]T) {
	if len(*list) == 0 {
		*list = nil
	}
}

// decodeFault turns the library's errors into the builder's words. The survey
// has found unknown keys and wrong kinds before; what is left is text that is no
// TOML, and values that cannot be read.
func (s *survey) decodeFault(err error) *wording.Fault {
	var at *toml.DecodeError
	if !errors.As(err, &at) {
		return &wording.Fault{File: s.file, Text: valueWords(err.Error())}
	}
	f := &wording.Fault{File: s.file, Key: joinKey(at.Key())}
	f.Line, _ = at.Position()
	if f.Key != "" {
		f.Text = valueWords(at.Error())
		return f
	}
	line := lineText(s.parser.Data(), f.Line)
	f.Key, f.Text = s.keyIn(line, at.Error()), syntaxWords(at.Error(), line)
	return f
}

//go:embed shipped/*.toml
var shippedFiles embed.FS

// ShippedNames returns the names of the designs that come with the program.
func ShippedNames() []string { return []string{"brook", "lake", "river"} }

// Shipped returns a design that comes with the program: brook (pack), lake
// (solo) or river (tandem). Errors: an unknown name, listing the known ones.
func Shipped(name string) (*Design, error) {
	if !slices.Contains(ShippedNames(), name) {
		return nil, fmt.Errorf("no shipped design %q; there are %s", name, strings.Join(ShippedNames(), ", "))
	}
	data, err := shippedFiles.ReadFile("shipped/" + name + ".toml")
	if err != nil {
		return nil, err
	}
	return Decode(bytes.NewReader(data), name)
}
