package rendertest

import (
	"encoding/binary"
	"fmt"
	"regexp"
	"unicode/utf16"
)

// font is what a page's content is lettered in: two bytes a letter, which say which
// character it is and which of the glyphs in the file draws it.
type font struct {
	wide    map[int]float64 // by code, in thousandths of the size
	usual   float64         // of codes that have no width of their own
	drawn   [1 << 16]bool   // codes that have a glyph
	letters bool            // whether codes are UTF-16, as the map for readers says
}

var (
	subsetName = regexp.MustCompile(`^[A-Z]{6}\+.`)
	plainMap   = regexp.MustCompile(`<0000>\s*<FFFF>\s*<0000>`)
)

// font reads a font of two bytes a letter that the file holds itself.
//
// Sources: ISO 32000-1, 9.7.4 (widths and glyphs by code), 9.6.4 (names of subsets), 9.10.3
// (codes as characters).
func (f *PDF) font(d Dict) (*font, error) {
	below, _ := f.resolve(d["DescendantFonts"]).([]any)
	if d["Subtype"] != Name("Type0") || d["Encoding"] != Name("Identity-H") || len(below) != 1 {
		return nil, fmt.Errorf("a font that is not of two bytes a letter: %v", d)
	}
	c, _ := f.resolve(below[0]).(Dict)
	about, _ := f.resolve(c["FontDescriptor"]).(Dict)
	name, _ := d["BaseFont"].(Name)
	if c["Subtype"] != Name("CIDFontType2") || !subsetName.MatchString(string(name)) || c["BaseFont"] != name || about["FontName"] != name {
		return nil, fmt.Errorf("no subset of a font: %v, %v, %v", d, c, about)
	}
	file, ok1 := about["FontFile2"].(Ref)
	glyphs, ok2 := c["CIDToGIDMap"].(Ref)
	words, ok3 := d["ToUnicode"].(Ref)
	if !ok1 || !ok2 || !ok3 {
		return nil, fmt.Errorf("font %s is not in the file, or nothing says which letters its codes are", name)
	}
	if _, err := f.stream(file.Number); err != nil {
		return nil, err
	}
	out := &font{wide: map[int]float64{}}
	out.usual, _ = c["DW"].(float64)
	list, _ := f.resolve(c["W"]).([]any)
	if err := out.widths(list); err != nil {
		return nil, err
	}
	to, err := f.stream(glyphs.Number)
	if err != nil {
		return nil, err
	}
	for i := 0; i+1 < min(len(to), 2<<16); i += 2 {
		out.drawn[i/2] = binary.BigEndian.Uint16(to[i:]) > 0
	}
	cmap, err := f.stream(words.Number)
	out.letters = plainMap.Match(cmap)
	return out, err
}

// widths reads "first [w w w]" and "first last w".
func (o *font) widths(list []any) error {
	for len(list) > 1 {
		first, ok := list[0].(float64)
		each, isList := list[1].([]any)
		switch {
		case ok && isList:
			for i, w := range each {
				o.wide[int(first)+i], _ = w.(float64)
			}
			list = list[2:]
		case ok && len(list) > 2:
			last, _ := list[1].(float64)
			w, _ := list[2].(float64)
			for c := int(first); c <= int(last); c++ {
				o.wide[c] = w
			}
			list = list[3:]
		default:
			return fmt.Errorf("widths that are none: %v", list)
		}
	}
	return nil
}

// read returns the words of a string and how far it advances in thousandths of the size.
func (o *font) read(s string) (words string, advance float64, err error) {
	if len(s)%2 > 0 || !o.letters {
		return "", 0, fmt.Errorf("%q cannot be read as letters", s)
	}
	var units []uint16
	for i := 0; i < len(s); i += 2 {
		c := int(s[i])<<8 | int(s[i+1])
		if c < ' ' || c >= 0x7f && c < 0xa0 {
			return "", 0, fmt.Errorf("the code %#x is no letter", c)
		}
		if !o.drawn[c] {
			return "", 0, fmt.Errorf("the font in the file has no glyph for %+q", rune(c))
		}
		w, own := o.wide[c]
		if !own {
			w = o.usual
		}
		units, advance = append(units, uint16(c)), advance+w
	}
	return string(utf16.Decode(units)), advance, nil
}
