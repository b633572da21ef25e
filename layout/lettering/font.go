package lettering

import (
	_ "embed"
	"encoding/binary"
	"sync"
)

// CapHeight is the height of the capitals of the font per em, no unit.
const CapHeight = 1480.0 / 2048

// sansFile is Go Regular of Bigelow & Holmes without its hints for screens, under the
// license beside it; testdata/reference/font.py makes it. Zero has a stroke, I has feet and l
// a bent one, so that they are not taken for each other (DIN 1450).
//
//go:embed sans.ttf
var sansFile string

// Font returns the font that sheets are lettered in, as a TrueType file: Latin with its
// accents, Greek, Cyrillic and the signs among them. The caller may change the bytes.
func Font() []byte { return []byte(sansFile) }

// box stands for a letter that the font lacks. A question mark would ask something.
const box = '\u25a1'

// advances returns the advance width of every character of the font in thousandths of an
// em, by its number; 0 where the font has none. They are whole, as a PDF's own are.
var advances = sync.OnceValue(func() []uint16 {
	be := binary.BigEndian
	font := []byte(sansFile)
	table := map[string][]byte{}
	for i := range int(be.Uint16(font[4:])) {
		entry := font[12+16*i:]
		at, long := be.Uint32(entry[8:]), be.Uint32(entry[12:])
		table[string(entry[:4])] = font[at : at+long]
	}
	em := int(be.Uint16(table["head"][18:]))
	metrics := int(be.Uint16(table["hhea"][34:]))
	var out []uint16
	eachGlyph(table["cmap"], func(r, glyph int) {
		for len(out) <= r {
			out = append(out, 0)
		}
		wide := int(be.Uint16(table["hmtx"][4*min(glyph, metrics-1):]))
		out[r] = uint16((wide*1000 + em/2) / em)
	})
	return out
})

// eachGlyph tells which glyph each character has, from a character map with one table of
// format 4, whose segments run up to 0xffff. Source: OpenType specification, cmap.
func eachGlyph(cmap []byte, tell func(r, glyph int)) {
	be := binary.BigEndian
	t := cmap[be.Uint32(cmap[8:]):]
	twice := int(be.Uint16(t[6:])) // twice the number of segments
	ends, starts := t[14:], t[16+twice:]
	deltas, ranges := t[16+2*twice:], t[16+3*twice:]
	for i := 0; i < twice; i += 2 {
		from, to := int(be.Uint16(starts[i:])), int(be.Uint16(ends[i:]))
		for r := from; r <= to && r < 0xffff; r++ {
			glyph := r
			if offset := int(be.Uint16(ranges[i:])); offset > 0 {
				glyph = int(be.Uint16(ranges[i+offset+2*(r-from):]))
			}
			tell(r, (glyph+int(be.Uint16(deltas[i:])))&0xffff)
		}
	}
}

// has reports whether the font has a glyph for r.
func has(r rune) bool { return hasIn(advances(), r) }

func hasIn(all []uint16, r rune) bool { return r >= 0 && int(r) < len(all) && all[r] > 0 }

// unitsIn returns the advance of r in thousandths of an em. Whole numbers are summed, so
// that a width does not depend on where a text was cut. The advances are asked for once for
// many runes.
func unitsIn(all []uint16, r rune) int {
	if !hasIn(all, r) {
		r = box
	}
	return int(all[r])
}
