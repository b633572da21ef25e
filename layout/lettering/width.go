package lettering

const (
	// CapHeight is the height of the capitals of Helvetica per em, no unit.
	CapHeight = 0.718
	// MinHeight is the smallest height of capitals that is still read
	// standing at a bench, mm.
	MinHeight = 2.5
)

// widths are the advance widths of Helvetica regular by cp1252 code from 0x20
// on, in thousandths of an em, as its public metrics give them. A code cp1252
// leaves empty has the width of the bullet printed in its place.
var widths = [224]uint16{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, 350,
	556, 350, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
	350, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 350, 500, 667,
	278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333,
	400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834, 834, 611,
	667, 667, 667, 667, 667, 667, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
	722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
	556, 556, 556, 556, 556, 556, 889, 500, 556, 556, 556, 556, 278, 278, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 584, 611, 556, 556, 556, 556, 500, 556, 500,
}

// Width returns how far s advances in Helvetica regular with capitals
// capHeight mm high, in mm, without kerning. It takes s as it is: pass text
// that went through Safe. A rune cp1252 does not have, and an invalid byte,
// counts as "?". 0 when s is empty or capHeight is not above 0.
func Width(s string, capHeight float64) float64 {
	total := 0
	for _, r := range s {
		total += units(r)
	}
	return millimetres(total, capHeight)
}

// units returns the advance of r in thousandths of an em. Whole numbers are
// summed, so that a width does not depend on where a text was cut.
func units(r rune) int {
	b, ok := code(r)
	if !ok {
		b = '?'
	}
	return int(widths[b-' '])
}

// millimetres turns thousandths of an em into mm.
func millimetres(units int, capHeight float64) float64 {
	if units == 0 || !(capHeight > 0) { // also turns NaN away
		return 0
	}
	return float64(units) / (1000 * CapHeight) * capHeight
}
